package neckway.file.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import neckway.neck.BadInput;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Each kind of unusable file gets its own line, which names the file and the mend. */
class TakeReaderBadInputTests {
  @TempDir Path folder;

  private String complaint(Path path) {
    BadInput bad = catchThrowableOfType(BadInput.class, () -> Takes.all(path, Channel.AUTO));
    assertThat(bad).as("nothing was said about " + path).isNotNull();
    assertThat(bad.getMessage().lines()).hasSize(1);
    assertThat(bad.getMessage()).startsWith(path.toString());
    return bad.getMessage().substring(path.toString().length());
  }

  private Path file(String name, byte[] bytes) throws IOException {
    return Files.write(folder.resolve(name), bytes);
  }

  @Test
  void missingFile() {
    assertThat(complaint(folder.resolve("no.wav"))).contains("no such file").contains("check");
  }

  @Test
  void aFolder() {
    assertThat(complaint(folder)).contains("is a folder").contains("name a file");
  }

  @Test
  void emptyFile() throws IOException {
    assertThat(complaint(file("a.wav", new byte[0]))).contains("0 bytes").contains("again");
  }

  @Test
  void textNamedWav() throws IOException {
    byte[] text = "6:3 6:5 5:2 5:5\nslowly\n".getBytes(StandardCharsets.UTF_8);
    assertThat(complaint(file("a.wav", text)))
        .contains("not a sound file")
        .contains("text that begins '6:3 6:5")
        .contains("WAV, AIFF, AU, FLAC, MP3, Ogg Vorbis, Opus or M4A (AAC)");
  }

  @Test
  void somethingElseThanSound() throws IOException {
    byte[] picture = {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10, 0, 0, 0, 13, 'I', 'H', 'D', 'R'};
    assertThat(complaint(file("a.flac", picture))).contains("not a sound file").contains("give");
  }

  @ParameterizedTest
  @ValueSource(ints = {4, 11, 15, 21, 30, 40, 43})
  void wavHeaderCutShort(int bytes) throws IOException {
    byte[] whole = wav(1, 1, 44_100, 16, new byte[200]);
    assertThat(complaint(file("a.wav", Arrays.copyOf(whole, bytes))))
        .contains("header is cut short")
        .contains("another copy");
  }

  @Tag("programs")
  @ParameterizedTest
  @ValueSource(strings = {"a.aiff", "a.au", "a.flac", "a.ogg"})
  void otherHeadersCutShort(String name) throws Exception {
    Tools.run(folder, "sox", "-n", "-r", "44100", name, "synth", "0.1", "sine", "440");
    byte[] start = Arrays.copyOf(Files.readAllBytes(folder.resolve(name)), 22);
    assertThat(complaint(file(name, start))).contains("header is cut short");
  }

  @Test
  void zeroSamples() throws IOException {
    assertThat(complaint(file("a.wav", wav(1, 1, 44_100, 16, new byte[0]))))
        .contains("zero samples")
        .contains("record it again");
  }

  @Tag("programs")
  @ParameterizedTest
  @ValueSource(strings = {"a.aiff", "a.au", "a.flac", "a.ogg", "a.mp3"})
  void zeroSamplesOfOtherKinds(String name) throws Exception {
    file("none.wav", wav(1, 1, 44_100, 16, new byte[0]));
    switch (name) {
      case "a.mp3" -> file(name, new byte[] {'I', 'D', '3', 3, 0, 0, 0, 0, 0, 0});
      default -> Tools.run(folder, "sox", "none.wav", name);
    }
    assertThat(complaint(folder.resolve(name)))
        .matches(".*(zero samples|not a sound file|header is cut short).*");
  }

  @Test
  void soundCutShortIsReadAndSaid() throws IOException {
    byte[] whole = wav(1, 1, 8_000, 16, new byte[32_000]);
    Path cut = file("a.wav", Arrays.copyOf(whole, 44 + 16_001));
    assertThat(Takes.all(cut, Channel.AUTO)).hasSize(8_000);
    try (TakeReader reader = TakeReader.open(cut, Channel.AUTO)) {
      assertThat(reader.warning().orElseThrow())
          .contains("cut short")
          .contains("2.00 s")
          .contains("1.00 s");
    }
  }

  @Tag("programs")
  @ParameterizedTest
  @ValueSource(strings = {"a.flac", "a.ogg", "a.mp3"})
  void compressedSoundCutShortIsReadAndSaid(String name) throws Exception {
    Tools.run(folder, "sox", "-n", "-r", "44100", "a.wav", "synth", "3", "pluck", "220");
    switch (name) {
      case "a.mp3" -> Tools.run(folder, "lame", "--quiet", "a.wav", name);
      default -> Tools.run(folder, "sox", "a.wav", name);
    }
    byte[] whole = Files.readAllBytes(folder.resolve(name));
    Path cut = file(name, Arrays.copyOf(whole, whole.length / 2));
    try (TakeReader reader = TakeReader.open(cut, Channel.AUTO)) {
      float[] buffer = new float[4096];
      int sum = 0;
      for (int got = reader.read(buffer); got > 0; got = reader.read(buffer)) {
        sum += got;
      }
      assertThat(sum).isBetween(15_000, 110_000);
      assertThat(reader.warning().orElseThrow()).contains("cut short");
    }
  }

