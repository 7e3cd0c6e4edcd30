package neckway.review.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.hear.RobustStatistics;
import neckway.review.Clock;
import neckway.review.PulseKept;
import neckway.review.Timing;
import neckway.words.Wording;

/** Says how the run lay in time: late landings first, then how even the rest was, then its lean. */
final class KeptTime {
  /** What a listener can notice: 6 ms, or 2.5 % of a gap (Friberg and Sundberg 1995). */
  private static final double LEAN_MS = 6;

  private static final double LEAN_SHARE = 0.025;

  /** Fewer notes say nothing of how even a run was. */
  static final int FEWEST_TO_TIME = 6;

  /** Notes that lie further apart in their slots have no common lean to speak of. */
  private static final double TOGETHER_SHARE = 0.2;

  private final Played played;
  private final double[] offMs;

  KeptTime(Played played) {
    this.played = played;
    this.offMs = played.offMs();
  }

  List<Sentence> sentences() {
    List<Sentence> said = new ArrayList<>(new LateLandings(played).sentences());
    said.addAll(new AfterTheShift(played).sentences());
    new HeardTempo(played).sentence().map(Sentence::of).ifPresent(said::add);
    new SwingKept(played).sentence().ifPresent(said::add);
    if (offMs.length < FEWEST_TO_TIME || !played.review().keepsTheGrid()) {
      return said;
    }
    evenness().map(Sentence::of).ifPresent(said::add);
    if (played.hasClick() && played.review().clock() == Clock.UNMEASURED) {
      said.add(Sentence.of(Wording.of("kept.unmeasured")));
    }
    leanMs()
        .ifPresent(
            lean ->
                said.add(
                    Sentence.of(
                        Wording.of(lean < 0 ? "kept.ahead" : "kept.behind", Phrases.ms(lean)))));
    return said;
  }

  /** How even the notes were of which nothing else was said: the word first, then its figure. */
  private Optional<String> evenness() {
    UnevenTime uneven = new UnevenTime(played);
    if (uneven.notes() < FEWEST_TO_TIME) {
      return Optional.empty();
    }
    double ms = Math.max(1, uneven.ownPulseMs());
    boolean even = ms <= Timing.bandMs(played.review().grid().slotSeconds());
    boolean apart =
        !new LateLandings(played).late().isEmpty()
            || !new AfterTheShift(played).steps().isEmpty()
            || !new Stumbles(played).waits().isEmpty();
    String key = uneven.isUneven() ? "kept.uneven" : even ? "kept.even" : "kept.fair";
    return Optional.of(Wording.of(key + (apart ? ".others" : ".all"), Phrases.ms(ms)));
  }

  /** How far the run as a whole lay off the beat, early negative, where it can be noticed. */
  OptionalDouble leanMs() {
    if (offMs.length < FEWEST_TO_TIME
        || !played.hasBeatToKeep()
        || !played.review().keepsTheGrid()) {
      return OptionalDouble.empty();
    }
    double lean = RobustStatistics.median(offMs);
    boolean together = PulseKept.fourOfFiveFromMiddleMs(offMs) < TOGETHER_SHARE * played.slotMs();
    boolean noticed = Math.abs(lean) >= Math.max(LEAN_MS, LEAN_SHARE * played.slotMs());
    return together && noticed ? OptionalDouble.of(lean) : OptionalDouble.empty();
  }
}
