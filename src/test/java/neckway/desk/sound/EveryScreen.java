package neckway.desk.sound;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.application.Platform;
import javafx.scene.input.KeyCode;
import neckway.calibration.Calibration;
import neckway.desk.Chains;
import neckway.desk.Desk;
import neckway.desk.DeskFrame;
import neckway.desk.Eyes;
import neckway.desk.Frames;
import neckway.desk.FxWindow;
import neckway.desk.SaidCheck;
import neckway.desk.Screen;
import neckway.desk.Screen.Place;
import neckway.desk.SilentOutput;
import neckway.desk.app.Coach;
import neckway.desk.app.DeskApp;
import neckway.desk.play.RunSettings;
import neckway.drill.PlayableDrill;
import neckway.file.RoundTripFile;
import neckway.file.SettingsFile;
import neckway.file.sound.WavWriter;
import neckway.live.LiveResult;
import neckway.live.LiveRunListener;
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
import neckway.sound.ClickClock;

/**
 * Takes pictures of every screen of the whole window, with nothing yet recorded and with much to
 * say, in both sizes, light and dark, with large text, left-handed, and as colour-blind eyes see
 * them:
 *
 * <pre>java -Dglass.platform=Monocle … neckway.desk.sound.EveryScreen FOLDER</pre>
 */
public final class EveryScreen {
  private final Path folder;
  private FakeDevices devices;
  private Desk desk;
  private Coach coach;
  private SoundModel room;
  private LiveRunListener live;
  private FxWindow window;

  private EveryScreen(Path folder) {
    this.folder = folder;
  }

  public static void main(String[] args) throws Exception {
    try {
      EveryScreen pictures = new EveryScreen(Path.of(args[0]));
      for (double[] size : new double[][] {{1280, 800}, {1920, 1080}}) {
        for (boolean dark : new boolean[] {false, true}) {
          String name = (int) size[0] + (dark ? "-dark" : "");
          pictures.all(name, size, desk -> desk.look().dark().set(dark));
        }
      }
      double[] small = {1280, 800};
      pictures.all("1280-300", small, desk -> desk.look().text(300));
      pictures.all("800-300", new double[] {800, 560}, desk -> desk.look().text(300));
      pictures.all(
          "1280-left",
          small,
          desk -> {
            desk.look().leftHanded().set(true);
            desk.look().lowStringOnTop().set(true);
          });
    } finally {
      // the toolkit's own end may hang where there is no window manager
      Runtime.getRuntime().halt(0);
    }
  }

  private void open(double[] size, Consumer<Desk> with) throws IOException {
    Path work = Files.createTempDirectory("pictures");
    devices = new FakeDevices();
    devices.inputs.add(0, "Six-string interface with a long name, analogue stereo input 1/2");
    window =
        FxWindow.open(
            () -> {
              desk = new Desk(SettingsFile.at(work.resolve("settings.json")));
              with.accept(desk);
              coach =
                  new Coach(
                      desk,
                      new RunSettings(desk.settings()),
                      (setup, listener) -> {
                        live = listener;
                        return () -> {};
                      },
                      new SaidCheck(0.3f, ""),
                      new SilentOutput(),
                      Runnable::run,
                      Runnable::run,
                      Runnable::run);
              RoundTripFile trips = new RoundTripFile(work.resolve("round-trip.json"));
              room = new SoundModel(desk, devices, trips, Runnable::run, Platform::runLater);
              room.takeFolder(Path.of("/music/a folder with a long name/takes of this winter"));
              Map<Place, Function<Desk, Screen>> screens = new EnumMap<>(DeskApp.screens());
              coach.offer(screens);
              screens.put(Place.SOUND_ROOM, d -> new SoundScreen(d, room));
              return new DeskFrame(desk, screens).scene(size[0], size[1]);
            });
  }

  private void now(Runnable task) {
    FxWindow.on(
        () -> {
          task.run();
          return null;
        });
    window.settle();
  }

  private void go(Place place) {
    now(() -> desk.router().go(place));
  }

