package neckway.review.words;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import neckway.drill.PlayableDrill;
import neckway.follow.Verdict;
import neckway.hand.ShiftVerdict;
import neckway.hear.RobustStatistics;
import neckway.neck.Direction;
import neckway.neck.Step;
import neckway.review.Clock;
import neckway.review.Grid;
import neckway.review.Landings;
import neckway.review.LateLanding;
import neckway.review.PulseKept;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedShift;
import neckway.review.ReviewedStep;
import neckway.review.StepVerdict;
import neckway.review.Timing;
import neckway.words.Wording;

/** The attempt that a review is of, laid on its drill: which note is which step, and where. */
final class Played {
  /** Slower by so much, for a beginning (common practice, no source). */
  private static final double SLOWER = 0.85;

  /**
   * A free start is written down to a tenth of a millisecond; nobody meets a click so closely but
   * by rare chance, and then a lean is left unsaid, no more.
   */
  private static final double FIRST_NOTE_IS_BEAT_SECONDS = 0.0001;

  private final PlayableDrill drill;
  private final Review review;
  private final int half;
  private final double ownSlotSeconds;
  private final Map<Integer, ReviewedNote> inPlace = new HashMap<>();

  Played(PlayableDrill drill, Review review) {
    this.drill = drill;
    this.review = review;
    this.half = (drill.route().stepsPerRound() - 1) / 2;
    this.ownSlotSeconds =
        review.keepsTheGrid()
            ? review.grid().slotSeconds()
            : review.heardSlotSeconds().orElseThrow();
    review.notes().stream()
        .filter(n -> n.attempt() == review.reviewed() && n.inPlace())
        .forEach(n -> inPlace.putIfAbsent(n.step().getAsInt(), n));
  }

  PlayableDrill drill() {
    return drill;
  }

  Review review() {
    return review;
  }

  int rounds() {
    return drill.route().rounds();
  }

  Step step(int index) {
    return drill.route().steps().get(index);
  }

  /** Steps from the bottom of a round to its top. */
  int half() {
    return half;
  }

  /** The round that a step lies in, from 0; the bottom note between two is the later one's. */
  int round(int step) {
    return Math.min(rounds() - 1, step / (2 * half));
  }

  /** The same place of every round: steps from the round's bottom note. */
  int inRound(int step) {
    return step - round(step) * 2 * half;
  }

  /** Index of a round's highest note. */
  int top(int round) {
    return round * 2 * half + half;
  }

  /** "going up", "at the top" or "coming down", with the round where there are several. */
  String way(Step step) {
    String way = wayAlone(step.index());
    return rounds() == 1 ? way : Wording.of("way.inRound", way, round(step.index()) + 1);
  }

  /** "going up", "at the top" or "coming down". */
  String wayAlone(int step) {
    int within = inRound(step);
    return Wording.of(within < half ? "way.going" : within == half ? "way.top" : "way.coming");
  }

  /** "fret 8 on the second string, coming down in rounds 1 and 3": one place, in some rounds. */
  String where(List<Integer> steps) {
    int first = steps.get(0);
    return Wording.of(
        "slip.place",
        Phrases.fretOnString(step(first).place()),
        wayAlone(first),
        Phrases.inRounds(steps.stream().map(this::round).distinct().toList(), rounds()));
  }

  /** Steps that are the same place of different rounds together, in the order met. */
  Collection<List<Integer>> byPlace(List<Integer> steps) {
    Map<Integer, List<Integer>> places = new LinkedHashMap<>();
    steps.forEach(s -> places.computeIfAbsent(inRound(s), p -> new ArrayList<>()).add(s));
    return places.values();
  }

  /** Up where the notes before a step lie lower. */
  Direction into(int step) {
    int within = inRound(step);
    return within > half || within == 0 ? Direction.DOWN : Direction.UP;
  }

  /** Notes of the attempt with a verdict. */
  List<ReviewedNote> notes(Verdict verdict) {
    return review.notes().stream()
        .filter(n -> n.attempt() == review.reviewed() && n.verdict() == verdict)
        .toList();
  }

  /** The note in place of a step, right or wrong. */
  Optional<ReviewedNote> inPlace(int step) {
    return Optional.ofNullable(inPlace.get(step));
  }