  @Test
  void sizesNeverFilledInAreReadToTheEnd() throws IOException {
    byte[] bytes = wav(1, 1, 8_000, 16, new byte[1_000]);
    ByteBuffer whole = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    whole.putInt(4, 0).putInt(40, 0);
    assertThat(Takes.all(file("zero.wav", bytes), Channel.AUTO)).hasSize(500);
    whole.putInt(4, -1).putInt(40, -1);
    assertThat(Takes.all(file("ones.wav", bytes), Channel.AUTO)).hasSize(500);
  }

  @ParameterizedTest
  @ValueSource(floats = {Float.NaN, Float.POSITIVE_INFINITY, Float.NEGATIVE_INFINITY, 1e30f})
  void spoiltFloatIsNamedWithItsTime(float bad) throws IOException {
    ByteBuffer sound = ByteBuffer.allocate(4 * 16_000).order(ByteOrder.LITTLE_ENDIAN);
    sound.putFloat(4 * 12_000, bad).putFloat(4 * 13_000, bad);
    assertThat(complaint(file("a.wav", wav(3, 1, 8_000, 32, sound.array()))))
        .contains("1.500 s")
        .contains("16-bit WAV");
  }

  @Test
  void spoiltFloatInStereoIsNamedToo() throws IOException {
    ByteBuffer sound = ByteBuffer.allocate(8 * 16_000).order(ByteOrder.LITTLE_ENDIAN);
    sound.putFloat(8 * 12_000 + 4, Float.NaN);
    assertThat(complaint(file("a.wav", wav(3, 2, 8_000, 32, sound.array())))).contains("1.500 s");
  }

  @Test
  void codecThatCannotBeReadIsNamed() throws IOException {
    assertThat(complaint(file("a.wav", wav(0x11, 1, 44_100, 4, new byte[100]))))
        .contains("IMA ADPCM")
        .contains("plain 16-bit");
  }

  @Test
  void oggOfAnotherCodec() throws IOException {
    ByteBuffer page = ByteBuffer.allocate(28 + 19).order(ByteOrder.LITTLE_ENDIAN);
    page.put("OggS".getBytes(StandardCharsets.US_ASCII)).put(5, (byte) 2).put(26, (byte) 1);
    page.put(27, (byte) 19).position(28);
    page.put("Speex   ".getBytes(StandardCharsets.US_ASCII));
    page.putInt(22, crc(page.array()));
    assertThat(complaint(file("a.ogg", page.array()))).contains("not Vorbis").contains("WAV");
  }

  /** Ogg's checksum, RFC 3533 section 6: polynomial 04c11db7, no reflection, start 0. */
  private static int crc(byte[] page) {
    int crc = 0;
    for (byte b : page) {
      crc ^= b << 24;
      for (int i = 0; i < 8; i++) {
        crc = crc << 1 ^ (crc < 0 ? 0x04c11db7 : 0);
      }
    }
    return crc;
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 4_000, 7_999, 192_001, 384_000})
  void rateOutOfRange(int rate) throws IOException {
    assertThat(complaint(file("a.wav", wav(1, 1, rate, 16, new byte[100]))))
        .contains(rate + " Hz")
        .contains("44100");
  }

  @Test
  void noChannels() throws IOException {
    assertThat(complaint(file("a.wav", wav(1, 0, 44_100, 16, new byte[100]))))
        .contains("0 channels");
  }

  @ParameterizedTest
  @ValueSource(ints = {0x7fff_ffff, 0x4000_0001, -1, 1_000_000})
  void moreChannelsThanThereIsMemoryFor(int channels) throws IOException {
    ByteBuffer au = ByteBuffer.allocate(24 + 200);
    au.put(".snd".getBytes(StandardCharsets.US_ASCII)).putInt(24).putInt(199).putInt(3);
    au.putInt(44_100).putInt(channels);
    assertThat(complaint(file("a.au", au.array()))).contains("channels; 1 to 64 can be read");
  }

  /** Each channel's loudness is measured block by block: here there is none to compare. */
  @Test
  void twoSilentChannels() throws IOException {
    Path silent = file("a.wav", wav(1, 2, 8_000, 16, new byte[4 * 8_000]));
    assertThat(Takes.all(silent, Channel.AUTO)).hasSize(8_000).containsOnly(0);
  }

  /** RFC 9639, 8.6: a comment block begins with the length of its vendor's name. */
  @Test
  void flacThatClaimsAnEndlessComment() throws IOException {
    ByteBuffer flac = ByteBuffer.allocate(4 + 4 + 34 + 4 + 8);
    flac.put("fLaC".getBytes(StandardCharsets.US_ASCII)).putInt(34);
    // 4096 frames a block; 44,100 Hz, mono, 16 bits, no frames in all
    flac.putShort((short) 4096).putShort((short) 4096).put(new byte[6]);
    flac.putLong(44_100L << 44 | 15L << 36).put(new byte[16]);
    flac.putInt(0x84 << 24 | 8).putInt(0xffff_ff7f).putInt(0xffff_ff7f);
    assertThat(complaint(file("a.flac", flac.array()))).contains("zero samples");
  }

  private static byte[] wav(int format, int channels, int rate, int bits, byte[] sound) {
    ByteBuffer wav = ByteBuffer.allocate(44 + sound.length).order(ByteOrder.LITTLE_ENDIAN);
    wav.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(36 + sound.length);
    wav.put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII)).putInt(16);
    wav.putShort((short) format).putShort((short) channels).putInt(rate);
    wav.putInt(rate * channels * bits / 8).putShort((short) (channels * bits / 8));
    wav.putShort((short) bits).put("data".getBytes(StandardCharsets.US_ASCII));
    return wav.putInt(sound.length).put(sound).array();
  }
}
