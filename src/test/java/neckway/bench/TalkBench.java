package neckway.bench;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.LongStream;
import neckway.bench.Measured.Said;
import neckway.bench.NoteMatching.Criterion;
import neckway.bench.NoteMatching.Note;
import neckway.bench.NoteMatching.Score;
import neckway.bench.TalkTakes.Around;
import neckway.bench.TalkTakes.TalkTake;
import neckway.file.sound.Channel;
import neckway.recording.Recording;
import neckway.recording.RecordingReviewer;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedStep;
import neckway.review.StepVerdict;

/**
 * What reviews say of runs recorded by a phone, alone and with talk, tuning up or applause around
 * them, no first beat given. Prints a table.
 *
 * <pre>TalkBench [--takes N] [--seed S] [--errors] [--keep DIR] [--write FILE]</pre>
 */
public final class TalkBench {
  private TalkBench() {}

  private record Told(
      String name, Score notes, MistakeScore mistakes, int attempts, List<String> errors) {}

  public static void main(String[] args) throws Exception {
    List<String> words = Arrays.asList(args);
    int takes = Integer.parseInt(StringBench.option(words, "--takes", "12"));
    long seed =
        Long.parseLong(StringBench.option(words, "--seed", "" + TalkTakes.FIRST_OTHER_VOICES_SEED));
    String only = StringBench.option(words, "--only", "");
    String keep = StringBench.option(words, "--keep", "");
    Path folder = keep.isEmpty() ? Files.createTempDirectory("talk") : Path.of(keep);
    TalkTakes made = new TalkTakes(folder);
    StringBuilder table =
        new StringBuilder(
            "| around the run | takes | note F1 | false slips per 1,000 | slips found of made |"
                + " reviews with one try |\n| --- | --- | --- | --- | --- | --- |\n");
    for (Around around : Around.values()) {
      if (!only.isEmpty() && !only.contains(around.name())) {
        continue;
      }
      List<Long> seeds = LongStream.range(seed, seed + takes).boxed().toList();
      Score notes = new Score(0, 0, 0);
      MistakeScore mistakes = MistakeScore.NONE;
      int oneTry = 0;
      for (Told told :
          Batch.map(around.name(), seeds, s -> told(made.take(s, around), keep.isEmpty()))) {
        notes = notes.plus(told.notes());
        mistakes = mistakes.plus(told.mistakes());
        oneTry += told.attempts() == 1 ? 1 : 0;
        if (words.contains("--errors") && !told.errors().isEmpty()) {
          System.out.println(told.name() + "\n    " + String.join("\n    ", told.errors()));
        }
      }
      table.append(
          String.format(
              Locale.ROOT,
              "| %s | %d | %.4f | %.1f | %d of %d | %d |%n",
              around.name().toLowerCase(Locale.ROOT).replace('_', ' '),
              takes,
              notes.f1(),
              1000.0 * mistakes.invented() / Math.max(1, notes.truth()),
              mistakes.found(),
              mistakes.made(),
              oneTry));
    }
    System.out.print(table);
    String write = StringBench.option(words, "--write", "");
    if (!write.isEmpty()) {
      new MarkedPart(Path.of(write), "talk")
          .write(TalkBench.class, String.join(" ", words), table.toString());
    }
  }

  private static Told told(TalkTake take, boolean delete) throws Exception {
    Review review =
        RecordingReviewer.review(
                new Recording(
                    take.file(),
                    take.played().drill(),
                    Optional.empty(),
                    OptionalDouble.empty(),
                    Channel.AUTO),
                (seconds, share) -> {},
                () -> false)
            .orElseThrow()
            .review();
    if (delete) {
      Files.delete(take.file());
    }
    List<TrueNote> truth = take.played().take().notes();
    List<Note> wanted = truth.stream().map(n -> Note.at(n.time(), n.midi())).toList();
    List<Note> had = review.notes().stream().map(n -> Note.at(n.time(), n.midi())).toList();
    Score score = NoteMatching.score(wanted, had, EarRun.WIDE, Criterion.ONSET_PITCH);
    Measured measured = measured(review);
    MistakeScore mistakes = MistakeScore.of(take.played(), measured);
    return new Told(
        take.name(),
        score,
        mistakes,
        review.attempts(),
        errors(take, review, measured, wanted, had));
  }

  static Measured measured(Review review) {
    List<Said> notes =
        review.notes().stream()
            .map(
                n ->
                    new Said(
                        n.time(),
                        n.midi(),
                        n.verdict().word(),
                        n.step(),
                        n.attempt(),
                        n.offMs(),
                        n.decided()))
            .toList();
    List<Integer> skipped =
        review.steps().stream()
            .filter(s -> s.verdict() == StepVerdict.SKIPPED)
            .map(ReviewedStep::step)
            .map(s -> s.index())
            .toList();
    return new Measured(
        notes,
        skipped,
        review.grid().firstBeat(),
        review.grid().slotSeconds(),
        review.grid().source().word(),
        0);
  }

  private static List<String> errors(
      TalkTake take, Review review, Measured measured, List<Note> wanted, List<Note> had) {
    List<String> errors = new ArrayList<>();
    int[] partners = NoteMatching.match(wanted, had, EarRun.WIDE, Criterion.ONSET_PITCH);
    boolean[] used = new boolean[had.size()];
    List<TrueNote> truth = take.played().take().notes();
    for (int i = 0; i < partners.length; i++) {
      if (partners[i] < 0) {
        errors.add(
            String.format(
                Locale.ROOT, "missed %.2f midi %d", truth.get(i).time(), truth.get(i).midi()));
      } else {
        used[partners[i]] = true;
      }
    }
    double begin = truth.get(0).time();
    double end = truth.get(truth.size() - 1).time();
    for (int i = 0; i < used.length; i++) {
      if (!used[i]) {
        ReviewedNote n = review.notes().get(i);
        errors.add(
            String.format(
                Locale.ROOT,
                "false %.2f midi %d %s step %s attempt %d (%s)",
                n.time(),
                n.midi(),
                n.verdict().word(),
                n.step(),
                n.attempt(),
                n.time() < begin - 0.1 ? "before" : n.time() > end + 0.1 ? "after" : "inside"));
      }
    }
    MistakeScore mistakes = MistakeScore.of(take.played(), measured);
    if (mistakes.made() != mistakes.found() || mistakes.invented() > 0) {
      errors.add(
          "made "
              + take.played().mistakes()
              + " said "
              + MistakeScore.said(take.played(), measured));
    }
    if (review.attempts() > 1) {
      errors.add(review.attempts() + " tries, reviewed " + review.reviewed());
    }
    return errors;
  }
}
