package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import neckway.calibration.Calibration;
import neckway.cli.text.TerminalWidth;
import neckway.file.GuitarFile;
import neckway.file.sound.WavWriter;
import neckway.neck.Tuning;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.PlayedNote;
import neckway.player.settings.Guitar;
import neckway.player.settings.PlayerSettings;
import neckway.string.GuitarProfile;
import neckway.string.StringProfile;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CalibrateCommandTests {
  private static final PlayerSettings PLAYER =
      PlayerSettings.plain().withGuitar(Guitar.Model.ELECTRIC.plain());

  private static Performance played;

  @TempDir private Path folder;
  private StringWriter out;
  private StringWriter err;
  private Path take;
  private Path guitar;

  @BeforeAll
  static void play() {
    played = new VirtualPlayer(PLAYER).calibration(Tuning.STANDARD, Calibration.USUAL_FRETS, 7);
  }

  @BeforeEach
  void name() {
    out = new StringWriter();
    err = new StringWriter();
    take = folder.resolve("take.wav");
    guitar = folder.resolve("guitar.json");
  }

  private int calibrate(String... more) {
    List<String> args = new ArrayList<>(List.of("calibrate", take.toString()));
    args.addAll(List.of(more));
    return Main.run(new PrintWriter(out), new PrintWriter(err), args.toArray(String[]::new));
  }

  private int calibrateTo() {
    return calibrate("--out", guitar.toString());
  }

  /** The take with something done to it. */
  private void record(UnaryOperator<float[]> change) {
    write(change.apply(played.samples().clone()));
  }

  private void write(float[] samples) {
    try (WavWriter wav = new WavWriter(take, played.sampleRate(), WavWriter.Coding.PCM_16)) {
      wav.write(samples, 0, samples.length);
      wav.finish();
    }
  }

  private static int frame(int note) {
    List<PlayedNote> notes = played.notes();
    int early = played.sampleRate() / 50;
    return note == notes.size() ? played.samples().length : (int) notes.get(note).frame() - early;
  }

  /** The take with the sound from one note to another taken out. */
  private static float[] without(float[] samples, int from, int to) {
    float[] left = new float[samples.length - (frame(to) - frame(from))];
    System.arraycopy(samples, 0, left, 0, frame(from));
    System.arraycopy(samples, frame(to), left, frame(from), samples.length - frame(to));
    return left;
  }

  private void assertUnusable(int status, String... words) {
    assertThat(status).isEqualTo(2);
    assertThat(err.toString().lines()).singleElement().asString().contains(words);
    assertThat(out.toString()).isEmpty();
    assertThat(guitar).doesNotExist();
  }

  /** The first string has few partials, and is learnt half as well. */
  private void assertTruth(double within) {
    GuitarProfile profile = GuitarFile.read(guitar, Tuning.STANDARD);
    for (StringProfile string : profile.strings()) {
      double truth = PLAYER.guitar().stiffness().get(string.string().number() - 1);
      assertThat(Math.exp(string.lnStiffness()) / truth)
          .as("string " + string.string())
          .isCloseTo(1, within(string.string().number() == 1 ? 2 * within : within));
    }
  }

  @Test
  void learnsShowsAndWrites() {
    record(samples -> samples);
    assertThat(calibrateTo()).isZero();
    assertThat(err.toString()).isEmpty();
    assertTruth(0.06);
    List<String> lines = out.toString().lines().toList();
    assertThat(lines.get(1)).startsWith("6  E2").contains("told apart well");
    assertThat(lines.get(6)).startsWith("1  E4");
    assertThat(lines).allMatch(line -> line.length() <= TerminalWidth.columns());
    assertThat(out.toString()).contains("guitar.json");
  }

  @Test
  void withoutOutNothingIsWritten() throws IOException {
    record(samples -> samples);
    assertThat(calibrate()).isZero();
    try (var files = Files.list(folder)) {
      assertThat(files).containsExactly(take);
    }
  }

  @Tag("slow")
  @Test
  void skippedStringIsOneLineAndTheOlderProfileStays() throws IOException {
    record(samples -> without(samples, 8, 12));
    assertUnusable(calibrateTo(), "take.wav: string 4 (D3) was skipped");
    Files.writeString(guitar, "older");
    assertThat(calibrateTo()).isEqualTo(2);
    assertThat(guitar).hasContent("older");
  }

  @Tag("slow")
  @Test
  void skippedPluckIsToldAndTheRestLearnt() {
    record(samples -> without(samples, 14, 15));
    assertThat(calibrateTo()).isZero();
    assertThat(out.toString()).contains("String 3 (G3), fret 7 was not heard");
    assertTruth(0.08);
  }

  @Tag("slow")
  @Test
  void pluckTwiceIsToldAndUsed() {
    record(
        samples -> {
          float[] twice = new float[samples.length + frame(6) - frame(5)];
          System.arraycopy(samples, 0, twice, 0, frame(6));
          System.arraycopy(samples, frame(5), twice, frame(6), samples.length - frame(5));
          return twice;
        });
    assertThat(calibrateTo()).isZero();
    assertThat(out.toString()).contains("String 5 (A2), fret 3 was plucked more than once");
    assertTruth(0.06);
  }

  /** One note is another guitar's, of nearly three times the stiffness: a bad pluck. */
  @Tag("slow")
  @Test
  void badPluckIsLeftOut() {
    Guitar plain = Guitar.Model.ELECTRIC.plain();
    Guitar stiff =
        new Guitar(
            plain.stiffness().stream().map(b -> 2.7 * b).toList(),
            plain.ringSeconds(),
            plain.pickup(),
            plain.brightHz(),
            plain.lossPerKhz2(),
            0,
            plain.stringCents(),
            0,
            plain.woundStrings());
    Performance other =
        new VirtualPlayer(PLAYER.withGuitar(stiff))
            .calibration(Tuning.STANDARD, Calibration.USUAL_FRETS, 7);
    record(
        samples -> {
          System.arraycopy(other.samples(), frame(9), samples, frame(9), frame(10) - frame(9));
          return samples;
        });
    assertThat(calibrateTo()).isZero();
    assertThat(out.toString().replaceAll("\\s+", " "))
        .contains("String 4 (D3), fret 3 (at 9.6 s): this pluck sounds unlike the string's others");
    assertTruth(0.08);
  }

  @Test
  void silentTakeIsOneLine() {
    record(samples -> new float[samples.length]);
    assertUnusable(calibrateTo(), "take.wav: no notes are heard in it");
  }

  @Tag("slow")
  @Test
  void takeThatEndsTooSoonIsOneLine() {
    record(samples -> without(samples, 20, 24));
    assertUnusable(calibrateTo(), "take.wav: string 1 (E4) was skipped");
  }

  @Test
  void otherTakeIsOneLine() {
    take = Path.of("test-audio", "three-slips.wav");
    assertUnusable(calibrateTo(), "three-slips.wav", "notes of the calibration sequence are heard");
  }

  @Test
  void unusableArgumentsAreOneLine() {
    record(samples -> samples);
    assertUnusable(calibrate("--frets", "0,x"), "--frets 0,x: give frets of 0 to 24 with commas");
    err.getBuffer().setLength(0);
    assertUnusable(calibrate("--frets", "0,3,3"), "--frets: a fret stands there twice");
    err.getBuffer().setLength(0);
    assertUnusable(calibrate("--tuning", "E2 A2"), "--tuning");
    err.getBuffer().setLength(0);
    assertUnusable(calibrate("--out", take.toString()), "is the same file as the take");
    err.getBuffer().setLength(0);
    assertUnusable(calibrate("--channel", "middle"), "--channel");
    err.getBuffer().setLength(0);
    assertUnusable(
        calibrate("--out", folder.resolve("none/g.json").toString()), "its folder does not exist");
    err.getBuffer().setLength(0);
    take = folder.resolve("none.wav");
    assertUnusable(calibrateTo(), "none.wav", "no such file");
  }

  @Tag("slow")
  @Test
  void sevenStringsAndDropDAreLearnt() {
    for (String names : List.of("B1 E2 A2 D3 G3 B3 E4", "D2 A2 D3 G3 B3 E4")) {
      Tuning tuning = Tuning.parse(names);
      Performance other = new VirtualPlayer(PLAYER).calibration(tuning, Calibration.USUAL_FRETS, 3);
      write(other.samples());
      assertThat(calibrate("--tuning", names, "--out", guitar.toString())).isZero();
      GuitarProfile profile = GuitarFile.read(guitar, tuning);
      for (StringProfile string : profile.strings()) {
        double truth = PLAYER.guitar().stiffness().get(string.string().number() - 1);
        assertThat(Math.exp(string.lnStiffness()) / truth)
            .as(names + ", string " + string.string())
            .isCloseTo(1, within(string.string().number() == 1 ? 0.15 : 0.08));
      }
    }
  }
}
