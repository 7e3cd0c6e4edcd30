package neckway.desk.read;

/** Plays a piece of sound. One at a time: what plays already stops. */
public interface ClipOutput {
  /**
   * Begins to play and comes back at once.
   *
   * @param sound mono
   * @param sampleRate frames a second
   * @param loop over and over, until stopped
   * @param ended told on any thread when it is over; the complaint is empty where all went well
   */
  void play(float[] sound, int sampleRate, boolean loop, Ended ended);

  /** Stops what plays. */
  void stop();

  /** Told when a sound is over. */
  @FunctionalInterface
  interface Ended {
    /**
     * @param complaint one line; empty where all went well
     */
    void ended(String complaint);
  }
}
