package neckway.player.voice;

import neckway.player.settings.Guitar;

/**
 * One stroke of one string, partial by partial: f_k = k f0 sqrt(1 + B k^2) (Fletcher 1964), each
 * with its own decay, the lower ones with a second, slower decay at a slightly other frequency (the
 * string's two planes). Oscillators are complex rotations; their decay is folded into the rotation.
 */
final class StringVoice {
  private static final int MOST_PARTIALS = 64;
  private static final int TWO_STAGE_PARTIALS = 12;
  private static final double HIGHEST_HZ = 7500;
  private static final double SILENT = 1e-5;
  private static final int BLOCK = 64;

  private final int sampleRate;
  private final int partials;
  private final int oscillators;
  private final double[] re;
  private final double[] im;
  private final double[] rotRe;
  private final double[] rotIm;
  private final double[] lossPerSecond;
  private final double[] share;
  private final double[] lossShare;
  private final double[] planesRatio;
  private final int[] order;
  private final double lossPerKhz2;
  private double f0Hz;
  private double stiffness;
  private double dampPerSecond;

  /**
   * @param sampleRate Hz
   * @param f0Hz fundamental of the ideal string
   * @param stiffness B at this fret
   * @param guitar the instrument
   * @param stroke how it is struck
   */
  StringVoice(int sampleRate, double f0Hz, double stiffness, Guitar guitar, Stroke stroke) {
    this.sampleRate = sampleRate;
    this.f0Hz = f0Hz;
    this.stiffness = stiffness;
    this.lossPerKhz2 = guitar.lossPerKhz2();
    double limit = Math.min(HIGHEST_HZ, 0.45 * sampleRate);
    int count = 0;
    while (count < MOST_PARTIALS && partialHz(count + 1, f0Hz, stiffness) < limit) {
      count++;
    }
    partials = count;
    int slow = Math.min(TWO_STAGE_PARTIALS, count);
    oscillators = partials + slow;
    re = new double[oscillators];
    im = new double[oscillators];
    rotRe = new double[oscillators];
    rotIm = new double[oscillators];
    lossPerSecond = new double[oscillators];
    share = new double[oscillators];
    lossShare = new double[oscillators];
    planesRatio = new double[oscillators];
    order = new int[oscillators];
    for (int i = 0; i < oscillators; i++) {
      boolean second = i >= partials;
      order[i] = second ? i - partials + 1 : i + 1;
      planesRatio[i] = second ? Math.pow(2, stroke.planesCents() / 1200) : 1;
      share[i] = second ? 0.22 : i < slow ? 0.78 : 1;
      lossShare[i] = second ? 0.35 : 1;
    }
    moveTo(f0Hz, stiffness, stroke.ringSeconds());
    excite(stroke);
    tune(0);
  }

  /**
   * Sets the string going, on top of what it does already. A point pulled aside and let go gives
   * partial k a velocity of sin(k pi p) / k, p being the point; a pickup hears sin(k pi q) of it.
   */
  void excite(Stroke stroke) {
    for (int i = 0; i < oscillators; i++) {
      int k = order[i];
      double hz = partialHz(k, f0Hz, stiffness);
      double comb = Math.sin(Math.PI * k * stroke.pickAt());
      if (stroke.pickupAt() > 0) {
        comb *= Math.sin(Math.PI * k * stroke.pickupAt());
      }
      double roll = 1 / (1 + Math.pow(hz / stroke.brightHz(), 2.5));
      re[i] += share[i] * stroke.strength() * comb * roll / k;
    }
  }

  /** Partial k of a stiff string, Hz. */
  static double partialHz(int k, double f0Hz, double stiffness) {
    return k * f0Hz * Math.sqrt(1 + stiffness * k * k);
  }

  /** Moves the string to another fundamental and stiffness; it goes on sounding. */
  void moveTo(double newF0Hz, double newStiffness, double ringSeconds) {
    f0Hz = newF0Hz;
    stiffness = newStiffness;
    for (int i = 0; i < oscillators; i++) {
      double kHz = partialHz(order[i], f0Hz, stiffness) / 1000;
      lossPerSecond[i] = lossShare[i] * (1 / ringSeconds + lossPerKhz2 * kHz * kHz);
    }
  }

  /** Sets how fast a finger or pick stops the string; 0 lets it ring. */
  void damp(double perSecond) {
    dampPerSecond = perSecond;
  }

  /** Takes a share of the sound away at once, more of the high partials. */
  void lose(double share, double perPartial) {
    for (int i = 0; i < oscillators; i++) {
      double keep = (1 - share) / (1 + perPartial * order[i]);
      re[i] *= keep;
      im[i] *= keep;
    }
  }

  /** Sets the rotations for a pitch this many cents off. */
  void tune(double cents) {
    double ratio = Math.pow(2, cents / 1200);
    double top = 0.49 * sampleRate;
    for (int i = 0; i < oscillators; i++) {
      int k = order[i];
      double hz = partialHz(k, f0Hz, stiffness) * ratio * planesRatio[i];
      double loss = lossPerSecond[i] + dampPerSecond * (1 + 0.12 * k);
      if (hz > top) {
        loss += 2000;
        hz = top;
      }
      double shrink = Math.exp(-loss / sampleRate);
      double angle = 2 * Math.PI * hz / sampleRate;
      rotRe[i] = shrink * Math.cos(angle);
      rotIm[i] = shrink * Math.sin(angle);
    }
  }

  /**
   * Adds sound to a take.
   *
   * @return whether anything still sounds
   */
  boolean render(float[] out, int from, int to) {
    boolean sounds = false;
    for (int i = 0; i < oscillators; i++) {
      double x = re[i];
      double y = im[i];
      if (x * x + y * y < SILENT * SILENT) {
        continue;
      }
      sounds = true;
      double c = rotRe[i];
      double s = rotIm[i];
      for (int n = from; n < to; n++) {
        out[n] += (float) y;
        double next = c * x - s * y;
        y = s * x + c * y;
        x = next;
      }
      re[i] = x;
      im[i] = y;
    }
    return sounds;
  }

  /** Samples between two looks at pitch and damping. */
  static int block() {
    return BLOCK;
  }
}
