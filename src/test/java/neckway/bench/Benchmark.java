package neckway.bench;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import neckway.player.settings.PlayerSettings.Condition;

/**
 * Accuracy, delay and speed of ear and follower in one table.
 *
 * <pre>Benchmark [--takes N] [--seed S] [--write FILE]</pre>
 *
 * <p>N ordinary takes (default 200) each of clean and dirty playing, and shares of that of the
 * others and of hard takes. Seeds from S on, by default those that are not used in development.
 */
public final class Benchmark {
  private static final int DEFAULT_TAKES = 200;

  private final int takes;
  private final long seed;
  private final boolean aubio = Aubio.isThere();
  private final BenchmarkTable table = new BenchmarkTable();

  private Benchmark(int takes, long seed) {
    this.takes = takes;
    this.seed = seed;
  }

  public static void main(String[] args) throws Exception {
    List<String> words = Arrays.asList(args);
    int takes = (int) number(words, "--takes", DEFAULT_TAKES);
    long seed = number(words, "--seed", VirtualTakes.FIRST_HELD_OUT_SEED);
    String text = new Benchmark(takes, seed).run().page(seed);
    System.out.println(text);
    int write = words.indexOf("--write");
    if (write >= 0) {
      new MarkedPart(Path.of(words.get(write + 1)), "benchmark")
          .write(Benchmark.class, String.join(" ", words), text);
    }
  }

  private static long number(List<String> words, String name, long otherwise) {
    int at = words.indexOf(name);
    return at < 0 ? otherwise : Long.parseLong(words.get(at + 1));
  }

  private BenchmarkTable run() throws Exception {
    Family clean = virtual(Population.ORDINARY, takes, Condition.CLEAN);
    Family dirty = virtual(Population.ORDINARY, takes, Condition.DIRTY);
    Family hardClean = virtual(Population.HARD, takes / 2, Condition.CLEAN);
    Family hardDirty = virtual(Population.HARD, takes / 2, Condition.DIRTY);
    table.clean(clean, hardClean, low(Condition.CLEAN));
    table.legato(
        virtual(Population.ORDINARY, takes / 2, Condition.LEGATO),
        virtual(Population.HARD, takes / 4, Condition.LEGATO));
    table.stitched(stitched());
    table.crowded(crowded(Population.ORDINARY, takes / 2), crowded(Population.HARD, takes / 4));
    table.firstBeat(
        phase(Population.ORDINARY, true),
        phase(Population.HARD, true),
        phase(Population.ORDINARY, false),
        phase(Population.HARD, false));
    table.dirty(dirty, hardDirty, low(Condition.DIRTY));
    strangers();
    synthesizers();
    sweeps();
    table.speed(Speed.measure(), aubio ? Optional.of(clean) : Optional.empty());
    return table;
  }

  private Family virtual(Population population, int n, Condition condition) throws Exception {
    return follow(
        population.word(condition), Families.virtual(population, n, seed, condition), aubio);
  }

  private Family low(Condition condition) throws Exception {
    Population ordinary = Population.ORDINARY;
    return follow(
        "low tunings, " + condition, Families.low(ordinary, takes / 4, seed, condition), false);
  }

  private Family crowded(Population population, int n) throws Exception {
    return follow("two slips within two steps", Families.crowded(population, n, seed), false);
  }

  private Totals phase(Population population, boolean click) throws Exception {
    return phase(
        "first beat by the " + (click ? "click" : "notes"),
        Families.noFirstBeat(population, takes / 4, seed, click));
  }

  /** One family's figures and aubio's hearings of the same takes, if it is there. */
  record Family(String name, Totals totals, List<Aubio.Hearing> aubio) {}

  private Family follow(String name, List<Callable<PlayedTake>> makers, boolean withAubio)
      throws Exception {
    Totals totals = new Totals();
    List<Optional<Aubio.Hearing>> hearings =
        Batch.run(
            name,
            makers,
            played -> {
              totals.add(played, FollowRun.of(played, true));
              return withAubio
                  ? Optional.of(Aubio.listen(played.take()))
                  : Optional.<Aubio.Hearing>empty();
            });
    return new Family(name, totals, hearings.stream().flatMap(Optional::stream).toList());
  }

  private Totals phase(String name, List<Callable<PlayedTake>> makers) throws Exception {
    Totals totals = new Totals();
    Batch.run(
        name,
        makers,
        played -> {
          totals.addPhase(played, FollowRun.of(played, false));
          return true;
        });
    return totals;
  }

  /** One guitar's runs, ordinary, hard, and hard with dirt. */
  record Guitars(String name, Family ordinary, Family hard, Family hardDirty) {}

  private List<Guitars> stitched() throws Exception {
    Optional<RecordedNotes> found = RecordedNotes.load();
    if (found.isEmpty()) {
      return List.of();
    }
    RecordedNotes recorded = found.get();
    table.leftOut(recorded.leftOut());
    int n = takes / 5;
    List<Guitars> all = new ArrayList<>();
    for (String guitar : recorded.guitars()) {
      all.add(
          new Guitars(
              guitar,
              follow(guitar, Families.stitchedOrdinary(recorded, guitar, n, seed), aubio),
              follow(
                  "hard " + guitar, Families.stitched(recorded, guitar, n / 2, seed, false), aubio),
              follow(
                  "hard dirty " + guitar,
                  Families.stitched(recorded, guitar, n / 2, seed, true),
                  aubio)));
    }
    return all;
  }

  private void strangers() throws Exception {
    int n = Math.max(1, takes / 10);
    Map<String, List<Callable<PlayedTake>>> kinds = new LinkedHashMap<>();
    kinds.put("the run a semitone up", Families.semitoneUp(n, seed));
    kinds.put("random notes", Families.randomNotes(n, seed));
    kinds.put("speech-like sound", Families.speechLike(n, seed));
    kinds.put("noise with bursts", Families.noise(n, seed));
    for (Map.Entry<String, List<Callable<PlayedTake>>> kind : kinds.entrySet()) {
      List<Long> right =
          Batch.run(
              kind.getKey(),
              kind.getValue(),
              played ->
                  FollowRun.of(played, true).notes().stream()
                      .filter(s -> s.verdict().equals(Measured.RIGHT))
                      .count());
      table.stranger(kind.getKey(), right);
    }
  }

  private void synthesizers() throws Exception {
    for (JdkSynthTakes bank : JdkSynthTakes.banks()) {
      String name = "JDK synthesizer, " + bank.name();
      table.other(follow(name, Families.synthesizer(bank, takes / 4, seed), aubio));
    }
    if (!JdkSynthTakes.FLUID.isFile()) {
      table.say("Debian's fluid-soundfont-gm is not installed: not measured.");
    }
  }

  private void sweeps() throws Exception {
    int n = Math.max(1, takes / 20);
    for (int hz : new int[] {8_000, 16_000, 22_050, 32_000, 48_000, 96_000, 192_000}) {
      table.other(
          follow("clean, " + hz + " Hz", Families.clean(n, seed, Families.sampleRate(hz)), false));
    }
    for (int db : new int[] {-54, -40, -20, 0}) {
      table.other(
          follow("clean, peak " + db + " dBFS", Families.clean(n, seed, Families.peak(db)), false));
    }
    for (int cents : new int[] {-45, -30, -15, 15, 30, 45}) {
      table.other(
          follow(
              "clean, tuned " + cents + " cents off",
              Families.clean(n, seed, Families.detune(cents)),
              false));
    }
  }
}
