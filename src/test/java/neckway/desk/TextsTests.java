package neckway.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import neckway.words.Bundles;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every word in the window is in the bundle, and once; and in German too. */
class TextsTests {
  private static final Path BUNDLE = Path.of("src/main/resources/neckway/desk/texts.properties");
  private static final Path GERMAN = Path.of("src/main/resources/neckway/desk/texts_de.properties");
  private static final Pattern PLACEHOLDER = Pattern.compile("\\{\\d}");
  private static final Pattern ASKED = Pattern.compile("Texts\\.of\\(\\s*\"([^\"]+)\"\\s*[,)]");

  @Test
  void whatTheCodeAsksForIsThere() throws IOException {
    Properties bundle = Bundles.read(BUNDLE);
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
  void germanHasTheSameTextsWithTheSameValues() throws IOException {
    Properties english = Bundles.read(BUNDLE);
    Properties german = Bundles.read(GERMAN);
    assertThat(german.stringPropertyNames())
        .containsExactlyInAnyOrderElementsOf(english.stringPropertyNames());
    for (String key : english.stringPropertyNames()) {
      String ours = english.getProperty(key);
      String theirs = german.getProperty(key);
      assertThat(theirs).as(key).isNotBlank();
      assertThat(placeholders(theirs)).as(key).isEqualTo(placeholders(ours));
      // sentences are joined: a blank at an end belongs to the text
      assertThat(theirs.startsWith(" ")).as(key).isEqualTo(ours.startsWith(" "));
      assertThat(theirs.endsWith(" ")).as(key).isEqualTo(ours.endsWith(" "));
    }
  }

  private static List<String> placeholders(String text) {
    return PLACEHOLDER.matcher(text).results().map(MatchResult::group).sorted().toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {"texts.properties", "texts_de.properties"})
  void noTextStandsThereTwice(String file) throws IOException {
    assertThat(Bundles.keys(BUNDLE.resolveSibling(file))).doesNotHaveDuplicates();
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
