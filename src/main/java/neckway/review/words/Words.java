package neckway.review.words;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import neckway.drill.PlayableDrill;
import neckway.follow.Verdict;
import neckway.hand.ShiftVerdict;
import neckway.hear.RobustStatistics;
import neckway.neck.Direction;
import neckway.neck.PlannedShift;
import neckway.neck.Route;
import neckway.neck.Shape;
import neckway.neck.Step;
import neckway.review.Clock;
import neckway.review.Grid;
import neckway.review.LateLanding;
import neckway.review.PulseKept;
import neckway.review.Review;
import neckway.review.ReviewedShift;
import neckway.review.ReviewedStep;
import neckway.review.StepVerdict;
import neckway.review.Summary;

/**
 * What a teacher would say of a take: what was right, what was not and where, how it lay in time,
 * and what to mend first. All sentences of a review are made here and in {@link Slips}.
 */
public final class Words {
  /** Below this share of right notes, and with so few, it is not this drill. */
  private static final double FITS_SHARE = 0.4;

  private static final int FEWEST_TO_JUDGE = 4;

  /** Less is not told: a hard pluck and a pressing finger sharpen a tuned string by as much. */
  private static final double OFF_TUNE_CENTS = 10;

  /** What a listener can notice: 6 ms, or 2.5 % of a gap (Friberg and Sundberg 1995). */
  private static final double BIAS_MS = 6;

  private static final double BIAS_SHARE = 0.025;
  private static final int FEWEST_TO_TIME = 6;

  /** Notes that lie further apart in their slots have no common bias to speak of. */
  private static final double TOGETHER_SHARE = 0.2;

  private final PlayableDrill drill;
  private final Review review;
  private final Summary figures;
  private final Slips slips;
  private final Stumbles stumbles;
  private final ShiftStrings shiftStrings;
  private final List<LateLanding> late;
  private final List<String> said = new ArrayList<>();

  private Words(PlayableDrill drill, Review review) {
    this.drill = drill;
    this.review = review;
    this.figures = review.summary();
    this.slips = new Slips(drill, review);
    this.stumbles = new Stumbles(drill, review, slips);
    this.shiftStrings = new ShiftStrings(drill, review);
    this.late = LateLanding.of(drill, review);
  }

  /**
   * The sentences of a review, in the order in which they are said.
   *
   * @param drill what the take was held against
   */
  public static List<String> of(PlayableDrill drill, Review review) {
    return new Words(drill, review).sentences();
  }

  private List<String> sentences() {
    if (review.notes().isEmpty()) {
      return List.of(
          "I heard no notes in this take. If you played, check that the guitar is on this input"
              + " and loud enough.");
    }
    if (!fits()) {
      said.add(
          "What I heard does not fit this drill: of "
              + Phrases.count(review.notes().size(), "note")
              + ", "
              + (figures.right() == 0 ? "none" : Phrases.count(figures.right()))
              + " came where the drill has "
              + (figures.right() == 1 ? "it" : "them")
              + ". Check the key, the starting fret and the shapes.");
      tuning();
      return said;
    }
    attempts();
    whatWasRight();
    stoppedEarly();
    missedShifts();
    said.addAll(shiftStrings.sentences());
    said.addAll(slips.wrong());
    said.addAll(slips.leftOut(leftOutByThemselves()));
    said.addAll(slips.struckTwice());
    said.addAll(slips.stray());
    stumbles.cameInLate().ifPresent(said::add);
    said.addAll(stumbles.hesitations());
    timing();
    tuning();
    shiftStrings.unheard().ifPresent(said::add);
    whatFirst();
    return said;
  }

  private boolean fits() {
    int right = (int) review.notes().stream().filter(n -> n.verdict() == Verdict.RIGHT).count();
    return right > 0
        && (review.notes().size() < FEWEST_TO_JUDGE || right >= FITS_SHARE * review.notes().size());
  }

  private void attempts() {
    if (review.attempts() > 1) {
      said.add(
          "You began "
              + (review.attempts() == 2 ? "twice" : Phrases.count(review.attempts()) + " times")
              + "; this is about the try that got furthest.");
    }
  }

  private void whatWasRight() {
    int steps = drill.route().steps().size();
    int right = figures.right();
    if (right == steps && figures.notes() == steps) {
      said.add("All " + steps + " notes were right and in order.");
    } else {
      said.add(right + " of " + steps + (right == 1 ? " notes was right." : " notes were right."));
    }
  }

  private void stoppedEarly() {
    Optional<Step> next =
        review.steps().stream()
            .filter(s -> s.verdict() == StepVerdict.UNPLAYED)
            .map(ReviewedStep::step)
            .findFirst();
    next.ifPresent(
        step -> {
          int left = drill.route().steps().size() - step.index();
          said.add(
              "You stopped before the end: the last "
                  + (left == 1 ? "note, " : Phrases.count(left, "note") + ", from ")
                  + "the "
                  + Slips.spot(step)
                  + ", "
                  + slips.way(step)
                  + (left == 1 ? ", was not played." : ", were not played."));
        });
  }

  private List<ReviewedShift> missed() {
    return review.shifts().stream().filter(s -> s.verdict() == ShiftVerdict.MISSED).toList();
  }

