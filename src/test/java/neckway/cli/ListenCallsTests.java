package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import neckway.Await;
import neckway.calls.Caller;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.file.JsonFile;
import neckway.file.sound.WavWriter;
import neckway.live.LiveRun;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.PlayerSettings;
import neckway.practice.State;
import neckway.sound.PlayedWhole;
import neckway.sound.VirtualSound;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** {@code listen --calls} in a process of its own, and a player who goes where it calls. */
@Tag("live")
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class ListenCallsTests {
  private static final long SEED = 7;
  private static final double PLAYED_SECONDS = 15;
  private static final int PLAYINGS = 3;

  @TempDir Path folder;

  @Test
  void callsAreShownFollowedAndKeptApartFromPractice() throws Exception {
    PlayableDrill drill = Drills.example();
    Caller caller = new Caller(drill, exercise -> State.NEW, SEED);
    caller.growTo(PLAYED_SECONDS);
    Performance take =
        new VirtualPlayer(PlayerSettings.plain().withSampleRate(48_000))
            .play(caller.drill().route(), drill.pulse(), List.of(), 5);
    Path file = folder.resolve("take.wav");
    try (WavWriter writer = new WavWriter(file, 48_000, WavWriter.Coding.PCM_16)) {
      writer.write(take.samples(), 0, take.samples().length);
      writer.finish();
    }
    String said = "";
    boolean whole = false;
    // a busy machine may not play the take whole; what is then heard is not judged
    for (int playing = 0; playing < PLAYINGS && !whole; playing++) {
      said = listen(drill, take.firstBeat());
      whole = new PlayedWhole(folder.resolve("live.wav")).brokenAt(file).isEmpty();
    }
    assertThat(whole).as("the devices played the take whole").isTrue();

    JsonNode heard = JsonFile.read(folder.resolve("live.json"));
    String first = caller.calls().get(0).words(drill.tuning());
    assertThat(said).contains("(call: " + first + ")").contains("--seed 7").contains(" made, ");
    assertThat(heard.at("/calls/made").asInt()).isEqualTo(caller.calls().size());
    assertThat(heard.at("/calls/missed").asInt()).isZero();
    assertThat(heard.at("/calls/said/0/words").asText()).isEqualTo(first);
    StringWriter shown = new StringWriter();
    for (String command : List.of("log export " + folder.resolve("export"), "log", "log check")) {
      String[] args = (command + " --data " + folder.resolve("data")).split(" ");
      int status = Main.run(new PrintWriter(shown), new PrintWriter(shown), args);
      assertThat(status).as(shown.toString()).isZero();
    }
    String kept = Files.readString(folder.resolve("export/runs.jsonl"));
    assertThat(kept.lines()).isNotEmpty().allMatch(line -> line.contains("\"kind\":\"calls\""));
  }

  private String listen(PlayableDrill drill, double firstBeat) throws Exception {
    String data = folder.resolve("data").toString();
    try (VirtualSound sound = new VirtualSound(folder)) {
      Process live =
          sound.java(
              Map.of(),
              Main.class.getName(),
              "listen",
              "--key",
              drill.key().toString(),
              "--shapes",
              "major,dorian",
              "--start",
              "3",
              "--calls",
              "--seed",
              "" + SEED,
              "--data",
              data,
              "--save",
              folder.resolve("live.wav").toString(),
              "--json",
              folder.resolve("live.json").toString());
      String said;
      try (BufferedReader out =
          new BufferedReader(
              new InputStreamReader(live.getInputStream(), StandardCharsets.UTF_8))) {
        String line = out.readLine();
        while (line != null && !line.startsWith("Play up and down")) {
          line = out.readLine();
        }
        double countIn = drill.pulse().countIn() * drill.pulse().beatSeconds();
        Await.pass(Math.max(0, LiveRun.LEAD_SECONDS + countIn - firstBeat));
        sound.playIntoMicrophone(folder.resolve("take.wav"));
        // it ends ten seconds after the last note
        said = out.lines().collect(Collectors.joining("\n"));
      }
      assertThat(live.waitFor(VirtualSound.PROGRAM_SECONDS, TimeUnit.SECONDS)).isTrue();
      assertThat(live.exitValue()).as(said + sound.errorsOf(live)).isZero();
      return said;
    }
  }
}
