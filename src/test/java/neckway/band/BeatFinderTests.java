package neckway.band;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import neckway.drill.Pulse;
import neckway.neck.Key;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tempo and first beat of recordings whose own are known, and of sound that has none. */
class BeatFinderTests {
  private static final int RATE = 44_100;

  /** A knock every beat, by hand. */
  @ParameterizedTest
  @CsvSource({"92, 1.84", "61.3, 0.2", "139.5, 0.777", "120, 3"})
  void knocksAreFound(double tempo, double first) {
    float[] sound = new float[30 * RATE];
    Random random = new Random(1);
    for (double at = first; at < 29; at += 60 / tempo) {
      for (int i = 0; i < 2000; i++) {
        sound[(int) (at * RATE) + i] +=
            (float) (0.3 * random.nextGaussian() * Math.exp(-i / 400.0));
      }
    }
    BeatFinder.Found found = new BeatFinder(sound, RATE).find(OptionalDouble.empty()).orElseThrow();
    assertThat(found.tempo() / tempo).isCloseTo(1, within(0.001));
    assertThat(found.firstBeatSeconds()).isCloseTo(first, within(0.012));
  }

  @ParameterizedTest
  @CsvSource({"STRAIGHT, 92", "STRAIGHT, 133", "SHUFFLE, 104", "SHUFFLE, 78", "QUIET, 84"})
  void bandIsFound(Feel feel, double tempo) {
    Pulse pulse = new Pulse(tempo, 2, 4, 4);
    Key key = Key.parse("A major");
    Backing backing = Backing.goingRound(ChordRow.parse("I vi IV V", key), feel, pulse, 16);
    float[] later = new float[backing.samples().length + RATE];
    System.arraycopy(backing.samples(), 0, later, RATE, backing.samples().length);
    BeatFinder.Found found = new BeatFinder(later, RATE).find(OptionalDouble.empty()).orElseThrow();
    assertThat(found.tempo() / tempo).isCloseTo(1, within(0.001));
    assertThat(found.firstBeatSeconds()).isCloseTo(1, within(0.02));
  }

  /** Two of three even notes look like a beat as well; that is why it is shown for correction. */
  @Test
  void threeInABeatMayBeFoundAsTwo() {
    Pulse pulse = new Pulse(66, 2, 4, 4);
    ChordRow row = ChordRow.parse("I vi IV V", Key.parse("A major"));
    Backing backing = Backing.goingRound(row, Feel.TRIPLETS, pulse, 16);
    double found =
        new BeatFinder(backing.samples(), RATE).find(OptionalDouble.empty()).orElseThrow().tempo();
    assertThat(Math.min(Math.abs(found / 66 - 1), Math.abs(found / 99 - 1))).isLessThan(0.001);
  }

  /** Taps are some 25 ms beside the beat; common practice, no source. */
  @ParameterizedTest
  @CsvSource({"STRAIGHT, 92", "SHUFFLE, 78", "TRIPLETS, 66", "QUIET, 133"})
  void whatWasTappedIsMadeExact(Feel feel, double tempo) {
    Pulse pulse = new Pulse(tempo, 2, 4, 4);
    ChordRow row = ChordRow.parse("I vi IV V", Key.parse("A major"));
    BeatFinder finder = new BeatFinder(Backing.goingRound(row, feel, pulse, 16).samples(), RATE);
    double beat = 60 / tempo;
    for (double off : new double[] {-0.04, -0.02, 0, 0.02, 0.04}) {
      BeatFinder.Found found = finder.near(tempo * (1 + 0.8 * off), 9 * beat + off).orElseThrow();
      assertThat(found.tempo() / tempo).isCloseTo(1, within(0.001));
      assertThat(found.firstBeatSeconds()).isCloseTo(9 * beat, within(0.012));
    }
  }

  @Test
  void noiseAndKnocksAtAnyTimeHaveNone() {
    for (int seed = 0; seed < 8; seed++) {
      Random random = new Random(seed);
      float[] noise = new float[20 * RATE];
      for (int i = 0; i < noise.length; i++) {
        noise[i] = (float) (0.1 * random.nextGaussian());
      }
      float[] knocks = new float[20 * RATE];
      for (int k = 0; k < 40; k++) {
        int at = random.nextInt(19 * RATE);
        for (int i = 0; i < 2000; i++) {
          knocks[at + i] += (float) (0.3 * random.nextGaussian() * Math.exp(-i / 400.0));
        }
      }
      for (float[] sound : new float[][] {noise, knocks}) {
        Optional<BeatFinder.Found> found = new BeatFinder(sound, RATE).find(OptionalDouble.empty());
        assertThat(found).isEmpty();
        assertThat(new BeatFinder(sound, RATE).near(100, 7)).isEmpty();
      }
    }
  }
}
