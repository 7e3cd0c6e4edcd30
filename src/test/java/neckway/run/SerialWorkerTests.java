package neckway.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class SerialWorkerTests {
  private final SerialWorker beside = new SerialWorker("beside");

  @Test
  void worksInOrderOnAnotherThread() {
    List<Integer> done = new ArrayList<>();
    List<Thread> threads = new ArrayList<>();
    for (int i = 0; i < 1_000; i++) {
      int number = i;
      beside.add(() -> done.add(number));
      beside.add(() -> threads.add(Thread.currentThread()));
      if (i % 7 == 0) {
        beside.handOver();
      }
    }
    beside.finish();
    assertThat(done).hasSize(1_000).isSorted();
    assertThat(threads).doesNotContain(Thread.currentThread());
  }

  @Test
  void waitsForWhatIsFarBehind() throws InterruptedException {
    CountDownLatch go = new CountDownLatch(1);
    AtomicInteger given = new AtomicInteger();
    Thread giver =
        new Thread(
            () -> {
              for (int i = 0; i < 2_000; i++) {
                beside.add(
                    () -> {
                      try {
                        go.await();
                      } catch (InterruptedException e) {
                        throw new IllegalStateException(e);
                      }
                    });
                beside.handOver();
                given.incrementAndGet();
              }
              beside.finish();
            });
    giver.start();
    giver.join(300);
    assertThat(given.get()).isBetween(1, SerialWorker.MOST_BLOCKS);
    go.countDown();
    giver.join(10_000);
    assertThat(given.get()).isEqualTo(2_000);
  }

  @Test
  void nothingMoreIsDoneAfterAFailure() {
    List<Integer> done = new ArrayList<>();
    beside.add(() -> done.add(1));
    beside.add(
        () -> {
          throw new IllegalArgumentException("a note of no pitch");
        });
    beside.add(() -> done.add(2));
    for (int call = 0; call < 2; call++) {
      assertThatThrownBy(beside::finish).hasMessage("a note of no pitch");
      beside.add(() -> done.add(3));
      assertThatThrownBy(beside::handOver).hasMessage("a note of no pitch");
    }
    assertThat(done).containsExactly(1);
  }

  @Test
  void whatTheWorkThrowsComesBack() {
    beside.add(
        () -> {
          throw new IllegalArgumentException("a note of no pitch");
        });
    assertThatThrownBy(beside::finish)
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("a note of no pitch");
  }
}
