package neckway.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import neckway.bench.ShiftTakes.ShiftTake;
import neckway.follow.Clock;
import neckway.follow.Review;
import neckway.follow.ReviewedNote;
import neckway.follow.ReviewedShift;
import neckway.follow.Run;
import neckway.follow.RunPlan;
import neckway.follow.ShiftVerdict;
import neckway.place.GuitarProfile;
import neckway.place.PlaceGuess;
import neckway.player.Amp;
import neckway.player.Guitar;
import neckway.player.PlayedShift;

/** Strings and shifts. */
public final class ShiftBench {
  private final Map<String, Map<String, Integer>> confusion = new TreeMap<>();
  private int strings;
  private int stringsRight;
  private int sure;
  private int sureRight;
  private int shifts;
  private int right;
  private int unheard;
  private final java.util.List<Double> delays = new java.util.ArrayList<>();
  private final java.util.List<Double> late = new java.util.ArrayList<>();
  private boolean errors;

  private ShiftBench() {}

  public static void main(String[] args) throws Exception {
    List<String> words = Arrays.asList(args);
    int takes = Integer.parseInt(args[1]);
    long seed =
        words.contains("--seed") ? Long.parseLong(words.get(words.indexOf("--seed") + 1)) : 1;
    boolean none = words.contains("--uncalibrated");
    ShiftBench bench = new ShiftBench();
    bench.errors = words.contains("--errors");
    Optional<RecordedNotes> recorded = RecordedNotes.load();
    for (int i = 0; i < takes; i++) {
      ShiftTake take;
      if (args[0].equals("stitched")) {
        take = ShiftTakes.stitched(recorded.orElseThrow(), "solidbody", seed + i);
      } else {
        String[] what = args[0].split(",");
        take =
            ShiftTakes.virtual(
                seed + i,
                Amp.Voicing.valueOf(what[0]),
                what.length > 1
                    ? Guitar.Model.valueOf(what[1])
                    : Guitar.Model.values()[(int) ((seed + i) / 4 % 2)]);
      }
      bench.add(take, none);
    }
    bench.print(args[0]);
  }

  private void add(ShiftTake take, boolean uncalibrated) {
    PlayedTake played = take.played();
    RunPlan plan =
        new RunPlan(
            played.drill().route(),
            played.drill().pulse(),
            played.drill().neck().key(),
            played.drill().neck().tuning(),
            played.drill().neck().frets());
    Optional<GuitarProfile> guitar = uncalibrated ? Optional.empty() : take.guitar();
    if (guitar.isPresent()) {
      plan = plan.on(guitar.get());
    }
    Run run =
        new Run(
            plan,
            played.take().sampleRate(),
            OptionalDouble.of(played.firstBeat()),
            Clock.MEASURED,
            v -> {});
    run.feed(played.take().samples(), 0, played.take().samples().length);
    Review review = run.finish();
    for (TrueNote n : played.take().notes()) {
      for (ReviewedNote g : review.notes()) {
        if (Math.abs(g.time() - n.time()) < 0.05 && g.midi() == n.midi() && !g.places().isEmpty()) {
          PlaceGuess best =
              g.places().stream().max((a, b) -> Double.compare(a.p(), b.p())).orElseThrow();
          boolean ok = best.place().string().number() == n.string();
          strings++;
          stringsRight += ok ? 1 : 0;
          if (best.p() >= 0.9) {
            sure++;
            sureRight += ok ? 1 : 0;
          }
          break;
        }
      }
    }
    for (int i = 0; i < review.shifts().size(); i++) {
      ReviewedShift said = review.shifts().get(i);
      PlayedShift truth = take.shifts().get(i);
      String what = truth.outcome().name();
      if (truth.outcome() == PlayedShift.Outcome.MOVED) {
        what += i == 0 ? " " + take.deed() : "";
      }
      String word = said.verdict().name();
      if (said.verdict() == ShiftVerdict.MOVED && !said.string().equals(truth.string())) {
        word = "MOVED elsewhere";
      }
      boolean ok = word.equals(truth.outcome().name());
      shifts++;
      right += ok ? 1 : 0;
      unheard += said.verdict() == ShiftVerdict.UNHEARD ? 1 : 0;
      confusion.computeIfAbsent(what, k -> new TreeMap<>()).merge(word, 1, Integer::sum);
      if (ok && truth.string().isPresent()) {
        int shows = shows(played, truth, truth.string().get().number());
        played.take().notes().stream()
            .filter(n -> n.step().isPresent() && n.step().getAsInt() == shows)
            .findFirst()
            .ifPresent(
                n ->
                    delays.add(
                        (said.decided().getAsDouble() - n.time())
                            / played.drill().pulse().gapSeconds()));
      }
      if (said.lateMs().isPresent() && truth.lateMs().isPresent() && ok) {
        late.add(Math.abs(said.lateMs().getAsDouble() - truth.lateMs().getAsDouble()));
      }
      if (errors && !ok) {
        System.out.printf(
            "%s | %s %s -> %s p=%s string %s, truth %s planned %s%n",
            played.take().name().replaceAll(" PlayerSettings.*", ""),
            what,
            truth.planned().direction(),
            word,
            said.p(),
            said.string(),
            truth.string(),
            truth.planned().string());
      }
    }
  }

  private static int shows(PlayedTake played, PlayedShift truth, int number) {
    int half = (played.drill().route().stepsPerRound() - 1) / 2;
    int fromLowest = played.drill().neck().tuning().count() - number;
    int note = 2 * fromLowest + truth.planned().pair();
    int round = truth.planned().round() * 2 * half;
    return round
        + (truth.planned().direction() == neckway.neck.Direction.UP ? note + 2 : 2 * half - note);
  }

  private void print(String name) {
    System.out.printf(
        "%s: shifts %d right %.4f unheard %.4f wrong %.4f | string %.4f of %d, sure %.3f right %.4f"
            + " | delay slots %.2f / %.2f | late ms %.1f / %.1f%n",
        name,
        shifts,
        1.0 * right / shifts,
        1.0 * unheard / shifts,
        1.0 * (shifts - right - unheard) / shifts,
        1.0 * stringsRight / strings,
        strings,
        1.0 * sure / strings,
        1.0 * sureRight / Math.max(1, sure),
        q(delays, 0.5),
        q(delays, 0.95),
        q(late, 0.5),
        q(late, 0.95));
    confusion.forEach((k, v) -> System.out.println("  " + k + " -> " + v));
  }

  private static double q(java.util.List<Double> values, double share) {
    double[] sorted = values.stream().mapToDouble(d -> d).sorted().toArray();
    return sorted.length == 0
        ? Double.NaN
        : sorted[(int) Math.min(sorted.length - 1, share * sorted.length)];
  }
}
