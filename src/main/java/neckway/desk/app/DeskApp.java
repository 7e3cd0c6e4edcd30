package neckway.desk.app;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import javafx.application.Application;
import javafx.geometry.Rectangle2D;
import javafx.scene.Scene;
import javafx.stage.Stage;
import neckway.desk.Desk;
import neckway.desk.DeskFrame;
import neckway.desk.LookModel;
import neckway.desk.Screen;
import neckway.desk.Screen.Place;
import neckway.desk.Texts;
import neckway.desk.choose.ChoosingScreen;
import neckway.desk.sound.SoundScreen;
import neckway.file.SettingsFile;

/** The window. Opened by {@link DeskStart}, which is no application itself. */
public final class DeskApp extends Application {
  private static final double LEAST_WIDTH = 800;
  private static final double LEAST_HEIGHT = 560;

  /** What a window's title and borders may need. */
  private static final double FRAME_PIXELS = 48;

  private static final int MOST_PIXELS = 16_000;

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
    stage.setScene(
        frame.scene(
            settings
                .whole("width", (int) LEAST_WIDTH, MOST_PIXELS)
                .orElse((int) LookModel.USUAL_WIDTH),
            settings
                .whole("height", (int) LEAST_HEIGHT, MOST_PIXELS)
                .orElse((int) LookModel.USUAL_HEIGHT)));
    stage.setTitle(Texts.of("window.title"));
    stage.setMinWidth(LEAST_WIDTH);
    stage.setMinHeight(LEAST_HEIGHT);
    stage.setOnCloseRequest(
        e -> {
          settings.put("width", (int) stage.getScene().getWidth());
          settings.put("height", (int) stage.getScene().getHeight());
        });
    openGiven();
    Rectangle2D screen = javafx.stage.Screen.getPrimary().getVisualBounds();
    Scene scene = stage.getScene();
    stage.setMaximized(
        scene.getWidth() + FRAME_PIXELS > screen.getWidth()
            || scene.getHeight() + FRAME_PIXELS > screen.getHeight());
    stage.show();
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
