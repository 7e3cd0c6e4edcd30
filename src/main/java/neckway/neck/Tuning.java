package neckway.neck;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import neckway.words.Wording;

/**
 * The open strings, from the lowest to the highest.
 *
 * @param lowToHigh four to eight pitches, none lower than the one before
 */
public record Tuning(List<Pitch> lowToHigh) {
  private static final int FEWEST = 4;
  private static final int LOWEST_MIDI = Pitch.parse("A0").midi();
  private static final int HIGHEST_MIDI = Pitch.parse("C6").midi();

  /** E A D G B E. */
  public static final Tuning STANDARD = parse("E2 A2 D3 G3 B3 E4");

  /**
   * @throws BadInput if there are too few or too many strings, or they are not in order
   */
  public Tuning {
    lowToHigh = List.copyOf(lowToHigh);
    if (lowToHigh.size() < FEWEST || lowToHigh.size() > GuitarString.MAX_STRINGS) {
      throw wrongNumber(lowToHigh.size());
    }
    for (int i = 0; i < lowToHigh.size(); i++) {
      Pitch open = lowToHigh.get(i);
      if (open.midi() < LOWEST_MIDI || open.midi() > HIGHEST_MIDI) {
        throw new BadInput(Wording.of("music.tuning.outside", open));
      }
      if (i > 0 && open.midi() < lowToHigh.get(i - 1).midi()) {
        throw new BadInput(Wording.of("music.tuning.order", open, lowToHigh.get(i - 1)));
      }
    }
  }

  /**
   * Reads a tuning as players write it: the notes from the lowest string to the highest, apart by
   * spaces or commas, like D2 A2 D3 G3 B3 E4; their letters alone, like DADGBE, which stand for the
   * octaves nearest to the usual tuning of as many strings; or a name, like drop D.
   *
   * @throws BadInput if it is none of these, or as the constructor
   */
  public static Tuning parse(String written) {
    return new Tuning(TuningWords.parse(written));
  }

  /**
   * @param names from the lowest string to the highest, like E2 or, all without octaves, like E;
   *     one alone as in {@link #parse}
   * @throws BadInput if one is no note, or as the constructor
   */
  public static Tuning of(List<String> names) {
    return names.size() == 1 ? parse(names.get(0)) : new Tuning(TuningWords.parse(names));
  }

  /** What players call it, such as drop D, where there is a name that they agree on. */
  public Optional<String> name() {
    return TuningWords.name(this);
  }

  /** A complaint about too few or too many strings. */
  static BadInput wrongNumber(int strings) {
    return new BadInput(Wording.counted("music.tuning.strings", strings, strings));
  }

  /** How many strings, 4 to 8. */
  public int count() {
    return lowToHigh.size();
  }

  /** The strings from the lowest-sounding, which has the highest number, to string 1. */
  public List<GuitarString> strings() {
    List<GuitarString> strings = new ArrayList<>();
    for (int number = count(); number >= 1; number--) {
      strings.add(new GuitarString(number));
    }
    return strings;
  }

  /** The lowest-sounding string. */
  public GuitarString lowest() {
    return new GuitarString(count());
  }

  /** Whether there is a string of that number. */
  public boolean has(int number) {
    return number >= 1 && number <= count();
  }

  /**
   * MIDI note number of an open string.
   *
   * @throws IllegalArgumentException if this tuning has no such string
   */
  public int openMidi(GuitarString string) {
    if (!has(string.number())) {
      throw new IllegalArgumentException("string " + string + " of " + count());
    }
    return lowToHigh.get(count() - string.number()).midi();
  }

  /** MIDI note number that sounds at a place. */
  public int midi(Place place) {
    return openMidi(place.string()) + place.fret();
  }

  /** The names, as they were given, from the lowest string up. */
  public List<String> names() {
    return lowToHigh.stream().map(Pitch::toString).toList();
  }

  /** The names with spaces between. */
  @Override
  public String toString() {
    return lowToHigh.stream().map(Pitch::toString).collect(Collectors.joining(" "));
  }
}
