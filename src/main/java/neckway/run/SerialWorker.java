package neckway.run;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;

/**
 * Work that is done beside its giver's, in order, on one thread of its own. It is handed over in
 * blocks; a giver who is far ahead waits.
 */
final class SerialWorker {
  /** Blocks that the giver may be ahead: the work comes in bursts, some seconds' worth at once. */
  static final int MOST_BLOCKS = 512;

  private static final long IDLE_SECONDS = 2;

  private final ThreadPoolExecutor worker;
  private final Queue<Future<?>> ahead = new ArrayDeque<>();
  private List<Runnable> block = new ArrayList<>();
  private volatile Throwable failure;

  /**
   * @param name of the thread, which ends by itself when nothing comes for some seconds
   */
  SerialWorker(String name) {
    worker =
        new ThreadPoolExecutor(
            1,
            1,
            IDLE_SECONDS,
            TimeUnit.SECONDS,
            new LinkedBlockingQueue<>(),
            work -> {
              Thread thread = new Thread(work, name);
              thread.setDaemon(true);
              return thread;
            });
    worker.allowCoreThreadTimeOut(true);
  }

  /** Adds work to the block that is handed over next. */
  void add(Runnable work) {
    block.add(work);
  }

  /** Hands over what was added. What earlier work threw is thrown here, and nothing more done. */
  void handOver() {
    throwFailure();
    List<Runnable> now = block;
    block = new ArrayList<>();
    ahead.add(worker.submit(() -> work(now)));
    while (!ahead.isEmpty() && ahead.peek().isDone()) {
      ahead.remove();
    }
    while (ahead.size() > MOST_BLOCKS) {
      await(ahead.remove());
    }
  }

  /** Hands over the rest and waits until all is done. */
  void finish() {
    handOver();
    while (!ahead.isEmpty()) {
      await(ahead.remove());
    }
    worker.shutdown();
    throwFailure();
  }

  private void work(List<Runnable> now) {
    try {
      for (int i = 0; i < now.size() && failure == null; i++) {
        now.get(i).run();
      }
    } catch (RuntimeException | Error e) {
      failure = e;
    }
  }

  private void throwFailure() {
    if (failure instanceof Error error) {
      throw error;
    }
    if (failure instanceof RuntimeException e) {
      throw e;
    }
  }

  private static void await(Future<?> work) {
    boolean interrupted = false;
    try {
      while (true) {
        try {
          work.get();
          return;
        } catch (InterruptedException e) {
          interrupted = true;
        }
      }
    } catch (ExecutionException e) {
      throw new IllegalStateException(e);
    } finally {
      if (interrupted) {
        Thread.currentThread().interrupt();
      }
    }
  }
}
