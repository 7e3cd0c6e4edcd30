package neckway.drill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.neck.BadInput;
import neckway.words.Tongue;
import neckway.words.Wording;
import org.junit.jupiter.api.Test;

/** What is said of a drill where German is spoken. */
class GermanDrillTests {
  private static PlayableDrill drill() {
    return Drills.of("A minor", "minor,major", OptionalInt.empty(), List.of(), List.of(), 1);
  }

  /** So a drill that was kept in one language is the same drill in the other. */
  @Test
  void aMadeTitleIsSaidInGermanAndKeptInEnglish() {
    PlayableDrill german = Wording.in(Tongue.GERMAN, GermanDrillTests::drill);
    assertThat(german.title()).isEqualTo("A minor: minor to major");
    assertThat(german).isEqualTo(drill());
    assertThat(Wording.in(Tongue.GERMAN, german::spokenTitle)).isEqualTo("A minor: Moll bis Dur");
    assertThat(german.spokenTitle()).isEqualTo("A minor: minor to major");
  }

  @Test
  void aGivenTitleIsSaidAsItIs() {
    Drill asked = drill().drill();
    Drill named =
        new Drill(
            Optional.of("Morning ladder"),
            asked.tuning(),
            asked.frets(),
            asked.key(),
            asked.shapes(),
            asked.start(),
            asked.up(),
            asked.down(),
            asked.rounds(),
            asked.pulse());
    assertThat(Wording.in(Tongue.GERMAN, named::spokenTitle)).isEqualTo("Morning ladder");
  }

  @Test
  void whatNotesCannotHaveIsSaidInGerman() {
    assertThatThrownBy(
            () -> Wording.in(Tongue.GERMAN, new Pulse(80, 3, 4, 4, 0.6, 0)::checkedSwing))
        .isInstanceOf(BadInput.class)
        .hasMessage(
            "0.6: 3 Noten pro Schlag ergeben keine Paare; nimm 2 oder 4 Noten pro Schlag, oder lass"
                + " den Swing weg");
    assertThatThrownBy(
            () -> Wording.in(Tongue.GERMAN, new Pulse(80, 2, 4, 4, 0.5, 0.3)::checkedOffset))
        .isInstanceOf(BadInput.class)
        .hasMessage("0.3: Dort ist keine Note; nimm ein Vielfaches von 1/2 Schlag");
  }
}
