package neckway.desk.app;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Consumer;
import javafx.scene.input.KeyCode;
import neckway.Await;
import neckway.desk.Eyes;
import neckway.desk.FxWindow;
import neckway.desk.Screen.Place;
import neckway.desk.open.InventedLog;

/**
 * Takes pictures of what is open, after no run, five and five hundred, from logs that are made up.
 * Run as {@code OpenPictures FOLDER}; the page on the desk in docs has the whole command.
 */
final class OpenPictures {
  private static final int[] RUNS = {0, 5, 500};

  /** The first of a warm-up's steps that has a drill. */
  private static final int WARM_UP_STEP = 4;

  private static final double WAIT_SECONDS = 20;

  private final Path folder;
  private final Path logs;

  private OpenPictures(Path folder) throws Exception {
    this.folder = folder;
    this.logs = Files.createTempDirectory("neckway");
  }

  public static void main(String[] args) throws Exception {
    new OpenPictures(Path.of(args[0])).takeAll();
    System.exit(0);
  }

  private void takeAll() throws Exception {
    for (int runs : RUNS) {
      Path made = logs.resolve(runs + "/data");
      if (runs > 0) {
        InventedLog.write(made, runs);
      }
      take(runs, "", 1280, 800, all -> {});
      take(runs, "-dark", 1280, 800, all -> all.desk.look().dark().set(true));
      take(runs, "-800", 800, 560, all -> {});
      take(runs, "-200", 1280, 800, all -> all.desk.look().text(200));
      take(runs, "-800-200", 800, 560, all -> all.desk.look().text(200));
    }
    take(
        500,
        "-left",
        1280,
        800,
        all -> {
          all.desk.look().leftHanded().set(true);
          all.desk.look().lowStringOnTop().set(true);
        });
    take(500, "-1920", 1920, 1080, all -> {});
    warmUp(1280, 800, 100);
    warmUp(800, 560, 200);
    choose(0, 1280, 800, 100);
    choose(500, 1280, 800, 100);
    choose(500, 800, 560, 200);
  }

  private void take(int runs, String name, double width, double height, Consumer<WholeWindow> with)
      throws Exception {
    try (WholeWindow all = new WholeWindow(logs.resolve(Integer.toString(runs)), width, height)) {
      all.on(
          () -> {
            plain(all);
            with.accept(all);
            return null;
          });
      all.go(Place.OPEN);
      Path file = folder.resolve("open-" + runs + name + ".png");
      all.window.save(file);
      if (name.isEmpty() && runs == 500) {
        FxWindow.save(
            Eyes.seen(all.window.picture(), Eyes.DEUTERANOPIA),
            folder.resolve("open-500-deuteranopia.png"));
      }
    }
  }

  /** A warm-up's drill as it is counted in. */
  private void warmUp(double width, double height, int percent) throws Exception {
    try (WholeWindow all = new WholeWindow(logs.resolve("500"), width, height)) {
      all.on(
          () -> {
            plain(all);
            all.desk.look().text(percent);
            return null;
          });
      all.go(Place.OPEN);
      all.on(
          () -> {
            all.practice.open().beginWarmUp();
            return null;
          });
      for (int step = 1; step < WARM_UP_STEP; step++) {
        all.press(KeyCode.PAGE_DOWN);
      }
      Await.until("a drill begins", WAIT_SECONDS, () -> !all.begun.isEmpty());
      all.on(
          () -> {
            all.live.beat(-2);
            return null;
          });
      all.window.save(folder.resolve("warm-up-" + (int) width + "-" + percent + ".png"));
    }
  }

  /** What the picture before may have left in the settings. */
  private static void plain(WholeWindow all) {
    all.desk.look().text(100);
    all.desk.look().dark().set(false);
    all.desk.look().leftHanded().set(false);
    all.desk.look().lowStringOnTop().set(false);
  }

  private void choose(int runs, double width, double height, int percent) throws Exception {
    try (WholeWindow all = new WholeWindow(logs.resolve(Integer.toString(runs)), width, height)) {
      all.on(
          () -> {
            plain(all);
            all.desk.look().text(percent);
            return null;
          });
      all.window.save(folder.resolve("next-" + runs + "-" + (int) width + "-" + percent + ".png"));
    }
  }
}
