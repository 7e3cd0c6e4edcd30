package neckway.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class CueTonesTests {
  private static final int RATE = 48_000;
  private static final double GAIN = 0.1;

  private static float[] played(int blockFrames, CueTones.Way... ways) {
    List<CueTones.At> tones = new ArrayList<>();
    for (CueTones.Way way : ways) {
      tones.add(new CueTones.At((tones.size() + 0.5) * RATE, way));
    }
    CueTones sound = new CueTones(RATE, tones, GAIN);
    float[] all = new float[RATE * (ways.length + 1)];
    float[] block = new float[blockFrames];
    for (int from = 0; from + blockFrames <= all.length; from += blockFrames) {
      sound.fill(from, block);
      System.arraycopy(block, 0, all, from, blockFrames);
    }
    return all;
  }

  /** Rising zero crossings in 60 ms, as Hz. */
  private static double pitch(float[] sound, double fromSeconds) {
    int from = (int) (fromSeconds * RATE);
    int rises = 0;
    for (int i = from; i < from + 0.06 * RATE; i++) {
      rises += sound[i - 1] < 0 && sound[i] >= 0 ? 1 : 0;
    }
    return rises / 0.06;
  }

  /** The highest of 22 frets above E4, D6, is 1175 Hz (equal temperament, A4 = 440 Hz, ISO 16). */
  @Test
  void pitchesRiseStayAndFallAboveTheGuitars() {
    float[] sound = played(480, CueTones.Way.RISING, CueTones.Way.LEVEL, CueTones.Way.FALLING);
    double[] first = new double[3];
    double[] second = new double[3];
    for (int i = 0; i < 3; i++) {
      first[i] = pitch(sound, i + 0.5 + 0.05);
      second[i] = pitch(sound, i + 0.5 + 0.14);
      assertThat(Math.min(first[i], second[i])).isGreaterThan(1.5 * 1175);
    }
    assertThat(second[0]).isGreaterThan(1.3 * first[0]);
    assertThat(second[1] / first[1]).isBetween(0.98, 1.02);
    assertThat(second[2]).isLessThan(first[2] / 1.3);
  }

  @Test
  void noToneIsLouderThanAClickNorSoundsWhileItDoes() {
    float[] sound = played(480, CueTones.Way.RISING);
    for (int i = 0; i < sound.length; i++) {
      assertThat(Math.abs(sound[i])).isLessThanOrEqualTo((float) GAIN);
      if (i < 0.5 * RATE + ClickSound.SECONDS * RATE || i > 0.75 * RATE) {
        assertThat(sound[i]).isZero();
      }
    }
  }

  @Test
  void blocksOfAnySizeSoundAlike() {
    assertThat(played(480, CueTones.Way.RISING)).isEqualTo(played(64, CueTones.Way.RISING));
  }
}
