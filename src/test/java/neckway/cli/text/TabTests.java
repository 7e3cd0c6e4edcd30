package neckway.cli.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import neckway.cli.text.Tab.Bars;
import neckway.cli.text.Tab.Cell;
import neckway.cli.text.Tab.Line;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.neck.GuitarString;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How a page of 25 steps, or of other lengths, is laid out in lines. */
class TabTests {
  private static final int CELL = 4;

  private static PlayableDrill drill(String key, String shapes, int beatsPerBar, int rounds) {
    return Drills.of(key, shapes, OptionalInt.empty(), List.of(), List.of(), rounds)
        .drill()
        .withPulse(new Pulse(80, 2, beatsPerBar, 4))
        .playable();
  }

  private static String row(Tab tab, int string, Line line) {
    return tab.row(new GuitarString(string), line, s -> Cell.of("7"));
  }

  @ParameterizedTest
  @ValueSource(ints = {40, 41, 43, 45, 52, 60, 72, 79, 80, 81, 100, 117, 160, 250})
  void everyStepHasItsPlaceNoLineIsTooLongAndNoLastNoteStandsAlone(int width) {
    for (int rounds = 1; rounds <= 3; rounds++) {
      for (int beats = 2; beats <= 7; beats++) {
        for (String shapes : List.of("major", "major,dorian", "major,dorian,phrygian")) {
          for (Bars bars : Bars.values()) {
            for (int cell = CELL; cell <= CELL + 2; cell++) {
              lines(drill("A major", shapes, beats, rounds), cell, width, bars);
            }
          }
        }
      }
    }
  }

  private static void lines(PlayableDrill drill, int cell, int width, Bars bars) {
    Tab tab = new Tab(drill, cell, width, bars);
    List<Line> lines = tab.lines();
    int next = 0;
    for (Line line : lines) {
      assertThat(line.from()).isEqualTo(next);
      assertThat(row(tab, 1, line).length()).isBetween(1, width);
      next = line.to();
    }
    assertThat(next).isEqualTo(drill.route().steps().size());
    assertThat(lines.get(lines.size() - 1).notes()).as(lines.toString()).isGreaterThan(1);
    IntStream.range(0, next)
        .forEach(
            s -> {
              Line own = lines.get(tab.lineOf(s));
              assertThat(s).isBetween(own.from(), own.to() - 1);
            });
  }

  /** 25 notes, eight a bar: the one of the fourth bar goes with the third where there is room. */
  @Test
  void theLastBarTakesALastNote() {
    PlayableDrill drill = Drills.example();
    assertThat(new Tab(drill, CELL, 80, Bars.ONE).lines())
        .containsExactly(new Line(0, 8), new Line(8, 16), new Line(16, 25));
    assertThat(new Tab(drill, CELL, 40, Bars.ONE).lines())
        .containsExactly(new Line(0, 8), new Line(8, 16), new Line(16, 21), new Line(21, 25));
    assertThat(new Tab(drill, CELL, 80, Bars.ALL_THAT_FIT).lines())
        .containsExactly(new Line(0, 16), new Line(16, 25));
  }

  /** A bar that is broken is broken evenly, and its line has no bar line at the break. */
  @Test
  void aBarTooLongForTheTerminalIsSharedOut() {
    Tab tab = new Tab(Drills.example(), 5, 40, Bars.ALL_THAT_FIT);
    assertThat(tab.lines().subList(0, 2)).containsExactly(new Line(0, 4), new Line(4, 8));
    assertThat(row(tab, 1, tab.lines().get(0))).isEqualTo("    E |----7----7----7----7-");
    assertThat(row(tab, 1, tab.lines().get(1))).isEqualTo("    E ----7----7----7----7|");
  }

  /** In G flat the second string is still tuned to B, though the key has no B but C flat. */
  @Test
  void stringsAreNamedAsTheyAreTuned() {
    PlayableDrill drill = drill("Gb major", "major,dorian", 4, 1);
    assertThat(drill.key().spell(59).note()).isEqualTo("Cb");
    Tab tab = new Tab(drill, CELL, 80, Bars.ONE);
    assertThat(
            tab.highestFirst().stream()
                .map(string -> row(tab, string.number(), tab.lines().get(0)).strip().charAt(0)))
        .containsExactly('E', 'B', 'G', 'D', 'A', 'E');
  }
}
