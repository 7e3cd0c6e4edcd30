package neckway.desk.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import neckway.desk.play.LevelWatch.Finding;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the check before a run finds in signals that are known by their formula. */
class LevelWatchTests {
  private static final int RATE = 48_000;

  private final LevelWatch watch = new LevelWatch(RATE);

  private void tone(double hz, double amplitude, double seconds) {
    float[] block = new float[480];
    for (int from = 0; from < seconds * RATE; from += block.length) {
      for (int i = 0; i < block.length; i++) {
        double x = amplitude * Math.sin(2 * Math.PI * hz * (from + i) / RATE);
        block[i] = (float) Math.max(-1, Math.min(1, x));
      }
      watch.feed(block, block.length);
    }
  }

  @Test
  void silenceIsNoFault() {
    tone(196, 0, 1);
    assertThat(watch.finding()).isEqualTo(Finding.NOTHING_YET);
    assertThat(DeviceCheck.line(watch)).isEmpty();
  }

  @Test
  void toneOfMinus46DecibelsIsTooQuiet() {
    tone(196, 0.005, 1);
    assertThat(watch.finding()).isEqualTo(Finding.TOO_QUIET);
    // 20 log10(0.005) = -46.02
    assertThat(DeviceCheck.line(watch)).contains("-46 dB").contains("up");
  }

  @Test
  void flattenedTopsAreClippingAndAreForgottenAfterAWhile() {
    tone(196, 1.5, 1);
    assertThat(watch.finding()).isEqualTo(Finding.CLIPPING);
    tone(195.998, 0.3, 8);
    assertThat(watch.finding()).isEqualTo(Finding.GOOD);
  }

  @Test
  void loudToneThatDoesNotClipIsGood() {
    tone(195.998, 0.9, 2);
    assertThat(watch.finding()).isEqualTo(Finding.GOOD);
  }

  @ParameterizedTest
  @CsvSource({"-30, FLAT", "30, SHARP", "8, GOOD", "-8, GOOD"})
  void guitarOffAsAWholeIsFound(double cents, Finding finding) {
    // equal temperament, A4 = 440 Hz (ISO 16): G3 is 440 * 2^(-14/12)
    tone(440 * Math.pow(2, -14 / 12.0 + cents / 1200), 0.3, 2);
    assertThat(watch.finding()).isEqualTo(finding);
    assertThat(watch.centsOff()).isCloseTo(cents, within(1.0));
  }
}
