package neckway.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import neckway.bench.ShiftTakes.ShiftTake;
import neckway.hand.PlaceGuess;
import neckway.hand.ShiftVerdict;
import neckway.neck.Direction;
import neckway.player.plan.PlayedShift;
import neckway.review.Clock;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedShift;
import neckway.run.Run;
import neckway.string.GuitarProfile;

/** What is said of strings and shifts over a family of takes, held against the truth. */
final class ShiftScore {
  private static final double SAME_NOTE_SECONDS = 0.05;

  /** Frames that a recording is read by. */
  private static final int BLOCK = 4_096;

  private static final double SURE = 0.9;

  /** Probabilities of verdicts up to each are counted together. */
  private static final double[] EDGES = {0.95, 0.98, 0.99, 0.995, 1};

  private static final String ELSEWHERE = "moved elsewhere";

  /** What was said, by what was done. */
  final Map<String, Map<String, Integer>> confusion = new TreeMap<>();

  final List<String> errors = new ArrayList<>();
  private final String name;
  private int takes;
  private int strings;
  private int stringsRight;
  private int sure;
  private int sureRight;
  private int shifts;
  private int right;
  private int unheard;
  private final int[] said = new int[EDGES.length];
  private final int[] saidRight = new int[EDGES.length];
  private final List<Double> delaySlots = new ArrayList<>();
  private final List<Double> lateErrorMs = new ArrayList<>();

  ShiftScore(String name) {
    this.name = name;
  }

  /** Reviews a take, on the guitar given. */
  static Review review(ShiftTake take, Optional<GuitarProfile> guitar) {
    PlayedTake played = take.played();
    Run run =
        new Run(
            played.drill(),
            guitar,
            played.take().sampleRate(),
            OptionalDouble.of(played.firstBeat()),
            Clock.MEASURED,
            verdict -> {});
    float[] samples = played.take().samples();
    for (int from = 0; from < samples.length; from += BLOCK) {
      run.feed(samples, from, Math.min(BLOCK, samples.length - from));
    }
    return run.finish();
  }

  /** Adds a take's review; not for several threads at once. */
  void add(ShiftTake take, Review review) {
    takes++;
    for (TrueNote note : take.played().take().notes()) {
      review.notes().stream()
          .filter(g -> Math.abs(g.time() - note.time()) < SAME_NOTE_SECONDS)
          .filter(g -> g.midi() == note.midi() && !g.places().isEmpty())
          .findFirst()
          .ifPresent(g -> string(note, g));
    }
    for (int i = 0; i < review.shifts().size(); i++) {
      shift(take, take.shifts().get(i), review.shifts().get(i));
    }
  }

  private void string(TrueNote note, ReviewedNote heard) {
    PlaceGuess best =
        heard.places().stream().max(Comparator.comparingDouble(PlaceGuess::p)).orElseThrow();
    int ok = best.place().string().number() == note.string() ? 1 : 0;
    strings++;
    stringsRight += ok;
    if (best.p() >= SURE) {
      sure++;
      sureRight += ok;
    }
  }

  private void shift(ShiftTake take, PlayedShift truth, ReviewedShift said) {
    String done = truth.outcome().name().toLowerCase(Locale.ROOT);
    String word = said.verdict().word();
    if (said.verdict() == ShiftVerdict.MOVED && !said.string().equals(truth.string())) {
      word = ELSEWHERE;
    }
    boolean ok = word.equals(done);
    String what = done;
    if (truth.outcome() == PlayedShift.Outcome.MOVED) {
      int off = Math.abs(truth.string().orElseThrow().number() - truth.planned().string().number());
      what += off == 1 ? " to the next" : " farther";
    }
    if (said.p().isPresent()) {
      int bin = 0;
      while (said.p().getAsDouble() > EDGES[bin]) {
        bin++;
      }
      this.said[bin]++;
      saidRight[bin] += ok ? 1 : 0;
    }
    shifts++;
    right += ok ? 1 : 0;
    unheard += said.verdict() == ShiftVerdict.UNHEARD ? 1 : 0;
    confusion.computeIfAbsent(what, k -> new TreeMap<>()).merge(word, 1, Integer::sum);
    if (ok && truth.string().isPresent()) {
      delay(take.played(), truth, said);
    }
    if (ok && said.lateMs().isPresent() && truth.lateMs().isPresent()) {
      lateErrorMs.add(Math.abs(said.lateMs().getAsDouble() - truth.lateMs().getAsDouble()));
    }
    if (!ok) {
      errors.add(
          String.format(
              "  %s: %s, planned %s on %s, truly on %s: said %s %s p %s",
              take.played().take().name().replaceAll(" PlayerSettings.*", ""),
              what,
              truth.planned().direction(),
              truth.planned().string(),
              truth.string(),
              word,
              said.string(),
              said.p()));
    }
  }

