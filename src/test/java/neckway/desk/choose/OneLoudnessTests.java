package neckway.desk.choose;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import neckway.Await;
import neckway.desk.Desk;
import neckway.desk.DrillModel;
import neckway.desk.RouteSound;
import neckway.desk.VolumeModel;
import neckway.desk.choose.HearModel.State;
import neckway.desk.read.ClipOutput;
import neckway.desk.read.ReadTake;
import neckway.desk.read.ReadingModel;
import neckway.drill.PlayableDrill;
import neckway.file.SettingsFile;
import neckway.file.sound.WavWriter;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.PlayerSettings;
import neckway.review.Clock;
import neckway.review.Review;
import neckway.run.Run;
import neckway.sound.ClickTrack;
import neckway.sound.Clip;
import neckway.sound.Levelling;
import neckway.sound.Loudness;
import neckway.sound.PlayedSound;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever is played back comes out of the output as loud as anything else. */
class OneLoudnessTests {
  /** Louder or quieter than another by this is a jolt; what is asked for. */
  private static final double MOST_APART_LU = 3;

  private static final double VOLUME = 0.2;
  private static final int BLOCK = 512;

  @TempDir private Path folder;
  private final PlayableDrill drill = new DrillModel().drill();
  private final Map<String, Double> loudness = new LinkedHashMap<>();

  /** Keeps what was asked to be played, for Read. */
  private static final class Kept implements ClipOutput {
    private final List<Clip> clips = new ArrayList<>();

    @Override
    public void play(Clip clip, Ended ended) {
      clips.add(clip);
    }

    @Override
    public void stop() {
      // plays nothing
    }

    @Override
    public long framesHeard() {
      return 0;
    }

    Clip last() {
      return clips.get(clips.size() - 1);
    }
  }

  /** Takes all that is played at once, for Choose. */
  private static final class AtOnce implements HearModel.Outlet {
    private volatile Clip clip;

    @Override
    public HearModel.Playing play(PlayedSound sound, int sampleRate) {
      clip = (Clip) sound;
      return new HearModel.Playing() {
        @Override
        public long framesHeard() {
          return clip.frames();
        }

        @Override
        public boolean gone() {
          return false;
        }

        @Override
        public void close() {
          // nothing is open
        }
      };
    }
  }

  private void measure(String what, Clip clip) {
    int frames = clip.loop() ? 3 * clip.frames() : clip.frames();
    float[] out = new float[frames];
    float[] block = new float[BLOCK];
    float peak = 0;
    for (int at = 0; at < frames; at += BLOCK) {
      clip.fill(at, block);
      System.arraycopy(block, 0, out, at, Math.min(BLOCK, frames - at));
    }
    for (float sample : out) {
      peak = Math.max(peak, Math.abs(sample));
    }
    assertThat(peak).as(what + ": peak").isLessThanOrEqualTo((float) (VOLUME * Levelling.CEILING));
    loudness.put(what, Loudness.integrated(out, clip.sampleRate()).orElseThrow());
  }

  private ReadTake take(double gain) {
    Performance played =
        new VirtualPlayer(PlayerSettings.plain()).play(drill.route(), drill.pulse(), List.of(), 4);
    float[] sound = played.samples().clone();
    for (int i = 0; i < sound.length; i++) {
      sound[i] *= (float) gain;
    }
    Run run =
        new Run(
            drill,
            Optional.empty(),
            played.sampleRate(),
            OptionalDouble.of(played.firstBeat()),
            Clock.MEASURED,
            verdict -> {});
    run.feed(played.samples(), 0, played.samples().length);
    Review review = run.finish();
    Path file = folder.resolve("take-" + gain + ".wav");
    try (WavWriter writer = new WavWriter(file, played.sampleRate(), WavWriter.Coding.FLOAT_32)) {
      writer.write(sound, 0, sound.length);
      writer.finish();
    }
    return ReadTake.played(drill, review, Optional.of(file), OptionalInt.empty());
  }

  @Test
  void everyPlaybackIsAsLoudAsEveryOther() throws Exception {
    AtOnce outlet = new AtOnce();
    HearModel hear = new HearModel(outlet, Runnable::run, line -> {});
    hear.gain(VOLUME);
    hear.toggle(drill);
    Await.until(
        "it was played", 30, () -> outlet.clip != null && hear.state().get() == State.SILENT);
    measure("hear it", outlet.clip);
    Kept kept = new Kept();
    ReadingModel reading = new ReadingModel(kept, () -> VOLUME, Runnable::run, Runnable::run);
    for (double gain : new double[] {1, 0.03}) {
      reading.open(take(gain));
      reading.hear();
      measure("take x " + gain, kept.last());
      reading.loopShift();
      measure("loop x " + gain, kept.last());
      reading.nextSpeed();
      reading.nextSpeed();
      measure("slow loop x " + gain, kept.last());
      reading.nextSpeed();
    }
    reading.hearModel();
    measure("how it should sound", kept.last());
    double least = loudness.values().stream().min(Double::compare).orElseThrow();
    double most = loudness.values().stream().max(Double::compare).orElseThrow();
    assertThat(most - least).as(loudness.toString()).isLessThan(MOST_APART_LU);
    double asked = Levelling.TARGET_LKFS + 20 * Math.log10(VOLUME);
    assertThat(loudness.values()).allSatisfy(l -> assertThat(l).isEqualTo(asked, within(1.5)));
  }

  /**
   * Whoever has turned an amplifier up for the usual click of a run is not startled by what is
   * played back at the usual volume, and the click that sounds beside it is below the guitar.
   */
  @Test
  void usualVolumeIsAsQuietAsTheUsualClick() {
    RouteSound sound = RouteSound.of(drill.route(), drill.pulse(), 48_000);
    int firstNote = (int) ((sound.firstBeatSeconds() - 0.02) * 48_000);
    double click = VolumeModel.USUAL * peak(Arrays.copyOf(sound.samples(), firstNote));
    double both =
        VolumeModel.USUAL
            * peak(Arrays.copyOfRange(sound.samples(), firstNote, sound.samples().length));
    assertThat(20 * Math.log10(both / ClickTrack.USUAL_GAIN)).isBetween(-6.0, 1.0);
    assertThat(20 * Math.log10(click / both)).isBetween(-12.0, -3.0);
  }

  private static double peak(float[] sound) {
    double peak = 0;
    for (float sample : sound) {
      peak = Math.max(peak, Math.abs(sample));
    }
    return peak;
  }

  @Test
  void volumeIsOneForAllAndKeptForEachOutput() {
    Path file = folder.resolve("settings.json");
    Desk desk = new Desk(SettingsFile.at(file));
    assertThat(desk.volume().gain()).as("quiet at first").isEqualTo(0.2);
    desk.volume().share().set(0.7);
    desk.settings().put(Desk.OUTPUT, "Headphones");
    desk.volume().outputChosen();
    assertThat(desk.volume().gain()).as("quiet on an output never set").isEqualTo(0.2);
    desk.volume().share().set(0.4);
    desk.keep();
    Desk again = new Desk(SettingsFile.at(file));
    assertThat(again.volume().gain()).isEqualTo(0.4);
    again.settings().put(Desk.OUTPUT, "");
    again.volume().outputChosen();
    assertThat(again.volume().gain()).isEqualTo(0.7);
  }
}
