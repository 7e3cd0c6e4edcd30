package neckway.desk.app;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import javafx.scene.input.KeyCode;
import neckway.desk.Screen.Place;
import neckway.page.PageModel;
import neckway.player.plan.Mistake;

/** Takes pictures of long runs in small and large windows: while they are played, and read. */
public final class WalkPictures {
  private WalkPictures() {}

  /**
   * Writes the pictures and ends.
   *
   * @param args the folder
   */
  public static void main(String[] args) throws Exception {
    Path folder = Path.of(args[0]);
    for (int[] size :
        new int[][] {{800, 560, 100}, {800, 560, 200}, {1280, 800, 100}, {1280, 800, 200}}) {
      take(folder, size[0], size[1], size[2]);
    }
    System.exit(0);
  }

  private static void take(Path folder, int width, int height, int percent) throws Exception {
    Path kept = Files.createTempDirectory("pictures");
    Path drill =
        Files.writeString(
            kept.resolve("long.json"),
            "{\"format\":\"neckway-drill/1\",\"key\":\"A minor\","
                + "\"rounds\":8,\"route\":{\"shapes\":[\"minor\",\"major\"]}}");
    String name = width + "-" + percent;
    try (WholeWindow all = new WholeWindow(kept, width, height)) {
      all.on(
          () -> {
            all.desk.look().text(percent);
            all.desk.open(drill);
            all.coach.playing().settings().repeat().set(true);
            return null;
          });
      all.go(Place.PLAYING);
      all.window.save(folder.resolve("walk-ready-" + name + ".png"));
      all.press(KeyCode.PAGE_DOWN);
      for (int step : new int[] {7, 25, 60}) {
        all.on(
            () -> {
              PageModel page = all.coach.playing().page().get();
              for (int s = page.here().map(at -> at.index() + 1).orElse(0); s <= step; s++) {
                page.unnamed(page.attempt(), s);
              }
              all.live.beat(step / 2);
              all.coach.playing().frame();
              return null;
            });
        Thread.sleep(100);
        all.window.save(folder.resolve("walk-play-" + name + "-" + step + ".png"));
      }
      all.round(0, List.of(leftOut(53), leftOut(185)));
      all.round(1, List.of(leftOut(70)));
      all.round(2, List.of());
      all.over();
      all.press(KeyCode.R);
      Thread.sleep(100);
      all.window.save(folder.resolve("walk-read-" + name + ".png"));
    }
  }

  private static Mistake leftOut(int step) {
    return new Mistake.Slip(Mistake.Kind.SKIP, step, OptionalInt.empty());
  }
}
