package neckway.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.lang.reflect.Proxy;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.function.IntUnaryOperator;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;
import neckway.Await;
import neckway.neck.BadInput;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * Devices that stop as real ones were seen to when their server ended or hung: a read that never
 * comes back and keeps the line's lock, a write that takes nothing and comes back at once.
 */
@Tag("live")
@Timeout(value = 30, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class GoneDeviceTests {
  private static final AudioFormat FORMAT = new AudioFormat(48_000, 16, 1, true, false);
  private static final long SECOND = 1_000_000_000L;

  /**
   * A line each of whose calls but the simplest is answered under one lock, as Java Sound's are.
   */
  private static <T extends DataLine> T line(Class<T> kind, IntUnaryOperator transfer) {
    Object lock = new Object();
    Object proxy =
        Proxy.newProxyInstance(
            kind.getClassLoader(),
            new Class<?>[] {kind},
            (self, method, args) -> {
              switch (method.getName()) {
                case "getFormat":
                  return FORMAT;
                case "getBufferSize":
                  return 2 * 4096;
                case "isOpen":
                  return true;
                default:
                  synchronized (lock) {
                    return switch (method.getName()) {
                      case "read", "write" -> transfer.applyAsInt((int) args[2]);
                      case "available" -> 0;
                      case "getLongFramePosition" -> 0L;
                      default -> null;
                    };
                  }
              }
            });
    return kind.cast(proxy);
  }

  private static int forEver() {
    try {
      new CountDownLatch(1).await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return 0;
  }

  private static double secondsUntil(BooleanSupplier gone) throws Exception {
    long start = System.nanoTime();
    Await.until("it is told that the device is gone", 20, gone::getAsBoolean);
    return (System.nanoTime() - start) / 1e9;
  }

  @Test
  void readThatNeverComesBackIsToldAndClosedInTime() throws Exception {
    AtomicInteger reads = new AtomicInteger();
    Capture in =
        new Capture(
            line(TargetDataLine.class, length -> reads.incrementAndGet() > 3 ? forEver() : length));
    in.start();
    assertThat(secondsUntil(in::gone)).isBetween(1.9, 4.0);
    assertThat(in.frames()).isEqualTo(3 * 256);
    long closing = System.nanoTime();
    in.close();
    assertThat(System.nanoTime() - closing).isLessThan(2 * SECOND);
  }

  @Test
  void writeThatTakesNothingDoesNotSpinAndIsTold() throws Exception {
    AtomicInteger writes = new AtomicInteger();
    Playback out =
        new Playback(
            line(SourceDataLine.class, length -> writes.incrementAndGet() > 3 ? 0 : length),
            ClickTrack.silence(48_000));
    out.start();
    double seconds = secondsUntil(out::gone);
    assertThat(seconds).isBetween(2.4, 5.0);
    assertThat(writes.get()).isLessThan((int) (250 * seconds));
    assertThat(out.shortWrites()).isPositive();
    out.close();
  }

  @Test
  void writeThatNeverComesBackIsToldAndClosedInTime() throws Exception {
    Playback out =
        new Playback(line(SourceDataLine.class, l -> forEver()), ClickTrack.silence(48_000));
    out.start();
    assertThat(secondsUntil(out::gone)).isBetween(4.0, 7.0);
    long closing = System.nanoTime();
    out.close();
    assertThat(System.nanoTime() - closing).isLessThan(2 * SECOND);
  }

  @Test
  void outputThatSwallowsEverythingAtOnceIsToldAndEndsItsThread() throws Exception {
    AtomicInteger writes = new AtomicInteger();
    Playback out =
        new Playback(
            line(
                SourceDataLine.class,
                length -> {
                  writes.incrementAndGet();
                  return length;
                }),
            ClickTrack.silence(48_000));
    out.start();
    assertThat(secondsUntil(out::gone)).isLessThan(2);
    AtomicInteger before = new AtomicInteger();
    Await.steadily(
        "nothing is written any more", 10, () -> before.getAndSet(writes.get()) == writes.get());
    out.close();
  }

  @Test
  void partlyTakenBlockIsOfferedOnFromWhereItWasTaken() throws Exception {
    AtomicInteger bytes = new AtomicInteger();
    CountDownLatch enough = new CountDownLatch(1);
    Playback out =
        new Playback(
            line(
                SourceDataLine.class,
                length -> {
                  int took = Math.min(100, length);
                  if (bytes.addAndGet(took) >= 2 * 512) {
                    enough.countDown();
                  }
                  return took;
                }),
            ClickTrack.silence(48_000));
    out.start();
    enough.await();
    assertThat(out.gone()).isFalse();
    assertThat(out.shortWrites()).isGreaterThanOrEqualTo(10);
    out.close();
  }

  @Test
  void positionsOfHungDevicesAreNotWaitedFor() {
    Capture in = new Capture(line(TargetDataLine.class, l -> forEver()));
    Playback out = new Playback(line(SourceDataLine.class, l -> l), ClickTrack.silence(48_000));
    in.start();
    try (OffsetWatch positions = new OffsetWatch(in, out)) {
      positions.start();
      long asked = System.nanoTime();
      assertThat(positions.offsetFrames()).isEmpty();
      assertThat(System.nanoTime() - asked).isLessThan(SECOND);
    }
    in.close();
  }

  @Test
  void realTimeIsNotTooFast() {
    RateWatch haste = new RateWatch(48_000, 8192);
    haste.start(0);
    // the buffer fills at once, then sound goes in as it is played
    for (long frames = 8192; frames < 48_000 * 60; frames += 256) {
      assertThat(haste.tooFast(frames, (frames - 8192) * SECOND / 48_000)).isFalse();
    }
  }

  @Test
  void countThatMovesIsAlive() {
    Alive alive = new Alive(2, 4);
    alive.start(0);
    assertThat(alive.gone(0, 3 * SECOND)).isFalse();
    assertThat(alive.gone(1, 3 * SECOND)).isFalse();
    assertThat(alive.gone(1, 5 * SECOND)).isFalse();
    assertThat(alive.gone(1, 5 * SECOND + 1)).isTrue();
  }

  @Test
  void soundSystemThatDoesNotAnswerIsBadInput() {
    assertThatThrownBy(() -> TimeLimit.ask(GoneDeviceTests::forEver, 0.2))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("does not answer");
    assertThat(TimeLimit.ask(() -> "yes", 5)).isEqualTo("yes");
    assertThatThrownBy(
            () ->
                TimeLimit.ask(
                    () -> {
                      throw new BadInput("no such device");
                    },
                    5))
        .isInstanceOf(BadInput.class)
        .hasMessage("no such device");
  }
}
