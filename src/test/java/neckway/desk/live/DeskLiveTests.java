package neckway.desk.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.DoubleNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import neckway.Await;
import neckway.cli.Main;
import neckway.desk.play.LostTakes;
import neckway.drill.Drill;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.file.DrillFile;
import neckway.file.GuitarFile;
import neckway.file.JsonFile;
import neckway.file.ReviewFile;
import neckway.file.TruthFile;
import neckway.file.sound.WavWriter;
import neckway.live.LiveSetup;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.JoinChoice;
import neckway.neck.Key;
import neckway.neck.Shape;
import neckway.neck.Tuning;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.Mistake;
import neckway.player.settings.Guitar;
import neckway.player.settings.PlayerSettings;
import neckway.review.Clock;
import neckway.run.Run;
import neckway.sound.LeakLevel;
import neckway.sound.PlayedWhole;
import neckway.sound.VirtualSound;
import neckway.string.GuitarProfile;
import neckway.string.StringProfile;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInfo;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The whole window on a virtual display, with a virtual loudspeaker and microphone: a robot hears
 * its click and plays a take; what the window then reads out is held against the take's truth, and
 * the saved take's review against what the window said.
 */
@Tag("live")
@Timeout(value = 160, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class DeskLiveTests {
  private static final double TEMPO = 150;
  private static final Pulse PULSE = new Pulse(TEMPO, 2, 4, 4);
  private static final double FIRST_BEAT_IN_TAKE = 0.2;
  private static final double LEAK = 0.2;
  private static final double ABOUT_LATE_MS = 130;
  private static final double CLOSE_MS = 5;
  private static final int PLAYINGS = 3;

  private static final double PATIENCE_SECONDS = 40;

  /** Longer than any buffer of a sound device. */
  private static final double ASLEEP_SECONDS = 8;

  @TempDir Path folder;
  private VirtualSound sound;
  private VirtualScreen screen;
  private String name;

  @BeforeEach
  void start(TestInfo test) throws Exception {
    name = test.getTestMethod().orElseThrow().getName();
    screen = new VirtualScreen("1400x900x24", Files.createDirectory(folder.resolve("screen")));
    sound = new VirtualSound(folder);
  }

  @AfterEach
  void stop() {
    sound.close();
    screen.close();
  }

  @Test
  void cleanTakeIsReadOutAsAllRight() throws Exception {
    PlayableDrill drill = drill();
    Performance played = perform(drill, List.of(), 21);
    Heard heard = listen(drill, played, Optional.empty());
    assertSame(heard, played, drill);
    assertThat(heard.score()).startsWith("All 25 notes were right and in order.");
    assertReviewOfSavedTakeIsTheSame(heard, drill, Optional.empty());
  }

  @Test
  void mistakesAreReadOutAsTheyWereMade() throws Exception {
    PlayableDrill drill = drill();
    Performance played =
        perform(
            drill,
            List.of(
                new Mistake.Slip(Mistake.Kind.WRONG, 6, OptionalInt.empty()),
                new Mistake.Slip(Mistake.Kind.SKIP, 11, OptionalInt.empty()),
                new Mistake.Slip(Mistake.Kind.REPEAT, 17, OptionalInt.empty())),
            22);
    Heard heard = listen(drill, played, Optional.empty());
    assertSame(heard, played, drill);
    assertThat(String.join(" ", heard.words()))
        .contains("One note wrong")
        .contains("One note left out")
        .contains("One note struck twice");
    assertReviewOfSavedTakeIsTheSame(heard, drill, Optional.empty());
  }

  @Test
  void shiftOnAnotherStringIsReadOutWhereTheGuitarIsKnown() throws Exception {
    PlayableDrill drill = drill();
    Guitar guitar = PlayerSettings.plain().guitar();
    GuitarProfile profile = profile(guitar);
    Path file = folder.resolve("guitar.json");
    GuitarFile.write(file, profile, Tuning.STANDARD);
    Performance played =
        perform(
            drill,
            List.of(
                new Mistake.ShiftElsewhere(
                    0, Direction.UP, OptionalInt.empty(), Optional.of(new GuitarString(5)))),
            23);
    Heard heard = listen(drill, played, Optional.of(file));
    assertSame(heard, played, drill);
    JsonNode up = heard.json().at("/shifts/0");
    assertThat(up.path("verdict").asText()).isEqualTo("moved");
    assertThat(up.path("string").asInt()).isEqualTo(5);
    assertThat(String.join(" ", heard.words())).contains("fifth");
    assertReviewOfSavedTakeIsTheSame(
        heard, drill, Optional.of(GuitarFile.read(file, drill.tuning())));
  }

  /**
   * Two rounds on one band, which goes on between them. It plays into the microphone, 20 dB under
   * the guitar.
   */
  @Test
  void roundsOverABandThatLeaksAreReadAsTheyWerePlayed() throws Exception {
    PlayableDrill drill = drill();
    Performance played =
        perform(drill, List.of(new Mistake.Slip(Mistake.Kind.SKIP, 11, OptionalInt.empty())), 24);
    write(played);
    DrillFile.write(folder.resolve("drill.json"), drill);
    Path takes = playedOverABand();
    JsonNode truth = TruthFile.toJson("take.wav", Optional.of(drill), played, 0);
    double[] firstBeat = new double[2];
    double before = 0;
    for (int round = 0; round < 2; round++) {
      JsonNode json = JsonFile.read(only(takes, "0" + (round + 1) + ".json"));
      for (String field : List.of("verdict", "step", "midi")) {
        assertThat(texts(json, field)).as(field + " of " + round).isEqualTo(texts(truth, field));
      }
      assertThat(json.at("/grid/delayMeasured").asBoolean(true)).as("click heard").isTrue();
      Path take = only(takes, "0" + (round + 1) + ".wav");
      firstBeat[round] = before + json.at("/grid/firstBeat").asDouble();
      before += RobotPlayer.samples(take).length / json.at("/take/sampleRate").asDouble();
      assertReviewAsItCameIsTheSame(take, json);
    }
    double bars = (firstBeat[1] - firstBeat[0]) / (PULSE.beatsPerBar() * PULSE.beatSeconds());
    assertThat(bars).as("one click for both").isCloseTo(Math.rint(bars), within(0.002));
  }

  /** Gives the folder of two takes that came in whole. */
  private Path playedOverABand() throws Exception {
    for (int playing = 0; playing < PLAYINGS; playing++) {
      if (playing > 0) {
        sound.awaitSilence();
      }
      Path takes = Files.createDirectories(folder.resolve("takes" + playing));
      settings(
          takes,
          Optional.empty(),
          Map.of(
              "backingPlays", BooleanNode.TRUE,
              "repeatRounds", BooleanNode.TRUE,
              "backingPercent", DoubleNode.valueOf(LeakLevel.percent(folder.resolve("take.wav")))));
      String said = twoRounds(takes);
      Path take = folder.resolve("take.wav");
      // where the band itself had a hole, what was heard is not what was meant to be played
      if (!said.contains("the output stumbled")
          && new PlayedWhole(only(takes, "01.wav")).brokenAt(take).isEmpty()
          && new PlayedWhole(only(takes, "02.wav")).brokenAt(take).isEmpty()) {
        return takes;
      }
    }
    throw new AssertionError("the takes were not played whole in " + PLAYINGS + " playings");
  }

  /** Gives what the window says of the sound once both are read. */
  private String twoRounds(Path takes) throws Exception {
    Process window = window(Map.of("PULSE_SINK", "mic"));
    try (BufferedReader out = reader(window);
        PrintWriter to = new PrintWriter(window.getOutputStream(), true, StandardCharsets.UTF_8)) {
      begin(to, out);
      for (int round = 1; round <= 2; round++) {
        await(to, out, "PLAYING COUNT_IN");
        Await.pass(PULSE.countIn() * PULSE.beatSeconds() - FIRST_BEAT_IN_TAKE);
        sound.playIntoMicrophone(folder.resolve("take.wav"));
        await(to, out, "PLAYING PLAYING");
        picture(to, out, "band" + round);
        await(to, out, "PLAYING REST", "PLAYING COUNT_IN");
      }
      ask(to, out, "key PAGE_DOWN");
      await(to, out, "READING READY");
      Await.until("the review is kept", PATIENCE_SECONDS, () -> has(takes, "02.json"));
      String said = ask(to, out, "line");
      to.println("quit");
      return said;
    } finally {
      window.destroyForcibly();
      window.waitFor();
    }
  }

  /** What was played lies beside the take: the same sums on both say the same. */
  private void assertReviewAsItCameIsTheSame(Path take, JsonNode json) throws Exception {
    Path again = folder.resolve("as-it-came.json");
    Process review =
        sound.java(
            Map.of(),
            Main.class.getName(),
            "review",
            take.toString(),
            "--drill",
            folder.resolve("drill.json").toString(),
            "--first-beat",
            json.at("/grid/firstBeat").asText(),
            "--beside",
            LiveSetup.backingFile(take).toString(),
            "--beside-once",
            "--overwrite",
            "--json",
            again.toString());
    String said;
    try (BufferedReader out = reader(review)) {
      said = out.lines().collect(Collectors.joining("\n"));
    }
    assertThat(review.waitFor()).as(said + sound.errorsOf(review)).isZero();
    for (String part : List.of("notes", "steps", "shifts")) {
      assertThat(JsonFile.read(again).path(part)).as(part).isEqualTo(json.path(part));
    }
  }

  @Test
  void crashInARunLosesAtMostTheLastSecondOfTheTake() throws Exception {
    DrillFile.write(folder.resolve("drill.json"), drill());
    Path takes = Files.createDirectories(folder.resolve("takes"));
    settings(takes, Optional.empty());
    Process window = window();
    try (BufferedReader out = reader(window);
        PrintWriter to = new PrintWriter(window.getOutputStream(), true, StandardCharsets.UTF_8)) {
      begin(to, out);
      await(to, out, "PLAYING PLAYING");
      double before = RobotPlayer.samples(only(takes, ".part.wav")).length / 48_000.0;
      long from = System.nanoTime();
      Await.pass(2.5);
      double passed = (System.nanoTime() - from) / 1e9;
      window.toHandle().destroyForcibly();
      window.waitFor();
      double kept = RobotPlayer.samples(only(takes, ".part.wav")).length / 48_000.0;
      assertThat(kept - before).isBetween(passed - 1, passed + 1);
    } finally {
      window.destroyForcibly();
    }
    Path part = only(takes, ".part.wav");
    List<Path> rescued = LostTakes.rescue(takes, Instant.now().plusSeconds(60));
    assertThat(part).doesNotExist();
    assertThat(rescued).singleElement().asString().endsWith("01 (cut off).wav");
  }

  @Test
  void deviceThatIsPulledOutInARunIsOneLineAndTheWindowGoesOn() throws Exception {
    DrillFile.write(folder.resolve("drill.json"), drill());
    Path takes = Files.createDirectories(folder.resolve("takes"));
    settings(takes, Optional.empty());
    Process window = window();
    try (BufferedReader out = reader(window);
        PrintWriter to = new PrintWriter(window.getOutputStream(), true, StandardCharsets.UTF_8)) {
      begin(to, out);
      await(to, out, "PLAYING PLAYING");
      sound.pullOut();
      await(to, out, "PLAYING READY");
      awaitLineAboutSound(to, out);
      assertThat(RobotPlayer.samples(only(takes, "01.wav")).length).isGreaterThan(48_000);
      ask(to, out, "go CHOOSING");
      assertThat(ask(to, out, "state")).isEqualTo("CHOOSING READY");
    } finally {
      window.destroyForcibly();
    }
  }

  /** A program that is stopped and goes on later is as near to a sleep as a test can come. */
  @Test
  void computerThatSleepsInARunIsOneLineAndTheNextRunIsWhole() throws Exception {
    DrillFile.write(folder.resolve("drill.json"), drill());
    Path takes = Files.createDirectories(folder.resolve("takes"));
    settings(takes, Optional.empty());
    Process window = window();
    try (BufferedReader out = reader(window);
        PrintWriter to = new PrintWriter(window.getOutputStream(), true, StandardCharsets.UTF_8)) {
      begin(to, out);
      await(to, out, "PLAYING PLAYING");
      signal(window, "STOP");
      Await.pass(ASLEEP_SECONDS);
      signal(window, "CONT");
      await(to, out, "PLAYING READY");
      // a sound server may have kept all of it: then nothing was played, and that is the line
      assertThat(ask(to, out, "line")).isNotEmpty().doesNotContain("\t");
      assertThat(RobotPlayer.samples(only(takes, "01.wav")).length).isGreaterThan(48_000);
      press(to, out);
      await(to, out, "PLAYING PLAYING");
      assertThat(ask(to, out, "line")).isEmpty();
    } finally {
      window.destroyForcibly();
    }
  }

  private static void signal(Process process, String name) throws Exception {
    int code =
        new ProcessBuilder("kill", "-" + name, Long.toString(process.pid())).start().waitFor();
    assertThat(code).as("kill -" + name).isZero();
  }

  @Test
  void soundServerKilledInTheCountInIsOneLineAndIsUsedAgainOnceItIsBack() throws Exception {
    DrillFile.write(folder.resolve("drill.json"), drill());
    settings(Files.createDirectories(folder.resolve("takes")), Optional.empty());
    Process window = window();
    try (BufferedReader out = reader(window);
        PrintWriter to = new PrintWriter(window.getOutputStream(), true, StandardCharsets.UTF_8)) {
      begin(to, out);
      await(to, out, "PLAYING COUNT_IN");
      sound.pullOut();
      await(to, out, "PLAYING READY");
      awaitLineAboutSound(to, out);
      // without a server a press is one line too
      ask(to, out, "key PAGE_DOWN");
      await(to, out, "PLAYING READY");
      awaitLineAboutSound(to, out);
      sound.putBack();
      visitSoundRoom(to, out);
      press(to, out);
      await(to, out, "PLAYING PLAYING");
      assertThat(ask(to, out, "line")).isEmpty();
    } finally {
      window.destroyForcibly();
    }
  }

  // ---- what is played

  private static PlayableDrill drill() {
    return drill(1, PULSE);
  }

  /** From major to Dorian in G, up on the third string and down on the fifth. */
  static PlayableDrill drill(int rounds, Pulse pulse) {
    return new Drill(
            Optional.empty(),
            Tuning.STANDARD,
            22,
            Key.parse("G major"),
            List.of(Shape.MAJOR, Shape.DORIAN),
            OptionalInt.of(3),
            List.of(JoinChoice.on(3)),
            List.of(JoinChoice.on(5)),
            rounds,
            pulse)
        .playable();
  }

  private static Performance perform(PlayableDrill drill, List<Mistake> mistakes, long seed) {
    PlayerSettings settings =
        PlayerSettings.plain().withSampleRate(48_000).withFirstBeat(FIRST_BEAT_IN_TAKE);
    return new VirtualPlayer(settings).play(drill.route(), drill.pulse(), mistakes, seed);
  }

  /** The guitar as it was built, which is what learning it comes to. */
  private static GuitarProfile profile(Guitar guitar) {
    return new GuitarProfile(
        Tuning.STANDARD.strings().stream()
            .map(
                s ->
                    new StringProfile(
                        s,
                        Tuning.STANDARD.openMidi(s),
                        0,
                        Math.log(guitar.stiffnessAt(s.number(), 0)),
                        0.05,
                        4))
            .toList());
  }

  // ---- playing it to the window

  private record Heard(List<String> words, String score, JsonNode json, Path take) {}

  private Heard listen(PlayableDrill drill, Performance played, Optional<Path> guitar)
      throws Exception {
    Path take = write(played);
    DrillFile.write(folder.resolve("drill.json"), drill);
    StringBuilder broken = new StringBuilder();
    for (int playing = 0; playing < PLAYINGS; playing++) {
      if (playing > 0) {
        // its end still sounds when its last note has been heard
        sound.awaitSilence();
      }
      Path takes = Files.createDirectories(folder.resolve("takes" + playing));
      settings(takes, guitar);
      Heard heard = once(takes);
      PlayedWhole captured = new PlayedWhole(heard.take());
      OptionalDouble at = captured.brokenAt(take);
      boolean clicked = clicksAreEven(heard);
      boolean inTime = isInTime(heard, captured.beganAt(take));
      if (at.isEmpty() && clicked && inTime) {
        return heard;
      }
      broken
          .append(at.isPresent() ? " take at " + at.getAsDouble() + " s;" : "")
          .append(clicked ? "" : " clicks;")
          .append(inTime ? "" : " between click and take;");
    }
    throw new AssertionError("the devices did not play the take whole, broken at" + broken);
  }

  private Path write(Performance played) {
    Path take = folder.resolve("take.wav");
    try (WavWriter writer = new WavWriter(take, played.sampleRate(), WavWriter.Coding.PCM_16)) {
      writer.write(played.samples(), 0, played.samples().length);
      writer.finish();
    }
    return take;
  }

  /** Whether the take stands as long after the first click as the robot meant it to. */
  private static boolean isInTime(Heard heard, double takeBegan) {
    double rate = heard.json().at("/take/sampleRate").asDouble();
    double click = rise(RobotPlayer.samples(heard.take()), 0) / rate;
    double meant = PULSE.countIn() * PULSE.beatSeconds() - FIRST_BEAT_IN_TAKE;
    return Math.abs(takeBegan - click - meant) < 0.001;
  }

  /** Whether the count-in's clicks, which stand in silence, came as evenly as they should. */
  private static boolean clicksAreEven(Heard heard) {
    float[] all = RobotPlayer.samples(heard.take());
    double rate = heard.json().at("/take/sampleRate").asDouble();
    int click = rise(all, 0);
    for (int beat = 1; beat < PULSE.countIn(); beat++) {
      int next = rise(all, click + (int) (0.5 * PULSE.beatSeconds() * rate));
      if (Math.abs((next - click) / rate - PULSE.beatSeconds()) >= 0.001) {
        return false;
      }
      click = next;
    }
    return true;
  }

  private static int rise(float[] sound, int from) {
    int at = from;
    while (at < sound.length && Math.abs(sound[at]) < 0.002) {
      at++;
    }
    return at;
  }

  private void settings(Path takes, Optional<Path> guitar) {
    settings(takes, guitar, Map.of());
  }

  private void settings(Path takes, Optional<Path> guitar, Map<String, JsonNode> more) {
    ObjectNode settings = com.fasterxml.jackson.databind.node.JsonNodeFactory.instance.objectNode();
    settings.put("format", "neckway-settings/1");
    settings.put("takes", takes.toString());
    guitar.ifPresent(g -> settings.put("guitar", g.toString()));
    settings.setAll(more);
    try {
      Files.createDirectories(sound.settings());
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
    JsonFile.write(sound.settings().resolve("settings.json"), settings);
  }

  private Heard once(Path takes) throws Exception {
    Process robot =
        sound.java(
            Map.of(),
            RobotPlayer.class.getName(),
            folder.resolve("take.wav").toString(),
            Double.toString(FIRST_BEAT_IN_TAKE),
            Double.toString(PULSE.countIn() * PULSE.beatSeconds()),
            Double.toString(LEAK));
    sound.awaitListeningAndPlaying();
    Process window = window();
    try (BufferedReader out = reader(window);
        PrintWriter to = new PrintWriter(window.getOutputStream(), true, StandardCharsets.UTF_8)) {
      begin(to, out);
      await(to, out, "PLAYING PLAYING");
      picture(to, out, "playing");
      ask(to, out, "frames");
      await(to, out, "PLAYING REST", "READING READY", "PLAYING READY");
      System.out.println(ask(to, out, "frames"));
      if (ask(to, out, "state").equals("PLAYING REST")) {
        ask(to, out, "key PAGE_DOWN");
        await(to, out, "READING READY");
      }
      Await.until("words are read out", PATIENCE_SECONDS, () -> !ask(to, out, "words").isEmpty());
      ask(to, out, "drawn");
      List<String> words = List.of(ask(to, out, "words").split("\t"));
      String score = ask(to, out, "score");
      Await.until("the review is kept", PATIENCE_SECONDS, () -> has(takes, "01.json"));
      picture(to, out, "reading");
      to.println("quit");
      return new Heard(words, score, JsonFile.read(only(takes, "01.json")), only(takes, "01.wav"));
    } finally {
      robot.destroyForcibly();
      window.destroyForcibly();
      robot.waitFor();
      window.waitFor();
    }
  }

  private Process window() throws IOException {
    return window(Map.of());
  }

  private Process window(Map<String, String> more) throws IOException {
    Map<String, String> environment = new HashMap<>(more);
    environment.put("DISPLAY", screen.display());
    environment.put("JAVA_TOOL_OPTIONS", "-Dprism.order=sw");
    return sound.java(environment, DeskDriver.class.getName());
  }

  /** The drill, the view, the one key. */
  private void begin(PrintWriter to, BufferedReader out) throws Exception {
    assertThat(out.readLine()).as("the window").isEqualTo("open");
    assertThat(ask(to, out, "drill " + folder.resolve("drill.json"))).isEqualTo("true");
    assertThat(ask(to, out, "late " + ABOUT_LATE_MS)).isEqualTo("kept");
    visitSoundRoom(to, out);
    press(to, out);
  }

  /** Goes to the view and presses the one key, once what is drawn is that view. */
  private static void press(PrintWriter to, BufferedReader out) throws Exception {
    ask(to, out, "go PLAYING");
    await(to, out, "PLAYING READY");
    ask(to, out, "drawn");
    ask(to, out, "key PAGE_DOWN");
  }

  private static void awaitLineAboutSound(PrintWriter to, BufferedReader out) throws Exception {
    Await.until(
        "one line is about the sound",
        PATIENCE_SECONDS,
        () -> ask(to, out, "line").contains("sound"),
        () -> "it says: " + ask(to, out, "line"));
    assertThat(ask(to, out, "line")).doesNotContain("\t");
  }

  /** It listens there, and gives the input back to the run. */
  private void visitSoundRoom(PrintWriter to, BufferedReader out) throws Exception {
    ask(to, out, "go SOUND_ROOM");
    Await.until(
        "the sound room hears silence",
        PATIENCE_SECONDS,
        () -> ask(to, out, "room").startsWith("Silent"));
    picture(to, out, "sound-room");
  }

  /** Pictures for the eye, where the build is asked for them. */
  private void picture(PrintWriter to, BufferedReader out, String view) throws IOException {
    String into = System.getenv("NECKWAY_PICTURES");
    if (into != null) {
      ask(to, out, "picture " + Path.of(into, name + "-" + view + ".png"));
    }
  }

  private static BufferedReader reader(Process process) {
    return new BufferedReader(
        new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }

  private static String ask(PrintWriter to, BufferedReader out, String what) throws IOException {
    to.println(what);
    String answer = out.readLine();
    assertThat(answer).as("the window's answer to " + what).isNotNull();
    return answer;
  }

  private static void await(PrintWriter to, BufferedReader out, String... states) throws Exception {
    Await.until(
        "the window is " + states[0],
        PATIENCE_SECONDS,
        () -> List.of(states).contains(ask(to, out, "state")),
        () -> "it is " + ask(to, out, "state") + "; it says: " + ask(to, out, "line"));
  }

  private static Path only(Path takes, String end) throws IOException {
    try (Stream<Path> files = Files.list(takes)) {
      List<Path> found = files.filter(f -> f.toString().endsWith(end)).toList();
      assertThat(found).as(end + " in " + takes).hasSize(1);
      return found.get(0);
    }
  }

  private static boolean has(Path takes, String end) throws IOException {
    try (Stream<Path> files = Files.list(takes)) {
      return files.anyMatch(f -> f.toString().endsWith(end));
    }
  }

  // ---- what was read out

  private void assertSame(Heard heard, Performance played, PlayableDrill drill) {
    JsonNode truth = TruthFile.toJson("take.wav", Optional.of(drill), played, 0);
    JsonNode json = heard.json();
    assertThat(texts(json, "verdict")).isEqualTo(texts(truth, "verdict"));
    assertThat(texts(json, "step")).isEqualTo(texts(truth, "step"));
    assertThat(texts(json, "midi")).isEqualTo(texts(truth, "midi"));
    List<String> said = new ArrayList<>();
    json.at("/summary/words").forEach(word -> said.add(word.asText()));
    // what to do next leads, and the score stands once, in figures
    List<String> shown = new ArrayList<>(said.subList(1, said.size() - 1));
    shown.add(0, said.get(said.size() - 1));
    assertThat(heard.words()).as("on screen").isEqualTo(shown);
    assertThat(heard.score()).as("the score on screen").startsWith(said.get(0));
    assertThat(json.at("/grid/delayMeasured").asBoolean(true)).as("click heard").isTrue();
    double greatest = 0;
    for (int i = 0; i < json.path("notes").size(); i++) {
      JsonNode note = json.at("/notes/" + i);
      if (!note.path("timing").asText().equals("unsure")) {
        assertThat(note.path("offMs").asDouble())
            .as("note " + i)
            .isCloseTo(truth.at("/notes/" + i + "/offMs").asDouble(), within(CLOSE_MS));
        double off = note.path("offMs").asDouble() - truth.at("/notes/" + i + "/offMs").asDouble();
        greatest = Math.max(greatest, Math.abs(off));
      }
    }
    System.out.printf("Offsets differ from the truth by at most %.2f ms.%n", greatest);
  }

  private static List<String> texts(JsonNode review, String field) {
    List<String> texts = new ArrayList<>();
    review.path("notes").forEach(note -> texts.add(note.path(field).asText()));
    return texts;
  }

  private void assertReviewOfSavedTakeIsTheSame(
      Heard heard, PlayableDrill drill, Optional<GuitarProfile> guitar) {
    float[] samples = RobotPlayer.samples(heard.take());
    Run run =
        new Run(
            drill,
            guitar,
            heard.json().at("/take/sampleRate").asDouble(),
            OptionalDouble.of(heard.json().at("/grid/firstBeat").asDouble()),
            Clock.MEASURED,
            verdict -> {});
    run.feed(samples, 0, samples.length);
    Path written = folder.resolve("again.json");
    ReviewFile.write(written, run.finish(), heard.take().getFileName().toString(), drill);
    JsonNode again = JsonFile.read(written);
    for (String part : List.of("take", "drill", "grid", "notes", "steps", "shifts", "summary")) {
      assertThat(JsonFile.text(again.path(part)))
          .as(part)
          .isEqualTo(JsonFile.text(heard.json().path(part)));
    }
  }
}