  private void missedShifts() {
    for (ReviewedShift shift : missed()) {
      PlannedShift planned = shift.planned();
      if (planned.direction() == Direction.UP) {
        said.add(
            "You turned round too early"
                + (drill.route().rounds() > 1 ? " in round " + (planned.round() + 1) : "")
                + ": the hand stayed in the "
                + lower(planned).spoken()
                + " shape and never reached the "
                + lower(planned).next().spoken()
                + " one.");
        return;
      }
    }
  }

  private Shape lower(PlannedShift shift) {
    return drill.route().shapes().get(shift.pair());
  }

  /** Steps left out that no missed shift explains. */
  private List<Integer> leftOutByThemselves() {
    Route route = drill.route();
    int half = (route.stepsPerRound() - 1) / 2;
    List<Integer> steps = new ArrayList<>();
    for (ReviewedStep s : review.steps()) {
      int index = s.step().index();
      boolean explained =
          missed().stream()
              .anyMatch(
                  m -> {
                    int top = m.planned().round() * 2 * half + half;
                    int reach = route.shapes().size() - 1 - m.planned().pair();
                    return Math.abs(index - top) <= reach;
                  });
      if (s.verdict() == StepVerdict.SKIPPED && !explained) {
        steps.add(index);
      }
    }
    return steps;
  }

  private double noticedMs() {
    return Math.max(BIAS_MS, BIAS_SHARE * review.grid().slotSeconds() * 1000);
  }

  private void timing() {
    double[] off = PulseKept.offMs(drill.route(), review.notes(), review.reviewed());
    if (off.length < FEWEST_TO_TIME) {
      return;
    }
    double gapMs = review.grid().slotSeconds() * 1000;
    String within = Phrases.ms(Math.max(1, PulseKept.fourOfFiveFromOwnPulseMs(off, gapMs)));
    if (late.isEmpty()) {
      said.add("Four notes in five kept within " + within + " of your own pulse.");
    } else {
      said.add(
          Phrases.sentence(Phrases.list(lateLandings()))
              + "; of the other notes four in five kept within "
              + within
              + " of your own pulse.");
    }
    if (review.clock() == Clock.UNMEASURED) {
      said.add(
          "Whether you were ahead of the click or behind it cannot be said yet: the delay of this"
              + " input and output has not been measured.");
      return;
    }
    double bias = RobustStatistics.median(off);
    boolean together = PulseKept.fourOfFiveFromMiddleMs(off) < TOGETHER_SHARE * gapMs;
    if (together && Math.abs(bias) >= noticedMs() && review.grid().source() != Grid.Source.NOTES) {
      said.add(
          "On the whole you were "
              + Phrases.ms(bias)
              + (bias < 0 ? " ahead of the beat." : " behind the beat."));
    }
  }

  private Optional<LateLanding> latest() {
    return late.stream().max(Comparator.comparingDouble(LateLanding::lateMs));
  }

  /** "the shift up on the third string landed 62 ms late", for each that was. */
  private List<String> lateLandings() {
    List<String> each = new ArrayList<>();
    for (LateLanding landing : late) {
      ReviewedShift shift = landing.shift();
      PlannedShift planned = shift.planned();
      each.add(
          "the shift "
              + Phrases.way(planned.direction())
              + (drill.route().rounds() > 1 ? " in round " + (planned.round() + 1) : "")
              + " on the "
              + Phrases.string(shift.string().orElse(planned.string()))
              + " landed "
              + Phrases.ms(landing.lateMs())
              + " late");
    }
    return each;
  }

  private void tuning() {
    review
        .take()
        .tuningCents()
        .ifPresent(
            cents -> {
              if (Math.abs(cents) >= OFF_TUNE_CENTS) {
                said.add(
                    "The guitar is "
                        + Math.round(Math.abs(cents))
                        + " cents "
                        + (cents < 0 ? "flat" : "sharp")
                        + " as a whole; tune it before the next run.");
              }
            });
  }

  private void whatFirst() {
    Optional<ReviewedShift> missedUp = missed().stream().findFirst();
    if (missedUp.isPresent()) {
      PlannedShift planned = missedUp.get().planned();
      Step landing = drill.route().steps().get(planned.landingStep());
      said.add(
          "First: play up to the "
              + Phrases.string(planned.string())
              + " and stop on the landing note, fret "
              + landing.place().fret()
              + " with the "
              + Phrases.finger(planned.finger())
              + ", until the hand goes there by itself.");
      return;
    }
    Optional<Step> slip =
        review.steps().stream()
            .filter(s -> s.verdict() == StepVerdict.WRONG || s.verdict() == StepVerdict.SKIPPED)
            .map(ReviewedStep::step)
            .findFirst();
    if (slip.isPresent()) {
      said.add(
          "First: play slowly into the "
              + Slips.spot(slip.get())
              + ", "
              + slips.way(slip.get())
              + ", from a few notes before.");
      return;
    }
    Optional<String> elsewhere = shiftStrings.first();
    if (elsewhere.isPresent()) {
      said.add(elsewhere.get());
      return;
    }
    latest()
        .ifPresent(
            landing ->
                said.add(
                    "First: play the shift "
                        + Phrases.way(landing.shift().planned().direction())
                        + " alone, the two notes before it and the landing, at a tempo where it"
                        + " comes in time."));
  }
}
