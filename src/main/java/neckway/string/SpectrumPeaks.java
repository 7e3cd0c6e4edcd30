package neckway.string;

import be.tarsos.dsp.util.fft.FFT;
import java.util.Arrays;

/**
 * The peaks of the spectrum of a stretch of sound just after an attack, each with the standard
 * error of its frequency.
 *
 * <p>The window rises fast and falls slowly, since the high partials, which tell most of stiffness,
 * are gone soonest. The magnitude spectrum of any real window is even, so a decaying partial's peak
 * lies at its frequency whatever the window's shape.
 */
final class SpectrumPeaks {
  /** More are not looked at. */
  static final int MOST_PEAKS = 400;

  /** Nothing above is looked at: by then a guitar has nothing left to say. */
  static final double HIGHEST_HZ = 9000;

  /** Share of the stretch in which the window rises. */
  static final double RISE_SHARE = 0.25;

  /** A peak's power over the floor between the partials, at the least. */
  static final double LEAST_OVER_FLOOR = 10;

  /** A peak's power as a share of the strongest, at the least. */
  static final double LEAST_OF_STRONGEST = 1e-7;

  /**
   * Standard error of a frequency, times the length, times the root of its power over the floor.
   */
  static final double ERROR_FACTOR = 0.7;

  /** The lower quartile of the power of noise as a share of its mean: -ln(3/4). */
  private static final double QUARTILE_OF_NOISE = 0.2877;

  private static final double TINY_POWER = 1e-30;

  private final double sampleRateHz;
  private final int mostFrames;
  private final FFT fft;
  private final float[] buffer;
  private float[] window = new float[0];
  private final double[] power;
  private final double[] part;
  private final double[] hz = new double[MOST_PEAKS];
  private final double[] errorHz = new double[MOST_PEAKS];
  private final double binHz;
  private final int topBin;
  private int count;

  SpectrumPeaks(double sampleRateHz, double mostSeconds) {
    this.sampleRateHz = sampleRateHz;
    mostFrames = (int) Math.round(mostSeconds * sampleRateHz);
    int size = Integer.highestOneBit(mostFrames - 1) << 1;
    fft = new FFT(size);
    buffer = new float[size];
    power = new double[size / 2];
    part = new double[size / 2];
    binHz = sampleRateHz / size;
    topBin = Math.min(size / 2 - 2, (int) (Math.min(HIGHEST_HZ, 0.45 * sampleRateHz) / binHz));
  }

  /**
   * Looks at a stretch of sound; what goes beyond the longest stretch or the sound's end is left
   * out.
   *
   * @param f0Hz the floor is taken from bands about this wide
   */
  void find(float[] samples, int from, int length, double f0Hz) {
    int frames = Math.min(Math.min(length, mostFrames), samples.length - from);
    transform(samples, from, frames);
    double strongest = 0;
    for (int b = 1; b <= topBin + 1; b++) {
      double re = buffer[2 * b];
      double im = buffer[2 * b + 1];
      power[b] = re * re + im * im + TINY_POWER;
      strongest = Math.max(strongest, power[b]);
    }
    count = 0;
    int band = -1;
    double floor = 0;
    for (int b = 2; b <= topBin && count < MOST_PEAKS; b++) {
      int inBand = (int) (b * binHz / f0Hz);
      if (inBand != band) {
        band = inBand;
        floor = floor((band - 0.25) * f0Hz, (band + 1.25) * f0Hz);
      }
      if (power[b] > power[b - 1]
          && power[b] >= power[b + 1]
          && power[b] > LEAST_OVER_FLOOR * floor
          && power[b] > LEAST_OF_STRONGEST * strongest) {
        hz[count] = (b + summit(b)) * binHz;
        errorHz[count] = ERROR_FACTOR * sampleRateHz / frames / Math.sqrt(power[b] / floor);
        count++;
      }
    }
  }

  private void transform(float[] samples, int from, int frames) {
    if (window.length != frames) {
      window = window(frames);
    }
    for (int i = 0; i < frames; i++) {
      buffer[i] = samples[from + i] * window[i];
    }
    Arrays.fill(buffer, frames, buffer.length, 0);
    fft.forwardTransform(buffer);
  }

  private static float[] window(int frames) {
    float[] window = new float[frames];
    int rise = Math.max(1, (int) (RISE_SHARE * frames));
    halfWave(window, 0, rise, -1);
    halfWave(window, rise, frames - rise, 1);
    return window;
  }

  /** Half a wave of a cosine, from 0 up to 1 or back; one sine and cosine, turned on from there. */
  private static void halfWave(float[] to, int from, int count, int sign) {
    double step = Math.PI / count;
    double turnRe = Math.cos(step);
    double turnIm = Math.sin(step);
    double re = Math.cos(0.5 * step);
    double im = Math.sin(0.5 * step);
    for (int i = 0; i < count; i++) {
      to[from + i] = (float) (0.5 + sign * 0.5 * re);
      double next = re * turnRe - im * turnIm;
      im = re * turnIm + im * turnRe;
      re = next;
    }
  }

  /** Where a parabola through three log powers has its summit, in bins from the middle one. */
  private double summit(int bin) {
    double a = Math.log(power[bin - 1]);
    double m = Math.log(power[bin]);
    double c = Math.log(power[bin + 1]);
    return 0.5 * (a - c) / (a - 2 * m + c);
  }

  /** Mean power that noise has in a band, told from its lower quartile, which partials spare. */
  private double floor(double lowHz, double highHz) {
    int high = Math.min(topBin, (int) (highHz / binHz));
    int low = Math.max(2, Math.min(high - 4, (int) Math.ceil(lowHz / binHz)));
    int bins = high - low + 1;
    System.arraycopy(power, low, part, 0, bins);
    return smallest(part, bins, bins / 4) / QUARTILE_OF_NOISE;
  }

  /** What would stand at an index were the first numbers sorted (Hoare 1961, Algorithm 65). */
  static double smallest(double[] x, int count, int index) {
    int low = 0;
    int high = count - 1;
    while (low < high) {
      double pivot = x[index];
      int i = low;
      int j = high;
      while (i <= j) {
        while (x[i] < pivot) {
          i++;
        }
        while (pivot < x[j]) {
          j--;
        }
        if (i <= j) {
          double swapped = x[i];
          x[i++] = x[j];
          x[j--] = swapped;
        }
      }
      low = j < index ? i : low;
      high = index < i ? j : high;
    }
    return x[index];
  }

  /** How many peaks were found. */
  int count() {
    return count;
  }

  /** Frequency of a peak; they are in order of frequency. */
  double hz(int peak) {
    return hz[peak];
  }

  /** Standard error of the frequency that the noise round it makes. */
  double errorHz(int peak) {
    return errorHz[peak];
  }
}
