package neckway.practice;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import neckway.drill.PlayableDrill;
import neckway.neck.Direction;
import neckway.neck.JoinChoice;
import neckway.neck.PlacedShape;
import neckway.neck.Shape;
import neckway.practice.PlanItem.Kind;
import neckway.words.Wording;

/**
 * Makes a warm-up: the tuner, the hands without the guitar, single strings, one shape low on the
 * neck, a join that is open already, and then wider. Tempo and reach rise gently from step to step
 * and never above what was clean in the last two weeks. All figures are common practice, no source.
 */
public final class WarmUp {
  /** The shortest and the longest, minutes. */
  public static final int SHORTEST = 3;

  /** Longer ones are practice. */
  public static final int LONGEST = 30;

  /** So far back it is looked for what was clean. */
  private static final int LOOKED_BACK_DAYS = 14;

  /** After so many days without playing it begins again from less. */
  private static final int LONG_BREAK_DAYS = 7;

  /** After so much playing on one day the hands are tired rather than cold. */
  private static final double TIRED_MINUTES = 120;

  /** From so many minutes on there is a rest in the middle. */
  private static final int REST_FROM = 8;

  /** Tempo of each step that has a drill, as shares of the fastest that was clean lately. */
  private static final double[] SHARES = {0.5, 0.6, 0.7};

  /** The same after a long break, or when tired. */
  private static final double[] GENTLE_SHARES = {0.4, 0.5, 0.55};

  /** A tempo that nobody has shown yet, beats a minute of two notes. */
  private static final double UNKNOWN = 80;

  private static final double SLOWEST = 30;

  private final Reach reach;
  private final Day day;

  /**
   * What is known of the day.
   *
   * @param lastPlayed the last day before today on which anything was played
   * @param minutesToday how much was played today, minutes of sounding notes
   */
  public record Day(Optional<LocalDate> lastPlayed, double minutesToday) {}

  /** What the day is like, and what follows from it. */
  private enum Hands {
    FIRST_EVER,
    LONG_BREAK,
    FIRST_TODAY,
    WARM,
    TIRED
  }

  /** One step, and how much of the time it takes beside the others. */
  private record Part(Kind kind, int weight, Optional<PlayableDrill> drill, String why) {}

  /**
   * @param reach what is open, in the key that is warmed up in
   */
  public WarmUp(Reach reach, Day day) {
    this.reach = reach;
    this.day = day;
  }

  private Hands hands() {
    if (day.minutesToday() >= TIRED_MINUTES) {
      return Hands.TIRED;
    }
    if (day.minutesToday() > 0) {
      return Hands.WARM;
    }
    if (day.lastPlayed().isEmpty()) {
      return Hands.FIRST_EVER;
    }
    return breakDays() > LONG_BREAK_DAYS ? Hands.LONG_BREAK : Hands.FIRST_TODAY;
  }

  private long breakDays() {
    return day.lastPlayed().map(last -> ChronoUnit.DAYS.between(last, reach.today())).orElse(0L);
  }

  /**
   * The warm-up.
   *
   * @param minutes {@link #SHORTEST} to {@link #LONGEST}
   */
  public Plan plan(int minutes) {
    return new Plan(reach.today(), minutes, laidOut(minutes, parts(minutes)));
  }

  private List<Part> parts(int minutes) {
    List<Part> parts = new ArrayList<>();
    parts.add(new Part(Kind.WARM_UP, 1, Optional.empty(), Wording.of("warmUp.tune")));
    parts.add(new Part(Kind.WARM_UP, 1, Optional.empty(), withoutGuitar()));
    parts.add(new Part(Kind.WARM_UP, 2, Optional.empty(), Wording.of("warmUp.strings")));
    shape(0).ifPresent(parts::add);
    if (minutes >= REST_FROM) {
      parts.add(new Part(Kind.REST, 1, Optional.empty(), Wording.of("warmUp.rest")));
    }
    join().ifPresent(parts::add);
    if (hands() != Hands.TIRED) {
      wider().ifPresent(parts::add);
    }
    return parts;
  }

  private String withoutGuitar() {
    return switch (hands()) {
      case FIRST_EVER -> Wording.of("warmUp.hands.firstEver");
      case LONG_BREAK -> Wording.of("warmUp.hands.longBreak", breakDays());
      case FIRST_TODAY -> Wording.of("warmUp.hands.firstToday");
      case WARM -> Wording.of("warmUp.hands.warm");
      case TIRED -> Wording.of("warmUp.hands.tired", Math.round(day.minutesToday()));
    };
  }

  /** The shapes from the lowest up; one on open strings last, since it needs more reach. */
  private List<PlacedShape> lowestFirst() {
    return reach.map().shapes().stream()
        .sorted(
            Comparator.comparing((PlacedShape placed) -> placed.start() == 0)
                .thenComparingInt(PlacedShape::start))
        .toList();
  }

