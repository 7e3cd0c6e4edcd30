package neckway.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import neckway.neck.BadInput;
import neckway.neck.GuitarString;
import neckway.neck.Tuning;
import neckway.string.GuitarProfile;
import neckway.string.Lesson;
import neckway.string.StringProfile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GuitarLessonsTests {
  private static final GuitarString THIRD = new GuitarString(3);
  private static final double LN = Math.log(1e-4);

  @TempDir private Path folder;
  private Path file;

  @BeforeEach
  void write() {
    file = folder.resolve("guitar.json");
    List<StringProfile> strings = new ArrayList<>();
    for (GuitarString string : Tuning.STANDARD.strings()) {
      strings.add(new StringProfile(string, Tuning.STANDARD.openMidi(string), 0, LN, 0.1, 4));
    }
    GuitarFile.write(file, new GuitarProfile(strings), Tuning.STANDARD);
  }

  private double third() {
    return GuitarFile.read(file).of(THIRD).lnStiffness();
  }

  @Test
  void whatARunTaughtWaitsForTheNext() {
    GuitarLessons.keep(file, List.of(new Lesson(THIRD, 4, LN + 0.08)));
    assertThat(third()).isEqualTo(LN, within(1e-5));
    GuitarLessons.takeIn(file);
    assertThat(third()).isEqualTo(LN + 0.04, within(1e-5));
    GuitarLessons.takeIn(file);
    assertThat(third()).isEqualTo(LN + 0.04, within(1e-5));
  }

  @Test
  void laterRunsAddToEarlierOnesAndTheCalibrationIsKept() {
    for (int run = 0; run < 30; run++) {
      GuitarLessons.keep(file, List.of(new Lesson(THIRD, 4, LN + 0.08)));
      GuitarLessons.takeIn(file);
    }
    assertThat(third()).isEqualTo(LN + 0.08 * 40 / 44, within(1e-5));
    assertThat(JsonFile.read(file).path("strings").path(3).path("calibrated").asDouble())
        .isEqualTo(1e-4, within(1e-9));
    assertThat(GuitarFile.read(file).of(new GuitarString(2)).lnStiffness())
        .isEqualTo(LN, within(1e-5));
  }

  @Test
  void nothingToLearnLeavesTheFileAlone() throws IOException {
    byte[] before = Files.readAllBytes(file);
    GuitarLessons.keep(file, List.of());
    GuitarLessons.takeIn(file);
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }

  @Test
  void badLessonsAreOneLine() throws IOException {
    Files.writeString(
        file,
        Files.readString(file)
            .replaceFirst("\"plucks\"", "\"pending\": {\"notes\": 0}, \"plucks\""));
    assertThatThrownBy(() -> GuitarLessons.takeIn(file))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("notes");
  }
}
