package neckway.hear.beside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Where a known sound lies, at which rate, and how much of it is taken out. */
class KnownSoundTests {
  private static final double RATE = 22_050;

  /** Noise whose loudness swells and falls, so that it never repeats. */
  private static float[] music(double seconds, double rate, long seed) {
    Random random = new Random(seed);
    float[] x = new float[(int) (seconds * rate)];
    double low = 0;
    double level = 0.1;
    for (int i = 0; i < x.length; i++) {
      if (random.nextInt((int) rate / 4) == 0) {
        level = 0.03 + 0.1 * random.nextDouble();
      }
      low += 0.5 * (random.nextGaussian() - low);
      x[i] = (float) (level * low);
    }
    return x;
  }

  /** A guitar's stand-in: decaying tones, four a second. */
  private static float[] tones(double seconds, double level) {
    float[] x = new float[(int) (seconds * RATE)];
    int apart = (int) (RATE / 4);
    for (int i = 0; i < x.length; i++) {
      double t = i % apart / RATE;
      double hz = 110 * Math.pow(2, (i / apart * 7 % 24) / 12.0);
      for (int k = 1; k < 6; k++) {
        x[i] += (float) (level / k * Math.exp(-4 * t) * Math.sin(2 * Math.PI * hz * k * t));
      }
    }
    return x;
  }

  /** What comes to the microphone of a sound that starts somewhere and runs at a drift. */
  private static float[] leak(float[] known, double starts, double drift, int frames) {
    float[] placed = AtRate.read(known, -starts * RATE * (1 + drift), 1 + drift, frames);
    float[] leak = new float[frames];
    Random random = new Random(9);
    for (int echo = 0; echo < 200; echo++) {
      int delay = (int) (RATE * (0.004 + (echo == 0 ? 0 : 0.2 * random.nextDouble())));
      double gain =
          echo == 0 ? 0.3 : 0.05 * random.nextGaussian() * Math.pow(10, -3 * delay / RATE / 0.2);
      for (int i = delay; i < frames; i++) {
        leak[i] += (float) (gain * placed[i - delay]);
      }
    }
    return leak;
  }

  private static float[] sum(float[] a, float[] b) {
    float[] sum = a.clone();
    for (int i = 0; i < sum.length; i++) {
      sum[i] += b[i];
    }
    return sum;
  }

  private static double power(float[] x) {
    double sum = 0;
    for (float v : x) {
      sum += v * v;
    }
    return sum / x.length;
  }

  @Test
  void fourNumbersAreTransformedAsByHand() {
    float[] re = {1, 2, 3, 5};
    float[] im = new float[4];
    new Spectrum(4).forward(re, im);
    assertThat(re).containsExactly(11, -2, -3, -2);
    assertThat(im).containsExactly(0, 3, 0, -3);
    new Spectrum(4).backward(re, im);
    assertThat(re).containsExactly(4, 8, 12, 20);
  }

  @Test
  void aToneReadAtAnotherRateIsThatTone() {
    float[] tone = new float[8_000];
    for (int i = 0; i < tone.length; i++) {
      tone[i] = (float) Math.sin(2 * Math.PI * 1_000 * i / 44_100);
    }
    float[] read = AtRate.read(tone, 100.25, 44_100 / 48_000.0, 7_000);
    for (int n = 0; n < read.length; n++) {
      double at = 100.25 + n * 44_100 / 48_000.0;
      assertThat((double) read[n])
          .isCloseTo(Math.sin(2 * Math.PI * 1_000 * at / 44_100), within(0.002));
    }
  }

  @Test
  void theStartIsFoundUnderALouderGuitarAndTheDriftWithIt() {
    float[] known = music(25, RATE, 1);
    float[] guitar = tones(20, 0.3);
    float[] take = sum(guitar, leak(known, 1.5, 6e-5, guitar.length));
    List<Alignment> found =
        new AlignmentFinder(take, RATE, known, RATE, OptionalDouble.empty()).find();
    assertThat(found).isNotEmpty();
    // the way begins after 4 ms
    assertThat(found.get(0).startsSeconds()).isCloseTo(1.504, within(0.001));
    assertThat(found.get(0).drift()).isCloseTo(6e-5, within(8e-6));
  }

  @Test
  void aRecordingBegunAfterTheKnownSoundHasItsStartBeforeTheTake() {
    float[] known = music(25, RATE, 1);
    float[] take = leak(known, -4.25, 0, (int) (12 * RATE));
    List<Alignment> found =
        new AlignmentFinder(take, RATE, known, RATE, OptionalDouble.empty()).find();
    assertThat(found.get(0).startsSeconds()).isCloseTo(-4.246, within(0.001));
  }

  @Test
  void anotherSoundIsNotFound() {
    float[] guitar = tones(20, 0.3);
    float[] take = sum(guitar, leak(music(25, RATE, 1), 1.5, 0, guitar.length));
    AlignmentFinder finder =
        new AlignmentFinder(take, RATE, music(25, RATE, 2), RATE, OptionalDouble.empty());
    assertThat(finder.find()).isEmpty();
    assertThat(finder.score()).isLessThan(7.5);
  }

  @Test
  void aTakeOrKnownSoundOfNextToNothingIsNotFound() {
    float[] few = {0.1f, -0.1f, 0.1f};
    float[] silent = new float[30_000];
    assertThat(new AlignmentFinder(few, RATE, few, RATE, OptionalDouble.empty()).find()).isEmpty();
    assertThat(
            new AlignmentFinder(silent, RATE, music(2, RATE, 1), RATE, OptionalDouble.empty())
                .find())
        .isEmpty();
  }

  @Test
  void theLeakIsTakenOutAndTheGuitarStays() {
    float[] known = music(25, RATE, 1);
    float[] guitar = tones(20, 0.3);
    float[] leak = leak(known, 1.5, -3e-5, guitar.length);
    float[] take = sum(guitar, leak);
    KnownSoundRemover.Found found =
        new KnownSoundRemover(take, RATE, known, RATE).find(OptionalDouble.empty()).orElseThrow();
    assertThat(found.where().drift()).isCloseTo(-3e-5, within(1.5e-6));
    found.takeOut(take);
    for (int i = 0; i < take.length; i++) {
      take[i] -= guitar[i];
    }
    // measured: 12.4; the guitar is some 30 dB louder
    assertThat(10 * Math.log10(power(leak) / power(take))).isGreaterThan(10);
  }

  @Test
  void aTakeWithoutAGuitarIsAllButSilentAfterwards() {
    float[] known = AtRate.read(music(25, RATE, 1), 0, RATE / 48_000, (int) (25 * 48_000));
    float[] leak = leak(music(25, RATE, 1), 0.8, 0, (int) (15 * RATE));
    float[] take = leak.clone();
    KnownSoundRemover.Found found =
        new KnownSoundRemover(take, RATE, known, 48_000).find(OptionalDouble.of(1)).orElseThrow();
    found.takeOut(take);
    assertThat(10 * Math.log10(power(leak) / power(take))).isGreaterThan(30);
  }
}
