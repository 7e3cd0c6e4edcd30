package neckway.string.amp;

import java.util.Optional;

/**
 * How strength and phase of each harmonic of a note go through its sound: the sound times a
 * rotation of k times a fixed fundamental, under a window of a few periods, at even steps of a
 * period or more.
 */
final class HarmonicTracks {
  private static final double PERIODS = 2.5;

  /** A window is no shorter than this: the noise in it would be too much. */
  private static final double LEAST_SECONDS = 0.018;

  /** So many frames tell as much as half as many more would: their windows overlap. */
  private static final int ENOUGH_FRAMES = 12;

  private static final int FEWEST_FRAMES = 8;

  final double f0Hz;
  final int harmonics;
  final int frames;

  /** Middle of each window, seconds from the first sample. */
  final double[] seconds;

  /** Real and imaginary parts, harmonic k at [(k - 1) * frames + frame]. */
  final double[] re;

  final double[] im;

  private HarmonicTracks(double f0Hz, int harmonics, double[] seconds, double[] re, double[] im) {
    this.f0Hz = f0Hz;
    this.harmonics = harmonics;
    this.frames = seconds.length;
    this.seconds = seconds;
    this.re = re;
    this.im = im;
  }

  /**
   * Measures a stretch of sound.
   *
   * @param samples mono
   * @param from first sample used
   * @param count how many are used
   * @param f0Hz fundamental that it is turned by, known to some 10 cents
   * @param harmonics how many to look at; {@code harmonics * f0Hz} below half the sample rate
   * @return empty where the stretch is too short
   */
  static Optional<HarmonicTracks> of(
      float[] samples, int from, int count, double sampleRateHz, double f0Hz, int harmonics) {
    int width = (int) Math.rint(Math.max(PERIODS / f0Hz, LEAST_SECONDS) * sampleRateHz);
    double hop = sampleRateHz / f0Hz;
    int most = (int) ((count - width) / hop);
    int every = Math.min(most / FEWEST_FRAMES, (int) Math.ceil((double) most / ENOUGH_FRAMES));
    int step = (int) Math.rint(Math.max(1, every) * hop);
    int frames = count > width ? (count - width) / step + 1 : 0;
    if (frames < FEWEST_FRAMES) {
      return Optional.empty();
    }
    double[] window = new double[width];
    double sum = 0;
    for (int i = 0; i < width; i++) {
      window[i] = 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 1) / (width + 1));
      sum += window[i];
    }
    double[] seconds = new double[frames];
    double[] re = new double[harmonics * frames];
    double[] im = new double[harmonics * frames];
    double[] x = new double[count];
    double[] y = new double[count];
    for (int k = 1; k <= harmonics; k++) {
      double turn = 2 * Math.PI * k * f0Hz / sampleRateHz;
      double c = Math.cos(turn);
      double s = Math.sin(turn);
      double a = 1;
      double b = 0;
      for (int i = 0; i < count; i++) {
        x[i] = samples[from + i] * a;
        y[i] = -samples[from + i] * b;
        double next = a * c - b * s;
        b = a * s + b * c;
        a = next;
      }
      for (int f = 0; f < frames; f++) {
        int start = f * step;
        double sx = 0;
        double sy = 0;
        for (int i = 0; i < width; i++) {
          sx += window[i] * x[start + i];
          sy += window[i] * y[start + i];
        }
        re[(k - 1) * frames + f] = sx / sum;
        im[(k - 1) * frames + f] = sy / sum;
        seconds[f] = (start + 0.5 * (width - 1)) / sampleRateHz;
      }
    }
    return Optional.of(new HarmonicTracks(f0Hz, harmonics, seconds, re, im));
  }

  /** How much higher than {@link #f0Hz} the sound is by how its harmonics turn, Hz. */
  double offHz() {
    double sumRe = 0;
    double sumIm = 0;
    for (int k = 1; k <= harmonics; k++) {
      // the turn of harmonic k from frame to frame is k times that of the fundamental
      double x = 0;
      double y = 0;
      for (int f = frames / 3; f + 1 < frames; f++) {
        int at = (k - 1) * frames + f;
        x += re[at + 1] * re[at] + im[at + 1] * im[at];
        y += im[at + 1] * re[at] - re[at + 1] * im[at];
      }
      double size = Math.hypot(x, y);
      double turn = Math.atan2(y, x) / k;
      sumRe += size * Math.cos(turn);
      sumIm += size * Math.sin(turn);
    }
    return Math.atan2(sumIm, sumRe) / (2 * Math.PI * (seconds[1] - seconds[0]));
  }
}
