package neckway.calls;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import neckway.drill.Cue;
import neckway.drill.PlayableDrill;
import neckway.drill.Slots;
import neckway.follow.Verdict;
import neckway.hear.RobustStatistics;
import neckway.neck.Route;
import neckway.review.CleanStretch;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.StepVerdict;
import neckway.words.Wording;

/**
 * How the calls of a run were followed. A switch shows where the run turns round: a note further
 * out than in the old shape, or a note sooner. On which string the hand went does not show in the
 * pitches; how long it needed is asked at the note on which it was called to land.
 *
 * @param drill the run as it was called
 * @param heard each call, in order
 */
public record CalledRun(PlayableDrill drill, List<Heard> heard) {
  /**
   * In notes: two that follow each other are one apart, with the turn between them two or three.
   */
  private static final double LONGEST_GAP = 1.8;

  /** What became of a call. */
  public enum Outcome {
    /** The run turned round where it was called to. */
    MADE,
    /** The hand stayed where it was. */
    MISSED,
    /** The notes at the turn do not tell. */
    UNHEARD,
    /** The player stopped before it. */
    UNPLAYED;

    /** The word for it in files. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * A call and what became of it.
   *
   * @param call as it sounded
   * @param outcome what the notes tell
   * @param lateMs of a switch that was made: the time to the landing from the note before, less the
   *     player's median time between notes
   */
  public record Heard(Call call, Outcome outcome, OptionalDouble lateMs) {}

  public CalledRun {
    heard = List.copyOf(heard);
  }

  /**
   * @param drill as it was called
   * @param review of the run
   */
  public static CalledRun of(PlayableDrill drill, List<Call> calls, Review review) {
    Map<Integer, ReviewedNote> placed = new HashMap<>();
    review.notes().stream()
        .filter(n -> n.attempt() == review.reviewed() && n.inPlace())
        .forEach(n -> placed.putIfAbsent(n.step().getAsInt(), n));
    double usual = usualSeconds(placed, review.ownSlots());
    return new CalledRun(
        drill,
        calls.stream()
            .map(
                call -> {
                  Outcome outcome = outcome(call, review, placed, usual);
                  return new Heard(
                      call,
                      outcome,
                      outcome == Outcome.MADE && call.join().isPresent()
                          ? lateMs(call, placed, usual, review.ownSlots())
                          : OptionalDouble.empty());
                })
            .toList());
  }

  private static Outcome outcome(
      Call call, Review review, Map<Integer, ReviewedNote> placed, double usualSeconds) {
    int turn = call.turnStep();
    if (verdict(review, turn) == StepVerdict.UNPLAYED) {
      return Outcome.UNPLAYED;
    }
    boolean turned = placed.containsKey(turn) && placed.get(turn).verdict() == Verdict.RIGHT;
    if (call.cue().move() == Cue.Move.STAY) {
      return turned && !anyBetween(review, placed, turn) ? Outcome.MADE : Outcome.UNHEARD;
    }
    if (turned) {
      return Outcome.MADE;
    }
    boolean sooner =
        verdict(review, turn) == StepVerdict.SKIPPED
            && (verdict(review, turn - 1) == StepVerdict.SKIPPED
                || verdict(review, turn + 1) == StepVerdict.SKIPPED);
    return sooner && playedOn(placed, turn, usualSeconds) ? Outcome.MISSED : Outcome.UNHEARD;
  }

  /**
   * Whether the notes around a turn that was left out follow each other as notes do. Where a gap
   * stands for them, they may have been played and not heard.
   */
  private static boolean playedOn(
      Map<Integer, ReviewedNote> placed, int turn, double usualSeconds) {
    OptionalDouble before = placedAt(placed, turn - 1, -1);
    OptionalDouble after = placedAt(placed, turn + 1, 1);
    return before.isPresent()
        && after.isPresent()
        && after.getAsDouble() - before.getAsDouble() < LONGEST_GAP * usualSeconds;
  }

  /** When the nearest note that was placed sounded, one of two steps, seconds. */
  private static OptionalDouble placedAt(Map<Integer, ReviewedNote> placed, int step, int way) {
    return IntStream.of(step, step + way)
        .mapToObj(placed::get)
        .filter(Objects::nonNull)
        .mapToDouble(ReviewedNote::time)
        .findFirst();
  }

  private static StepVerdict verdict(Review review, int step) {
    return step < review.steps().size() ? review.steps().get(step).verdict() : StepVerdict.UNPLAYED;
  }

  /** Whether a note sounded between a turn and the step after it. */
  private static boolean anyBetween(Review review, Map<Integer, ReviewedNote> placed, int turn) {
    if (!placed.containsKey(turn + 1)) {
      return false;
    }
    double from = placed.get(turn).time();
    double to = placed.get(turn + 1).time();
    return review.notes().stream()
        .anyMatch(n -> n.verdict() == Verdict.EXTRA && n.time() > from && n.time() < to);
  }

  private static OptionalDouble lateMs(
      Call call, Map<Integer, ReviewedNote> placed, double usualSeconds, Slots slots) {
    ReviewedNote landing = placed.get(call.landingStep());
    ReviewedNote before = placed.get(call.landingStep() - 1);
    if (landing == null || before == null) {
      return OptionalDouble.empty();
    }
    double due = usualSeconds * slots.gapBefore(call.landingStep());
    return OptionalDouble.of(1000 * (landing.time() - before.time() - due));
  }

