package neckway.neck;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TuningTests {
  @Test
  void stringsAreNumberedFromTheHighest() {
    Tuning standard = Tuning.STANDARD;
    assertThat(standard.count()).isEqualTo(6);
    assertThat(standard.openMidi(new GuitarString(6))).isEqualTo(40);
    assertThat(standard.openMidi(new GuitarString(1))).isEqualTo(64);
    assertThat(standard.lowest()).isEqualTo(new GuitarString(6));
    assertThat(standard.midi(new Place(new GuitarString(3), 4))).isEqualTo(59);
    assertThat(standard).hasToString("E2 A2 D3 G3 B3 E4");
  }

  @Test
  void fourToEightStrings() {
    assertThat(Tuning.parse("E1 A1 D2 G2").count()).isEqualTo(4);
    assertThat(Tuning.parse("F#1,B1,E2,A2,D3,G3,B3,E4").count()).isEqualTo(8);
    assertThat(Tuning.parse("D2 D2 D3 D3").count()).isEqualTo(4);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "E2|one string",
        "E2 A2 D3|3 strings",
        "E1 F1 G1 A1 B1 C2 D2 E2 F2|9 strings",
        "E4 B3 G3 D3 A2 E2|B3 after E4",
        "E2 A2 D3 G3 B3 E|\"E\" is not a note",
        "E2 A2 D3 G3 B3 D6|D6",
        "G0 A2 D3 G3 B3 E4|G0"
      })
  void whatIsNoTuningIsToldWhy(String names, String words) {
    assertThatThrownBy(() -> Tuning.parse(names))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining(words);
  }
}
