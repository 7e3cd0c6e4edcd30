package neckway.neck;

import java.util.OptionalInt;

/**
 * A join as a player asks for it.
 *
 * @param string number of the string, as given: it is checked against the tuning when the route is
 *     built
 * @param finger the finger that plays the landing note, as given; left out, the best-ranked one
 */
public record JoinChoice(int string, OptionalInt finger) {
  /** On a string, by whichever finger is the cleanest. */
  public static JoinChoice on(int string) {
    return new JoinChoice(string, OptionalInt.empty());
  }

  /** On a string, by a finger. */
  public static JoinChoice on(int string, int finger) {
    return new JoinChoice(string, OptionalInt.of(finger));
  }

  /** As written in an option: 3 or 3/1. */
  @Override
  public String toString() {
    return finger.isPresent() ? string + "/" + finger.getAsInt() : Integer.toString(string);
  }
}
