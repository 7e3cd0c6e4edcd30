package neckway.cli.option;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.Optional;
import neckway.drill.PlayableDrill;
import neckway.folder.TakeJob;
import neckway.log.RunKeeper;
import neckway.neck.BadInput;
import neckway.review.Review;
import neckway.words.Wording;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Whether a recording's review is kept in the log. */
public final class KeepOptions {
  @Mixin private DataOption data = new DataOption();

  @Option(names = "--log")
  private boolean asked;

  @Option(names = "--when", paramLabel = "TIME")
  private String when;

  /** Whether the review is to be kept. */
  public boolean isAsked() {
    if (when != null && !asked) {
      throw new BadInput(Wording.of("options.when"));
    }
    return asked;
  }

  /**
   * Keeps it, and says so in one line.
   *
   * @throws BadInput where that cannot be done
   */
  public void keep(
      PlayableDrill drill, Review review, Path take, Optional<Path> guitar, PrintWriter err) {
    OffsetDateTime played = when == null ? RunKeeper.changed(take) : RunKeeper.time("--when", when);
    keep(drill, review, take, guitar, played, err);
  }

  /** The same of one of several; when it was played is in its list. */
  public void keep(
      TakeJob job, PlayableDrill drill, Review review, Optional<Path> guitar, PrintWriter err) {
    OffsetDateTime played =
        job.when()
            .map(time -> RunKeeper.time(job.file() + ": when", time))
            .orElseGet(() -> RunKeeper.changed(job.file()));
    keep(drill, review, job.file(), job.guitar().or(() -> guitar), played, err);
  }

  private void keep(
      PlayableDrill drill,
      Review review,
      Path take,
      Optional<Path> guitar,
      OffsetDateTime played,
      PrintWriter err) {
    RunKeeper keeper =
        new RunKeeper(data.folder(), data.player(), line -> err.println("neckway: " + line));
    keeper
        .keep(
            RunKeeper.Kind.PRACTICE,
            drill,
            review,
            played,
            RunKeeper.Source.TAKE,
            Optional.of(take),
            guitar)
        .ifPresentOrElse(
            id -> err.println("neckway: " + Wording.of("options.kept", id)),
            () -> err.println("neckway: " + Wording.of("options.kept.nothing")));
  }
}
