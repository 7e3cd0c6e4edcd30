package neckway.neck;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

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

  /** Names and notes are common practice, no published source. */
  @ParameterizedTest
  @CsvSource({
    "standard, E2 A2 D3 G3 B3 E4, standard",
    "Drop D, D2 A2 D3 G3 B3 E4, drop D",
    "drop d, D2 A2 D3 G3 B3 E4, drop D",
    "drop-d tuning, D2 A2 D3 G3 B3 E4, drop D",
    "double drop D, D2 A2 D3 G3 B3 D4, double drop D",
    "drop C, C2 G2 C3 F3 A3 D4, drop C",
    "DADGAD, D2 A2 D3 G3 A3 D4, DADGAD",
    "open G, D2 G2 D3 G3 B3 D4, open G",
    "open d, D2 A2 D3 F#3 A3 D4, open D",
    "Eb, Eb2 Ab2 Db3 Gb3 Bb3 Eb4, half step down",
    "half step down, Eb2 Ab2 Db3 Gb3 Bb3 Eb4, half step down",
    "E flat, Eb2 Ab2 Db3 Gb3 Bb3 Eb4, half step down",
    "D standard, D2 G2 C3 F3 A3 D4, whole step down",
    "whole-step down, D2 G2 C3 F3 A3 D4, whole step down",
    "seven-string standard, B1 E2 A2 D3 G3 B3 E4, seven-string standard",
    "7-string, B1 E2 A2 D3 G3 B3 E4, seven-string standard"
  })
  void tuningsByTheNamesThatPlayersGiveThem(String written, String strings, String name) {
    assertThat(Tuning.parse(written)).hasToString(strings);
    assertThat(Tuning.parse(written).name()).contains(name);
    assertThat(Tuning.parse(strings).name()).contains(name);
    assertThat(Tuning.of(List.of(written))).hasToString(strings);
  }

  @Test
  void aTuningHasANameWhereOneIsKnownHoweverItIsSpelt() {
    assertThat(Tuning.parse("D#2 G#2 C#3 F#3 A#3 D#4").name()).contains("half step down");
    assertThat(Tuning.parse("C2 G2 D3 A3 E4 G4").name()).isEmpty();
  }

  /** Octaves are those nearest to the usual tuning of as many strings. */
  @ParameterizedTest
  @CsvSource({
    "DADGBE, D2 A2 D3 G3 B3 E4",
    "dadgbe, D2 A2 D3 G3 B3 E4",
    "D A D G B E, D2 A2 D3 G3 B3 E4",
    "'d,a,d,f#,a,d', D2 A2 D3 F#3 A3 D4",
    "DADF#AD, D2 A2 D3 F#3 A3 D4",
    "EbAbDbGbBbEb, Eb2 Ab2 Db3 Gb3 Bb3 Eb4",
    "CGCGCE, C2 G2 C3 G3 C4 E4",
    "EBEG#BE, E2 B2 E3 G#3 B3 E4",
    "BEADF#B, B1 E2 A2 D3 F#3 B3",
    "BEADGBE, B1 E2 A2 D3 G3 B3 E4",
    "ADGCFAD, A1 D2 G2 C3 F3 A3 D4",
    "F#BEADGBE, F#1 B1 E2 A2 D3 G3 B3 E4",
    "EADG, E1 A1 D2 G2",
    "BEADG, B0 E1 A1 D2 G2",
    "Cb E A D G B, Cb2 E2 A2 D3 G3 B3"
  })
  void lettersAloneTakeTheNearestOctaves(String letters, String strings) {
    assertThat(Tuning.parse(letters)).hasToString(strings);
    if (letters.contains(" ")) {
      assertThat(Tuning.of(List.of(letters.split(" ")))).hasToString(strings);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"drop Z", "open", "nashville", "DADGBX", "", "Dadgbe"})
  void anUnknownTuningIsToldWhatIsUnderstood(String written) {
    assertThatThrownBy(() -> Tuning.parse(written))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("\"" + written + "\"")
        .hasMessageContaining("D2 A2 D3 G3 B3 E4")
        .hasMessageContaining("DADGBE")
        .hasMessageContaining("drop D")
        .hasMessageContaining("seven-string standard")
        .hasMessageNotContaining("\n");
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
        "EAD|3 strings",
        "EADGBEADG|9 strings",
        "E2 A D G B E|\"A\" is not a note",
        "G0 A2 D3 G3 B3 E4|G0"
      })
  void whatIsNoTuningIsToldWhy(String names, String words) {
    assertThatThrownBy(() -> Tuning.parse(names))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining(words);
  }
}
