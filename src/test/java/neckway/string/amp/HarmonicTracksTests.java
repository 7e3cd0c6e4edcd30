package neckway.string.amp;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HarmonicTracksTests {
  private static final double RATE = 44_100;

  /**
   * White noise under a Hann window of N samples leaves 1.5 / N of its power in a bin (Harris 1978,
   * "On the use of windows for harmonic analysis", table 1: 1.5 bins of noise; from memory). N is
   * 18 ms at least, however few periods the note needs.
   */
  @ParameterizedTest
  @ValueSource(doubles = {330, 440, 660})
  void highNotesAreNotLookedAtThroughTooShortAWindow(double hz) {
    Random random = new Random(4);
    double power = 0;
    int numbers = 0;
    for (int i = 0; i < 20; i++) {
      float[] noise = new float[8000];
      for (int n = 0; n < noise.length; n++) {
        noise[n] = (float) random.nextGaussian();
      }
      HarmonicTracks tracks = HarmonicTracks.of(noise, 0, noise.length, RATE, hz, 6).orElseThrow();
      for (int n = 0; n < tracks.re.length; n++) {
        power += tracks.re[n] * tracks.re[n] + tracks.im[n] * tracks.im[n];
      }
      numbers += tracks.re.length;
    }
    assertThat(power / numbers).isBetween(0.8 * 1.5 / (0.018 * RATE), 1.2 * 1.5 / (0.018 * RATE));
  }
}
