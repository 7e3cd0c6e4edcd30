package neckway.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Finds English in a sentence that should have none. */
public final class EnglishWords {
  /** Words of which every English sentence has one or more, and none is a German word too. */
  private static final List<String> ENGLISH =
      List.of(
          "the", "that", "you", "your", "a", "of", "on", "at", "and", "or", "to", "with", "were",
          "notes", "string", "fret", "shift", "shape", "round", "beat", "beats", "first", "second",
          "third", "major", "minor", "up", "down", "one", "two", "late", "start", "play");

  private EnglishWords() {}

  /** English words in a sentence, the names of keys apart. */
  public static List<String> in(String sentence) {
    String plain = sentence.replaceAll("[A-G][#b]? (major|minor)", "");
    String words = " " + plain.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}#]+", " ") + " ";
    List<String> found = new ArrayList<>();
    for (String word : ENGLISH) {
      if (words.contains(" " + word + " ")) {
        found.add(word);
      }
    }
    return found;
  }
}
