package neckway.bench;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import neckway.hear.beside.LiveRemover;

/**
 * Live runs with a band that leaks into the microphone, without a sound device: what the engine
 * plays and what its microphone hears are given to what takes the one out of the other, and what is
 * left to the run. Once without and once with it.
 *
 * <pre>
 * LiveBackingBench [N] [--seed S] [--list] [--write PAGE]
 * LiveBackingBench [N] [--seed S] --second
 * </pre>
 *
 * <p>N takes for each line of the table. {@code --list}: each take as well. {@code --second}: the
 * second of two rounds on one band, with the way learnt anew from the rest before it, and with what
 * was learnt in the first round carried on.
 */
public final class LiveBackingBench {
  /** A line of the table: how far under the guitar, the room, and how far the clocks run apart. */
  private record Line(OptionalDouble underDb, double roomSeconds, double drift) {
    static Line of(double underDb, double roomSeconds, double drift) {
      return new Line(OptionalDouble.of(underDb), roomSeconds, drift);
    }

    double gain() {
      return underDb.isPresent() ? Math.pow(10, -underDb.getAsDouble() / 20) : 0;
    }

    String words() {
      return underDb.isEmpty()
          ? "headphones | none"
          : String.format(
              Locale.ROOT,
              "%.1f s%s | -%.0f dB",
              roomSeconds,
              drift == 0 ? "" : String.format(Locale.ROOT, ", clocks %.0f ppm apart", 1e6 * drift),
              underDb.getAsDouble());
    }
  }

  private static final List<Line> LINES =
      List.of(
          Line.of(30, 0.2, 0),
          Line.of(20, 0.2, 0),
          Line.of(12, 0.2, 0),
          Line.of(30, 0.5, 0),
          Line.of(20, 0.5, 0),
          Line.of(12, 0.5, 0),
          Line.of(20, 0.5, 5e-5),
          new Line(OptionalDouble.empty(), 0.2, 0));

  private static final String HEAD =
      """
      | room | leak | without: F1 | false slips per 1,000 | slips lost | with: F1 | false slips per 1,000 | slips lost | leak less by, dB | right note told after, ms: median / 95 % | alone |
      | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |
      """;

  private static final double ROOM_SECONDS = 0.5;

  private final List<String> words;
  private final int takes;
  private final long seed;

  private LiveBackingBench(String[] args) {
    words = Arrays.asList(args);
    takes = args.length > 0 && args[0].matches("\\d+") ? Integer.parseInt(args[0]) : 6;
    int at = words.indexOf("--seed");
    seed = at < 0 ? 1 : Long.parseLong(words.get(at + 1));
  }

  public static void main(String[] args) throws Exception {
    LiveBackingBench bench = new LiveBackingBench(args);
    if (bench.words.contains("--second")) {
      bench.secondRounds();
      System.exit(0);
    }
    StringBuilder table = new StringBuilder(HEAD);
    for (Line line : LINES) {
      String row = bench.row(line);
      System.out.print(row);
      table.append(row);
    }
    int page = bench.words.indexOf("--write");
    if (page >= 0) {
      String called = String.join(" ", bench.words);
      new MarkedPart(Path.of(bench.words.get(page + 1)), "live backing")
          .write(LiveBackingBench.class, called, table.toString());
    }
    System.exit(0);
  }

  private String row(Line line) {
    Totals alone = new Totals();
    Totals without = new Totals();
    Totals with = new Totals();
    double delayMs = 0;
    double lessDb = 0;
    for (int i = 0; i < takes; i++) {
      LiveBackingTakes.Live live = LiveBackingTakes.of(seed + i, line.roomSeconds(), line.drift());
      PlayedTake truth = live.alone();
      float[] heard = live.heard(line.gain());
      float[] left = new float[heard.length];
      LiveRemover remover = takeOut(live, heard, left);
      delayMs +=
          remover.takesOut() ? 1000 * remover.delayFrames() / truth.take().sampleRate() / takes : 0;
      lessDb += lessDb(live, line.gain(), left) / takes;
      alone.add(truth, FollowRun.of(truth, true));
      without.add(truth, FollowRun.of(live.with(heard), true));
      Measured measured = FollowRun.of(live.with(left), true);
      with.add(truth, measured);
      if (words.contains("--list")) {
        Totals one = new Totals();
        one.add(truth, measured);
        System.out.printf(
            "  %d %s, %.1f dB%n", seed + i, said(one), lessDb(live, line.gain(), left));
      }
    }
    return String.format(
        Locale.ROOT,
        "| %s | %s | %s | %s | %.1f / %.1f | %s |%n",
        line.words(),
        said(without),
        said(with),
        line.underDb().isPresent() ? String.format(Locale.ROOT, "%.1f", lessDb) : "",
        with.rightDelayMs.quantile(0.5) + delayMs,
        with.rightDelayMs.quantile(0.95) + delayMs,
        alone.rightDelayMs);
  }

