package neckway.file.sound;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/** Runs sound tools of other makers (Debian packages sox, flac, lame, vorbis-tools, ffmpeg). */
public final class Tools {
  private Tools() {}

  /** Whether a program is on the path. */
  public static boolean present(String name) {
    for (String folder : System.getenv().getOrDefault("PATH", "").split(":")) {
      if (Files.isExecutable(Path.of(folder, name))) {
        return true;
      }
    }
    return false;
  }

  /** Runs a program; where it is not installed the test is skipped and says so. */
  public static void run(Path folder, String... command) throws IOException, InterruptedException {
    Assumptions.assumeTrue(present(command[0]), command[0] + " is not installed: not checked");
    Path log = Files.createTempFile("neckway-tool", ".log");
    try {
      Process process =
          new ProcessBuilder(List.of(command))
              .directory(folder.toFile())
              .redirectErrorStream(true)
              .redirectOutput(log.toFile())
              .start();
      boolean ended = process.waitFor(60, TimeUnit.SECONDS);
      process.destroyForcibly();
      if (!ended || process.exitValue() != 0) {
        throw new IOException(
            String.join(" ", command)
                + (ended ? ": " : " did not end: ")
                + new String(Files.readAllBytes(log), StandardCharsets.UTF_8));
      }
    } finally {
      Files.delete(log);
    }
  }
}
