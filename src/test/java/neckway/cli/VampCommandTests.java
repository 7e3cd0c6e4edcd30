package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class VampCommandTests {
  @TempDir private Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int vamp(String... words) {
    List<String> all =
        new ArrayList<>(List.of("vamp", "--key", "A minor", "--shapes", "minor,major"));
    all.addAll(List.of(words));
    return Main.run(new PrintWriter(out), new PrintWriter(err), all.toArray(String[]::new));
  }

  @Test
  void rendersWhatTheDrillTakes() throws Exception {
    Path file = folder.resolve("backing.wav");
    assertThat(vamp("--tempo", "120", "--out", file.toString())).as(err.toString()).isZero();
    assertThat(out.toString()).contains("bar 1 at 2.000 s", "| Am | F | G | Am |");
    AudioFileFormat format = AudioSystem.getAudioFileFormat(file.toFile());
    assertThat(format.getFormat().getChannels()).isEqualTo(1);
    // 25 notes of two a beat are 13 beats, so four bars of two seconds, the count-in and what rings
    assertThat(format.getFrameLength() / format.getFormat().getFrameRate()).isBetween(10f, 12f);
  }

  @ParameterizedTest
  @CsvSource({
    "--chords, 'I ii IX', '--chords: \"IX\" is not a chord'",
    "--feel, waltz, '--feel: \"waltz\" is not known'",
    "--bars, 0, '--bars 0'",
    "--bars, 401, '--bars 401'",
  })
  void badInputIsOneLine(String option, String value, String line) {
    String file = folder.resolve("backing.wav").toString();
    assertThat(vamp(option, value, "--out", file)).isEqualTo(2);
    assertThat(err.toString().strip()).doesNotContain("\n").contains(line);
    assertThat(folder.resolve("backing.wav")).doesNotExist();
  }
}
