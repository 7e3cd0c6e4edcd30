package neckway.follow;

/** Told each verdict when it is given, in the order of the notes. */
public interface VerdictListener {
  /** A verdict that will not change. */
  void decided(NoteVerdict verdict);
}
