package neckway.cli.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TerminalWidthTests {
  @ParameterizedTest
  @CsvSource({
    "100, 100",
    "40, 40",
    "39, 40",
    "0, 40",
    "-5, 40",
    "wide, 80",
    "'', 80",
    "' 72 ', 72"
  })
  void asTheShellSaysButNeverUnderForty(String said, int columns) {
    assertThat(TerminalWidth.columns(Optional.of(said))).isEqualTo(columns);
  }

  @Test
  void eightyWhereTheShellSaysNothing() {
    assertThat(TerminalWidth.columns(Optional.empty())).isEqualTo(80);
  }
}
