package neckway.file.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Files of every kind, written by hand or by the tools of others, held against what went in. */
class TakeReaderTests {
  @TempDir Path folder;

  @Tag("programs")
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          # name, options, largest error allowed (half a step of the coding; G.711: 2 %)
          u8.wav,       -b 8,                          0.0040
          s16.wav,      -b 16,                         0.00002
          s24.wav,      -b 24,                         0.00000012
          s32.wav,      -b 32 -e signed-integer,       0.00000012
          f32.wav,      -b 32 -e floating-point,       0.00000012
          f64.wav,      -b 64 -e floating-point,       0.00000012
          mulaw.wav,    -e mu-law,                     0.02
          alaw.wav,     -e a-law,                      0.02
          s8.aiff,      -b 8,                          0.0040
          s16.aiff,     -b 16,                         0.00002
          s24.aiff,     -b 24,                         0.00000012
          s32.aiff,     -b 32,                         0.00000012
          s16.aifc,     -b 16,                         0.00002
          f32.aifc,     -b 32 -e floating-point,       0.00000012
          f64.aifc,     -b 64 -e floating-point,       0.00000012
          s16.au,       -b 16,                         0.00002
          s24.au,       -b 24,                         0.00000012
          f32.au,       -b 32 -e floating-point,       0.00000012
          mulaw.au,     -e mu-law,                     0.02
          s16.flac,     -b 16,                         0.00002
          s24.flac,     -b 24,                         0.00000012
          s8.flac,      -b 8,                          0.0040
          q.ogg,        -C 10,                         0.02
          """)
  void everyCodingThatSoxWritesIsRead(String name, String options, float most) throws Exception {
    soxSine(options, name);
    float[] sound = Takes.all(folder.resolve(name), Channel.AUTO);
    assertThat(sound.length).isEqualTo(24_000);
    for (int i = 0; i < sound.length; i++) {
      float wanted = (float) (0.5 * Math.sin(2 * Math.PI * 441 * i / 48_000));
      assertThat(Math.abs(sound[i] - wanted)).as(name + " at " + i).isLessThan(most);
    }
    assertThat(warningOf(name)).isNull();
  }

  @Tag("programs")
  @ParameterizedTest
  @ValueSource(ints = {8_000, 11_025, 22_050, 44_100, 88_200, 96_000, 192_000})
  void everyRateIsTold(int rate) throws Exception {
    Tools.run(folder, "sox", "-r", "" + rate, "-n", "a.aiff", "synth", "100s", "sine", "441");
    Tools.run(folder, "sox", "a.aiff", "b.wav");
    for (String name : new String[] {"a.aiff", "b.wav"}) {
      try (TakeReader reader = TakeReader.open(folder.resolve(name), Channel.AUTO)) {
        assertThat(reader.sampleRate()).isEqualTo(rate);
        assertThat(reader.frames()).hasValue(100);
      }
    }
  }

  /** LAME's own tag (Mp3 Info Tag revision 1) tells the silence in front: it is taken off. */
  @Tag("programs")
  @ParameterizedTest
  @CsvSource({"44100, -V2", "48000, -b128", "22050, -b64", "44100, -b320", "32000, -V5"})
  void clickInAnMp3StandsWhereItStoodInTheWav(int rate, String quality) throws Exception {
    writeClick("click.wav", rate);
    Tools.run(folder, "lame", "--quiet", "--resample", "" + rate / 1000.0, quality, "click.wav");
    Path mp3 = folder.resolve("click.mp3");
    float[] sound = Takes.all(mp3, Channel.AUTO);
    assertThat(sound.length).isEqualTo(rate);
    assertThat(loudest(sound)).isBetween(rate / 2 - 1, rate / 2 + 1);
    assertThat(warningOf("click.mp3")).isNull();
  }

  @Tag("programs")
  @Test
  void mp3WithoutTheTagIsReadAndItsLatenessIsSaid() throws Exception {
    writeClick("click.wav", 44_100);
    Tools.run(folder, "lame", "--quiet", "-t", "click.wav", "bare.mp3");
    float[] sound = Takes.all(folder.resolve("bare.mp3"), Channel.AUTO);
    double lateMs = (loudest(sound) - 22_050) / 44.1;
    assertThat(lateMs).isBetween(20.0, 50.0);
    assertThat(warningOf("bare.mp3")).contains("bare.mp3").contains("25 to 50 ms late");
  }

  @Tag("programs")
  @Test
  void clickInAnOggStandsWhereItStoodInTheWav() throws Exception {
    writeClick("click.wav", 44_100);
    Tools.run(folder, "oggenc", "-Q", "-q", "8", "click.wav");
    float[] sound = Takes.all(folder.resolve("click.ogg"), Channel.AUTO);
    assertThat(sound.length).isEqualTo(44_100);
    assertThat(loudest(sound)).isBetween(22_049, 22_051);
  }

  @Tag("programs")
  @Test
  void kindIsToldByContentNotByName() throws Exception {
    soxSine("-b 16", "a.flac");
    Files.move(folder.resolve("a.flac"), folder.resolve("b.wav"));
    assertThat(Takes.all(folder.resolve("b.wav"), Channel.AUTO).length).isEqualTo(24_000);
  }

  @Test
  void handMadeFileWithOddChunksBeforeTheSound() throws IOException {
    ByteBuffer wav = riff(200);
    chunk(wav, "LIST", "INFOISFT\u0003\0\0\0me\0\0".getBytes(StandardCharsets.ISO_8859_1));
    chunk(wav, "odd ", new byte[] {1, 2, 3});
    chunk(wav, "fmt ", format(0xfffe, 1, 8_000, 16));
    chunk(wav, "data", new byte[] {0, 0x40, 0, (byte) 0xc0, 0, 0});
    assertThat(Takes.all(write("odd.wav", wav), Channel.AUTO)).containsExactly(0.5f, -0.5f, 0f);
  }

  /** EBU Tech 3306: the true sizes stand in 'ds64' and the old fields are all ones. */
  @Test
  void handMadeRf64() throws IOException {
    ByteBuffer wav = riff(200);
    wav.put(0, "RF64".getBytes(StandardCharsets.US_ASCII)).putInt(4, -1);
    ByteBuffer sizes = ByteBuffer.allocate(28).order(ByteOrder.LITTLE_ENDIAN);
    sizes.putLong(90).putLong(4).putLong(2).putInt(0);
    chunk(wav, "ds64", sizes.array());
    chunk(wav, "fmt ", format(1, 1, 8_000, 16));
    int at = wav.position() + 4;
    chunk(wav, "data", new byte[] {0, 0x40, 0, (byte) 0xc0});
    wav.putInt(at, -1);
    chunk(wav, "more", new byte[8]);
    assertThat(Takes.all(write("long.wav", wav), Channel.AUTO)).containsExactly(0.5f, -0.5f);
  }

  @Test
  void handMadeLittleEndianAifc() throws IOException {
    ByteBuffer aifc = ByteBuffer.allocate(200);
    aifc.put("FORM".getBytes(StandardCharsets.US_ASCII)).putInt(0);
    aifc.put("AIFC".getBytes(StandardCharsets.US_ASCII));
    ByteBuffer common = ByteBuffer.allocate(24);
    common.putShort((short) 1).putInt(2).putShort((short) 16);
    // 44100 as an 80-bit number: Apple's AIFF 1.3 shows 400E AC44 0000 0000 0000
    common.putShort((short) 0x400e).putInt(0xac440000).putInt(0);
    common.put("sowt".getBytes(StandardCharsets.US_ASCII)).putShort((short) 0);
    chunk(aifc, "COMM", common.array());
    chunk(aifc, "SSND", new byte[] {0, 0, 0, 0, 0, 0, 0, 0, 0, 0x40, 0, (byte) 0xc0});
    Path path = write("s.aifc", aifc);
    assertThat(Takes.all(path, Channel.AUTO)).containsExactly(0.5f, -0.5f);
    try (TakeReader reader = TakeReader.open(path, Channel.AUTO)) {
      assertThat(reader.sampleRate()).isEqualTo(44_100);
    }
  }

  private void soxSine(String options, String name) throws Exception {
    String line =
        "sox -D -n -r 48000 -c 1 " + options + " " + name + " synth 24000s sine 441 vol 0.5";
    Tools.run(folder, line.split(" +"));
  }

  private void writeClick(String name, int rate) {
    float[] sound = new float[rate];
    int wide = rate / 4_000;
    for (int i = -wide; i <= wide; i++) {
      sound[rate / 2 + i] = (float) (0.4 * (1 + Math.cos(Math.PI * i / wide)));
    }
    try (WavWriter writer = new WavWriter(folder.resolve(name), rate, WavWriter.Coding.PCM_16)) {
      writer.write(sound, 0, sound.length);
      writer.finish();
    }
  }

  private static int loudest(float[] sound) {
    int at = 0;
    for (int i = 0; i < sound.length; i++) {
      at = Math.abs(sound[i]) > Math.abs(sound[at]) ? i : at;
    }
    return at;
  }

  private String warningOf(String name) {
    try (TakeReader reader = TakeReader.open(folder.resolve(name), Channel.AUTO)) {
      float[] buffer = new float[1000];
      int got = 1;
      while (got > 0) {
        got = reader.read(buffer);
      }
      return reader.warning().orElse(null);
    }
  }

  private static ByteBuffer riff(int room) {
    ByteBuffer wav = ByteBuffer.allocate(room).order(ByteOrder.LITTLE_ENDIAN);
    wav.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(100);
    return wav.put("WAVE".getBytes(StandardCharsets.US_ASCII));
  }

  private static byte[] format(int format, int channels, int rate, int bits) {
    ByteBuffer body = ByteBuffer.allocate(format == 0xfffe ? 40 : 16);
    body.order(ByteOrder.LITTLE_ENDIAN).putShort((short) format).putShort((short) channels);
    body.putInt(rate).putInt(rate * channels * bits / 8);
    body.putShort((short) (channels * bits / 8)).putShort((short) bits);
    if (format == 0xfffe) {
      body.putShort((short) 22).putShort((short) bits).putInt(4).putShort((short) 1);
    }
    return body.array();
  }

  private static void chunk(ByteBuffer file, String name, byte[] body) {
    file.put(name.getBytes(StandardCharsets.US_ASCII)).putInt(body.length).put(body);
    if (body.length % 2 == 1) {
      file.put((byte) 0);
    }
  }

  private Path write(String name, ByteBuffer bytes) throws IOException {
    Path path = folder.resolve(name);
    byte[] used = new byte[bytes.position()];
    bytes.get(0, used);
    return Files.write(path, used);
  }
}
