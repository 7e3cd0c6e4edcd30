package neckway.review.words;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import neckway.hand.ShiftVerdict;
import neckway.hear.RobustStatistics;
import neckway.neck.Direction;
import neckway.neck.PlannedShift;
import neckway.review.ReviewedShift;
import neckway.review.Timing;
import neckway.words.Wording;

/** Rushing or dragging in the notes after each landing, against the notes around them. */
final class AfterTheShift {
  /** Common practice, no source: a note off by a whole slot would be as bad as a wrong one. */
  private static final double NOTE_OFF_BY_A_SLOT = 1;

  private static final int NOTES_AFTER = 4;
  private static final int FEWEST_AFTER = 2;

  /** Notes on either side of these tell where the pulse is. */
  private static final int NOTES_AROUND = 8;

  private static final int FEWEST_AROUND = 4;

  /** One landing may be an accident. */
  private static final int FEWEST_LANDINGS = 2;

  /** Twice what is called on time: less is unevenness (common practice, no source). */
  private static final double BANDS = 2;

  /**
   * So many times what the player's other notes stray by: less is unevenness. Of 400 made-up runs
   * whose notes strayed at random, by 15 to 60 ms, 12 were said to rush or drag with 1, none with
   * 1.5 or 2; 2 is what a late landing has.
   */
  private static final double USUAL = 2;

  /** The least after any one landing, as a share of the least in the middle. */
  private static final double EACH = 0.5;

  /** So many of the landings; of two, both. */
  private static final double MOST = 2.0 / 3;

  private final Played played;
  private final List<Found> found;

  AfterTheShift(Played played) {
    this.played = played;
    this.found = found();
  }

  /**
   * Rushing or dragging after some landings.
   *
   * @param direction of the shifts; empty where it is after those up and those down
   * @param middleMs how far off the notes after them are, early negative
   */
  private record Found(Optional<Direction> direction, double middleMs, List<PlannedShift> shifts) {}

  /** After all shifts alike, or else after those up or those down. */
  private List<Found> found() {
    List<PlannedShift> shifts = landedInTime();
    Optional<Found> afterAll = found(Optional.empty(), shifts);
    if (afterAll.isPresent()) {
      return List.of(afterAll.get());
    }
    return Arrays.stream(Direction.values())
        .map(
            way ->
                found(Optional.of(way), shifts.stream().filter(s -> s.direction() == way).toList()))
        .flatMap(Optional::stream)
        .toList();
  }

  private Optional<Found> found(Optional<Direction> direction, List<PlannedShift> shifts) {
    List<Double> offMs = new ArrayList<>();
    for (PlannedShift shift : shifts) {
      offMs(shift.landingStep(), offMs);
    }
    double bandsMs = BANDS * Timing.bandMs(played.review().grid().slotSeconds());
    double usualMs = USUAL * played.ownPulseMsWithout(after(shifts));
    double leastMs = Math.max(bandsMs, usualMs);
    return offMs.size() < FEWEST_LANDINGS || !oneWay(offMs, leastMs)
        ? Optional.empty()
        : Optional.of(new Found(direction, RobustStatistics.median(offMs), shifts));
  }

  /** "After the shifts you rushed, by some 60 ms." */
  List<Sentence> sentences() {
    return found.stream()
        .map(
            f ->
                Sentence.of(
                    Wording.of(
                        f.middleMs() < 0 ? key("after.rushed", f) : key("after.dragged", f),
                        Phrases.ms(f.middleMs())),
                    landings(f)))
        .toList();
  }

  private static String key(String key, Found f) {
    return f.direction().map(way -> Phrases.towards(key, way)).orElse(key + ".all");
  }

  List<Cause> causes() {
    return found.stream().map(this::cause).toList();
  }

  private Cause cause(Found f) {
    double cost =
        NOTE_OFF_BY_A_SLOT
            * NOTES_AFTER
            * f.shifts().size()
            * Math.abs(f.middleMs())
            / played.slotMs();
    String advice = Wording.of(f.middleMs() < 0 ? "after.rush" : "after.drag");
    return new Cause(cost, landings(f).get(0), landings(f), advice);
  }

  private static List<Integer> landings(Found f) {
    return f.shifts().stream().map(PlannedShift::landingStep).toList();
  }

  /** The steps whose time this tells of. */
  Set<Integer> steps() {
    return found.stream()
        .flatMap(f -> after(f.shifts()).stream())
        .collect(Collectors.toUnmodifiableSet());
  }

  private static Set<Integer> after(List<PlannedShift> shifts) {
    return shifts.stream()
        .map(PlannedShift::landingStep)
        .flatMapToInt(landing -> IntStream.rangeClosed(landing + 1, landing + NOTES_AFTER))
        .boxed()
        .collect(Collectors.toUnmodifiableSet());
  }

  /** Whether they are off in the middle, and after most landings to the same side. */
  private static boolean oneWay(List<Double> offMs, double leastMs) {
    double middleMs = RobustStatistics.median(offMs);
    long alike =
        offMs.stream().filter(off -> off * Math.signum(middleMs) >= EACH * leastMs).count();
    return Math.abs(middleMs) >= leastMs && alike >= MOST * offMs.size();
  }

  /** A late landing moves all that follows; that is not rushing or dragging. */
  private List<PlannedShift> landedInTime() {
    double lateFromMs = played.lateFromMs();
    return played.review().shifts().stream()
        .filter(s -> s.verdict() == ShiftVerdict.MADE || s.verdict() == ShiftVerdict.UNHEARD)
        .filter(s -> Math.abs(s.lateMs().orElse(0)) <= lateFromMs)
        .map(ReviewedShift::planned)
        .toList();
  }

  private void offMs(int landing, List<Double> to) {
    int last = landing + NOTES_AFTER;
    Set<Integer> after =
        IntStream.rangeClosed(landing + 1, last).boxed().collect(Collectors.toSet());
    IntStream around =
        IntStream.rangeClosed(landing - NOTES_AROUND, last + NOTES_AROUND)
            .filter(s -> s != landing && !after.contains(s));
    played
        .middleOffMs(IntStream.rangeClosed(landing + 1, last), FEWEST_AFTER)
        .ifPresent(
            here ->
                played
                    .middleOffMs(around, FEWEST_AROUND)
                    .ifPresent(there -> to.add(Math.IEEEremainder(here - there, played.slotMs()))));
  }
}
