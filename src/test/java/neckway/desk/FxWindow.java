package neckway.desk;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.robot.Robot;
import javafx.stage.Stage;
import javax.imageio.ImageIO;

/** A window without a screen for tests: opened, typed into by a robot, and looked at. */
public final class FxWindow implements AutoCloseable {
  private static final long PATIENCE_SECONDS = 20;
  private static final AtomicBoolean STARTED = new AtomicBoolean();

  private static final boolean LIBRARIES_THERE = librariesThere();

  private final Stage stage;
  private final Scene scene;

  private FxWindow(Stage stage, Scene scene) {
    this.stage = stage;
    this.scene = scene;
  }

  /** Text in JavaFX on Linux needs Pango, which comes with GTK. Elsewhere nothing is missing. */
  private static boolean librariesThere() {
    if (!System.getProperty("os.name").equals("Linux")) {
      return true;
    }
    try {
      Process process = new ProcessBuilder("/sbin/ldconfig", "-p").start();
      String known = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      return process.waitFor() != 0 || known.contains("libpangoft2-1.0.so");
    } catch (IOException e) {
      return true;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return true;
    }
  }

  /** Opens a window; the scene is made in the window's thread. */
  public static FxWindow open(Callable<Scene> making) {
    start();
    FxWindow window =
        on(
            () -> {
              Scene scene = making.call();
              Stage stage = new Stage();
              stage.setScene(scene);
              stage.show();
              stage.requestFocus();
              return new FxWindow(stage, scene);
            });
    window.settle();
    return window;
  }

  private static void start() {
    assumeTrue(LIBRARIES_THERE, "the window's libraries (libgtk-3-0) are not installed here");
    if (STARTED.compareAndSet(false, true)) {
      Platform.startup(() -> Platform.setImplicitExit(false));
    }
  }

  /** Runs something in the window's thread and waits for it. */
  public static <T> T on(Callable<T> work) {
    start();
    CompletableFuture<T> done = new CompletableFuture<>();
    Platform.runLater(
        () -> {
          try {
            done.complete(work.call());
          } catch (Exception | AssertionError e) {
            done.completeExceptionally(e);
          }
        });
    try {
      return done.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (Exception e) {
      throw new AssertionError("in the window's thread", e);
    }
  }

  /**
   * All nodes in sight that have one of these style classes; {@code lookupAll} takes no list of
   * them.
   *
   * @throws AssertionError where there is none
   */
  public static Set<Node> all(Node root, String... styles) {
    Set<Node> found = new LinkedHashSet<>();
    for (String style : styles) {
      found.addAll(root.lookupAll(style));
    }
    found.removeIf(node -> !isSeen(node));
    if (found.isEmpty()) {
      throw new AssertionError("nothing has a style of " + List.of(styles));
    }
    return found;
  }

  private static boolean isSeen(Node node) {
    for (Node at = node; at != null; at = at.getParent()) {
      if (!at.isVisible()) {
        return false;
      }
    }
    return true;
  }

  /** Lets what was asked for happen: some turns of the window's thread, and a layout. */
  public void settle() {
    for (int turn = 0; turn < 3; turn++) {
      on(() -> null);
      on(
          () -> {
            if (!stage.isFocused()) {
              // a window that was closed before may have taken it with it
              stage.requestFocus();
            }
            scene.getRoot().applyCss();
            scene.getRoot().layout();
            return null;
          });
    }
  }

  /** Presses keys one after the other; the first ones are held while the last is struck. */
  public void press(KeyCode... chord) {
    on(
        () -> {
          Robot robot = new Robot();
          for (KeyCode key : chord) {
            robot.keyPress(key);
          }
          for (int i = chord.length - 1; i >= 0; i--) {
            robot.keyRelease(chord[i]);
          }
          return null;
        });
    settle();
  }

  /** A click of the first button. */
  public static MouseEvent click(double x, double y) {
    return new MouseEvent(
        MouseEvent.MOUSE_CLICKED,
        x,
        y,
        x,
        y,
        MouseButton.PRIMARY,
        1,
        false,
        false,
        false,
        false,
        true,
        false,
        false,
        true,
        false,
        true,
        null);
  }

  public Scene scene() {
    return scene;
  }

  /** What the window shows. */
  public BufferedImage picture() {
    settle();
    return on(
        () -> {
          WritableImage shot = scene.snapshot(null);
          int width = (int) shot.getWidth();
          int height = (int) shot.getHeight();
          BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
          for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
              image.setRGB(x, y, shot.getPixelReader().getArgb(x, y));
            }
          }
          return image;
        });
  }

  /** Writes what the window shows. */
  public void save(Path file) {
    save(picture(), file);
  }

  /** Writes a picture. */
  public static void save(BufferedImage picture, Path file) {
    try {
      File target = file.toFile();
      target.getParentFile().mkdirs();
      ImageIO.write(picture, "png", target);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() {
    on(
        () -> {
          stage.close();
          return null;
        });
  }
}
