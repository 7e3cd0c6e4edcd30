package neckway.review;

import java.util.List;
import java.util.OptionalDouble;

/**
 * The attempt that got furthest, in figures and words.
 *
 * @param notes heard in it
 * @param right of them
 * @param wrong of them
 * @param extra of them
 * @param repeat of them
 * @param skipped steps left out
 * @param offMsMedian bias of the notes in their slots, landings apart; early negative
 * @param offMsSpread their steadiness: 1.4826 times the median distance from the median
 * @param shiftsMade where planned
 * @param shiftsPlanned in all
 * @param words plain sentences
 */
public record Summary(
    int notes,
    int right,
    int wrong,
    int extra,
    int repeat,
    int skipped,
    OptionalDouble offMsMedian,
    OptionalDouble offMsSpread,
    int shiftsMade,
    int shiftsPlanned,
    List<String> words) {
  /** The same with its sentences. */
  Summary withWords(List<String> said) {
    return new Summary(
        notes,
        right,
        wrong,
        extra,
        repeat,
        skipped,
        offMsMedian,
        offMsSpread,
        shiftsMade,
        shiftsPlanned,
        said);
  }
}
