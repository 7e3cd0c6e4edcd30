package neckway.cli;

import java.nio.file.Path;
import neckway.file.Drill;
import neckway.file.GuitarFile;
import neckway.follow.RunPlan;
import picocli.CommandLine.Option;

/** The guitar that is played. */
final class GuitarOption {
  @Option(
      names = "--guitar",
      paramLabel = "FILE",
      description =
          "The guitar as calibrate learnt it; with it, the strings on which the shifts were made"
              + " can be heard.")
  private Path guitar;

  /** What a run of a drill is held against, on this guitar if one is named. */
  RunPlan plan(Drill drill) {
    RunPlan plan =
        new RunPlan(drill.route(), drill.pulse(), drill.key(), drill.tuning(), drill.frets());
    return guitar == null ? plan : plan.on(GuitarFile.read(guitar, drill.tuning()));
  }
}
