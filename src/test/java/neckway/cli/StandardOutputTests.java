package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

final class StandardOutputTests {
  private final StringWriter err = new StringWriter();

  private int printed(OutputStream stream) {
    StandardOutput standard = new StandardOutput(stream);
    PrintWriter out = new PrintWriter(standard, true, StandardCharsets.UTF_8);
    assertThat(Main.run(out, new PrintWriter(err, true), "map", "--key", "Am")).isZero();
    return Complaints.aboutOutput(standard, new PrintWriter(err, true));
  }

  @Test
  void whatIsWrittenIsNoComplaint() {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    assertThat(printed(all)).isZero();
    assertThat(all.toString(StandardCharsets.UTF_8)).contains("A minor");
    assertThat(err.toString()).isEmpty();
  }

  /** /dev/full answers every write with "no space left on device" (Linux, full(4)). */
  @Test
  void fullDiskIsOneLineAndNotZero() throws IOException {
    assumeTrue(Files.exists(Path.of("/dev/full")));
    try (OutputStream full = new FileOutputStream("/dev/full")) {
      assertThat(printed(full)).isEqualTo(Complaints.UNUSABLE);
    }
    assertThat(err.toString().lines())
        .containsExactly(
            "neckway: standard output: there is no room left; make room, or name a file on"
                + " another disk");
  }

  /** As Linux words EPIPE, errno(3). */
  @Test
  void readerOfAPipeThatHasSeenEnoughIsNoComplaint() {
    OutputStream pipe =
        new OutputStream() {
          @Override
          public void write(int b) throws IOException {
            throw new IOException("Broken pipe");
          }
        };
    assertThat(printed(pipe)).isEqualTo(Complaints.READER_LEFT);
    assertThat(err.toString()).isEmpty();
  }
}