  /** Indexes of the steps with a verdict. */
  List<Integer> steps(StepVerdict verdict) {
    return review.steps().stream()
        .filter(s -> s.verdict() == verdict)
        .map(ReviewedStep::step)
        .map(Step::index)
        .toList();
  }

  /** Steps that were heard in their time, but not what they were. */
  List<Integer> unnamed() {
    return steps(StepVerdict.PLAYED).stream().filter(s -> inPlace(s).isEmpty()).toList();
  }

  List<ReviewedShift> shifts(ShiftVerdict verdict) {
    return review.shifts().stream().filter(s -> s.verdict() == verdict).toList();
  }

  /** Steps on which the hand landed, as far as it is known; else as planned. */
  Set<Integer> landings() {
    Landings landings = new Landings(drill);
    return review.shifts().stream()
        .filter(shift -> shift.verdict() != ShiftVerdict.MISSED)
        .map(landings::step)
        .collect(Collectors.toUnmodifiableSet());
  }

  /** Notes that belong to no step, struck between the first step's note and the last one's. */
  List<ReviewedNote> straysBetween() {
    double from = inPlace.values().stream().mapToDouble(ReviewedNote::time).min().orElse(0);
    double to = inPlace.values().stream().mapToDouble(ReviewedNote::time).max().orElse(0);
    return notes(Verdict.EXTRA).stream().filter(n -> n.time() > from && n.time() < to).toList();
  }

  /** The step in the place of which a note, or the last one before it, was heard. */
  int stepAt(ReviewedNote note) {
    return note.step()
        .orElseGet(
            () ->
                IntStream.range(0, drill.route().steps().size())
                    .filter(s -> inPlace(s).filter(n -> n.time() <= note.time()).isPresent())
                    .max()
                    .orElse(0));
  }

  double slotMs() {
    return 1000 * review.grid().slotSeconds();
  }

  /**
   * Signed distances from the slots as the player swings, ms, of all notes that keep time but the
   * landings.
   */
  double[] offMs() {
    return PulseKept.ownOffMs(drill.route(), review);
  }

  /** The same of all notes but those of some steps. */
  double[] offMsWithout(Set<Integer> steps) {
    return PulseKept.ownOffMsWithout(steps, drill.route(), review);
  }

  /** Four notes in five lay so near to the player's own pulse, ms; those of some steps left out. */
  double ownPulseMsWithout(Set<Integer> steps) {
    double[] off = offMsWithout(steps);
    return off.length == 0 ? 0 : PulseKept.fourOfFiveFromOwnPulseMs(off, slotMs());
  }

  /**
   * A tempo to go back to, beats a minute: slower by a good step than what was played, and not
   * faster than the drill.
   */
  long slowerTempo() {
    double played = SLOWER * review.grid().tempo();
    return Math.round(Math.min(played, drill.pulse().tempo()));
  }

  /** What lies further off than this is late, not uneven, ms. */
  double lateFromMs() {
    return LateLanding.fromMs(drill, review);
  }

  /** Whether there was a beat besides the player's own, and its place is known. */
  boolean hasBeatToKeep() {
    return hasClick() && review.clock() == Clock.MEASURED;
  }

  /** Whether the slots are those of something that sounded or was named, not the player's own. */
  boolean hasClick() {
    return review.grid().source() != Grid.Source.NOTES && !firstNoteWasTheBeat();
  }

  /** What a note takes, seconds: the grid's slot, or the player's own where that is another. */
  double ownSlotSeconds() {
    return ownSlotSeconds;
  }

  private boolean firstNoteWasTheBeat() {
    return review.notes().stream()
        .limit(1)
        .anyMatch(n -> Math.abs(n.time() - review.grid().due(0)) <= FIRST_NOTE_IS_BEAT_SECONDS);
  }

  /** The middle of the offsets of the notes in place of some steps, ms, where that many tell it. */
  Optional<Double> middleOffMs(IntStream steps, int fewest) {
    List<Double> off = new ArrayList<>();
    steps
        .filter(s -> s >= 0 && s < drill.route().steps().size())
        .forEach(
            s ->
                inPlace(s)
                    .filter(n -> n.timing() != Timing.UNSURE)
                    .ifPresent(n -> off.add(review.ownOffMs(n))));
    return off.size() < fewest ? Optional.empty() : Optional.of(RobustStatistics.median(off));
  }
}
