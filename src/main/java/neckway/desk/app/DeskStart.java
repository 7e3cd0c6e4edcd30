package neckway.desk.app;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.application.Application;
import neckway.desk.Texts;
import neckway.neck.BadInput;

/** Opens the window and comes back when it is closed. */
public final class DeskStart {
  /** It warns of every start from one jar; held, since loggers that nobody holds are forgotten. */
  private static final Logger TOOLKIT = Logger.getLogger("javafx");

  private DeskStart() {}

  /**
   * Opens the window.
   *
   * @param drill a drill to begin with
   * @throws BadInput where there is no screen
   */
  public static void open(Optional<Path> drill) {
    if (!screenThere()) {
      throw noScreen(null);
    }
    TOOLKIT.setLevel(Level.SEVERE);
    try {
      String[] given = drill.map(file -> new String[] {file.toString()}).orElse(new String[0]);
      Application.launch(DeskApp.class, given);
    } catch (UnsupportedOperationException e) {
      throw noScreen(e);
    }
  }

  private static boolean screenThere() {
    String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    boolean otherwise = system.contains("win") || system.contains("mac");
    String display = System.getenv("DISPLAY");
    return otherwise || display != null && !display.isBlank();
  }

  private static BadInput noScreen(Exception cause) {
    return new BadInput(Texts.of("problem.no-screen"), cause);
  }
}
