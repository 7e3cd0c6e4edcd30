package neckway.desk.sound;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import java.util.function.Function;
import javafx.application.Platform;
import neckway.calibration.Calibration;
import neckway.desk.Desk;
import neckway.desk.DeskFrame;
import neckway.desk.FxWindow;
import neckway.desk.Screen;
import neckway.desk.Screen.Place;
import neckway.desk.app.DeskApp;
import neckway.file.RoundTripFile;
import neckway.file.SettingsFile;
import neckway.neck.Tuning;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.Guitar;
import neckway.player.settings.PlayerSettings;

/**
 * Makes pictures of the sound room, on devices that are none and a virtual guitar:
 *
 * <pre>java -Dglass.platform=Monocle … neckway.desk.sound.RoomPictures FOLDER</pre>
 */
public final class RoomPictures {
  private final Path folder;
  private final FakeDevices devices = new FakeDevices();
  private Desk desk;
  private SoundModel room;
  private FxWindow window;

  private RoomPictures(Path folder) {
    this.folder = folder;
  }

  public static void main(String[] args) throws Exception {
    try {
      new RoomPictures(Path.of(args[0])).all();
    } finally {
      // the toolkit's own end may hang where there is no window manager
      Runtime.getRuntime().halt(0);
    }
  }

  private void open() throws IOException {
    Path work = Files.createTempDirectory("pictures");
    window =
        FxWindow.open(
            () -> {
              desk = new Desk(SettingsFile.at(work.resolve("settings.json")));
              RoundTripFile trips = new RoundTripFile(work.resolve("round-trip.json"));
              room = new SoundModel(desk, devices, trips, Runnable::run, Platform::runLater);
              room.takeFolder(Path.of("/music/takes"));
              Map<Place, Function<Desk, Screen>> screens = new EnumMap<>(DeskApp.screens());
              screens.put(Place.SOUND_ROOM, d -> new SoundScreen(d, room));
              return new DeskFrame(desk, screens).scene(1280, 800);
            });
    now(() -> desk.router().go(Place.SOUND_ROOM));
  }

  private void now(Runnable task) {
    FxWindow.on(
        () -> {
          task.run();
          return null;
        });
    window.settle();
  }

  private void shot(String name) {
    window.settle();
    window.save(folder.resolve(name + ".png"));
  }

  private void all() throws IOException {
    Files.createDirectories(folder);
    open();
    shot("sound-room-nothing");
    Performance played =
        new VirtualPlayer(
                PlayerSettings.plain()
                    .withSampleRate(48_000)
                    .withGuitar(Guitar.Model.ELECTRIC.plain()))
            .calibration(Tuning.STANDARD, Calibration.USUAL_FRETS, 7);
    now(() -> room.trip().measure());
    now(() -> room.guitar().begin());
    int seventh = (int) played.notes().get(6).frame();
    devices.sound(played.samples(), 0, seventh + 30_000);
    shot("sound-room");
    now(() -> desk.look().dark().set(true));
    shot("sound-room-dark");
    now(() -> desk.look().text(200));
    shot("sound-room-200");
    now(() -> desk.look().text(100));
    devices.sound(played.samples(), seventh + 30_000, played.samples().length);
    devices.sound(new float[72_000], 0, 72_000);
    shot("sound-room-learnt-dark");
    now(() -> desk.look().dark().set(false));
    shot("sound-room-learnt");
    now(() -> room.guitar().begin());
    for (int place = 0; place < 24; place++) {
      now(() -> room.guitar().skip());
    }
    devices.tone(196, 0.002, 0.2);
    shot("sound-room-refused");
    now(() -> desk.look().text(300));
    shot("sound-room-300-refused");
    now(() -> room.guitar().stop());
    now(() -> window.scene().getRoot().lookup(".combo-box").requestFocus());
    shot("sound-room-300");
  }
}
