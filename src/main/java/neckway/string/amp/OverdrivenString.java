package neckway.string.amp;

/**
 * A stiff string heard through an amplifier whose waveshaper works on each sample by itself: what
 * becomes of the harmonics, and how that changes with each parameter.
 *
 * <p>The string is a sum of partials at k f0 sqrt(1 + B k^2) (Fletcher 1964), each with a strength
 * and phase of its own, dying away, a part of each more slowly and a little higher or lower (the
 * string's two planes: Weinreich 1977, from memory); the amplifier is a hyperbolic tangent about a
 * bias. Since the partials are nearly harmonic, what it makes of them is, at each moment, a
 * periodic wave that changes slowly, and each of its harmonics comes with the slow turns of all the
 * partials that it is made of. Filters after the amplifier scale each harmonic, which the fit
 * allows for.
 */
final class OverdrivenString {
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
  private final PeriodSeries period;
  private final double[][] shaped;
  private final double[][] shapedBack;

  /** What a partial's strength is multiplied by at each moment, and its second plane's beside. */
  private final double[][] movedRe;

  private final double[][] movedIm;
  private final double[][] secondRe;
  private final double[][] secondIm;

  /** How the partials' two planes turn and die away. */
  private final Turning first;

  private final Turning second;
  private final double[] strengthRe;
  private final double[] strengthIm;

  /**
   * How each partial changes with what changes all: partial j's real part with parameter w at 2
   * (OTHERS j + w), what goes with its imaginary part after it.
   */
  private final double[] ofPartial;

  /** The slope's harmonics from the last partial's, mirrored, on; and backward. */
  private final double[] slopeRe;

  private final double[] slopeIm;
  private final double[] slopeBackRe;
  private final double[] slopeBackIm;

  /** The harmonics, as in {@link HarmonicTracks}. */
  final double[] re;

  final double[] im;

  /** Their derivatives, parameter p at [(k - 1) * frames + frame][p]. */
  final double[][] changeRe;

  final double[][] changeIm;

  OverdrivenString(HarmonicTracks tracks, int partials) {
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
    int points = harmonics <= MOST_FOR_COARSE ? COARSE : FINE;
    int most = harmonics + partials;
    period = new PeriodSeries(points, most);
    shaped = new double[frames][points / 2 + 1];
    shapedBack = new double[frames][points / 2 + 1];
    movedRe = new double[frames][partials];
    movedIm = new double[frames][partials];
    secondRe = new double[frames][partials];
    secondIm = new double[frames][partials];
    first = new Turning(partials);
    second = new Turning(partials);
    strengthRe = new double[partials];
    strengthIm = new double[partials];
    ofPartial = new double[2 * OTHERS * partials];
    slopeRe = new double[partials + most + 1];
    slopeIm = new double[partials + most + 1];
    slopeBackRe = new double[partials + most + 1];
    slopeBackIm = new double[partials + most + 1];
    re = new double[harmonics * frames];
    im = new double[harmonics * frames];
    changeRe = new double[harmonics * frames][parameters];
    changeIm = new double[harmonics * frames][parameters];
  }

  /** Numbers that turn, and grow or shrink, by as much from each frame to the next. */
  private final class Turning {
    final double[] re;
    final double[] im;
    private final double[] stepRe;
    private final double[] stepIm;

    Turning(int count) {
      re = new double[count];
      im = new double[count];
      stepRe = new double[count];
      stepIm = new double[count];
    }

    void begin(int i, double perSecond, double radians) {
      double t = seconds[0];
      double gain = Math.exp(t * perSecond);
      re[i] = gain * Math.cos(t * radians);
      im[i] = gain * Math.sin(t * radians);
      double step = seconds[1] - t;
      gain = Math.exp(step * perSecond);
      stepRe[i] = gain * Math.cos(step * radians);
      stepIm[i] = gain * Math.sin(step * radians);
    }

