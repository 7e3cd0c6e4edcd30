package neckway.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;

/** The part of a page that a benchmark writes: what stands between two marks. */
final class MarkedPart {
  private final Path page;
  private final String begin;
  private final String end;

  /**
   * @param mark the part begins after {@code <!-- mark -->} and ends before {@code <!-- /mark -->}
   */
  MarkedPart(Path page, String mark) {
    this.page = page;
    this.begin = "<!-- " + mark + " -->\n";
    this.end = "<!-- /" + mark + " -->";
  }

  /**
   * Writes it anew, below the date and the command that does so.
   *
   * @param bench the program
   * @param arguments as it is called
   */
  void write(Class<?> bench, String arguments, String text) throws IOException {
    String before = Files.readString(page);
    int from = before.indexOf(begin);
    int to = before.indexOf(end);
    if (from < 0 || to < from) {
      throw new IOException(page + " has no " + begin.strip() + " and " + end);
    }
    String command =
        """
        Written on %s by

            mvn -q test-compile exec:java -Dexec.mainClass=%s -Dexec.args="%s"

        """
            .formatted(LocalDate.now(), bench.getName(), arguments);
    Files.writeString(
        page, before.substring(0, from + begin.length()) + command + text + before.substring(to));
  }
}
