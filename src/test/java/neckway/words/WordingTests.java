package neckway.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each sentence is in the bundle of each language, with the same places for values. */
class WordingTests {
  private static final Path BUNDLES = Path.of("src/main/resources/neckway/words");
  private static final Pattern PLACE = Pattern.compile("\\{\\d}");
  private static final Pattern KEY = Pattern.compile("\"([a-z]\\w*(?:\\.\\w+)*)\\.?\"");

  private static final Pattern ASKED =
      Pattern.compile("Wording\\s*\\.(of|counted)\\(\\s*\"([^\"]+)\"\\s*[,)]");

  /** German has a point where English has none, and the other way round. */
  private static final Set<String> WRITTEN_OTHERWISE = Set.of("number.point", "ordinal.figures");

  @AfterEach
  void back() {
    Wording.speak(Tongue.ENGLISH);
  }

  /** The names of the bundles. */
  static Stream<String> bundles() throws IOException {
    try (Stream<Path> files = Files.list(BUNDLES)) {
      return files
          .map(file -> file.getFileName().toString())
          .filter(file -> file.endsWith("_de.properties"))
          .map(file -> file.replace("_de.properties", ""))
          .toList()
          .stream();
    }
  }

  private static Properties read(String name) throws IOException {
    return Bundles.read(BUNDLES.resolve(name + ".properties"));
  }

  @ParameterizedTest
  @MethodSource("bundles")
  void germanHasTheSameSentencesWithTheSameValues(String name) throws IOException {
    Properties english = read(name);
    Properties german = read(name + "_de");
    assertThat(german.stringPropertyNames())
        .containsExactlyInAnyOrderElementsOf(english.stringPropertyNames());
    for (String key : english.stringPropertyNames()) {
      String ours = english.getProperty(key);
      String theirs = german.getProperty(key);
      assertThat(theirs).as(key).isNotBlank();
      assertThat(places(theirs)).as(key).isEqualTo(places(ours));
      assertThat(theirs.startsWith(" ")).as(key).isEqualTo(ours.startsWith(" "));
      assertThat(theirs).as(key).doesNotEndWith(" ");
      if (!WRITTEN_OTHERWISE.contains(key)) {
        assertThat(theirs.endsWith(".")).as(key).isEqualTo(ours.endsWith("."));
      }
    }
  }

  /** A German sentence may need a value twice; which ones it has counts. */
  private static Set<String> places(String text) {
    return PLACE.matcher(text).results().map(MatchResult::group).collect(Collectors.toSet());
  }

  @ParameterizedTest
  @MethodSource("bundles")
  void noSentenceStandsThereTwice(String name) throws IOException {
    for (String file : List.of(name + ".properties", name + "_de.properties")) {
      assertThat(Bundles.keys(BUNDLES.resolve(file))).as(file).doesNotHaveDuplicates();
    }
  }

  /** The beginning of a key names its bundle. */
  @ParameterizedTest
  @MethodSource("bundles")
  void aSentenceIsFoundByTheBeginningOfItsKey(String name) throws IOException {
    for (String key : read(name).stringPropertyNames()) {
      assertThat(Tongue.ENGLISH.template(key)).as(key).isEqualTo(read(name).getProperty(key));
    }
  }

  /**
   * By the names in the code: of a longer name it has the beginning, and an ending from a choice.
   */
  @Test
  void everySentenceIsAskedForSomewhere() throws IOException {
    Set<String> named = new TreeSet<>();
    for (Path source : sources()) {
      Matcher matcher = KEY.matcher(Files.readString(source));
      while (matcher.find()) {
        named.add(matcher.group(1));
      }
    }
    List<String> idle = new ArrayList<>();
    for (String key : allKeys()) {
      boolean begun = named.contains(key);
      for (int dot = key.indexOf('.'); dot > 0; dot = key.indexOf('.', dot + 1)) {
        begun |= named.contains(key.substring(0, dot));
      }
      if (!begun) {
        idle.add(key);
      }
    }
    assertThat(idle).isEmpty();
  }

