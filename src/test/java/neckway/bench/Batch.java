package neckway.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Makes and measures takes, two at a time, none kept longer than needed. */
final class Batch {
  private static final int THREADS = 2;

  private Batch() {}

  /** What is done with each take. */
  interface Measure<T> {
    T of(PlayedTake played) throws Exception;
  }

  /** What is done with each thing of a list. */
  interface Work<A, T> {
    T of(A each) throws Exception;
  }

  /** Results in the order of the takes; progress goes to standard error. */
  static <T> List<T> run(String name, List<Callable<PlayedTake>> makers, Measure<T> measure)
      throws Exception {
    return map(name, makers, maker -> measure.of(maker.call()));
  }

  /** Results in the order of what they are made of; progress goes to standard error. */
  static <A, T> List<T> map(String name, List<A> all, Work<A, T> work) throws Exception {
    long start = System.nanoTime();
    ExecutorService pool = Executors.newFixedThreadPool(THREADS);
    try {
      List<Future<T>> futures = new ArrayList<>();
      for (A each : all) {
        futures.add(pool.submit(() -> work.of(each)));
      }
      List<T> results = new ArrayList<>();
      for (Future<T> future : futures) {
        results.add(future.get());
      }
      System.err.printf(
          "%-40s %4d takes %6.1f s%n", name, results.size(), (System.nanoTime() - start) / 1e9);
      return results;
    } finally {
      pool.shutdownNow();
    }
  }
}
