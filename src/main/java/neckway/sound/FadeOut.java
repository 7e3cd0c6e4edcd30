package neckway.sound;

/**
 * The end of a sound that is stopped before it is over: it falls to nothing instead of breaking
 * off, which would be heard as a click. For one thread.
 */
final class FadeOut {
  /** How long it takes, seconds; common practice, no source. */
  static final double SECONDS = 0.02;

  private final int frames;
  private int at;

  FadeOut(double sampleRate) {
    frames = (int) Math.round(SECONDS * sampleRate);
  }

  /** Whether nothing sounds any more. */
  boolean isOver() {
    return at >= frames;
  }

  /** Turns a block down that follows the one before. */
  void turnDown(float[] block) {
    for (int i = 0; i < block.length; i++) {
      double gain = at >= frames ? 0 : 0.5 + 0.5 * Math.cos(Math.PI * (at + 1) / frames);
      block[i] = (float) (gain * block[i]);
      at++;
    }
  }
}
