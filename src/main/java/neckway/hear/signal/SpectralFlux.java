package neckway.hear.signal;

import be.tarsos.dsp.util.fft.FFT;

/**
 * How much the spectrum has risen: the mean over bands of the rise in level, in dB, against a few
 * hops ago, with the neighbours of the old band taken in so that vibrato is no rise (Boeck and
 * Widmer, "Maximum filter vibrato suppression for onset detection", DAFx 2013). It departs from the
 * paper in its bands (single bins low down, a sixth of an octave above) and in a lopsided window
 * that has most of its weight on the newest samples.
 */
public final class SpectralFlux {
  /** Hops back that a band is held against. */
  static final int LAG_HOPS = 3;

  /** Decibels over which one band's rise counts no more. */
  private static final float CEILING_DB = 24;

  /** Levels under this count as this: 0 dB is the power of a full-scale sine in its bin. */
  private static final float LOWEST_DB = -95;

  private final int size;
  private final FFT fft;
  private final float[] window;
  private final float[] work;
  private final int[] edges;
  private final float[][] levels;
  private final float[] floor;
  private int newest;
  private double risen;
  private double highRise;
  private int firstHighBand;

  /**
   * @param size a power of two, in frames
   */
  public SpectralFlux(double sampleRateHz, int size) {
    this.size = size;
    fft = new FFT(size);
    work = new float[size];
    window = new float[size];
    int fall = (int) (0.004 * sampleRateHz);
    double sum = 0;
    for (int i = 0; i < size; i++) {
      double up = 0.5 - 0.5 * Math.cos(Math.PI * Math.min(1, (i + 0.5) / (size - fall)));
      double down =
          i < size - fall ? 1 : 0.5 + 0.5 * Math.cos(Math.PI * (i - (size - fall) + 0.5) / fall);
      window[i] = (float) (up * down);
      sum += window[i];
    }
    for (int i = 0; i < size; i++) {
      window[i] *= (float) (2 / sum);
    }
    double binHz = sampleRateHz / size;
    int[] found = new int[size];
    int count = 0;
    double edge = Math.max(1, 70 / binHz);
    double top = Math.min(9_000, 0.45 * sampleRateHz) / binHz;
    int last = -1;
    while (edge < top) {
      int bin = (int) Math.round(edge);
      if (bin > last) {
        found[count++] = bin;
        last = bin;
      }
      edge = Math.max(edge + 1, edge * Math.pow(2, 1.0 / 6));
    }
    edges = java.util.Arrays.copyOf(found, count);
    levels = new float[LAG_HOPS + 1][count - 1];
    floor = new float[count - 1];
    for (float[] row : levels) {
      java.util.Arrays.fill(row, LOWEST_DB);
    }
    java.util.Arrays.fill(floor, LOWEST_DB + 20);
    firstHighBand = 0;
    while (firstHighBand < count - 2 && edges[firstHighBand] * binHz < 1500) {
      firstHighBand++;
    }
  }

  /** Takes the {@code size} samples that end before {@code to}. */
  public void process(float[] x, int to) {
    int from = to - size;
    for (int i = 0; i < size; i++) {
      work[i] = x[from + i] * window[i];
    }
    fft.forwardTransform(work);
    newest = newest + 1 == levels.length ? 0 : newest + 1;
    float[] now = levels[newest];
    float[] then = levels[newest + 1 == levels.length ? 0 : newest + 1];
    int bands = now.length;
    double sum = 0;
    double high = 0;
    for (int band = 0; band < bands; band++) {
      float power = 0;
      for (int bin = edges[band]; bin < edges[band + 1]; bin++) {
        power += work[2 * bin] * work[2 * bin] + work[2 * bin + 1] * work[2 * bin + 1];
      }
      now[band] = Math.max(LOWEST_DB, Decibels.of(power + 1e-12f));
      floor[band] += now[band] < floor[band] ? 0.1f * (now[band] - floor[band]) : 0.02f * 0.3f;
    }
    for (int band = 0; band < bands; band++) {
      float old = then[band];
      if (band > 0) {
        old = Math.max(old, then[band - 1]);
      }
      if (band + 1 < bands) {
        old = Math.max(old, then[band + 1]);
      }
      old = Math.max(old, floor[band] + 6);
      float rise = Math.min(CEILING_DB, Math.max(0, now[band] - old));
      sum += rise;
      if (band >= firstHighBand) {
        high += rise;
      }
    }
    risen = sum / bands;
    highRise = high / Math.max(1, bands - firstHighBand);
  }

  /** Mean rise over the bands in dB. */
  public double risen() {
    return risen;
  }

  /** Mean rise in dB over the bands above 1.5 kHz. */
  public double highRise() {
    return highRise;
  }
}
