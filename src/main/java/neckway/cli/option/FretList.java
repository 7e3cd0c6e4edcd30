package neckway.cli.option;

import java.util.Arrays;
import java.util.List;
import neckway.calibration.Calibration;
import neckway.neck.BadInput;
import neckway.words.Wording;

/** Frets given as an option. */
public final class FretList {
  private FretList() {}

  /**
   * Reads frets with commas between.
   *
   * @throws BadInput naming the option and the mend
   */
  public static List<Integer> parse(String frets) {
    return Arrays.stream(frets.strip().split("\\s*,\\s*"))
        .map(
            fret -> {
              if (!fret.matches("\\d{1,2}") || Integer.parseInt(fret) > Calibration.HIGHEST_FRET) {
                throw new BadInput(Wording.of("options.frets", frets));
              }
              return Integer.valueOf(fret);
            })
        .toList();
  }
}
