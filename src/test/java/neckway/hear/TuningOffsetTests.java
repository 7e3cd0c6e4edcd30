package neckway.hear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TuningOffsetTests {
  /**
   * Worked out by hand. Distances 0.25, 0.25, 0 of a semitone are a quarter turn, twice, and none:
   * (0, 1) + (0, 1) + (1, 0) = (1, 2), arc tan 2 = 63.435 degrees = 17.621 cents (mean direction,
   * Mardia and Jupp, "Directional Statistics", 2000, section 2.2). With one more (1, 0) for the
   * belief that a guitar is in tune: 45 degrees, an eighth of a semitone.
   */
  @Test
  void handExample() {
    TuningOffset offset = new TuningOffset();
    offset.add(60.25);
    offset.add(47.25);
    offset.add(52);
    assertThat(offset.cents().getAsDouble()).isCloseTo(17.621, within(0.001));
    assertThat(offset.semitones()).isCloseTo(0.125, within(1e-9));
  }

  @Test
  void sharpAndFlatOfTheHalfwayPointMeetThere() {
    TuningOffset offset = new TuningOffset();
    offset.add(60.49);
    offset.add(60.51);
    offset.add(52.5);
    assertThat(Math.abs(offset.cents().getAsDouble())).isCloseTo(50, within(1e-6));
  }

  @Test
  void saysNothingBeforeThreeNotes() {
    assertThat(TuningOffset.LEAST_NOTES).isEqualTo(3);
    TuningOffset offset = new TuningOffset();
    assertThat(offset.semitones()).isZero();
    offset.add(60.3);
    offset.add(62.3);
    assertThat(offset.known()).isFalse();
    assertThat(offset.cents()).isEmpty();
    offset.add(64.3);
    assertThat(offset.known()).isTrue();
    assertThat(offset.cents().getAsDouble()).isCloseTo(30, within(1e-6));
  }

  @ParameterizedTest
  @ValueSource(ints = {-45, -30, -5, 0, 5, 30, 45})
  void findsAnOffsetInAScale(int cents) {
    TuningOffset offset = new TuningOffset();
    for (int midi : new int[] {40, 43, 45, 47, 50, 52, 54, 57}) {
      offset.add(midi + cents / 100.0 + (midi % 2 == 0 ? 0.02 : -0.02));
    }
    assertThat(offset.cents().getAsDouble()).isCloseTo(cents, within(0.01));
    assertThat(100 * offset.semitones())
        .isBetween(Math.min(0.0, cents) - 0.01, Math.max(0.0, cents) + 0.01);
  }
}
