package neckway.desk.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import neckway.desk.Texts;
import neckway.file.DrillFile;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The system's own dialogs (those of GTK) on a virtual display, opened by the window's keys, with a
 * path typed into them by xdotool. The window is a process of its own, as the player starts it.
 */
@Tag("live")
@Timeout(value = 150, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class FileDialogTests {
  private static final long PATIENCE_SECONDS = 20;
  private static final int TRIES = 3;

  @TempDir Path folder;
  private VirtualScreen screen;
  private Process desk;

  @BeforeEach
  void open() throws Exception {
    boolean there =
        List.of(System.getenv().getOrDefault("PATH", "").split(":")).stream()
            .anyMatch(place -> Files.isExecutable(Path.of(place, "xdotool")));
    assumeTrue(there, "xdotool is not installed: the system's dialogs are not tried");
    screen = new VirtualScreen("1280x800x24");
    ProcessBuilder start =
        new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Dprism.order=sw",
            "-Duser.home=" + folder,
            "-cp",
            System.getProperty("java.class.path"),
            "neckway.cli.Main",
            "desk");
    start.environment().put("DISPLAY", screen.display());
    start.environment().put("HOME", folder.toString());
    start.environment().put("XDG_CONFIG_HOME", folder.resolve("config").toString());
    start.redirectErrorStream(true).redirectOutput(folder.resolve("log").toFile());
    desk = start.start();
    find("Neckway");
  }

  @AfterEach
  void close() throws Exception {
    if (desk != null) {
      desk.destroy();
      if (!desk.waitFor(5, TimeUnit.SECONDS)) {
        desk.destroyForcibly().waitFor();
      }
    }
    if (screen != null) {
      screen.close();
    }
  }

  private Process robot(String... words) throws IOException {
    List<String> command = new ArrayList<>(List.of("xdotool"));
    command.addAll(List.of(words));
    ProcessBuilder start = new ProcessBuilder(command);
    start.environment().put("DISPLAY", screen.display());
    return start.redirectErrorStream(true).start();
  }

  private void does(String... words) throws Exception {
    Process robot = robot(words);
    String said = new String(robot.getInputStream().readAllBytes());
    assertThat(robot.waitFor()).as(said).isZero();
    // no window manager tells when the window has taken it
    Thread.sleep(500);
  }

  /** The number of the window with this title, or nothing where there is none. */
  private String number(String title) throws Exception {
    Process robot = robot("search", "--onlyvisible", "--name", "^" + title);
    String found = new String(robot.getInputStream().readAllBytes()).strip();
    robot.waitFor();
    return found.lines().filter(line -> line.matches("[0-9]+")).findFirst().orElse("");
  }

  private interface Check {
    boolean holds() throws Exception;
  }

  private static void await(String what, Check check) throws Exception {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
    while (!check.holds()) {
      assertThat(System.nanoTime()).as(what).isLessThan(end);
      Thread.sleep(100);
    }
  }

  private String find(String title) throws Exception {
    await("a window named " + title, () -> !number(title).isEmpty());
    // it is there before it takes keys
    Thread.sleep(1_500);
    return number(title);
  }

  private void dialog(String key, String titleKey, Path typed) throws Exception {
    String title = Texts.of(titleKey).replace("…", "");
    // a key may come before the window takes keys: then no dialog opens, and it is pressed again
    for (int tries = 0; tries < TRIES && number(title).isEmpty(); tries++) {
      does("windowfocus", find("Neckway"));
      does("key", key);
      for (int waits = 0; waits < 50 && number(title).isEmpty(); waits++) {
        Thread.sleep(100);
      }
    }
    does("windowfocus", find(title));
    does("key", "ctrl+a");
    does("type", "--delay", "40", typed.toString());
    does("key", "Return");
    await("the dialog closes", () -> number(title).isEmpty());
  }

  private static String key(Path drill) {
    return DrillFile.read(drill).key().toString();
  }

  @Test
  void drillIsSavedAndAnotherOpenedByTheSystemsOwnDialogs() throws Exception {
    dialog("ctrl+s", "choosing.save", folder.resolve("mine"));
    Path mine = folder.resolve("mine.json");
    await("the drill is written", () -> Files.exists(mine));
    assertThat(key(mine)).isEqualTo("A major");
    Path other = folder.resolve("other.json");
    Files.writeString(
        other,
        "{\"format\":\"neckway-drill/1\",\"key\":\"C major\","
            + "\"route\":{\"shapes\":[\"major\",\"dorian\"]}}");
    dialog("ctrl+o", "choosing.open", other);
    Path again = folder.resolve("again.json");
    dialog("ctrl+s", "choosing.save", again);
    await("the drill is written", () -> Files.exists(again));
    assertThat(key(again)).isEqualTo("C major");
  }
}
