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
    if (string.isEmpty()) {
      return said;
    }
    String on = said + " on " + noteName(tuning);
    return namesOneString(tuning) ? on : on + ", string " + string.get().number();
  }

  /**
   * What is spoken, word by word: "up", "note-d"; "down", "note-e", "string-6"; "stay". A note that
   * is raised or lowered has "sharp" or "flat" after its letter.
   */
  public List<String> spoken(Tuning tuning) {
    List<String> words = new ArrayList<>();
    words.add(move.name().toLowerCase(Locale.ROOT));
    if (string.isPresent()) {
      String name = noteName(tuning);
      words.add("note-" + name.substring(0, 1).toLowerCase(Locale.ROOT));
      if (name.endsWith("#")) {
        words.add("sharp");
      } else if (name.endsWith("b")) {
        words.add("flat");
      }
      if (!namesOneString(tuning)) {
        words.add("string-" + string.get().number());
      }
    }
    return List.copyOf(words);
  }

  /**
   * What the string on which to go is tuned to.
   *
   * @throws java.util.NoSuchElementException to stay
   */
  public String noteName(Tuning tuning) {
    return tuning.lowToHigh().get(tuning.count() - string.orElseThrow().number()).note();
  }

  /** Whether no other string is tuned to a note of that name; throws as {@link #noteName}. */
  public boolean namesOneString(Tuning tuning) {
    String name = noteName(tuning);
    return tuning.lowToHigh().stream().filter(open -> open.note().equals(name)).count() == 1;
  }
}
