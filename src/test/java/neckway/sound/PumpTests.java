package neckway.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import neckway.sound.Pump.End;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What is pumped from devices that give, that pause and that have died. */
@Timeout(value = 30, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class PumpTests {
  private static final int BLOCK_FRAMES = 256;

  private static boolean more(float[] samples, int length) {
    return true;
  }

  /** A device that gives blocks at the pace of sound, so many of them, and then nothing at once. */
  private static Capture dyingAfter(int blocks) {
    AtomicInteger reads = new AtomicInteger();
    return new Capture(
        PretendLine.input(
            bytes -> {
              if (reads.incrementAndGet() > blocks) {
                return 0;
              }
              PretendLine.sleepMillis(5);
              return bytes;
            }));
  }

  @Test
  void whatTheSinkWantsAndNoMoreIsHandedOn() {
    AtomicLong frames = new AtomicLong();
    try (Capture in = dyingAfter(Integer.MAX_VALUE)) {
      in.start();
      End end = Pump.run(in, (samples, length) -> frames.addAndGet(length) < 4_000, () -> false);
      assertThat(end).isEqualTo(End.ENOUGH);
      assertThat(frames.get()).isBetween(4_000L, 4_000L + 512);
    }
  }

  @Test
  void ofADeviceThatDiesAllThatItGaveIsHandedOnAndThenItIsCalledGone() {
    AtomicLong frames = new AtomicLong();
    try (Capture in = dyingAfter(40)) {
      long begun = System.nanoTime();
      in.start();
      End end =
          Pump.run(
              in,
              (samples, length) -> {
                frames.addAndGet(length);
                return true;
              },
              () -> false);
      assertThat(end).isEqualTo(End.GONE);
      assertThat(frames.get()).isEqualTo(40 * BLOCK_FRAMES);
      assertThat((System.nanoTime() - begun) / 1e9)
          .isBetween(Capture.GONE_AFTER_SECONDS, Capture.GONE_AFTER_SECONDS + 2);
    }
  }

  @Test
  void deviceWhoseReadNeverComesBackHoldsNobodyUp() {
    Capture in = new Capture(PretendLine.input(bytes -> PretendLine.forEver()));
    long begun = System.nanoTime();
    in.start();
    assertThat(Pump.run(in, PumpTests::more, () -> false)).isEqualTo(End.GONE);
    assertThat((System.nanoTime() - begun) / 1e9)
        .isBetween(Capture.NEVER_CAME_SECONDS, Capture.NEVER_CAME_SECONDS + 2);
    in.close();
  }

  @Test
  void stoppingDoesNotWaitForSound() throws Exception {
    Capture in = new Capture(PretendLine.input(bytes -> PretendLine.forEver()));
    in.start();
    CountDownLatch asked = new CountDownLatch(1);
    CompletableFuture<End> end =
        CompletableFuture.supplyAsync(
            () -> Pump.run(in, PumpTests::more, () -> asked.getCount() == 0));
    Thread.sleep(200);
    long stopped = System.nanoTime();
    asked.countDown();
    assertThat(end.get(2, TimeUnit.SECONDS)).isEqualTo(End.STOPPED);
    assertThat((System.nanoTime() - stopped) / 1e9).isLessThan(1);
    in.close();
  }

  @Test
  void interruptedThreadStops() throws Exception {
    Capture in = new Capture(PretendLine.input(bytes -> PretendLine.forEver()));
    in.start();
    CompletableFuture<End> end = new CompletableFuture<>();
    Thread pump = new Thread(() -> end.complete(Pump.run(in, PumpTests::more, () -> false)));
    pump.start();
    Thread.sleep(200);
    pump.interrupt();
    assertThat(end.get(2, TimeUnit.SECONDS)).isEqualTo(End.STOPPED);
    in.close();
  }

  /** A block of 256 frames every 5 ms: who slept for a fixed time would come round less often. */
  @Test
  void sinkIsWokenWithEachBlock() {
    AtomicInteger blocks = new AtomicInteger();
    AtomicLong frames = new AtomicLong();
    try (Capture in = dyingAfter(200)) {
      in.start();
      Pump.run(
          in,
          (samples, length) -> {
            frames.addAndGet(length);
            blocks.incrementAndGet();
            return frames.get() < 200 * BLOCK_FRAMES;
          },
          () -> false);
    }
    assertThat(blocks.get()).as("blocks that came one by one").isGreaterThan(150);
  }

  @Test
  void restIsWhatHasComeAlready() throws Exception {
    AtomicLong frames = new AtomicLong();
    try (Capture in = dyingAfter(10)) {
      in.start();
      while (in.frames() < 10 * BLOCK_FRAMES) {
        Thread.sleep(5);
      }
      Pump.rest(
          in,
          (samples, length) -> {
            frames.addAndGet(length);
            return true;
          });
    }
    assertThat(frames.get()).isEqualTo(10 * BLOCK_FRAMES);
  }
}
