package neckway.review.words;

import java.util.List;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.review.Milliseconds;

/** The small change of sentences: numbers, strings, ways, lists. */
final class Phrases {
  private static final List<String> COUNTS =
      List.of(
          "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
          "eleven", "twelve");
  private static final List<String> ORDINALS =
      List.of("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth");
  private static final List<String> FINGERS = List.of("first", "second", "third", "fourth");

  private Phrases() {}

  /** A whole number, in a word up to twelve. */
  static String count(int number) {
    return number < COUNTS.size() ? COUNTS.get(number) : Integer.toString(number);
  }

  /** "one note", "three notes". */
  static String count(int number, String thing) {
    return count(number) + " " + thing + (number == 1 ? "" : "s");
  }

  /** "third string". */
  static String string(GuitarString string) {
    return ORDINALS.get(string.number() - 1) + " string";
  }

  /** "first finger", or "open" where none is on the string. */
  static String finger(int finger) {
    return finger == 0 ? "open" : FINGERS.get(finger - 1) + " finger";
  }

  static String way(Direction direction) {
    return direction == Direction.UP ? "up" : "down";
  }

  /** "A", "A and B", "A, B and C". */
  static String list(List<String> things) {
    if (things.size() < 2) {
      return String.join("", things);
    }
    int last = things.size() - 1;
    return String.join(", ", things.subList(0, last)) + " and " + things.get(last);
  }

  /** With a capital letter. */
  static String sentence(String words) {
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }

  /** "62 ms", "220 ms", "1.2 seconds". */
  static String ms(double ms) {
    long shown = Math.abs(Milliseconds.rounded(ms));
    if (shown < 1000) {
      return shown + " ms";
    }
    double seconds = shown / 1000.0;
    return seconds == 1 ? "a second" : seconds + " seconds";
  }
}