  private void secondRounds() {
    System.out.println(
        "| in the rest | leak | anew: F1 | false slips per 1,000 | slips lost | leak less by, dB |"
            + " carried on: F1 | false slips per 1,000 | slips lost | leak less by, dB |");
    System.out.println("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
    for (double underDb : new double[] {20, 12}) {
      for (LiveBackingTakes.Rest rest : LiveBackingTakes.Rest.values()) {
        System.out.print(secondRow(underDb, rest));
      }
    }
  }

  private String secondRow(double underDb, LiveBackingTakes.Rest rest) {
    double gain = Math.pow(10, -underDb / 20);
    Totals anew = new Totals();
    Totals carried = new Totals();
    double anewDb = 0;
    double carriedDb = 0;
    for (int i = 0; i < takes; i++) {
      LiveBackingTakes.Rounds two = LiveBackingTakes.two(seed + i, ROOM_SECONDS, 0, rest);
      LiveBackingTakes.Live second = two.second();
      float[] heard = second.heard(gain);
      float[] left = new float[heard.length];
      takeOut(second, heard, left);
      anew.add(two.first().alone(), FollowRun.of(second.with(left), true));
      anewDb += lessDb(second, gain, left) / takes;
      float[] on = carriedOn(two, gain);
      carried.add(two.first().alone(), FollowRun.of(second.with(on), true));
      carriedDb += lessDb(second, gain, on) / takes;
    }
    return String.format(
        Locale.ROOT,
        "| %s | -%.0f dB | %s | %.1f | %s | %.1f |%n",
        rest,
        underDb,
        said(anew),
        anewDb,
        said(carried),
        carriedDb);
  }

  /** What is left of the second round where the first one taught the way and both are one sound. */
  private static float[] carriedOn(LiveBackingTakes.Rounds two, double gain) {
    float[] heard = joined(two.first().heard(gain), two.second().heard(gain));
    float[] played = joined(two.first().played(), two.second().played());
    float[] left = new float[heard.length];
    takeOut(two.first().alone(), played, heard, left);
    return Arrays.copyOfRange(left, left.length / 2, left.length);
  }

  private static float[] joined(float[] first, float[] second) {
    float[] both = Arrays.copyOf(first, first.length + second.length);
    System.arraycopy(second, 0, both, first.length, second.length);
    return both;
  }

  private static LiveRemover takeOut(LiveBackingTakes.Live live, float[] heard, float[] left) {
    return takeOut(live.alone(), live.played(), heard, left);
  }

  private static LiveRemover takeOut(
      PlayedTake alone, float[] played, float[] heard, float[] left) {
    LiveRemover remover =
        new LiveRemover(
            alone.take().sampleRate(),
            (frame, into) -> {
              for (int i = 0; i < into.length; i++) {
                long at = frame + i;
                into[i] = at >= 0 && at < played.length ? played[(int) at] : 0;
              }
            });
    int[] count = new int[1];
    LiveRemover.Sink sink =
        (samples, offset, length) -> {
          System.arraycopy(samples, offset, left, count[0], length);
          count[0] += length;
        };
    remover.learn(heard, heard.length, alone.firstBeat());
    remover.process(heard, 0, heard.length, sink);
    remover.finish(sink);
    return remover;
  }

  /** By how much the leak is less than it was, from the first beat on. */
  private static double lessDb(LiveBackingTakes.Live live, double gain, float[] left) {
    Take take = live.alone().take();
    double was = 0;
    double is = 0;
    for (int i = (int) (live.alone().firstBeat() * take.sampleRate()); i < left.length; i++) {
      double leak = gain * live.leak()[i];
      double rest = left[i] - take.samples()[i];
      was += leak * leak;
      is += rest * rest;
    }
    return 10 * Math.log10(was / is);
  }

  private static String said(Totals t) {
    return String.format(
        Locale.ROOT,
        "%.4f | %.1f | %d of %d",
        t.wide.f1(),
        t.inventedPerThousand(),
        t.mistakes.made() - t.mistakes.found(),
        t.mistakes.made());
  }
}