  private static double usualSeconds(Map<Integer, ReviewedNote> placed, Slots slots) {
    double[] gaps =
        placed.keySet().stream()
            .filter(step -> placed.containsKey(step - 1))
            .mapToDouble(
                step ->
                    (placed.get(step).time() - placed.get(step - 1).time()) / slots.gapBefore(step))
            .toArray();
    return RobustStatistics.median(gaps);
  }

  /**
   * The same as far as the player went: to the turn of the way on which the last note was, or to
   * the end.
   */
  public CalledRun upTo(Review review) {
    int last =
        IntStream.range(0, review.steps().size())
            .filter(step -> verdict(review, step) != StepVerdict.UNPLAYED)
            .max()
            .orElse(0);
    List<Heard> begun = new ArrayList<>();
    for (Heard call : heard) {
      begun.add(call);
      int turn = call.call().turnStep();
      if (turn >= last) {
        Route route =
            new Route(drill.shapes(), drill.route().steps().subList(0, turn + 1), List.of(), 1);
        List<Cue> cues = begun.stream().map(h -> h.call().cue()).toList();
        return new CalledRun(drill.called(route, cues), begun);
      }
    }
    return this;
  }

  /** What is said of the run: its review as far as this goes, with these words. */
  public Review told(Review review) {
    return review.upTo(drill.route().steps().size()).withWords(words());
  }

  /** How many calls became that. */
  public int count(Outcome outcome) {
    return (int) heard.stream().filter(h -> h.outcome() == outcome).count();
  }

  /** The middle lateness of the landings, milliseconds. */
  public OptionalDouble lateMsMedian() {
    return median(heard);
  }

  private static OptionalDouble median(List<Heard> some) {
    double[] late = some.stream().flatMapToDouble(h -> h.lateMs().stream()).toArray();
    return late.length == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(RobustStatistics.median(late));
  }

  /**
   * A call, all the times that it came.
   *
   * @param call as it came first
   * @param words as it was called, in English
   * @param times that it was reached
   * @param missed of them
   * @param lateMs the middle lateness of its landings
   */
  public record Cost(Call call, String words, int times, int missed, OptionalDouble lateMs) {}

  /**
   * The call that cost most: the one missed most often, else the one that landed latest, beyond
   * what is in time; empty where none cost anything.
   */
  public Optional<Cost> costliest() {
    double inTimeMs = CleanStretch.latestMs(1000 * drill.pulse().slotSeconds());
    Comparator<Cost> cost =
        Comparator.comparingInt(Cost::missed).thenComparingDouble(c -> c.lateMs().orElse(0));
    return heard.stream()
        .filter(h -> h.outcome() != Outcome.UNPLAYED && h.call().join().isPresent())
        .collect(Collectors.groupingBy(h -> h.call().words(drill.tuning())))
        .entrySet()
        .stream()
        .sorted(Map.Entry.comparingByKey())
        .map(
            e ->
                new Cost(
                    e.getValue().get(0).call(),
                    e.getKey(),
                    e.getValue().size(),
                    (int) e.getValue().stream().filter(h -> h.outcome() == Outcome.MISSED).count(),
                    median(e.getValue())))
        .filter(c -> c.missed() > 0 || c.lateMs().orElse(0) > inTimeMs)
        .max(cost);
  }

  /** What a teacher would say of it. */
  public List<String> words() {
    int reached = heard.size() - count(Outcome.UNPLAYED);
    if (reached == 0) {
      return List.of(Wording.of("calls.none"));
    }
    List<String> said = new ArrayList<>();
    said.add(counts(reached));
    lateMsMedian().ifPresent(late -> said.add(landed(late)));
    costliest().map(this::told).ifPresent(said::add);
    return said;
  }

  private String counts(int reached) {
    int missed = count(Outcome.MISSED);
    int unheard = count(Outcome.UNHEARD);
    if (missed + unheard == 0) {
      return Wording.counted("calls.allMade", reached, reached);
    }
    List<String> became = new ArrayList<>();
    became.add(Wording.of("calls.made", count(Outcome.MADE)));
    if (missed > 0) {
      became.add(Wording.of("calls.missed", missed));
    }
    if (unheard > 0) {
      became.add(Wording.of("calls.unheard", unheard));
    }
    return Wording.counted("calls.became", reached, reached, String.join(", ", became));
  }

  private String landed(double lateMs) {
    if (Math.abs(lateMs) <= CleanStretch.latestMs(1000 * drill.pulse().slotSeconds())) {
      return Wording.of("calls.inTime");
    }
    return Wording.of(lateMs < 0 ? "calls.sooner" : "calls.later", Math.round(Math.abs(lateMs)));
  }

  private String told(Cost cost) {
    List<String> how = new ArrayList<>();
    how.add(Wording.counted("calls.times", cost.times(), cost.times()));
    if (cost.missed() > 0) {
      how.add(Wording.of("calls.cost.missed", cost.missed()));
    }
    cost.lateMs().stream()
        .filter(ms -> ms > 0)
        .forEach(ms -> how.add(Wording.of("calls.cost.late", Math.round(ms))));
    String call = cost.call().spoken(drill.tuning());
    return Wording.of("calls.cost", call, String.join(", ", how));
  }
}
