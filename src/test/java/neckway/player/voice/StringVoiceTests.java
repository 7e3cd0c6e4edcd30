package neckway.player.voice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import neckway.player.Partials;
import neckway.player.settings.Guitar;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StringVoiceTests {
  private static final int RATE = 44_100;
  private static final Stroke STROKE = new Stroke(1, 2.0, 0.13, 0.171, 6000, 0);
  private static final Guitar GUITAR = Guitar.Model.ELECTRIC.plain();

  private static float[] render(double f0Hz, double stiffness, double seconds) {
    float[] out = new float[(int) (seconds * RATE)];
    StringVoice voice = new StringVoice(RATE, f0Hz, stiffness, GUITAR, STROKE);
    for (int at = 0; at < out.length; at += 1000) {
      voice.render(out, at, Math.min(out.length, at + 1000));
    }
    return out;
  }

  // The law of the stiff string, f_n = n f0 sqrt(1 + B n^2): Fletcher, "Normal vibration
  // frequencies of a stiff piano string", J. Acoust. Soc. Am. 36, 1964. Cents worked out by hand:
  // 1200 log2 sqrt(1 + B n^2).
  @ParameterizedTest
  @CsvSource({
    "0.0001, 10, 8.61",
    "0.0003, 10, 25.58",
    "0.0001, 20, 33.95",
    "0.0003, 20, 98.11",
    "0.00001, 10, 0.87"
  })
  void partialsAreSharpAsStiffnessMakesThem(double stiffness, int partial, double cents) {
    float[] out = render(110, stiffness, 0.7);
    double near = partial * 110 * Math.pow(2, cents / 1200);
    double hz = Partials.peakHz(out, 0, 30_000, near, 12, RATE);
    assertThat(Partials.cents(hz, partial * 110.0)).isCloseTo(cents, within(0.3));
  }

  @Test
  void stiffnessDoublesEverySixFrets() {
    assertThat(GUITAR.stiffnessAt(6, 6)).isCloseTo(2 * GUITAR.stiffnessAt(6, 0), within(1e-12));
    assertThat(GUITAR.stiffnessAt(6, 12)).isCloseTo(4 * GUITAR.stiffnessAt(6, 0), within(1e-12));
  }

  @Test
  void highPartialDecaysFasterAsItsLossSays() {
    float[] out = render(110, 1e-5, 1.5);
    for (int partial : new int[] {16, 25}) {
      double hz = StringVoice.partialHz(partial, 110, 1e-5);
      double early = Partials.amplitude(out, 2_000, 8_820, hz, RATE);
      double late = Partials.amplitude(out, 2_000 + 17_640, 8_820, hz, RATE);
      double lossPerSecond = 1 / 2.0 + GUITAR.lossPerKhz2() * hz * hz / 1e6;
      assertThat(Math.log(early / late) / 0.4)
          .isCloseTo(lossPerSecond, within(0.05 * lossPerSecond));
    }
  }

  @Test
  void firstPartialDecaysQuicklyAndThenSlowly() {
    float[] out = render(220, 1e-5, 8);
    double[] level = new double[3];
    for (int i = 0; i < 3; i++) {
      level[i] = Math.log(Partials.amplitude(out, i * 3 * RATE, RATE, 220, RATE));
    }
    assertThat(level[0] - level[1]).isGreaterThan(1.25 * (level[1] - level[2]));
    assertThat(level[1] - level[2]).isPositive();
  }

  @Test
  void pluckedInTheMiddleLacksEvenPartials() {
    float[] out = new float[RATE / 2];
    Stroke middle = new Stroke(1, 2.0, 0.5, 0, 6000, 0);
    new StringVoice(RATE, 220, 0, GUITAR, middle).render(out, 0, out.length);
    double first = Partials.amplitude(out, 0, out.length, 220, RATE);
    assertThat(Partials.amplitude(out, 0, out.length, 440, RATE)).isLessThan(first / 1000);
    // Partial 3 of a string plucked in its middle has a third of the velocity of partial 1: the
    // Fourier series of a triangle, any handbook of acoustics.
    assertThat(Partials.amplitude(out, 0, out.length, 660, RATE) / first)
        .isCloseTo(1 / 3.0, within(0.05));
  }
}
