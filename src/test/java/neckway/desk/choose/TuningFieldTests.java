package neckway.desk.choose;

import static org.assertj.core.api.Assertions.assertThat;

import neckway.neck.Tuning;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Names and notes of tunings: common practice, no source. */
class TuningFieldTests {
  @ParameterizedTest
  @CsvSource({
    "E2 A2 D3 G3 B3 E4, standard",
    "D2 A2 D3 G3 B3 E4, drop D",
    "DADGBE, drop D",
    "B1 E2 A2 D3 G3 B3 E4, seven-string standard",
    "E2 A2 D3 G3 C4 F4, E A D G C F",
    "F#1 B1 E2 A2 D3 G3 B3 E4, F# B E A D G B E",
    "E1 A1 D2 G2 B2 E3, E1 A1 D2 G2 B2 E3"
  })
  void aTuningIsShownByItsNameOrAsShortAsItIsUnderstoodAgain(String notes, String shown) {
    Tuning tuning = Tuning.parse(notes);
    assertThat(TuningField.words(tuning)).isEqualTo(shown);
    assertThat(Tuning.parse(shown)).isEqualTo(tuning);
  }
}
