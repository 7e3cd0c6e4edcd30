package neckway.desk.play;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class LostTakesTests {
  @TempDir Path folder;

  @Test
  void takesOfEarlierVersionsComeToWhereTakesAreKeptNow() throws IOException {
    Path before = Files.createDirectory(folder.resolve("before"));
    Path now = folder.resolve("music/now");
    Files.writeString(before.resolve("one.wav"), "one");
    Files.writeString(before.resolve("notes.txt"), "not a take");

    assertThat(LostTakes.moved(before, now)).isEqualTo(1);
    assertThat(now.resolve("one.wav")).hasContent("one");
    assertThat(before.resolve("notes.txt")).exists();
    assertThat(LostTakes.moved(before, now)).isZero();
  }

  @Test
  void aTakeIsNeverWrittenOver() throws IOException {
    Path before = Files.createDirectory(folder.resolve("before"));
    Path now = Files.createDirectory(folder.resolve("now"));
    Files.writeString(before.resolve("one.wav"), "older");
    Files.writeString(now.resolve("one.wav"), "newer");

    assertThat(LostTakes.moved(before, now)).isZero();
    assertThat(before.resolve("one.wav")).hasContent("older");
    assertThat(now.resolve("one.wav")).hasContent("newer");
    assertThat(LostTakes.moved(folder.resolve("nowhere"), now)).isZero();
  }
}
