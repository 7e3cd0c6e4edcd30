package neckway.desk.open;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Takes, and what was played beside them. */
class TakesFolderTests {
  private static final Instant NOW = Instant.parse("2026-11-28T12:00:00Z");

  @TempDir Path folder;

  private Path file(String name, int bytes) throws IOException {
    Path file = Files.write(folder.resolve(name), new byte[bytes]);
    Files.setLastModifiedTime(file, FileTime.from(NOW.minus(TakesFolder.OLD).minusSeconds(1)));
    return file;
  }

  @Test
  void whatWasPlayedBesideATakeIsNoTakeAndGoesWithIt() throws IOException {
    Path take = file("2026-10-01 120000 A minor 01.wav", 100);
    Path beside = file("2026-10-01 120000 A minor 01.backing.wav", 40);
    Path other = file("song.backing.wav", 10);
    List<TakesFolder.Take> takes = TakesFolder.list(folder, Set.of(), NOW);
    assertThat(takes).containsExactly(new TakesFolder.Take(take, 140, true));
    assertThat(TakesFolder.clear(takes)).isZero();
    assertThat(take).doesNotExist();
    assertThat(beside).doesNotExist();
    assertThat(other).exists();
  }
}
