package neckway.sound;

import java.util.function.DoubleSupplier;

/**
 * A sound that is turned up or down while it plays; a change glides over a block. For one thread.
 */
public final class Turned implements PlayedSound {
  private final PlayedSound sound;
  private final DoubleSupplier gain;
  private double before;

  /**
   * @param gain 0 to 1, asked for each block on the thread that plays; beyond becomes the bound
   */
  public Turned(PlayedSound sound, DoubleSupplier gain) {
    this.sound = sound;
    this.gain = gain;
    before = now();
  }

  private double now() {
    return Math.max(0, Math.min(1, gain.getAsDouble()));
  }

  @Override
  public void fill(long frame, float[] block) {
    sound.fill(frame, block);
    double after = now();
    for (int i = 0; i < block.length; i++) {
      block[i] *= (float) (before + (after - before) * (i + 1) / block.length);
    }
    before = after;
  }
}
