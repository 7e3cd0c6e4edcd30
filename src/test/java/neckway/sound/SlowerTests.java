package neckway.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import neckway.hear.Tuner;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Slower, at the same pitch, with everything where it belongs. */
class SlowerTests {
  private static final int RATE = 48_000;

  private static float[] tone(double hz, double seconds) {
    float[] sound = new float[(int) (seconds * RATE)];
    for (int i = 0; i < sound.length; i++) {
      double t = (double) i / RATE;
      sound[i] =
          (float)
              (0.3 * Math.sin(2 * Math.PI * hz * t) + 0.15 * Math.sin(4 * Math.PI * hz * t + 1));
    }
    return sound;
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.5, 0.75})
  void lastsLongerAndKeepsItsPitch(double speed) {
    for (double hz : new double[] {82.407, 196, 659.26}) {
      float[] slow = TimeStretch.slowed(tone(hz, 3), RATE, speed);
      assertThat(slow.length / (double) RATE).isCloseTo(3 / speed, within(0.2));
      Tuner tuner = new Tuner(RATE);
      tuner.process(slow, 0, RATE * 2);
      assertThat(tuner.steady()).as(hz + " Hz").isTrue();
      double cents = 1200 * Math.log(tuner.pitchHz() / hz) / Math.log(2);
      assertThat(cents).as(hz + " Hz").isCloseTo(0, within(3.0));
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.5, 0.75})
  void beatsComeAsMuchLaterAsTheSoundIsSlower(double speed) {
    float[] beats = new float[4 * RATE];
    for (int beat = 0; beat < 8; beat++) {
      for (int i = 0; i < RATE / 4; i++) {
        beats[beat * RATE / 2 + i] =
            (float) (Math.exp(-i / (0.05 * RATE)) * Math.sin(2 * Math.PI * 330 * i / RATE));
      }
    }
    float[] slow = TimeStretch.slowed(beats, RATE, speed);
    for (int beat = 1; beat < 7; beat++) {
      int due = (int) (beat * 0.5 / speed * RATE);
      assertThat(firstLoud(slow, due - RATE / 8) / (double) RATE)
          .as("beat " + beat)
          .isCloseTo(due / (double) RATE, within(0.035));
    }
  }

  private static int firstLoud(float[] sound, int from) {
    int at = from;
    while (Math.abs(sound[at]) < 0.3) {
      at++;
    }
    return at;
  }

  @Test
  void fullSpeedIsTheSoundItself() {
    float[] sound = tone(220, 0.5);
    assertThat(TimeStretch.slowed(sound, RATE, 1)).isEqualTo(sound).isNotSameAs(sound);
  }

  @Test
  void neverLouderThanBefore() {
    for (float sample : TimeStretch.slowed(tone(110, 2), RATE, 0.5)) {
      assertThat(Math.abs(sample)).isLessThan(0.46f);
    }
  }

  @Test
  void speedOutOfRangeIsRefused() {
    assertThatThrownBy(() -> TimeStretch.slowed(tone(220, 1), RATE, 1.5))
        .hasMessageContaining("1.5");
    assertThatThrownBy(() -> TimeStretch.slowed(tone(220, 1), RATE, 0.1))
        .hasMessageContaining("0.1");
  }
}
