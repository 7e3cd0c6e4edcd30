package neckway.hear.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import neckway.hear.Ear;
import neckway.hear.Sounds;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PeriodFinderTests {
  private static final double RATE_HZ = 11_025;
  private static final int SHORTEST = (int) (RATE_HZ / Ear.HIGHEST_HZ);

  private static PeriodFinder finder() {
    return new PeriodFinder(RATE_HZ, Ear.LOWEST_HZ);
  }

  private static int longest() {
    return (int) (RATE_HZ / Ear.LOWEST_HZ);
  }

  /**
   * Worked out by hand: 0 1 0 -1 0 1 0 -1 repeats after 4. McLeod and Wyvill (2005), eq. 9: m(2) =
   * 2 * (-3) / (3 + 3) = -1, m(4) = 2 * 2 / (2 + 2) = 1, m(3) = 2 * 0 / ... = 0.
   */
  @Test
  void handExample() {
    float[] x = {0, 1, 0, -1, 0, 1, 0, -1};
    PeriodFinder finder = finder();
    assertThat(finder.find(x, 0, 8, 2, 10)).isTrue();
    assertThat(finder.periodFrames()).isCloseTo(4, within(1e-6));
    assertThat(finder.clarity()).isCloseTo(1, within(1e-6));
    assertThat(finder.likenessAt(2)).isCloseTo(-1, within(1e-6));
    assertThat(finder.likenessAt(3)).isCloseTo(0, within(1e-6));
    assertThat(finder.likenessAt(2.5)).isCloseTo(-0.5, within(1e-6));
  }

  /** The definition, summed lag by lag: McLeod and Wyvill (2005), eq. 9. */
  @ParameterizedTest
  @ValueSource(ints = {96, 97, 98, 99, 375})
  void likenessIsThatOfTheDefinition(int length) {
    float[] x = mixture(new Random(length), length + 10);
    PeriodFinder finder = finder();
    assertThat(finder.find(x, 10, 10 + length, 2, length)).isTrue();
    for (int lag = 1; lag < Math.min(longest(), 0.68 * length); lag++) {
      double product = 0;
      double power = 0;
      for (int i = 10; i + lag < 10 + length; i++) {
        product += x[i] * x[i + lag];
        power += x[i] * x[i] + x[i + lag] * x[i + lag];
      }
      assertThat(finder.likenessAt(lag))
          .as("lag " + lag)
          .isCloseTo(2 * product / power, within(1e-5));
    }
  }

  /** Three harmonics, the frequencies of which are known; the first is as strong as the others. */
  private static float[] tone(double hz) {
    float[] x = Sounds.silence(RATE_HZ, 0.034);
    for (int k = 1; k <= 3; k++) {
      Sounds.addSine(x, RATE_HZ, k * hz, 0.1, 0.4 * k);
    }
    return x;
  }

  @ParameterizedTest
  @ValueSource(doubles = {82.41, 110, 196, 329.63, 440})
  void aPeriodThatGoesOnIsKept(double hz) {
    float[] x = tone(hz);
    PeriodFinder finder = finder();
    for (double off : new double[] {-0.012, 0, 0.012}) {
      assertThat(finder.keeps(x, 0, x.length, RATE_HZ / hz * (1 + off), 0.93)).isTrue();
      assertThat(Math.abs(Sounds.cents(hz, RATE_HZ / finder.periodFrames()))).isLessThan(12);
    }
  }

  /** An octave and a twelfth above repeat with the old period as well; that is not its going on. */
  @ParameterizedTest
  @ValueSource(doubles = {0.5, 0.944, 1.059, 1.335, 2, 3, 4, 5})
  void anotherPeriodIsNotKept(double times) {
    for (double hz : new double[] {98, 146.83, 220}) {
      float[] x = tone(hz * times);
      assertThat(finder().keeps(x, 0, x.length, RATE_HZ / hz, 0.93)).as(hz + " Hz").isFalse();
    }
  }

  @Test
  void silenceAndNoiseKeepNoPeriod() {
    float[] x = Sounds.silence(RATE_HZ, 0.034);
    assertThat(finder().keeps(x, 0, x.length, 100, 0.93)).isFalse();
    Sounds.addNoise(x, 0, x.length, 0.1, 3);
    assertThat(finder().keeps(x, 0, x.length, 100, 0.93)).isFalse();
  }

  @Test
  void thePeriodAloneIsTheSame() {
    PeriodFinder whole = finder();
    PeriodFinder quick = finder();
    Random random = new Random(5);
    int found = 0;
    for (int i = 0; i < 3000; i++) {
      float[] x = mixture(random, 375);
      boolean any = whole.find(x, 0, x.length, SHORTEST, longest());
      assertThat(quick.findPeriodOnly(x, 0, x.length, SHORTEST, longest())).isEqualTo(any);
      if (any) {
        found++;
        assertThat(quick.periodFrames()).isEqualTo(whole.periodFrames());
        assertThat(quick.clarity()).isEqualTo(whole.clarity());
      }
    }
    assertThat(found).isGreaterThan(2000);
  }

  /** Up to three notes with a few partials each, one of them stronger, and noise. */
  private static float[] mixture(Random random, int length) {
    float[] x = new float[length];
    int notes = 1 + random.nextInt(3);
    for (int n = 0; n < notes; n++) {
      double turn = 2 * Math.PI * Sounds.hz(40 + random.nextInt(40)) / RATE_HZ;
      double size = Math.pow(0.15, n * random.nextDouble());
      for (int k = 1; k <= 6; k++) {
        double a = size * random.nextDouble();
        double phase = 6.3 * random.nextDouble();
        for (int i = 0; i < length; i++) {
          x[i] += (float) (a * Math.sin(k * turn * i + phase));
        }
      }
    }
    double noise = 0.3 * random.nextDouble();
    for (int i = 0; i < length; i++) {
      x[i] += (float) (noise * random.nextGaussian());
    }
    return x;
  }

  /** Equal temperament and MIDI: m = 69 + 12 log2(f / 440); 220 Hz is 57, 82.4069 Hz is 40. */
  @ParameterizedTest
  @CsvSource({"440, 69", "220, 57", "82.4069, 40", "1318.510, 88", "452.893, 69.5"})
  void namesPeriods(double hz, double midi) {
    assertThat(finder().pitchOf(RATE_HZ / hz)).isCloseTo(midi, within(1e-4));
  }

  @Test
  void thereIsNoneInSilenceAndInAStep() {
    float[] x = new float[400];
    assertThat(finder().find(x, 0, 400, SHORTEST, longest())).isFalse();
    java.util.Arrays.fill(x, 0.5f);
    assertThat(finder().find(x, 0, 400, SHORTEST, longest())).isFalse();
  }

  @Test
  void thereIsNoneInLessThanAPeriodAndAHalf() {
    float[] x = Sounds.sine(RATE_HZ, Sounds.hz(40), 0.5, 0.1);
    assertThat(finder().find(x, 0, (int) (1.4 * RATE_HZ / Sounds.hz(40)), SHORTEST, longest()))
        .isFalse();
  }

  /** Natural notes E1 to E6, the instrument's and a bass's range. */
  @ParameterizedTest
  @ValueSource(ints = {28, 33, 40, 45, 50, 55, 59, 64, 69, 76})
  void sinesOverShortWindows(int midi) {
    float[] x = Sounds.sine(RATE_HZ, Sounds.hz(midi), 0.3, 0.3);
    assertThat(worstCents(x, midi, 1.6)).as("cents at " + midi).isLessThan(2);
  }

  /**
   * Partials of a stiff string are sharp: at B = 1e-4 the tenth by 8.6 cents (Fletcher 1964), and
   * what repeats lies between the first and that.
   */
  @ParameterizedTest
  @ValueSource(ints = {28, 33, 40, 45, 50, 55, 59, 64, 69, 76})
  void stiffStringsOverShortWindows(int midi) {
    float[] x = string(midi, Sounds.STIFFNESS, 0.3);
    assertThat(worstCents(x, midi, 2.2)).as("cents at " + midi).isLessThan(9.5);
    assertThat(worstCents(x, midi, 1.6)).as("cents at " + midi).isLessThan(28);
  }

  /** From where a string's frets end, a window is ten milliseconds at the least in the ear. */
  @ParameterizedTest
  @ValueSource(ints = {76, 81, 84, 88})
  void highNotesOver10Ms(int midi) {
    float[] x = string(midi, Sounds.STIFFNESS, 0.3);
    double worst = 0;
    for (int from = 0; from < 1000; from += 37) {
      PeriodFinder finder = finder();
      assertThat(finder.find(x, from, from + 110, SHORTEST, longest())).isTrue();
      worst = Math.max(worst, Math.abs(100 * (finder.pitch() - midi)));
    }
    assertThat(worst).as("cents at " + midi).isLessThan(12);
  }

  /** The octave below holds as well (every second period), the first must win; no fifth either. */
  @ParameterizedTest
  @ValueSource(ints = {52, 57, 64, 69, 76})
  void longWindowsDoNotGiveTheOctaveBelow(int midi) {
    float[] x = string(midi, Sounds.STIFFNESS, 0.3);
    PeriodFinder finder = finder();
    assertThat(finder.find(x, 100, 100 + (int) (0.045 * RATE_HZ), SHORTEST, longest())).isTrue();
    assertThat(finder.pitch()).isCloseTo(midi, within(0.05));
  }

  /** A string plucked in its middle has no even partials; a weak first one does not hide it. */
  @Test
  void weakFundamentalAndOddPartialsKeepTheirOctave() {
    double f = Sounds.hz(45);
    float[] odd = new float[1000];
    float[] weak = new float[1000];
    for (int k = 1; k <= 7; k++) {
      Sounds.addSine(weak, RATE_HZ, k * f, k == 1 ? 0.02 : 0.3 / k, k);
      if (k % 2 == 1) {
        Sounds.addSine(odd, RATE_HZ, k * f, 0.3 / k, k);
      }
    }
    for (float[] x : new float[][] {odd, weak}) {
      PeriodFinder finder = finder();
      assertThat(finder.find(x, 50, 50 + (int) (3 * RATE_HZ / f), SHORTEST, longest())).isTrue();
      assertThat(finder.pitch()).isCloseTo(45, within(0.03));
    }
  }

  /** A slow thump under a note: what repeats only with the thump is not its pitch. */
  @Test
  void aThumpOfTheBodyIsNoPitch() {
    float[] x = string(64, Sounds.STIFFNESS, 0.3);
    Sounds.addSine(x, RATE_HZ, Sounds.hz(64) / 3, 0.03, 1);
    PeriodFinder finder = finder();
    assertThat(finder.find(x, 300, 300 + (int) (0.04 * RATE_HZ), SHORTEST, longest())).isTrue();
    assertThat(finder.pitch()).isCloseTo(64, within(0.1));
  }

  /** Stiffness of a wound sixth string, measured: 1.3e-4 to 2.2e-4 on electric guitars. */
  @ParameterizedTest
  @CsvSource({"40, 1.3e-4", "40, 2.2e-4", "42, 2.2e-4", "45, 2.0e-4", "33, 2e-4"})
  void lowPartialsDoNotSharpen(int midi, double stiffness) {
    float[] x = string(midi, stiffness, 0.3);
    int from = 200;
    int to = from + (int) (3.2 * RATE_HZ / Sounds.hz(midi));
    PeriodFinder finder = finder();
    assertThat(finder.find(x, from, to, SHORTEST, longest())).isTrue();
    double first = 100 * (finder.pitch() - midi);
    double settled =
        100 * (finder.pitchOf(finder.onLowPartials(x, from, to, finder.periodFrames())) - midi);
    assertThat(settled).as("cents, before " + first).isBetween(-1.5, 3.0);
    assertThat(settled).isLessThan(first);
  }

  @Test
  void lowPartialsNeedThreePeriodsOrSo() {
    float[] x = string(40, 2e-4, 0.3);
    double period = RATE_HZ / Sounds.hz(40);
    assertThat(finder().onLowPartials(x, 200, 200 + (int) (2 * period), period)).isEqualTo(period);
  }

  @Test
  void constants() {
    assertThat(PeriodFinder.PEAK_SHARE).isEqualTo(0.9);
  }

  private static double worstCents(float[] x, int midi, double fewest) {
    double period = RATE_HZ / Sounds.hz(midi);
    PeriodFinder finder = finder();
    double worst = 0;
    for (double periods = fewest; periods <= 4.01; periods += 0.3) {
      int length = (int) Math.ceil(Math.max(periods * period, 0.008 * RATE_HZ));
      for (int from = 60; from + length < x.length && from < 900; from += 83) {
        assertThat(finder.find(x, from, from + length, SHORTEST, longest()))
            .as(periods + " periods from " + from)
            .isTrue();
        worst = Math.max(worst, Math.abs(100 * (finder.pitch() - midi)));
      }
    }
    return worst;
  }

  /** A stiff string (Fletcher 1964) with its brightness taken off as in the ear. */
  private static float[] string(int midi, double stiffness, double seconds) {
    float[] x = Sounds.silence(RATE_HZ, seconds);
    for (int k = 1; k <= 20; k++) {
      double hz = Sounds.partialHz(Sounds.hz(midi), stiffness, k);
      if (hz > 0.45 * RATE_HZ) {
        break;
      }
      double size = 0.3 * Math.sin(k * Math.PI * 0.13) / k / (1 + Math.pow(hz / 1500, 2));
      for (int i = 0; i < x.length; i++) {
        double t = i / RATE_HZ;
        x[i] += (float) (size * Math.exp(-t * (0.6 + 0.25 * k)) * Math.sin(2 * Math.PI * hz * t));
      }
    }
    return x;
  }
}
