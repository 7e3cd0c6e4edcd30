package neckway.sound;

/** What an output plays, asked for block by block by the thread that plays it. */
@FunctionalInterface
public interface PlayedSound {
  /**
   * Writes the sound of the frames from this one on over a block, -1 to 1. Allocates nothing and
   * waits for nothing.
   *
   * @param frame counted from the first one played
   */
  void fill(long frame, float[] block);
}
