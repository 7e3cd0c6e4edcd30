package neckway.desk.live;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import neckway.file.SettingsFile;

/**
 * How long it takes from the start of Java until the window has its content, on a virtual display
 * without a window manager, and how long the window stands there blank before that.
 *
 * <pre>FirstPaint JAR STARTS</pre>
 *
 * In place of the jar, an installed program may be named.
 */
public final class FirstPaint {
  private static final long LOOK_MILLIS = 8;
  private static final double MOST_SECONDS = 30;

  /** The text of the first screen has more dark pixels than this, a blank window has none. */
  private static final int LEAST_INKED = 3_000;

  /** A window that is there has more light pixels than this; the display without one has none. */
  private static final int LEAST_LIGHT = 100_000;

  private static final int LIGHT = 225;
  private static final int BYTES_PER_PIXEL = 4;

  private FirstPaint() {}

  /**
   * One start, seconds from the start of Java.
   *
   * @param shown the window was there, blank or not
   * @param painted it had its content
   */
  record Start(double shown, double painted) {}

  public static void main(String[] args) throws Exception {
    int starts = Integer.parseInt(args[1]);
    double[] painted = new double[starts];
    for (int i = 0; i < starts; i++) {
      Start start = start(Path.of(args[0]));
      painted[i] = start.painted();
      System.out.printf(
          "painted after %.2f s, blank for %.3f s before; load %s%n",
          start.painted(),
          start.painted() - start.shown(),
          Files.readString(Path.of("/proc/loadavg")).split(" ")[0]);
    }
    Arrays.sort(painted);
    System.out.printf("median %.2f s, least %.2f s%n", painted[starts / 2], painted[0]);
  }

  private static Start start(Path jar) throws Exception {
    Path folder = Files.createTempDirectory("first-paint");
    try (VirtualScreen screen =
        new VirtualScreen("1400x900x24", Files.createDirectory(folder.resolve("screen")))) {
      ProcessBuilder builder =
          new ProcessBuilder(command(jar))
              .redirectErrorStream(true)
              .redirectOutput(new File("/dev/null"));
      Path kept = Files.createDirectories(folder.resolve("config/neckway"));
      // else it is the very first start, which asks its questions in place of the first screen
      Files.writeString(
          kept.resolve("settings.json"), "{\"format\": \"" + SettingsFile.FORMAT + "\"}");
      builder.environment().put("DISPLAY", screen.display());
      builder.environment().put("HOME", folder.toString());
      builder.environment().put("XDG_CONFIG_HOME", folder.resolve("config").toString());
      builder.environment().put("XDG_DATA_HOME", folder.resolve("data").toString());
      long begun = System.nanoTime();
      Process window = builder.start();
      try {
        return watch(screen, begun);
      } finally {
        window.destroy();
        window.waitFor();
      }
    }
  }

  private static List<String> command(Path program) {
    String whole = program.toAbsolutePath().toString();
    if (!whole.endsWith(".jar")) {
      return List.of(whole);
    }
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    return List.of(java, "-Dprism.order=sw", "-jar", whole);
  }

  private static Start watch(VirtualScreen screen, long begun) throws Exception {
    OptionalDouble shown = OptionalDouble.empty();
    while (true) {
      byte[] pixels = screen.pixels();
      double now = (System.nanoTime() - begun) / 1e9;
      int light = 0;
      int inked = 0;
      for (int at = pixels.length % BYTES_PER_PIXEL; at + 2 < pixels.length; at += 4) {
        int green = pixels[at + 1] & 255;
        int blue = pixels[at] & 255;
        int red = pixels[at + 2] & 255;
        light += green > LIGHT ? 1 : 0;
        inked += green <= LIGHT && green + blue + red > 0 ? 1 : 0;
      }
      if (light > LEAST_LIGHT && shown.isEmpty()) {
        shown = OptionalDouble.of(now);
      }
      if (shown.isPresent() && inked > LEAST_INKED) {
        return new Start(shown.getAsDouble(), now);
      }
      if (now > MOST_SECONDS) {
        throw new IllegalStateException("no window with content after " + now + " s");
      }
      Thread.sleep(LOOK_MILLIS);
    }
  }
}
