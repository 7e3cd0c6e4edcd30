package neckway.band;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import neckway.neck.BadInput;
import neckway.neck.Key;
import neckway.words.Tongue;
import neckway.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Degrees and chords as handbooks of harmony have them; the values are from memory. */
final class ChordRowTests {
  @ParameterizedTest
  @CsvSource({
    "C major,   I vi IV V,       | C | Am | F | G |",
    "A major,   I vi IV V,       | A | F#m | D | E |",
    "Eb major,  ii7 V7 Imaj7,    | Fm7 | Bb7 | Ebmaj7 |",
    "A minor,   i VII VI V7,     | Am | G | F | E7 |",
    "A minor,   i bVII bVI iv,   | Am | G | F | Dm |",
    "E major,   I bVII IV,       | E | D | A |",
    "G major,   'I,IV I vii° I', | G C | G | F#dim | G |",
    "C major,   vi7 iiø7 Vsus4,  | Am7 | Dm7b5 | Gsus4 |",
  })
  void degreesAreThoseOfTheKey(String key, String row, String sheet) {
    Key in = Key.parse(key);
    assertThat(ChordRow.parse(row, in).sheet(in)).isEqualTo(sheet);
  }

  /** A shape's own colour: over D minor 7 and G, the notes of C major are D Dorian. */
  @ParameterizedTest
  @CsvSource({
    "dorian,     | Dm7 | Dm7 | G | G |",
    "phrygian,   | Em | Em | F | F |",
    "mixolydian, | G | G | F | C |",
    "minor,      | Am | Am | F | G |",
    "twelve-bar, | C7 | C7 | C7 | C7 | F7 | F7 | C7 | C7 | G7 | F7 | C7 | G7 |",
  })
  void namedRows(String name, String sheet) {
    Key key = Key.parse("C major");
    assertThat(ChordRow.parse(name, key).sheet(key)).isEqualTo(sheet);
  }

  @Test
  void relativeKeysHaveTheSameModes() {
    Key minor = Key.parse("A minor");
    Key major = Key.parse("C major");
    assertThat(ChordRow.parse("dorian", minor)).isEqualTo(ChordRow.parse("dorian", major));
  }

  @ParameterizedTest
  @CsvSource({"I H IV", "Vi", "VIII", "'I IV,'", "imaj7", "I°", "' '", "'I,I,I,I,I'"})
  void whatIsNoRowIsToldInOneLine(String row) {
    assertThatThrownBy(() -> ChordRow.parse(row, Key.parse("A major")))
        .isInstanceOf(BadInput.class)
        .message()
        .doesNotContain("\n")
        .isNotBlank();
  }

  @Test
  void rowGoesRound() {
    ChordRow row = ChordRow.parse("I V", Key.parse("C major"));
    assertThat(row.bar(5)).isEqualTo(row.bar(1));
  }

  @Test
  void aComplaintIsGermanWhereGermanIsSpoken() {
    Key key = Key.parse("A major");
    List<Runnable> wrong =
        List.of(
            () -> ChordRow.parse(" ", key),
            () -> ChordRow.parse("I,IV,V,I,I", key),
            () -> ChordRow.parse("I ".repeat(65), key),
            () -> ChordRow.parse("Im", key),
            () -> Feel.parse("5/4"));
    List<String> said =
        Wording.in(
            Tongue.GERMAN,
            () ->
                wrong.stream()
                    .map(each -> catchThrowableOfType(BadInput.class, each::run).getMessage())
                    .toList());
    assertThat(said)
        .allSatisfy(line -> assertThat(line).doesNotContain(" the ", " is ", " and ", " not "))
        .contains(
            "\"I,IV,V,I,I\": In einen Takt passen höchstens vier Akkorde",
            "65 Takte mit Akkorden; nimm höchstens 64");
  }
}
