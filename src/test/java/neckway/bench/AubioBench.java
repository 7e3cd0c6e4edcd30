package neckway.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import neckway.bench.EarBench.Order;
import neckway.bench.NoteMatching.Score;

/**
 * What aubio makes of one family of takes, ours not asked: how difficult the ordinary takes are was
 * set by this.
 *
 * <pre>AubioBench FAMILY [N] [--seed S] [--ordinary]</pre>
 *
 * <p>Families as with {@link EarBench}.
 */
public final class AubioBench {
  private AubioBench() {}

  public static void main(String[] args) throws Exception {
    if (args.length == 0) {
      System.err.println("AubioBench FAMILY [N] [--seed S] [--ordinary]");
      System.exit(2);
    }
    List<String> words = Arrays.asList(args);
    Map<String, List<Order>> rows =
        EarBench.orders(words).stream()
            .collect(Collectors.groupingBy(Order::row, TreeMap::new, Collectors.toList()));
    for (Map.Entry<String, List<Order>> row : rows.entrySet()) {
      List<Aubio.Hearing> hearings =
          Batch.map(
              row.getKey(),
              row.getValue(),
              order -> {
                Take take = order.maker().call();
                return Aubio.listen(take);
              });
      double delay = Aubio.delaySeconds(hearings);
      Score wide = Aubio.score(hearings, delay, EarRun.WIDE);
      System.out.printf(
          "%-32s %4d takes %6d notes  missed %4d false %4d  F1@50 %.4f  delay %.1f ms%n",
          row.getKey(),
          hearings.size(),
          wide.truth(),
          wide.truth() - wide.matched(),
          wide.heard() - wide.matched(),
          wide.f1(),
          1000 * delay);
    }
  }
}
