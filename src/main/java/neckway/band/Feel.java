package neckway.band;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import neckway.drill.Pulse;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * How the band moves within a beat. Named by the metre of a bar of four beats; what each instrument
 * plays is our own.
 */
public enum Feel {
  /** Straight eighths. */
  STRAIGHT("4/4", new double[] {0, 0.5}),
  /** Eighths of two and one thirds of a beat, a triplet with its middle left out. */
  SHUFFLE("4/4-swung", new double[] {0, 2 / 3.0}),
  /** Slow triplets: three even notes in a beat. */
  TRIPLETS("12/8", new double[] {0, 1 / 3.0, 2 / 3.0}),
  /** Quiet, one note a beat. */
  QUIET("4/4-quiet", new double[] {0});

  /** Nearer to two thirds than to a half. */
  private static final double LEAST_SHUFFLE = 7 / 12.0;

  private final String word;
  private final double[] parts;

  Feel(String word, double[] parts) {
    this.word = word;
    this.parts = parts;
  }

  /** What goes under a drill: swung under swung notes, triplets under triplets, else straight. */
  public static Feel under(Pulse pulse) {
    if (pulse.notesPerBeat() == 2 && pulse.swing() >= LEAST_SHUFFLE) {
      return SHUFFLE;
    }
    return pulse.notesPerBeat() == 3 ? TRIPLETS : STRAIGHT;
  }

  /** As it is named. */
  public String word() {
    return word;
  }

  /** Where notes may begin within a beat, shares of it. */
  double[] parts() {
    return parts.clone();
  }

  /**
   * By its name.
   *
   * @throws BadInput where there is none of it
   */
  public static Feel parse(String word) {
    String asked = word.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values())
        .filter(feel -> feel.word.equals(asked))
        .findFirst()
        .orElseThrow(() -> new BadInput(Wording.of("music.feel.unknown", word, words())));
  }

  /** The names, with commas between. */
  public static String words() {
    return List.of(values()).stream().map(Feel::word).collect(Collectors.joining(", "));
  }
}