  private void shot(String name) {
    try {
      Frames.drawn();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    Path file = folder.resolve(name + ".png");
    window.save(file);
    if (name.endsWith("-1280")) {
      Eyes.save(window.picture(), folder, name);
    }
  }

  private void all(String how, double[] size, Consumer<Desk> with) throws IOException {
    open(size, with);
    shot("choose-" + how);
    go(Place.PLAYING);
    shot("play-nothing-" + how);
    go(Place.READING);
    shot("read-nothing-" + how);
    go(Place.SOUND_ROOM);
    shot("room-nothing-" + how);
    longWords();
    go(Place.CHOOSING);
    now(() -> desk.drill().tuning("A2 E2"));
    shot("choose-long-" + how);
    run(how);
    guide(how);
    window.close();
  }

  private void longWords() {
    now(
        () -> {
          desk.drill().key(Key.parse("Eb minor"));
          Chains.lowest(
              desk.drill(), List.of(Shape.PHRYGIAN, Shape.MIXOLYDIAN, Shape.MINOR, Shape.MAJOR));
          desk.drill().tempo(132.5);
          desk.drill().notesPerBeat(3);
        });
  }

  private void run(String how) throws IOException {
    go(Place.PLAYING);
    PlayableDrill drill = desk.drill().drill();
    Performance take =
        new VirtualPlayer(PlayerSettings.plain().withSampleRate(48_000))
            .play(
                drill.route(),
                drill.pulse(),
                List.of(
                    new Mistake.Slip(Mistake.Kind.WRONG, 9, OptionalInt.empty()),
                    new Mistake.Slip(Mistake.Kind.SKIP, 17, OptionalInt.empty()),
                    new Mistake.Slip(Mistake.Kind.REPEAT, 12, OptionalInt.empty()),
                    new Mistake.Slip(Mistake.Kind.EXTRA, 14, OptionalInt.empty()),
                    new Mistake.Late(7, 90)),
                5);
    window.press(KeyCode.SPACE);
    now(() -> live.roundBegins(0));
    now(() -> live.beat(-2));
    shot("play-count-in-" + how);
    now(() -> coach.playing().settings().liveMarks().set(true));
    now(() -> live.beat(0));
    Run half = run(drill, take, live);
    now(() -> half.feed(take.samples(), 0, take.samples().length * 2 / 3));
    now(() -> live.complaint("the output stumbled; close other programs"));
    shot("play-marks-" + how);
    Run whole = run(drill, take, verdict -> {});
    whole.feed(take.samples(), 0, take.samples().length);
    Path file = Files.createTempDirectory("take").resolve("take.wav");
    try (WavWriter writer = new WavWriter(file, take.sampleRate(), WavWriter.Coding.PCM_16)) {
      writer.write(take.samples(), 0, take.samples().length);
      writer.finish();
    }
    now(() -> coach.playing().settings().guessFirst().set(true));
    now(
        () -> {
          live.roundEnded(
              new LiveResult(
                  0,
                  whole.finish(),
                  Optional.of(file),
                  Optional.of(ClickClock.Source.HEARD),
                  0,
                  0,
                  List.of()));
          live.over();
        });
    window.press(KeyCode.DIGIT2);
    shot("play-guess-" + how);
    window.press(KeyCode.ENTER);
    now(() -> coach.reading().point(9));
    shot("read-" + how);
  }

  private static Run run(PlayableDrill drill, Performance take, neckway.run.RunListener to) {
    return new Run(
        drill,
        Optional.empty(),
        take.sampleRate(),
        OptionalDouble.of(take.firstBeat()),
        Clock.MEASURED,
        to);
  }

  private void guide(String how) {
    Performance plucks =
        new VirtualPlayer(
                PlayerSettings.plain()
                    .withSampleRate(48_000)
                    .withGuitar(Guitar.Model.ELECTRIC.plain()))
            .calibration(Tuning.STANDARD, Calibration.USUAL_FRETS, 7);
    go(Place.SOUND_ROOM);
    now(() -> room.trip().measure());
    now(() -> room.guitar().begin());
    int seventh = (int) plucks.notes().get(6).frame() + 30_000;
    devices.sound(plucks.samples(), 0, seventh);
    shot("room-guide-" + how);
    devices.sound(plucks.samples(), seventh, plucks.samples().length);
    devices.sound(new float[72_000], 0, 72_000);
    shot("room-learnt-" + how);
  }
}