    void step() {
      for (int i = 0; i < re.length; i++) {
        double x = re[i] * stepRe[i] - im[i] * stepIm[i];
        im[i] = re[i] * stepIm[i] + im[i] * stepRe[i];
        re[i] = x;
      }
    }
  }

  /** Index of one of the parameters that are not of a single partial. */
  int other(int which) {
    return 2 * partials + which;
  }

  /**
   * Works out the harmonics.
   *
   * @param p real parts of the partials' strengths, in units of what drives the amplifier half way,
   *     then the imaginary parts, then the others
   */
  void at(double[] p) {
    begin(p);
    for (int f = 0; f < frames; f++) {
      move(p, f);
      strengths(p, f);
      period.set(p[other(BIAS)], strengthRe, strengthIm);
      shape(period.forward, shaped[f]);
      shape(period.back, shapedBack[f]);
      period.fold();
      for (int k = 1; k <= harmonics; k++) {
        int at = (k - 1) * frames + f;
        re[at] = period.re(k);
        im[at] = period.im(k);
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
      for (int k = 1; k <= harmonics; k++) {
        change(k, f);
      }
    }
  }

  private void begin(double[] p) {
    double stiffness = Math.exp(p[other(LN_STIFFNESS)]);
    for (int j = 1; j <= partials; j++) {
      double perSecond = p[other(LOSS)] + p[other(LOSS_HIGH)] * j * j / 100.0;
      double radians = 2 * Math.PI * f0Hz * j * (stretch(stiffness, j) - 1) + j * p[other(DETUNE)];
      first.begin(j - 1, -perSecond, radians);
      double cents = 2 * Math.PI * f0Hz * j * NEPERS_PER_CENT * p[other(SECOND_CENTS)];
      second.begin(j - 1, perSecond * (1 - SECOND_LOSS), cents);
    }
  }

  /** What each partial is multiplied by at a moment, once that is done for the one before. */
  private void move(double[] p, int f) {
    double share = p[other(SECOND_SHARE)];
    double cos = Math.cos(p[other(SETTLE)] * settled[f]);
    double sin = Math.sin(p[other(SETTLE)] * settled[f]);
    double c = cos;
    double s = sin;
    if (f > 0) {
      first.step();
      second.step();
    }
    System.arraycopy(second.re, 0, secondRe[f], 0, partials);
    System.arraycopy(second.im, 0, secondIm[f], 0, partials);
    double[] toRe = movedRe[f];
    double[] toIm = movedIm[f];
    for (int j = 0; j < partials; j++) {
      double bothRe = 1 - share + share * second.re[j];
      double bothIm = share * second.im[j];
      double mr = first.re[j] * c - first.im[j] * s;
      double mi = first.re[j] * s + first.im[j] * c;
      toRe[j] = mr * bothRe - mi * bothIm;
      toIm[j] = mr * bothIm + mi * bothRe;
      double next = c * cos - s * sin;
      s = c * sin + s * cos;
      c = next;
    }
  }

  private void strengths(double[] p, int f) {
    double[] c = movedRe[f];
    double[] s = movedIm[f];
    for (int j = 0; j < partials; j++) {
      strengthRe[j] = p[j] * c[j] - p[partials + j] * s[j];
      strengthIm[j] = p[j] * s[j] + p[partials + j] * c[j];
    }
  }

  private static void shape(double[] sound, double[] to) {
    for (int n = 0; n < to.length; n++) {
      to[n] = 1 - 2 / (Math.exp(2 * sound[n]) + 1);
      sound[n] = to[n];
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
      double sharpening = jj / (1 + jj) - stiffness / (1 + stiffness);
      double speed = t * Math.PI * f0Hz * j * stretch(stiffness, j) * sharpening;
      partialChange(p, j, LN_STIFFNESS, 0, speed);
      partialChange(p, j, DETUNE, 0, j * t);
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
    int at = 2 * (OTHERS * (j - 1) + which);
    ofPartial[at] = a * re - b * im;
    ofPartial[at + 1] = a * im + b * re;
  }

  private static double stretch(double stiffness, int j) {
    return Math.sqrt((1 + stiffness * j * j) / (1 + stiffness));
  }

  private void slopes(int f) {
    double[] forward = shaped[f];
    double[] back = shapedBack[f];
    for (int n = 0; n < forward.length; n++) {
      period.forward[n] = 1 - forward[n] * forward[n];
      period.back[n] = 1 - back[n] * back[n];
    }
    period.fold();
    int middle = partials;
    int last = slopeRe.length - 1;
    for (int k = 0; k <= harmonics + partials; k++) {
      double x = period.re(k);
      double y = period.im(k);
      slopeRe[middle + k] = x;
      slopeIm[middle + k] = y;
      slopeBackRe[last - middle - k] = x;
      slopeBackIm[last - middle - k] = y;
      if (k <= partials) {
        slopeRe[middle - k] = x;
        slopeIm[middle - k] = -y;
        slopeBackRe[last - middle + k] = x;
        slopeBackIm[last - middle + k] = -y;
      }
    }
  }

  private void change(int k, int f) {
    int at = (k - 1) * frames + f;
    double[] toRe = changeRe[at];
    double[] toIm = changeIm[at];
    double[] mr = movedRe[f];
    double[] mi = movedIm[f];
    int up = partials + k + 1;
    int down = slopeRe.length - 1 - (partials + k - 1);
    for (int j = 0; j < mr.length; j++) {
      double r = 0.5 * mr[j];
      double i = 0.5 * mi[j];
      double sr = slopeBackRe[down + j];
      double si = slopeBackIm[down + j];
      double ur = slopeRe[up + j];
      double ui = slopeIm[up + j];
      double downRe = r * sr - i * si;
      double downIm = r * si + i * sr;
      double upRe = r * ur + i * ui;
      double upIm = r * ui - i * ur;
      toRe[j] = downRe + upRe;
      toIm[j] = downIm + upIm;
      toRe[mr.length + j] = upIm - downIm;
      toIm[mr.length + j] = downRe - upRe;
    }
    int o = 2 * partials;
    toRe[o + BIAS] = slopeRe[partials + k];
    toIm[o + BIAS] = slopeIm[partials + k];
    shared(toRe);
    shared(toIm);
    double share = settled[f] / seconds[f];
    toRe[o + SETTLE] = share * toRe[o + DETUNE];
    toIm[o + SETTLE] = share * toIm[o + DETUNE];
  }

  /** How a harmonic changes with what changes all partials, from how it does with each. */
  private void shared(double[] change) {
    double loss = 0;
    double lossHigh = 0;
    double detune = 0;
    double stiffness = 0;
    double share = 0;
    double cents = 0;
    for (int j = 0; j < partials; j++) {
      double x = change[j];
      double y = change[partials + j];
      int at = 2 * OTHERS * j;
      loss += ofPartial[at + 2 * LOSS] * x + ofPartial[at + 2 * LOSS + 1] * y;
      lossHigh += ofPartial[at + 2 * LOSS_HIGH] * x + ofPartial[at + 2 * LOSS_HIGH + 1] * y;
      detune += ofPartial[at + 2 * DETUNE] * x + ofPartial[at + 2 * DETUNE + 1] * y;
      stiffness += ofPartial[at + 2 * LN_STIFFNESS] * x + ofPartial[at + 2 * LN_STIFFNESS + 1] * y;
      share += ofPartial[at + 2 * SECOND_SHARE] * x + ofPartial[at + 2 * SECOND_SHARE + 1] * y;
      cents += ofPartial[at + 2 * SECOND_CENTS] * x + ofPartial[at + 2 * SECOND_CENTS + 1] * y;
    }
    int other = 2 * partials;
    change[other + LOSS] = loss;
    change[other + LOSS_HIGH] = lossHigh;
    change[other + DETUNE] = detune;
    change[other + LN_STIFFNESS] = stiffness;
    change[other + SECOND_SHARE] = share;
    change[other + SECOND_CENTS] = cents;
  }
}
