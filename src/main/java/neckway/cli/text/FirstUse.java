package neckway.cli.text;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import neckway.file.RoundTripFile;

/** What a player is told once, before the first live run on a machine. */
public final class FirstUse {
  private static final String CAUTIONS =
      "Before the first run: turn the volume down and bring it up slowly, play yourself warm at an"
          + " easy tempo, and rest when your hands ask for it.";

  private FirstUse() {}

  /** Prints the cautions if they were never printed here before. */
  public static void cautions(PrintWriter out) {
    Path told = new RoundTripFile().path().resolveSibling("cautions-told");
    if (Files.exists(told)) {
      return;
    }
    Wrapped.print(out, CAUTIONS);
    try {
      Files.createDirectories(told.getParent());
      Files.createFile(told);
    } catch (IOException e) {
      // they are told again next time, which does no harm
    }
  }
}
