package neckway.review;

/** Whether the times of the notes can be held against the click's. */
public enum Clock {
  /** The delay between the two is known, or there is none. */
  MEASURED,
  /** It is not: how far the notes lie from the click is not to be relied on. */
  UNMEASURED
}
