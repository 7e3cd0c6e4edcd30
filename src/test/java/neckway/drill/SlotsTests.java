package neckway.drill;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import neckway.neck.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Where slots lie; expected times are worked out by hand. */
class SlotsTests {
  /** At 60 a beat is a second. Two thirds and one third of it: the long-short of a triplet. */
  @ParameterizedTest
  @CsvSource({"0, 0", "1, 0.6667", "2, 1", "3, 1.6667", "8, 4"})
  void theFirstOfAPairTakesItsShare(int step, double seconds) {
    Pulse pulse = new Pulse(60, 2, 4, 4, 2 / 3.0, 0);
    assertThat(pulse.dueSeconds(step)).isCloseTo(seconds, within(1e-4));
  }

  @ParameterizedTest
  @CsvSource({"0, 0", "1, 0.3", "2, 0.5", "3, 0.8", "4, 1"})
  void ofFourNotesABeatThereAreTwoPairs(int step, double seconds) {
    assertThat(new Pulse(60, 4, 4, 4, 0.6, 0).dueSeconds(step)).isCloseTo(seconds, within(1e-9));
  }

  /** A run that starts on the second note of a pair has the short one first. */
  @ParameterizedTest
  @CsvSource({"0, 0.6", "1, 1", "2, 1.6", "3, 2"})
  void pairsAreCountedFromTheBeat(int step, double seconds) {
    assertThat(new Pulse(60, 2, 4, 4, 0.6, 0.5).dueSeconds(step)).isCloseTo(seconds, within(1e-9));
  }

  @Test
  void aThirdOfABeatMayBeWrittenShort() {
    assertThat(new Pulse(60, 3, 4, 4, 0.5, 0.33).checkedOffset().dueSeconds(0))
        .isCloseTo(1 / 3.0, within(1e-9));
  }

  @Test
  void eachSlotIsTheNearestToItself() {
    for (double swing : new double[] {0.5, 0.6, 2 / 3.0, 0.75}) {
      for (int offset = 0; offset < 4; offset++) {
        Slots slots = new Slots(swing, offset);
        for (long slot = -5; slot < 40; slot++) {
          assertThat(slots.nearest(slots.position(slot))).isEqualTo(slot);
          assertThat(slots.nearest(slots.position(slot) + 0.24)).isEqualTo(slot);
        }
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 3, 5, 7})
  void notesThatAreNoPairsCannotSwing(int notesPerBeat) {
    assertThatThrownBy(() -> new Pulse(80, notesPerBeat, 4, 4, 0.6, 0).checkedSwing())
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("cannot be paired");
  }

  @Test
  void noNoteIsAtAQuarterOfABeatOfTwo() {
    assertThatThrownBy(() -> new Pulse(80, 2, 4, 4, 0.5, 0.25).checkedOffset())
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("no note is there");
  }
}
