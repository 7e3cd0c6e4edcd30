package neckway.desk.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import neckway.Await;
import neckway.desk.Texts;
import neckway.file.DrillFile;
import neckway.file.SettingsFile;
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
@Timeout(value = 300, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class FileDialogTests {
  private static final double PATIENCE_SECONDS = 60;

  /** Keys that had no effect within this time are struck again. */
  private static final double AGAIN_SECONDS = 15;

  @TempDir Path folder;
  private VirtualScreen screen;
  private Process desk;

  @BeforeEach
  void open() throws Exception {
    boolean there =
        List.of(System.getenv().getOrDefault("PATH", "").split(":")).stream()
            .anyMatch(place -> Files.isExecutable(Path.of(place, "xdotool")));
    assumeTrue(there, "xdotool is not installed: the system's dialogs are not tried");
    screen = new VirtualScreen("1280x800x24", Files.createDirectory(folder.resolve("screen")));
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
    // else it is the very first start, which asks its questions before
    Path kept = Files.createDirectories(folder.resolve("config/neckway"));
    Files.writeString(
        kept.resolve("settings.json"), "{\"format\": \"" + SettingsFile.FORMAT + "\"}");
    start.redirectErrorStream(true).redirectOutput(folder.resolve("log").toFile());
    desk = start.start();
    focus("Neckway");
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

  /** What the robot prints; nothing where it could not do what it was told. */
  private Optional<String> robot(String... words) throws Exception {
    List<String> command = new ArrayList<>(List.of("xdotool"));
    command.addAll(List.of(words));
    ProcessBuilder start = new ProcessBuilder(command);
    start.environment().put("DISPLAY", screen.display());
    Process robot = start.redirectErrorStream(true).start();
    String printed = new String(robot.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return robot.waitFor() == 0 ? Optional.of(printed.strip()) : Optional.empty();
  }

  private void does(String... words) throws Exception {
    assertThat(robot(words)).as(String.join(" ", words)).isPresent();
    awaitStandstill();
  }

  /** No window manager tells when a window has taken something in; its picture does. */
  private void awaitStandstill() throws Exception {
    AtomicLong before = new AtomicLong(screen.picture());
    Await.steadily(
        "the picture stands still",
        PATIENCE_SECONDS,
        () -> {
          long now = screen.picture();
          return before.getAndSet(now) == now;
        });
  }

  /** The number of the window with this title, if there is one. */
  private Optional<String> number(String title) throws Exception {
    return robot("search", "--onlyvisible", "--name", "^" + title)
        .flatMap(found -> found.lines().filter(line -> line.matches("[0-9]+")).findFirst());
  }

  /** How the program does, for a failure. */
  private String program() throws IOException {
    return (desk.isAlive() ? "the program runs" : "the program ended with " + desk.exitValue())
        + "; it said: "
        + Files.readString(folder.resolve("log"));
  }

  private boolean isGone(String title) throws Exception {
    return number(title).isEmpty();
  }

  /** Gives the keys to a window, once it is there and drawn. */
  private void focus(String title) throws Exception {
    Await.until(
        "a window named " + title + " is there",
        PATIENCE_SECONDS,
        () -> !isGone(title),
        this::program);
    awaitStandstill();
    Await.until(
        title + " has the keys",
        PATIENCE_SECONDS,
        () -> {
          Optional<String> window = number(title);
          return window.isPresent()
              && robot("windowfocus", window.get()).isPresent()
              && robot("getwindowfocus", "-f").equals(window);
        });
    awaitStandstill();
  }

  private void dialog(String key, String titleKey, Path typed) throws Exception {
    String title = Texts.of(titleKey).replace("…", "");
    // a key may come before the window takes keys: then no dialog opens, and it is struck again
    Await.until(
        "the dialog " + title + " opens",
        PATIENCE_SECONDS,
        () -> {
          focus("Neckway");
          does("key", key);
          return Await.within(AGAIN_SECONDS, () -> !isGone(title));
        });
    Await.until(
        "the dialog " + title + " closes",
        PATIENCE_SECONDS,
        () -> {
          focus(title);
          does("key", "ctrl+a");
          long before = screen.picture();
          does("type", "--delay", "40", typed.toString());
          assertThat(screen.picture()).as("what is typed is seen").isNotEqualTo(before);
          does("key", "Return");
          return Await.within(AGAIN_SECONDS, () -> isGone(title));
        });
  }

  private static String key(Path drill) {
    return DrillFile.read(drill).key().toString();
  }

  @Test
  void drillIsSavedAndAnotherOpenedByTheSystemsOwnDialogs() throws Exception {
    dialog("ctrl+s", "choosing.save", folder.resolve("mine"));
    Path mine = folder.resolve("mine.json");
    Await.until("the drill is written", PATIENCE_SECONDS, () -> Files.exists(mine));
    assertThat(key(mine)).isEqualTo("A major");
    Path other = folder.resolve("other.json");
    Files.writeString(
        other,
        "{\"format\":\"neckway-drill/1\",\"key\":\"C major\","
            + "\"route\":{\"shapes\":[\"major\",\"dorian\"]}}");
    dialog("ctrl+o", "choosing.open", other);
    Path again = folder.resolve("again.json");
    dialog("ctrl+s", "choosing.save", again);
    Await.until("the drill is written", PATIENCE_SECONDS, () -> Files.exists(again));
    assertThat(key(again)).isEqualTo("C major");
  }
}
