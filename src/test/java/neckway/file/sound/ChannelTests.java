package neckway.file.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which channels of a recording become the mono sound. */
class ChannelTests {
  private static final int FRAMES = 40_000;

  @TempDir Path folder;

  private final Random random = new Random(7);
  private final float[] guitar = noise(0.3);
  private final float[] hiss = noise(0.001);
  private final float[] other = noise(0.3);
  private final float[] silence = new float[FRAMES];

  private float[] noise(double level) {
    float[] sound = new float[FRAMES];
    for (int i = 0; i < FRAMES; i++) {
      sound[i] = (float) (level * random.nextGaussian());
    }
    return sound;
  }

  private float[] read(Channel wish, float[]... channels) throws Exception {
    int n = channels.length;
    ByteBuffer wav = ByteBuffer.allocate(44 + 4 * n * FRAMES).order(ByteOrder.LITTLE_ENDIAN);
    wav.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(36 + 4 * n * FRAMES);
    wav.put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII)).putInt(16).putShort((short) 3);
    wav.putShort((short) n).putInt(8_000).putInt(32_000 * n).putShort((short) (4 * n));
    wav.putShort((short) 32).put("data".getBytes(StandardCharsets.US_ASCII)).putInt(4 * n * FRAMES);
    for (int f = 0; f < FRAMES; f++) {
      for (float[] channel : channels) {
        wav.putFloat(channel[f]);
      }
    }
    return Takes.all(Files.write(folder.resolve("a.wav"), wav.array()), wish);
  }

  @Test
  void namedChannelIsTaken() throws Exception {
    assertThat(read(Channel.LEFT, guitar, other)).isEqualTo(guitar);
    assertThat(read(Channel.RIGHT, guitar, other)).isEqualTo(other);
    assertThat(read(Channel.RIGHT, guitar)).isEqualTo(guitar);
  }

  @Test
  void guitarOnOneChannelKeepsItsLevel() throws Exception {
    assertThat(read(Channel.AUTO, guitar, silence)).isEqualTo(guitar);
    assertThat(read(Channel.AUTO, silence, guitar)).isEqualTo(guitar);
    assertThat(read(Channel.AUTO, guitar, hiss)).isEqualTo(guitar);
    assertThat(read(Channel.AUTO, hiss, silence, guitar)).isEqualTo(guitar);
  }

  @Test
  void mixIsTheMeanWhateverTheLevels() throws Exception {
    float[] mix = read(Channel.MIX, guitar, silence);
    for (int i = 0; i < FRAMES; i++) {
      assertThat(mix[i]).isCloseTo(guitar[i] / 2, within(1e-6f));
    }
  }

  @Test
  void bothChannelsOfAStereoRecordingAreMixed() throws Exception {
    float[] mix = read(Channel.AUTO, guitar, other);
    for (int i = 0; i < FRAMES; i++) {
      assertThat(mix[i]).isCloseTo((guitar[i] + other[i]) / 2, within(1e-6f));
    }
  }

  @Test
  void channelsThatCancelAreNotMixed() throws Exception {
    float[] turned = new float[FRAMES];
    for (int i = 0; i < FRAMES; i++) {
      turned[i] = -0.95f * guitar[i];
    }
    assertThat(read(Channel.AUTO, guitar, turned)).isEqualTo(guitar);
  }

  @Test
  void silentRecordingStaysSilent() throws Exception {
    assertThat(read(Channel.AUTO, silence, silence)).isEqualTo(silence);
  }

  /** A sound that swells again and again. */
  private float[] swelling(int everyFrames, double level) {
    float[] sound = noise(level);
    for (int i = 0; i < FRAMES; i++) {
      sound[i] *= (float) Math.exp(-3.0 * (i % everyFrames) / everyFrames);
    }
    return sound;
  }

  private boolean told(float[]... channels) throws Exception {
    read(Channel.AUTO, channels);
    try (TakeReader reader = TakeReader.open(folder.resolve("a.wav"), Channel.AUTO)) {
      return reader
          .warning()
          .filter(w -> w.contains("--channel left or --channel right"))
          .isPresent();
    }
  }

  @Test
  void differentSoundOnTheSidesIsTold() throws Exception {
    float[] notes = swelling(3_000, 0.3);
    assertThat(told(notes, swelling(4_700, 0.2))).isTrue();
    assertThat(told(notes, noise(0.1))).as("a steady noise").isTrue();
  }

  @Test
  void oneSoundOnBothSidesIsNotTold() throws Exception {
    float[] notes = swelling(3_000, 0.3);
    float[] farther = new float[FRAMES];
    for (int i = 20; i < FRAMES; i++) {
      farther[i] = 0.6f * notes[i - 20] + 0.001f * (float) random.nextGaussian();
    }
    assertThat(told(notes, farther)).as("a second microphone, 2.5 ms farther").isFalse();
    assertThat(told(notes, silence)).isFalse();
    assertThat(told(notes)).isFalse();
  }
}
