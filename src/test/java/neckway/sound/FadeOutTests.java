package neckway.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.ShortBuffer;
import java.util.Arrays;
import java.util.concurrent.CountDownLatch;
import neckway.Await;
import org.junit.jupiter.api.Test;

/** A sound that is stopped falls to nothing, with no step that would be heard as a click. */
class FadeOutTests {
  private static final int RATE = 48_000;

  /** The steepest step of half a cosine over 20 ms at 48 kHz: pi / (2 * 960) of the loudest. */
  private static final double STEEPEST = Math.PI / (2 * 0.02 * RATE);

  /** Loudest at all times, so that any break shows. */
  private static final PlayedSound STEADY = (frame, block) -> Arrays.fill(block, 1);

  private static void assertFallsToNothing(ByteArrayOutputStream kept) {
    ShortBuffer samples =
        ByteBuffer.wrap(kept.toByteArray()).order(ByteOrder.LITTLE_ENDIAN).asShortBuffer();
    int last = samples.limit() - 1;
    assertThat((int) samples.get(last)).isZero();
    int most = 0;
    for (int i = 0; i <= last; i++) {
      most = Math.max(most, samples.get(i));
    }
    assertThat(most).isGreaterThan(3_000);
    int loud = last;
    while (samples.get(loud) < 0.98 * most) {
      assertThat(Math.abs(samples.get(loud) - samples.get(loud - 1)))
          .isLessThanOrEqualTo((int) (STEEPEST * most) + 1);
      loud--;
    }
    int zeroFrom = last;
    while (samples.get(zeroFrom) == 0) {
      zeroFrom--;
    }
    assertThat((zeroFrom - loud) / (double) RATE).as("seconds of fading").isBetween(0.01, 0.021);
  }

  @Test
  void whatIsPlayedFadesOutWhereItIsClosed() throws Exception {
    ByteArrayOutputStream kept = new ByteArrayOutputStream();
    Playback out = new Playback(PretendLine.keeping(kept), STEADY);
    out.start();
    Await.until("something plays", 10, () -> out.framesWritten() > 4096);
    out.close();
    assertFallsToNothing(kept);
  }

  @Test
  void loopFadesOutWhereItIsStopped() throws Exception {
    ByteArrayOutputStream kept = new ByteArrayOutputStream();
    float[] sound = new float[10 * RATE];
    Arrays.fill(sound, 1);
    CountDownLatch ended = new CountDownLatch(1);
    Clip clip = Clip.ofLevelled(sound, RATE, false, () -> 1);
    ClipPlayback out = new ClipPlayback(PretendLine.keeping(kept), clip, ended::countDown);
    Await.until("it has faded in", 10, () -> out.framesHeard() > RATE / 4);
    out.close();
    ended.await();
    assertFallsToNothing(kept);
  }
}
