package neckway.string;

import neckway.neck.Tuning;

/** Profiles whose strings are all alike, of which only what is printed matters. */
public final class AlikeStrings {
  private AlikeStrings() {}

  /**
   * A guitar in standard tuning.
   *
   * @param cents off the tuning
   * @param stiffness B of each open string
   * @param spread of its logarithm
   * @param plucks that it was learnt from
   */
  public static GuitarProfile of(double cents, double stiffness, double spread, int plucks) {
    return new GuitarProfile(
        Tuning.STANDARD.strings().stream()
            .map(
                s ->
                    new StringProfile(
                        s, Tuning.STANDARD.openMidi(s), cents, Math.log(stiffness), spread, plucks))
            .toList());
  }
}
