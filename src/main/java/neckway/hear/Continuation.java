package neckway.hear;

/**
 * What a sound would go on as if nothing new came: linear prediction with coefficients by Burg's
 * method (Burg, "Maximum entropy spectral analysis", 1967; used to extrapolate sound by Kauppinen
 * and Roth, "Audio signal extrapolation", DAFx 2002). Strings that ring on and hum are sums of
 * slowly dying sines, which it carries on well for some tens of milliseconds.
 */
final class Continuation {
  private final int order;
  private final int length;
  private final float[] forward;
  private final float[] backward;
  private final float[] a;
  private final float[] work;
  private final float[] out;
  private float least;

  /**
   * @param order coefficients
   * @param length frames of the past that are looked at, more than twice the order
   * @param most frames of the future at the most
   */
  Continuation(int order, int length, int most) {
    if (length <= 2 * order) {
      throw new IllegalArgumentException("length " + length + " for order " + order);
    }
    this.order = order;
    this.length = length;
    forward = new float[length];
    backward = new float[length];
    a = new float[order + 1];
    work = new float[order + 1];
    out = new float[order + most];
  }

  /** Learns from the {@code length} samples that end before {@code to}. */
  void learn(float[] y, int to) {
    int from = to - length;
    System.arraycopy(y, from, forward, 0, length);
    System.arraycopy(y, from, backward, 0, length);
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
  }

  private float reflect(int m) {
    float dot0 = 0;
    float dot1 = 0;
    float dot2 = 0;
    float dot3 = 0;
    float all = 1e-20f;
    float all1 = 0;
    int n = length;
    int i = m;
    for (; i + 1 < n; i += 2) {
      float f0 = forward[i];
      float g0 = backward[i - 1];
      float f1 = forward[i + 1];
      float g1 = backward[i];
      dot0 += f0 * g0;
      dot1 += f1 * g1;
      all += f0 * f0 + g0 * g0;
      all1 += f1 * f1 + g1 * g1;
    }
    for (; i < n; i++) {
      dot2 += forward[i] * backward[i - 1];
      all += forward[i] * forward[i] + backward[i - 1] * backward[i - 1];
    }
    float k = -2 * (dot0 + dot1 + dot2 + dot3) / (all + all1 + least);
    float held = backward[m - 1];
    for (int j = m; j < n; j++) {
      float f = forward[j];
      float g = held;
      held = backward[j];
      forward[j] = f + k * g;
      backward[j] = g + k * f;
    }
    return k;
  }

  /**
   * Goes on for some frames.
   *
   * @param count at most the number given to the constructor
   */
  void carryOn(int count) {
    for (int i = order; i < order + count; i++) {
      float s0 = 0;
      float s1 = 0;
      int j = 1;
      for (; j + 1 <= order; j += 2) {
        s0 -= a[j] * out[i - j];
        s1 -= a[j + 1] * out[i - j - 1];
      }
      for (; j <= order; j++) {
        s0 -= a[j] * out[i - j];
      }
      out[i] = s0 + s1;
    }
  }

  /** The frame {@code i} after the last one learnt from; 0 is the first. */
  float at(int i) {
    return out[order + i];
  }
}
