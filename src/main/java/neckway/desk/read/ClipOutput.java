package neckway.desk.read;

import neckway.sound.Clip;

/** Plays a piece of sound. One at a time: what plays already stops. */
public interface ClipOutput {
  /**
   * Begins to play and comes back at once.
   *
   * @param clip what is played
   * @param ended told on any thread when it is over; the complaint is empty where all went well
   */
  void play(Clip clip, Ended ended);

  /** Stops what plays. */
  void stop();

  /** How many frames of what plays have been heard, about; 0 where nothing plays. */
  long framesHeard();

  /** Told when a sound is over. */
  @FunctionalInterface
  interface Ended {
    /**
     * @param complaint one line; empty where all went well
     */
    void ended(String complaint);
  }
}
