package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What the README promises is what the program does. */
class ReadmeTests {
  private static final String JAR = "java -jar target/neckway.jar ";
  private static final String FENCE = "```";

  /** What the README shows is printed; only milliseconds may have changed since. */
  @Test
  void theFirstCommandPrintsWhatIsShown() throws IOException {
    String readme = Files.readString(Path.of("README.md"));
    String command = readme.lines().filter(line -> line.contains(JAR + "review")).findFirst().get();
    String shown = readme.split(FENCE)[1];
    StringWriter out = new StringWriter();
    int status =
        Main.run(
            new PrintWriter(out),
            new PrintWriter(new StringWriter()),
            command.substring(command.indexOf(JAR) + JAR.length()).split(" "));
    assertThat(status).isZero();
    assertThat(withoutMilliseconds(out.toString())).isEqualTo(withoutMilliseconds(shown));
  }

  @Test
  void everyCommandThatIsThereIsShownAndNoOther() throws IOException {
    List<String> shown =
        Files.readAllLines(Path.of("README.md")).stream()
            .filter(line -> line.startsWith("    " + JAR))
            .map(line -> line.strip().substring(JAR.length()).split(" ")[0])
            .distinct()
            .toList();
    assertThat(shown)
        .containsExactlyInAnyOrder(
            "map",
            "desk",
            "listen",
            "review",
            "calibrate",
            "compare",
            "report",
            "log",
            "reach",
            "plan",
            "warmup",
            "vamp",
            "sheet",
            "tune",
            "perform");
  }

  private static String withoutMilliseconds(String text) {
    return Arrays.stream(text.strip().split("\n"))
        .map(line -> line.strip().startsWith("ms ") ? "ms" : line)
        .collect(Collectors.joining(" "))
        .replaceAll("\\s+", " ")
        .replaceAll("\\d+ ms", "# ms");
  }
}
