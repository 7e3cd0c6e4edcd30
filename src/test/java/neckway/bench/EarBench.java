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
import neckway.player.PlayerSettings.Condition;

/**
 * The ear alone on takes with known truth, to tune it by.
 *
 * <pre>EarBench FAMILY [N] [--seed S] [--errors] [--threads T]</pre>
 *
 * <p>FAMILY is one of {@code clean}, {@code dirty}, {@code legato} (the virtual player), {@code
 * stitched}, {@code stitched-dirty} (recorded notes), {@code jdk} (the JDK's synthesizer). N takes
 * are made (of each guitar), with seeds from S on (default 1). {@code --errors} lists each note
 * missed, too many, or more than 10 ms off, with its neighbours in time.
 */
public final class EarBench {
  private EarBench() {}

  /** A take still to be made, and the row of the table it counts in. */
  record Order(String row, Callable<Take> maker) {}

  public static void main(String[] args) throws Exception {
    if (args.length == 0) {
      System.err.println("EarBench FAMILY [N] [--seed S] [--errors] [--threads T]");
      System.exit(2);
    }
    List<String> words = Arrays.asList(args);
    int n = args.length > 1 && args[1].matches("\\d+") ? Integer.parseInt(args[1]) : 20;
    int threads = option(words, "--threads", 2);
    run(orders(args[0], n, option(words, "--seed", 1)), words.contains("--errors"), threads);
  }

  private static int option(List<String> words, String name, int otherwise) {
    int at = words.indexOf(name);
    return at < 0 ? otherwise : Integer.parseInt(words.get(at + 1));
  }

  private static List<Order> orders(String family, int n, int firstSeed) throws Exception {
    return switch (family) {
      case "clean", "dirty", "harsh", "legato" ->
          virtual(Condition.valueOf(family.toUpperCase(Locale.ROOT)), n, firstSeed);
      case "stitched" -> stitched(n, firstSeed, false);
      case "stitched-dirty" -> stitched(n, firstSeed, true);
      case "jdk" -> jdk(n, firstSeed);
      default -> throw new IllegalArgumentException("no family of takes called " + family);
    };
  }

  static List<Order> virtual(Condition condition, int n, int firstSeed) {
    List<Order> orders = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      long seed = firstSeed + i;
      orders.add(new Order(condition.toString(), () -> VirtualTakes.take(seed, condition).take()));
    }
    return orders;
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

  static List<Order> stitched(int n, int firstSeed, boolean dirty) throws IOException {
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
      for (int i = 0; i < n; i++) {
        long seed = firstSeed + i;
        orders.add(new Order(guitar, () -> takes.take(guitar, seed, dirty).take()));
      }
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
