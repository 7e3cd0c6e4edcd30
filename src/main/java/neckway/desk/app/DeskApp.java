package neckway.desk.app;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import javafx.application.Application;
import javafx.stage.Stage;
import neckway.desk.Desk;
import neckway.desk.DeskFrame;
import neckway.desk.Screen;
import neckway.desk.Screen.Place;
import neckway.desk.Texts;
import neckway.desk.choose.ChoosingScreen;
import neckway.desk.sound.SoundScreen;
import neckway.file.SettingsFile;

/** The window. Opened by {@link DeskStart}, which is no application itself. */
public final class DeskApp extends Application {
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
    desk = new Desk(settings);
    Map<Place, Function<Desk, Screen>> screens = screens();
    coach = Coach.onDevices(desk);
    coach.offer(screens);
    screens.put(Place.SOUND_ROOM, SoundScreen::onDevices);
    frame = new DeskFrame(desk, screens);
    WindowSize size = WindowSize.kept(settings);
    stage.setScene(frame.scene(size.width(), size.height()));
    stage.setTitle(Texts.of("window.title"));
    stage.setOnCloseRequest(
        e -> WindowSize.put(settings, stage.getScene().getWidth(), stage.getScene().getHeight()));
    openGiven();
    frame.prepare();
    size.open(stage);
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
