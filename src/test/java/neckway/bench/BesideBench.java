package neckway.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.hear.beside.Alignment;
import neckway.hear.beside.KnownSoundRemover;

/**
 * Takes into which a backing leaks, reviewed with and without the backing's being known.
 *
 * <pre>
 * BesideBench [N] [--seed S] [--drift SHARE] [--only DB] [--room S] [--quick] [--list] [--errors]
 * </pre>
 *
 * <p>N takes for each level and room. {@code --drift}: the clocks run apart by up to that share.
 * {@code --quick}: not without the backing. {@code --list}: each take. {@code --errors}: each note
 * that the ear missed or had too many.
 */
public final class BesideBench {
  private static final double[] UNDER_DB = {30, 20, 12};
  private static final double[] ROOM_SECONDS = {0.2, 0.5};

  private BesideBench() {}

  public static void main(String[] args) throws Exception {
    List<String> words = Arrays.asList(args);
    int n = args.length > 0 && args[0].matches("\\d+") ? Integer.parseInt(args[0]) : 6;
    long seed = (long) option(words, "--seed", 1);
    double drift = option(words, "--drift", 0);
    double only = option(words, "--only", 0);
    Totals alone = new Totals();
    double onlyRoom = option(words, "--room", 0);
    for (double room : onlyRoom == 0 ? ROOM_SECONDS : new double[] {onlyRoom}) {
      for (double under : only == 0 ? UNDER_DB : new double[] {only}) {
        Totals without = new Totals();
        Totals with = new Totals();
        double[] erle = new double[2];
        double spent = 0;
        double seconds = 0;
        int notFound = 0;
        for (int i = 0; i < n; i++) {
          BackingTakes.Beside b = BackingTakes.of(seed + i, room, drift);
          Take t = b.alone().take();
          if (only == 0 && room == ROOM_SECONDS[0] && under == UNDER_DB[0]) {
            add(alone, b.alone(), b.alone());
          }
          PlayedTake mixed = b.leaking(under);
          if (!words.contains("--quick")) {
            add(without, b.alone(), mixed);
          }
          long start = System.nanoTime();
          float[] samples = mixed.take().samples();
          Optional<KnownSoundRemover.Found> found =
              new KnownSoundRemover(samples, t.sampleRate(), b.backing(), b.backingRate())
                  .find(OptionalDouble.empty());
          float[] rest = samples.clone();
          if (found.isPresent()) {
            Alignment where = found.get().where();
            if (words.contains("--list")) {
              System.out.printf(
                  "   start off %.3f ms drift off %.1f ppm (of %.1f)%n",
                  1000 * (where.startsSeconds() - b.starts()),
                  1e6 * (where.drift() - b.drift()),
                  1e6 * b.drift());
            }
            for (int k = 0; k < rest.length; k++) {
              rest[k] -= found.get().leak()[k];
            }
          } else {
            notFound++;
          }
          spent += (System.nanoTime() - start) / 1e9;
          seconds += t.seconds();
          double[] e = erle(b, under, rest);
          erle[0] += e[0] / n;
          erle[1] += e[1] / n;
          add(with, b.alone(), b.with(rest));
          if (words.contains("--errors")) {
            new EarRun(b.with(rest).take()).errors().forEach(System.out::println);
          }
          if (words.contains("--list")) {
            System.out.printf(
                "   %d %s ERLE alone %.1f played %.1f%n",
                seed + i, t.name().substring(0, 60), e[0], e[1]);
          }
        }
        System.out.printf(
            "room %.1f under %2.0f  without %s  with %s  erle before %.1f playing %.1f dB"
                + " not found %d  x%.1f%n",
            room, under, text(without), text(with), erle[0], erle[1], notFound, seconds / spent);
      }
    }
    System.out.println("alone " + text(alone));
    System.exit(0);
  }

  private static void add(Totals totals, PlayedTake truth, PlayedTake heard) {
    totals.add(truth, FollowRun.of(heard, true));
  }

  private static String text(Totals t) {
    int notes = Math.max(1, t.wide.truth());
    return String.format(
        "F1 %.4f false/1000 %.1f found %d of %d",
        t.wide.f1(), 1000.0 * t.mistakes.invented() / notes, t.mistakes.found(), t.mistakes.made());
  }

  /** By how much the leak is less than it was, dB: before the first note and from then on. */
  private static double[] erle(BackingTakes.Beside b, double under, float[] rest) {
    float gain = (float) Math.pow(10, -under / 20);
    int first = (int) (b.alone().take().notes().get(0).time() * b.alone().take().sampleRate());
    double[] was = new double[2];
    double[] is = new double[2];
    float[] guitar = b.alone().take().samples();
    for (int i = 0; i < rest.length; i++) {
      int part = i < first ? 0 : 1;
      double leak = gain * b.leak()[i];
      double left = rest[i] - guitar[i];
      was[part] += leak * leak;
      is[part] += left * left;
    }
    return new double[] {10 * Math.log10(was[0] / is[0]), 10 * Math.log10(was[1] / is[1])};
  }

  private static double option(List<String> words, String name, double otherwise) {
    int at = words.indexOf(name);
    return at < 0 ? otherwise : Double.parseDouble(words.get(at + 1));
  }
}
