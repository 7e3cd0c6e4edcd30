package neckway.desk.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import javafx.event.Event;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import javafx.scene.input.ScrollEvent;
import neckway.desk.Screen.Place;
import neckway.desk.page.PageView;
import neckway.player.plan.Mistake;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A run of eight rounds is read from the slip on, page by page. */
class LongReadingTests {
  /** A round of two neighbours has 24 steps and the bottom note once more. */
  private static final int ROUND_STEPS = 24;

  /** In round 3, going up, and in round 8, coming down. */
  private static final int FIRST_SLIP = 2 * ROUND_STEPS + 5;

  private static final int SECOND_SLIP = 7 * ROUND_STEPS + 17;

  @TempDir Path folder;

  private WholeWindow played(List<Mistake> mistakes, int width, int height) throws Exception {
    Path drill =
        Files.writeString(
            folder.resolve("long.json"),
            "{\"format\":\"neckway-drill/1\",\"key\":\"A minor\","
                + "\"rounds\":8,\"route\":{\"shapes\":[\"minor\",\"major\"]}}");
    WholeWindow all = new WholeWindow(folder.resolve("window"), width, height);
    all.on(
        () -> {
          all.desk.open(drill);
          return null;
        });
    all.go(Place.PLAYING);
    all.press(KeyCode.PAGE_DOWN);
    all.round(0, mistakes);
    all.over();
    return all;
  }

  private WholeWindow withSlips() throws Exception {
    return played(List.of(leftOut(FIRST_SLIP), leftOut(SECOND_SLIP)), 1024, 640);
  }

  private static Mistake leftOut(int step) {
    return new Mistake.Slip(Mistake.Kind.SKIP, step, OptionalInt.empty());
  }

  private static PageView page(WholeWindow all) {
    all.window.settle();
    return all.on(
        () -> {
          PageView view = (PageView) all.window.scene().getRoot().lookup(".read-page");
          view.paintIfChanged();
          return view;
        });
  }

  private static String number(WholeWindow all) {
    return ((Label) all.window.scene().getRoot().lookup(".page-number")).getText();
  }

  @Test
  void opensAtThePageOfTheFirstSlipAndCountsPages() throws Exception {
    try (WholeWindow all = withSlips()) {
      PageView view = page(all);
      assertThat(view.sheets().get()).isGreaterThan(2);
      assertThat(view.stepsInSight()).contains(FIRST_SLIP).doesNotContain(0, SECOND_SLIP);
      assertThat(number(all))
          .isEqualTo("page " + view.sheetNumber().get() + " of " + view.sheets().get());
    }
  }

  @Test
  void cleanRunOpensAtWhatTheAdviceIsAboutAndNeverAtItsEnd() throws Exception {
    try (WholeWindow all = played(List.of(), 1024, 640)) {
      assertThat(page(all).sheetNumber().get()).isEqualTo(1);
    }
  }

  @Test
  void wheelTurnsPagesToTheFirstAndTheLast() throws Exception {
    try (WholeWindow all = withSlips()) {
      PageView view = page(all);
      int opened = view.sheetNumber().get();
      wheel(all, view, 1);
      assertThat(page(all).sheetNumber().get()).isEqualTo(opened + 1);
      wheel(all, view, -20);
      assertThat(page(all).sheetNumber().get()).isEqualTo(1);
      wheel(all, view, 20);
      assertThat(page(all).sheetNumber().get()).isEqualTo(view.sheets().get());
    }
  }

  /** Notches of a wheel, towards the end of the page where positive. */
  private static void wheel(WholeWindow all, Node over, int notches) {
    all.on(
        () -> {
          Node under = over.lookup("Canvas");
          for (int i = 0; i < Math.abs(notches); i++) {
            Event.fireEvent(under, notch(notches > 0 ? -40 : 40));
          }
          return null;
        });
  }

  private static ScrollEvent notch(double deltaY) {
    return new ScrollEvent(
        ScrollEvent.SCROLL,
        100,
        100,
        100,
        100,
        false,
        false,
        false,
        false,
        false,
        false,
        0,
        deltaY,
        0,
        deltaY,
        ScrollEvent.HorizontalTextScrollUnits.NONE,
        0,
        ScrollEvent.VerticalTextScrollUnits.LINES,
        3,
        0,
        null);
  }

  @Test
  void sentenceLeadsToItsNotesOneAfterTheOther() throws Exception {
    try (WholeWindow all = withSlips()) {
      Button slips =
          all.on(
              () ->
                  all.window.scene().getRoot().lookupAll(".leading").stream()
                      .map(node -> (Button) node)
                      .filter(button -> button.getText().contains("left out:"))
                      .findFirst()
                      .orElseThrow());
      assertThat(slips.getText()).contains("in round 3").contains("in round 8");
      all.click(slips);
      assertThat(all.coach.reading().page().get().selected()).contains(FIRST_SLIP);
      all.click(slips);
      assertThat(all.coach.reading().page().get().selected()).contains(SECOND_SLIP);
      assertThat(page(all).stepsInSight()).contains(SECOND_SLIP);
    }
  }

  @Test
  void closeUpSaysItsRoundAndThePageTurnsToIt() throws Exception {
    try (WholeWindow all = withSlips()) {
      for (int i = 0; i < 16; i++) {
        all.press(KeyCode.N);
        Label words = (Label) all.window.scene().getRoot().lookup(".shift");
        var near = all.coach.reading().closeUp().get().orElseThrow();
        assertThat(words.getText())
            .contains("in round " + (near.shift().planned().round() + 1) + ", shaded on the page");
        assertThat(page(all).stepsInSight()).contains(near.shift().planned().landingStep());
      }
    }
  }
}
