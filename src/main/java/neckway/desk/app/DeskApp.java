package neckway.desk.app;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import javafx.animation.AnimationTimer;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.stage.Stage;
import neckway.desk.Desk;
import neckway.desk.DeskFrame;
import neckway.desk.Language;
import neckway.desk.Screen;
import neckway.desk.Screen.Place;
import neckway.desk.Texts;
import neckway.desk.choose.ChoosingScreen;
import neckway.desk.first.FirstModel;
import neckway.desk.first.FirstScreen;
import neckway.desk.open.LogChoice;
import neckway.desk.play.DeviceCheck;
import neckway.desk.play.Engine;
import neckway.desk.read.DeviceClipOutput;
import neckway.desk.sound.SoundScreen;
import neckway.desk.students.StudentsModel;
import neckway.desk.students.StudentsScreen;
import neckway.file.SettingsFile;

/** The window. Opened by {@link DeskStart}, which is no application itself. */
public final class DeskApp extends Application {
  /** Names of what is handed over at the start: the log's folder, whose runs, and no log at all. */
  static final String DATA = "data";

  static final String PLAYER = "player";
  static final String NO_LOG = "no-log";

  private static final int PULSES_UNTIL_PAINTED = 2;

  private Desk desk;
  private DeskFrame frame;
  private Coach coach;

  /** The views that there are. */
  public static Map<Place, Function<Desk, Screen>> screens() {
    Map<Place, Function<Desk, Screen>> screens = new EnumMap<>(Place.class);
    screens.put(Place.CHOOSING, ChoosingScreen::new);
    return screens;
  }

  @Override
  public void start(Stage stage) {
    SettingsFile settings = SettingsFile.usual();
    Faults faults = Faults.beside(settings.path());
    Thread.setDefaultUncaughtExceptionHandler(faults);
    Thread.currentThread().setUncaughtExceptionHandler(faults);
    Texts.speak(Language.of(settings, Locale.getDefault(Locale.Category.DISPLAY)));
    desk = new Desk(settings);
    Map<Place, Function<Desk, Screen>> screens = screens();
    coach = Coach.onDevices(desk, log());
    coach.offer(screens);
    Practice practice =
        new Practice(
            desk,
            coach.settings(),
            Engine.devices(),
            coach.reading(),
            LocalDate::now,
            Coach.thread("practice"),
            Platform::runLater);
    practice.offer(screens);
    screens.put(Place.SOUND_ROOM, SoundScreen::onDevices);
    StudentsModel students = students();
    screens.put(Place.STUDENTS, d -> new StudentsScreen(students, d));
    desk.onFolder(
        folder -> {
          desk.router().go(Place.STUDENTS);
          students.open(folder);
        });
    frame = new DeskFrame(desk, screens, Optional.of(practice.strip()));
    if (settings.isFirst() && getParameters().getUnnamed().isEmpty()) {
      frame.before(new FirstScreen(new FirstModel(desk, frame::begin), new DeviceCheck()));
    }
    WindowSize size = WindowSize.kept(settings);
    stage.setScene(frame.scene(size.width(), size.height()));
    stage.setTitle(Texts.of("window.title"));
    stage.setOnCloseRequest(
        e -> WindowSize.put(settings, stage.getScene().getWidth(), stage.getScene().getHeight()));
    openGiven();
    faults.earlier().ifPresent(report -> desk.say(Texts.of("problem.fault", report)));
    frame.prepare();
    // the log is read once the window is painted, so that it opens as fast as without
    stage.setOnShown(e -> oncePainted(practice::begin));
    size.open(stage);
  }

  private StudentsModel students() {
    return new StudentsModel(
        desk.drill()::drill,
        new DeviceClipOutput(coach.settings()::output),
        desk.volume()::gain,
        Coach.thread("students"),
        Platform::runLater,
        desk::say);
  }

  /** The picture of one pulse is painted before the second one after it. */
  private static void oncePainted(Runnable then) {
    new AnimationTimer() {
      private int pulses;

      @Override
      public void handle(long now) {
        pulses++;
        if (pulses > PULSES_UNTIL_PAINTED) {
          stop();
          then.run();
        }
      }
    }.start();
  }

  private LogChoice log() {
    Map<String, String> named = getParameters().getNamed();
    return new LogChoice(
        Optional.ofNullable(named.get(DATA)).map(Path::of),
        Optional.ofNullable(named.get(PLAYER)),
        !named.containsKey(NO_LOG));
  }

  private void openGiven() {
    List<String> given = getParameters().getUnnamed();
    if (!given.isEmpty() && !desk.drill().open(Path.of(given.get(0)))) {
      desk.say(desk.drill().problem().get());
    }
  }

  @Override
  public void stop() {
    frame.close();
    coach.close();
    desk.keep();
  }
}
