package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import neckway.words.Tongue;
import neckway.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

/** What is said of arguments that cannot be used, in both languages. */
class ComplaintsTests {
  /** Words of English that stand in no German sentence, and beginnings of picocli's sentences. */
  private static final List<String> ENGLISH =
      List.of(
          " the ",
          " is ",
          " and ",
          " not ",
          " for ",
          " give ",
          " with ",
          " should ",
          "Missing",
          "Invalid",
          "Expected",
          "Unmatched",
          "expected",
          "lists what");

  @TempDir private Path folder;

  private static String said(Tongue tongue, List<String> args) {
    StringWriter err = new StringWriter();
    PrintWriter nowhere = new PrintWriter(new StringWriter());
    int status =
        Wording.in(
            tongue,
            () -> Main.run(nowhere, new PrintWriter(err, true), args.toArray(String[]::new)));
    assertThat(status).as(err.toString()).isEqualTo(Complaints.UNUSABLE);
    return err.toString().strip();
  }

  /** Each command with the words that name it. */
  private static void collect(
      List<String> name, CommandLine command, Map<List<String>, CommandLine> all) {
    all.put(name, command);
    command
        .getSubcommands()
        .forEach(
            (word, sub) ->
                collect(Stream.concat(name.stream(), Stream.of(word)).toList(), sub, all));
  }

  /**
   * Every option without its value, with another option for it, with a value of the wrong kind, and
   * given twice. An unknown option beside it keeps the command from being run.
   */
  @Test
  void whateverIsWrongWithAnOptionIsSaidInGerman() {
    Map<List<String>, CommandLine> commands = new LinkedHashMap<>();
    collect(List.of(), Main.commandLine(), commands);
    List<String> sentences = new ArrayList<>();
    commands.forEach(
        (name, command) -> {
          for (OptionSpec option : command.getCommandSpec().options()) {
            String typed = option.longestName();
            for (List<String> wrong :
                List.of(
                    List.of(typed),
                    List.of(typed, typed),
                    List.of(typed + "=?"),
                    List.of(typed + "=1", typed + "=1"))) {
              if (option.usageHelp() || option.versionHelp()) {
                continue;
              }
              List<String> args = new ArrayList<>(name);
              args.add("--unheard-of");
              args.addAll(wrong);
              sentences.add(said(Tongue.GERMAN, args));
            }
          }
        });
    assertThat(sentences).hasSizeGreaterThan(300).allSatisfy(ComplaintsTests::isGerman);
    assertThat(sentences).allMatch(said -> said.lines().count() == 1);
  }

  private static void isGerman(String said) {
    assertThat(said).doesNotContain(ENGLISH);
  }

  /** Figures of the sentences are those of the options; the sentences are ours. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "map --key | --key KEY: Hier fehlt der Wert; 'neckway map --help' zeigt, was es gibt",
        "map --key --left | --key: Der Wert fehlt, stattdessen kommt --left; 'neckway map --help'"
            + " zeigt, was es gibt",
        "map --key A --key B | --key (KEY) ist zweimal angegeben; lass eins davon weg; 'neckway map"
            + " --help' zeigt, was es gibt",
        "map --left=1 | --left=1: Diese Option nimmt keinen Wert; lass ihn weg; 'neckway map --help'"
            + " zeigt, was es gibt",
        "map | --key KEY fehlt; 'neckway map --help' zeigt, was es gibt",
        "report | Es fehlen '--out=FILE' und 'REVIEW.json'; 'neckway report --help' zeigt, was es"
            + " gibt",
        "dance | unbekannter Befehl \"dance\"; 'neckway --help' zeigt, was es gibt",
        "perform --out a.wav --seed x | --seed x: Gib eine ganze Zahl an; 'neckway perform --help'"
            + " zeigt, was es gibt",
        "review a.wav --channel middle | --channel middle: Gib left, right, mix oder auto an;"
            + " 'neckway review --help' zeigt, was es gibt",
        "review a.wav | keine Übung: Gib --drill FILE an, oder --key und --shapes, etwa --key \"G"
            + " major\" --shapes major,dorian",
        "review a.wav --key Am --shapes minor --tempo 9 | --tempo 9: Gib 20 bis 400 Schläge pro"
            + " Minute an",
        "review a.wav --key Am --shapes minor --start x | --start x: Gib den Bund der ersten Note"
            + " an, etwa 3",
        "listen --key Am --shapes minor --clicks | --clicks: Gib dazu --vamp oder --backing FILE an",
        "listen --key Am --shapes minor --spoken | --spoken: Gib dazu auch --calls an",
        "perform --out a.wav --key Am --shapes minor --dc 0.5 | --dc 0.5: Gib -0.2 bis 0.2 an",
        "perform --out a.wav --key Am --shapes minor --condition odd | --condition odd: Gib plain,"
            + " clean, dirty oder legato an",
        "plan --day heute | --day heute: ist kein Tag; schreib ihn so: 2026-11-28"
      })
  void germanSaysWhatWhereAndHowToMend(String typed, String complaint) {
    assertThat(said(Tongue.GERMAN, List.of(typed.split(" ")))).isEqualTo("neckway: " + complaint);
  }

  /** Where a pattern for the library's sentence fits no more, its own words come through. */
  @Test
  void englishKeepsTheLibrarysOwnSentences() {
    assertThat(said(Tongue.ENGLISH, List.of("map", "--key", "--left")))
        .isEqualTo(
            "neckway: Expected parameter for option '--key' but found '--left'; 'neckway map --help'"
                + " lists what it takes");
    assertThat(said(Tongue.ENGLISH, List.of("map", "--left", "--left")))
        .isEqualTo(
            "neckway: option '--left' should be specified only once; 'neckway map --help' lists what"
                + " it takes");
    assertThat(said(Tongue.ENGLISH, List.of("report")))
        .isEqualTo(
            "neckway: Missing required options and parameters: '--out=FILE', 'REVIEW.json';"
                + " 'neckway report --help' lists what it takes");
  }

  /** A file that is named by nothing, as a shell makes of an unset variable. */
  @Test
  void aNameThatIsEmptyIsSaidInBothLanguages() {
    List<String> args = List.of("tune", "--take", "");
    assertThat(said(Tongue.ENGLISH, args))
        .startsWith("neckway: --take: no file is named; name one;");
    assertThat(said(Tongue.GERMAN, args))
        .startsWith("neckway: --take: Es ist keine Datei genannt; nenn eine;");
  }

  /** Figures in a sentence have a comma, options that can be typed again a point. */
  @Test
  void numbersInAGermanSentenceHaveACommaAndOptionsAPoint() {
    List<String> args =
        List.of(
            "listen",
            "--key",
            "Am",
            "--shapes",
            "minor",
            "--data",
            folder.toString(),
            "--backing",
            "test-audio/three-slips.wav",
            "--backing-tempo",
            "90",
            "--backing-first-beat",
            "99.5");
    assertThat(said(Tongue.GERMAN, args))
        .contains("--backing-first-beat 99.5 liegt hinter dem Ende bei 14,20 s");
  }
}
