package neckway.review.words;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import neckway.hear.RobustStatistics;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.PlannedShift;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedShift;
import neckway.review.Timing;

/**
 * Says which shifts landed late. A landing is measured from the note before it; where that note
 * came early the landing only seems late, and no figure is given of it.
 */
final class LateLandings {
  /** At least this share of a delay must be the landing's own, for its figure to be said. */
  private static final double OWN_SHARE = 0.7;

  /** As many notes before a landing tell the pulse that its predecessor is held against. */
  private static final int PULSE_NOTES = 5;

  private static final int FEWEST_PULSE_NOTES = 2;
  private static final int MOST_EACH = 3;

  /** Shifts of the same pair, way and string. */
  record Kind(Direction direction, int pair, GuitarString string) {}

  /** A landing that was late. */
  record Late(PlannedShift shift, double lateMs) {}

  private final Played played;
  private final Map<Kind, List<Late>> late = new LinkedHashMap<>();
  private final Map<Kind, List<PlannedShift>> seeming = new LinkedHashMap<>();

  LateLandings(Played played) {
    this.played = played;
    double fromMs = played.lateFromMs();
    for (ReviewedShift shift : played.review().shifts()) {
      double lateMs = shift.lateMs().orElse(0);
      if (lateMs > fromMs) {
        add(shift, lateMs);
      }
    }
  }

  private void add(ReviewedShift shift, double lateMs) {
    PlannedShift planned = shift.planned();
    Kind kind =
        new Kind(planned.direction(), planned.pair(), shift.string().orElse(planned.string()));
    double earlyMs = Math.max(0, -predecessorOffPulseMs(planned.landingStep()));
    boolean itself = earlyMs <= (1 - OWN_SHARE) * lateMs;
    if (itself && landingSaysLate(planned.landingStep())) {
      late.computeIfAbsent(kind, k -> new ArrayList<>()).add(new Late(planned, lateMs));
    } else if (!itself && earlyMs > Timing.bandMs(played.review().grid().slotSeconds())) {
      seeming.computeIfAbsent(kind, k -> new ArrayList<>()).add(planned);
    }
  }

  /**
   * Whether the landing's place on the page is late too: counted from the slot after the one of the
   * note before, as the page counts, so that most of a slot late is not early.
   */
  private boolean landingSaysLate(int landing) {
    Optional<ReviewedNote> note = played.inPlace(landing);
    Optional<ReviewedNote> before = played.inPlace(landing - 1);
    if (note.isEmpty()) {
      return true;
    }
    long waited = before.map(b -> Math.max(0, note.get().slot() - b.slot() - 1)).orElse(0L);
    double offMs = note.get().offMs() + waited * played.slotMs();
    return offMs > Timing.bandMs(played.review().grid().slotSeconds());
  }

  /** How far the note before a landing lay from the middle of those before it, ms. */
  private double predecessorOffPulseMs(int landing) {
    Optional<ReviewedNote> before = played.inPlace(landing - 1);
    Optional<Double> pulse =
        played.middleOffMs(
            IntStream.range(landing - 1 - PULSE_NOTES, landing - 1), FEWEST_PULSE_NOTES);
    if (before.isEmpty() || pulse.isEmpty()) {
      return 0;
    }
    return Math.IEEEremainder(before.get().offMs() - pulse.get(), played.slotMs());
  }

  /** Those that were late themselves, by their kind. */
  Map<Kind, List<Late>> late() {
    return late;
  }

  List<String> sentences() {
    List<String> said = new ArrayList<>();
    late.forEach((kind, each) -> said.add(sentence(kind, each)));
    seeming.forEach(
        (kind, each) ->
            said.add(
                "The note before "
                    + shift(kind)
                    + rounds(each)
                    + " came early, so the landing seemed late."));
    return said;
  }

  private String sentence(Kind kind, List<Late> each) {
    String shift = Phrases.sentence(shift(kind));
    if (each.size() <= MOST_EACH) {
      List<String> landed =
          each.stream()
              .map(l -> Phrases.ms(l.lateMs()) + " late" + rounds(List.of(l.shift())))
              .toList();
      return shift + " landed " + Phrases.list(landed) + ".";
    }
    return shift
        + " landed late"
        + rounds(each.stream().map(Late::shift).toList())
        + ", mostly by some "
        + Phrases.ms(middleMs(each))
        + ".";
  }

  static double middleMs(List<Late> each) {
    return RobustStatistics.median(each.stream().map(Late::lateMs).toList());
  }

  /** "the shift up on the third string". */
  static String shift(Kind kind) {
    return "the shift "
        + Phrases.way(kind.direction())
        + " on the "
        + Phrases.string(kind.string());
  }

  private String rounds(List<PlannedShift> shifts) {
    return Phrases.inRounds(shifts.stream().map(PlannedShift::round).toList(), played.rounds());
  }
}
