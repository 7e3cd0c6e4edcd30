package neckway.desk.open;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import neckway.desk.DrillWords;
import neckway.desk.Texts;
import neckway.desk.open.OpenMap.Stand;
import neckway.drill.PlayableDrill;
import neckway.neck.Direction;
import neckway.neck.Shape;
import neckway.practice.Exercise;
import neckway.practice.PlanItem;
import neckway.practice.Progress;
import neckway.practice.Reach;
import neckway.practice.State;

/** What is open and what comes next, in sentences. */
final class OpenWords {
  private static final double HUNDRED = 100;

  private OpenWords() {}

  static String state(State state) {
    return Texts.of("open.state." + state.word());
  }

  /** What an exercise is called. */
  static String name(Progress progress) {
    if (progress.exercise() instanceof Exercise.OfJoin join) {
      boolean up = join.direction() == Direction.UP;
      return Texts.of(
          up ? "open.join.up" : "open.join.down",
          join.string(),
          shape(up ? join.lower() : join.upper()),
          shape(up ? join.upper() : join.lower()),
          Texts.ordinal(join.finger()));
    }
    return Texts.of("open.shape", shape(((Exercise.OfShape) progress.exercise()).shape()));
  }

  private static String shape(Shape shape) {
    return Texts.of("mark.name", shape.number(), DrillWords.name(shape));
  }

  /** Name and state. */
  static String title(Progress progress) {
    return Texts.of("open.title", name(progress), state(progress.state()));
  }

  /** What the log says of an exercise. */
  static String figures(Progress progress, LocalDate today) {
    int rounds = progress.rounds();
    if (rounds == 0) {
      return Texts.of("open.never");
    }
    StringBuilder said = new StringBuilder();
    said.append(
        Texts.of(
            rounds == 1 ? "open.round" : "open.rounds",
            progress.cleanRounds(),
            rounds,
            Math.round(HUNDRED * progress.cleanRounds() / rounds)));
    said.append(
        progress.bestCleanTempo().isPresent()
            ? Texts.of("open.best", Texts.plain(progress.bestCleanTempo().getAsDouble()))
            : Texts.of("open.best.none"));
    progress.lastDay().ifPresent(day -> said.append(last(day, today)));
    progress
        .lateMsMedian()
        .ifPresent(
            ms ->
                said.append(
                    Texts.of("open.late", String.format(Locale.ROOT, "%+d", Math.round(ms)))));
    return said.toString();
  }

  private static String last(LocalDate day, LocalDate today) {
    long days = ChronoUnit.DAYS.between(day, today);
    return days == 0
        ? Texts.of("open.last.today")
        : days == 1
            ? Texts.of("open.last.yesterday")
            : Texts.of("open.last.days", days, Texts.date("open.date", day));
  }

  /** From where to where one can go without leaving what is open. */
  static String ways(OpenMap map) {
    List<Stand> up = longest(map, Direction.UP);
    List<Stand> down = longest(map, Direction.DOWN);
    if (up.isEmpty() && down.isEmpty()) {
      return Texts.of("open.ways.none");
    }
    List<String> said = new ArrayList<>();
    said.add(
        up.isEmpty()
            ? Texts.of("open.ways.up.none")
            : Texts.of("open.ways.up", place(up.get(0)), place(up.get(up.size() - 1))));
    said.add(
        down.isEmpty()
            ? Texts.of("open.ways.down.none")
            : Texts.of("open.ways.down", place(down.get(down.size() - 1)), place(down.get(0))));
    return String.join(" ", said);
  }

  private static List<Stand> longest(OpenMap map, Direction direction) {
    return map.open(direction).stream().max(Comparator.comparingInt(List::size)).orElse(List.of());
  }

  private static String place(Stand stand) {
    return Texts.of("open.place", shape(stand.placed().shape()), stand.from());
  }

  /** What comes next, and why. */
  static String next(Sitting sitting) {
    Optional<PlanItem> next = sitting.next();
    if (next.isEmpty()) {
      return "";
    }
    String before = sitting.before().map(item -> Texts.of("next.before", item.why())).orElse("");
    return before + Texts.of("next.line", drill(next.get()), next.get().why());
  }

  /** The drill of an item, with its rounds. */
  static String drill(PlanItem item) {
    PlayableDrill drill = item.drill().orElseThrow();
    return Texts.of(
        item.rounds() == 1 ? "next.drill.once" : "next.drill",
        DrillWords.place(drill),
        Texts.plain(drill.pulse().tempo()),
        item.rounds());
  }

  /** A key in a few words. */
  static String key(Reach reach, OpenMap map) {
    long open =
        map.columns().stream()
            .filter(c -> c instanceof OpenMap.Bridge)
            .map(c -> (OpenMap.Bridge) c)
            .mapToLong(
                b ->
                    List.of(Direction.values()).stream()
                        .filter(d -> b.state(d) == State.OPEN)
                        .count())
            .sum();
    long all = 2 * map.columns().stream().filter(c -> c instanceof OpenMap.Bridge).count();
    return Texts.of("open.key", reach.key(), open, all);
  }
}
