package neckway.desk.app;

import javafx.animation.PauseTransition;
import javafx.geometry.Rectangle2D;
import javafx.stage.Screen;
import javafx.stage.Stage;
import javafx.util.Duration;
import neckway.desk.LookModel;
import neckway.file.SettingsFile;

/**
 * How large the window opens, pixels inside its frame.
 *
 * @param width 800 or more
 * @param height 560 or more
 */
record WindowSize(int width, int height) {
  private static final int LEAST_WIDTH = 800;
  private static final int LEAST_HEIGHT = 560;
  private static final int MOST_PIXELS = 16_000;
  private static final String WIDTH = "width";
  private static final String HEIGHT = "height";

  /** What a window's title and borders may need, pixels. */
  private static final int FRAME_PIXELS = 48;

  /** A window manager that maximises has done so within this time; common practice, no source. */
  private static final Duration PATIENCE = Duration.millis(400);

  /** As large as it was when it was closed last, or else as usual. */
  static WindowSize kept(SettingsFile settings) {
    return new WindowSize(
        settings.whole(WIDTH, LEAST_WIDTH, MOST_PIXELS).orElse((int) LookModel.USUAL_WIDTH),
        settings.whole(HEIGHT, LEAST_HEIGHT, MOST_PIXELS).orElse((int) LookModel.USUAL_HEIGHT));
  }

  /** Puts a size in the settings, for the next start. */
  static void put(SettingsFile settings, double width, double height) {
    settings.put(WIDTH, (int) width);
    settings.put(HEIGHT, (int) height);
  }

  /** Whether a screen has no room for a window of this size with its frame. */
  boolean fillsScreen(double screenWidth, double screenHeight) {
    return width + FRAME_PIXELS > screenWidth || height + FRAME_PIXELS > screenHeight;
  }

  /** The same, or as much of it as a screen has room for. */
  WindowSize within(double screenWidth, double screenHeight) {
    return new WindowSize(
        (int) Math.max(LEAST_WIDTH, Math.min(width, screenWidth)),
        (int) Math.max(LEAST_HEIGHT, Math.min(height, screenHeight)));
  }

  /**
   * Shows the window in this size, maximised where the screen is no larger. Where nobody maximises
   * it, it is left at its least size or goes beyond the screen; then it is made to fill the screen.
   */
  void open(Stage stage) {
    stage.setMinWidth(LEAST_WIDTH);
    stage.setMinHeight(LEAST_HEIGHT);
    Rectangle2D screen = Screen.getPrimary().getVisualBounds();
    boolean fills = fillsScreen(screen.getWidth(), screen.getHeight());
    stage.setMaximized(fills);
    stage.show();
    if (fills) {
      PauseTransition wait = new PauseTransition(PATIENCE);
      wait.setOnFinished(e -> within(screen.getWidth(), screen.getHeight()).enlarge(stage, screen));
      wait.play();
    }
  }

  private static boolean leftAtLeast(double width, double height) {
    return width <= LEAST_WIDTH + FRAME_PIXELS && height <= LEAST_HEIGHT + FRAME_PIXELS;
  }

  private void enlarge(Stage stage, Rectangle2D screen) {
    if (leftAtLeast(stage.getWidth(), stage.getHeight())
        || stage.getWidth() > screen.getWidth() + FRAME_PIXELS
        || stage.getHeight() > screen.getHeight() + FRAME_PIXELS) {
      stage.setMaximized(false);
      stage.setX(screen.getMinX());
      stage.setY(screen.getMinY());
      stage.setWidth(width);
      stage.setHeight(height);
    }
  }
}
