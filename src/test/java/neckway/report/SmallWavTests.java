package neckway.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.util.Base64;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;

/** Held against the Java library's own WAV reader. */
final class SmallWavTests {
  private static final double RATE_HZ = 44_100;

  private static float[] tone(double hz, double amplitude) {
    float[] tone = new float[(int) RATE_HZ];
    for (int i = 0; i < tone.length; i++) {
      tone[i] = (float) (amplitude * Math.sin(2 * Math.PI * hz * i / RATE_HZ));
    }
    return tone;
  }

  /** Root mean square of the middle, where no edge is. */
  private static double level(float[] sound) {
    double sum = 0;
    for (int i = 1000; i < sound.length - 1000; i++) {
      sum += sound[i] * sound[i];
    }
    return Math.sqrt(sum / (sound.length - 2000));
  }

  @Test
  void itIsAWavThatOthersRead() throws Exception {
    String uri = SmallWav.uri(tone(440, 0.5), RATE_HZ);
    assertThat(uri).startsWith("data:audio/wav;base64,");
    byte[] wav = Base64.getDecoder().decode(uri.substring(uri.indexOf(',') + 1));
    try (AudioInputStream in = AudioSystem.getAudioInputStream(new ByteArrayInputStream(wav))) {
      assertThat(in.getFormat())
          .returns(16_000f, AudioFormat::getSampleRate)
          .returns(1, AudioFormat::getChannels)
          .returns(16, AudioFormat::getSampleSizeInBits);
      assertThat(in.getFrameLength()).isEqualTo(16_000);
    }
  }

  @Test
  void whatFitsStaysAndWhatDoesNotIsGone() {
    double whole = 0.5 / Math.sqrt(2);
    assertThat(level(SmallWav.resampled(tone(440, 0.5), RATE_HZ))).isCloseTo(whole, within(0.004));
    assertThat(level(SmallWav.resampled(tone(5000, 0.5), RATE_HZ))).isCloseTo(whole, within(0.02));
    assertThat(level(SmallWav.resampled(tone(10_000, 0.5), RATE_HZ))).isLessThan(0.01 * whole);
  }

  @Test
  void whatIsSlowerAlreadyStays() {
    float[] sound = {0.1f, 0.2f, -0.3f};
    assertThat(SmallWav.resampled(sound, 8000)).containsExactly(sound);
  }
}
