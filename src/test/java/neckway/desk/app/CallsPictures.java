package neckway.desk.app;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.scene.input.KeyCode;
import neckway.Await;
import neckway.desk.Screen.Place;
import neckway.drill.Cue;
import neckway.drill.PlayableDrill;
import neckway.live.LiveResult;
import neckway.neck.Route;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.PlayerSettings;
import neckway.review.Review;
import neckway.run.Reviewed;
import neckway.sound.ClickClock;

/**
 * Makes pictures of a run in which the switches are called:
 *
 * <pre>java -Dglass.platform=Monocle … neckway.desk.app.CallsPictures FOLDER</pre>
 */
public final class CallsPictures {
  private static final double WAIT_SECONDS = 20;

  /** So many notes are played before the player stops. */
  private static final int PLAYED = 140;

  private CallsPictures() {}

  public static void main(String[] args) throws Exception {
    Path folder = Files.createDirectories(Path.of(args[0]));
    take(folder, 1280, 800, 100);
    take(folder, 800, 560, 100);
    take(folder, 1280, 800, 200);
    take(folder, 3840, 2160, 100);
    System.exit(0);
  }

  private static void take(Path folder, int width, int height, int percent) throws Exception {
    String name = width + "-" + percent + ".png";
    try (WholeWindow all = new WholeWindow(Files.createTempDirectory("pictures"), width, height)) {
      all.on(
          () -> {
            all.desk.look().text(percent);
            all.coach.playing().settings().calls().calls().set(true);
            return null;
          });
      all.go(Place.PLAYING);
      all.window.save(folder.resolve("calls-ready-" + name));
      all.press(KeyCode.PAGE_DOWN);
      Await.until("the run has begun", WAIT_SECONDS, () -> !all.begun.isEmpty());
      Cue second = all.begun.get(0).drill().cues().get(1);
      all.on(
          () -> {
            all.live.beat(second.beat());
            all.coach.playing().frame();
            return null;
          });
      all.window.save(folder.resolve("calls-run-" + name));
      PlayableDrill called = all.begun.get(0).drill();
      Route whole = called.route();
      Route played = new Route(called.shapes(), whole.steps().subList(0, PLAYED), List.of(), 1);
      Performance take =
          new VirtualPlayer(PlayerSettings.plain()).play(played, called.pulse(), List.of(), 3);
      Review review = Reviewed.of(called, take);
      all.on(
          () -> {
            all.live.roundEnded(
                new LiveResult(
                    0,
                    review,
                    Optional.empty(),
                    Optional.of(ClickClock.Source.HEARD),
                    0,
                    0,
                    List.of()));
            all.live.over();
            all.coach.playing().frame();
            return null;
          });
      all.window.save(folder.resolve("calls-read-" + name));
    }
  }
}
