package neckway.neck;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import neckway.words.Wording;

/** Tunings as players write and name them. Names and notes are common practice, no source. */
final class TuningWords {
  /** A name, its notes from the lowest string, and what else it is called, in small letters. */
  private record Named(String name, String notes, List<String> others) {
    static Named of(String name, String notes, String... others) {
      return new Named(name, notes, List.of(others));
    }

    boolean isCalled(String words) {
      return plain(name).equals(words) || others.contains(words);
    }

    List<Integer> midis() {
      return pitches(notes).map(Pitch::midi).toList();
    }
  }

  private static final List<Named> KNOWN =
      List.of(
          Named.of("standard", "E2 A2 D3 G3 B3 E4", "e standard"),
          Named.of("drop D", "D2 A2 D3 G3 B3 E4"),
          Named.of("double drop D", "D2 A2 D3 G3 B3 D4"),
          Named.of("drop C", "C2 G2 C3 F3 A3 D4"),
          Named.of("DADGAD", "D2 A2 D3 G3 A3 D4"),
          Named.of("open G", "D2 G2 D3 G3 B3 D4"),
          Named.of("open D", "D2 A2 D3 F#3 A3 D4"),
          Named.of(
              "half step down",
              "Eb2 Ab2 Db3 Gb3 Bb3 Eb4",
              "eb",
              "e flat",
              "eb standard",
              "e flat standard",
              "half a step down"),
          Named.of(
              "whole step down",
              "D2 G2 C3 F3 A3 D4",
              "d",
              "d standard",
              "a whole step down",
              "full step down"),
          Named.of(
              "seven-string standard",
              "B1 E2 A2 D3 G3 B3 E4",
              "seven string",
              "7 string",
              "7 string standard"));

  /** The usual tunings of four strings (a bass) to eight; they tell which octave a letter means. */
  private static final List<String> USUAL =
      List.of(
          "E1 A1 D2 G2",
          "B0 E1 A1 D2 G2",
          "E2 A2 D3 G3 B3 E4",
          "B1 E2 A2 D3 G3 B3 E4",
          "F#1 B1 E2 A2 D3 G3 B3 E4");

  private static final Pattern WITH_OCTAVE = Pattern.compile("[A-Ga-g](##?|♯♯?|bb?|♭♭?)?-?\\d");
  private static final Pattern LETTER = Pattern.compile("[A-Ga-g][#♯b♭]?");
  private static final Pattern CAPITAL = Pattern.compile("[A-G][#♯b♭]?");

  /** Where all letters are small, b is the note. */
  private static final Pattern SMALL = Pattern.compile("[a-g][#♯]?");

  private static final int SEMITONES = 12;

  private TuningWords() {}

  /**
   * The open strings from the lowest, by their notes, their letters or a name.
   *
   * @throws BadInput if it is none of these
   */
  static List<Pitch> parse(String written) {
    for (Named known : KNOWN) {
      if (known.isCalled(plain(written))) {
        return pitches(known.notes()).toList();
      }
    }
    List<String> words = words(written);
    if (words.stream().anyMatch(word -> WITH_OCTAVE.matcher(word).matches())) {
      return words.stream().map(Pitch::parse).toList();
    }
    List<String> letters = words.size() == 1 ? letters(words.get(0)) : words;
    if (letters.isEmpty() || !areLetters(letters)) {
      String names = KNOWN.stream().map(Named::name).collect(Collectors.joining(", "));
      throw new BadInput(Wording.of("music.tuning.none", written, names));
    }
    return nearUsual(letters);
  }

  /**
   * The open strings from the lowest, by their notes, or all by their letters.
   *
   * @throws BadInput if one is not a note
   */
  static List<Pitch> parse(List<String> names) {
    return !names.isEmpty() && areLetters(names)
        ? nearUsual(names)
        : names.stream().map(Pitch::parse).toList();
  }

  /** What players call a tuning, however its notes are spelt. */
  static Optional<String> name(Tuning tuning) {
    List<Integer> midis = tuning.lowToHigh().stream().map(Pitch::midi).toList();
    return KNOWN.stream().filter(known -> known.midis().equals(midis)).map(Named::name).findFirst();
  }

  private static String plain(String words) {
    String small = words.toLowerCase(Locale.ROOT).replace('♭', 'b').replaceAll("[\\s_-]+", " ");
    return small.strip().replaceFirst(" tuning$", "");
  }

  private static List<String> words(String written) {
    return Arrays.asList(written.strip().split("[\\s,]+"));
  }

  private static Stream<Pitch> pitches(String notes) {
    return words(notes).stream().map(Pitch::parse);
  }

  private static boolean areLetters(List<String> words) {
    return words.stream().allMatch(word -> LETTER.matcher(word).matches());
  }

  /** The letters of a word such as DADGBE; none if it has anything else in it. */
  private static List<String> letters(String word) {
    boolean small = word.equals(word.toLowerCase(Locale.ROOT));
    Matcher letter = (small ? SMALL : CAPITAL).matcher(word);
    List<String> letters = new ArrayList<>();
    int end = 0;
    while (end < word.length() && letter.find(end) && letter.start() == end) {
      letters.add(letter.group());
      end = letter.end();
    }
    return end == word.length() ? letters : List.of();
  }

  private static List<Pitch> nearUsual(List<String> letters) {
    List<Pitch> usual =
        USUAL.stream()
            .map(notes -> pitches(notes).toList())
            .filter(strings -> strings.size() == letters.size())
            .findFirst()
            .orElseThrow(() -> Tuning.wrongNumber(letters.size()));
    List<Pitch> strings = new ArrayList<>();
    for (int i = 0; i < letters.size(); i++) {
      strings.add(near(letters.get(i), usual.get(i).midi()));
    }
    return strings;
  }

  /** The nearest such note; half an octave off, the lower one, as strings are rather slackened. */
  private static Pitch near(String letter, int midi) {
    char name = Character.toUpperCase(letter.charAt(0));
    int accidental = Pitch.accidentalOf(letter.substring(1));
    int above = Math.floorMod(Pitch.semitonesAboveC(name) + accidental - midi, SEMITONES);
    int nearest = midi + (above < SEMITONES / 2 ? above : above - SEMITONES);
    return new Pitch(name, accidental, Math.floorDiv(nearest - accidental, SEMITONES) - 1);
  }
}
