package neckway.desk.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import neckway.calibration.Calibration;
import neckway.file.GuitarFile;
import neckway.file.sound.WavWriter;
import neckway.neck.Tuning;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.Guitar;
import neckway.player.settings.PlayerSettings;
import neckway.sound.VirtualSound;
import neckway.string.StringProfile;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The sound room on a virtual loudspeaker and microphone: a cable between the two is measured, and
 * a virtual guitar is plucked into the microphone and learnt.
 */
@Tag("live")
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class RoomLiveTests {
  @TempDir private Path folder;
  private VirtualSound sound;

  @BeforeEach
  void start() throws Exception {
    sound = new VirtualSound(folder);
  }

  @AfterEach
  void stop() {
    sound.close();
  }

  private static BufferedReader output(Process program) {
    return new BufferedReader(
        new InputStreamReader(program.getInputStream(), StandardCharsets.UTF_8));
  }

  @Test
  void cableIsMeasuredAndTheInputIsHeardAgainAfterwards() throws Exception {
    sound
        .start(
            "pactl",
            "load-module",
            "module-loopback",
            "source=speaker.monitor",
            "sink=mic",
            "latency_msec=40")
        .waitFor();
    Process room = sound.java(Map.of(), RoomDriver.class.getName(), "trip");
    BufferedReader out = output(room);
    assertThat(out.readLine()).as(sound.errorsOf(room)).endsWith("inputs");
    assertThat(out.readLine()).startsWith("Done: ").contains("clicks heard");
    assertThat(out.readLine()).startsWith("Measured: ");
    assertThat(out.readLine()).startsWith("Silent");
    assertThat(sound.settings().resolve("round-trip.json")).exists();
  }

  @Test
  void guitarPluckedIntoTheMicrophoneIsLearnt() throws Exception {
    PlayerSettings player =
        PlayerSettings.plain().withSampleRate(48_000).withGuitar(Guitar.Model.ELECTRIC.plain());
    Performance played =
        new VirtualPlayer(player).calibration(Tuning.STANDARD, Calibration.USUAL_FRETS, 7);
    Path take = folder.resolve("plucks.wav");
    try (WavWriter wav = new WavWriter(take, played.sampleRate(), WavWriter.Coding.PCM_16)) {
      wav.write(played.samples(), 0, played.samples().length);
      wav.finish();
    }
    Path file = folder.resolve("guitar.json");
    Process room = sound.java(Map.of(), RoomDriver.class.getName(), "plucks", file.toString());
    BufferedReader out = output(room);
    assertThat(out.readLine()).as(sound.errorsOf(room)).endsWith("inputs");
    assertThat(out.readLine()).isEqualTo("pluck");
    sound.playIntoMicrophone(take);
    assertThat(out.readLine()).startsWith("LEARNT");
    assertThat(out.readLine()).startsWith("24 of 24");
    assertThat(out.readLine()).isEqualTo("saved");
    // held against the stiffness with which the virtual guitar sounds
    for (StringProfile string : GuitarFile.read(file, Tuning.STANDARD).strings()) {
      double truth = player.guitar().stiffness().get(string.string().number() - 1);
      assertThat(Math.exp(string.lnStiffness()) / truth)
          .as("string " + string.string())
          .isCloseTo(1, within(string.string().number() == 1 ? 0.3 : 0.15));
    }
  }

  @Test
  void devicePulledOutInThePlucksIsSaidInOneLineAndThePlucksWait() throws Exception {
    Process room = sound.java(Map.of(), RoomDriver.class.getName(), "gone");
    BufferedReader out = output(room);
    assertThat(out.readLine()).as(sound.errorsOf(room)).endsWith("inputs");
    assertThat(out.readLine()).isEqualTo("pluck");
    sound.awaitListening();
    sound.pullOut();
    assertThat(out.readLine()).matches(".*(gone|cannot be opened|not here|no sound input).*");
    assertThat(out.readLine()).isEqualTo("PLUCKING String 6, open (E2)");
  }
}
