package neckway.hear;

/** Told what the ear hears, in order of decision. */
public interface NoteListener {
  /** A note was heard. */
  void heard(HeardNote note);

  /**
   * Everything up to here has been listened to: no note with an earlier {@code decided} will come.
   * Called at a fixed step of the sound, whatever the size of the blocks fed in.
   *
   * @param seconds from the first sample of the take
   */
  void listenedUntil(double seconds);
}
