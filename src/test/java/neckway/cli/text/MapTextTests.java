package neckway.cli.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import neckway.neck.BadInput;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.NeckMap;
import neckway.neck.Route;
import neckway.neck.RouteBuilder;
import neckway.neck.Shape;
import neckway.neck.Tuning;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

/** Text of a map fits in the terminal, however narrow it is and whatever the tuning. */
class MapTextTests {
  @Provide
  Arbitrary<Tuning> tunings() {
    return Arbitraries.of(
            "standard",
            "drop D",
            "drop C",
            "open D",
            "open G",
            "half step down",
            "C2 G2 D3 A3 E4 G4",
            "EADG",
            "seven-string standard",
            "F#BEADGBE")
        .map(Tuning::parse);
  }

  @Property(tries = 200)
  void noLineIsWiderThanTheTerminal(
      @ForAll("tunings") Tuning tuning,
      @ForAll Shape first,
      @ForAll @IntRange(min = 1, max = 5) int length,
      @ForAll @IntRange(min = 40, max = 120) int width,
      @ForAll Handed handed) {
    Neck neck = new Neck(Key.parse("F# minor"), tuning, Neck.MOST_FRETS);
    List<String> lines = new ArrayList<>(MapText.of(NeckMap.ofAll(neck), width, handed));
    List<Shape> shapes = new ArrayList<>(List.of(first));
    while (shapes.size() < length) {
      shapes.add(shapes.get(shapes.size() - 1).next());
    }
    try {
      NeckMap chain = NeckMap.ofChain(neck, shapes, OptionalInt.empty());
      lines.addAll(MapText.of(chain, width, handed));
      Route route = RouteBuilder.build(neck, chain.shapes(), List.of(), List.of(), 1);
      lines.addAll(TabText.of(neck, route, width));
    } catch (BadInput doesNotFit) {
      assertThat(doesNotFit.getMessage()).contains("does not fit");
    }
    assertThat(lines).allMatch(line -> line.length() <= width);
    assertThat(lines).allMatch(line -> line.equals(line.stripTrailing()));
  }

  /** Every note of a shape is drawn once, also where the neck is drawn in pieces. */
  @Property(tries = 100)
  void everyNoteIsDrawn(
      @ForAll("tunings") Tuning tuning,
      @ForAll Shape shape,
      @ForAll @IntRange(min = 40, max = 80) int width,
      @ForAll Handed handed) {
    Neck neck = new Neck(Key.parse("G major"), tuning, Neck.MOST_FRETS);
    NeckMap map;
    try {
      map = NeckMap.ofChain(neck, List.of(shape), OptionalInt.empty());
    } catch (BadInput doesNotFit) {
      return;
    }
    long notes =
        MapText.of(map, width, handed).stream()
            .filter(line -> line.matches("[1-8] [A-G].*\\|.*"))
            .map(line -> line.substring(4).replaceAll("[^0-4]", ""))
            .mapToLong(String::length)
            .sum();
    assertThat(notes).isEqualTo(2L * tuning.count());
  }
}
