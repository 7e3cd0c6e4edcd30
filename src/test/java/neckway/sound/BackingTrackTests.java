package neckway.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** A backing on the beat, worked out by hand. */
class BackingTrackTests {
  private static float[] played(PlayedSound sound, int frames, int blockFrames) {
    float[] all = new float[frames];
    for (int from = 0; from < frames; from += blockFrames) {
      float[] block = new float[Math.min(blockFrames, frames - from)];
      sound.fill(from, block);
      System.arraycopy(block, 0, all, from, block.length);
    }
    return all;
  }

  @Test
  void itGoesRoundToTheSampleAndWhatRingsOnIsKept() {
    float[] sound = {1, 2, 3, 4, 5};
    // from frame 10 on every 3.5 frames: at 10, 13.5 (14), 17, 20.5 (21)
    float[] all = played(BackingTrack.round(sound, 10, 3.5, 1e-9), 21, 7);
    for (int i = 0; i < 10; i++) {
      assertThat(all[i]).isZero();
    }
    assertThat(all[10]).as("the round before began at 7").isEqualTo(1 + 4);
    assertThat(all[11]).isEqualTo(2 + 5);
    assertThat(all[12]).isEqualTo(3);
    assertThat(all[13]).isEqualTo(4);
    assertThat(all[14]).isEqualTo(1 + 5);
    assertThat(all[15]).isEqualTo(2);
    assertThat(all[17]).isEqualTo(1 + 4);
  }

  @Test
  void onceItsFirstBeatIsOnTheBeatAndItEnds() {
    float[] sound = {1, 2, 3, 4, 5};
    BackingTrack track = BackingTrack.once(sound, 10, 2, 1e-9);
    float[] all = played(track, 20, 3);
    assertThat(all[9]).isZero();
    assertThat(all[10]).isEqualTo(3);
    assertThat(all[12]).isEqualTo(5);
    assertThat(all[13]).isZero();
    assertThat(track.endFrame()).isEqualTo(13);
  }

  @Test
  void itFadesInBeforeTheBeat() {
    float[] sound = new float[2000];
    Arrays.fill(sound, 1);
    float[] all = played(BackingTrack.once(sound, 1000, 1000, 400), 1400, 64);
    assertThat(all[599]).isZero();
    assertThat(all[800]).isCloseTo(0.5f, within(0.001f));
    assertThat(all[1000]).isEqualTo(1);
    for (int i = 1; i < 1400; i++) {
      assertThat(all[i] - all[i - 1]).isBetween(0f, 0.005f);
    }
  }

  @Test
  void theTapeHasWhatWasPlayedAndALittleMore() {
    PlayedSound ramp =
        (frame, block) -> {
          for (int i = 0; i < block.length; i++) {
            block[i] = (frame + i) / 32_767f;
          }
        };
    PlayedTape tape = new PlayedTape(ramp, 500, 2000);
    float[] out = played(tape, 5000, 128);
    for (int i = 0; i < 5000; i++) {
      assertThat(out[i]).isCloseTo(i / 32_767f, within(1e-6f));
    }
    float[] again = new float[1];
    tape.read(5000 + 400, again);
    assertThat(again[0]).as("ahead").isEqualTo(5400 / 32_768f);
    tape.read(3500, again);
    assertThat(again[0]).as("remembered").isEqualTo(3500 / 32_768f);
    tape.read(100, again);
    assertThat(again[0]).as("forgotten").isZero();
    tape.read(-5, again);
    assertThat(again[0]).as("before the start").isZero();
  }
}
