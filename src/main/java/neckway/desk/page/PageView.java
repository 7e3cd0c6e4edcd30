package neckway.desk.page;

import java.util.function.IntConsumer;
import javafx.animation.AnimationTimer;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.layout.Region;
import neckway.neck.Step;
import neckway.page.PageModel;

/** Shows a page. It is painted again only in a frame in which something on it has changed. */
public final class PageView extends Region {
  /** Height of a figure at 100 per cent, so that it is read from two metres. */
  private static final double FONT = 27;

  /**
   * So much larger where it is played from, with no ruler: some 44 pixels in the usual window,
   * which is as large as leaves two lines of two bars of quavers in sight.
   */
  private static final double FROM_AFAR = 1.63;

  private final Canvas canvas = new Canvas();
  private final PageWords words = new PageWords();
  private final AnimationTimer frames =
      new AnimationTimer() {
        @Override
        public void handle(long now) {
          paintIfChanged();
        }
      };
  private PageModel page;
  private PageLayout layout;
  private Inks inks = Inks.of(false);
  private double scale = 1;
  private long painted = -1;
  private int sheet;
  private int lead;
  private IntConsumer clicked = step -> {};

  public PageView(PageModel page) {
    this.page = page;
    getChildren().add(canvas);
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    setMinSize(200, 160);
    setPrefSize(900, 500);
    canvas.setOnMouseClicked(
        e ->
            clicked.accept(
                layout.stepAt(e.getX(), e.getY(), sheet, this.page.barSteps(), this.page.steps())));
    sceneProperty()
        .addListener(
            (o, old, scene) -> {
              if (scene == null) {
                frames.stop();
              } else {
                frames.start();
              }
            });
  }

  /** Shows another page. */
  public void show(PageModel other) {
    page = other;
    layout = null;
    painted = -1;
    requestLayout();
  }

  /**
   * As it is played from: so many notes that come next are inked strongly, those played fade.
   *
   * @param notes 1 or more; left unsaid, what was played is inked and what was not is pale
   */
  public void lead(int notes) {
    lead = notes;
    painted = -1;
  }

  /** Told the step that is clicked. */
  public void onStep(IntConsumer consumer) {
    clicked = consumer;
  }

  /** Light or dark, and the size of text, 1 for 100 per cent. */
  public void look(boolean dark, double textScale) {
    inks = Inks.of(dark);
    scale = textScale;
    layout = null;
    painted = -1;
    requestLayout();
  }

  @Override
  protected void layoutChildren() {
    canvas.setWidth(getWidth());
    canvas.setHeight(getHeight());
    layout = null;
    painted = -1;
    paintIfChanged();
  }

  private void paintIfChanged() {
    if (painted == page.version() || getWidth() < 1 || getHeight() < 1) {
      return;
    }
    painted = page.version();
    boolean ruled = page.marks() == PageModel.Marks.SHOWN;
    if (layout == null || layout.ruled() != ruled) {
      double wanted = lead > 0 && !ruled ? FROM_AFAR * FONT : FONT;
      layout = PageLayout.of(getWidth(), getHeight(), wanted * scale, page);
    }
    int shown = page.selected().or(() -> page.here().map(Step::index)).orElse(0);
    sheet = layout.sheet(layout.line(shown, page.barSteps()));
    new PagePainter(canvas.getGraphicsContext2D(), page, layout, inks, words, lead)
        .sheet(sheet, getWidth(), getHeight());
  }

  /** The {@link PageModel#version()} that was last painted; negative where none was. */
  public long paintedVersion() {
    return painted;
  }

  /** Steps from a line to the one under it, for the arrow keys. */
  public int stepsPerLine() {
    return layout == null ? page.barSteps() : layout.barsPerLine() * page.barSteps();
  }
}
