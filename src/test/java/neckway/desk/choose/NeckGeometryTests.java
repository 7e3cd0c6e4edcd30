package neckway.desk.choose;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import neckway.neck.GuitarString;
import org.junit.jupiter.api.Test;

class NeckGeometryTests {
  private static NeckGeometry neck(int first, int last, boolean left, boolean low) {
    return new NeckGeometry(100, 1000, 50, 40, 6, first, last, left, low);
  }

  /**
   * The old rule of makers, from Vincenzo Galilei's Dialogo of 1581 (from memory): each fret stands
   * at an eighteenth of what is left of the string; equal temperament makes it 17.817. The octave
   * halves the string, whatever the rule.
   */
  @Test
  void fretsStandWhereEqualTemperamentHasThem() {
    assertThat(NeckGeometry.shareOfString(12)).isEqualTo(0.5, within(1e-12));
    assertThat(NeckGeometry.shareOfString(24)).isEqualTo(0.75, within(1e-12));
    assertThat(1 / NeckGeometry.shareOfString(1)).isEqualTo(17.817, within(0.001));
    for (int fret = 1; fret <= 24; fret++) {
      double left = 1 - NeckGeometry.shareOfString(fret - 1);
      double step = NeckGeometry.shareOfString(fret) - NeckGeometry.shareOfString(fret - 1);
      assertThat(left / step).isEqualTo(17.817, within(0.001));
    }
  }

  @Test
  void wiresAreDrawnInThatProportionFromTheNutAndFromFurtherUp() {
    NeckGeometry whole = neck(0, 24, false, false);
    assertThat(whole.lineX(0)).isEqualTo(100);
    assertThat(whole.lineX(24)).isEqualTo(1100);
    assertThat(whole.lineX(12)).isEqualTo(100 + 1000 * 0.5 / 0.75, within(1e-9));
    NeckGeometry close = neck(5, 12, false, false);
    assertThat(close.lineX(5)).isEqualTo(100);
    assertThat(close.lineX(12)).isEqualTo(1100, within(1e-9));
    assertThat(close.fretWidth(6) / close.fretWidth(7))
        .isEqualTo(Math.pow(2, 1 / 12.0), within(1e-9));
  }

  @Test
  void aLeftHandedNeckIsTheMirrorImage() {
    for (int fret = 0; fret <= 22; fret++) {
      double right = neck(0, 22, false, false).fingerX(fret);
      double left = neck(0, 22, true, false).fingerX(fret);
      assertThat(left + right).isEqualTo(100 + 1100, within(1e-9));
    }
  }

  @Test
  void theLowestStringIsAtTheTopOrAtTheBottom() {
    assertThat(neck(0, 22, false, false).stringY(new GuitarString(1))).isEqualTo(50);
    assertThat(neck(0, 22, false, false).stringY(new GuitarString(6))).isEqualTo(250);
    assertThat(neck(0, 22, false, true).stringY(new GuitarString(1))).isEqualTo(250);
    assertThat(neck(0, 22, false, true).stringY(new GuitarString(6))).isEqualTo(50);
  }
}
