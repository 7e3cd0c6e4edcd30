package neckway.place;

import java.util.Arrays;

/**
 * A stiff string heard through an amplifier that bends each sample by itself: what becomes of the
 * harmonics, and how that changes with each parameter.
 *
 * <p>The string is a sum of partials at k f0 sqrt(1 + B k^2) (Fletcher 1964), each with a strength
 * and phase of its own, dying away, a part of each more slowly and a little higher or lower (the
 * string's two planes: Weinreich 1977, from memory); the amplifier is a hyperbolic tangent about a
 * bias. Since the partials are nearly harmonic, what it makes of them is, at each moment, a
 * periodic wave that changes slowly, and each of its harmonics comes with the slow turns of all the
 * partials that it is made of. Filters after the amplifier scale each harmonic, which the fit
 * allows for.
 */
final class BentTone {
  /** Time constant of how a plucked string's pitch settles. */
  private static final double SETTLE_SECONDS = 0.05;

  private static final int FINE = 96;
  private static final int COARSE = 64;
  private static final int MOST_FOR_COARSE = 14;

  /** Of the parameters behind the partials': where on its curve the amplifier rests. */
  static final int BIAS = 0;

  /** How fast the partials die away, 1/s. */
  static final int LOSS = 1;

  /** How much faster the tenth does, 1/s; the others by the square of their number. */
  static final int LOSS_HIGH = 2;

  /** How much higher than the tracks' fundamental the string is, rad/s. */
  static final int DETUNE = 3;

  /** How much higher still at the stroke, rad/s. */
  static final int SETTLE = 4;

  /** Natural logarithm of B. */
  static final int LN_STIFFNESS = 5;

  /** What share of each partial is in the string's second plane. */
  static final int SECOND_SHARE = 6;

  /** How much higher that plane sounds, cents. */
  static final int SECOND_CENTS = 7;

  static final int OTHERS = 8;

  /** The string's second plane dies away this much more slowly than the first. */
  private static final double SECOND_LOSS = 0.35;

  private static final double NEPERS_PER_CENT = Math.log(2) / 1200;

  private final double f0Hz;
  private final int harmonics;
  private final int frames;
  private final double[] seconds;
  private final double[] settled;
  final int partials;
  final int parameters;
  private final int points;
  private final double[] cos;
  private final double[] sin;
  private final int half;
  private final double[] even;
  private final double[] odd;
  private final double[] slope;
  private final double[] slopeBack;
  private final double[] bent;
  private final double[] bentBack;
  private final double[] movedRe;
  private final double[] movedIm;
  private final double[] lossRe;
  private final double[] lossIm;
  private final double[] shareRe;
  private final double[] shareIm;
  private final double[] centsRe;
  private final double[] centsIm;
  private final double[] speed;
  private final double[] slopeRe;
  private final double[] slopeIm;

  /** The harmonics, as in {@link HarmonicTracks}. */
  final double[] re;

  final double[] im;

  /** Their derivatives, parameter p at [(k - 1) * frames + frame][p]. */
  final double[][] changeRe;

  final double[][] changeIm;

  BentTone(HarmonicTracks tracks, int partials) {
    f0Hz = tracks.f0Hz;
    harmonics = tracks.harmonics;
    frames = tracks.frames;
    seconds = tracks.seconds;
    settled = new double[frames];
    for (int f = 0; f < frames; f++) {
      settled[f] = SETTLE_SECONDS * (1 - Math.exp(-seconds[f] / SETTLE_SECONDS));
    }
    this.partials = partials;
    parameters = 2 * partials + OTHERS;
    points = harmonics <= MOST_FOR_COARSE ? COARSE : FINE;
    half = points / 2;
    int most = harmonics + partials;
    cos = new double[(most + 1) * (half + 1)];
    sin = new double[(most + 1) * (half + 1)];
    for (int k = 0; k <= most; k++) {
      for (int n = 0; n <= half; n++) {
        cos[k * (half + 1) + n] = Math.cos(2 * Math.PI * k * n / points);
        sin[k * (half + 1) + n] = Math.sin(2 * Math.PI * k * n / points);
      }
    }
    even = new double[half + 1];
    odd = new double[half + 1];
    bent = new double[half + 1];
    bentBack = new double[half + 1];
    slope = new double[half + 1];
    slopeBack = new double[half + 1];
    movedRe = new double[partials];
    movedIm = new double[partials];
    lossRe = new double[partials];
    lossIm = new double[partials];
    shareRe = new double[partials];
    shareIm = new double[partials];
    centsRe = new double[partials];
    centsIm = new double[partials];
    speed = new double[partials];
    slopeRe = new double[most + 1];
    slopeIm = new double[most + 1];
    re = new double[harmonics * frames];
    im = new double[harmonics * frames];
    changeRe = new double[harmonics * frames][parameters];
    changeIm = new double[harmonics * frames][parameters];
  }

