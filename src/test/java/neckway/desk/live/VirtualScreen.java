package neckway.desk.live;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Assumptions;

/** A display without a screen (Debian package xvfb); where it is missing the test is skipped. */
final class VirtualScreen implements AutoCloseable {
  private final Process server;
  private final String display;
  private final Path pixels;

  /**
   * Starts it.
   *
   * @param size as "1280x800x24": width, height, bits of colour
   * @param folder empty; what is on the screen is kept there
   */
  VirtualScreen(String size, Path folder) throws IOException {
    boolean there =
        List.of(System.getenv().getOrDefault("PATH", "").split(":")).stream()
            .anyMatch(place -> Files.isExecutable(Path.of(place, "Xvfb")));
    Assumptions.assumeTrue(there, "Xvfb is not installed: the window is not checked on a display");
    server =
        new ProcessBuilder(
                List.of(
                    "Xvfb",
                    "-noreset",
                    "-displayfd",
                    "1",
                    "-nolisten",
                    "tcp",
                    "-screen",
                    "0",
                    size,
                    "-fbdir",
                    folder.toString()))
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    BufferedReader out =
        new BufferedReader(new InputStreamReader(server.getInputStream(), StandardCharsets.UTF_8));
    String number = out.readLine();
    if (number == null) {
      throw new IOException("Xvfb did not start");
    }
    display = ":" + number.strip();
    pixels = folder.resolve("Xvfb_screen0");
  }

  String display() {
    return display;
  }

  /** A checksum of what is on the screen now. */
  long picture() throws IOException {
    CRC32 sum = new CRC32();
    sum.update(Files.readAllBytes(pixels));
    return sum.getValue();
  }

  /** What is on the screen now, four bytes a pixel behind a head: blue, green, red, nothing. */
  byte[] pixels() throws IOException {
    return Files.readAllBytes(pixels);
  }

  @Override
  public void close() {
    server.destroy();
  }
}
