package neckway.bench;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;
import java.util.function.LongFunction;
import neckway.bench.ShiftTakes.ShiftTake;
import neckway.neck.GuitarString;
import neckway.neck.Tuning;
import neckway.player.settings.Guitar;
import neckway.player.surroundings.Amp;
import neckway.review.Review;
import neckway.string.GuitarProfile;
import neckway.string.StringProfile;

/**
 * On which string the notes were played and the shifts made, over runs on guitars that were learnt
 * from their calibration take. Prints a table.
 *
 * <pre>ShiftBench [FAMILY]... [--takes N] [--seed S] [--errors] [--write FILE]</pre>
 *
 * <p>Families are named as in the table's first column; without one all are run. Seeds are by
 * default those that are not used in development.
 */
public final class ShiftBench {
  private static final int THREADS = 2;
  private static final String USUAL_TAKES = "48";
  private static final String UNKNOWN = ", no profile";
  private static final double USUAL_SPREAD = 0.5;
  private static final String USUAL = ", usual strings";

  private ShiftBench() {}

  public static void main(String[] args) throws Exception {
    List<String> words = Arrays.asList(args);
    int takes = Integer.parseInt(StringBench.option(words, "--takes", USUAL_TAKES));
    long seed =
        Long.parseLong(StringBench.option(words, "--seed", "" + VirtualTakes.FIRST_HELD_OUT_SEED));
    Optional<RecordedNotes> recorded = RecordedNotes.load();
    Map<String, LongFunction<ShiftTake>> families = families(recorded);
    StringBuilder table = new StringBuilder(ShiftScore.heading());
    StringBuilder reliability = new StringBuilder(ShiftScore.reliabilityHeading());
    System.out.print(table);
    for (Map.Entry<String, LongFunction<ShiftTake>> family : families.entrySet()) {
      if (words.stream().anyMatch(families::containsKey) && !words.contains(family.getKey())) {
        continue;
      }
      ShiftScore score = new ShiftScore(family.getKey());
      measure(score, family.getValue(), takes, seed, guitar(family.getKey()));
      System.out.print(score.row());
      table.append(score.row());
      reliability.append(score.reliability());
      if (words.contains("--errors")) {
        score.confusion.forEach((done, said) -> System.out.println("  " + done + " -> " + said));
        score.errors.forEach(System.out::println);
      }
    }
    System.out.print(reliability);
    table.append(reliability);
    if (recorded.isEmpty()) {
      System.out.println("Recorded notes are not at " + RecordedNotes.folder() + ": left out.");
    }
    String write = StringBench.option(words, "--write", "");
    if (!write.isEmpty()) {
      new MarkedPart(Path.of(write), "shifts")
          .write(ShiftBench.class, String.join(" ", words), table.toString());
    }
  }

  /** Which guitar a family's takes are reviewed on. */
  private static Function<ShiftTake, Optional<GuitarProfile>> guitar(String family) {
    if (family.endsWith(UNKNOWN)) {
      return take -> Optional.empty();
    }
    if (family.endsWith(USUAL)) {
      return take -> Optional.of(usualStrings());
    }
    return ShiftTake::guitar;
  }

  /**
   * A guitar of which nothing is known: geometric means of the sets measured on a solid-body
   * electric, a humbucker electric and an acoustic with wound third, each string as far off as
   * those differ.
   */
  private static GuitarProfile usualStrings() {
    double[] millionths = {141, 76, 54, 71, 39, 13};
    List<StringProfile> strings = new ArrayList<>();
    for (GuitarString string : Tuning.STANDARD.strings()) {
      double b = 1e-6 * millionths[strings.size()];
      strings.add(
          new StringProfile(
              string, Tuning.STANDARD.openMidi(string), 0, Math.log(b), USUAL_SPREAD, 0));
    }
    return new GuitarProfile(strings);
  }

  private record Reviewed(ShiftTake take, Review review) {}

  private static void measure(
      ShiftScore score,
      LongFunction<ShiftTake> maker,
      int takes,
      long seed,
      Function<ShiftTake, Optional<GuitarProfile>> guitar)
      throws Exception {
    ExecutorService pool = Executors.newFixedThreadPool(THREADS);
    try {
      List<Future<Reviewed>> reviews = new ArrayList<>();
      for (int i = 0; i < takes; i++) {
        long number = seed + i;
        reviews.add(
            pool.submit(
                () -> {
                  ShiftTake take = maker.apply(number);
                  return new Reviewed(take, ShiftScore.review(take, guitar.apply(take)));
                }));
      }
      for (Future<Reviewed> reviewed : reviews) {
        score.add(reviewed.get().take(), reviewed.get().review());
      }
    } finally {
      pool.shutdownNow();
    }
  }

  private static Map<String, LongFunction<ShiftTake>> families(Optional<RecordedNotes> recorded) {
    Map<String, LongFunction<ShiftTake>> families = new LinkedHashMap<>();
    recorded.ifPresent(
        notes -> families.put("recorded solid body", s -> ShiftTakes.stitched(notes, s)));
    recorded.ifPresent(
        notes ->
            families.put(
                "recorded solid body, neck pickup",
                s -> ShiftTakes.stitched(notes, ShiftTakes.Pickup.NECK, s)));
    families.put("electric, line", s -> electric(s, Amp.Voicing.NONE));
    families.put("electric, shifts slid", s -> ShiftTakes.slid(s, Amp.Voicing.NONE, model(s)));
    families.put(
        "electric, hand stayed above", s -> ShiftTakes.stayedAbove(s, Amp.Voicing.NONE, model(s)));
    families.put(
        "electric, slips before shifts", s -> ShiftTakes.slipped(s, Amp.Voicing.NONE, model(s)));
    families.put("electric, edge of breakup", s -> electric(s, Amp.Voicing.EDGE));
    families.put("electric, crunch", s -> electric(s, Amp.Voicing.CRUNCH));
    families.put(
        "acoustic, wound third",
        s -> ShiftTakes.virtual(s, Amp.Voicing.NONE, Guitar.Model.ACOUSTIC));
    families.put(
        "acoustic, hum, hiss and room", s -> ShiftTakes.microphone(s, Guitar.Model.ACOUSTIC));
    families.put("nylon", s -> ShiftTakes.virtual(s, Amp.Voicing.NONE, Guitar.Model.NYLON));
    recorded.ifPresent(
        notes -> families.put("recorded solid body" + UNKNOWN, s -> ShiftTakes.stitched(notes, s)));
    families.put("electric, line" + UNKNOWN, s -> electric(s, Amp.Voicing.NONE));
    recorded.ifPresent(
        notes -> families.put("recorded solid body" + USUAL, s -> ShiftTakes.stitched(notes, s)));
    families.put("electric, line" + USUAL, s -> electric(s, Amp.Voicing.NONE));
    families.put(
        "acoustic" + USUAL, s -> ShiftTakes.virtual(s, Amp.Voicing.NONE, Guitar.Model.ACOUSTIC));
    families.put("nylon" + USUAL, s -> ShiftTakes.virtual(s, Amp.Voicing.NONE, Guitar.Model.NYLON));
    return families;
  }

  private static ShiftTake electric(long seed, Amp.Voicing amp) {
    return ShiftTakes.virtual(seed, amp, model(seed));
  }

  private static Guitar.Model model(long seed) {
    return seed / 4 % 2 == 0 ? Guitar.Model.ELECTRIC : Guitar.Model.HUMBUCKER;
  }

  /** Puts the table between the marks in a page. */
}
