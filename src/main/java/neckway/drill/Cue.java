package neckway.drill;

/**
 * A call in an open drill: what the player is told to do next.
 *
 * @param beat on which it sounds; 0 is the first beat
 * @param move what is called
 */
public record Cue(long beat, Move move) {
  /** What the hand is to do. */
  public enum Move {
    /** Into the shape above. */
    UP,
    /** Turn round where it is. */
    STAY,
    /** Into the shape below. */
    DOWN
  }
}
