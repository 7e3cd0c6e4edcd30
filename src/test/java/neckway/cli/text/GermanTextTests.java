package neckway.cli.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Supplier;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.file.ComparisonFile;
import neckway.file.ReviewReader;
import neckway.follow.NoteVerdict;
import neckway.follow.Verdict;
import neckway.hand.ShiftSaid;
import neckway.hand.ShiftVerdict;
import neckway.hear.HeardNote;
import neckway.neck.GuitarString;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.NeckMap;
import neckway.neck.Pitch;
import neckway.neck.Tuning;
import neckway.page.PagedTake;
import neckway.review.Grid;
import neckway.string.AlikeStrings;
import neckway.string.GuitarProfile;
import neckway.words.Tongue;
import neckway.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** German words are longer: they keep to the terminal's columns, and to those of their tables. */
class GermanTextTests {
  private static final GuitarProfile GUITAR = AlikeStrings.of(-112, 1080.4e-6, 0.12, 112);

  private static <T> T german(Supplier<T> something) {
    return Wording.in(Tongue.GERMAN, something);
  }

  private static String printed(PagedTake take, int width) {
    StringWriter out = new StringWriter();
    new Page(take.drill(), take.review(), width).print(new PrintWriter(out, true));
    return out.toString();
  }

  /** Names of rows stand before the strings, whatever the language: what is under them agrees. */
  @ParameterizedTest
  @ValueSource(ints = {40, 55, 80, 120})
  void aPageHasItsNotesInTheSameColumns(int width) {
    for (String name : List.of("missed-shift", "three-slips", "loud-room")) {
      PagedTake take = PagedTake.recorded(name);
      List<String> page = german(() -> printed(take, width)).lines().toList();
      assertThat(page).allMatch(line -> line.length() <= width);
      assertThat(tab(page)).isNotEmpty().isEqualTo(tab(printed(take, width).lines().toList()));
    }
  }

  /** What stands above, on and below the strings, without the names of the rows. */
  private static List<String> tab(List<String> page) {
    return page.stream()
        .filter(line -> line.matches("[ \\w]{5} .*"))
        .filter(line -> !line.matches("[ \\w]{5} .*[a-z]{3}.*"))
        .map(line -> line.substring(6))
        .toList();
  }

  @ParameterizedTest
  @ValueSource(ints = {40, 60, 80, 120})
  void aMapKeepsToItsColumns(int width) {
    Neck neck = new Neck(Key.parse("F# minor"), Tuning.parse("F#BEADGBE"), Neck.MOST_FRETS);
    List<String> lines =
        german(
            () -> {
              List<String> all =
                  new ArrayList<>(MapText.of(NeckMap.ofAll(neck), width, Handed.RIGHT));
              PlayableDrill drill = Drills.example();
              all.addAll(TabText.of(drill.neck(), drill.route(), width));
              return all;
            });
    assertThat(lines).allMatch(line -> line.length() <= width);
    assertThat(lines).anyMatch(line -> line.startsWith("Aufwärts, zu "));
    noEnglish(String.join(" ", lines));
  }

  @ParameterizedTest
  @ValueSource(ints = {40, 79, 80, 120})
  void aProfileKeepsToItsColumns(int width) {
    List<String> lines = german(() -> ProfileTable.lines(GUITAR, Tuning.STANDARD, width));
    assertThat(lines).allMatch(line -> line.length() <= width);
    assertThat(String.join(" ", lines)).contains("1080,4 +- 12 %").contains("-112 Cent");
    noEnglish(String.join(" ", lines));
    if (width >= 80) {
      String row = lines.get(1);
      for (String column : List.of("Stimmung", "Steifigkeit", "Anschläge")) {
        int end = lines.get(0).indexOf(column) + column.length();
        assertThat(row.charAt(end - 1)).as(column).isNotEqualTo(' ');
        assertThat(row.charAt(end)).as(column).isEqualTo(' ');
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {40, 50, 80, 100})
  void theTunerKeepsToOneLine(int width) {
    for (int midi = 28; midi < 80; midi++) {
      double hz = Pitch.hz(midi + 0.3);
      String shown =
          german(
              () -> {
                StringWriter out = new StringWriter();
                new TunerLine(new PrintWriter(out), Tuning.STANDARD, true, width).tone(1, hz);
                return out.toString();
              });
      String line = TerminalScreen.showing(shown, width).text();
      assertThat(line).doesNotContain("\n").contains("+30,0 Cent").contains("#");
    }
  }

  /** Also where all six stand beside each other only in two tables. */
  @ParameterizedTest
  @ValueSource(ints = {40, 80, 120})
  void nothingOfAComparisonIsCutOff(int width) {
    PagedTake take = PagedTake.recorded("three-slips");
    List<ComparisonFile.Named> takes =
        List.of("mo", "di", "mi", "do", "fr", "sa").stream()
            .map(
                day ->
                    new ComparisonFile.Named(
                        day + ".json", new ReviewReader.DrillReviewed(take.drill(), take.review())))
            .toList();
    List<String> lines = german(() -> ComparisonText.of(takes, width));
    assertThat(lines).allMatch(line -> line.length() <= width);
    String all = String.join("\n", lines);
    assertThat(all.split("23 von 25", -1)).hasSize(7);
    assertThat(all.split("doppelt angeschlagen ", -1).length)
        .isEqualTo(all.split("richtig ", -1).length);
    assertThat(all)
        .contains("Wechsel 1, auf, Saite ")
        .contains("Note 12, ")
        .contains("ausgelassen");
    noEnglish(all);
  }

  /** The longest that is said beside the page. */
  @ParameterizedTest
  @ValueSource(ints = {40, 60, 68, 69, 72, 80, 120})
  void whatIsSaidBesideTheLivePageHasRoom(int width) {
    PlayableDrill drill = Drills.example();
    StringWriter out = new StringWriter();
    var down = drill.route().shifts().get(1);
    german(
        () -> {
          Grid grid = new Grid(Grid.Source.GIVEN, 80, 2, 0.375);
          LivePage live = new LivePage(new PrintWriter(out), drill, grid, true, width);
          live.decided(
              new NoteVerdict(
                  new HeardNote(0, 2, 43, 43, HeardNote.Start.PLUCK, true, -20, 2.03),
                  Verdict.RIGHT,
                  OptionalInt.of(0),
                  0,
                  2.03));
          live.shifted(
              0,
              new ShiftSaid(
                  down,
                  ShiftVerdict.MOVED,
                  Optional.of(new GuitarString(4)),
                  OptionalDouble.of(0.98),
                  5));
          return live;
        });
    String screen =
        TerminalScreen.showing(out.toString().replace(System.lineSeparator(), "\n"), width).text();
    assertThat(screen).contains("auf Saite ").contains(", nicht ");
  }

  @Test
  void theLegendTellsTheNamesOfTheRows() {
    PagedTake take = PagedTake.recorded("loud-room");
    String page = german(() -> printed(take, 80));
    assertThat(page).contains("\nextra  ").contains("extra: ein Ton").contains("\n Lage  ");
    noEnglish(page);
  }

  static void noEnglish(String text) {
    assertThat(text).doesNotContainPattern("(?i)\\b(the|is|and|not|of|from|string|fret)\\b");
  }
}
