package neckway.desk.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import neckway.Await;
import neckway.band.Backing;
import neckway.band.ChordRow;
import neckway.band.Feel;
import neckway.desk.DrillModel;
import neckway.desk.read.ClipOutput;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.file.SettingsFile;
import neckway.file.sound.WavWriter;
import neckway.live.LiveBacking;
import neckway.neck.BadInput;
import neckway.neck.Key;
import neckway.sound.Clip;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A recording of the player's own as a backing: its beat found, corrected, tapped and kept. */
class OwnRecordingTests {
  private static final int RATE = 44_100;
  private static final double TEMPO = 104;

  /** The band begins so late in the recording. */
  private static final double FIRST = 1.5;

  @TempDir Path folder;
  private SettingsFile settings;
  private Heard output;
  private OwnRecording own;

  /** An output whose player hears as much as the test says. */
  private static final class Heard implements ClipOutput {
    private int played;
    private int stopped;
    private volatile Ended told;
    private volatile double seconds;

    @Override
    public void play(Clip clip, Ended ended) {
      played++;
      told = ended;
    }

    @Override
    public void stop() {
      stopped++;
    }

    @Override
    public long framesHeard() {
      return Math.round(seconds * RATE);
    }
  }

  @BeforeEach
  void make() {
    settings = SettingsFile.at(folder.resolve("settings.json"));
    output = new Heard();
    own = own(settings);
  }

  private OwnRecording own(SettingsFile kept) {
    return new OwnRecording(kept, output, () -> 0.2);
  }

  private Path band(String name, double tempo) {
    Pulse pulse = new Pulse(tempo, 2, 4, 4);
    ChordRow row = ChordRow.parse("I vi IV V", Key.parse("A major"));
    float[] band = Backing.goingRound(row, Feel.SHUFFLE, pulse, 8).samples();
    float[] later = new float[band.length + (int) (FIRST * RATE)];
    System.arraycopy(band, 0, later, (int) (FIRST * RATE), band.length);
    return written(name, later);
  }

  private Path written(String name, float[] sound) {
    Path file = folder.resolve(name);
    try (WavWriter writer = new WavWriter(file, RATE, WavWriter.Coding.PCM_16)) {
      writer.write(sound, 0, sound.length);
      writer.finish();
    }
    return file;
  }

  private Path noise() {
    Random random = new Random(5);
    float[] noise = new float[12 * RATE];
    for (int i = 0; i < noise.length; i++) {
      noise[i] = (float) (0.1 * random.nextGaussian());
    }
    return written("noise.wav", noise);
  }

  private void choose(Path file) throws Exception {
    own.choose(file);
    assertThat(own.reading().get()).isTrue();
    awaitFrames("it is read", () -> !own.reading().get());
  }

  private void awaitFrames(String what, java.util.function.BooleanSupplier there) throws Exception {
    Await.until(
        what,
        20,
        () -> {
          own.frame();
          return there.getAsBoolean();
        });
  }

  private static PlayableDrill drill(double tempo) {
    DrillModel drills = new DrillModel();
    drills.tempo(tempo);
    return drills.drill();
  }

  @Test
  void beatIsFoundAndShownAndKept() throws Exception {
    Path file = band("band.wav", TEMPO);
    choose(file);
    assertThat(own.tempo().get()).isCloseTo(TEMPO, within(0.1));
    assertThat(own.firstBeat().get()).isCloseTo(FIRST, within(0.02));
    assertThat(own.line().get()).contains("not known for certain");
    own.nudgeBeats(4);
    own.nudge(OwnRecording.NUDGE_SECONDS);
    double corrected = FIRST + 4 * 60 / TEMPO + 0.01;
    assertThat(own.firstBeat().get()).isCloseTo(corrected, within(0.02));
    settings.save();

    OwnRecording next = own(SettingsFile.at(settings.path()));
    assertThat(next.file().get()).contains(file.toAbsolutePath());
    assertThat(next.tempo().get()).isEqualTo(own.tempo().get());
    assertThat(next.firstBeat().get()).isEqualTo(own.firstBeat().get());
    // it is read again when it is played, and nothing is looked for
    LiveBacking made = next.made(next.wanted(next.inTempo(drill(200))));
    assertThat(made.firstBeatSeconds()).isEqualTo(own.firstBeat().get());
  }

  @Test
  void fileThatIsNoSoundIsOneLineAndTheOneBeforeStays() throws Exception {
    Path file = band("band.wav", TEMPO);
    choose(file);
    own.tempo().set(52);
    Path text = Files.writeString(folder.resolve("notes.wav"), "buy strings, and a new cable\n");
    choose(text);
    assertThat(own.line().get()).contains("notes.wav", "not a sound file", "give WAV");
    assertThat(own.line().get().lines()).hasSize(1);
    assertThat(own.file().get()).contains(file.toAbsolutePath());
    assertThat(own.tempo().get()).isEqualTo(52);
    assertThat(settings.text("backingFile")).contains(file.toAbsolutePath().toString());
  }

