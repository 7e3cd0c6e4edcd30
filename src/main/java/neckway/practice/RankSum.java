package neckway.practice;

import java.util.Arrays;

/**
 * Whether one lot of figures is smaller than another beyond chance: the test of Mann and Whitney
 * (1947, "On a test of whether one of two random variables is stochastically larger than the
 * other", Annals of Mathematical Statistics 18, 50-60), which asks nothing of how they spread.
 *
 * <p>Equal figures share their ranks. Up to {@value #MOST_EXACT} figures in all the chance is
 * counted over every way to part the ranks, which is exact with shared ranks too; beyond that it is
 * of the normal distribution, with corrections for shared ranks and for steps.
 */
public final class RankSum {
  /** Figures of both lots that are still counted out, which takes a moment. */
  static final int MOST_EXACT = 100;

  private final double p;
  private final boolean smaller;

  /**
   * @param mine one figure or more
   * @param theirs one figure or more
   */
  public RankSum(double[] mine, double[] theirs) {
    if (mine.length == 0 || theirs.length == 0) {
      throw new IllegalArgumentException("nothing to compare");
    }
    int[] ranks = doubledRanks(mine, theirs);
    long sum = 0;
    for (int i = 0; i < mine.length; i++) {
      sum += ranks[i];
    }
    // twice the mean of the sum of ranks, since the ranks are doubled
    double mean = mine.length * (double) (ranks.length + 1);
    smaller = sum < mean;
    double distance = Math.abs(sum - mean);
    p =
        ranks.length <= MOST_EXACT
            ? exact(ranks, mine.length, mean, distance)
            : normal(ranks, mine.length, distance);
  }

  /** The ranks of all from 1, doubled so that shared ones are whole; mine first. */
  private static int[] doubledRanks(double[] mine, double[] theirs) {
    double[] all = Arrays.copyOf(mine, mine.length + theirs.length);
    System.arraycopy(theirs, 0, all, mine.length, theirs.length);
    double[] sorted = all.clone();
    Arrays.sort(sorted);
    int[] ranks = new int[all.length];
    for (int i = 0; i < all.length; i++) {
      int first = 0;
      int last = -1;
      for (int k = 0; k < sorted.length; k++) {
        if (sorted[k] == all[i]) {
          first = last < 0 ? k : first;
          last = k;
        }
      }
      ranks[i] = first + last + 2;
    }
    return ranks;
  }

  /** The share of all ways to choose so many ranks whose sum is as far from the mean. */
  private static double exact(int[] ranks, int chosen, double mean, double distance) {
    int most = Arrays.stream(ranks).sum();
    double[][] ways = new double[chosen + 1][most + 1];
    ways[0][0] = 1;
    for (int rank : ranks) {
      for (int count = chosen; count >= 1; count--) {
        for (int sum = most; sum >= rank; sum--) {
          ways[count][sum] += ways[count - 1][sum - rank];
        }
      }
    }
    double all = 0;
    double far = 0;
    for (int sum = 0; sum <= most; sum++) {
      all += ways[chosen][sum];
      far += Math.abs(sum - mean) >= distance ? ways[chosen][sum] : 0;
    }
    return far / all;
  }

  private static double normal(int[] ranks, int chosen, double distance) {
    double n = ranks.length;
    double mean = n + 1;
    double squares = Arrays.stream(ranks).mapToDouble(r -> (r - mean) * (r - mean)).sum();
    double variance = chosen * (n - chosen) / (n * (n - 1)) * squares;
    if (variance == 0) {
      return 1;
    }
    // the sum of doubled ranks goes in steps of two, so that half a step is one
    double z = Math.max(0, distance - 1) / Math.sqrt(variance);
    return 2 * upperTail(z);
  }

  /**
   * The chance that a standard normal figure is larger: Abramowitz and Stegun, Handbook of
   * Mathematical Functions, 26.2.17, with an error below 7.5e-8.
   */
  private static double upperTail(double z) {
    double t = 1 / (1 + 0.2316419 * z);
    double poly =
        t
            * (0.319381530
                + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
    return poly * Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI);
  }

  /** How likely so large a difference, either way, is by chance: 0 to 1. */
  public double p() {
    return p;
  }

  /** Whether mine are the smaller ones. */
  public boolean isSmaller() {
    return smaller;
  }
}
