package neckway.desk.app;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.application.Application;
import neckway.desk.Language;
import neckway.desk.Texts;
import neckway.desk.open.LogChoice;
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
   * @param log where runs are kept
   * @throws BadInput where there is no screen
   */
  public static void open(Optional<Path> drill, LogChoice log) {
    if (!screenThere()) {
      throw noScreen(null);
    }
    FirstClasses.load();
    TOOLKIT.setLevel(Level.SEVERE);
    try {
      List<String> given = new ArrayList<>();
      drill.ifPresent(file -> given.add(file.toString()));
      log.folder().ifPresent(folder -> given.add(named(DeskApp.DATA, folder.toString())));
      log.player().ifPresent(name -> given.add(named(DeskApp.PLAYER, name)));
      if (!log.keeps()) {
        given.add(named(DeskApp.NO_LOG, "yes"));
      }
      Application.launch(DeskApp.class, given.toArray(String[]::new));
    } catch (UnsupportedOperationException e) {
      throw noScreen(e);
    }
  }

  private static String named(String name, String value) {
    return "--" + name + "=" + value;
  }

  private static boolean screenThere() {
    String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
    boolean otherwise = system.contains("win") || system.contains("mac");
    String display = System.getenv("DISPLAY");
    return otherwise || display != null && !display.isBlank();
  }

  private static BadInput noScreen(Exception cause) {
    Texts.speak(Language.spoken());
    return new BadInput(Texts.of("problem.no-screen"), cause);
  }
}
