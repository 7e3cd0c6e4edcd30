package neckway.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import neckway.Await;
import neckway.file.JsonFile;
import neckway.file.sound.Channel;
import neckway.file.sound.TakeReader;
import neckway.file.sound.WavWriter;
import neckway.live.LiveRun;
import neckway.sound.PlayedWhole;
import neckway.sound.VirtualSound;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * {@code listen} in a process of its own while a take is played into a virtual microphone; what it
 * said is held against the truth of the take and against {@code review} of the take it saved.
 */
@Tag("live")
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class ListenTests {
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

  /** Clicks before the first beat and the lead before them, seconds at 150 beats a minute. */
  private static final double UNTIL_FIRST_BEAT = LiveRun.LEAD_SECONDS + 4 * 60 / 150.0;

  private static final double BEAT_SECONDS = 60 / 150.0;
  private static final int COUNT_IN = 4;
  private static final int PLAYINGS = 3;
  private static final int MOST_RUNS = 5;
  private static final double CLOSE_SECONDS = 0.0015;
  private static final double MOST_SPREAD_MS = 0.5;
  private static final double AGREED_SECONDS = 0.0005;

  /** Notes that are waited for where the run is to be in full course. */
  private static final int SOME_NOTES = 6;

  /** Sound that is waited for where the run is to be in its count-in. */
  private static final double SOME_SECONDS = 0.5;

  /** Less than a take is first put on the disk with. */
  private static final double FIRST_FLUSH_SECONDS = 0.1;

  private static final int SAVED_BYTES_PER_SECOND = 2 * 48_000;

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
  void whatIsHeardLiveIsTheTruthAndTheReviewOfTheSavedTake() throws Exception {
    Files.writeString(
        folder.resolve("slips.json"),
        "[{\"kind\":\"wrong\",\"step\":6},{\"kind\":\"skip\",\"step\":11},"
            + "{\"kind\":\"repeat\",\"step\":17}]");
    JsonNode truth = perform("--seed", "11", "--mistakes", path("slips.json"));
    Live live = listen(Map.of(), true, truth);

    assertThat(live.status()).isZero();
    JsonNode heard = live.json();
    assertThat(texts(heard, "verdict")).isEqualTo(texts(truth, "verdict"));
    assertThat(texts(heard, "step")).isEqualTo(texts(truth, "step"));
    assertThat(texts(heard, "midi")).isEqualTo(texts(truth, "midi"));
    assertTimesDifferByAConstant(heard, truth);
    assertThat(live.text()).contains("bar 1 |").contains("6:3 ").contains("has not been measured");
    assertThat(heard.at("/grid/source").asText()).isEqualTo("given");
    assertThat(heard.at("/grid/delayMeasured").asBoolean()).isFalse();
    assertSameAsReview(heard);
  }

  @Test
  void clickThatTheInputHearsGivesTheFirstBeatToAFractionOfAMillisecond() throws Exception {
    JsonNode truth = perform("--seed", "12");
    Live live = listen(Map.of("PULSE_SINK", "mic"), true, truth);
    assertThat(live.text()).contains("the input heard the click");
    assertClickStandsOnFirstBeat(live.json());
  }

  @Test
  void measuredRoundTripGivesTheFirstBeatWithoutHearingTheClick() throws Exception {
    Map<String, String> cable = Map.of("PULSE_SINK", "mic");
    // two clicks of count-in are too few to be believed, so the measured round trip is used
    Path drill = folder.resolve("drill.json");
    Files.writeString(
        drill,
        "{\"format\":\"neckway-drill/1\",\"key\":\"G major\",\"route\":{\"shapes\":[\"major\"],"
            + "\"start\":3},\"pulse\":{\"tempo\":150,\"countIn\":2}}");
    // a busy machine moves the clicks of a whole run; what two of them agree on is the program's
    List<Double> offs = new ArrayList<>();
    boolean agreed = false;
    while (!agreed && offs.size() < MOST_RUNS) {
      assertThat(measureRoundTrip(cable)).contains("Heard 16 clicks");
      assertThat(listenToTheClickAlone(cable, drill)).contains("by the delay measured before");
      JsonNode json = JsonFile.read(folder.resolve("live.json"));
      assertThat(json.at("/grid/delayMeasured").asBoolean()).isTrue();
      double off = clickOffSeconds(json);
      agreed = offs.stream().anyMatch(before -> Math.abs(before - off) < AGREED_SECONDS);
      offs.add(off);
    }
    assertThat(agreed).as("the devices are as late in two runs, off by " + offs).isTrue();
    assertThat(offs.get(offs.size() - 1))
        .as("first click of the count-in, s off in each run: " + offs)
        .isCloseTo(0, within(CLOSE_SECONDS));
  }

  /**
   * What the program says of the round trip. Where it refuses, or says that the clicks spread,
   * because they came unevenly on a busy machine, it is asked again.
   */
  private String measureRoundTrip(Map<String, String> environment) throws Exception {
    StringBuilder refused = new StringBuilder();
    for (int playing = 0; playing < PLAYINGS; playing++) {
      Process measuring =
          sound.java(environment, Main.class.getName(), "listen", "--measure-round-trip");
      String said = read(measuring);
      if (ended(measuring, said) == 0) {
        JsonNode kept = JsonFile.read(sound.settings().resolve("round-trip.json"));
        double spreadMs = kept.at("/pairs/0/spreadMs").asDouble();
        if (spreadMs < MOST_SPREAD_MS) {
          return said;
        }
        refused.append("clicks spread by ").append(spreadMs).append(" ms\n");
      } else {
        String complaint = oneComplaint(measuring);
        assertThat(complaint).contains("of 16 clicks clearly");
        refused.append(complaint).append('\n');
      }
    }
    throw new AssertionError("no round trip was measured: " + refused);
  }

  /**
   * Nobody plays to the click. Where the machine was too busy to play it as it should, which the
   * captured clicks or the program's own count of stumbles show, it is played again.
   */
  private String listenToTheClickAlone(Map<String, String> environment, Path drill)
      throws Exception {
    StringBuilder why = new StringBuilder();
    for (int playing = 0; playing < PLAYINGS; playing++) {
      Process live =
          sound.java(
              environment,
              Main.class.getName(),
              "listen",
              "--drill",
              drill.toString(),
              "--save",
              path("live.wav"),
              "--json",
              path("live.json"));
      awaitSaved(LiveRun.LEAD_SECONDS + COUNT_IN * BEAT_SECONDS + 1);
      live.toHandle().destroy();
      String words = read(live);
      assertThat(ended(live, words)).as(words).isZero();
      boolean stumbled = sound.errorsOf(live).contains("stumbled");
      boolean even = clicksAreEven();
      if (even && !stumbled) {
        return words;
      }
      why.append(even ? "" : " clicks uneven;").append(stumbled ? " output stumbled;" : "");
    }
    throw new AssertionError(
        "the devices did not play the click as it should be in " + PLAYINGS + " runs:" + why);
  }

  @Test
  void freeStartTakesTheFirstNoteAsTheFirstBeat() throws Exception {
    JsonNode truth = perform("--seed", "13");
    Live live = listen(Map.of(), false, truth, "--start", "first-note");
    assertThat(live.status()).isZero();
    JsonNode heard = live.json();
    assertThat(texts(heard, "verdict")).isEqualTo(texts(truth, "verdict"));
    assertThat(heard.at("/grid/firstBeat").asDouble())
        .isCloseTo(heard.at("/notes/0/time").asDouble(), within(0.0001));
    assertThat(heard.at("/notes/0/slot").asInt()).isZero();
    assertSameAsReview(heard);
  }

  /** What may become of a sound server. */
  enum Fault {
    ENDS,
    HANGS;

    void befall(VirtualSound sound) throws Exception {
      if (this == ENDS) {
        sound.pullOut();
      } else {
        sound.hang();
      }
    }
  }

  @ParameterizedTest
  @EnumSource
  void deviceLostInTheRunLeavesTheTakeUpToThereReviewed(Fault fault) throws Exception {
    perform("--seed", "14");
    Process process = startListening(Map.of());
    String said;
    long lostAt;
    try (BufferedReader out = reader(process)) {
      awaitStart(out);
      sound.awaitListeningAndPlaying();
      sound.playIntoMicrophone(folder.resolve("take.wav"));
      String heardBefore = awaitNotes(out);
      fault.befall(sound);
      lostAt = System.nanoTime();
      said = heardBefore + rest(out);
    }
    assertThat(ended(process, said)).isZero();
    assertEndedSoonAfter(lostAt);
    assertThat(oneComplaint(process)).contains("input was lost at").contains("kept and reviewed");
    JsonNode heard = JsonFile.read(folder.resolve("live.json"));
    assertThat(heard.at("/notes").size()).isBetween(3, 24);
    assertThat(Files.size(folder.resolve("live.wav"))).isGreaterThan(48_000 * 2 * 3);
    assertSameAsReview(heard);
  }

  @ParameterizedTest
  @EnumSource
  void deviceLostInTheCountInLeavesTheTakeUpToThereReviewed(Fault fault) throws Exception {
    Process process = startListening(Map.of());
    String said;
    long lostAt;
    try (BufferedReader out = reader(process)) {
      awaitStart(out);
      awaitSaved(SOME_SECONDS);
      fault.befall(sound);
      lostAt = System.nanoTime();
      said = rest(out);
    }
    assertThat(ended(process, said)).isZero();
    assertEndedSoonAfter(lostAt);
    assertThat(oneComplaint(process)).contains("input was lost at").contains("kept and reviewed");
    JsonNode heard = JsonFile.read(folder.resolve("live.json"));
    assertThat(heard.at("/notes").size()).isZero();
    assertThat(Files.size(folder.resolve("live.wav"))).isGreaterThan(4_800);
    assertSameAsReview(heard);
  }

  @Test
  void soundServerThatHangsFromTheStartIsSaidInOneLine() throws Exception {
    sound.hang();
    long begun = System.nanoTime();
    Process process = startListening(Map.of());
    String said = read(process);
    assertThat(ended(process, said)).isEqualTo(2);
    assertEndedSoonAfter(begun);
    assertThat(oneComplaint(process)).contains("does not answer").contains("try again");
    assertThat(folder.resolve("live.wav")).doesNotExist();
  }

  @Test
  void soundServerThatHangsWhileTheRoundTripIsMeasuredIsSaidInOneLine() throws Exception {
    Process process =
        sound.java(
            Map.of("PULSE_SINK", "mic"), Main.class.getName(), "listen", "--measure-round-trip");
    sound.awaitListeningAndPlaying();
    sound.hang();
    long lostAt = System.nanoTime();
    String said = read(process);
    assertThat(ended(process, said)).isEqualTo(2);
    assertEndedSoonAfter(lostAt);
    assertThat(oneComplaint(process)).contains("is gone").contains("nothing was measured");
    assertThat(sound.settings().resolve("round-trip.json")).doesNotExist();
  }

  private static void assertEndedSoonAfter(long nanos) {
    assertThat((System.nanoTime() - nanos) / 1e9).as("seconds until it ended").isLessThan(12);
  }

  private String oneComplaint(Process process) throws IOException {
    List<String> complaints =
        sound.errorsOf(process).lines().filter(line -> line.startsWith("neckway:")).toList();
    assertThat(complaints).hasSize(1);
    return complaints.get(0);
  }

  @Test
  void interruptEndsItAtOnceAndEverythingIsWritten() throws Exception {
    JsonNode truth = perform("--seed", "15");
    Process process = startListening(Map.of());
    try (BufferedReader out = reader(process)) {
      awaitStart(out);
      play(truth);
      String heardBefore = awaitNotes(out);
      long asked = System.nanoTime();
      process.toHandle().destroy();
      assertThat(ended(process, heardBefore + rest(out))).isZero();
      assertThat((System.nanoTime() - asked) / 1e9).isLessThan(5);
    }
    JsonNode heard = JsonFile.read(folder.resolve("live.json"));
    assertThat(heard.at("/notes").size()).isBetween(3, 24);
    assertSameAsReview(heard);
  }

  @Test
  void takeThatCannotBePutInItsPlaceIsSaidAndItsReviewIsWrittenAllTheSame() throws Exception {
    Process process = startListening(Map.of());
    try (BufferedReader out = reader(process)) {
      awaitStart(out);
      Files.createDirectories(folder.resolve("live.wav").resolve("in the way"));
      Thread.sleep(3_000);
      process.toHandle().destroy();
      assertThat(ended(process, rest(out))).isEqualTo(Complaints.UNUSABLE);
    }
    assertThat(oneComplaint(process)).contains("live.wav").contains("the sound is in");
    assertThat(folder.resolve("live.json")).exists();
    assertWholeWav(folder.resolve("live.part.wav"));
  }

  /** As kill -9 or a power cut: nothing of the program runs any more. */
  @Test
  void killedInTheRunItLeavesAWholeWavBesideAnOlderTakeThatStays() throws Exception {
    JsonNode truth = perform("--seed", "16");
    Path older = Files.copy(folder.resolve("take.wav"), folder.resolve("older.wav"));
    Files.copy(older, folder.resolve("live.wav"));
    Process process = startListening(Map.of());
    double listenedSeconds;
    try (BufferedReader out = reader(process)) {
      awaitStart(out);
      // devices take a second to wake, and nothing can be saved before
      awaitSaved(FIRST_FLUSH_SECONDS);
      long begun = System.nanoTime();
      play(truth);
      Thread.sleep(4_000);
      process.destroyForcibly();
      listenedSeconds = (System.nanoTime() - begun) / 1e9;
      assertThat(process.waitFor(5, TimeUnit.SECONDS)).isTrue();
    }
    assertThat(folder.resolve("live.wav")).hasSameBinaryContentAs(older);
    assertThat(folder.resolve("live.json")).doesNotExist();
    Path part = folder.resolve("live.part.wav");
    assertWholeWav(part);
    try (TakeReader reader = TakeReader.open(part, Channel.AUTO)) {
      double seconds = PlayedWhole.samples(reader).length / (double) reader.sampleRate();
      assertThat(reader.warning()).isEmpty();
      assertThat(seconds).as("saved of %s s", listenedSeconds).isGreaterThan(listenedSeconds - 1);
    }
  }

  /**
   * By the sizes in its header, as Microsoft's and IBM's "Multimedia Programming Interface and Data
   * Specifications 1.0" (1991) has them: of the file less 8 bytes at 4, of the samples at 40.
   */
  private static void assertWholeWav(Path file) throws IOException {
    ByteBuffer bytes = ByteBuffer.wrap(Files.readAllBytes(file)).order(ByteOrder.LITTLE_ENDIAN);
    assertThat(bytes.getInt(40)).isPositive();
    assertThat(bytes.getInt(4)).isEqualTo(36 + bytes.getInt(40));
    // what was written since the header was is no more than a quarter of a second's flush
    assertThat(bytes.capacity() - 44 - bytes.getInt(40)).isBetween(0, 48_000);
  }

  @Test
  void tunerListensToo() throws Exception {
    float[] tone = new float[48_000 * 3];
    for (int i = 0; i < tone.length; i++) {
      tone[i] = (float) (0.3 * Math.sin(2 * Math.PI * 196.5 * i / 48_000));
    }
    try (WavWriter writer =
        new WavWriter(folder.resolve("g.wav"), 48_000, WavWriter.Coding.PCM_16)) {
      writer.write(tone, 0, tone.length);
      writer.finish();
    }
    Process tuner = sound.java(Map.of(), Main.class.getName(), "tune");
    sound.awaitListening();
    sound.playIntoMicrophone(folder.resolve("g.wav"));
    String said;
    try (BufferedReader out = reader(tuner)) {
      // a tone is told once it is over
      String first = out.readLine();
      tuner.toHandle().destroy();
      said = first + "\n" + rest(out);
    }
    // 1200 log2(196.5 / 195.998) = 4.43
    assertThat(said).contains("G3     +4.4 cents").contains("string 3 (G3): slacken it");
    assertThat(ended(tuner, said)).isZero();
  }

  /** Every sample is one more than the last: none may be missing. */
  @Test
  void captureLosesNoFrame() throws Exception {
    Process counter =
        sound.start(
            "sh",
            "-c",
            "perl -e '$s = pack \"S*\", 0..65535; print $s while 1' | exec pacat -d mic --raw"
                + " --rate=48000 --channels=1 --format=s16le");
    Process soak = sound.java(Map.of(), "neckway.sound.CaptureSoak", "15");
    String said = read(soak);
    assertThat(ended(soak, said)).isZero();
    counter.destroy();
    assertThat(said).matches("captured \\d{6,} checked \\d{6,} breaks 0 lost 0 .*unread 0\\s*");
  }

  // ---- playing and listening

  private record Live(int status, String text, JsonNode json) {}

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

  /**
   * Plays a take to {@code listen}. Where the machine was too busy to play it whole, which shows in
   * the sound that was captured, it is played again; what is then made of it is judged once.
   */
  private Live listen(
      Map<String, String> environment, boolean click, JsonNode truth, String... more)
      throws Exception {
    StringBuilder why = new StringBuilder();
    for (int playing = 0; playing < PLAYINGS; playing++) {
      if (playing > 0) {
        // its end still sounds when its last note has been heard
        sound.awaitSilence();
      }
      Live live = listenOnce(environment, click, truth, more);
      OptionalDouble broken =
          new PlayedWhole(folder.resolve("live.wav")).brokenAt(folder.resolve("take.wav"));
      boolean clicked = environment.isEmpty() || clicksAreEven();
      if (broken.isEmpty() && clicked) {
        return live;
      }
      why.append(broken.isPresent() ? " take broken at " + broken.getAsDouble() + " s;" : "")
          .append(clicked ? "" : " clicks uneven;");
    }
    throw new AssertionError(
        "the devices did not play the take whole in " + PLAYINGS + " playings:" + why);
  }

  private Live listenOnce(
      Map<String, String> environment, boolean click, JsonNode truth, String... more)
      throws Exception {
    Process process = startListening(environment, more);
    String text;
    try (BufferedReader out = reader(process)) {
      awaitStart(out);
      if (click) {
        play(truth);
      } else {
        sound.awaitListening();
        sound.playIntoMicrophone(folder.resolve("take.wav"));
      }
      text = rest(out);
    }
    int status = ended(process, text);
    assertThat(status).as(text + sound.errorsOf(process)).isZero();
    return new Live(status, text, JsonFile.read(folder.resolve("live.json")));
  }

  /** Whether the count-in's clicks, which stand in silence, came as evenly as they should. */
  private boolean clicksAreEven() {
    try (TakeReader reader = TakeReader.open(folder.resolve("live.wav"), Channel.AUTO)) {
      double rate = reader.sampleRate();
      float[] all = PlayedWhole.samples(reader);
      int click = rise(all, 0);
      for (int beat = 1; beat < COUNT_IN; beat++) {
        int next = rise(all, click + (int) (0.2 * rate));
        if (Math.abs((next - click) / rate - BEAT_SECONDS) >= 0.001) {
          return false;
        }
        click = next;
      }
      return true;
    }
  }

  private static int rise(float[] sound, int from) {
    int at = from;
    while (at < sound.length && Math.abs(sound[at]) < 0.004) {
      at++;
    }
    return at;
  }

  private Process startListening(Map<String, String> environment, String... more)
      throws IOException {
    List<String> args = new ArrayList<>(List.of("listen"));
    args.addAll(DRILL);
    args.addAll(List.of("--save", path("live.wav"), "--json", path("live.json")));
    args.addAll(List.of(more));
    return sound.java(environment, Main.class.getName(), args.toArray(new String[0]));
  }

  /** Plays the take so that its first beat falls near the click's, which comes in its own time. */
  private void play(JsonNode truth) throws Exception {
    double early = truth.at("/grid/firstBeat").asDouble();
    Await.pass(Math.max(0, UNTIL_FIRST_BEAT - early));
    sound.playIntoMicrophone(folder.resolve("take.wav"));
  }

  private static BufferedReader reader(Process process) {
    return new BufferedReader(
        new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }

  private static void awaitStart(BufferedReader out) throws IOException {
    String line = out.readLine();
    while (line != null && !line.startsWith("Count-in") && !line.startsWith("Listening")) {
      line = out.readLine();
    }
    assertThat(line).as("listen did not begin").isNotNull();
  }

  /** Reads on until some notes have been told; what was read. */
  private static String awaitNotes(BufferedReader out) throws IOException {
    StringBuilder said = new StringBuilder();
    Pattern note = Pattern.compile(" \\d:\\d+ [-+?0-9]");
    while (note.matcher(said).results().count() < SOME_NOTES) {
      int next = out.read();
      assertThat(next).as("listen ended early; it said: " + said).isNotNegative();
      said.append((char) next);
    }
    return said.toString();
  }

  /** Waits until so much sound has been saved. */
  private void awaitSaved(double seconds) throws Exception {
    Path part = folder.resolve("live.part.wav");
    Await.until(
        seconds + " s are saved",
        VirtualSound.PROGRAM_SECONDS,
        () -> Files.exists(part) && Files.size(part) > seconds * SAVED_BYTES_PER_SECOND);
  }

  private static String rest(BufferedReader out) {
    return out.lines().collect(Collectors.joining("\n"));
  }

  private static String read(Process process) throws IOException {
    try (BufferedReader out = reader(process)) {
      return rest(out);
    }
  }

  /** Exit status of a program that ended by itself; one that did not fails the test. */
  private int ended(Process process, String said) throws Exception {
    boolean ended = process.waitFor(VirtualSound.PROGRAM_SECONDS + 5, TimeUnit.SECONDS);
    assertThat(ended && !sound.overdue(process))
        .as("it did not end; it said: " + said + "\n" + sound.errorsOf(process))
        .isTrue();
    return process.exitValue();
  }

  // ---- comparing

  private static List<String> texts(JsonNode review, String field) {
    List<String> texts = new ArrayList<>();
    review.path("notes").forEach(note -> texts.add(note.path(field).asText()));
    return texts;
  }

  private static void assertTimesDifferByAConstant(JsonNode heard, JsonNode truth) {
    int n = heard.path("notes").size();
    double[] apart = new double[n];
    for (int i = 0; i < n; i++) {
      apart[i] =
          heard.at("/notes/" + i + "/time").asDouble()
              - truth.at("/notes/" + i + "/time").asDouble();
    }
    double[] sorted = apart.clone();
    Arrays.sort(sorted);
    double median = sorted[n / 2];
    double[] off = Arrays.stream(apart).map(d -> Math.abs(d - median)).sorted().toArray();
    assertThat(off[n / 2]).as("median of what times differ by, s").isLessThan(0.003);
    assertThat(off[n * 9 / 10]).as("nine in ten of it, s").isLessThan(0.015);
  }

  private void assertSameAsReview(JsonNode heard) {
    List<String> args = new ArrayList<>(List.of("review", path("live.wav")));
    args.addAll(DRILL);
    args.addAll(
        List.of(
            "--first-beat", heard.at("/grid/firstBeat").asText(), "--json", path("review.json")));
    run(args);
    JsonNode again = JsonFile.read(folder.resolve("review.json"));
    for (String part : List.of("drill", "notes", "steps", "shifts")) {
      assertThat(heard.path(part)).as(part).isEqualTo(again.path(part));
    }
    assertThat(heard.at("/take/seconds")).isEqualTo(again.at("/take/seconds"));
    assertThat(heard.at("/take/peakDbfs")).isEqualTo(again.at("/take/peakDbfs"));
  }

  private void assertClickStandsOnFirstBeat(JsonNode heard) {
    assertThat(clickOffSeconds(heard))
        .as("first click of the count-in, s off")
        .isCloseTo(0, within(CLOSE_SECONDS));
  }

  /**
   * How much later the first click is than the review's first beat has it. Its rise is found in the
   * saved sound by its level alone, not by our own filter.
   */
  private double clickOffSeconds(JsonNode heard) {
    double firstBeat = heard.at("/grid/firstBeat").asDouble();
    try (TakeReader reader = TakeReader.open(folder.resolve("live.wav"), Channel.AUTO)) {
      double rate = reader.sampleRate();
      float[] all = PlayedWhole.samples(reader);
      // the count-in's first two clicks stand in silence
      int countIn = heard.at("/drill/pulse/countIn").asInt();
      double due = firstBeat - countIn * BEAT_SECONDS;
      return rise(all, (int) ((due - 0.15) * rate)) / rate - due;
    }
  }
}
