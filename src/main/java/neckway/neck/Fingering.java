package neckway.neck;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Which finger plays what: one finger a fret and a hand four frets wide, with the fewest shifts
 * from string to string (common practice, no published source). Among equals the shorter way wins,
 * then the fewer notes for the fourth finger, then the lower place on the neck, which keeps the
 * open position in the first.
 *
 * <p>Found by dynamic programming over the strings; the state is the fret under the first finger.
 */
final class Fingering {
  /** Frets that a hand covers. */
  static final int HAND_FRETS = 4;

  /** A hand that has to go further than this between two strings does not hold a shape. */
  static final int FURTHEST_SHIFT = 4;

  private static final long SHIFT = 1_000_000_000L;
  private static final long FRET_SHIFTED = 1_000_000L;
  private static final long FOURTH_FINGER = 1_000L;
  private static final int HIGHEST_HAND = 32;
  private static final long NO_WAY = Long.MAX_VALUE;

  private Fingering() {}

  /**
   * Where the hand is on each string.
   *
   * @param first fret of the lower note, by string
   * @param second fret of the higher note, by string
   * @return the fret under the first finger, by string; empty where no hand can do it
   */
  static Optional<List<Integer>> hands(int[] first, int[] second) {
    int strings = first.length;
    long[][] cost = new long[strings][HIGHEST_HAND];
    int[][] from = new int[strings][HIGHEST_HAND];
    for (int row = 0; row < strings; row++) {
      for (int hand = 0; hand < HIGHEST_HAND; hand++) {
        cost[row][hand] = NO_WAY;
        if (!reaches(hand, first[row]) || !reaches(hand, second[row])) {
          continue;
        }
        long own = own(hand, first[row], second[row]);
        if (row == 0) {
          cost[row][hand] = own;
          continue;
        }
        for (int before = 0; before < HIGHEST_HAND; before++) {
          int shifted = Math.abs(hand - before);
          if (cost[row - 1][before] == NO_WAY || shifted > FURTHEST_SHIFT) {
            continue;
          }
          long all =
              cost[row - 1][before] + own + (shifted == 0 ? 0 : SHIFT) + FRET_SHIFTED * shifted;
          if (all < cost[row][hand]) {
            cost[row][hand] = all;
            from[row][hand] = before;
          }
        }
      }
    }
    return trace(cost, from);
  }

  /** The finger that plays a fret: 0 for an open string, else 1 to 4. */
  static int finger(int hand, int fret) {
    return fret == 0 ? 0 : fret - hand + 1;
  }

  private static boolean reaches(int hand, int fret) {
    return fret == 0 ? hand >= 1 : hand >= 1 && fret >= hand && fret < hand + HAND_FRETS;
  }

  private static long own(int hand, int first, int second) {
    long fourths = 0;
    for (int fret : new int[] {first, second}) {
      fourths += finger(hand, fret) == HAND_FRETS ? 1 : 0;
    }
    return fourths * FOURTH_FINGER + hand;
  }

  private static Optional<List<Integer>> trace(long[][] cost, int[][] from) {
    int last = cost.length - 1;
    int best = 0;
    for (int hand = 1; hand < HIGHEST_HAND; hand++) {
      if (cost[last][hand] < cost[last][best]) {
        best = hand;
      }
    }
    if (cost[last][best] == NO_WAY) {
      return Optional.empty();
    }
    List<Integer> hands = new ArrayList<>();
    for (int row = last, hand = best; row >= 0; row--) {
      hands.add(0, hand);
      hand = from[row][hand];
    }
    return Optional.of(hands);
  }
}
