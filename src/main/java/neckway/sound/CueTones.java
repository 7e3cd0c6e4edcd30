package neckway.sound;

import java.util.List;

/**
 * Short tones at given frames: two pitches, rising, falling or level. They lie above what a guitar
 * is fretted to, so that one that leaks into the input is no note of it. Allocates nothing while
 * playing. For one thread.
 */
public final class CueTones implements PlayedSound {
  /** Which way the two pitches go. */
  public enum Way {
    RISING,
    LEVEL,
    FALLING
  }

  /**
   * A tone and its beat.
   *
   * @param frame output frame of the beat; the tone begins a little later, past the beat's click
   */
  public record At(double frame, Way way) {}

  /** After its beat; by then the click is over. */
  private static final double AFTER_BEAT_SECONDS = 0.035;

  private static final double PITCH_SECONDS = 0.09;
  private static final double EDGE_SECONDS = 0.01;

  /** A C7 and the G7 above it, by equal temperament from A4 = 440 Hz (ISO 16). */
  private static final double LOW_HZ = 2_093.0;

  private static final double HIGH_HZ = 3_136.0;

  /** A click's peak is 1 and over at once; a tone lasts, so at half of it it is as quiet. */
  private static final double PEAK = 0.5;

  private final long[] starts;
  private final float[][] sounds;
  private final float gain;
  private int next;

  /**
   * @param tones in their order, further apart than a tone is long
   * @param gain share of full scale that a click beside it has
   */
  public CueTones(int sampleRate, List<At> tones, double gain) {
    this.gain = (float) gain;
    float[] rising = sound(sampleRate, LOW_HZ, HIGH_HZ);
    float[] falling = sound(sampleRate, HIGH_HZ, LOW_HZ);
    float[] level = sound(sampleRate, LOW_HZ, LOW_HZ);
    starts =
        tones.stream()
            .mapToLong(t -> Math.round(t.frame() + AFTER_BEAT_SECONDS * sampleRate))
            .toArray();
    sounds = new float[tones.size()][];
    for (int i = 0; i < sounds.length; i++) {
      sounds[i] =
          switch (tones.get(i).way()) {
            case RISING -> rising;
            case LEVEL -> level;
            case FALLING -> falling;
          };
    }
  }

  private static float[] sound(int sampleRate, double firstHz, double thenHz) {
    int half = (int) (PITCH_SECONDS * sampleRate);
    float[] sound = new float[2 * half];
    for (int i = 0; i < sound.length; i++) {
      double t = (double) (i % half) / sampleRate;
      double edge = Math.min(1, Math.min(t, PITCH_SECONDS - t) / EDGE_SECONDS);
      double hz = i < half ? firstHz : thenHz;
      sound[i] = (float) (PEAK * Math.max(0, edge) * Math.sin(2 * Math.PI * hz * t));
    }
    return sound;
  }

  /** Writes the tones of the frames from this one on over a block. */
  @Override
  public void fill(long frame, float[] block) {
    for (int i = 0; i < block.length; i++) {
      long at = frame + i;
      while (next < starts.length && at >= starts[next] + sounds[next].length) {
        next++;
      }
      boolean sounding = next < starts.length && at >= starts[next];
      block[i] = sounding ? gain * sounds[next][(int) (at - starts[next])] : 0;
    }
  }
}
