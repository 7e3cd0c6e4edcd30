package neckway.hear.beside;

/**
 * The Fourier transform of long stretches: in place, complex, radix 2. It starts no threads,
 * whatever the length.
 */
final class Spectrum {
  private final int size;
  private final float[] cos;
  private final float[] sin;

  /**
   * @param size a power of two
   */
  Spectrum(int size) {
    if (size < 2 || Integer.bitCount(size) != 1) {
      throw new IllegalArgumentException("size " + size);
    }
    this.size = size;
    cos = new float[size / 2];
    sin = new float[size / 2];
    for (int i = 0; i < size / 2; i++) {
      cos[i] = (float) Math.cos(2 * Math.PI * i / size);
      sin[i] = (float) Math.sin(2 * Math.PI * i / size);
    }
  }

  /** Sum of x[n] exp(-2 pi i k n / size). */
  void forward(float[] re, float[] im) {
    int bits = Integer.numberOfTrailingZeros(size);
    for (int i = 0; i < size; i++) {
      int j = Integer.reverse(i) >>> (32 - bits);
      if (j > i) {
        swap(re, i, j);
        swap(im, i, j);
      }
    }
    for (int half = 1; half < size; half *= 2) {
      int stride = size / (2 * half);
      for (int from = 0; from < size; from += 2 * half) {
        for (int i = from, t = 0; i < from + half; i++, t += stride) {
          float c = cos[t];
          float s = sin[t];
          int j = i + half;
          float r = re[j] * c + im[j] * s;
          float m = im[j] * c - re[j] * s;
          re[j] = re[i] - r;
          im[j] = im[i] - m;
          re[i] += r;
          im[i] += m;
        }
      }
    }
  }

  /** The same with exp(2 pi i k n / size); not divided by the size. */
  void backward(float[] re, float[] im) {
    forward(im, re);
  }

  private static void swap(float[] x, int i, int j) {
    float v = x[i];
    x[i] = x[j];
    x[j] = v;
  }
}
