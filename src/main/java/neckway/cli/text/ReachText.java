package neckway.cli.text;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import neckway.neck.Direction;
import neckway.neck.PlacedShape;
import neckway.neck.Shape;
import neckway.practice.Exercise;
import neckway.practice.Progress;
import neckway.practice.Reach;
import neckway.practice.State;
import neckway.review.words.Phrases;
import neckway.words.Wording;

/** What is open of a key, in text: the shapes along the neck, the joins between them. */
public final class ReachText {
  private static final int NAME = 12;
  private static final int WAY = 5;
  private static final String INDENT = " ".repeat(10);

  private ReachText() {}

  /** Where nothing was ever logged. */
  public static List<String> nothing(int width) {
    return Wrapped.lines(Wording.of("terminal.reach.nothing"), width);
  }

  /** One key, in lines no wider than so many columns. */
  public static List<String> of(Reach reach, int width) {
    List<String> lines = new ArrayList<>();
    lines.addAll(
        Wrapped.lines(
            Wording.of(
                "terminal.reach.head",
                reach.key(),
                day(reach.today()),
                Wording.fixed(reach.target(), 0)),
            width));
    lines.addAll(Wrapped.lines(Wording.of("terminal.reach.signs"), width));
    lines.add("");
    List<PlacedShape> along = new ArrayList<>(reach.map().shapes());
    along.sort(Comparator.comparingInt(PlacedShape::start));
    for (PlacedShape placed : along) {
      lines.addAll(shape(reach, placed, width));
      lines.addAll(joins(reach, placed.shape(), Direction.UP, width));
      lines.addAll(joins(reach, placed.shape(), Direction.DOWN, width));
    }
    return lines;
  }

  private static List<String> shape(Reach reach, PlacedShape placed, int width) {
    Progress progress = reach.shape(placed.shape());
    String name = Wrapped.padded(placed.shape().spoken(), NAME);
    return Wrapped.lines(
        Wording.of(
            "terminal.reach.shape", sign(progress.state()), name, placed.start(), said(progress)),
        width);
  }

  private static List<String> joins(Reach reach, Shape lower, Direction direction, int width) {
    Map<Integer, Progress> best = new TreeMap<>((a, b) -> b - a);
    for (Progress progress : reach.joins(lower, direction)) {
      if (progress.exercise() instanceof Exercise.OfJoin join) {
        best.merge(join.string(), progress, (a, b) -> b.rounds() > a.rounds() ? b : a);
      }
    }
    if (best.isEmpty()) {
      return List.of();
    }
    String way = Wording.of(Phrases.towards("terminal.reach", direction));
    StringBuilder line = new StringBuilder("    " + Wrapped.padded(way, WAY));
    best.forEach((string, p) -> line.append(' ').append(string).append(sign(p.state())));
    List<String> lines = new ArrayList<>(List.of(line.toString()));
    best.forEach(
        (string, p) -> {
          if (p.state() != State.NEW) {
            Wrapped.lines(
                    Wording.of("terminal.reach.string", string, said(p)), width - INDENT.length())
                .forEach(text -> lines.add(INDENT + text));
          }
        });
    return lines;
  }

  private static String said(Progress progress) {
    if (progress.rounds() == 0) {
      return "";
    }
    List<String> said = new ArrayList<>();
    said.add(
        Wording.counted(
            "terminal.reach.clean", progress.rounds(), progress.cleanRounds(), progress.rounds()));
    progress
        .bestCleanTempo()
        .ifPresent(tempo -> said.add(Wording.of("terminal.reach.best", Wording.fixed(tempo, 0))));
    progress.lastDay().ifPresent(day -> said.add(Wording.of("terminal.reach.last", day(day))));
    progress
        .lateMsMedian()
        .ifPresent(
            ms ->
                said.add(
                    Wording.of("terminal.reach.landing", String.format(Locale.ROOT, "%+.0f", ms))));
    return ": " + String.join(", ", said);
  }

  private static String day(LocalDate day) {
    return DateTimeFormatter.ofPattern(Wording.of("terminal.day"), Locale.ROOT).format(day);
  }

  private static String sign(State state) {
    return switch (state) {
      case NEW -> "-";
      case WORKING -> ".";
      case OPEN -> "o";
      case FADING -> "~";
    };
  }
}
