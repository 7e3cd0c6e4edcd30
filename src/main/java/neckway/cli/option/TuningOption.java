package neckway.cli.option;

import neckway.neck.Tuning;
import picocli.CommandLine.Option;

/** The open strings, where no drill says them. */
public final class TuningOption {
  @Option(names = "--tuning", paramLabel = "NOTES")
  private String tuning;

  /**
   * The tuning, standard where none was given.
   *
   * @throws neckway.neck.BadInput naming the option and the mend
   */
  public Tuning tuning() {
    return tuning == null
        ? Tuning.STANDARD
        : DrillOptions.option("--tuning", tuning, Tuning::parse);
  }
}
