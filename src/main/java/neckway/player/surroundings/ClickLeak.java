package neckway.player.surroundings;

import java.util.Random;
import neckway.drill.Pulse;

/** The metronome as it leaks into the microphone, on every beat from the count-in on. */
public final class ClickLeak {
  /** Sorts of click. */
  public enum Sound {
    /** A decaying tone, higher on the bar's first beat. */
    SINE,
    /** Two quickly damped resonances. */
    WOOD,
    /** A tick of noise. */
    TICK
  }

  private final Sound sound;
  private final double accentHz;
  private final double plainHz;
  private final double seconds;
  private final double plainShare;
  private final int rate;
  private final Random random;

  public ClickLeak(Sound sound, int rate, Random random) {
    this.sound = sound;
    this.rate = rate;
    this.random = random;
    plainShare = 0.5 + 0.5 * random.nextDouble();
    plainHz = 800 + 900 * random.nextDouble();
    accentHz = plainHz * (1.25 + 0.4 * random.nextDouble());
    seconds =
        sound == Sound.SINE
            ? 0.004 + 0.025 * random.nextDouble()
            : 0.004 + 0.008 * random.nextDouble();
  }

  /** Adds clicks of this peak up to the end of the samples. */
  public void run(
      float[] samples, Pulse pulse, double firstBeat, double untilSeconds, double peak) {
    float[] accented = sound(true, peak);
    float[] plain = sound(false, peak * plainShare);
    for (int beat = -pulse.countIn(); ; beat++) {
      double time = firstBeat + beat * pulse.beatSeconds();
      if (time > untilSeconds) {
        return;
      }
      if (time >= 0) {
        boolean accent = Math.floorMod(beat, pulse.beatsPerBar()) == 0;
        int from = (int) Math.round(time * rate);
        float[] one = accent ? accented : plain;
        for (int n = 0; n < one.length && from + n < samples.length; n++) {
          samples[from + n] += one[n];
        }
      }
    }
  }

  /** A metronome plays the same sound each time. */
  private float[] sound(boolean accent, double peak) {
    int length = (int) (10 * seconds * rate);
    float[] one = new float[length];
    double hz = accent ? accentHz : plainHz;
    Biquad band = Biquad.bandPass(Math.min(0.4 * rate, 2.2 * hz), 0.7, rate);
    for (int n = 0; n < length; n++) {
      double t = (double) n / rate;
      double decay = Math.exp(-t / seconds);
      one[n] =
          (float)
              (decay
                  * switch (sound) {
                    case SINE -> Math.sin(2 * Math.PI * hz * t);
                    case WOOD ->
                        Math.sin(2 * Math.PI * hz * t)
                            + 0.6 * decay * Math.sin(2 * Math.PI * 2.57 * hz * t);
                    case TICK -> band.next(random.nextGaussian());
                  });
    }
    Levels.toPeak(one, peak);
    return one;
  }
}
