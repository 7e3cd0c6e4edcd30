package neckway.desk.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import neckway.desk.Screen.Place;
import neckway.desk.page.PageView;
import neckway.page.PageModel;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** While a run goes on the notes to come can be read, and nothing that is read moves. */
class NotesToComeTests {
  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "800, 560, 100",
    "800, 560, 150",
    "800, 560, 200",
    "1024, 640, 100",
    "1024, 640, 200",
    "1280, 800, 100",
    "1280, 800, 200",
    "1280, 800, 300",
    "1920, 1080, 100",
    "1920, 1080, 200"
  })
  void aBarAtLeastIsInSightAndLinesStayWhereTheyAre(int width, int height, int percent)
      throws Exception {
    Path drill =
        Files.writeString(
            folder.resolve("long.json"),
            "{\"format\":\"neckway-drill/1\",\"key\":\"A minor\","
                + "\"rounds\":8,\"route\":{\"shapes\":[\"minor\",\"major\"]}}");
    try (WholeWindow all = new WholeWindow(folder.resolve("window"), width, height)) {
      all.on(
          () -> {
            all.desk.look().text(percent);
            all.desk.open(drill);
            return null;
          });
      all.go(Place.PLAYING);
      all.press(KeyCode.PAGE_DOWN);
      PageModel page = all.coach.playing().page().get();
      assertThat(page.steps()).isEqualTo(8 * 24 + 1);
      PageView view = (PageView) all.on(() -> all.window.scene().getRoot().lookup(".run-page"));
      assertInWindow(all, view);
      assertInWindow(all, all.window.scene().getRoot().lookup(".begin"));
      assertThat(view.stepsInSight()).startsWith(0, 1, 2, 3, 4, 5, 6, 7);
      Map<Integer, Double> tops = new LinkedHashMap<>();
      for (int step = 0; step < page.steps(); step++) {
        int now = step;
        List<Integer> seen = all.on(() -> reach(page, view, now));
        int most = Math.min(page.steps(), step + 1 + page.barSteps());
        for (int next = step; next < most; next++) {
          assertThat(seen).as("after step " + step).contains(next);
        }
        assertLinesStay(view, page, seen, tops);
      }
      // figures of 12 pixels at least, so that they can be read at all
      assertThat(view.figurePixels()).isGreaterThanOrEqualTo(12);
    }
  }

  private static List<Integer> reach(PageModel page, PageView view, int step) {
    page.unnamed(page.attempt(), step);
    view.paintIfChanged();
    return view.stepsInSight();
  }

  /** What stays in sight from one note to the next is where it was. */
  private static void assertLinesStay(
      PageView view, PageModel page, List<Integer> seen, Map<Integer, Double> before) {
    Map<Integer, Double> now = new LinkedHashMap<>();
    for (int step : seen) {
      now.put(step, view.placeOf(step).getX() + 10_000 * view.placeOf(step).getY());
    }
    now.forEach(
        (step, at) -> {
          if (before.containsKey(step)) {
            assertThat(at).isEqualTo(before.get(step));
          }
        });
    before.clear();
    before.putAll(now);
    assertThat(page.here()).isPresent();
  }

  private static void assertInWindow(WholeWindow all, Node node) {
    Bounds at = all.on(() -> node.localToScene(node.getLayoutBounds()));
    double right = all.window.scene().getWidth();
    double bottom = all.window.scene().getHeight();
    assertThat(at.getMinX()).isNotNegative();
    assertThat(at.getMinY()).isNotNegative();
    assertThat(at.getMaxX()).isLessThanOrEqualTo(right + 1);
    assertThat(at.getMaxY()).isLessThanOrEqualTo(bottom + 1);
  }
}
