package neckway.desk.page;

import java.util.List;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import javafx.animation.AnimationTimer;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.geometry.Point2D;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.input.ScrollEvent;
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

  /** One notch of a mouse's wheel, pixels, as JavaFX has it. */
  private static final double WHEEL_NOTCH = 40;

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
  private List<Integer> lines = List.of();
  private boolean inTurn;
  private int sheet;
  private int lead;
  private int looked;
  private int markedFrom;
  private int markedTo;
  private double rolled;
  private final ReadOnlyIntegerWrapper sheetNumber =
      new ReadOnlyIntegerWrapper(this, "sheetNumber", 1);
  private final ReadOnlyIntegerWrapper sheets = new ReadOnlyIntegerWrapper(this, "sheets", 1);
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
    canvas.setOnScroll(this::rolled);
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

  /** One that is played from: the notes to come are always in sight. */
  public static PageView inTurn(PageModel page) {
    PageView view = new PageView(page);
    view.inTurn = true;
    return view;
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

  /** Turns to the sheet with a step. */
  public void lookAt(int step) {
    looked = Math.max(0, Math.min(page.steps() - 1, step));
    painted = -1;
  }

  /** Turns sheets on or back; beyond the first and the last nothing happens. Whether one turned. */
  public boolean turn(int by) {
    if (layout == null || sheet + by < 0 || sheet + by >= layout.sheets()) {
      return false;
    }
    lookAt(layout.from(layout.onSheet(sheet + by).get(0), page.barSteps()));
    paintIfChanged();
    return true;
  }

  private void rolled(ScrollEvent event) {
    rolled = Math.signum(rolled) == Math.signum(event.getDeltaY()) ? rolled : 0;
    rolled += event.getDeltaY();
    if (!inTurn && Math.abs(rolled) >= WHEEL_NOTCH) {
      int by = rolled < 0 ? 1 : -1;
      rolled = 0;
      if (turn(by)) {
        event.consume();
      }
    }
  }

  /** Shades steps from one up to before another; none where they are the same. */
  public void mark(int from, int to) {
    markedFrom = from;
    markedTo = to;
    painted = -1;
  }

  /** The sheet in sight, from 1. */
  public ReadOnlyIntegerProperty sheetNumber() {
    return sheetNumber.getReadOnlyProperty();
  }

  /** How many sheets there are. */
  public ReadOnlyIntegerProperty sheets() {
    return sheets.getReadOnlyProperty();
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

  /** Paints now what the next frame would paint. */
  public void paintIfChanged() {
    if (painted == page.version() || getWidth() < 1 || getHeight() < 1) {
      return;
    }
    painted = page.version();
    boolean ruled = page.marks() == PageModel.Marks.SHOWN;
    if (layout == null || layout.ruled() != ruled) {
      double font = scale * (lead > 0 && !ruled ? FROM_AFAR * FONT : FONT);
      layout =
          inTurn
              ? PageLayout.inTurn(getWidth(), getHeight(), font, page)
              : PageLayout.of(getWidth(), getHeight(), font, page);
    }
    int shown = inTurn ? page.here().map(Step::index).orElse(0) : looked;
    int line = layout.line(shown, page.barSteps());
    sheet = layout.sheet(line);
    lines = inTurn ? layout.inSight(line) : layout.onSheet(sheet);
    PagePainter painter =
        new PagePainter(canvas.getGraphicsContext2D(), page, layout, inks, words, lead);
    sheets.set(layout.sheets());
    sheetNumber.set(sheet + 1);
    painter.marked(markedFrom, markedTo);
    painter.lines(lines, getWidth(), getHeight());
    if (inTurn && layout.sheets() > 1) {
      painter.playedNow(line);
    }
  }

  /** The {@link PageModel#version()} that was last painted; negative where none was. */
  public long paintedVersion() {
    return painted;
  }

  /** The steps in sight, as painted last. */
  public List<Integer> stepsInSight() {
    return lines.stream()
        .flatMap(
            line ->
                IntStream.range(layout.from(line, page.barSteps()), layout.to(line, page)).boxed())
        .toList();
  }

  /** Where a step in sight stands: the middle of its column, on the highest string. */
  public Point2D placeOf(int step) {
    int bar = page.barSteps();
    return new Point2D(layout.x(step, bar), layout.top(layout.line(step, bar)));
  }

  /** Height of a figure as painted last, pixels. */
  public double figurePixels() {
    return layout.font();
  }

  /** Steps from a line to the one under it, for the arrow keys. */
  public int stepsPerLine() {
    return layout == null ? page.barSteps() : layout.barsPerLine() * page.barSteps();
  }
}
