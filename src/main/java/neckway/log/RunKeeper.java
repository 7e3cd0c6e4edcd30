package neckway.log;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import neckway.calls.CalledRun;
import neckway.drill.PlayableDrill;
import neckway.file.CallsFile;
import neckway.file.ReviewFile;
import neckway.neck.BadInput;
import neckway.review.Review;
import neckway.review.StepVerdict;
import neckway.words.Wording;

/** Keeps runs in the log as they end. */
public final class RunKeeper {
  /** What a run was heard from. */
  public enum Source {
    /** An input, as it was played. */
    LIVE,
    /** A recording. */
    TAKE
  }

  /** What a run was played to. */
  public enum Kind {
    /** The click, or nothing. */
    PRACTICE,
    /** A backing. */
    BACKING,
    /** Calls of the next switch. */
    CALLS
  }

  private final Path folder;
  private final Optional<String> player;
  private final Consumer<String> complaints;

  /**
   * @param folder where the log lies; it is made where it is not there
   * @param player who played, where that has a name
   * @param complaints told in one line where the log was damaged
   */
  public RunKeeper(Path folder, Optional<String> player, Consumer<String> complaints) {
    this.folder = folder;
    this.player = player;
    this.complaints = complaints;
  }

  /**
   * Keeps a run in which a step was played.
   *
   * @param kind what it was played to
   * @param take where its sound is, if that was saved
   * @param guitar the profile of the guitar, if it was learnt
   * @return the run's id; empty where no step was played, or the run is there already
   * @throws BadInput where it cannot be stored
   */
  public Optional<String> keep(
      Kind kind,
      PlayableDrill drill,
      Review review,
      OffsetDateTime when,
      Source source,
      Optional<Path> take,
      Optional<Path> guitar) {
    return keep(kind, drill, review, Optional.empty(), when, source, take, guitar);
  }

  /**
   * The same of a run in which switches were called.
   *
   * @param called the calls and what became of them
   * @param review of the run
   */
  public Optional<String> keepCalled(
      CalledRun called,
      Review review,
      OffsetDateTime when,
      Optional<Path> take,
      Optional<Path> guitar) {
    return keep(
        Kind.CALLS, called.drill(), review, Optional.of(called), when, Source.LIVE, take, guitar);
  }

  private Optional<String> keep(
      Kind kind,
      PlayableDrill drill,
      Review review,
      Optional<CalledRun> called,
      OffsetDateTime when,
      Source source,
      Optional<Path> take,
      Optional<Path> guitar) {
    if (review.steps().stream().allMatch(s -> s.verdict() == StepVerdict.UNPLAYED)) {
      return Optional.empty();
    }
    ObjectNode about = JsonNodeFactory.instance.objectNode();
    guitar.ifPresentOrElse(
        file -> about.put("guitar", file.toAbsolutePath().toString()),
        () -> about.putNull("guitar"));
    about.put("source", source.name().toLowerCase(Locale.ROOT));
    if (kind != Kind.PRACTICE) {
      about.put("kind", kind.name().toLowerCase(Locale.ROOT));
    }
    player.ifPresent(name -> about.put("player", name));
    take.ifPresent(file -> about.put("take", file.toAbsolutePath().toString()));
    String name = take.map(Path::getFileName).map(Path::toString).orElse("");
    try (RunLog log = RunLog.open(folder, complaints)) {
      ObjectNode json =
          called
              .map(calls -> CallsFile.review(review, name, calls))
              .orElseGet(() -> ReviewFile.toJson(review, name, drill));
      return log.keep(when, json, about);
    }
  }

  /**
   * Keeps a warm-up, which is not practice: nothing of it counts as open or fading.
   *
   * @return its id
   * @throws BadInput where it cannot be stored
   */
  public String keepWarmUp(OffsetDateTime when) {
    ObjectNode about = JsonNodeFactory.instance.objectNode();
    about.put("kind", "warm-up");
    about.put("source", Source.LIVE.name().toLowerCase(Locale.ROOT));
    player.ifPresent(name -> about.put("player", name));
    try (RunLog log = RunLog.open(folder, complaints)) {
      return log.keepWithoutReview(when, about);
    }
  }

  /**
   * When a file was last changed, to the second.
   *
   * @throws BadInput where it cannot be looked at
   */
  public static OffsetDateTime changed(Path file) {
    try {
      return Files.getLastModifiedTime(file)
          .toInstant()
          .truncatedTo(ChronoUnit.SECONDS)
          .atZone(ZoneId.systemDefault())
          .toOffsetDateTime();
    } catch (IOException e) {
      throw new BadInput(Wording.of("machine.log.looked", file), e);
    }
  }

  /**
   * A time as ISO 8601 writes it; without an offset it is of here.
   *
   * @param name of the option, as complaints begin
   * @throws BadInput where it is none
   */
  public static OffsetDateTime time(String name, String text) {
    return RunLine.time(text, name);
  }
}
