package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import neckway.words.Tongue;
import neckway.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/**
 * What {@code --help} says. By which keys the option library finds a text is from picocli's manual,
 * section "Internationalization".
 */
class HelpTests {
  private static final Pattern ESCAPE = Pattern.compile("%.");
  private static final List<String> OF_A_COMMAND =
      List.of(
          "usage.synopsisHeading", "usage.commandListHeading", "usage.description", "usage.footer");

  private static CommandLine program(Tongue tongue) {
    return Wording.in(tongue, Main::commandLine);
  }

  private static List<CommandLine> all(CommandLine command) {
    List<CommandLine> found = new ArrayList<>(List.of(command));
    command.getSubcommands().values().forEach(each -> found.addAll(all(each)));
    return found;
  }

  private static String text(Tongue tongue, String key) {
    return program(tongue).getResourceBundle().getString(key);
  }

  private static Set<String> keys(Tongue tongue) {
    return new TreeSet<>(program(tongue).getResourceBundle().keySet());
  }

  @ParameterizedTest
  @EnumSource
  void everyCommandAndOptionIsDescribed(Tongue tongue) {
    for (CommandLine command : all(program(tongue))) {
      CommandSpec spec = command.getCommandSpec();
      assertThat(spec.usageMessage().description()).as(spec.qualifiedName()).isNotEmpty();
      for (OptionSpec each : spec.options()) {
        assertThat(each.description())
            .as(spec.qualifiedName() + " " + each.longestName())
            .isNotEmpty()
            .noneMatch(String::isBlank);
      }
      for (PositionalParamSpec each : spec.positionalParameters()) {
        assertThat(each.description())
            .as(spec.qualifiedName() + " " + each.paramLabel())
            .isNotEmpty()
            .noneMatch(String::isBlank);
      }
    }
  }

  @Test
  void noTextIsIdle() {
    Set<String> idle = keys(Tongue.ENGLISH);
    for (CommandLine command : all(program(Tongue.ENGLISH))) {
      CommandSpec spec = command.getCommandSpec();
      OF_A_COMMAND.forEach(name -> asked(idle, spec, name));
      for (OptionSpec each : spec.options()) {
        boolean ofTheLibrary = !each.descriptionKey().isEmpty();
        asked(
            idle,
            spec,
            ofTheLibrary ? each.descriptionKey() : each.longestName().replaceFirst("^-+", ""));
      }
      for (PositionalParamSpec each : spec.positionalParameters()) {
        asked(idle, spec, each.paramLabel() + "[" + each.index() + "]");
      }
    }
    assertThat(idle).isEmpty();
  }

  /** Takes away the key by which a text is found: with the command's name, or else without. */
  private static void asked(Set<String> idle, CommandSpec spec, String name) {
    String own = spec.qualifiedName(".") + "." + name;
    boolean hasOwn =
        keys(Tongue.ENGLISH).stream().anyMatch(key -> key.replaceFirst("\\.\\d$", "").equals(own));
    String found = hasOwn ? own : name;
    idle.removeIf(key -> key.replaceFirst("\\.\\d$", "").equals(found));
  }

  @Test
  void bothLanguagesHaveTheSameTextsWithTheSameEscapes() {
    assertThat(keys(Tongue.GERMAN)).isEqualTo(keys(Tongue.ENGLISH));
    for (String key : keys(Tongue.ENGLISH)) {
      assertThat(escapes(text(Tongue.GERMAN, key)))
          .as(key)
          .isEqualTo(escapes(text(Tongue.ENGLISH, key)));
    }
  }

  private static List<String> escapes(String text) {
    return ESCAPE.matcher(text).results().map(MatchResult::group).toList();
  }

  /** What is typed stays as it is: options, and names of files that end in what they are. */
  @Test
  void bothLanguagesNameTheSameOptions() {
    Pattern typed = Pattern.compile("--[a-z-]+|\\b[\\w-]+\\.(?:csv|jsonl|wav)\\b|neckway-\\w+/1");
    for (String key : keys(Tongue.ENGLISH)) {
      assertThat(matches(typed, text(Tongue.GERMAN, key)))
          .as(key)
          .containsAll(matches(typed, text(Tongue.ENGLISH, key)));
    }
  }

  private static Set<String> matches(Pattern pattern, String text) {
    return pattern.matcher(text).results().map(MatchResult::group).collect(Collectors.toSet());
  }

  /** Words that only English has; options and values that are typed are English in German too. */
  @Test
  void germanHelpHasNoEnglishInIt() {
    Set<String> english = Set.of("the", "is", "and", "not", "with", "of", "left", "out:", "usage:");
    for (CommandLine command : all(program(Tongue.GERMAN))) {
      String help = command.getUsageMessage().replaceAll("left, right, mix", "");
      Set<String> words = new HashSet<>(Arrays.asList(help.toLowerCase(Locale.ROOT).split("\\s+")));
      assertThat(Collections.disjoint(words, english)).as(help).isTrue();
      assertThat(help).contains("Aufruf: neckway").contains("Zeigt diese Hilfe.");
    }
  }

  /** On a machine that speaks another language than the program, too. */
  @Test
  void helpIsInTheLanguageThatIsSpokenNotTheMachines() {
    Locale before = Locale.getDefault();
    try {
      for (Locale machine : List.of(Locale.GERMANY, Locale.FRANCE)) {
        Locale.setDefault(machine);
        assertThat(program(Tongue.ENGLISH).getUsageMessage())
            .startsWith("Usage: neckway [-hV] COMMAND")
            .contains("Show this help message and exit.");
        assertThat(Papers.manual(Main.commandLine())).contains("Shows this help.");
      }
    } finally {
      Locale.setDefault(before);
    }
  }

  /** Lines that are broken by hand; 80 columns are those of picocli's help. */
  @Test
  void whatIsBrokenByHandFitsTheWidth() {
    for (String key : keys(Tongue.GERMAN)) {
      if (key.matches(".*\\.footer\\.\\d")) {
        assertThat(text(Tongue.GERMAN, key).replace("%n", "")).as(key).hasSizeLessThan(80);
      }
    }
  }

  @Test
  void everyTextIsAWholeSentence() {
    for (Tongue tongue : Tongue.values()) {
      for (CommandLine command : all(program(tongue))) {
        CommandSpec spec = command.getCommandSpec();
        Stream.concat(spec.options().stream(), spec.positionalParameters().stream())
            .forEach(each -> assertThat(String.join(" ", each.description())).endsWith("."));
      }
    }
  }
}
