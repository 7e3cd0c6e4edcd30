package neckway.live;

import java.util.Optional;
import neckway.hear.beside.LiveRemover;

/** What a round begins with. It finds when the first note is due. */
interface RoundStart {
  /**
   * Looks for the first beat in what has come; asked with each block until it is found.
   *
   * @param take with all of its sound still kept
   */
  Optional<FirstBeat> find(LiveTake take);

  /** Where the round ends before it was found: what is likeliest. */
  FirstBeat atEnd(LiveTake take);

  /** Sound has come, whether the first beat is known or not. */
  default void heard(LiveTake take, LiveRunListener listener) {}

  /**
   * What is played out, on the take's frames, once the first beat is found or the round has ended;
   * empty where none of it is to be taken out.
   */
  default Optional<LiveRemover.Known> played() {
    return Optional.empty();
  }

  /** Whether the output that it plays on is gone. */
  default boolean outputGone() {
    return false;
  }

  /** One line on what makes the times of this round doubtful; asked at its end. */
  default Optional<String> doubt(LiveTake take) {
    return Optional.empty();
  }
}