  /** Index of one of the parameters that are not of a single partial. */
  int other(int which) {
    return 2 * partials + which;
  }

  /**
   * Works out the harmonics, and their derivatives where these are asked for.
   *
   * @param p real parts of the partials' strengths, in what bends the amplifier half, then the
   *     imaginary parts, then the others
   */
  void at(double[] p, boolean derivatives) {
    double stiffness = Math.exp(p[other(LN_STIFFNESS)]);
    double bias = p[other(BIAS)];
    for (int f = 0; f < frames; f++) {
      double t = seconds[f];
      Arrays.fill(even, 0, half + 1, bias);
      Arrays.fill(odd, 0, half + 1, 0);
      for (int j = 1; j <= partials; j++) {
        double phase = 2 * Math.PI * f0Hz * t * j * (stretch(stiffness, j) - 1);
        double perSecond = p[other(LOSS)] + p[other(LOSS_HIGH)] * j * j / 100.0;
        double share = p[other(SECOND_SHARE)];
        double turns = 2 * Math.PI * f0Hz * j * NEPERS_PER_CENT * t;
        double gain = Math.exp(t * perSecond * (1 - SECOND_LOSS));
        double secondRe = gain * Math.cos(turns * p[other(SECOND_CENTS)]);
        double secondIm = gain * Math.sin(turns * p[other(SECOND_CENTS)]);
        double bothRe = 1 - share + share * secondRe;
        double bothIm = share * secondIm;
        double loss = Math.exp(-t * perSecond);
        double mr = loss * Math.cos(phase);
        double mi = loss * Math.sin(phase);
        double c = mr * bothRe - mi * bothIm;
        double s = mr * bothIm + mi * bothRe;
        movedRe[j - 1] = c;
        movedIm[j - 1] = s;
        if (derivatives) {
          double size = bothRe * bothRe + bothIm * bothIm + 1e-12;
          double qr = 1 - share + share * SECOND_LOSS * secondRe;
          double qi = share * SECOND_LOSS * secondIm;
          lossRe[j - 1] = -t * (qr * bothRe + qi * bothIm) / size;
          lossIm[j - 1] = -t * (qi * bothRe - qr * bothIm) / size;
          shareRe[j - 1] = ((secondRe - 1) * bothRe + secondIm * bothIm) / size;
          shareIm[j - 1] = (secondIm * bothRe - (secondRe - 1) * bothIm) / size;
          double dr = -share * secondIm * turns;
          double di = share * secondRe * turns;
          centsRe[j - 1] = (dr * bothRe + di * bothIm) / size;
          centsIm[j - 1] = (di * bothRe - dr * bothIm) / size;
          double jj = stiffness * j * j;
          speed[j - 1] =
              t
                  * Math.PI
                  * f0Hz
                  * j
                  * stretch(stiffness, j)
                  * (jj / (1 + jj) - stiffness / (1 + stiffness));
        }
        double a = p[j - 1] * c - p[partials + j - 1] * s;
        double b = p[j - 1] * s + p[partials + j - 1] * c;
        int row = j * (half + 1);
        for (int n = 0; n <= half; n++) {
          even[n] += a * cos[row + n];
          odd[n] += b * sin[row + n];
        }
      }
      for (int n = 0; n <= half; n++) {
        bent[n] = bend(even[n] - odd[n]);
        bentBack[n] = bend(even[n] + odd[n]);
      }
      double turn = p[other(DETUNE)] * t + p[other(SETTLE)] * settled[f];
      if (derivatives) {
        slopes();
      }
      fold(bent, bentBack);
      for (int k = 1; k <= harmonics; k++) {
        double x = along(even, cos, k);
        double y = -along(odd, sin, k);
        double c = Math.cos(k * turn);
        double s = Math.sin(k * turn);
        int at = (k - 1) * frames + f;
        re[at] = x * c - y * s;
        im[at] = x * s + y * c;
        if (derivatives) {
          change(p, k, f, c, s);
        }
      }
    }
  }

  private static double stretch(double stiffness, int j) {
    return Math.sqrt((1 + stiffness * j * j) / (1 + stiffness));
  }

  private static double bend(double v) {
    return 1 - 2 / (Math.exp(2 * v) + 1);
  }

