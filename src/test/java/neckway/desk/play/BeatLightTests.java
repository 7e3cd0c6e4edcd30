package neckway.desk.play;

import static org.assertj.core.api.Assertions.assertThat;

import javafx.scene.paint.Color;
import neckway.drill.Pulse;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * WCAG 2.1, success criterion 2.3.1 and its definition of a general flash: a pair of opposing
 * changes in relative luminance of a tenth of the greatest or more, where the darker image is below
 * 0.80; three of them a second are allowed.
 */
class BeatLightTests {
  private static final double FLASH = 0.10;

  @ParameterizedTest
  @ValueSource(doubles = {20, 60, 120, 180})
  void upToThreeBeatsASecondItLightsInFull(double tempo) {
    for (boolean dark : new boolean[] {false, true}) {
      assertThat(swing(tempo, dark)).isGreaterThan(0.5);
    }
    assertThat(tempo / 60).isLessThanOrEqualTo(3);
  }

  @ParameterizedTest
  @ValueSource(doubles = {181, 200, 240, 400})
  void fasterItPulsesSoSoftlyThatItIsNoFlashButCanBeSeen(double tempo) {
    for (boolean dark : new boolean[] {false, true}) {
      assertThat(swing(tempo, dark)).isLessThan(FLASH);
      double low = Math.min(luminance(tempo, 0, dark), luminance(tempo, 1, dark)) + 0.05;
      assertThat((low + swing(tempo, dark)) / low).as("contrast").isGreaterThan(2);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {20, 80, 180, 400})
  void itIsOutAgainBeforeTheNextBeat(double tempo) {
    Pulse pulse = new Pulse(tempo, 2, 4, 4);
    assertThat(BeatLight.lit(pulse, 0)).isEqualTo(1);
    assertThat(BeatLight.lit(pulse, 0.3 * pulse.beatSeconds())).isBetween(0.4, 0.8);
    assertThat(BeatLight.lit(pulse, 0.8 * pulse.beatSeconds())).isZero();
  }

  private static double swing(double tempo, boolean dark) {
    return Math.abs(luminance(tempo, 1, dark) - luminance(tempo, 0, dark));
  }

  /** Relative luminance (WCAG 2.1). */
  private static double luminance(double tempo, double lit, boolean dark) {
    Color c = BeatLight.shade(tempo, lit, dark);
    return 0.2126 * linear(c.getRed())
        + 0.7152 * linear(c.getGreen())
        + 0.0722 * linear(c.getBlue());
  }

  private static double linear(double c) {
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }
}
