package neckway.player.surroundings;

/**
 * An amplifier and its loudspeaker: filter, waveshaper, filter. The waveshaper runs at four times
 * the sample rate, so that what it makes beyond half the rate is filtered off and not folded back.
 */
public final class Amp {
  private static final int OVER = 4;
  private static final int TAPS_PER_PHASE = 12;

  /** How hard it is driven. */
  public enum Voicing {
    /** No amplifier: the line itself. */
    NONE(0, 0),
    CLEAN(0.7, 0.03),
    EDGE(2.5, 0.12),
    CRUNCH(9, 0.2),
    LEAD(45, 0.15);

    private final double drive;
    private final double lean;

    Voicing(double drive, double lean) {
      this.drive = drive;
      this.lean = lean;
    }
  }

  private final Voicing voicing;
  private final double rate;
  private final double[] taps;

  public Amp(Voicing voicing, double rate) {
    this.voicing = voicing;
    this.rate = rate;
    int length = OVER * TAPS_PER_PHASE * 2 + 1;
    taps = new double[length];
    double sum = 0;
    for (int i = 0; i < length; i++) {
      double t = i - (length - 1) / 2.0;
      double x = 0.9 * t / OVER;
      double sinc = x == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
      double window = 0.5 + 0.5 * Math.cos(2 * Math.PI * t / (length + 1));
      taps[i] = sinc * window;
      sum += taps[i];
    }
    for (int i = 0; i < length; i++) {
      taps[i] /= sum;
    }
  }

  /** Plays samples through it, in place; the peak going in is taken as full. */
  public void run(float[] samples) {
    if (voicing == Voicing.NONE) {
      return;
    }
    Levels.toPeak(samples, 1);
    Biquad.highPass(voicing.drive > 5 ? 130 : 70, 0.7, rate).run(samples);
    Biquad.bell(900, 0.6, voicing.drive > 5 ? 5 : 2, rate).run(samples);
    shape(samples);
    Biquad.highPass(75, 0.7, rate).run(samples);
    Biquad.bell(110, 1.2, 3, rate).run(samples);
    Biquad.bell(2500, 1, 3, rate).run(samples);
    Biquad.lowPass(4800, 0.8, rate).run(samples);
    Biquad.lowPass(5200, 0.6, rate).run(samples);
  }

  private void shape(float[] samples) {
    int half = TAPS_PER_PHASE;
    int count = samples.length;
    double[] ring = new double[taps.length];
    int at = 0;
    float[] in = samples.clone();
    double rest = Math.tanh(voicing.lean);
    for (int n = 0; n < count + 2 * half; n++) {
      for (int phase = 0; phase < OVER; phase++) {
        double up = 0;
        for (int k = phase, m = n; k < taps.length; k += OVER, m--) {
          if (m >= 0 && m < count) {
            up += taps[k] * in[m];
          }
        }
        double shaped = Math.tanh(voicing.drive * OVER * up + voicing.lean) - rest;
        ring[at] = shaped;
        at = at + 1 == ring.length ? 0 : at + 1;
        if (phase == 0 && n >= 2 * half) {
          double down = 0;
          int r = at;
          for (double tap : taps) {
            down += tap * ring[r];
            r = r + 1 == ring.length ? 0 : r + 1;
          }
          samples[n - 2 * half] = (float) down;
        }
      }
    }
  }
}
