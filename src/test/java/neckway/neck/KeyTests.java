package neckway.neck;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class KeyTests {
  private static String pentatonic(Key key) {
    int tonic = 60 + key.majorTonic();
    return IntStream.range(tonic, tonic + 12)
        .filter(key::isPentatonic)
        .mapToObj(midi -> key.spell(midi).note())
        .collect(Collectors.joining(" "));
  }

  /** The major scale's degrees 1 2 3 5 6; key signatures of the circle of fifths (memory). */
  @ParameterizedTest
  @CsvSource({
    "C major, C D E G A, 0", "G major, G A B D E, 1", "A major, A B C# E F#, 3",
    "F# major, F# G# A# C# D#, 6", "C# major, C# D# E# G# A#, 7", "F major, F G A C D, -1",
    "Bb major, Bb C D F G, -2", "Gb major, Gb Ab Bb Db Eb, -6", "Db major, Db Eb F Ab Bb, -5",
    "Cb major, Cb Db Eb Gb Ab, -7", "B major, B C# D# F# G#, 5"
  })
  void spelling(String name, String notes, int signs) {
    Key key = Key.parse(name);
    assertThat(pentatonic(key)).isEqualTo(notes);
    assertThat(key.signs()).isEqualTo(signs);
    assertThat(key).hasToString(name);
  }

  @ParameterizedTest
  @CsvSource({
    "F# minor, A major", "A minor, C major", "G minor, Bb major", "Eb minor, Gb major",
    "G# minor, B major", "Bb minor, Db major", "D# minor, F# major", "Ab minor, Cb major"
  })
  void aMinorKeyHasTheNotesOfItsRelativeMajor(String minor, String major) {
    assertThat(pentatonic(Key.parse(minor))).isEqualTo(pentatonic(Key.parse(major)));
    assertThat(Key.parse(minor).majorTonic()).isEqualTo(Key.parse(major).majorTonic());
  }

  @ParameterizedTest
  @CsvSource({
    "G# major, Ab major",
    "D# major, Eb major",
    "A# major, Bb major",
    "Fb major, E major",
    "Db minor, C# minor",
    "Gb minor, F# minor",
    "E# minor, F minor"
  })
  void aKeyOfMoreThanSevenSignsIsNamedAsPlayersNameIt(String given, String named) {
    assertThat(Key.parse(given)).hasToString(named);
  }

  @Test
  void capitalsAndSpacesDoNotMatter() {
    assertThat(Key.parse("  bb   MAJOR ")).hasToString("Bb major");
  }

  /** As on chord sheets: a small m is minor, a letter alone major; common practice, no source. */
  @ParameterizedTest
  @CsvSource({
    "C, C major",
    "Am, A minor",
    "am, A minor",
    "AM, A major",
    "f# minor, F# minor",
    "F#m, F# minor",
    "Bbm, Bb minor",
    "bb, Bb major",
    "b, B major",
    "B♭, Bb major",
    "Amaj, A major",
    "C# min, C# minor",
    "E flat, Eb major",
    "F sharp minor, F# minor",
    "A-flat major, Ab major",
    "A minor pentatonic, A minor",
    "Dbm, C# minor"
  })
  void keysAsPlayersWriteThem(String written, String key) {
    assertThat(Key.parse(written)).hasToString(key);
  }

  @Test
  void octavesAreThoseOfTheLetter() {
    assertThat(Key.parse("Cb major").spell(59)).hasToString("Cb4");
    assertThat(Key.parse("C# major").spell(60)).hasToString("B#3");
    assertThat(Key.parse("Bb major").spell(46)).hasToString("Bb2");
  }

  @Test
  void aNoteOutsideTakesTheKeysOwnKindOfSign() {
    assertThat(Key.parse("Bb major").spell(61)).hasToString("Db4");
    assertThat(Key.parse("A major").spell(63)).hasToString("D#4");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "H",
        "H major",
        "A dorian",
        "A##major",
        "12",
        "A minor x",
        "m",
        "Am7",
        "A blues"
      })
  void whatIsNoKeyIsToldHowToWriteOne(String name) {
    assertThatThrownBy(() -> Key.parse(name))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("\"" + name + "\"")
        .hasMessageContaining("A major")
        .hasMessageContaining("Am");
  }
}
