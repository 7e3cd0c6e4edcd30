package neckway.cli.option;

import java.util.Arrays;
import java.util.List;
import neckway.calibration.Calibration;
import neckway.neck.BadInput;

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
                throw new BadInput(
                    "--frets " + frets + ": give frets of 0 to 24 with commas, like 0,3,7,12");
              }
              return Integer.valueOf(fret);
            })
        .toList();
  }
}
