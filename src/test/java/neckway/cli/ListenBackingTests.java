package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import neckway.Await;
import neckway.file.JsonFile;
import neckway.live.LiveRun;
import neckway.sound.LeakLevel;
import neckway.sound.PlayedWhole;
import neckway.sound.VirtualSound;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * {@code listen} with a backing in a process of its own. The backing goes into the virtual
 * microphone that the take is played into; what was said is held against the truth and against
 * {@code review} of what was saved.
 */
@Tag("live")
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class ListenBackingTests {
  private static final List<String> DRILL =
      List.of(
          "--key",
          "G major",
          "--shapes",
          "major,dorian",
          "--start",
          "3",
          "--up",
          "3",
          "--down",
          "5",
          "--tempo",
          "150");

  private static final double UNTIL_FIRST_BEAT = LiveRun.LEAD_SECONDS + 4 * 60 / 150.0;
  private static final int PLAYINGS = 3;

  @TempDir Path folder;
  private VirtualSound sound;

  @BeforeEach
  void startServer() throws Exception {
    sound = new VirtualSound(folder);
  }

  @AfterEach
  void stopServer() throws Exception {
    sound.close();
  }

  @Test
  void vampThatLeaksIsTakenOutLive() throws Exception {
    JsonNode truth = perform("--seed", "21");
    Live live = listen(truth, "--vamp", "--chords", "twelve-bar", "--feel", "4/4-swung");
    assertHeardAsPlayed(live, truth);
  }

  @Test
  void recordingThatLeaksIsTakenOutLiveAndTheRunIsHeldAgainstItsBeat() throws Exception {
    run(
        List.of(
            "vamp",
            "--key",
            "G major",
            "--shapes",
            "major,dorian",
            "--tempo",
            "187.5",
            "--bars",
            "20",
            "--out",
            path("band.wav")));
    JsonNode truth = perform("--seed", "22");
    Live live =
        listen(
            truth,
            "--backing",
            path("band.wav"),
            "--backing-tempo",
            "187.5",
            "--backing-first-beat",
            "1.28",
            "--backing-slower",
            "0.8");
    assertHeardAsPlayed(live, truth);
  }

  private void assertHeardAsPlayed(Live live, JsonNode truth) {
    assertThat(live.text()).doesNotContain("not heard in the input").contains("--beside-once");
    assertThat(texts(live.json(), "verdict")).isEqualTo(texts(truth, "verdict"));
    assertThat(texts(live.json(), "step")).isEqualTo(texts(truth, "step"));
    assertThat(texts(live.json(), "midi")).isEqualTo(texts(truth, "midi"));
    List<String> args = new ArrayList<>(List.of("review", path("live.wav")));
    args.addAll(DRILL);
    args.addAll(
        List.of(
            "--first-beat",
            live.json().at("/grid/firstBeat").asText(),
            "--beside",
            path("live.backing.wav"),
            "--json",
            path("review.json")));
    run(args);
    JsonNode whole = JsonFile.read(folder.resolve("review.json"));
    assertThat(texts(whole, "verdict")).isEqualTo(texts(truth, "verdict"));
    args.add("--beside-once");
    run(args);
    JsonNode again = JsonFile.read(folder.resolve("review.json"));
    for (String part : List.of("drill", "notes", "steps", "shifts")) {
      assertThat(live.json().path(part)).as(part).isEqualTo(again.path(part));
    }
  }

  private record Live(String text, JsonNode json) {}

  private String path(String name) {
    return folder.resolve(name).toString();
  }

  private JsonNode perform(String... more) {
    List<String> args = new ArrayList<>(List.of("perform"));
    args.addAll(DRILL);
    args.addAll(List.of("--out", path("take.wav"), "--truth", path("truth.json")));
    args.addAll(List.of(more));
    run(args);
    return JsonFile.read(folder.resolve("truth.json"));
  }

  private void run(List<String> args) {
    StringWriter out = new StringWriter();
    int status = Main.run(new PrintWriter(out), new PrintWriter(out), args.toArray(new String[0]));
    assertThat(status).as(out.toString()).isZero();
  }

  /** In percent, such that the backing lies under the take by what it should. */
  private String volume() {
    return String.format(Locale.ROOT, "%.2f", LeakLevel.percent(folder.resolve("take.wav")));
  }

  /** Plays a take to {@code listen}; again where the machine was too busy to play it whole. */
  private Live listen(JsonNode truth, String... more) throws Exception {
    for (int playing = 0; playing < PLAYINGS; playing++) {
      if (playing > 0) {
        sound.awaitSilence();
      }
      Live live = listenOnce(truth, more);
      OptionalDouble broken =
          new PlayedWhole(folder.resolve("live.wav")).brokenAt(folder.resolve("take.wav"));
      if (broken.isEmpty()) {
        return live;
      }
    }
    throw new AssertionError("the take was not played whole in " + PLAYINGS + " playings");
  }

  private Live listenOnce(JsonNode truth, String... more) throws Exception {
    List<String> args = new ArrayList<>(List.of("listen"));
    args.addAll(DRILL);
    args.addAll(List.of("--save", path("live.wav"), "--json", path("live.json")));
    args.addAll(List.of("--backing-volume", volume()));
    args.addAll(List.of(more));
    Process process =
        sound.java(Map.of("PULSE_SINK", "mic"), Main.class.getName(), args.toArray(new String[0]));
    String text;
    try (BufferedReader out =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
      awaitStart(out);
      double early = truth.at("/grid/firstBeat").asDouble();
      Await.pass(Math.max(0, UNTIL_FIRST_BEAT - early));
      sound.playIntoMicrophone(folder.resolve("take.wav"));
      text = out.lines().collect(Collectors.joining("\n"));
    }
    boolean ended = process.waitFor(VirtualSound.PROGRAM_SECONDS + 5, TimeUnit.SECONDS);
    assertThat(ended).as(text).isTrue();
    assertThat(process.exitValue()).as(text + sound.errorsOf(process)).isZero();
    return new Live(text, JsonFile.read(folder.resolve("live.json")));
  }

  private static void awaitStart(BufferedReader out) throws IOException {
    String line = out.readLine();
    while (line != null && !line.startsWith("Count-in")) {
      line = out.readLine();
    }
    assertThat(line).as("listen did not begin").isNotNull();
  }

  private static List<String> texts(JsonNode review, String field) {
    List<String> texts = new ArrayList<>();
    review.path("notes").forEach(note -> texts.add(note.path(field).asText()));
    return texts;
  }
}
