package neckway.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.Arrays;
import neckway.file.sound.WavWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The check that decides whether a take is played again finds holes, and nothing but holes. */
class PlayedWholeTests {
  private static final int RATE = 48_000;

  @TempDir private Path folder;

  /** Notes of 0.2 s after half a second of silence. */
  private static float[] take() {
    float[] x = new float[3 * RATE];
    for (int i = RATE / 2; i < x.length; i++) {
      int note = i / (RATE / 5);
      double hz = 98 * Math.pow(2, note * 5 % 13 / 12.0);
      double t = i % (RATE / 5) / (double) RATE;
      x[i] = (float) (0.3 * Math.exp(-3 * t) * Math.sin(2 * Math.PI * hz * i / RATE));
    }
    return x;
  }

  private Path write(String name, float[] sound) {
    Path file = folder.resolve(name);
    try (WavWriter writer = new WavWriter(file, RATE, WavWriter.Coding.PCM_16)) {
      writer.write(sound, 0, sound.length);
      writer.finish();
    }
    return file;
  }

  /** What is captured when a take is played after some silence, with frames put in or left out. */
  private static float[] captured(int silence, int brokenAt, int putIn) {
    float[] take = take();
    float[] sound = new float[silence + take.length + Math.max(0, putIn)];
    System.arraycopy(take, 0, sound, silence, brokenAt);
    int from = brokenAt + Math.max(0, -putIn);
    int to = silence + brokenAt + Math.max(0, putIn);
    System.arraycopy(take, from, sound, to, take.length - from);
    return sound;
  }

  @Test
  void wholeTakeIsWhole() {
    Path take = write("take.wav", take());
    Path live = write("live.wav", captured(40_007, 60_000, 0));
    assertThat(new PlayedWhole(live).brokenAt(take)).isEmpty();
    float[] endsEarly = Arrays.copyOf(captured(40_007, 60_000, 0), 120_000);
    assertThat(new PlayedWhole(write("early.wav", endsEarly)).brokenAt(take)).isEmpty();
  }

  @Test
  void placeOfATakeIsFound() {
    Path take = write("take.wav", take());
    Path live = write("live.wav", captured(40_007, 60_000, 0));
    assertThat(new PlayedWhole(live).beganAt(take)).isEqualTo(40_007.0 / RATE, within(0.0002));
  }

  @Test
  void tenMillisecondsPutInOrLeftOutAreFound() {
    Path take = write("take.wav", take());
    for (int frames : new int[] {480, -480}) {
      Path live = write("live" + frames + ".wav", captured(40_007, 72_000, frames));
      assertThat(new PlayedWhole(live).brokenAt(take).orElseThrow()).isBetween(1.3, 1.9);
    }
  }
}
