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
 * @param swing the share of a pair of notes that the first one took, where it can be told
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
    OptionalDouble swing,
    List<String> words) {
  /** Without a swing that could be told. */
  public Summary(
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
    this(
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
        OptionalDouble.empty(),
        words);
  }

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
        swing,
        said);
  }
}
