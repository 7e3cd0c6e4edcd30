package neckway.hear.signal;

/**
 * The change point in a row of energies under two variances, by maximum likelihood (Basseville and
 * Nikiforov, "Detection of Abrupt Changes", 1993, the change in variance of a Gaussian). Only rises
 * count.
 */
public final class ChangePoint {
  private final int mostBefore;
  private final int mostAfter;
  private final int leastAfter;
  private double score;
  private double gain;

  /**
   * @param mostBefore frames looked at before the change, at most
   * @param mostAfter frames after it, at most
   * @param leastAfter frames after it, at least
   */
  public ChangePoint(int mostBefore, int mostAfter, int leastAfter) {
    this.mostBefore = mostBefore;
    this.mostAfter = mostAfter;
    this.leastAfter = leastAfter;
  }

  /** The index of the first frame after the change; the middle if nothing rises. */
  public int find(double[] energy) {
    score = Double.NEGATIVE_INFINITY;
    int best = energy.length / 2;
    for (int k = 6; k < energy.length - leastAfter; k++) {
      int before = Math.min(k, mostBefore);
      int after = Math.min(energy.length - k, mostAfter);
      double a = 0;
      double b = 0;
      for (int j = k - before; j < k; j++) {
        a += energy[j];
      }
      for (int j = k; j < k + after; j++) {
        b += energy[j];
      }
      double all = (a + b) / (before + after);
      a /= before;
      b /= after;
      double ratio = (before + after) * Math.log(all) - before * Math.log(a) - after * Math.log(b);
      if (b > a && ratio > score) {
        score = ratio;
        best = k;
        gain = b / a;
      }
    }
    return best;
  }

  /** Log-likelihood ratio of the last change found: large is certain. */
  double score() {
    return score;
  }

  /** How many times more energy there is after the last change than before it. */
  public double gain() {
    return gain;
  }
}
