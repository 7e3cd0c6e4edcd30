package neckway.hear.signal;

/**
 * What a sound would go on as if nothing new came: linear prediction with coefficients by Burg's
 * method (Burg, "Maximum entropy spectral analysis", 1967; used to extrapolate sound by Kauppinen
 * and Roth, "Audio signal extrapolation", DAFx 2002). Strings that ring on and hum are sums of
 * slowly dying sines, which it carries on well for some tens of milliseconds.
 */
public final class LinearPredictor {
  private final int order;
  private final int length;
  private final float[] forward;
  private final float[] backward;
  private final float[] delayed;
  private final float[] a;
  private final float[] work;
  private final float[] out;
  private float least;
  private int carried;

  /**
   * @param order coefficients
   * @param length frames of the past that are looked at, more than twice the order
   * @param most frames of the future at the most
   */
  public LinearPredictor(int order, int length, int most) {
    if (length <= 2 * order) {
      throw new IllegalArgumentException("length " + length + " for order " + order);
    }
    this.order = order;
    this.length = length;
    forward = new float[length];
    backward = new float[length];
    delayed = new float[length];
    a = new float[order + 1];
    work = new float[order + 1];
    out = new float[order + most];
  }

  /** Learns from the {@code length} samples that end before {@code to}. */
  public void learn(float[] y, int to) {
    int from = to - length;
    System.arraycopy(y, from, forward, 0, length);
    System.arraycopy(y, from, delayed, 1, length - 1);
    java.util.Arrays.fill(a, 0);
    a[0] = 1;
    float start = 0;
    for (float f : forward) {
      start += f * f;
    }
    least = 3e-8f * start;
    for (int m = 1; m <= order; m++) {
      float k = reflect(m);
      for (int i = 0; i <= m; i++) {
        work[i] = a[i] + k * a[m - i];
      }
      System.arraycopy(work, 0, a, 0, m + 1);
    }
    System.arraycopy(y, to - order, out, 0, order);
    carried = 0;
  }

  /** The next reflection coefficient; {@code delayed} is the backward error, one frame late. */
  private float reflect(int m) {
    float dot = 0;
    float dot1 = 0;
    float dot2 = 0;
    float dot3 = 0;
    float all = 1e-20f;
    float all1 = 0;
    float all2 = 0;
    float all3 = 0;
    int i = m;
    for (; i + 3 < length; i += 4) {
      dot += forward[i] * delayed[i];
      dot1 += forward[i + 1] * delayed[i + 1];
      dot2 += forward[i + 2] * delayed[i + 2];
      dot3 += forward[i + 3] * delayed[i + 3];
      all += forward[i] * forward[i] + delayed[i] * delayed[i];
      all1 += forward[i + 1] * forward[i + 1] + delayed[i + 1] * delayed[i + 1];
      all2 += forward[i + 2] * forward[i + 2] + delayed[i + 2] * delayed[i + 2];
      all3 += forward[i + 3] * forward[i + 3] + delayed[i + 3] * delayed[i + 3];
    }
    for (; i < length; i++) {
      dot += forward[i] * delayed[i];
      all += forward[i] * forward[i] + delayed[i] * delayed[i];
    }
    float k = -2 * (dot + dot1 + dot2 + dot3) / (all + all1 + all2 + all3 + least);
    filter(forward, delayed, backward, k, m, length);
    System.arraycopy(backward, m, delayed, m + 1, length - m - 1);
    return k;
  }

  private static void filter(
      float[] forward, float[] delayed, float[] backward, float k, int from, int to) {
    for (int i = from; i < to; i++) {
      float f = forward[i];
      float g = delayed[i];
      forward[i] = f + k * g;
      backward[i] = g + k * f;
    }
  }

  /**
   * Goes on from the last frame learnt from, or from where it was left, for some frames in all.
   *
   * @param count at most the number given to the constructor
   */
  public void carryOn(int count) {
    for (; carried < count; carried++) {
      int i = order + carried;
      float s0 = 0;
      float s1 = 0;
      float s2 = 0;
      float s3 = 0;
      int j = 1;
      for (; j + 3 <= order; j += 4) {
        s0 -= a[j] * out[i - j];
        s1 -= a[j + 1] * out[i - j - 1];
        s2 -= a[j + 2] * out[i - j - 2];
        s3 -= a[j + 3] * out[i - j - 3];
      }
      for (; j <= order; j++) {
        s0 -= a[j] * out[i - j];
      }
      out[i] = s0 + s1 + (s2 + s3);
    }
  }

  /** The frame {@code i} after the last one learnt from; 0 is the first. */
  public float at(int i) {
    return out[order + i];
  }
}
