package neckway.cli.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import neckway.neck.JoinChoice;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.Route;
import neckway.neck.RouteBuilder;
import neckway.neck.Shape;
import neckway.neck.Tuning;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TabTextTests {
  private static final String FIVE = "major,dorian,phrygian,mixolydian,minor";

  private static List<String> tab(String tuning, String shapes, String up, int width) {
    Neck neck = new Neck(Key.parse("A major"), Tuning.parse(tuning), Neck.MOST_FRETS);
    List<Shape> chain = Arrays.stream(shapes.split(",")).map(Shape::parse).toList();
    List<JoinChoice> joins =
        Arrays.stream(up.split(" "))
            .filter(join -> !join.isEmpty())
            .map(join -> JoinChoice.on(Integer.parseInt(join)))
            .toList();
    Route route =
        RouteBuilder.build(neck, neck.chain(chain, OptionalInt.empty()), joins, List.of(), 1);
    return TabText.of(neck, route, width);
  }

  private static boolean isFingers(String line) {
    return line.matches("finger[ 0-4]+");
  }

  private static String said(List<String> lines) {
    return lines.stream()
        .filter(line -> !line.contains("|") && !isFingers(line))
        .collect(Collectors.joining(" "));
  }

  @ParameterizedTest
  @ValueSource(ints = {40, 41, 47, 52, 60, 66, 79, 80, 120})
  void aTabBreaksIntoSystemsAndNoneHasASingleNote(int width) {
    for (String shapes : List.of("major", "major,dorian", "major,dorian,phrygian", FIVE)) {
      List<String> lines = tab("standard", shapes, "", width);
      assertThat(lines).allMatch(line -> line.length() <= width);
      List<Integer> notes =
          lines.stream()
              .filter(TabTextTests::isFingers)
              .map(line -> line.replaceAll("[^0-4]", "").length())
              .toList();
      assertThat(notes).allMatch(n -> n > 1);
      int each = 12 + shapes.split(",").length - 1;
      assertThat(notes.stream().mapToInt(n -> n).sum()).isEqualTo(2 * each - 1);
      // Highest string first, six rows and the fingers to a system.
      assertThat(lines.stream().filter(line -> line.contains("|"))).hasSize(6 * notes.size());
    }
  }

  @Test
  void wideEnoughItIsOneSystemEachWay() {
    assertThat(tab("standard", FIVE, "", 80).stream().filter(TabTextTests::isFingers)).hasSize(2);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "standard|major,dorian,phrygian|3 3|Both ways Dorian gets only its two notes on string 3; joins"
            + " on other strings would give it more.",
        "standard|major,dorian,phrygian,mixolydian|3 3 3|Both ways Dorian and Phrygian get only their"
            + " two notes each on string 3; joins on other strings would give them more.",
        "EADG|major,dorian,phrygian,mixolydian|3 2 2|Both ways Phrygian gets only its two notes on"
            + " string 2; 4 strings are too few to play each of 4 shapes on two."
      })
  void aShapeThatIsOnlyPassedThroughIsNamed(
      String tuning, String shapes, String up, String sentence) {
    assertThat(said(tab(tuning, shapes, up, 80))).contains(sentence);
  }

  @Test
  void whereEachShapeIsPlayedNothingIsSaidOfIt() {
    assertThat(said(tab("standard", FIVE, "", 80))).doesNotContain("only");
    assertThat(said(tab("standard", "major,dorian", "", 80))).doesNotContain("only");
    assertThat(said(tab("standard", "major", "", 80))).doesNotContain("only");
  }
}
