package neckway.bench;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.LongStream;
import neckway.bench.SaidTakes.SaidTake;
import neckway.bench.SaidTakes.Story;
import neckway.hand.ShiftVerdict;
import neckway.hear.RobustStatistics;
import neckway.player.plan.PlayedNote;
import neckway.player.plan.PlayedShift;
import neckway.review.Clock;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedShift;
import neckway.review.ReviewedStep;
import neckway.review.StepVerdict;
import neckway.run.Run;

/**
 * What reviews say against what was played, take by take: a review is right if every note that was
 * played is heard and called what it was, nothing else is, every step left out is said to be, and
 * no shift has another verdict than its own or {@code unheard}. Prints a table.
 *
 * <pre>SaidBench [--takes N] [--seed S] [--errors] [--write FILE]</pre>
 */
public final class SaidBench {
  private static final int BLOCK = 4096;
  private static final double NEAR_SECONDS = 0.05;
  private static final double SAME_TEMPO = 0.02;

  private SaidBench() {}

  public static void main(String[] args) throws Exception {
    List<String> words = Arrays.asList(args);
    int takes = Integer.parseInt(StringBench.option(words, "--takes", "147"));
    long seed =
        Long.parseLong(StringBench.option(words, "--seed", "" + VirtualTakes.FIRST_HELD_OUT_SEED));
    Map<Story, int[]> rows = new EnumMap<>(Story.class);
    List<Long> seeds = LongStream.range(seed, seed + takes).boxed().toList();
    List<String> wrong = new ArrayList<>();
    for (Told told : Batch.map("said", seeds, SaidBench::told)) {
      int[] row = rows.computeIfAbsent(told.take().story(), s -> new int[2]);
      row[0]++;
      row[1] += told.faults().isEmpty() ? 1 : 0;
      if (!told.faults().isEmpty()) {
        wrong.add(told.take().name() + "\n    " + String.join("\n    ", told.faults()));
      }
    }
    StringBuilder table = new StringBuilder("| what happens | takes | reviews right |\n");
    table.append("| --- | --- | --- |\n");
    rows.forEach(
        (story, row) -> table.append("| %s | %d | %d |%n".formatted(words(story), row[0], row[1])));
    table.append("| all | %d | %d |%n".formatted(takes, takes - wrong.size()));
    System.out.print(table);
    if (words.contains("--errors")) {
      wrong.forEach(System.out::println);
    }
    String write = StringBench.option(words, "--write", "");
    if (!write.isEmpty()) {
      new MarkedPart(Path.of(write), "said")
          .write(SaidBench.class, String.join(" ", words), table.toString());
    }
  }

  private static String words(Story story) {
    return story.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private record Told(SaidTake take, Review review, List<String> faults) {}

  private static Told told(long seed) {
    SaidTake take = SaidTakes.take(seed);
    Review review = review(take);
    List<String> faults = new ArrayList<>();
    notes(take, review, faults);
    steps(take, review, faults);
    shifts(take, review, faults);
    tempo(take, review, faults);
    if (!faults.isEmpty()) {
      faults.addAll(review.summary().words());
    }
    return new Told(take, review, faults);
  }

  static Review review(SaidTake take) {
    Run run =
        new Run(
            take.drill(),
            take.guitar(),
            take.played().sampleRate(),
            take.firstBeat(),
            Clock.MEASURED,
            verdict -> {});
    float[] samples = take.played().samples();
    for (int from = 0; from < samples.length; from += BLOCK) {
      run.feed(samples, from, Math.min(BLOCK, samples.length - from));
    }
    return run.finish();
  }

  private static void notes(SaidTake take, Review review, List<String> faults) {
    List<ReviewedNote> left = new ArrayList<>(review.notes());
    for (PlayedNote played : take.played().notes()) {
      ReviewedNote near = null;
      for (ReviewedNote heard : left) {
        double off = Math.abs(heard.time() - played.time());
        if (off <= NEAR_SECONDS
            && heard.midi() == played.midi()
            && (near == null || off < Math.abs(near.time() - played.time()))) {
          near = heard;
        }
      }
      if (near == null) {
        faults.add(at(played.time(), played.midi()) + " was not heard");
        continue;
      }
      left.remove(near);
      String was = played.kind() + " " + played.step() + " attempt " + played.attempt();
      String said = near.verdict() + " " + near.step() + " attempt " + near.attempt();
      if (!was.equals(said) && take.story() != Story.MORE_ROUNDS) {
        faults.add(at(played.time(), played.midi()) + " was " + was + ", said " + said);
      }
      if (take.story() == Story.MORE_ROUNDS
          && !near.verdict().toString().equals(played.kind().toString())) {
        faults.add(at(played.time(), played.midi()) + " was " + was + ", said " + said);
      }
    }
    left.forEach(n -> faults.add(at(n.time(), n.midi()) + " was not played"));
  }

  private static void steps(SaidTake take, Review review, List<String> faults) {
    if (take.story() == Story.MORE_ROUNDS) {
      return;
    }
    List<Integer> said =
        review.steps().stream()
            .filter(s -> s.verdict() == StepVerdict.SKIPPED)
            .map(ReviewedStep::step)
            .map(s -> s.index())
            .toList();
    if (!said.equals(take.played().skipped())) {
      faults.add("left out " + take.played().skipped() + ", said " + said);
    }
  }

  /** Where nothing but the notes gives the tempo away, it is theirs. */
  private static void tempo(SaidTake take, Review review, List<String> faults) {
    if (take.story() != Story.OTHER_TEMPO) {
      return;
    }
    List<Double> interOnsets = new ArrayList<>();
    for (int i = 1; i < take.played().notes().size(); i++) {
      interOnsets.add(
          take.played().notes().get(i).time() - take.played().notes().get(i - 1).time());
    }
    double played =
        60 / (RobustStatistics.median(interOnsets) * take.drill().pulse().notesPerBeat());
    double said = review.grid().tempo();
    if (Math.abs(said / played - 1) > SAME_TEMPO) {
      faults.add("played at %.1f beats a minute, said %.1f".formatted(played, said));
    }
  }

  private static void shifts(SaidTake take, Review review, List<String> faults) {
    if (take.story() == Story.MORE_ROUNDS) {
      return;
    }
    for (int i = 0; i < review.shifts().size(); i++) {
      ReviewedShift said = review.shifts().get(i);
      PlayedShift was = take.played().shifts().get(i);
      boolean same =
          said.verdict().name().equals(was.outcome().name())
              && (said.verdict() == ShiftVerdict.MISSED || said.string().equals(was.string()));
      if (!same && said.verdict() != ShiftVerdict.UNHEARD) {
        faults.add(
            "shift "
                + i
                + " was "
                + was.outcome()
                + " "
                + was.string()
                + ", said "
                + said.verdict()
                + " "
                + said.string()
                + " "
                + said.p());
      }
      if (take.story() == Story.SHIFT_DOWN_MISSED
          && was.outcome() == PlayedShift.Outcome.MISSED
          && said.verdict() == ShiftVerdict.UNHEARD) {
        faults.add("shift " + i + " was missed, said unheard");
      }
    }
  }

  private static String at(double seconds, int midi) {
    return String.format(Locale.ROOT, "%.2f s midi %d", seconds, midi);
  }
}
