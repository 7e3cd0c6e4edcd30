package neckway.cli.text;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import neckway.file.RoundTripFile;
import neckway.words.Wording;

/** What a player is told once, before the first live run on a machine. */
public final class FirstUse {
  private FirstUse() {}

  /** Prints the cautions if they were never printed here before. */
  public static void cautions(PrintWriter out) {
    Path told = new RoundTripFile().path().resolveSibling("cautions-told");
    if (Files.exists(told)) {
      return;
    }
    Wrapped.print(out, Wording.of("terminal.listen.cautions"));
    try {
      Files.createDirectories(told.getParent());
      Files.createFile(told);
    } catch (IOException e) {
      // they are told again next time, which does no harm
    }
  }
}
