package neckway.desk.choose;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import neckway.desk.DrillModel;
import neckway.drill.PlayableDrill;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;
import neckway.file.sound.WavWriter;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.PlayerSettings;
import neckway.sound.Clip;
import neckway.sound.Levelling;
import neckway.sound.Loudness;
import neckway.sound.VirtualSound;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** How loud everything is that is played back, as it comes out of a virtual loudspeaker. */
@Tag("live")
@Timeout(value = 180, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class LoudLiveTests {
  private static final double MOST_APART_LU = 3;
  private static final long LISTENED_MILLIS = 9_000;
  private static final double QUIET_GAIN = 0.05;

  @TempDir private Path folder;

  @Test
  void everyPlaybackComesOutOfTheLoudspeakerEquallyLoudAndFadesIn() throws Exception {
    PlayableDrill drill = new DrillModel().drill();
    Performance played =
        new VirtualPlayer(PlayerSettings.plain()).play(drill.route(), drill.pulse(), List.of(), 4);
    float[] quiet = played.samples().clone();
    for (int i = 0; i < quiet.length; i++) {
      quiet[i] *= (float) QUIET_GAIN;
    }
    Path take = folder.resolve("take.wav");
    write(take, quiet, played.sampleRate());
    Map<String, Double> loudness = new LinkedHashMap<>();
    try (VirtualSound sound = new VirtualSound(folder, 120, 170)) {
      Process driver =
          sound.java(
              Map.of(),
              LoudDriver.class.getName(),
              take.toString(),
              Double.toString(played.firstBeat()));
      BufferedReader out =
          new BufferedReader(
              new InputStreamReader(driver.getInputStream(), StandardCharsets.UTF_8));
      Path heard = folder.resolve("heard.wav");
      Process recorder = record(sound, heard);
      assertThat(out.readLine()).as(sound.errorsOf(driver)).isEqualTo("ready");
      answer(driver);
      for (String name : List.of("hear it", "the take", "a loop", "how it should sound")) {
        assertThat(out.readLine()).as(sound.errorsOf(driver)).isEqualTo(name);
        Thread.sleep(LISTENED_MILLIS);
        answer(driver);
        assertThat(out.readLine()).isEqualTo("stopped");
        Thread.sleep(1_000);
        recorder.destroy();
        recorder.waitFor();
        float[] all = read(heard);
        loudness.put(name, loudness(name, all));
        recorder = record(sound, heard);
        answer(driver);
      }
      recorder.destroy();
    }
    double least = loudness.values().stream().min(Double::compare).orElseThrow();
    double most = loudness.values().stream().max(Double::compare).orElseThrow();
    assertThat(most - least).as(loudness.toString()).isLessThan(MOST_APART_LU);
    assertThat(loudness.values())
        .allSatisfy(l -> assertThat(l).isEqualTo(Levelling.TARGET_LKFS, within(2.0)));
  }

  private static Process record(VirtualSound sound, Path file) throws Exception {
    Process recorder =
        sound.start(
            "parecord",
            "-d",
            "speaker.monitor",
            "--rate=48000",
            "--file-format=wav",
            file.toString());
    sound.awaitListening();
    return recorder;
  }

  private static void answer(Process driver) throws Exception {
    driver.getOutputStream().write('\n');
    driver.getOutputStream().flush();
  }

  private static double loudness(String name, float[] all) {
    int begins = 0;
    while (Math.abs(all[begins]) < 1e-4) {
      begins++;
    }
    float loudest = 0;
    float first = 0;
    for (int i = begins; i < all.length; i++) {
      loudest = Math.max(loudest, Math.abs(all[i]));
      first = i < begins + 48_000 * Clip.FADE_IN_SECONDS / 8 ? loudest : first;
    }
    assertThat(loudest).as(name + ": loudest").isLessThanOrEqualTo((float) Levelling.CEILING);
    assertThat(first).as(name + ": its beginning").isLessThan(0.2f * loudest);
    return Loudness.integrated(Arrays.copyOfRange(all, begins, all.length), 48_000).orElseThrow();
  }

  private static void write(Path file, float[] sound, int rate) {
    try (WavWriter writer = new WavWriter(file, rate, WavWriter.Coding.FLOAT_32)) {
      writer.write(sound, 0, sound.length);
      writer.finish();
    }
  }

  /** The left channel of a recording of a minute at most. */
  private static float[] read(Path file) {
    try (TakeReader reader = TakeReader.open(file, Channel.LEFT)) {
      assertThat(reader.sampleRate()).isEqualTo(48_000);
      float[] all = new float[60 * 48_000];
      float[] block = new float[2048];
      int at = 0;
      for (int got = reader.read(block);
          got > 0 && at + got < all.length;
          got = reader.read(block)) {
        System.arraycopy(block, 0, all, at, got);
        at += got;
      }
      return Arrays.copyOf(all, at);
    }
  }
}
