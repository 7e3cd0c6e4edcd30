package neckway.bench;

import static org.assertj.core.api.Assertions.assertThat;

import neckway.player.settings.PlayerSettings.Condition;
import org.junit.jupiter.api.Test;

class HearingLoopTests {
  /** Measured by the JVM itself: com.sun.management.ThreadMXBean, getThreadAllocatedBytes. */
  @Test
  void hearingAllocatesNothingPerHop() {
    for (Condition condition : Condition.values()) {
      Take take = VirtualTakes.take(3, condition).take();
      assertThat(Speed.bytesPerHop(take)).as(condition.toString()).isZero();
    }
  }
}