  @Test
  void whatTheCodeAsksForIsThere() throws IOException {
    Set<String> keys = allKeys();
    int asked = 0;
    for (Path source : sources()) {
      Matcher matcher = ASKED.matcher(Files.readString(source));
      while (matcher.find()) {
        String key = matcher.group(2);
        boolean counted = matcher.group(1).equals("counted");
        assertThat(keys)
            .as(source.toString())
            .containsAll(counted ? List.of(key + ".one", key + ".many") : List.of(key));
        asked++;
      }
    }
    assertThat(asked).isGreaterThan(500);
  }

  private static Set<String> allKeys() throws IOException {
    Set<String> keys = new TreeSet<>();
    for (String name : bundles().toList()) {
      keys.addAll(read(name).stringPropertyNames());
    }
    return keys;
  }

  private static List<Path> sources() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src/main/java/neckway"))) {
      return files.filter(file -> file.toString().endsWith(".java")).toList();
    }
  }

  /** Common practice of either language, no source. */
  @Test
  void numbersAndListsAreWrittenAsTheLanguageDoes() {
    assertThat(numbers())
        .containsExactly("three", "13", "twice", "three times", "second", "9th", "1.5", "0.62");
    assertThat(Wording.in(Tongue.GERMAN, WordingTests::numbers))
        .containsExactly("drei", "13", "zweimal", "dreimal", "zweite", "9.", "1,5", "0,62");
    List<String> things = List.of("A", "B", "C");
    assertThat(Wording.list(things)).isEqualTo("A, B and C");
    assertThat(Wording.in(Tongue.GERMAN, () -> Wording.list(things))).isEqualTo("A, B und C");
  }

  /** A file's name, or what stands in it, may look like a place for a value. */
  @Test
  void whatStandsInAValueStaysAsItIs() {
    assertThat(Wording.filled("{0} and {1}, {0}; {2}", "{1}$1", "b\\"))
        .isEqualTo("{1}$1 and b\\, {1}$1; {2}");
  }

  @Test
  void theMachineIsSpokenToInItsLanguage() {
    assertThat(Tongue.of(Locale.forLanguageTag("de-AT"))).isEqualTo(Tongue.GERMAN);
    assertThat(Tongue.of(Locale.UK)).isEqualTo(Tongue.ENGLISH);
    assertThat(Tongue.of(Locale.ROOT)).isEqualTo(Tongue.ENGLISH);
    assertThat(Tongue.of(Locale.JAPAN)).isEqualTo(Tongue.ENGLISH);
  }

  private static List<String> numbers() {
    return List.of(
        Wording.number(3),
        Wording.number(13),
        Wording.times(2),
        Wording.times(3),
        Wording.ordinal(2),
        Wording.ordinal(9),
        Wording.plain(1.5),
        Wording.fixed(0.62, 2));
  }

  @Test
  void isEnglishOnAGermanMachineUntilAnotherIsChosen() {
    Locale before = Locale.getDefault();
    Locale.setDefault(Locale.GERMANY);
    try {
      assertThat(Wording.number(2)).isEqualTo("two");
      assertThat(Wording.plain(1.5)).isEqualTo("1.5");
      Wording.speak(Tongue.GERMAN);
      assertThat(Wording.number(2)).isEqualTo("zwei");
      assertThat(Wording.in(Tongue.ENGLISH, () -> Wording.number(2))).isEqualTo("two");
      Wording.speak(Tongue.ENGLISH);
      assertThat(Wording.number(2)).isEqualTo("two");
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void aSentenceIsKnownByItsBeginningInEachLanguage() {
    assertThat(List.of("First: play.", "Zuerst: Spiel."))
        .allMatch(sentence -> Wording.begins(sentence, "advice.first"));
    assertThat(Wording.begins("The first try went through.", "advice.first")).isFalse();
  }
}
