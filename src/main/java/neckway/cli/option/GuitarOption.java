package neckway.cli.option;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import neckway.drill.PlayableDrill;
import neckway.file.GuitarFile;
import neckway.file.GuitarLessons;
import neckway.neck.BadInput;
import neckway.string.GuitarProfile;
import neckway.string.Lesson;
import neckway.words.Wording;
import picocli.CommandLine.Option;

/** The guitar that is played. */
public final class GuitarOption {
  @Option(names = "--guitar", paramLabel = "FILE")
  private Path guitar;

  /** Takes in what earlier runs taught of the guitar. */
  public void takeIn() {
    if (guitar != null) {
      GuitarLessons.takeIn(guitar);
    }
  }

  /**
   * Keeps what a run taught of the guitar.
   *
   * @param err told in one line where that cannot be
   */
  public void keep(List<Lesson> lessons, PrintWriter err) {
    if (guitar == null) {
      return;
    }
    try {
      GuitarLessons.keep(guitar, lessons);
    } catch (BadInput e) {
      err.println("neckway: " + Wording.of("options.guitar.notKept", e.getMessage()));
    }
  }

  /** The guitar that a drill is played on, if one is named. */
  public Optional<GuitarProfile> guitar(PlayableDrill drill) {
    return Optional.ofNullable(guitar).map(file -> GuitarFile.read(file, drill.tuning()));
  }

  /** The profile's file, where one is named. */
  public Optional<Path> file() {
    return Optional.ofNullable(guitar);
  }
}