  private void delay(PlayedTake played, PlayedShift truth, ReviewedShift said) {
    int half = (played.drill().route().stepsPerRound() - 1) / 2;
    int strings = played.drill().neck().tuning().count();
    int note = 2 * (strings - truth.string().orElseThrow().number()) + truth.planned().pair();
    int round = truth.planned().round() * 2 * half;
    boolean up = truth.planned().direction() == Direction.UP;
    int shows = round + (up ? note + 2 : 2 * half - note);
    played.take().notes().stream()
        .filter(n -> n.step().isPresent() && n.step().getAsInt() == shows)
        .findFirst()
        .ifPresent(
            n ->
                delaySlots.add(
                    (said.decided().orElseThrow() - n.time())
                        / played.drill().pulse().slotSeconds()));
  }

  /** Share of the shifts of which what was done was said. */
  double shareRight() {
    return share(right, shifts);
  }

  /** Share of the shifts of which another thing was said than what was done. */
  double shareWrong() {
    return share(shifts - right - unheard, shifts);
  }

  /** Heading of {@link #reliability()}. */
  static String reliabilityHeading() {
    return """

        | verdicts said, right of all with p | 0.9 to 0.95 | to 0.98 | to 0.99 | to 0.995 | to 1 |
        | --- | --- | --- | --- | --- | --- |
        """;
  }

  /** How many verdicts were right of those said with each probability. */
  String reliability() {
    StringBuilder row = new StringBuilder("| " + name + " |");
    for (int bin = 0; bin < said.length; bin++) {
      row.append(said[bin] == 0 ? " |" : " " + saidRight[bin] + "/" + said[bin] + " |");
    }
    return row + "\n";
  }

  /** Heading of {@link #row()}. */
  static String heading() {
    return """
        | takes | n | shifts | right | unheard | wrong | made | next | farther | missed | strings right | p >= 0.9 | of these right | delay, slots | lateMs error |
        | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |
        """;
  }

  /** The family's figures as a row of a table. */
  String row() {
    return String.format(
            Locale.ROOT,
            "| %s | %d | %d | %.3f | %.3f | %.3f | %s | %s | %s | %s | %.4f | %.3f | %.4f | %.2f / %.2f"
                + " | %.1f / %.1f |%n",
            name,
            takes,
            shifts,
            shareRight(),
            share(unheard, shifts),
            shareWrong(),
            of("made", "made"),
            of("moved to the next", "moved"),
            of("moved farther", "moved"),
            of("missed", "missed"),
            share(stringsRight, strings),
            share(sure, strings),
            share(sureRight, sure),
            quantile(delaySlots, 0.5),
            quantile(delaySlots, 0.95),
            quantile(lateErrorMs, 0.5),
            quantile(lateErrorMs, 0.95))
        .replace("NaN", "-");
  }

  private String of(String done, String word) {
    Map<String, Integer> said = confusion.getOrDefault(done, Map.of());
    int all = said.values().stream().mapToInt(i -> i).sum();
    return all == 0 ? "" : said.getOrDefault(word, 0) + "/" + all;
  }

  private static double share(int part, int whole) {
    return whole == 0 ? Double.NaN : (double) part / whole;
  }

  private static double quantile(List<Double> values, double share) {
    double[] sorted = values.stream().mapToDouble(d -> d).sorted().toArray();
    return sorted.length == 0
        ? Double.NaN
        : sorted[(int) Math.min(sorted.length - 1.0, share * sorted.length)];
  }
}
