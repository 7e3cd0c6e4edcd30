package neckway.bench;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import neckway.bench.NoteMatching.Score;
import neckway.hear.HeardNote;

/** Sums over many takes of what the ear alone heard. */
final class EarTotals {
  private static final int E2 = 40;

  private Score wide = new Score(0, 0, 0);
  private Score narrow = new Score(0, 0, 0);
  private final DoubleStream.Builder onset = DoubleStream.builder();
  private final DoubleStream.Builder delay = DoubleStream.builder();
  private final DoubleStream.Builder lowDelay = DoubleStream.builder();
  private int takes;
  private double seconds;
  private double cpuSeconds;

  void add(EarRun run) {
    takes++;
    wide = wide.plus(run.wide);
    narrow = narrow.plus(run.narrow);
    seconds += run.take.seconds();
    cpuSeconds += run.cpuSeconds;
    for (int i = 0; i < run.partners.length; i++) {
      if (run.partners[i] >= 0) {
        HeardNote h = run.heard.get(run.partners[i]);
        TrueNote t = run.take.notes().get(i);
        onset.add(1000 * Math.abs(h.time() - t.time()));
        (t.midi() >= E2 ? delay : lowDelay).add(1000 * (h.decided() - t.time()));
      }
    }
  }

  /** One line, as a table row. */
  String line(String name) {
    double[] onsets = sorted(onset);
    double[] delays = sorted(delay);
    double[] lows = sorted(lowDelay);
    return String.format(
        "%-22s %4d takes %6d notes  missed %4d false %4d  F1@50 %.4f  F1@10 %.4f"
            + "  onset %.1f/%.1f  decided %.1f/%.1f  below E2 %s  x%.0f real time",
        name,
        takes,
        wide.truth(),
        wide.truth() - wide.matched(),
        wide.heard() - wide.matched(),
        wide.f1(),
        narrow.f1(),
        quantile(onsets, 0.5),
        quantile(onsets, 0.95),
        quantile(delays, 0.5),
        quantile(delays, 0.95),
        lows.length == 0
            ? "-"
            : String.format("%.1f/%.1f", quantile(lows, 0.5), quantile(lows, 0.95)),
        seconds / cpuSeconds);
  }

  private static double[] sorted(DoubleStream.Builder values) {
    double[] v = values.build().toArray();
    Arrays.sort(v);
    return v;
  }

  /** Value below which a share of the sorted values lies; NaN for none. */
  static double quantile(double[] sorted, double share) {
    return sorted.length == 0
        ? Double.NaN
        : sorted[Math.min(sorted.length - 1, (int) (share * sorted.length))];
  }
}