  /** The shape that lies lowest on the neck, for cold fingers. */
  private Optional<Part> shape(int step) {
    return lowestFirst().stream()
        .findFirst()
        .flatMap(
            placed ->
                playable(List.of(placed.shape()), List.of(), List.of(), tempo(step))
                    .map(drill -> part(drill, 3, Wording.of("warmUp.low"))));
  }

  /** A join that is open; the one open longest, since nothing new is for warming up. */
  private Optional<Part> join() {
    for (PlacedShape placed : lowestFirst()) {
      if (reach.isPairOpen(placed.shape())) {
        Exercise.OfJoin up = open(placed.shape(), Direction.UP);
        Exercise.OfJoin down = open(placed.shape(), Direction.DOWN);
        String why = Wording.of("warmUp.shift", up.string());
        return playable(
                List.of(placed.shape(), placed.shape().next()),
                List.of(JoinChoice.on(up.string(), up.finger())),
                List.of(JoinChoice.on(down.string(), down.finger())),
                tempo(1))
            .map(drill -> part(drill, 3, why));
      }
    }
    return secondShape();
  }

  private Exercise.OfJoin open(Shape lower, Direction direction) {
    return reach.joins(lower, direction).stream()
        .filter(p -> p.state() == State.OPEN)
        .map(p -> (Exercise.OfJoin) p.exercise())
        .findFirst()
        .orElseThrow();
  }

  /** Where no join is open yet, the next shape up. */
  private Optional<Part> secondShape() {
    List<PlacedShape> low = lowestFirst();
    if (low.size() < 2) {
      return Optional.empty();
    }
    return playable(List.of(low.get(1).shape()), List.of(), List.of(), tempo(1))
        .map(drill -> part(drill, 3, Wording.of("warmUp.above")));
  }

  /** Two open pairs in a row. */
  private Optional<Part> wider() {
    for (PlacedShape placed : lowestFirst()) {
      Shape lower = placed.shape();
      if (reach.isPairOpen(lower) && reach.isPairOpen(lower.next())) {
        return playable(
                List.of(lower, lower.next(), lower.next().next()), List.of(), List.of(), tempo(2))
            .map(drill -> part(drill, 2, Wording.of("warmUp.wider")));
      }
    }
    return Optional.empty();
  }

  private static Part part(PlayableDrill drill, int weight, String why) {
    return new Part(Kind.WARM_UP, weight, Optional.of(drill), why);
  }

  private double tempo(int step) {
    boolean gentle = hands() == Hands.LONG_BREAK || hands() == Hands.TIRED;
    double share = (gentle ? GENTLE_SHARES : SHARES)[step];
    double ceiling = cleanLately().orElse(Math.min(UNKNOWN, reach.target()));
    return Math.min(ceiling, Math.max(SLOWEST, Math.rint(share * ceiling)));
  }

  /** The fastest that was clean in the last two weeks, beats a minute of two notes. */
  private OptionalDouble cleanLately() {
    LocalDate since = reach.today().minusDays(LOOKED_BACK_DAYS);
    return Stream.concat(reach.joins().stream(), reach.shapes().stream())
        .flatMap(progress -> progress.all().stream())
        .filter(round -> round.clean() && !round.day().isBefore(since))
        .mapToDouble(PlayedRound::tempo)
        .max();
  }

  /** Whole minutes: one each, and the rest by weight; what does not fit is left out. */
  private static List<PlanItem> laidOut(int minutes, List<Part> parts) {
    List<Part> kept = parts.subList(0, Math.min(minutes, parts.size()));
    int left = minutes - kept.size();
    int weights = kept.stream().mapToInt(Part::weight).filter(w -> w > 1).sum();
    List<PlanItem> items = new ArrayList<>();
    for (Part part : kept) {
      int more = 0;
      if (part.weight() > 1) {
        more = (int) Math.rint((double) left * part.weight() / weights);
        left -= more;
        weights -= part.weight();
      }
      items.add(item(part, 1 + more));
    }
    return items;
  }

  private static PlanItem item(Part part, int minutes) {
    return part.drill()
        .map(drill -> PlannedDrills.item(part.kind(), minutes, 1, drill, part.why()))
        .orElseGet(() -> new PlanItem(part.kind(), minutes, 0, Optional.empty(), part.why()));
  }

  private Optional<PlayableDrill> playable(
      List<Shape> shapes, List<JoinChoice> up, List<JoinChoice> down, double tempo) {
    return new PlannedDrills(reach.map().neck()).drill(reach.key(), shapes, up, down, tempo);
  }
}
