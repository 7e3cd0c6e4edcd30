package neckway.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every word in the window is in the bundle, and once. */
class TextsTests {
  private static final Path BUNDLE = Path.of("src/main/resources/neckway/desk/texts.properties");
  private static final Pattern ASKED = Pattern.compile("Texts\\.of\\(\\s*\"([^\"]+)\"\\s*[,)]");

  @Test
  void whatTheCodeAsksForIsThere() throws IOException {
    Properties bundle = new Properties();
    try (Reader reader = Files.newBufferedReader(BUNDLE)) {
      bundle.load(reader);
    }
    int asked = 0;
    try (Stream<Path> sources = Files.walk(Path.of("src/main/java/neckway/desk"))) {
      for (Path source : sources.filter(p -> p.toString().endsWith(".java")).toList()) {
        Matcher matcher = ASKED.matcher(Files.readString(source));
        while (matcher.find()) {
          assertThat(bundle).as(source.toString()).containsKey(matcher.group(1));
          asked++;
        }
      }
    }
    assertThat(asked).isGreaterThan(40);
  }

  @Test
  void noTextStandsThereTwice() throws IOException {
    List<String> keys =
        Files.readAllLines(BUNDLE).stream()
            .filter(line -> line.contains("=") && !line.startsWith("#"))
            .map(line -> line.substring(0, line.indexOf('=')).strip())
            .toList();
    assertThat(keys).doesNotHaveDuplicates();
  }

  @Test
  void valuesTakeTheirPlaces() {
    assertThat(Texts.of("problem.notes", 9, 8)).isEqualTo("notes per beat 9: give 1 to 8");
    assertThat(Texts.plain(80)).isEqualTo("80");
    assertThat(Texts.plain(80.55)).isIn("80.5", "80.6");
    assertThat(Texts.number(2)).isEqualTo("two");
    assertThat(Texts.number(12)).isEqualTo("12");
  }
}
