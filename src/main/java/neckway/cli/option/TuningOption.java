package neckway.cli.option;

import neckway.neck.Tuning;
import picocli.CommandLine.Option;

/** The open strings, where no drill says them. */
public final class TuningOption {
  @Option(
      names = "--tuning",
      paramLabel = "NOTES",
      description =
          "The open strings from the lowest, such as \"D2 A2 D3 G3 B3 E4\" or DADGBE, or a name, such"
              + " as \"drop D\" or \"seven-string standard\". Left out: standard.")
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
