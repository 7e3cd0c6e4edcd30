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

  /** Of these each changes all partials. */
  private static final int[] SHARED = {LOSS, LOSS_HIGH, LN_STIFFNESS, SECOND_SHARE, SECOND_CENTS};

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
  private final double[][] bent;
  private final double[][] bentBack;
  private final double[][] movedRe;
  private final double[][] movedIm;
  private final double[][] secondRe;
  private final double[][] secondIm;

  /** How each partial changes with what changes all, first index as in the parameters. */
  private final double[][] alongPartial;

  private final double[][] acrossPartial;

  /** The slope's harmonics from the last partial's, mirrored, on. */
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
    bent = new double[frames][half + 1];
    bentBack = new double[frames][half + 1];
    slope = new double[half + 1];
    slopeBack = new double[half + 1];
    movedRe = new double[frames][partials];
    movedIm = new double[frames][partials];
    secondRe = new double[frames][partials];
    secondIm = new double[frames][partials];
    alongPartial = new double[OTHERS][partials];
    acrossPartial = new double[OTHERS][partials];
    slopeRe = new double[partials + most + 1];
    slopeIm = new double[partials + most + 1];
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
   * Works out the harmonics.
   *
   * @param p real parts of the partials' strengths, in what bends the amplifier half, then the
   *     imaginary parts, then the others
   */
  void at(double[] p) {
    for (int f = 0; f < frames; f++) {
      wave(p, f);
      fold(bent[f], bentBack[f]);
      double turn = turn(p, f);
      for (int k = 1; k <= harmonics; k++) {
        double x = along(even, cos, k);
        double y = -along(odd, sin, k);
        double c = Math.cos(k * turn);
        double s = Math.sin(k * turn);
        int at = (k - 1) * frames + f;
        re[at] = x * c - y * s;
        im[at] = x * s + y * c;
      }
    }
  }

  /**
   * Works out the derivatives.
   *
   * @param p what {@link #at} was called with last
   */
  void changes(double[] p) {
    for (int f = 0; f < frames; f++) {
      slopes(f);
      partialChanges(p, f);
      double turn = turn(p, f);
      for (int k = 1; k <= harmonics; k++) {
        change(k, f, Math.cos(k * turn), Math.sin(k * turn));
      }
    }
  }

  private double turn(double[] p, int f) {
    return p[other(DETUNE)] * seconds[f] + p[other(SETTLE)] * settled[f];
  }

  /** What the amplifier makes of a period of the string's sound at a moment. */
  private void wave(double[] p, int f) {
    double t = seconds[f];
    double stiffness = Math.exp(p[other(LN_STIFFNESS)]);
    double share = p[other(SECOND_SHARE)];
    Arrays.fill(even, p[other(BIAS)]);
    Arrays.fill(odd, 0);
    for (int j = 1; j <= partials; j++) {
      double phase = 2 * Math.PI * f0Hz * t * j * (stretch(stiffness, j) - 1);
      double perSecond = p[other(LOSS)] + p[other(LOSS_HIGH)] * j * j / 100.0;
      double turns = 2 * Math.PI * f0Hz * j * NEPERS_PER_CENT * t * p[other(SECOND_CENTS)];
      double gain = Math.exp(t * perSecond * (1 - SECOND_LOSS));
      double sr = gain * Math.cos(turns);
      double si = gain * Math.sin(turns);
      double bothRe = 1 - share + share * sr;
      double bothIm = share * si;
      double loss = Math.exp(-t * perSecond);
      double mr = loss * Math.cos(phase);
      double mi = loss * Math.sin(phase);
      double c = mr * bothRe - mi * bothIm;
      double s = mr * bothIm + mi * bothRe;
      secondRe[f][j - 1] = sr;
      secondIm[f][j - 1] = si;
      movedRe[f][j - 1] = c;
      movedIm[f][j - 1] = s;
      double a = p[j - 1] * c - p[partials + j - 1] * s;
      double b = p[j - 1] * s + p[partials + j - 1] * c;
      int row = j * (half + 1);
      for (int n = 0; n <= half; n++) {
        even[n] += a * cos[row + n];
        odd[n] += b * sin[row + n];
      }
    }
    double[] forward = bent[f];
    double[] back = bentBack[f];
    for (int n = 0; n <= half; n++) {
      forward[n] = bend(even[n] - odd[n]);
      back[n] = bend(even[n] + odd[n]);
    }
  }

  /**
   * How each partial changes with the parameters that are all partials': as what times its real
   * strength's change, and what times the imaginary one's, it comes to.
   */
  private void partialChanges(double[] p, int f) {
    double t = seconds[f];
    double stiffness = Math.exp(p[other(LN_STIFFNESS)]);
    double share = p[other(SECOND_SHARE)];
    for (int j = 1; j <= partials; j++) {
      double sr = secondRe[f][j - 1];
      double si = secondIm[f][j - 1];
      double bothRe = 1 - share + share * sr;
      double bothIm = share * si;
      double size = bothRe * bothRe + bothIm * bothIm + 1e-12;
      double qr = 1 - share + share * SECOND_LOSS * sr;
      double qi = share * SECOND_LOSS * si;
      double lossRe = -t * (qr * bothRe + qi * bothIm) / size;
      double lossIm = -t * (qi * bothRe - qr * bothIm) / size;
      partialChange(p, j, LOSS, lossRe, lossIm);
      double square = j * j / 100.0;
      partialChange(p, j, LOSS_HIGH, lossRe * square, lossIm * square);
      double jj = stiffness * j * j;
      double bent = jj / (1 + jj) - stiffness / (1 + stiffness);
      double speed = t * Math.PI * f0Hz * j * stretch(stiffness, j) * bent;
      partialChange(p, j, LN_STIFFNESS, 0, speed);
      double shareRe = ((sr - 1) * bothRe + si * bothIm) / size;
      double shareIm = (si * bothRe - (sr - 1) * bothIm) / size;
      partialChange(p, j, SECOND_SHARE, shareRe, shareIm);
      double turns = 2 * Math.PI * f0Hz * j * NEPERS_PER_CENT * t;
      double dr = -share * si * turns;
      double di = share * sr * turns;
      double centsRe = (dr * bothRe + di * bothIm) / size;
      double centsIm = (di * bothRe - dr * bothIm) / size;
      partialChange(p, j, SECOND_CENTS, centsRe, centsIm);
    }
  }

  /** The partial's logarithm changes by re + i im: so do its strength's parts. */
  private void partialChange(double[] p, int j, int which, double re, double im) {
    double a = p[j - 1];
    double b = p[partials + j - 1];
    alongPartial[which][j - 1] = a * re - b * im;
    acrossPartial[which][j - 1] = a * im + b * re;
  }

  private static double stretch(double stiffness, int j) {
    return Math.sqrt((1 + stiffness * j * j) / (1 + stiffness));
  }

  private static double bend(double v) {
    return 1 - 2 / (Math.exp(2 * v) + 1);
  }

  private void slopes(int f) {
    double[] forward = bent[f];
    double[] back = bentBack[f];
    for (int n = 0; n <= half; n++) {
      slope[n] = 1 - forward[n] * forward[n];
      slopeBack[n] = 1 - back[n] * back[n];
    }
    fold(slope, slopeBack);
    int middle = partials;
    for (int k = 0; k <= harmonics + partials; k++) {
      double x = along(even, cos, k);
      double y = -along(odd, sin, k);
      slopeRe[middle + k] = x;
      slopeIm[middle + k] = y;
      if (k <= partials) {
        slopeRe[middle - k] = x;
        slopeIm[middle - k] = -y;
      }
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

  /** Mean over a period of a wave times a row of a table. */
  private double along(double[] part, double[] table, int k) {
    return DotProduct.of(part, 0, table, k * (half + 1), half + 1) / points;
  }

  private void change(int k, int f, double c, double s) {
    int at = (k - 1) * frames + f;
    double[] toRe = changeRe[at];
    double[] toIm = changeIm[at];
    double[] mr = movedRe[f];
    double[] mi = movedIm[f];
    int up = partials + k + 1;
    int down = partials + k - 1;
    for (int j = 0; j < mr.length; j++) {
      double r = 0.5 * mr[j];
      double i = 0.5 * mi[j];
      double downRe = r * slopeRe[down - j] - i * slopeIm[down - j];
      double downIm = r * slopeIm[down - j] + i * slopeRe[down - j];
      double upRe = r * slopeRe[up + j] + i * slopeIm[up + j];
      double upIm = r * slopeIm[up + j] - i * slopeRe[up + j];
      double xr = downRe + upRe;
      double xi = downIm + upIm;
      double yr = upIm - downIm;
      double yi = downRe - upRe;
      toRe[j] = xr * c - xi * s;
      toIm[j] = xr * s + xi * c;
      toRe[mr.length + j] = yr * c - yi * s;
      toIm[mr.length + j] = yr * s + yi * c;
    }
    int o = 2 * partials;
    double t = seconds[f];
    double turn = k * settled[f];
    double sr = slopeRe[partials + k];
    double si = slopeIm[partials + k];
    toRe[o + BIAS] = sr * c - si * s;
    toIm[o + BIAS] = sr * s + si * c;
    toRe[o + DETUNE] = -k * t * im[at];
    toIm[o + DETUNE] = k * t * re[at];
    toRe[o + SETTLE] = -turn * im[at];
    toIm[o + SETTLE] = turn * re[at];
    for (int which : SHARED) {
      toRe[o + which] = shared(toRe, which);
      toIm[o + which] = shared(toIm, which);
    }
  }

  /** All partials' share in a change. */
  private double shared(double[] change, int which) {
    return DotProduct.of(alongPartial[which], 0, change, 0, partials)
        + DotProduct.of(acrossPartial[which], 0, change, partials, partials);
  }
}
