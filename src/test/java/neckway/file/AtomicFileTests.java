package neckway.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import neckway.neck.BadInput;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AtomicFileTests {
  @TempDir private Path folder;

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private void assertOnly(Path file, String content) throws IOException {
    assertThat(file).hasContent(content);
    try (var files = Files.list(folder)) {
      assertThat(files).containsExactly(file);
    }
  }

  @Test
  void aNewFileIsThereWhole() throws IOException {
    Path file = folder.resolve("new.json");
    AtomicFile.write(file, bytes("one"));
    assertOnly(file, "one");
  }

  @Test
  void anOlderFileIsReplaced() throws IOException {
    Path file = Files.writeString(folder.resolve("old.json"), "a longer older text");
    AtomicFile.write(file, bytes("new"));
    assertOnly(file, "new");
  }

  @Test
  void notCommittedTheOlderFileStaysAndNothingIsLeft() throws IOException {
    Path file = Files.writeString(folder.resolve("old.json"), "old");
    try (AtomicFile half = AtomicFile.beside(file)) {
      half.stream().write(bytes("half"));
    }
    assertOnly(file, "old");
  }

  @Test
  void aMissingFolderIsSaid() {
    assertThatThrownBy(() -> AtomicFile.write(folder.resolve("no/where.json"), bytes("x")))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("where.json: its folder does not exist");
  }

  @Test
  void aFolderIsNoFile() {
    assertThatThrownBy(() -> AtomicFile.write(folder, bytes("x")))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("is a folder");
  }

  @Test
  void aLinkStaysALinkAndItsFileIsWritten() throws IOException {
    Path file = Files.writeString(folder.resolve("real.json"), "old");
    Path link = Files.createSymbolicLink(folder.resolve("link.json"), file.getFileName());
    AtomicFile.write(link, bytes("new"));
    assertThat(Files.isSymbolicLink(link)).isTrue();
    assertThat(file).hasContent("new");
  }

  @Test
  void aDeviceIsWrittenToAndStaysADevice() {
    Path sink = Path.of("/dev/null");
    Assumptions.assumeTrue(Files.exists(sink));
    AtomicFile.write(sink, bytes("x"));
    assertThat(Files.isRegularFile(sink)).isFalse();
    assertThat(Files.exists(sink)).isTrue();
  }
}
