package neckway.follow;

/** Told each verdict when it is given, those on notes in the order of the notes. */
public interface VerdictListener {
  /** A verdict that will not change. */
  void decided(NoteVerdict verdict);

  /**
   * A step was heard in its time, but not what it was: no mistake is told of it, nor a note.
   *
   * @param attempt from 0
   * @param step index into the route's steps
   */
  default void unnamed(int attempt, int step) {
    // of use to those who show steps as they go by
  }
}
