package neckway.review;

/** What is known of the guitar that was played. */
public enum GuitarKnown {
  /** No profile of it was given. */
  NOT_LEARNT,
  /** It was learnt, and its notes sound so. */
  LEARNT,
  /** A profile was given, and the notes do not sound like that guitar. */
  ANOTHER
}
