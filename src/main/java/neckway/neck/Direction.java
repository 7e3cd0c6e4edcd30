package neckway.neck;

/** Which way a run goes through a join. */
public enum Direction {
  UP,
  DOWN
}
