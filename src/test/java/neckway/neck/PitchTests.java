package neckway.neck;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PitchTests {
  /** A4 = 440 Hz is ISO 16; note 69 and middle C = 60 are MIDI 1.0's (numbers from memory). */
  @Test
  void theStandardPitch() {
    assertThat(Pitch.parse("A4").midi()).isEqualTo(69);
    assertThat(Pitch.parse("C4").midi()).isEqualTo(60);
    assertThat(Pitch.hz(69)).isEqualTo(440);
    assertThat(Pitch.midiOfHz(440)).isEqualTo(69);
  }

  /** Frequencies of equal temperament as printed in any table of it, to two decimals (memory). */
  @ParameterizedTest
  @CsvSource({
    "E2, 40, 82.41",
    "A2, 45, 110.00",
    "D3, 50, 146.83",
    "G3, 55, 196.00",
    "B3, 59, 246.94",
    "E4, 64, 329.63",
    "D2, 38, 73.42",
    "E1, 28, 41.20",
    "E6, 88, 1318.51"
  })
  void equalTemperament(String name, int midi, double hz) {
    assertThat(Pitch.parse(name).midi()).isEqualTo(midi);
    assertThat(Pitch.hz(midi)).isCloseTo(hz, within(0.005));
    assertThat(Pitch.midiOfHz(hz)).isCloseTo(midi, within(0.002));
  }

  @ParameterizedTest
  @CsvSource({
    "Bb1, 34",
    "F#3, 54",
    "Cb4, 59",
    "B#3, 60",
    "e2, 40",
    "bb1, 34",
    "Ebb4, 62",
    "F##4, 67",
    "C-1, 0",
    "G9, 127"
  })
  void namesWithSigns(String name, int midi) {
    assertThat(Pitch.parse(name).midi()).isEqualTo(midi);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "E", "H2", "E2x", "2E", "A10", "G#9", "Cb-1", "#2", "E#b2"})
  void whatIsNoNoteIsToldHowToWriteOne(String name) {
    assertThatThrownBy(() -> Pitch.parse(name))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("\"" + name + "\"")
        .hasMessageContaining("like E2, Bb1 or F#3");
  }
}
