package neckway.desk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.FutureTask;
import java.util.function.Function;
import javafx.application.Platform;
import javafx.event.Event;
import javafx.scene.image.PixelReader;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.stage.Stage;
import neckway.desk.Screen.Place;
import neckway.desk.app.Coach;
import neckway.desk.app.DeskApp;
import neckway.desk.play.RunSettings;
import neckway.desk.read.ReadTake;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.file.SettingsFile;
import neckway.file.sound.WavWriter;
import neckway.live.LiveResult;
import neckway.live.LiveRunListener;
import neckway.neck.Direction;
import neckway.neck.Shape;
import neckway.page.PagedTake;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.Mistake;
import neckway.player.settings.PlayerSettings;
import neckway.review.Clock;
import neckway.review.Review;
import neckway.run.Run;
import neckway.sound.ClickClock;

/**
 * Makes pictures of playing and reading, from a take of the virtual player and no device:
 *
 * <pre>java -Dglass.platform=Monocle … neckway.desk.RunPictures FOLDER</pre>
 */
public final class RunPictures {
  /** About half a second, so that a playhead stands in the middle of things. */
  private static final long FRAMES_HEARD = 30_000;

  private final Path folder;
  private final Desk desk;
  private final Coach coach;
  private Stage stage;
  private LiveRunListener live;
  private Performance take;
  private PlayableDrill drill;

  private RunPictures(Path folder) throws IOException {
    this.folder = folder;
    Files.createDirectories(folder);
    Path work = Files.createTempDirectory("pictures");
    desk = new Desk(SettingsFile.at(work.resolve("settings.json")));
    RunSettings settings = new RunSettings(desk.settings());
    coach =
        new Coach(
            desk,
            settings,
            (setup, listener) -> {
              live = listener;
              return () -> {};
            },
            new SaidCheck(0.2f, Texts.of("check.flat", 31)),
            new SilentOutput(FRAMES_HEARD),
            Runnable::run,
            Runnable::run,
            Runnable::run);
  }

  public static void main(String[] args) throws Exception {
    RunPictures pictures = new RunPictures(Path.of(args[0]));
    Platform.startup(() -> Platform.setImplicitExit(false));
    try {
      pictures.all();
    } finally {
      // the toolkit's own end may hang where there is no window manager
      Runtime.getRuntime().halt(0);
    }
  }

  private interface Task {
    void run() throws Exception;
  }

  /** Does something in the window's thread and waits until it is drawn. */
  private static void now(Task task) throws Exception {
    FutureTask<Void> done =
        new FutureTask<>(
            () -> {
              task.run();
              return null;
            });
    Platform.runLater(done);
    done.get();
    Frames.drawn();
  }

  private void all() throws Exception {
    now(this::open);
    shot("read-nothing", () -> desk.router().go(Place.READING));
    shot("play-ready", () -> desk.router().go(Place.PLAYING));
    perform(
        List.of(
            new Mistake.Slip(Mistake.Kind.WRONG, 9, OptionalInt.empty()),
            new Mistake.Slip(Mistake.Kind.SKIP, 17, OptionalInt.empty()),
            new Mistake.Slip(Mistake.Kind.REPEAT, 12, OptionalInt.empty()),
            new Mistake.Slip(Mistake.Kind.EXTRA, 14, OptionalInt.empty()),
            new Mistake.Late(7, 90)));
    RunSettings settings = coach.playing().settings();
    now(() -> press(KeyCode.SPACE));
    now(() -> live.roundBegins(0));
    shot("play-count-in", () -> live.beat(-2));
    now(() -> settings.liveMarks().set(true));
    now(() -> live.beat(0));
    shot("play-marks", this::half);
    shot("play-plain", () -> settings.liveMarks().set(false));
    now(() -> settings.guessFirst().set(true));
    now(this::finish);
    shot("play-guess", () -> press(KeyCode.DIGIT2));
    now(() -> press(KeyCode.DIGIT1));
    shot("read", () -> press(KeyCode.ENTER));
    shot("read-pointed", () -> coach.reading().point(9));
    shot("read-looped", coach.reading()::loopShift);
    now(coach.reading()::stop);
    shot("read-dark", () -> desk.look().dark().set(true));
    shot("play-dark", () -> desk.router().go(Place.PLAYING));
    now(() -> size(1920, 1080));
    shot("play-dark-1920", () -> {});
    shot("read-dark-1920", () -> desk.router().go(Place.READING));
    shot("read-1920", () -> desk.look().dark().set(false));
    shot("read-200", () -> desk.look().text(200));
    shot("play-200", () -> desk.router().go(Place.PLAYING));
    now(() -> size(1280, 800));
    shot("play-300-small", () -> desk.look().text(300));
    shot("read-300-small", () -> desk.router().go(Place.READING));
    now(() -> desk.look().text(100));
    now(
        () ->
            Chains.lowest(
                desk.drill(),
                List.of(Shape.MAJOR, Shape.DORIAN, Shape.PHRYGIAN, Shape.MIXOLYDIAN)));
    shot("play-long", () -> desk.router().go(Place.PLAYING));
    now(() -> desk.look().leftHanded().set(true));
    shot("play-left", () -> desk.look().lowStringOnTop().set(true));
    now(() -> desk.router().go(Place.READING));
    shot("read-moved", () -> read(PagedTake.recordedOnItsGuitar("moved-shift")));
    shot("read-missed", () -> read(PagedTake.recorded("missed-shift")));
    shot("read-missed-known", () -> read(missedOnAKnownGuitar()));
  }

