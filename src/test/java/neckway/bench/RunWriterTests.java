package neckway.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class RunWriterTests {
  /** The product's written contract gives this run for G major, major into dorian, from fret 3. */
  @Test
  void majorIntoDorianInG() {
    String run =
        RunWriter.twoShapes(0, 3, 3, 1).spots().stream()
            .map(s -> s.string() + ":" + s.fret())
            .collect(Collectors.joining(" "));
    assertThat(run)
        .isEqualTo(
            "6:3 6:5 5:2 5:5 4:2 4:5 3:2 3:4 3:7 2:5 2:8 1:5 1:7 1:5 2:8 2:5 3:7 3:4 4:7 4:5 5:7"
                + " 5:5 5:2 6:5 6:3");
  }
}
