package neckway.desk.live;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import neckway.Await;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.file.DrillFile;
import neckway.file.JsonFile;
import neckway.file.TruthFile;
import neckway.file.sound.WavWriter;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.Mistake;
import neckway.player.settings.PlayerSettings;
import neckway.sound.PlayedWhole;
import neckway.sound.VirtualSound;

/**
 * One window that is practised with for a long time: run after run is begun by the key, played by
 * the robot and read. Every minute it prints what {@link SoakTally} counted.
 *
 * <pre>DeskSoak MINUTES [band]</pre>
 *
 * With {@code band} a backing plays in place of the click, and leaks into the microphone.
 */
public final class DeskSoak {
  private static final Pulse PULSE = new Pulse(150, 2, 4, 4);
  private static final int ROUNDS = 4;
  private static final double FIRST_BEAT_SECONDS = 0.2;
  private static final double LEAK = 0.2;
  private static final double ABOUT_LATE_MS = 130;
  private static final int SPARE_SECONDS = 300;

  /** A run of the drill lasts half a minute. */
  private static final double PATIENCE_SECONDS = 60;

  private final Path folder;
  private final VirtualSound sound;
  private final PlayableDrill drill = DeskLiveTests.drill(ROUNDS, PULSE);
  private final SoakTally tally = new SoakTally();
  private final Path takes;
  private PrintWriter to;
  private BufferedReader out;

  private final boolean band;

  private DeskSoak(Path folder, VirtualSound sound, boolean band) throws IOException {
    this.folder = folder;
    this.sound = sound;
    this.band = band;
    takes = Files.createDirectories(folder.resolve("takes"));
  }

  public static void main(String[] args) throws Exception {
    double minutes = Double.parseDouble(args[0]);
    boolean band = args.length > 1 && args[1].equals("band");
    Path folder = Files.createTempDirectory("desk-soak");
    int seconds = (int) (60 * minutes) + SPARE_SECONDS;
    try (VirtualScreen screen =
            new VirtualScreen("1400x900x24", Files.createDirectory(folder.resolve("screen")));
        VirtualSound sound = new VirtualSound(folder, seconds, seconds)) {
      new DeskSoak(folder, sound, band).practise(screen, minutes);
    }
  }

  private void practise(VirtualScreen screen, double minutes) throws Exception {
    DrillFile.write(folder.resolve("drill.json"), drill);
    ObjectNode settings = JsonNodeFactory.instance.objectNode();
    settings.put("format", "neckway-settings/1");
    settings.put("takes", takes.toString());
    settings.put("repeatRounds", false);
    settings.put("backingPlays", band);
    Files.createDirectories(sound.settings());
    JsonFile.write(sound.settings().resolve("settings.json"), settings);
    Process window =
        sound.java(
            Map.of("DISPLAY", screen.display(), "JAVA_TOOL_OPTIONS", "-Dprism.order=sw"),
            DeskDriver.class.getName(),
            "1400",
            "900");
    try {
      out =
          new BufferedReader(
              new InputStreamReader(window.getInputStream(), StandardCharsets.UTF_8));
      to = new PrintWriter(window.getOutputStream(), true, StandardCharsets.UTF_8);
      say(out.readLine() + ", process " + window.pid());
      ask("drill " + folder.resolve("drill.json"));
      ask("late " + ABOUT_LATE_MS);
      ask("go PLAYING");
      say(tally.held(values(ask("held"))));
      long begun = System.nanoTime();
      int minute = 1;
      for (int run = 0; passed(begun) < minutes; run++) {
        run(run);
        if (passed(begun) >= minute) {
          Map<String, String> held = values(ask("held"));
          say(tally.minute(passed(begun), held));
          minute = (int) passed(begun) + 1;
        }
      }
      say(tally.end(passed(begun)));
    } finally {
      window.destroyForcibly();
    }
  }

  private static double passed(long begun) {
    return (System.nanoTime() - begun) / 60e9;
  }

  private static void say(String line) {
    System.out.println(line);
    System.out.flush();
  }

  // ---- one run

