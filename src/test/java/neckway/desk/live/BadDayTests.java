package neckway.desk.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.stream.Stream;
import javafx.application.Platform;
import javafx.scene.control.ProgressBar;
import javafx.scene.input.KeyCode;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.TargetDataLine;
import neckway.Await;
import neckway.desk.Desk;
import neckway.desk.DeskFrame;
import neckway.desk.FxWindow;
import neckway.desk.Screen;
import neckway.desk.Screen.Place;
import neckway.desk.app.Coach;
import neckway.desk.app.DeskApp;
import neckway.desk.play.DeviceCheck;
import neckway.desk.play.Engine;
import neckway.desk.play.PlayingModel.State;
import neckway.desk.play.RunSettings;
import neckway.desk.read.DeviceClipOutput;
import neckway.drill.PlayableDrill;
import neckway.file.SettingsFile;
import neckway.file.sound.WavWriter;
import neckway.live.LiveRun;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.PlayerSettings;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Bad days in the whole window, without a screen, on a sound card that is pretended: a device that
 * is busy, one that is pulled out in the count-in, a disk that gets full. Each is one line, nothing
 * is lost, and the next press of the one key works.
 */
@Tag("live")
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class BadDayTests {
  private static final int SMALL_DISK_KILOBYTES = 720;
  private static final double PATIENCE_SECONDS = 40;

  @TempDir Path folder;

  private final ExecutorService work = Executors.newSingleThreadExecutor();
  private Desk desk;
  private Coach coach;
  private DeskFrame frame;
  private FxWindow window;

  @BeforeEach
  void open() {
    PretendCard.plugIn();
    window =
        FxWindow.open(
            () -> {
              SettingsFile kept = SettingsFile.at(folder.resolve("settings.json"));
              kept.put(Desk.INPUT, PretendCard.NAME);
              kept.put(Desk.OUTPUT, PretendCard.NAME);
              kept.put(RunSettings.TAKES, folder.resolve("takes").toString());
              desk = new Desk(kept);
              desk.drill().tempo(160);
              RunSettings settings = new RunSettings(desk.settings());
              settings.repeat().set(false);
              coach =
                  new Coach(
                      desk,
                      settings,
                      Engine.devices(),
                      new DeviceCheck(),
                      new DeviceClipOutput(settings::output),
                      work,
                      work,
                      Platform::runLater);
              Map<Place, Function<Desk, Screen>> screens = new EnumMap<>(Place.class);
              screens.putAll(DeskApp.screens());
              coach.offer(screens);
              frame = new DeskFrame(desk, screens);
              return frame.scene(1280, 800);
            });
  }

  @AfterEach
  void close() {
    closeCoach();
    window.close();
    PretendCard.pullOut();
    work.shutdownNow();
  }

  private void closeCoach() {
    FxWindow.on(
        () -> {
          frame.close();
          coach.close();
          return null;
        });
  }

  private void go(Place place) {
    FxWindow.on(
        () -> {
          desk.router().go(place);
          return null;
        });
    window.settle();
  }

  private State state() {
    return FxWindow.on(() -> coach.playing().state().get());
  }

  private Place place() {
    return FxWindow.on(() -> desk.router().current().get());
  }

  private String line() {
    return FxWindow.on(() -> coach.playing().line().get());
  }

  private void await(String what, BooleanSupplier there) throws Exception {
    Await.until(
        what,
        PATIENCE_SECONDS,
        there::getAsBoolean,
        () ->
            "%s, in front %s, line '%s', notice '%s'"
                .formatted(state(), place(), line(), FxWindow.on(() -> desk.notice().get())));
  }

  private List<Path> takes() throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve("takes"))) {
      return files.filter(f -> !f.toString().endsWith("filler")).sorted().toList();
    }
  }

  /** The guitar that plays the drill to the click, without a fault. */
  private void guitarPlays() {
    PlayableDrill drill = desk.drill().drill();
    Performance take =
        new VirtualPlayer(PlayerSettings.plain().withSampleRate(48_000).withFirstBeat(0.2))
            .play(drill.route(), drill.pulse(), List.of(), 4);
    double countIn = drill.pulse().countIn() * drill.pulse().beatSeconds();
    PretendCard.guitar(take.samples(), LiveRun.LEAD_SECONDS + countIn - 0.2);
  }

  @Test
  void deviceThatAnotherProgramHoldsIsOneLineAndTryingAgainWorks() throws Exception {
    AudioFormat format = new AudioFormat(48_000, 16, 1, true, false);
    DataLine.Info info = new DataLine.Info(TargetDataLine.class, format);
    TargetDataLine held = (TargetDataLine) AudioSystem.getMixer(card()).getLine(info);
    held.open(format, 8192);
    go(Place.PLAYING);
    await("the sound check's line", () -> line().contains("cannot be opened"));
    window.press(KeyCode.SPACE);
    await("ready again", () -> state() == State.READY && !line().isEmpty());
    assertThat(line())
        .contains(PretendCard.NAME)
        .contains("Device or resource busy")
        .contains("close other programs");
    assertThat(line().lines()).hasSize(1);
    held.close();
    window.press(KeyCode.SPACE);
    await("the count-in", () -> state() == State.COUNT_IN);
    assertThat(line()).isEmpty();
  }

  private static javax.sound.sampled.Mixer.Info card() {
    return Stream.of(AudioSystem.getMixerInfo())
        .filter(info -> info.getName().equals(PretendCard.NAME))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void devicePulledOutInTheCountInIsOneLineAndWorksOnceItIsBack() throws Exception {
    go(Place.PLAYING);
    window.press(KeyCode.SPACE);
    await("the count-in", () -> state() == State.COUNT_IN);
    PretendCard.pullOut();
    await("ready again", () -> state() == State.READY);
    assertThat(place()).isEqualTo(Place.PLAYING);
    await("one line", () -> !line().isEmpty());
    assertThat(line().lines()).hasSize(1);
    assertThat(FxWindow.on(() -> coach.playing().count().get())).isEmpty();
    PretendCard.plugIn();
    guitarPlays();
    window.press(KeyCode.SPACE);
    await("the reading", () -> place() == Place.READING);
    assertThat(FxWindow.on(() -> coach.reading().sentences().get().get(0).text()))
        .isEqualTo("All 25 notes were right and in order.");
  }

  @Test
  void diskThatGetsFullInARunKeepsTheTakeAndItsReading() throws Exception {
    Path takes = Files.createDirectories(folder.resolve("takes"));
    assumeTrue(
        ran("mount", "-t", "tmpfs", "-o", "size=" + SMALL_DISK_KILOBYTES + "k", "none", takes),
        "no leave to mount a small disk here: a full one is not tried");
    try {
      go(Place.PLAYING);
      guitarPlays();
      window.press(KeyCode.SPACE);
      await("playing", () -> state() == State.PLAYING);
      await("the reading", () -> place() == Place.READING);
      String said = FxWindow.on(() -> desk.notice().get());
      assertThat(said).contains(".wav").contains("no room left").contains("kept");
      assertThat(said.lines()).hasSize(1);
      assertThat(FxWindow.on(() -> coach.reading().sentences().get())).isNotEmpty();
      Path take =
          FxWindow.on(() -> coach.reading().take().get().orElseThrow().take()).orElseThrow();
      assertThat(take).exists();
      double seconds = RobotPlayer.samples(take).length / 48_000.0;
      // 720 kB at 96 kB a second, of which the last quarter of a second may be lost
      assertThat(seconds).isBetween(6.8, 7.68);
      assertThat(takes()).noneMatch(f -> f.toString().contains(".part"));
      // the disk is still full: nothing can begin, and one line says so
      work.submit(() -> {}).get(10, TimeUnit.SECONDS);
      window.settle();
      fill(takes.resolve("filler"));
      window.press(KeyCode.SPACE);
      await("refused", () -> state() == State.READY && line().contains("no room left"));
      assertThat(takes()).noneMatch(f -> f.toString().contains(".part"));
      Files.delete(take);
      window.press(KeyCode.SPACE);
      await("playing again", () -> state() == State.PLAYING);
    } finally {
      closeCoach();
      ran("umount", "-l", takes);
    }
  }

  @Test
  void recordingOfTwoHoursShowsItsProgressAndIsCancelledAtOnce() throws Exception {
    Path file = twoHoursOfSilence();
    go(Place.CHOOSING);
    FxWindow.on(
        () -> {
          desk.open(file);
          return null;
        });
    await("the reading", () -> place() == Place.READING);
    await("progress", () -> shownProgress() > 0.01);
    double before = shownProgress();
    await("more progress", () -> shownProgress() > before);
    assertThat(shownProgress()).isLessThan(1);
    long asked = System.nanoTime();
    window.press(KeyCode.ESCAPE);
    assertThat(FxWindow.on(() -> desk.notice().get())).contains("two hours.wav", "cancelled");
    assertThat(shownProgress()).isNaN();
    assertThat((System.nanoTime() - asked) / 1e9)
        .as("seconds until the window says so")
        .isLessThan(2);
    assertThat(FxWindow.on(() -> coach.reading().take().get())).isEmpty();
    // the thread that listened is free again
    CountDownLatch free = new CountDownLatch(1);
    work.execute(free::countDown);
    assertThat(free.await(2, TimeUnit.SECONDS)).isTrue();
  }

  /** How far the bar in the window is; not a number where there is none. */
  private double shownProgress() {
    return FxWindow.on(
        () ->
            window.scene().getRoot().lookupAll(".progress-bar").stream()
                .filter(bar -> bar.getParent().isVisible())
                // beside the bar of what is played back
                .filter(bar -> String.valueOf(bar.getAccessibleText()).contains("two hours.wav"))
                .mapToDouble(bar -> ((ProgressBar) bar).getProgress())
                .findFirst()
                .orElse(Double.NaN));
  }

  /** Most of it is a hole in the file, which the system reads as zeros. */
  private Path twoHoursOfSilence() throws IOException {
    int rate = 44_100;
    int bytes = 2 * 60 * 60 * rate * 2;
    Path file = folder.resolve("two hours.wav");
    try (WavWriter writer = new WavWriter(file, rate, WavWriter.Coding.PCM_16)) {
      writer.write(new float[rate], 0, rate);
      writer.finish();
    }
    try (RandomAccessFile whole = new RandomAccessFile(file.toFile(), "rw")) {
      whole.setLength(44L + bytes);
      whole.seek(4);
      whole.writeInt(Integer.reverseBytes(36 + bytes));
      whole.seek(40);
      whole.writeInt(Integer.reverseBytes(bytes));
    }
    return file;
  }

  private static void fill(Path file) {
    try (OutputStream out = Files.newOutputStream(file)) {
      while (true) {
        out.write(new byte[4096]);
      }
    } catch (IOException e) {
      assertThat(e).hasMessageContaining("No space left");
    }
  }

  private static boolean ran(Object... command) throws Exception {
    List<String> words = Stream.of(command).map(Object::toString).toList();
    try {
      Process process = new ProcessBuilder(words).start();
      return process.waitFor(5, TimeUnit.SECONDS) && process.exitValue() == 0;
    } catch (IOException e) {
      return false;
    }
  }
}
