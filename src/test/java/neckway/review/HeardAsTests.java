package neckway.review;

import static org.assertj.core.api.Assertions.assertThat;

import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.neck.Step;
import org.junit.jupiter.api.Test;

/** On the drill whose steps the documented drill format spells out: 6:3 6:5 5:2 5:5 4:2 4:5 3:2. */
class HeardAsTests {
  private final PlayableDrill drill = Drills.example();

  /** The sixth string is E2, MIDI note 40 (MIDI 1.0; ISO 16); step 1 is its fret 5. */
  private final Step due = drill.route().steps().get(1);

  private String label(int midi) {
    return HeardAs.of(drill, due, midi).label();
  }

  @Test
  void aNoteWithinFourFretsIsTheFretOnTheStringThatWasDue() {
    assertThat(due.place()).hasToString("6:5");
    assertThat(label(46)).isEqualTo("6");
    assertThat(label(49)).isEqualTo("9");
    assertThat(label(41)).isEqualTo("1");
  }

  @Test
  void aNoteFartherOffIsNamedWithItsOctave() {
    // five frets up is the fifth string at the same fret as well: D3, 50
    assertThat(label(50)).isEqualTo("D3");
    assertThat(label(40)).isEqualTo("E2");
    assertThat(label(54)).isEqualTo("F#3");
  }

  @Test
  void thereIsNoFretBelowTheNut() {
    Step low = drill.route().steps().get(6);
    assertThat(low.place()).hasToString("3:2");
    // the third string is G3, 55
    assertThat(HeardAs.of(drill, low, 55).label()).isEqualTo("0");
    assertThat(HeardAs.of(drill, low, 54).label()).isEqualTo("F#3");
  }
}
