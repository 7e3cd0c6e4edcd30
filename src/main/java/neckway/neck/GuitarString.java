package neckway.neck;

/**
 * A string, numbered as players number it: 1 is the highest-sounding, 6 the lowest of a six-string.
 *
 * @param number 1 to 8
 */
public record GuitarString(int number) implements Comparable<GuitarString> {
  /** Highest string number that any tuning here may have. */
  public static final int MAX_STRINGS = 8;

  public GuitarString {
    if (number < 1 || number > MAX_STRINGS) {
      throw new IllegalArgumentException(
          "string " + number + ": strings are numbered from 1 (highest) to " + MAX_STRINGS);
    }
  }

  @Override
  public int compareTo(GuitarString other) {
    return Integer.compare(number, other.number);
  }

  @Override
  public String toString() {
    return Integer.toString(number);
  }
}
