package neckway.review.words;

import java.util.List;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.review.Milliseconds;
import neckway.words.Wording;

/** The small change of sentences: numbers, strings, ways, lists. */
public final class Phrases {
  private static final List<String> COUNTS =
      List.of(
          "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
          "eleven", "twelve");
  private static final List<String> ORDINALS =
      List.of("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth");
  private static final List<String> FINGERS = List.of("first", "second", "third", "fourth");

  private static final int MOST_ROUNDS_NAMED = 4;

  private Phrases() {}

  /** A whole number, in a word up to twelve. */
  public static String count(int number) {
    return number < COUNTS.size() ? COUNTS.get(number) : Integer.toString(number);
  }

  /** "one note", "three notes". */
  public static String count(int number, String thing) {
    return count(number) + " " + thing + (number == 1 ? "" : "s");
  }

  /** "first", "second"; in figures from the ninth on. */
  static String ordinal(int number) {
    return number <= ORDINALS.size() ? ORDINALS.get(number - 1) : number + "th";
  }

  /** "once", "twice", "three times". */
  static String times(int number) {
    return number == 1 ? "once" : number == 2 ? "twice" : count(number) + " times";
  }

  /**
   * "in round 2", "in rounds 1 and 3", "in every round", "in nine rounds"; nothing where there is
   * only one.
   *
   * @param rounds from 0, rising, each once
   * @param all how many there are
   */
  static String inRounds(List<Integer> rounds, int all) {
    if (all == 1) {
      return "";
    }
    if (rounds.size() == all) {
      return all == 2 ? " in both rounds" : " in every round";
    }
    if (rounds.size() > MOST_ROUNDS_NAMED) {
      return " in " + count(rounds.size()) + " rounds";
    }
    List<String> numbers = rounds.stream().map(r -> Integer.toString(r + 1)).toList();
    return (rounds.size() == 1 ? " in round " : " in rounds ") + list(numbers);
  }

  /** "fret 7 on the fourth string", "the open fourth string". */
  static String fretOnString(Place place) {
    return place.fret() == 0
        ? "the open " + string(place.string())
        : "fret " + place.fret() + " on the " + string(place.string());
  }

  /** "second string, fret 8". */
  public static String spot(Place place) {
    return string(place.string()) + (place.fret() == 0 ? ", open" : ", fret " + place.fret());
  }

  /** "a few notes", as far as there are any before a step. */
  static String from(int step) {
    return Wording.of(step == 1 ? "from.1" : step == 2 ? "from.2" : "from.few");
  }

  /** "before fret 7 on the fourth string", "before the open fourth string". */
  static String before(Place place) {
    String string = Wording.ordinal(place.string().number());
    return place.fret() == 0
        ? Wording.of("before.open", string)
        : Wording.of("before.fret", place.fret(), string);
  }

  /** "third string". */
  public static String string(GuitarString string) {
    return ORDINALS.get(string.number() - 1) + " string";
  }

  /** "first finger", or "open" where none is on the string. */
  public static String finger(int finger) {
    return finger == 0 ? "open" : FINGERS.get(finger - 1) + " finger";
  }

  public static String way(Direction direction) {
    return direction == Direction.UP ? "up" : "down";
  }

  /** "A", "A and B", "A, B and C". */
  public static String list(List<String> things) {
    if (things.size() < 2) {
      return String.join("", things);
    }
    int last = things.size() - 1;
    return String.join(", ", things.subList(0, last)) + " and " + things.get(last);
  }

  /** With a capital letter. */
  public static String sentence(String words) {
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }

  /** "62 ms", "220 ms", "1.2 seconds". */
  public static String ms(double ms) {
    long shown = Math.abs(Milliseconds.rounded(ms));
    if (shown < 1000) {
      return shown + " ms";
    }
    double seconds = shown / 1000.0;
    return seconds == 1 ? "a second" : seconds + " seconds";
  }
}
