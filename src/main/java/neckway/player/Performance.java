package neckway.player;

import java.util.List;
import neckway.player.plan.Mistake;
import neckway.player.plan.PlayedNote;
import neckway.player.plan.PlayedShift;

/**
 * A rendered take with its truth.
 *
 * @param samples mono, -1 to 1
 * @param sampleRate Hz
 * @param firstBeat seconds from the first sample to the beat of step 0
 * @param notes in order of time
 * @param shifts in the order met
 * @param mistakes what was done on purpose, those drawn by chance included
 * @param attempt the attempt that got furthest; of equals the one with fewer slips, then the later
 * @param skipped its steps that were left out before its last note
 */
public record Performance(
    float[] samples,
    int sampleRate,
    double firstBeat,
    List<PlayedNote> notes,
    List<PlayedShift> shifts,
    List<Mistake> mistakes,
    int attempt,
    List<Integer> skipped) {
  public Performance {
    notes = List.copyOf(notes);
    shifts = List.copyOf(shifts);
    mistakes = List.copyOf(mistakes);
    skipped = List.copyOf(skipped);
  }
}
