package neckway.review.words;

import java.util.List;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Place;
import neckway.neck.Shape;
import neckway.review.Milliseconds;
import neckway.words.Wording;

/** The small change of sentences: numbers, strings, ways, lists. */
public final class Phrases {
  private static final int MOST_NAMED = 3;
  private static final int MOST_ROUNDS_NAMED = 4;

  private Phrases() {}

  /** A whole number, in a word up to twelve. */
  public static String count(int number) {
    return Wording.number(number);
  }

  /**
   * "one note", "three notes".
   *
   * @param thing note, round, semitone or beat
   */
  public static String count(int number, String thing) {
    return Wording.counted("count." + thing, number, count(number));
  }

  /** "first", "second"; in figures from the ninth on. */
  static String ordinal(int number) {
    return Wording.ordinal(number);
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
      return Wording.of(all == 2 ? "rounds.both" : "rounds.every");
    }
    if (rounds.size() > MOST_ROUNDS_NAMED) {
      return Wording.of("rounds.count", count(rounds.size()));
    }
    List<String> numbers = rounds.stream().map(r -> Integer.toString(r + 1)).toList();
    return Wording.counted("rounds", rounds.size(), Wording.list(numbers));
  }

  /** "fret 7 on the fourth string", "the open fourth string". */
  static String fretOnString(Place place) {
    return Wording.of(at("note", place), place.fret(), ordinal(place.string()));
  }

  /** "shift up on the third string". */
  static String shift(Direction direction, GuitarString string) {
    return Wording.of(towards("shift", direction), ordinal(string));
  }

  /** Some things one after the other, with the end of the sentence: three at most are named. */
  static String named(List<String> each) {
    return each.size() <= MOST_NAMED
        ? Wording.of("named.all", String.join("; ", each))
        : Wording.of("named.more", String.join("; ", each.subList(0, MOST_NAMED)));
  }

  /** "second string, fret 8". */
  public static String spot(Place place) {
    return Wording.of(at("spot", place), place.fret(), ordinal(place.string()));
  }

  /** "a few notes", as far as there are any before a step. */
  static String from(int step) {
    return Wording.of(step == 1 ? "from.1" : step == 2 ? "from.2" : "from.few");
  }

  /** "before fret 7 on the fourth string", "before the open fourth string". */
  static String before(Place place) {
    return Wording.of(at("before", place), place.fret(), ordinal(place.string()));
  }

  /** "third string". */
  public static String string(GuitarString string) {
    return Wording.of("string", ordinal(string));
  }

  /** "first finger", or "open" where none is on the string. */
  public static String finger(int finger) {
    return finger == 0 ? Wording.of("finger.open") : Wording.of("finger", ordinal(finger));
  }

  public static String way(Direction direction) {
    return Wording.of(towards("way", direction));
  }

  /** The key of a text for a place: another one for an open string. */
  static String at(String key, Place place) {
    return key + (place.fret() == 0 ? ".open" : ".fret");
  }

  /** The key of a text for a way. */
  public static String towards(String key, Direction direction) {
    return key + (direction == Direction.UP ? ".up" : ".down");
  }

  /** "third", of a string. */
  public static String ordinal(GuitarString string) {
    return ordinal(string.number());
  }

  /** "major", "Dorian". */
  public static String shape(Shape shape) {
    return Wording.of("shape." + shape.word());
  }

  /** "62 ms", "220 ms", "1.2 seconds". */
  public static String ms(double ms) {
    long shown = Math.abs(Milliseconds.rounded(ms));
    if (shown < 1000) {
      return Wording.of("ms", shown);
    }
    double seconds = shown / 1000.0;
    return seconds == 1 ? Wording.of("seconds.one") : Wording.of("seconds", Wording.plain(seconds));
  }
}
