package neckway.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One loudness, no clipping, a fade and a volume. */
class LevellingTests {
  private static final int RATE = 48_000;
  private static final int BLOCK = 512;

  /** Plucks of one sine each, two a second. */
  private static float[] plucks(double peak, double seconds) {
    float[] sound = new float[(int) (seconds * RATE)];
    for (int i = 0; i < sound.length; i++) {
      double t = i % (RATE / 2) / (double) RATE;
      sound[i] = (float) (peak * Math.exp(-6 * t) * Math.sin(2 * Math.PI * 220 * t));
    }
    return sound;
  }

  private static float peak(float[] sound) {
    float peak = 0;
    for (float sample : sound) {
      peak = Math.max(peak, Math.abs(sample));
    }
    return peak;
  }

  private static double lkfs(float[] sound) {
    return Loudness.integrated(sound, RATE).orElseThrow();
  }

  private static float[] output(Clip clip, int frames) {
    float[] all = new float[frames];
    float[] block = new float[BLOCK];
    for (int at = 0; at < frames; at += BLOCK) {
      clip.fill(at, block);
      System.arraycopy(block, 0, all, at, Math.min(BLOCK, frames - at));
    }
    return all;
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.005, 0.1, 1})
  void quietAndLoudSoundBecomeEquallyLoud(double peak) {
    assertThat(lkfs(Levelling.levelled(plucks(peak, 6), RATE)))
        .isEqualTo(Levelling.TARGET_LKFS, within(0.1));
  }

  @Test
  void knockThatIsFarLouderThanThePlayingIsTurnedDownAndNotCutOff() {
    float[] sound = plucks(0.02, 8);
    for (int i = 0; i < 200; i++) {
      sound[3 * RATE + 1000 + i] = (float) Math.sin(2 * Math.PI * i / 100.0);
    }
    float[] level = Levelling.levelled(sound, RATE);
    assertThat(peak(level)).isLessThanOrEqualTo((float) Levelling.CEILING);
    assertThat(lkfs(level)).isEqualTo(Levelling.TARGET_LKFS, within(1.5));
    // cut off, the top would be flat; turned down, it is a sine still
    int top = 3 * RATE + 1000 + 25;
    double ratio = level[top - 12] / level[top];
    assertThat(ratio).isEqualTo(Math.sin(2 * Math.PI * 13 / 100.0), within(0.02));
  }

  @Test
  void limitingHoldsForAnySound() {
    Random random = new Random(5);
    for (int length : new int[] {1, 2, 100, 481, 5_000}) {
      float[] sound = new float[length];
      for (int i = 0; i < length; i++) {
        sound[i] = (float) (random.nextGaussian() * Math.pow(10, random.nextInt(4) - 2));
      }
      assertThat(peak(Levelling.limited(sound, RATE))).isLessThanOrEqualTo(0.8911f);
    }
  }

  @Test
  void silenceStaysSilentAndNoiseIsNotMadeIntoPlaying() {
    assertThat(peak(Levelling.levelled(new float[RATE], RATE))).isZero();
    float[] noise = new float[4 * RATE];
    Random random = new Random(1);
    for (int i = 0; i < noise.length; i++) {
      noise[i] = (float) (0.0004 * random.nextGaussian());
    }
    assertThat(lkfs(Levelling.levelled(noise, RATE)))
        .isLessThan(lkfs(noise) + Levelling.MOST_GAIN_DB + 0.1)
        .isLessThan(Levelling.TARGET_LKFS - 1);
  }

  @Test
  void clipBeginsAtNothingAndRisesSmoothly() {
    float[] tone = new float[2 * RATE];
    for (int i = 0; i < tone.length; i++) {
      tone[i] = (float) Math.cos(2 * Math.PI * 1000 * i / RATE);
    }
    float[] out = output(Clip.of(tone, RATE, false, () -> 1), RATE);
    float full = peak(java.util.Arrays.copyOfRange(out, RATE / 2, RATE));
    assertThat(out[0]).isZero();
    // 10 ms in, less than a twentieth; 50 ms in, not there yet
    assertThat(peak(java.util.Arrays.copyOf(out, RATE / 100))).isLessThan(full / 20);
    assertThat(peak(java.util.Arrays.copyOf(out, RATE / 20))).isLessThan(0.75f * full);
  }

  @Test
  void volumeIsChangedWhileItSoundsWithoutAStep() {
    double[] volume = {0.2};
    float[] flat = new float[4 * RATE];
    java.util.Arrays.fill(flat, 0.5f);
    Clip clip = Clip.ofLevelled(flat, RATE, false, () -> volume[0]);
    output(clip, RATE);
    float[] block = new float[BLOCK];
    clip.fill(RATE, block);
    assertThat(block[BLOCK - 1]).isEqualTo(0.1f, within(1e-4f));
    volume[0] = 1;
    float before = block[BLOCK - 1];
    clip.fill(RATE + BLOCK, block);
    for (float sample : block) {
      assertThat(sample - before).isBetween(0f, 0.001f);
      before = sample;
    }
    assertThat(before).isEqualTo(0.5f, within(1e-4f));
  }

  @Test
  void loopGoesRoundWithoutAStepAtItsSeamAndFadesInOnce() {
    float[] flat = new float[RATE];
    java.util.Arrays.fill(flat, 0.5f);
    float[] out = output(Clip.ofLevelled(flat, RATE, true, () -> 1), 3 * RATE);
    for (int i = 1; i < out.length; i++) {
      assertThat(Math.abs(out[i] - out[i - 1])).isLessThan(0.01f);
    }
    assertThat(out[RATE + RATE / 100]).as("10 ms into the second round").isEqualTo(0.5f);
    float[] once = output(Clip.ofLevelled(flat, RATE, false, () -> 1), 2 * RATE);
    assertThat(once[RATE + 1]).as("after the end").isZero();
  }
}
