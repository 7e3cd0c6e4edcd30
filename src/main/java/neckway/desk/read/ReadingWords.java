package neckway.desk.read;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import neckway.desk.DrillWords;
import neckway.desk.Texts;
import neckway.desk.page.PageWords;
import neckway.hand.ShiftVerdict;
import neckway.neck.Direction;
import neckway.review.Clock;
import neckway.review.Milliseconds;
import neckway.review.Review;
import neckway.review.Summary;
import neckway.review.words.Sentence;
import neckway.review.words.Sentence.Part;

/** What the reading says beside the review's own sentences. */
public final class ReadingWords {
  private ReadingWords() {}

  /** How many notes were right, what the player thought, bias and steadiness in one line. */
  static String figures(ReadTake take, List<Sentence> said) {
    Summary s = take.review().summary();
    String score =
        said.stream()
            .filter(sentence -> sentence.part() == Part.SCORE)
            .map(Sentence::text)
            .findFirst()
            .orElseGet(() -> Texts.of("read.right", s.right(), take.review().steps().size()));
    String guess = take.guess().isPresent() ? " " + guess(take.guess().getAsInt(), s.right()) : "";
    return score + guess + timing(take.review());
  }

  private static String timing(Review review) {
    Summary s = review.summary();
    if (s.offMsMedian().isEmpty() || s.offMsSpread().isEmpty()) {
      return "";
    }
    long bias = Math.round(s.offMsMedian().getAsDouble());
    String key = bias == 0 ? "read.bias.none" : bias > 0 ? "read.bias.late" : "read.bias.early";
    long spread = Math.round(s.offMsSpread().getAsDouble());
    return " "
        + (review.clock() == Clock.MEASURED
            ? Texts.of(key, Math.abs(bias)) + Texts.of("read.steady", spread)
            : Texts.of("read.steady.alone", spread));
  }

  /** Drill, tempo and when its sound was kept; of a recording, the name of its file. */
  static String played(ReadTake take) {
    String drill =
        Texts.of(
            "read.played",
            DrillWords.place(take.drill()),
            Texts.plain(take.drill().pulse().tempo()));
    Optional<String> from =
        take.recording().isPresent()
            ? take.take().map(file -> file.getFileName().toString())
            : take.take().flatMap(ReadingWords::kept);
    return from.map(words -> Texts.of("read.played.from", drill, words)).orElse(drill);
  }

  private static Optional<String> kept(Path file) {
    try {
      Instant at = Files.getLastModifiedTime(file).toInstant();
      return Optional.of(Texts.date("read.date", at.atZone(ZoneId.systemDefault())));
    } catch (IOException e) {
      // the take was moved since: then its date is not known
      return Optional.empty();
    }
  }

  /** A round beside others: its tempo, how many were right, how steady. */
  static String round(ReadingModel.Round round) {
    Review review = round.take().review();
    Summary s = review.summary();
    String steady =
        s.offMsSpread().isPresent()
            ? Texts.of("read.round.steady", Math.round(s.offMsSpread().getAsDouble()))
            : "";
    return Texts.of(
        "read.round",
        round.number(),
        Texts.plain(round.take().drill().pulse().tempo()),
        s.right(),
        review.steps().size(),
        steady);
  }

  static String guess(int guessed, int right) {
    return Texts.of(guessed == right ? "read.guess.same" : "read.guess", guessed, right);
  }

  /** A shift in close-up, in words. */
  public static String shift(CloseUp near) {
    String way =
        Texts.of(near.shift().planned().direction() == Direction.UP ? "read.up" : "read.down")
            + (near.rounds() > 1
                ? Texts.of("read.inRound", near.shift().planned().round() + 1)
                : "");
    String planned =
        Texts.of(
            "read.planned",
            way,
            Texts.ordinal(near.planned().string().number()),
            near.planned().fret(),
            Texts.ordinal(near.shift().planned().finger()));
    String heard =
        switch (near.shift().verdict()) {
          case MADE -> Texts.of("read.made");
          case MOVED ->
              Texts.of("read.moved", Texts.ordinal(near.shift().string().orElseThrow().number()));
          case MISSED -> Texts.of("read.missed");
          case UNHEARD -> Texts.of("read.unheard");
          case UNPLAYED -> Texts.of("read.unplayed");
        };
    String sure =
        near.shift().p().isPresent()
            ? Texts.of("read.sure", Math.round(100 * near.shift().p().getAsDouble()))
            : "";
    return planned + heard + sure + late(near);
  }

  private static String late(CloseUp near) {
    if (near.shift().lateMs().isEmpty() || near.shift().verdict() == ShiftVerdict.UNPLAYED) {
      return ".";
    }
    long ms = Milliseconds.rounded(near.shift().lateMs().getAsDouble());
    return Math.abs(ms) < 10
        ? Texts.of("read.inTime", PageWords.signed(ms))
        : Texts.of(ms > 0 ? "read.landedLate" : "read.landedEarly", Math.abs(ms));
  }
}