  @Test
  void fileThatIsGoneIsOneLineWhenItIsToBePlayed() throws Exception {
    Path file = band("band.wav", TEMPO);
    choose(file);
    OwnRecording.Wanted wanted = own.wanted(own.inTempo(drill(80)));
    Files.delete(file);
    assertThatThrownBy(() -> own.made(wanted))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("band.wav")
        .satisfies(e -> assertThat(e.getMessage().lines()).hasSize(1));
  }

  @Test
  void whatHasNoBeatIsPlayedOnceItIsFilledIn() throws Exception {
    choose(noise());
    assertThat(own.line().get()).contains("No steady beat");
    assertThatThrownBy(() -> own.inTempo(drill(80)))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("noise.wav")
        .hasMessageContaining("tap");
    own.tempo().set(91);
    assertThat(own.inTempo(drill(120)).pulse().tempo()).isEqualTo(91);
  }

  @Test
  void aSlowerDrillSlowsItDownAtTheSamePitchAndAFasterOneIsPlayedAtItsTempo() throws Exception {
    choose(band("band.wav", TEMPO));
    own.tempo().set(100);
    own.firstBeat().set(2);
    PlayableDrill slower = own.inTempo(drill(80));
    assertThat(slower.pulse().tempo()).isEqualTo(80);
    LiveBacking slow = own.made(own.wanted(slower));
    assertThat(slow.firstBeatSeconds()).isCloseTo(2 / 0.8, within(1e-9));
    LiveBacking whole = own.made(own.wanted(own.inTempo(drill(100))));
    assertThat((double) slow.samples().length / whole.samples().length)
        .isCloseTo(1 / 0.8, within(0.01));
    assertThat(own.said(drill(80), slower)).contains("band.wav").contains("80").contains("80 %");

    PlayableDrill faster = own.inTempo(drill(130));
    assertThat(faster.pulse().tempo()).isEqualTo(100);
    assertThat(own.said(drill(130), faster)).contains("100").contains("not at 130");
    assertThatThrownBy(() -> own.inTempo(drill(24)))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("25 or more");
  }

  @Test
  void firstBeatBeyondTheEndIsOneLine() throws Exception {
    choose(band("band.wav", TEMPO));
    own.firstBeat().set(600);
    OwnRecording.Wanted wanted = own.wanted(own.inTempo(drill(80)));
    assertThatThrownBy(() -> own.made(wanted))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("600")
        .hasMessageContaining("beyond its end");
  }

  /** Off the beat that was found, so that it is the taps that tell. */
  @Test
  void tapsSetTheTempoAndTheLastOneTheBeatAndAreMadeExact() throws Exception {
    choose(band("band.wav", TEMPO));
    own.tempo().set(TEMPO / 2);
    own.firstBeat().set(FIRST + 0.2);
    own.tap();
    awaitFrames("it sounds", () -> output.played == 1);
    Random random = new Random(7);
    double beat = 60 / TEMPO;
    double last = 0;
    for (int tap = 0; tap < 6; tap++) {
      last = FIRST + (4 + tap) * beat + 0.02 * random.nextGaussian();
      output.seconds = last;
      own.tap();
      own.frame();
      if (tap == 2) {
        assertThat(own.tempo().get()).as("three are no tempo").isEqualTo(TEMPO / 2);
      }
    }
    assertThat(own.tempo().get()).isCloseTo(TEMPO, within(0.03 * TEMPO));
    double phase = (own.firstBeat().get() - last) / (60 / own.tempo().get());
    assertThat(phase - Math.rint(phase)).as("the last tap is a beat").isCloseTo(0, within(1e-4));
    own.hush();
    assertThat(output.stopped).isEqualTo(1);
    awaitFrames("it is exact", () -> own.line().get().contains("beats near it"));
    assertThat(own.tempo().get()).isCloseTo(TEMPO, within(0.1));
    double beats = (own.firstBeat().get() - FIRST) / beat;
    assertThat((beats - Math.rint(beats)) * beat).isCloseTo(0, within(0.012));
  }

  @Test
  void outputThatCannotBeOpenedIsOneLine() throws Exception {
    choose(band("band.wav", TEMPO));
    own.tap();
    awaitFrames("it sounds", () -> output.played == 1);
    output.told.ended("no sound output found on this machine");
    own.frame();
    assertThat(own.sounds().get()).isFalse();
    assertThat(own.line().get()).contains("no sound output");
  }

  /** By hand: beats at 0, 0.5, 1, 1.5 s are 120 a minute; a pause of four seconds begins anew. */
  @Test
  void fourTapsAreATempoAndAPauseBeginsAnew() {
    Taps taps = new Taps();
    for (double at : new double[] {10, 10.5, 11}) {
      taps.tap(at);
    }
    assertThat(taps.tapped()).isEmpty();
    taps.tap(11.5);
    assertThat(taps.tapped().orElseThrow().tempo()).isCloseTo(120, within(1e-9));
    assertThat(taps.tapped().orElseThrow().beatSeconds()).isEqualTo(11.5);
    taps.tap(15.5);
    assertThat(taps.count()).isEqualTo(1);
    assertThat(taps.tapped()).isEmpty();
  }
}