  /** Every second one has a wrong note, one left out and one struck twice. */
  private Performance perform(int run) {
    List<Mistake> mistakes = new ArrayList<>();
    if (run % 2 == 1) {
      mistakes.add(new Mistake.Slip(Mistake.Kind.WRONG, 6, OptionalInt.empty()));
      mistakes.add(new Mistake.Slip(Mistake.Kind.SKIP, 11, OptionalInt.empty()));
      mistakes.add(new Mistake.Slip(Mistake.Kind.REPEAT, 17, OptionalInt.empty()));
    }
    PlayerSettings settings =
        PlayerSettings.plain().withSampleRate(48_000).withFirstBeat(FIRST_BEAT_SECONDS);
    return new VirtualPlayer(settings).play(drill.route(), drill.pulse(), mistakes, 40_000 + run);
  }

  private void run(int run) throws Exception {
    Performance played = perform(run);
    Path take = folder.resolve("take.wav");
    try (WavWriter writer = new WavWriter(take, played.sampleRate(), WavWriter.Coding.PCM_16)) {
      writer.write(played.samples(), 0, played.samples().length);
      writer.finish();
    }
    Process robot =
        sound.java(
            Map.of("JAVA_TOOL_OPTIONS", "-XX:TieredStopAtLevel=1 -Xmx64m"),
            RobotPlayer.class.getName(),
            take.toString(),
            Double.toString(FIRST_BEAT_SECONDS),
            Double.toString(PULSE.countIn() * PULSE.beatSeconds()),
            Double.toString(LEAK));
    try {
      sound.awaitListeningAndPlaying();
      ask("key PAGE_DOWN");
      await("PLAYING PLAYING");
      await("READING READY");
    } finally {
      robot.destroy();
      robot.waitFor();
    }
    Map<String, String> counts = values(ask("counts"));
    tally.run(counts, outcome(played, take));
    clear();
  }

  private SoakTally.Outcome outcome(Performance played, Path take) throws Exception {
    JsonNode heard = JsonFile.read(only(".json"));
    JsonNode truth = TruthFile.toJson("take.wav", Optional.of(drill), played, 0);
    List<String> unlike = new ArrayList<>();
    for (String field : List.of("verdict", "step", "midi")) {
      if (!texts(heard, field).equals(texts(truth, field))) {
        unlike.add(field);
      }
    }
    if (unlike.isEmpty()) {
      return SoakTally.Outcome.SAME;
    }
    var broken = new PlayedWhole(only(".wav")).brokenAt(take);
    say(
        "unlike the truth in "
            + unlike
            + (broken.isPresent() ? ", sound broken at " + broken.getAsDouble() + " s" : "")
            + ": "
            + texts(heard, "verdict"));
    return broken.isPresent() ? SoakTally.Outcome.SOUND_BROKEN : SoakTally.Outcome.OTHER;
  }

  private static List<String> texts(JsonNode review, String field) {
    List<String> texts = new ArrayList<>();
    review.path("notes").forEach(note -> texts.add(note.path(field).asText()));
    return texts;
  }

  private Path only(String end) throws IOException {
    return Collections.max(files().stream().filter(f -> f.toString().endsWith(end)).toList());
  }

  private List<Path> files() throws IOException {
    try (Stream<Path> files = Files.list(takes)) {
      return files.toList();
    }
  }

  private void clear() throws IOException {
    for (Path file : files()) {
      Files.delete(file);
    }
  }

  // ---- the window

  private String ask(String what) throws IOException {
    to.println(what);
    String answer = out.readLine();
    if (answer == null) {
      throw new IOException("the window ended when it was asked " + what);
    }
    return answer;
  }

  private void await(String state) throws Exception {
    Await.until(
        "the window is " + state,
        PATIENCE_SECONDS,
        () -> ask("state").equals(state),
        () -> "it is " + ask("state") + ": " + ask("line"));
  }

  private static Map<String, String> values(String line) {
    Map<String, String> values = new HashMap<>();
    for (String each : line.split("\t")) {
      int equals = each.indexOf('=');
      values.put(each.substring(0, equals), each.substring(equals + 1));
    }
    return values;
  }
}
