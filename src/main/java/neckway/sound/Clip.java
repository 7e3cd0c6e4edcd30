package neckway.sound;

import java.util.function.DoubleSupplier;

/**
 * A piece of sound as it goes to an output: at the one loudness of all playback, turned down by the
 * volume, which may change while it sounds, and faded in. A loop's seam is smoothed. Read by one
 * thread.
 */
public final class Clip implements PlayedSound {
  /** It takes this long until it is as loud as it gets, seconds. */
  public static final double FADE_IN_SECONDS = 0.08;

  private static final double SEAM_SECONDS = 0.004;

  private final float[] samples;
  private final int sampleRate;
  private final boolean loop;
  private final DoubleSupplier volume;
  private final int fadeInFrames;
  private final int seamFrames;
  private double gainBefore = Double.NaN;

  private Clip(float[] samples, int sampleRate, boolean loop, DoubleSupplier volume) {
    this.samples = samples;
    this.sampleRate = sampleRate;
    this.loop = loop;
    this.volume = volume;
    fadeInFrames = (int) (FADE_IN_SECONDS * sampleRate);
    seamFrames = Math.min(samples.length / 4, (int) (SEAM_SECONDS * sampleRate));
  }

  /**
   * A sound of any level.
   *
   * @param sound mono
   * @param sampleRate frames a second
   * @param loop over and over
   * @param volume 0 to 1, asked for each block on the thread that plays
   */
  public static Clip of(float[] sound, int sampleRate, boolean loop, DoubleSupplier volume) {
    return new Clip(Levelling.levelled(sound, sampleRate), sampleRate, loop, volume);
  }

  /** A sound that has the loudness of all playback already. */
  public static Clip ofLevelled(
      float[] sound, int sampleRate, boolean loop, DoubleSupplier volume) {
    return new Clip(Levelling.limited(sound, sampleRate), sampleRate, loop, volume);
  }

  /** How many frames there are, once through. */
  public int frames() {
    return samples.length;
  }

  public int sampleRate() {
    return sampleRate;
  }

  public boolean loop() {
    return loop;
  }

  @Override
  public void fill(long frame, float[] block) {
    double gain = Math.max(0, Math.min(1, volume.getAsDouble()));
    double from = Double.isNaN(gainBefore) ? gain : gainBefore;
    for (int i = 0; i < block.length; i++) {
      double now = from + (gain - from) * (i + 1) / block.length;
      block[i] = (float) (now * fadeIn(frame + i) * sample(frame + i));
    }
    gainBefore = gain;
  }

  private double fadeIn(long frame) {
    return frame >= fadeInFrames ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * frame / fadeInFrames);
  }

  private double sample(long frame) {
    if (samples.length == 0 || !loop && frame >= samples.length) {
      return 0;
    }
    int at = (int) (frame % samples.length);
    return loop ? seam(at) * samples[at] : samples[at];
  }

  private double seam(int at) {
    int toEnd = Math.min(at, samples.length - 1 - at);
    return toEnd >= seamFrames ? 1 : (toEnd + 0.5) / seamFrames;
  }
}
