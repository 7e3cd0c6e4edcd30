package neckway.drill;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import neckway.neck.GuitarString;
import neckway.neck.Tuning;

/**
 * A call in an open drill: what the player is told to do next.
 *
 * @param beat on which it sounds; 0 is the first beat
 * @param move what is called
 * @param string on which to go; empty to stay
 */
public record Cue(long beat, Move move, Optional<GuitarString> string) {
  /** What the hand is to do. */
  public enum Move {
    /** Into the shape above. */
    UP,
    /** Turn round where it is. */
    STAY,
    /** Into the shape below. */
    DOWN
  }

  /** "up on D", "stay", "down on A". Of two strings with one name the number tells which. */
  public String words(Tuning tuning) {
    String said = move.name().toLowerCase(Locale.ROOT);
    return stringName(tuning).map(name -> said + " on " + name).orElse(said);
  }

  /** The string on which to go, as it is called; empty to stay. */
  public Optional<String> stringName(Tuning tuning) {
    return string.map(
        s -> isAlone(tuning) ? name(tuning) : name(tuning) + ", string " + s.number());
  }

  /**
   * What is spoken, word by word: "up", "note-d"; "down", "note-e", "string-6"; "stay". A note that
   * is raised or lowered has "sharp" or "flat" after its letter.
   */
  public List<String> spoken(Tuning tuning) {
    List<String> words = new ArrayList<>();
    words.add(move.name().toLowerCase(Locale.ROOT));
    if (string.isPresent()) {
      String name = name(tuning);
      words.add("note-" + name.substring(0, 1).toLowerCase(Locale.ROOT));
      if (name.endsWith("#")) {
        words.add("sharp");
      } else if (name.endsWith("b")) {
        words.add("flat");
      }
      if (!isAlone(tuning)) {
        words.add("string-" + string.get().number());
      }
    }
    return List.copyOf(words);
  }

  private String name(Tuning tuning) {
    return tuning.lowToHigh().get(tuning.count() - string.orElseThrow().number()).note();
  }

  private boolean isAlone(Tuning tuning) {
    String name = name(tuning);
    return tuning.lowToHigh().stream().filter(open -> open.note().equals(name)).count() == 1;
  }
}
