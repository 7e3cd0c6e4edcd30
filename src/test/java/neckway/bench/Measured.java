package neckway.bench;

import java.util.List;
import java.util.OptionalInt;

/**
 * What was said of a take.
 *
 * @param notes every note
 * @param skipped steps said to be left out
 * @param firstBeat when step 0 was said to be due, seconds
 * @param slotSeconds from slot to slot, as said
 * @param gridSource where the grid was said to be known from
 * @param cpuSeconds processor time that it took
 */
public record Measured(
    List<Said> notes,
    List<Integer> skipped,
    double firstBeat,
    double slotSeconds,
    String gridSource,
    double cpuSeconds) {
  /** The verdict of a note that is what was due. */
  static final String RIGHT = "right";

  /**
   * One note.
   *
   * @param time seconds
   * @param midi MIDI note number
   * @param verdict in the review's words
   * @param step empty for an extra note
   * @param attempt from 0
   * @param offMs signed distance from the slot
   * @param decided seconds heard when it was said
   */
  public record Said(
      double time,
      int midi,
      String verdict,
      OptionalInt step,
      int attempt,
      double offMs,
      double decided) {}
}