  private void read(PagedTake take) {
    coach
        .reading()
        .open(ReadTake.played(take.drill(), take.review(), Optional.empty(), OptionalInt.empty()));
  }

  private static PagedTake missedOnAKnownGuitar() {
    PlayableDrill drill = Drills.example();
    Mistake stayed =
        new Mistake.ShiftElsewhere(0, Direction.UP, OptionalInt.of(0), Optional.empty());
    return PagedTake.of("missed", drill, PagedTake.performance(drill, List.of(stayed), 3), true);
  }

  private void size(double width, double height) {
    // a window without a screen cannot change its size, so another one takes over
    javafx.scene.Scene scene = stage.getScene();
    stage.hide();
    stage = new Stage();
    stage.setScene(scene);
    stage.setWidth(width);
    stage.setHeight(height);
    stage.show();
  }

  private void open() {
    Map<Place, Function<Desk, Screen>> screens = new EnumMap<>(Place.class);
    screens.putAll(DeskApp.screens());
    coach.offer(screens);
    DeskFrame frame = new DeskFrame(desk, screens);
    stage = new Stage();
    stage.setScene(frame.scene(1280, 800));
    stage.show();
  }

  private void perform(List<Mistake> mistakes) throws IOException {
    drill = desk.drill().drill();
    take =
        new VirtualPlayer(PlayerSettings.plain().withSampleRate(48_000))
            .play(drill.route(), drill.pulse(), mistakes, 5);
  }

  private void half() {
    Run run =
        new Run(
            drill,
            Optional.empty(),
            take.sampleRate(),
            OptionalDouble.of(take.firstBeat()),
            Clock.MEASURED,
            live);
    live.begun(
        new neckway.review.Grid(
            neckway.review.Grid.Source.GIVEN,
            drill.pulse().tempo(),
            take.firstBeat(),
            drill.pulse().slotSeconds()));
    run.feed(take.samples(), 0, (int) ((take.firstBeat() + 7.2) * take.sampleRate()));
  }

  private void finish() throws IOException {
    Run run =
        new Run(
            drill,
            Optional.empty(),
            take.sampleRate(),
            OptionalDouble.of(take.firstBeat()),
            Clock.MEASURED,
            verdict -> {});
    run.feed(take.samples(), 0, take.samples().length);
    Review review = run.finish();
    Path file = Files.createTempDirectory("take").resolve("take.wav");
    try (WavWriter writer = new WavWriter(file, take.sampleRate(), WavWriter.Coding.PCM_16)) {
      writer.write(take.samples(), 0, take.samples().length);
      writer.finish();
    }
    live.roundEnded(
        new LiveResult(
            0, review, Optional.of(file), Optional.of(ClickClock.Source.HEARD), 0, 0, List.of()));
    live.over();
  }

  private void press(KeyCode code) {
    Event.fireEvent(
        stage.getScene().getFocusOwner() == null
            ? stage.getScene().getRoot()
            : stage.getScene().getFocusOwner(),
        new KeyEvent(KeyEvent.KEY_PRESSED, "", "", code, false, false, false, false));
  }

  private void shot(String name, Task before) throws Exception {
    now(before);
    now(() -> picture(name));
  }

  private void picture(String name) throws IOException {
    WritableImage image = stage.getScene().snapshot(null);
    int width = (int) image.getWidth();
    int height = (int) image.getHeight();
    java.awt.image.BufferedImage copy =
        new java.awt.image.BufferedImage(width, height, java.awt.image.BufferedImage.TYPE_INT_RGB);
    PixelReader reader = image.getPixelReader();
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        copy.setRGB(x, y, reader.getArgb(x, y));
      }
    }
    javax.imageio.ImageIO.write(copy, "png", folder.resolve(name + ".png").toFile());
  }
}
