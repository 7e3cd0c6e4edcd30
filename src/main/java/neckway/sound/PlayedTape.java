package neckway.sound;

/**
 * Plays a sound and remembers what it was, so that it can be taken out of what a microphone hears.
 * It is made a while before it is played, so what will be heard is known a little ahead; it is
 * rounded as the output's line does. One thread plays, one reads; neither waits for the other.
 */
public final class PlayedTape implements PlayedSound {
  private static final int MADE_AT_ONCE = 256;
  private static final float LINE_SCALE = 32_767;
  private static final float FILE_SCALE = 32_768;

  private final PlayedSound sound;
  private final int aheadFrames;
  private final short[] ring;
  private final float[] block = new float[MADE_AT_ONCE];

  /** Frames made since the start; its write makes those before it seen. */
  private volatile long made;

  /**
   * @param sound asked once for each frame, in order, on the thread that plays
   * @param aheadFrames how much of it is made before it is played
   * @param keptFrames how long it is remembered
   */
  public PlayedTape(PlayedSound sound, int aheadFrames, int keptFrames) {
    this.sound = sound;
    this.aheadFrames = aheadFrames;
    int blocks = (aheadFrames + keptFrames) / MADE_AT_ONCE + 2;
    ring = new short[blocks * MADE_AT_ONCE];
  }

  @Override
  public void fill(long frame, float[] into) {
    long until = frame + into.length + aheadFrames;
    while (made < until) {
      sound.fill(made, block);
      int at = (int) (made % ring.length);
      for (int i = 0; i < MADE_AT_ONCE; i++) {
        ring[at + i] = (short) Math.round(LINE_SCALE * Math.max(-1, Math.min(1, block[i])));
      }
      made = made + MADE_AT_ONCE;
    }
    for (int i = 0; i < into.length; i++) {
      into[i] = ring[(int) ((frame + i) % ring.length)] / LINE_SCALE;
    }
  }

  /**
   * What was played, full scale as in a file: silence where it is forgotten, and before the start.
   * For one thread.
   *
   * @param frame counted from the first one played
   */
  public void read(long frame, float[] into) {
    long end = made;
    // what is being written over right now is not read
    long from = Math.max(0, end + MADE_AT_ONCE - ring.length);
    for (int i = 0; i < into.length; i++) {
      long at = frame + i;
      into[i] = at >= from && at < end ? ring[(int) (at % ring.length)] / FILE_SCALE : 0;
    }
  }
}
