package neckway.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
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
  private static final long SECOND = 1_000_000_000L;

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
            PretendLine.input(
                length -> reads.incrementAndGet() > 3 ? PretendLine.forEver() : length));
    in.start();
    assertThat(secondsUntil(in::gone)).isBetween(1.9, 4.0);
    assertThat(in.frames()).isEqualTo(3 * 256);
    long closing = System.nanoTime();
    in.close();
    assertThat(System.nanoTime() - closing).isLessThan(2 * SECOND);
  }

  /** As a line was seen to do whose server had died: full for ever, and nothing in it. */
  @Test
  void lineOfALostDeviceHasNotRunOver() throws Exception {
    AtomicInteger reads = new AtomicInteger();
    Capture in =
        new Capture(
            PretendLine.input(
                () -> reads.get() > 3 ? PretendLine.BUFFER_BYTES : 0,
                length -> reads.incrementAndGet() > 6 ? 0 : length));
    in.start();
    secondsUntil(in::gone);
    assertThat(reads.get()).isGreaterThan(100);
    assertThat(in.overflows()).isZero();
    in.close();
  }

  @Test
  void bufferThatRanOverOnceIsCountedOnce() {
    FullBuffer full = new FullBuffer(1024);
    int times = 0;
    for (int read = 0; read < 100; read++) {
      if (read >= 10 && read < 12) {
        // found full by each of two reads that empty it
        full.found();
      }
      times += full.ranOver(512);
    }
    assertThat(times).isEqualTo(1);
  }

  @Test
  void writeThatTakesNothingDoesNotSpinAndIsTold() throws Exception {
    AtomicInteger writes = new AtomicInteger();
    Playback out =
        new Playback(
            PretendLine.output(length -> writes.incrementAndGet() > 3 ? 0 : length), silence());
    out.start();
    double seconds = secondsUntil(out::gone);
    assertThat(seconds).isBetween(2.4, 5.0);
    assertThat(writes.get()).isLessThan((int) (250 * seconds));
    assertThat(out.shortWrites()).isPositive();
    out.close();
  }

  @Test
  void writeThatNeverComesBackIsToldAndClosedInTime() throws Exception {
    Playback out = new Playback(PretendLine.output(l -> PretendLine.forEver()), silence());
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
            PretendLine.output(
                length -> {
                  writes.incrementAndGet();
                  return length;
                }),
            silence());
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
            PretendLine.output(
                length -> {
                  int took = Math.min(100, length);
                  if (bytes.addAndGet(took) >= 2 * 512) {
                    enough.countDown();
                  }
                  return took;
                }),
            silence());
    out.start();
    enough.await();
    assertThat(out.gone()).isFalse();
    assertThat(out.shortWrites()).isGreaterThanOrEqualTo(10);
    out.close();
  }

  @Test
  void positionsOfHungDevicesAreNotWaitedFor() {
    Capture in = new Capture(PretendLine.input(l -> PretendLine.forEver()));
    Playback out = new Playback(PretendLine.output(l -> l), silence());
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
    assertThatThrownBy(() -> TimeLimit.ask(PretendLine::forEver, 0.2))
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

  private static ClickTrack silence() {
    return new ClickTrack(48_000, 0, 48_000, 1, 0, 0, 0);
  }
}
