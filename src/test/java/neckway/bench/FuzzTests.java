package neckway.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import neckway.file.sound.Tools;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A short turn of {@link FuzzBench}: anything but a file read or refused in one line is thrown. */
@Tag("slow")
@Tag("programs")
class FuzzTests {
  private static final int FILES_OF_A_KIND = 60;
  private static final double MOST_SECONDS = 15;

  @Test
  void noSpoiltFileIsAFaultOfTheProgram(@TempDir Path folder) throws Exception {
    for (String program : new String[] {"sox", "lame", "ffmpeg"}) {
      Assumptions.assumeTrue(Tools.present(program), program + " is not installed: not checked");
    }
    MutatedFiles spoilt = new MutatedFiles(folder);
    int read = 0;
    int refused = 0;
    for (String kind : spoilt.kinds()) {
      for (long seed = 1; seed <= FILES_OF_A_KIND; seed++) {
        long start = System.nanoTime();
        switch (outcome(spoilt, kind, seed)) {
          case READ -> read++;
          case REFUSED -> refused++;
        }
        assertThat((System.nanoTime() - start) / 1e9)
            .as(kind + " seed " + seed)
            .isLessThan(MOST_SECONDS);
      }
    }
    // spoilt as they are, some of them can be read all the same, and many cannot
    assertThat(read).isGreaterThan(spoilt.kinds().size() * FILES_OF_A_KIND / 10);
    assertThat(refused).isGreaterThan(spoilt.kinds().size() * FILES_OF_A_KIND / 10);
  }

  private static MutatedFiles.Outcome outcome(MutatedFiles spoilt, String kind, long seed) {
    try {
      return spoilt.read(kind, seed);
    } catch (Exception fault) {
      throw new AssertionError(kind + " seed " + seed, fault);
    }
  }
}
