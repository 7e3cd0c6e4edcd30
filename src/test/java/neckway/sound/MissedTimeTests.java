package neckway.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** A device whose clock is played by the test. */
class MissedTimeTests {
  private static final int RATE = 48_000;
  private static final int BLOCK = 256;
  private static final double DRIFT = 3e-4;

  private final MissedTime missed = new MissedTime(RATE);
  private final Random random = new Random(5);
  private double soundSeconds;
  private double clockSeconds;

  /** Blocks come as fast as they sound, each read up to so much later. */
  private int plays(double seconds, double latestSeconds) {
    int dropped = 0;
    for (double until = soundSeconds + seconds; soundSeconds < until; ) {
      soundSeconds += (double) BLOCK / RATE;
      clockSeconds += (1 + DRIFT) * BLOCK / RATE;
      double late = latestSeconds * random.nextDouble();
      dropped += missed.read(BLOCK, Math.round(1e9 * (clockSeconds + late)));
    }
    return dropped;
  }

  @Test
  void anHourOnAClockThatDriftsDropsNothing() {
    assertThat(plays(3600, 0.01)).isZero();
  }

  @Test
  void soundThatComesLateIsNotDropped() {
    assertThat(plays(60, 0.4)).isZero();
  }

  @Test
  void theBufferThatWaitsAtTheBeginningIsNoGap() {
    soundSeconds = 0.4;
    for (int i = 0; i < 75; i++) {
      assertThat(missed.read(BLOCK, 0)).isZero();
    }
    assertThat(plays(20, 0.01)).isZero();
  }

  @Test
  void eachGapIsToldOnceWithinTwoSeconds() {
    assertThat(plays(5, 0.02)).isZero();
    clockSeconds += 0.5;
    assertThat(plays(2, 0.02)).isEqualTo(1);
    assertThat(plays(10, 0.02)).isZero();
    clockSeconds += 8;
    assertThat(plays(2, 0.02)).isEqualTo(1);
    assertThat(plays(10, 0.02)).isZero();
  }
}
