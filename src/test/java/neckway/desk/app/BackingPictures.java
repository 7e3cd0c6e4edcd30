package neckway.desk.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import neckway.Await;
import neckway.band.Backing;
import neckway.band.ChordRow;
import neckway.band.Feel;
import neckway.desk.Screen.Place;
import neckway.drill.Pulse;
import neckway.file.sound.WavWriter;
import neckway.neck.Key;

/**
 * Makes pictures of the choice of a backing, of a swing with a later start, and of a warm-up:
 *
 * <pre>java -Dglass.platform=Monocle … neckway.desk.app.BackingPictures FOLDER</pre>
 */
public final class BackingPictures {
  private static final int RATE = 44_100;

  private BackingPictures() {}

  public static void main(String[] args) throws Exception {
    Path folder = Files.createDirectories(Path.of(args[0]));
    take(folder, 1280, 800, 100);
    take(folder, 800, 560, 100);
    take(folder, 1280, 800, 200);
    System.exit(0);
  }

  /** The band of this program, as somebody would have recorded it. */
  private static Path recording() throws IOException {
    Key key = Key.parse("A major");
    Pulse pulse = new Pulse(104, 2, 4, 4);
    float[] band = Backing.goingRound(ChordRow.usual(key), Feel.SHUFFLE, pulse, 8).samples();
    Path file = Files.createTempDirectory("recording").resolve("evening in the cellar.wav");
    try (WavWriter writer = new WavWriter(file, RATE, WavWriter.Coding.PCM_16)) {
      writer.write(band, 0, band.length);
      writer.finish();
    }
    return file;
  }

  private static void feel(WholeWindow all, Path folder, String name) throws IOException {
    all.over();
    all.on(
        () -> {
          all.coach.playing().settings().backing().plays().set(false);
          all.desk.drill().swing(0.62);
          all.desk.drill().offsetBeats(1.5);
          return null;
        });
    all.go(Place.CHOOSING);
    all.window.save(folder.resolve("feel-" + name));
    all.go(Place.PLAYING);
    all.window.save(folder.resolve("feel-page-" + name));
  }

  private static void take(Path folder, int width, int height, int percent) throws Exception {
    String name = width + "-" + percent + ".png";
    try (WholeWindow all = new WholeWindow(Files.createTempDirectory("pictures"), width, height)) {
      all.on(
          () -> {
            all.desk.look().text(percent);
            all.coach.playing().settings().backing().plays().set(true);
            return null;
          });
      all.go(Place.OPEN);
      all.window.save(folder.resolve("warmup-before-" + name));
      all.on(
          () -> {
            for (Node node : all.window.scene().getRoot().lookupAll(".button")) {
              if (((Button) node).getText().equals("Warm up first")) {
                ((Button) node).fire();
              }
            }
            return null;
          });
      all.press(KeyCode.PAGE_DOWN);
      all.press(KeyCode.PAGE_DOWN);
      all.press(KeyCode.PAGE_DOWN);
      all.window.save(folder.resolve("warmup-step-" + name));
      all.press(KeyCode.ESCAPE);
      all.window.save(folder.resolve("warmup-stopped-" + name));
      all.go(Place.PLAYING);
      all.window.save(folder.resolve("backing-ready-" + name));
      Path recording = recording();
      all.on(
          () -> {
            all.coach.playing().settings().backing().play(recording);
            return null;
          });
      all.window.save(folder.resolve("recording-read-" + name));
      Await.until(
          "its beat is found",
          20,
          () ->
              all.on(
                  () -> {
                    all.coach.playing().frame();
                    return all.desk.settings().number("backingTempo", 1, 400).isPresent();
                  }));
      all.window.save(folder.resolve("recording-ready-" + name));
      all.on(
          () -> {
            for (Node node : all.window.scene().getRoot().lookupAll(".scroll-pane")) {
              ((ScrollPane) node).setVvalue(1);
            }
            return null;
          });
      all.window.save(folder.resolve("recording-scrolled-" + name));
      all.press(KeyCode.PAGE_DOWN);
      Await.until("the run has begun", 20, () -> !all.begun.isEmpty());
      all.on(
          () -> {
            all.live.beat(3);
            all.coach.playing().frame();
            return null;
          });
      all.window.save(folder.resolve("backing-runs-" + name));
      feel(all, folder, name);
    }
  }
}
