package neckway.string;

import java.util.List;
import neckway.neck.GuitarString;

/**
 * A guitar as it was learnt from the calibration sequence.
 *
 * @param strings from the lowest-sounding to the highest
 */
public record GuitarProfile(List<StringProfile> strings) {
  public GuitarProfile {
    strings = List.copyOf(strings);
  }

  /** The profile of a string, by its number. */
  public StringProfile of(GuitarString string) {
    return strings.stream()
        .filter(s -> s.string().equals(string))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no string " + string));
  }

  /**
   * How well a string and the next higher one are told apart where both play the same pitch: the
   * difference of their ln B there in standard deviations of one note.
   *
   * @param lower the lower-sounding of the two
   */
  public double apart(GuitarString lower) {
    StringProfile low = of(lower);
    StringProfile high = of(new GuitarString(lower.number() - 1));
    double there = low.lnStiffnessAt(high.openMidi() - low.openMidi());
    return Math.abs(there - high.lnStiffness()) / Math.hypot(low.spread(), high.spread());
  }

  /**
   * The same of a string and the next one on either side, the nearer of both; infinity where there
   * is none.
   */
  public double apartFromNeighbours(GuitarString string) {
    return strings.stream()
        .map(StringProfile::string)
        .filter(lower -> lower.number() > 1)
        .filter(lower -> lower.equals(string) || lower.number() - 1 == string.number())
        .mapToDouble(this::apart)
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }
}
