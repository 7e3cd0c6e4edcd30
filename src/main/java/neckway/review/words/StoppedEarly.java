package neckway.review.words;

import java.util.List;
import neckway.review.StepVerdict;
import neckway.words.Wording;

/** A run that was not played to its end. */
final class StoppedEarly {
  /** Common practice, no source: stopping is no mistake; any other cause comes before it. */
  private static final double STOP = 0.1;

  private final Played played;

  StoppedEarly(Played played) {
    this.played = played;
  }

  List<Cause> causes() {
    MissedShifts missed = new MissedShifts(played);
    return played.steps(StepVerdict.UNPLAYED).stream()
        .filter(s -> !missed.explain(s))
        .limit(1)
        .map(
            s ->
                new Cause(
                    STOP,
                    s,
                    List.of(s),
                    Wording.of(
                        "stopped.goOn",
                        Phrases.from(s),
                        Phrases.before(played.step(s).place()),
                        played.way(played.step(s)))))
        .toList();
  }
}
