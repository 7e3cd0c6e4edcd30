package neckway.review;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MillisecondsTests {
  @ParameterizedTest
  @CsvSource({
    "0.4, 0",
    "61.5, 62",
    "99.4, 99",
    "99.6, 100",
    "224.9, 220",
    "225, 230",
    "994, 990",
    "996, 1000",
    "1049, 1000",
    "1250, 1300",
    "-61.5, -62",
    "-224.9, -220"
  })
  void waitsAreRoundedAsTheyAreSaid(double ms, long rounded) {
    assertThat(Milliseconds.rounded(ms)).isEqualTo(rounded);
  }
}
