package neckway.file.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.logging.ConsoleHandler;
import java.util.logging.Handler;
import java.util.logging.Logger;
import neckway.neck.BadInput;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What phones write, AAC in MP4 and Opus in Ogg: made by ffmpeg, and held against what ffmpeg's own
 * decoders make of it.
 */
@Tag("programs")
class PhoneRecordingTests {
  private static final Path GUITAR = Path.of("test-audio/three-slips.wav").toAbsolutePath();
  private static final int AAC_FRAME = 1024;
  private static final int MOST_LAG = 1500;

  @TempDir Path folder;

  private Path ffmpeg(String name, String... options) throws Exception {
    List<String> command =
        new ArrayList<>(List.of("ffmpeg", "-v", "error", "-y", "-i", "" + GUITAR));
    command.addAll(Arrays.asList(options));
    command.add(name);
    Tools.run(folder, command.toArray(String[]::new));
    return folder.resolve(name);
  }

  /** What ffmpeg decodes, as floats. */
  private float[] ffmpegSound(Path coded) throws Exception {
    Tools.run(
        folder, "ffmpeg", "-v", "error", "-y", "-i", "" + coded, "-c:a", "pcm_f32le", "ref.wav");
    return Takes.all(folder.resolve("ref.wav"), Channel.LEFT);
  }

  private static double snrDb(float[] ours, float[] theirs, int lag) {
    double error = 0;
    double power = 0;
    int length = Math.min(ours.length, theirs.length);
    for (int i = MOST_LAG; i < length - MOST_LAG; i++) {
      double difference = ours[i + lag] - theirs[i];
      error += difference * difference;
      power += (double) theirs[i] * theirs[i];
    }
    return 10 * Math.log10(power / error);
  }

  /** The sound is the same, and no shift by a sample or more makes it more alike. */
  private static void assertSame(float[] ours, float[] theirs, double leastDb) {
    double best = snrDb(ours, theirs, 0);
    assertThat(best).as("signal to difference in dB").isGreaterThan(leastDb);
    for (int lag : new int[] {-1024, -529, -312, -2, -1, 1, 2, 312, 529, 1024}) {
      assertThat(snrDb(ours, theirs, lag)).as("shifted by " + lag).isLessThan(best);
    }
  }

  private String warningOf(Path path) {
    try (TakeReader reader = TakeReader.open(path, Channel.LEFT)) {
      float[] buffer = new float[4096];
      int got = 1;
      while (got > 0) {
        got = reader.read(buffer);
      }
      return reader.warning().orElse(null);
    }
  }

  /**
   * Two tools of AAC leave room: noise in place of noise is drawn by chance, and noise shaping is
   * rounded by each decoder in its own way. With both off nothing but rounding is left.
   */
  @ParameterizedTest
  @CsvSource({
    "a.m4a, -b:a 128k, 40",
    "low.m4a, -b:a 64k, 40",
    "stereo.m4a, -ac 2 -ar 48000 -b:a 128k, 40",
    "slow.m4a, -ar 22050 -b:a 64k, 40",
    "phone.3gp, -ar 16000 -ac 1 -b:a 48k -c:a aac, 40",
    "fast.m4a, -b:a 128k -movflags +faststart, 40",
    "quick.mov, -b:a 128k -c:a aac, 40",
    "loud.m4a, -af volume=12dB -b:a 128k, 40",
    "exact.m4a, -b:a 64k -aac_pns 0 -aac_tns 0, 90",
    "film.mp4, -f lavfi -i testsrc=size=64x64:rate=5 -map 1:v -map 0:a -shortest -c:v mpeg4 -b:a 128k, 40",
  })
  void aacIsWhatFfmpegDecodes(String name, String options, double leastDb) throws Exception {
    Path coded = ffmpeg(name, options.split(" "));
    float[] ours = Takes.all(coded, Channel.LEFT);
    float[] theirs = ffmpegSound(coded);
    assertThat(Math.abs(ours.length - theirs.length)).isLessThanOrEqualTo(AAC_FRAME);
    assertSame(ours, theirs, leastDb);
    assertThat(warningOf(coded)).isNull();
    try (TakeReader reader = TakeReader.open(coded, Channel.LEFT)) {
      assertThat(reader.frames()).hasValue(ours.length);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "music.opus, -ac 2 -b:a 96k",
    "mono.opus, -ac 1 -b:a 64k",
    "speech.opus, -ac 1 -b:a 24k -application voip",
    "long.opus, -ac 1 -b:a 16k -frame_duration 60",
    "other.ogg, -c:a libopus -b:a 64k"
  })
  void opusIsWhatFfmpegDecodes(String name, String options) throws Exception {
    Path coded = ffmpeg(name, options.split(" "));
    float[] ours = Takes.all(coded, Channel.LEFT);
    float[] theirs = ffmpegSound(coded);
    assertThat(ours).hasSameSizeAs(theirs);
    assertSame(ours, theirs, 30);
    assertThat(warningOf(coded)).isNull();
  }

