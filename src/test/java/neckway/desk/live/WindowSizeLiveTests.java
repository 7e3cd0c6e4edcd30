package neckway.desk.live;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import neckway.Await;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The size in which the window opens on a display without a window manager to maximise it. */
@Tag("live")
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class WindowSizeLiveTests {
  private static final double PATIENCE_SECONDS = 60;

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "1280x800, 1280, 800, 1280x800",
    "1280x800, 1100, 700, 1100x700",
    "1280x800, 1900, 1000, 1280x800",
    "1920x1080, 1400, 900, 1400x900"
  })
  void isTheOneThatWasKeptAsFarAsTheScreenHasRoom(
      String screenSize, int keptWidth, int keptHeight, String opened) throws Exception {
    assumeTrue(
        List.of(System.getenv().getOrDefault("PATH", "").split(":")).stream()
            .anyMatch(place -> Files.isExecutable(Path.of(place, "xdotool"))),
        "xdotool is not installed: the window's size is not measured");
    Path settings = folder.resolve("config/neckway/settings.json");
    Files.createDirectories(settings.getParent());
    Files.writeString(
        settings,
        "{\"format\":\"neckway-settings/1\",\"width\":"
            + keptWidth
            + ",\"height\":"
            + keptHeight
            + "}");
    Path pixels = Files.createDirectory(folder.resolve("screen"));
    try (VirtualScreen screen = new VirtualScreen(screenSize + "x24", pixels)) {
      Process desk = start(screen);
      try {
        Await.steadily(
            "the window is " + opened, PATIENCE_SECONDS, () -> size(screen).equals(opened));
      } finally {
        desk.destroy();
        if (!desk.waitFor(5, TimeUnit.SECONDS)) {
          desk.destroyForcibly().waitFor();
        }
      }
    }
  }

  private Process start(VirtualScreen screen) throws Exception {
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
    return start.start();
  }

  /** Width and height as the display has them; empty where there is no such window yet. */
  private static String size(VirtualScreen screen) throws Exception {
    ProcessBuilder start =
        new ProcessBuilder(
            "xdotool", "search", "--onlyvisible", "--name", "^Neckway$", "getwindowgeometry");
    start.environment().put("DISPLAY", screen.display());
    Process robot = start.redirectErrorStream(true).start();
    String said = new String(robot.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    robot.waitFor();
    return said.lines()
        .filter(line -> line.contains("Geometry:"))
        .map(line -> line.substring(line.indexOf(':') + 1).strip())
        .findFirst()
        .orElse("");
  }
}