  private void slopes() {
    for (int n = 0; n <= half; n++) {
      slope[n] = 1 - bent[n] * bent[n];
      slopeBack[n] = 1 - bentBack[n] * bentBack[n];
    }
    fold(slope, slopeBack);
    for (int k = 0; k <= harmonics + partials; k++) {
      slopeRe[k] = along(even, cos, k);
      slopeIm[k] = -along(odd, sin, k);
    }
  }

  /** Even and odd part of a wave that is given forward and backward from one point. */
  private void fold(double[] forward, double[] back) {
    for (int n = 0; n <= half; n++) {
      double twice = n == 0 || n == half ? 0.5 : 1;
      even[n] = twice * (forward[n] + back[n]);
      odd[n] = twice * (forward[n] - back[n]);
    }
  }

  /** Mean over a period of a wave times a row of a table, in four sums that do not wait. */
  private double along(double[] part, double[] table, int k) {
    int row = k * (half + 1);
    double a = part[half] * table[row + half];
    double b = 0;
    double c = 0;
    double d = 0;
    for (int n = 0; n < half; n += 4) {
      a += part[n] * table[row + n];
      b += part[n + 1] * table[row + n + 1];
      c += part[n + 2] * table[row + n + 2];
      d += part[n + 3] * table[row + n + 3];
    }
    return (a + b + (c + d)) / points;
  }

  private void change(double[] p, int k, int f, double c, double s) {
    double t = seconds[f];
    int at = (k - 1) * frames + f;
    double[] toRe = changeRe[at];
    double[] toIm = changeIm[at];
    int o = 2 * partials;
    double turn = k * settled[f];
    double x0 = 0;
    double y0 = 0;
    double x1 = 0;
    double y1 = 0;
    double x2 = 0;
    double y2 = 0;
    double x3 = 0;
    double y3 = 0;
    double x4 = 0;
    double y4 = 0;
    for (int j = 0; j < partials; j++) {
      int low = Math.abs(k - j - 1);
      int high = k + j + 1;
      double lowRe = slopeRe[low];
      double lowIm = k < j + 1 ? -slopeIm[low] : slopeIm[low];
      double mr = 0.5 * movedRe[j];
      double mi = 0.5 * movedIm[j];
      double downRe = mr * lowRe - mi * lowIm;
      double downIm = mr * lowIm + mi * lowRe;
      double upRe = mr * slopeRe[high] + mi * slopeIm[high];
      double upIm = mr * slopeIm[high] - mi * slopeRe[high];
      double xr = downRe + upRe;
      double xi = downIm + upIm;
      double yr = upIm - downIm;
      double yi = downRe - upRe;
      double ar = xr * c - xi * s;
      double ai = xr * s + xi * c;
      double br = yr * c - yi * s;
      double bi = yr * s + yi * c;
      toRe[j] = ar;
      toIm[j] = ai;
      toRe[partials + j] = br;
      toIm[partials + j] = bi;
      double pr = p[j];
      double pi = p[partials + j];
      double u = pr * lossRe[j] - pi * lossIm[j];
      double v = pr * lossIm[j] + pi * lossRe[j];
      double re = u * ar + v * br;
      double im = u * ai + v * bi;
      x0 += re;
      y0 += im;
      double square = (j + 1) * (j + 1) / 100.0;
      x1 += re * square;
      y1 += im * square;
      x2 += speed[j] * (pr * br - pi * ar);
      y2 += speed[j] * (pr * bi - pi * ai);
      u = pr * shareRe[j] - pi * shareIm[j];
      v = pr * shareIm[j] + pi * shareRe[j];
      x3 += u * ar + v * br;
      y3 += u * ai + v * bi;
      u = pr * centsRe[j] - pi * centsIm[j];
      v = pr * centsIm[j] + pi * centsRe[j];
      x4 += u * ar + v * br;
      y4 += u * ai + v * bi;
    }
    toRe[o + BIAS] = slopeRe[k] * c - slopeIm[k] * s;
    toIm[o + BIAS] = slopeRe[k] * s + slopeIm[k] * c;
    toRe[o + LOSS] = x0;
    toIm[o + LOSS] = y0;
    toRe[o + LOSS_HIGH] = x1;
    toIm[o + LOSS_HIGH] = y1;
    toRe[o + DETUNE] = -k * t * im[at];
    toIm[o + DETUNE] = k * t * re[at];
    toRe[o + SETTLE] = -turn * im[at];
    toIm[o + SETTLE] = turn * re[at];
    toRe[o + LN_STIFFNESS] = x2;
    toIm[o + LN_STIFFNESS] = y2;
    toRe[o + SECOND_SHARE] = x3;
    toIm[o + SECOND_SHARE] = y3;
    toRe[o + SECOND_CENTS] = x4;
    toIm[o + SECOND_CENTS] = y4;
  }
}