  /** RFC 7845, 5.1: the gain is a number of 256ths of a decibel, to be added when decoding. */
  @Test
  void gainInTheOpusHeadIsApplied() throws Exception {
    Path coded = ffmpeg("a.opus", "-ac", "1", "-b:a", "64k");
    float[] plain = Takes.all(coded, Channel.LEFT);
    byte[] file = Files.readAllBytes(coded);
    int segments = file[26];
    int gainAt = 27 + segments + 16;
    file[gainAt + 1] = -6;
    sealOggPages(file);
    float[] quieter = Takes.all(Files.write(folder.resolve("q.opus"), file), Channel.LEFT);
    assertThat(quieter).hasSameSizeAs(plain);
    for (int i = 0; i < plain.length; i++) {
      assertThat(Math.abs(quieter[i] - plain[i] * Math.pow(10, -6 / 20.0))).isLessThan(1e-6);
    }
  }

  /** Gives each Ogg page the checksum that fits it, so that readers do not pass it over. */
  private static void sealOggPages(byte[] file) {
    String letters = new String(file, StandardCharsets.ISO_8859_1);
    for (int page = letters.indexOf("OggS"); page >= 0; page = letters.indexOf("OggS", page + 4)) {
      int bodyAt = page + 27 + (page + 26 < file.length ? file[page + 26] & 0xff : 0);
      int end = bodyAt;
      for (int segment = page + 27; segment < Math.min(bodyAt, file.length); segment++) {
        end += file[segment] & 0xff;
      }
      if (end <= file.length && bodyAt < file.length) {
        ByteBuffer bytes = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN);
        bytes.putInt(page + 22, 0);
        bytes.putInt(page + 22, oggCrc(file, page, end));
      }
    }
  }

  /** RFC 3533, 6: polynomial 04c11db7, no reflection, start 0. */
  private static int oggCrc(byte[] file, int from, int to) {
    int crc = 0;
    for (int b = from; b < to; b++) {
      crc ^= file[b] << 24;
      for (int i = 0; i < 8; i++) {
        crc = crc << 1 ^ (crc < 0 ? 0x04c11db7 : 0);
      }
    }
    return crc;
  }

  @Test
  void fileThatTellsNoSilenceIsReadAndThatIsSaid() throws Exception {
    byte[] file = Files.readAllBytes(ffmpeg("a.m4a", "-b:a", "128k"));
    String letters = new String(file, StandardCharsets.ISO_8859_1);
    file[letters.indexOf("edts")] = 'f';
    Path bare = Files.write(folder.resolve("bare.m4a"), file);
    assertSame(Takes.all(bare, Channel.LEFT), ffmpegSound(folder.resolve("a.m4a")), 40);
    assertThat(warningOf(bare)).contains("bare.m4a").contains("25 ms late");
  }

  /**
   * iTunes' note stands where there is no edit list: priming, padding and length in hexadecimal.
   * Here it is laid into a comment, for want of a program that writes it.
   */
  @Test
  void notedSilenceIsTakenOff() throws Exception {
    String note = "iTunSMPB....data........ 00000000 00000840 00000000 0000000000030D40 00000000";
    byte[] file =
        Files.readAllBytes(
            ffmpeg("a.m4a", "-b:a", "128k", "-aac_pns", "0", "-metadata", "comment=" + note));
    float[] edited = Takes.all(folder.resolve("a.m4a"), Channel.LEFT);
    file[new String(file, StandardCharsets.ISO_8859_1).indexOf("edts")] = 'f';
    Path noted = Files.write(folder.resolve("noted.m4a"), file);
    int later = 0x840 - 1024;
    assertThat(Takes.all(noted, Channel.LEFT))
        .isEqualTo(Arrays.copyOfRange(edited, later, later + 200_000));
    assertThat(warningOf(noted)).isNull();
  }

  /** ISO/IEC 14496-3, 1.6.2.1 and 1.6.6: HE-AAC told openly, and behind a setting of plain AAC. */
  @ParameterizedTest
  @CsvSource({"2B920800", "1390 56E580", "EB920800"})
  void heAacIsRefused(String hex) {
    byte[] setting = HexFormat.of().parseHex(hex.replace(" ", ""));
    assertThatThrownBy(() -> AacConfig.read(Path.of("a.m4a"), setting))
        .isInstanceOf(BadInput.class)
        .hasMessage("a.m4a: its sound is HE-AAC, which cannot be read; convert it to WAV or FLAC");
  }

  @Test
  void kindIsToldByContentNotByName() throws Exception {
    Path named = folder.resolve("take.wav");
    Files.move(ffmpeg("a.m4a", "-t", "1"), named);
    assertThat(Takes.all(named, Channel.AUTO)).hasSize(44_100);
    Files.delete(named);
    Files.move(ffmpeg("a.opus", "-t", "1"), named);
    assertThat(Takes.all(named, Channel.AUTO)).hasSize(48_000);
  }

  @ParameterizedTest
  @CsvSource({
    "alac.m4a, -c:a alac, ALAC",
    "frag.mp4, -movflags frag_keyframe+empty_moov, fragments",
    "mp3.mp4, -c:a mp3, MP3 inside MP4",
    "a.wma, -c:a wmav2, WMA",
    "raw.aac, -c:a aac, ADTS",
    "a.webm, -c:a libopus, WebM",
    "a.caf, -c:a pcm_s16le, CAF",
    "six.opus, -ac 6 -b:a 128k, surround",
  })
  void whatCannotBeReadIsToldInOneLine(String name, String options, String named) throws Exception {
    assertThat(refusal(ffmpeg(name, ("-t 1 " + options).split(" "))))
        .contains(named)
        .contains("convert it to WAV or FLAC");
  }

  @Test
  void amrIsToldInOneLine() throws IOException {
    byte[] amr = "#!AMR\n\u0014some bytes of it".getBytes(StandardCharsets.ISO_8859_1);
    assertThat(refusal(Files.write(folder.resolve("a.amr"), amr)))
        .contains("AMR")
        .contains("convert it to WAV");
  }

  @Test
  void filmWithoutSoundIsToldInOneLine() throws Exception {
    Path film =
        ffmpeg(
            "a.mp4", "-f lavfi -i testsrc=size=64x64:rate=5 -map 1:v -t 1 -c:v mpeg4".split(" "));
    assertThat(refusal(film)).contains("no sound in it");
  }

  private String refusal(Path path) {
    BadInput bad = catchThrowableOfType(BadInput.class, () -> Takes.all(path, Channel.AUTO));
    assertThat(bad).as("nothing was said about " + path).isNotNull();
    assertThat(bad.getMessage().lines()).hasSize(1);
    assertThat(bad.getMessage()).startsWith(path.toString());
    return bad.getMessage();
  }

  @ParameterizedTest
  @CsvSource({"a.m4a, -movflags +faststart", "a.opus, -ac 2"})
  void soundCutShortIsReadAndSaid(String name, String options) throws Exception {
    Path whole = ffmpeg(name, options.split(" "));
    int all = Takes.all(whole, Channel.LEFT).length;
    byte[] bytes = Files.readAllBytes(whole);
    Path cut = Files.write(folder.resolve("cut"), Arrays.copyOf(bytes, bytes.length / 2));
    assertThat(Takes.all(cut, Channel.LEFT).length).isBetween(all / 4, 3 * all / 4);
    assertThat(warningOf(cut)).contains("cut short");
  }

  @Test
  void recordingThatWasNotFinishedIsTold() throws Exception {
    byte[] whole = Files.readAllBytes(ffmpeg("a.m4a", "-b:a", "64k"));
    Path cut = Files.write(folder.resolve("cut.m4a"), Arrays.copyOf(whole, whole.length / 2));
    assertThat(refusal(cut)).contains("not finished").contains("another copy");
  }

  /** A frame of garbage is silence of its own length: what comes after it stands where it stood. */
  @Test
  void frameThatCannotBeDecodedIsSilenceOfItsOwnLength() throws Exception {
    Path whole = ffmpeg("a.m4a", "-b:a", "128k", "-aac_pns", "0");
    Mp4Sound table = Mp4Header.read(whole);
    byte[] bytes = Files.readAllBytes(whole);
    int at = (int) table.offsets()[200];
    Arrays.fill(bytes, at, at + table.sizes()[200], (byte) 0xff);
    Path spoilt = Files.write(folder.resolve("spoilt.m4a"), bytes);
    float[] before = Takes.all(whole, Channel.LEFT);
    float[] after = Takes.all(spoilt, Channel.LEFT);
    assertThat(after).hasSameSizeAs(before);
    int from = 203 * AAC_FRAME;
    assertThat(Arrays.copyOfRange(after, from, after.length))
        .isEqualTo(Arrays.copyOfRange(before, from, before.length));
    assertThat(warningOf(spoilt)).contains("1 of ").contains("23 ms").contains("silence");
  }

  /** The decoder tells its log of each frame that ends too early; none of it reaches the player. */
  @Test
  void decodersLogStaysSilent() throws Exception {
    Path whole = ffmpeg("a.m4a", "-b:a", "128k");
    Mp4Sound table = Mp4Header.read(whole);
    byte[] bytes = Files.readAllBytes(whole);
    for (int frame = 100; frame < 200; frame++) {
      int at = (int) table.offsets()[frame] + table.sizes()[frame] / 2;
      Arrays.fill(bytes, at, at + table.sizes()[frame] / 2, (byte) 0x55);
    }
    List<String> told = new ArrayList<>();
    Handler ear = new ConsoleHandler();
    ear.setFilter(record -> !told.add(record.getMessage()));
    Logger.getLogger("").addHandler(ear);
    try {
      Takes.all(Files.write(folder.resolve("spoilt.m4a"), bytes), Channel.LEFT);
    } finally {
      Logger.getLogger("").removeHandler(ear);
    }
    assertThat(told).isEmpty();
  }

  @Tag("slow")
  @ParameterizedTest
  @CsvSource({"a.m4a, -b:a 64k", "a.opus, -b:a 32k"})
  void spoiltFilesAreReadOrRefusedInOneLine(String name, String options) throws Exception {
    byte[] whole = Files.readAllBytes(ffmpeg(name, ("-t 3 " + options).split(" ")));
    int headFrom = Math.max(0, new String(whole, StandardCharsets.ISO_8859_1).indexOf("moov") - 4);
    int headBytes = headFrom > 0 ? whole.length - headFrom : 200;
    Random random = new Random(11);
    int read = 0;
    int refused = 0;
    for (int file = 0; file < 300; file++) {
      byte[] spoilt = whole.clone();
      for (int times = 1 + random.nextInt(4); times > 0; times--) {
        boolean head = random.nextInt(3) > 0;
        int at = head ? headFrom + random.nextInt(headBytes) : random.nextInt(spoilt.length);
        spoil(spoilt, Math.min(at, spoilt.length - 1), random);
      }
      if (random.nextInt(4) > 0) {
        sealOggPages(spoilt);
      }
      int length = random.nextInt(8) == 0 ? 1 + random.nextInt(spoilt.length) : spoilt.length;
      Path path = Files.write(folder.resolve("spoilt-" + name), Arrays.copyOf(spoilt, length));
      long start = System.nanoTime();
      try {
        Takes.all(path, Channel.AUTO);
        read++;
      } catch (BadInput bad) {
        assertThat(bad.getMessage().lines()).as("file " + file).hasSize(1);
        refused++;
      } catch (RuntimeException fault) {
        throw new AssertionError("file " + file, fault);
      }
      assertThat((System.nanoTime() - start) / 1e9).as("file " + file).isLessThan(15);
    }
    assertThat(read).isGreaterThan(30);
    assertThat(refused).isGreaterThan(30);
  }

  private static void spoil(byte[] bytes, int at, Random random) {
    switch (random.nextInt(3)) {
      case 0 -> bytes[at] ^= (byte) (1 << random.nextInt(8));
      case 1 -> bytes[at] = (byte) random.nextInt(256);
      default -> {
        byte with = new byte[] {0, (byte) 0xff, 0x7f, (byte) 0x80}[random.nextInt(4)];
        Arrays.fill(bytes, at, Math.min(bytes.length, at + 1 + random.nextInt(8)), with);
      }
    }
  }
}
