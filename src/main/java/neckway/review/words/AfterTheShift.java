package neckway.review.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import neckway.hand.ShiftVerdict;
import neckway.hear.RobustStatistics;
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

  /** The least after any one landing, as a share of the least in the middle. */
  private static final double EACH = 0.5;

  /** So many of the landings; of two, both. */
  private static final double MOST = 2.0 / 3;

  private final Played played;

  AfterTheShift(Played played) {
    this.played = played;
  }

  List<Cause> causes() {
    List<Double> offMs = new ArrayList<>();
    List<PlannedShift> shifts = landedInTime();
    for (PlannedShift shift : shifts) {
      offMs(shift.landingStep(), offMs);
    }
    double leastMs = BANDS * Timing.bandMs(played.review().grid().slotSeconds());
    if (offMs.size() < FEWEST_LANDINGS || !oneWay(offMs, leastMs)) {
      return List.of();
    }
    double middleMs = RobustStatistics.median(offMs);
    double cost =
        NOTE_OFF_BY_A_SLOT * NOTES_AFTER * offMs.size() * Math.abs(middleMs) / played.slotMs();
    String advice = Wording.of(middleMs < 0 ? "after.rush" : "after.drag", Phrases.ms(middleMs));
    List<Integer> landings = shifts.stream().map(PlannedShift::landingStep).toList();
    return List.of(new Cause(cost, landings.get(0), landings, advice));
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
