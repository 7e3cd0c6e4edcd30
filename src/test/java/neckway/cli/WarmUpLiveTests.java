package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import neckway.Await;
import neckway.file.JsonFile;
import neckway.live.LiveRun;
import neckway.sound.VirtualSound;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A warm-up is led while a take is played into a virtual microphone. */
@Tag("live")
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class WarmUpLiveTests {
  private static final String DRILL =
      "{\"format\":\"neckway-drill/1\",\"key\":\"G major\",\"rounds\":2,"
          + "\"route\":{\"shapes\":[\"major\"],\"start\":3},\"pulse\":{\"tempo\":120}}";

  private static final double UNTIL_FIRST_BEAT = LiveRun.LEAD_SECONDS + 4 * 60 / 120.0;
  private static final int STEPS = 23;

  @TempDir Path folder;
  private VirtualSound sound;

  @BeforeEach
  void startServer() throws Exception {
    sound = new VirtualSound(folder);
    Files.writeString(folder.resolve("drill.json"), DRILL);
    Files.writeString(folder.resolve("once.json"), DRILL.replace("\"rounds\":2", "\"rounds\":1"));
  }

  @AfterEach
  void stopServer() throws Exception {
    sound.close();
  }

  @Test
  void unevenPlayingIsSlowedDownAndPainStopsIt() throws Exception {
    // thirds of the notes on time, late by 50 and by 100 ms of 250: a spread of 74 ms
    String late =
        IntStream.range(0, STEPS)
            .filter(step -> step % 3 > 0)
            .mapToObj(
                step -> "{\"kind\":\"late\",\"step\":" + step + ",\"ms\":" + 50 * (step % 3) + "}")
            .collect(Collectors.joining(",", "[", "]"));
    Led led = new Led();
    led.playFirst(perform(late));
    led.until("A little slower: 108 beats a minute.");
    led.until("Count-in");
    // as Ctrl-C, which a program that was started in the background never gets
    led.process.toHandle().destroy();
    String text = led.toEnd();
    assertThat(text).contains("Rest your hands.").contains("health professional");
    assertThat(text).doesNotContain("Warm.");
    assertKept();
  }

  @Test
  void evenPlayingGoesOnAtItsTempoAndSlipsAreNotToldAndEnterMovesOn() throws Exception {
    Led led = new Led();
    led.playFirst(perform("[{\"kind\":\"wrong\",\"step\":6},{\"kind\":\"skip\",\"step\":11}]"));
    led.until("Count-in");
    led.enter();
    String text = led.toEnd();
    assertThat(text).contains("Warm.").doesNotContain("slower");
    assertThat(text).doesNotContainIgnoringCase("wrong").doesNotContain("left out");
    assertKept();
  }

  private void assertKept() {
    StringWriter listed = new StringWriter();
    Main.run(new PrintWriter(listed), new PrintWriter(listed), "log", "--data", path("log"));
    assertThat(listed.toString()).containsOnlyOnce("warm-up");
  }

  private String path(String name) {
    return folder.resolve(name).toString();
  }

  private double perform(String mistakes) throws IOException {
    Files.writeString(folder.resolve("slips.json"), mistakes);
    StringWriter out = new StringWriter();
    int status =
        Main.run(
            new PrintWriter(out),
            new PrintWriter(out),
            "perform",
            "--drill",
            path("once.json"),
            "--mistakes",
            path("slips.json"),
            "--seed",
            "5",
            "--out",
            path("take.wav"),
            "--truth",
            path("truth.json"));
    assertThat(status).as(out.toString()).isZero();
    JsonNode truth = JsonFile.read(folder.resolve("truth.json"));
    return truth.at("/grid/firstBeat").asDouble();
  }

  /** One warm-up that is led. */
  private final class Led {
    private final Process process;
    private final BufferedReader out;
    private final List<String> read = new ArrayList<>();

    Led() throws IOException {
      process =
          sound.java(
              Map.of(), WarmUpDriver.class.getName(), "--data", path("log"), path("drill.json"));
      out =
          new BufferedReader(
              new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    }

    /** Goes past the step without a drill, and plays the take to the first half of the next. */
    void playFirst(double takesFirstBeat) throws Exception {
      until("Hands first.");
      while (!isPast("Step 2")) {
        enter();
        Await.pass(0.1);
      }
      until("Count-in");
      Await.pass(Math.max(0, UNTIL_FIRST_BEAT - takesFirstBeat));
      sound.playIntoMicrophone(folder.resolve("take.wav"));
    }

    /** Reads no further than the words: what comes after them is still waited for. */
    private boolean isPast(String words) throws IOException {
      while (out.ready()) {
        String line = out.readLine();
        read.add(line);
        if (line.startsWith(words)) {
          return true;
        }
      }
      return false;
    }

    void enter() throws IOException {
      process.getOutputStream().write('\n');
      process.getOutputStream().flush();
    }

    void until(String words) throws IOException {
      String line = out.readLine();
      while (line != null && !line.contains(words)) {
        read.add(line);
        line = out.readLine();
      }
      assertThat(line).as(words + " after " + read + sound.errorsOf(process)).isNotNull();
      read.add(line);
    }

    String toEnd() throws Exception {
      out.lines().forEach(read::add);
      assertThat(process.waitFor(VirtualSound.PROGRAM_SECONDS, TimeUnit.SECONDS)).isTrue();
      // its lines are wrapped
      return String.join(" ", read).replaceAll("\\s+", " ");
    }
  }
}
