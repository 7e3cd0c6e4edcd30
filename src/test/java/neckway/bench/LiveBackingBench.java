package neckway.bench;

import java.util.Arrays;
import java.util.List;
import neckway.hear.beside.LiveRemover;

public final class LiveBackingBench {
  private LiveBackingBench() {}

  public static void main(String[] args) throws Exception {
    int n = Integer.parseInt(args[0]);
    long seed = Long.parseLong(args[1]);
    double[] unders = Arrays.stream(args[2].split(",")).mapToDouble(Double::parseDouble).toArray();
    double[] rooms = Arrays.stream(args[3].split(",")).mapToDouble(Double::parseDouble).toArray();
    boolean list = List.of(args).contains("--list");
    for (double room : rooms) {
      for (double under : unders) {
        Totals without = new Totals();
        Totals with = new Totals();
        Totals alone = new Totals();
        double erle = 0;
        double learn = 0;
        double work = 0;
        double seconds = 0;
        int off = 0;
        for (int i = 0; i < n; i++) {
          LiveBackingTakes.Live live = LiveBackingTakes.of(seed + i, room);
          double gain = under >= 100 ? 0 : Math.pow(10, -under / 20);
          double rate = live.alone().take().sampleRate();
          float[] heard = live.heard(gain);
          float[] rest = new float[heard.length];
          int[] at = new int[1];
          float[] played = live.played();
          LiveRemover remover =
              new LiveRemover(
                  rate,
                  (frame, into) -> {
                    for (int k = 0; k < into.length; k++) {
                      long f = frame + k;
                      into[k] = f >= 0 && f < played.length ? played[(int) f] : 0;
                    }
                  });
          LiveRemover.Sink sink =
              (s, o, l) -> {
                System.arraycopy(s, o, rest, at[0], l);
                at[0] += l;
              };
          long t0 = System.nanoTime();
          remover.learn(heard, heard.length, live.alone().firstBeat());
          long t1 = System.nanoTime();
          remover.process(heard, 0, heard.length, sink);
          remover.finish(sink);
          long t2 = System.nanoTime();
          off += remover.takesOut() ? 0 : 1;
          learn += (t1 - t0) / 1e9 / n;
          work += (t2 - t1) / 1e9;
          seconds += heard.length / rate;
          without.add(live.alone(), FollowRun.of(live.with(heard), true));
          alone.add(live.alone(), FollowRun.of(live.alone(), true));
          Totals one = new Totals();
          one.add(live.alone(), FollowRun.of(live.with(rest), true));
          with.add(live.alone(), FollowRun.of(live.with(rest), true));
          double was = 0;
          double is = 0;
          int first = (int) (live.alone().firstBeat() * rate);
          float[] g = live.alone().take().samples();
          for (int k = first; k < rest.length; k++) {
            was += Math.pow(gain * live.leak()[k], 2);
            is += Math.pow(rest[k] - g[k], 2);
          }
          erle += 10 * Math.log10(was / is) / n;
          if (list) {
            System.out.printf(
                "  %d %s erle %.1f first %.2f %s%n",
                seed + i,
                text(one),
                10 * Math.log10(was / is),
                live.alone().firstBeat(),
                live.alone().take().name().substring(0, 40));
          }
        }
        System.out.printf(
            "room %.1f under %3.0f alone %s | without %s | with %s | erle %.1f off %d learn %.2f s x%.0f | delay %s -> %s%n",
            room,
            under,
            text(alone),
            text(without),
            text(with),
            erle,
            off,
            learn,
            seconds / work,
            alone.rightDelayMs,
            with.rightDelayMs);
      }
    }
    System.exit(0);
  }

  private static String text(Totals t) {
    return String.format(
        "F1 %.4f f/1000 %.1f found %d/%d",
        t.wide.f1(), t.inventedPerThousand(), t.mistakes.found(), t.mistakes.made());
  }
}
