package neckway.string;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

class DriveTests {
  private static double take(int clean, int driven) {
    double[] notes = new double[clean + driven];
    Arrays.fill(notes, -15);
    Arrays.fill(notes, 0, driven, 10);
    return Drive.ofTake(Arrays.stream(notes));
  }

  @Test
  void aTakeIsDrivenWhereSomeNotesPlainlyAre() {
    assertThat(take(24, 0)).isLessThan(0.01);
    assertThat(take(22, 2)).isLessThan(0.01);
    assertThat(take(16, 8)).isGreaterThan(0.9);
    assertThat(take(0, 24)).isGreaterThan(0.99);
  }

  @Test
  void nothingHeardTellsNothing() {
    assertThat(Drive.ofTake(DoubleStream.empty())).isEqualTo(0.5);
  }
}
