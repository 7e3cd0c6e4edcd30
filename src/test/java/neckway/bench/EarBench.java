package neckway.bench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import neckway.player.settings.PlayerSettings.Condition;

/**
 * The ear alone on takes with known truth, to tune it by.
 *
 * <pre>EarBench FAMILY [N] [--seed S] [--ordinary] [--errors] [--threads T]</pre>
 *
 * <p>FAMILY is one of {@code clean}, {@code dirty}, {@code legato} (the virtual player), {@code
 * low}, {@code low-dirty} (the same on tunings that go below E2), {@code stitched}, {@code
 * stitched-dirty} (recorded notes), {@code jdk} (the JDK's synthesizer). N takes are made (of each
 * guitar), with seeds from S on (default 1). {@code --ordinary}: ordinary takes instead of hard
 * ones. {@code --errors} lists each note missed, too many, or more than 10 ms off, with its
 * neighbours in time.
 */
public final class EarBench {
  private EarBench() {}

  /** A take still to be made, and the row of the table it counts in. */
  record Order(String row, Callable<Take> maker) {}

  public static void main(String[] args) throws Exception {
    if (args.length == 0) {
      System.err.println("EarBench FAMILY [N] [--seed S] [--ordinary] [--errors] [--threads T]");
      System.exit(2);
    }
    List<String> words = Arrays.asList(args);
    int threads = option(words, "--threads", 2);
    run(orders(words), words.contains("--errors"), threads);
  }

  private static int option(List<String> words, String name, int otherwise) {
    int at = words.indexOf(name);
    return at < 0 ? otherwise : Integer.parseInt(words.get(at + 1));
  }

  /** The takes that a command line asks for. */
  static List<Order> orders(List<String> words) throws Exception {
    String family = words.get(0);
    int n = words.size() > 1 && words.get(1).matches("\\d+") ? Integer.parseInt(words.get(1)) : 20;
    int seed = option(words, "--seed", 1);
    Population population = words.contains("--ordinary") ? Population.ORDINARY : Population.HARD;
    return switch (family) {
      case "clean", "dirty", "harsh", "legato" ->
          virtual(population, Condition.valueOf(family.toUpperCase(Locale.ROOT)), n, seed);
      case "low" ->
          list(
              population.word(Condition.CLEAN) + " low",
              n,
              seed,
              s -> VirtualTakes.low(population, s, Condition.CLEAN));
      case "low-dirty" ->
          list(
              population.word(Condition.DIRTY) + " low",
              n,
              seed,
              s -> VirtualTakes.low(population, s, Condition.DIRTY));
      case "stitched" -> stitched(population, n, seed, false);
      case "stitched-dirty" -> stitched(Population.HARD, n, seed, true);
      case "jdk" -> jdk(n, seed);
      default -> throw new IllegalArgumentException("no family of takes called " + family);
    };
  }

  private static List<Order> list(String row, int n, int firstSeed, Families.Makers makers) {
    List<Order> orders = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      long seed = firstSeed + i;
      orders.add(new Order(row, () -> makers.make(seed).take()));
    }
    return orders;
  }

  static List<Order> virtual(Population population, Condition condition, int n, int firstSeed) {
    return list(
        population.word(condition),
        n,
        firstSeed,
        seed -> VirtualTakes.take(population, seed, condition));
  }

  static List<Order> jdk(int n, int firstSeed) throws Exception {
    List<Order> orders = new ArrayList<>();
    for (JdkSynthTakes takes : JdkSynthTakes.banks()) {
      for (int i = 0; i < n; i++) {
        long seed = firstSeed + i;
        orders.add(new Order(takes.name(), () -> takes.take(seed).take()));
      }
    }
    return orders;
  }

  static List<Order> stitched(Population population, int n, int firstSeed, boolean dirty)
      throws IOException {
    Optional<RecordedNotes> recorded = RecordedNotes.load();
    if (recorded.isEmpty()) {
      System.out.println(
          "recorded notes are not at "
              + RecordedNotes.folder()
              + " (NECKWAY_GUITARS names their folder): nothing stitched");
      return List.of();
    }
    for (String line : recorded.get().leftOut()) {
      System.out.println("left out " + line);
    }
    StitchedTakes takes = new StitchedTakes(recorded.get());
    List<Order> orders = new ArrayList<>();
    for (String guitar : recorded.get().guitars()) {
      orders.addAll(
          list(
              guitar,
              n,
              firstSeed,
              seed ->
                  population == Population.ORDINARY
                      ? takes.ordinary(guitar, seed)
                      : takes.take(guitar, seed, dirty)));
    }
    return orders;
  }

  static void run(List<Order> orders, boolean errors, int threads)
      throws InterruptedException, ExecutionException {
    Map<String, EarTotals> rows = new TreeMap<>();
    EarTotals all = new EarTotals();
    ExecutorService pool = Executors.newFixedThreadPool(threads);
    try {
      List<Future<EarRun>> runs = new ArrayList<>();
      for (Order order : orders) {
        runs.add(pool.submit(() -> new EarRun(order.maker().call())));
      }
      for (int i = 0; i < runs.size(); i++) {
        EarRun run = runs.get(i).get();
        runs.set(i, null);
        rows.computeIfAbsent(orders.get(i).row(), r -> new EarTotals()).add(run);
        all.add(run);
        List<String> lines = errors ? run.errors() : List.of();
        if (!lines.isEmpty()) {
          System.out.println(run.take.name());
          lines.forEach(System.out::println);
        }
      }
    } finally {
      pool.shutdownNow();
    }
    rows.forEach((name, totals) -> System.out.println(totals.line(name)));
    System.out.println(all.line("all"));
  }
}
