package neckway.desk.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class FaultsTests {
  @TempDir Path folder;

  private Faults faults() {
    return new Faults(
        folder.resolve("new"),
        "9.9",
        () -> LocalDateTime.of(2026, 1, 2, 3, 4, 5),
        new PrintStream(OutputStream.nullOutputStream()));
  }

  @Test
  void aFaultIsWrittenDownAndToldOnceAtTheNextStart() throws IOException {
    faults().uncaughtException(Thread.currentThread(), new IllegalStateException("of a test"));

    Path told = faults().earlier().orElseThrow();
    assertThat(told)
        .content()
        .contains("Neckway 9.9", "2026-01-02 03:04:05", "of a test", "FaultsTests");
    assertThat(faults().earlier()).isEmpty();
  }

  @Test
  void aFaultThatComesBackFillsNoDisk() throws IOException {
    Faults faults = faults();
    for (int i = 0; i < 300; i++) {
      faults.uncaughtException(Thread.currentThread(), new IllegalStateException("of a test"));
    }
    assertThat(Files.size(folder.resolve("new/fault.txt"))).isLessThan(250_000);
  }

  @Test
  void whereNothingFailedNothingIsSaid() {
    assertThat(faults().earlier()).isEmpty();
  }
}
