package neckway.file.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import neckway.neck.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class WavWriterTests {
  @TempDir Path folder;

  @ParameterizedTest
  @EnumSource(WavWriter.Coding.class)
  void whatIsWrittenIsReadBackAsRounded(WavWriter.Coding coding) {
    Path take = folder.resolve("take.wav");
    float[] samples = new float[100_001];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (float) (0.9 * Math.sin(i * 0.05));
    }
    try (WavWriter writer = new WavWriter(take, 44_100, coding)) {
      for (int i = 0; i < samples.length; i += 333) {
        writer.write(samples, i, Math.min(333, samples.length - i));
      }
      assertThat(writer.frames()).isEqualTo(samples.length);
      writer.finish();
    }
    float[] back = Takes.all(take, Channel.AUTO);
    assertThat(back).hasSize(samples.length);
    for (int i = 0; i < samples.length; i++) {
      assertThat(back[i]).isEqualTo(rounded(coding, samples[i]));
      assertThat(back[i]).isCloseTo(samples[i], within(1f / 65_000));
    }
  }

  /** To the nearest of the steps that the coding has from 0 to 1. */
  private static float rounded(WavWriter.Coding coding, float sample) {
    return switch (coding) {
      case PCM_16 -> Math.round((double) sample * 0x8000) / (float) 0x8000;
      case PCM_24 -> Math.round((double) sample * 0x800000) / (float) 0x800000;
      case FLOAT_32 -> sample;
    };
  }

  @Test
  void tooLoudIsHeldAtFullScale() {
    Path take = folder.resolve("loud.wav");
    try (WavWriter writer = new WavWriter(take, 8_000, WavWriter.Coding.PCM_16)) {
      writer.write(new float[] {2f, -2f}, 0, 2);
      writer.finish();
    }
    assertThat(Takes.all(take, Channel.MIX)).containsExactly(32767f / 32768, -1f);
  }

  @Test
  void crashLosesAtMostTheLastSecond() throws IOException {
    Path take = folder.resolve("take.wav");
    try (WavWriter writer = new WavWriter(take, 8_000, WavWriter.Coding.PCM_16)) {
      writer.write(new float[8_000 * 3 + 4_000], 0, 100);
      for (int i = 0; i < 280; i++) {
        writer.write(new float[100], 0, 100);
      }
      Path copy = folder.resolve("copy.wav");
      Files.copy(folder.resolve("take.part.wav"), copy);
      try (TakeReader reader = TakeReader.open(copy, Channel.AUTO)) {
        assertThat(reader.frames().getAsLong()).isBetween(28_100L - 8_000, 28_100L);
        assertThat(reader.warning()).isEmpty();
      }
      assertThat(take).doesNotExist();
    }
  }

  @Test
  void givenUpLeavesTheOlderFileAndNoRubbish() throws IOException {
    Path take = folder.resolve("take.wav");
    Files.writeString(take, "older");
    try (WavWriter writer = new WavWriter(take, 8_000, WavWriter.Coding.PCM_24)) {
      writer.write(new float[100], 0, 100);
    }
    assertThat(take).hasContent("older");
    try (var files = Files.list(folder)) {
      assertThat(files).containsExactly(take);
    }
  }

  @Test
  void moreThanTheFormatHoldsIsRefusedAndTheRestIsKept() {
    Path take = folder.resolve("take.wav");
    try (WavWriter writer = new WavWriter(take, 8_000, WavWriter.Coding.PCM_16, 1_000)) {
      writer.write(new float[500], 0, 500);
      assertThatThrownBy(() -> writer.write(new float[1], 0, 1))
          .isInstanceOf(BadInput.class)
          .hasMessageContaining("take.wav")
          .hasMessageContaining("4 GB");
      writer.finish();
    }
    assertThat(Takes.all(take, Channel.AUTO)).hasSize(500);
    assertThat(WavWriter.MAX_DATA_BYTES).isGreaterThan(4_294_000_000L).isLessThan(1L << 32);
  }

  @Test
  void folderThatIsNotThereIsSaid() {
    assertThatThrownBy(
            () -> new WavWriter(folder.resolve("no/take.wav"), 8_000, WavWriter.Coding.PCM_16))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("folder does not exist");
    assertThatThrownBy(() -> new WavWriter(folder, 8_000, WavWriter.Coding.PCM_16))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("is a folder");
  }

  @Test
  void takeThatACrashLeftIsNotWrittenOver() throws IOException {
    Path left = Files.writeString(folder.resolve("take.part.wav"), "an older take");
    try (WavWriter writer =
        new WavWriter(folder.resolve("take.wav"), 48_000, WavWriter.Coding.PCM_16)) {
      writer.write(new float[] {0.5f}, 0, 1);
      writer.flush();
      assertThat(folder.resolve("take-2.part.wav")).exists();
      writer.finish();
    }
    assertThat(left).hasContent("an older take");
    assertThat(folder.resolve("take.wav")).exists();
    assertThat(folder.resolve("take-2.part.wav")).doesNotExist();
  }
}
