package neckway.desk.play;

import java.util.List;
import java.util.Optional;
import neckway.calls.Call;
import neckway.calls.CalledRun;
import neckway.calls.Caller;
import neckway.drill.PlayableDrill;
import neckway.review.Review;

/**
 * The calls of a run, each told when its beat comes, and no note of the way before that.
 *
 * @param drill as it is called
 * @param calls in the order in which they sound
 */
record CalledWay(PlayableDrill drill, List<Call> calls) {
  static CalledWay of(Caller caller) {
    return new CalledWay(caller.drill(), caller.calls());
  }

  private Optional<Call> last(long beat) {
    return calls.stream()
        .takeWhile(call -> call.cue().beat() <= beat)
        .reduce((before, after) -> after);
  }

  /** What was called last by a beat; empty before the first call. */
  String words(long beat) {
    return last(beat).map(call -> call.spoken(drill.tuning())).orElse("");
  }

  /** The steps that are known by a beat: those up to the turn that was called last. */
  int knownSteps(long beat) {
    int known = last(beat).map(Call::turnStep).orElse(calls.get(0).landingStep() - 1) + 1;
    return Math.min(known, drill.route().steps().size());
  }

  /** How they were followed, as far as the player went. */
  CalledRun run(Review review) {
    return CalledRun.of(drill, calls, review).upTo(review);
  }
}
