package neckway.hear.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import java.util.Random;
import neckway.hear.Sounds;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DecimatorTests {
  @Test
  void factorOneIsAWire() {
    Decimator wire = new Decimator(1);
    assertThat(wire.delayFrames()).isZero();
    for (float sample : new float[] {0.25f, -1, 0, 0.7f}) {
      assertThat(next(wire, sample)).hasValue(sample);
    }
  }

  @Test
  void refusesNoFactor() {
    assertThatThrownBy(() -> new Decimator(0)).isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 3, 4, 9})
  void oneSampleInSoMany(int factor) {
    Decimator decimator = new Decimator(factor);
    for (int i = 1; i <= 10 * factor; i++) {
      assertThat(next(decimator, 1).isPresent()).as("sample " + i).isEqualTo(i % factor == 0);
    }
  }

  /**
   * A linear-phase filter of N + 1 taps is late by N / 2 at every frequency (Oppenheim and Schafer,
   * "Discrete-Time Signal Processing", ch. 5), so a slow ramp comes out as itself, that much late:
   * also a check of its gain at 0 Hz.
   */
  @ParameterizedTest
  @ValueSource(ints = {2, 4, 8})
  void delaysARampByWhatItSays(int factor) {
    Decimator decimator = new Decimator(factor);
    int checked = 0;
    for (int i = 0; i < 200 * factor; i++) {
      OptionalDouble value = next(decimator, i / 1000f);
      if (value.isPresent() && i > 2 * decimator.delayFrames()) {
        double frames = 1000 * value.getAsDouble();
        assertThat(i - frames).as("frame " + i).isCloseTo(decimator.delayFrames(), within(0.01));
        checked++;
      }
    }
    assertThat(checked).isGreaterThan(150);
    assertThat(decimator.delayFrames()).isEqualTo(8 * factor);
  }

  /** Up to 6 kHz of 22.05 kHz nothing is lost that could be heard. */
  @ParameterizedTest
  @ValueSource(doubles = {40, 82.4, 440, 1500, 4000, 6000})
  void passesWhatIsBelow(double hz) {
    assertThat(gainDb(2, hz)).as(hz + " Hz").isCloseTo(0, within(0.02));
    assertThat(gainDb(4, hz)).as(hz + " Hz").isCloseTo(0, within(0.02));
  }

  /**
   * What would fold down onto the notes. A Blackman window's stop band is 74 dB down (Harris, "On
   * the use of windows", 1978; Oppenheim and Schafer, table of windows).
   */
  @ParameterizedTest
  @ValueSource(doubles = {14_300, 16_000, 18_000, 20_000, 21_500})
  void keepsOutWhatWouldFoldDown(double hz) {
    assertThat(gainDb(2, hz)).as(hz + " Hz").isLessThan(-74);
    assertThat(gainDb(4, hz)).as(hz + " Hz").isLessThan(-74);
  }

  /** Power of a sine at the lower rate, 22,050 Hz, against the one that went in. */
  private static double gainDb(int factor, double hz) {
    double rateHz = 22_050.0 * factor;
    Decimator decimator = new Decimator(factor);
    double sum = 0;
    int count = 0;
    for (int i = 0; i < rateHz / 2; i++) {
      float sample = (float) Math.sin(2 * Math.PI * hz * i / rateHz);
      OptionalDouble value = next(decimator, sample);
      if (value.isPresent() && i >= 4 * decimator.delayFrames()) {
        // Hann: what is cut off at the ends counts for nothing
        double share = (i / (rateHz / 2));
        double window = 1 - Math.cos(2 * Math.PI * share);
        sum += window * value.getAsDouble() * value.getAsDouble();
        count++;
      }
    }
    return Sounds.db(2 * sum / count);
  }

  /** What one more sample completes. */
  private static OptionalDouble next(Decimator decimator, float sample) {
    float[] out = new float[1];
    int made = decimator.process(new float[] {sample}, 0, 1, out, 0);
    return made == 0 ? OptionalDouble.empty() : OptionalDouble.of(out[0]);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 9})
  void theSameInBlocksOfAnySize(int factor) {
    Random random = new Random(5);
    float[] in = new float[5000];
    for (int i = 0; i < in.length; i++) {
      in[i] = (float) random.nextGaussian();
    }
    Decimator whole = new Decimator(factor);
    float[] expected = new float[in.length / factor];
    assertThat(whole.willMake(in.length)).isEqualTo(expected.length);
    assertThat(whole.process(in, 0, in.length, expected, 0)).isEqualTo(expected.length);
    Decimator bit = new Decimator(factor);
    float[] found = new float[expected.length];
    int made = 0;
    for (int from = 0; from < in.length; ) {
      int to = Math.min(in.length, from + 1 + random.nextInt(400));
      made += bit.process(in, from, to, found, made);
      from = to;
    }
    assertThat(made).isEqualTo(expected.length);
    assertThat(found).containsExactly(expected);
  }
}
