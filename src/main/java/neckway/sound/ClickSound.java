package neckway.sound;

/**
 * The sound of one click: a short sweep that dies away, which is easy to hear and, by its matched
 * filter, easy to find to the sample.
 */
final class ClickSound {
  /** How long it lasts, seconds; by then it is 43 dB down. */
  static final double SECONDS = 0.030;

  private static final double DECAY_SECONDS = 0.006;
  private static final double RISE_SECONDS = 0.0005;

  private ClickSound() {}

  /** The click on the first beat of a bar: higher. */
  static float[] accent(int sampleRate) {
    return sweep(sampleRate, 2_400, 3_400);
  }

  /** The click on any other beat. */
  static float[] plain(int sampleRate) {
    return sweep(sampleRate, 1_600, 2_600);
  }

  /** A sweep of peak 1 or a little less, its lowest and highest frequency in Hz. */
  private static float[] sweep(int sampleRate, double fromHz, double toHz) {
    float[] sound = new float[(int) (SECONDS * sampleRate)];
    for (int i = 0; i < sound.length; i++) {
      double t = (double) i / sampleRate;
      double hz = fromHz + (toHz - fromHz) * 0.5 * t / SECONDS;
      double rise = t < RISE_SECONDS ? 0.5 - 0.5 * Math.cos(Math.PI * t / RISE_SECONDS) : 1;
      sound[i] = (float) (rise * Math.exp(-t / DECAY_SECONDS) * Math.sin(2 * Math.PI * hz * t));
    }
    return sound;
  }
}
