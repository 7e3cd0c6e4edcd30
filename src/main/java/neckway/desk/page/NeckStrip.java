package neckway.desk.page;

import java.util.IntSummaryStatistics;
import java.util.Optional;
import javafx.animation.AnimationTimer;
import javafx.geometry.VPos;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;
import neckway.desk.Texts;
import neckway.desk.Type;
import neckway.neck.Place;
import neckway.page.HandStand;
import neckway.page.PageModel;

/** A small neck with the hand's stand now, and the next one in outline. */
public final class NeckStrip extends Region {
  private static final int HAND_FRETS = 4;
  private static final double ROUND = 10;
  private static final double FONT = 14;
  private static final double LARGEST_TEXT = 1.6;

  private final Canvas canvas = new Canvas();
  private final AnimationTimer frames =
      new AnimationTimer() {
        @Override
        public void handle(long now) {
          paintIfChanged();
        }
      };
  private PageModel page;
  private Inks inks = Inks.of(false);
  private double scale = 1;
  private boolean leftHanded;
  private boolean lowStringOnTop;
  private long painted = -1;
  private int low;
  private int high;

  public NeckStrip(PageModel page) {
    getChildren().add(canvas);
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    show(page);
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

  /** Shows the hand of another page. */
  public void show(PageModel other) {
    page = other;
    IntSummaryStatistics hands =
        page.drill().chain().stream()
            .flatMap(shape -> shape.hands().stream())
            .mapToInt(Integer::intValue)
            .summaryStatistics();
    low = Math.max(1, hands.getMin());
    high = hands.getMax() + HAND_FRETS;
    painted = -1;
  }

  /** Light or dark, and the size of text, 1 for 100 per cent. */
  public void look(boolean dark, double textScale) {
    inks = Inks.of(dark);
    scale = textScale;
    painted = -1;
  }

  /** Which way round the neck is. */
  public void turn(boolean nutOnTheRight, boolean lowestOnTop) {
    leftHanded = nutOnTheRight;
    lowStringOnTop = lowestOnTop;
    painted = -1;
  }

  @Override
  protected void layoutChildren() {
    canvas.setWidth(getWidth());
    canvas.setHeight(getHeight());
    painted = -1;
    paintIfChanged();
  }

  private void paintIfChanged() {
    if (painted != page.version() && getWidth() > 1) {
      painted = page.version();
      HandStand now = HandStand.now(page);
      Optional<HandStand> next = HandStand.next(page);
      setAccessibleText(
          next.map(n -> Texts.of("play.hands", now.hand(), n.hand()))
              .orElse(Texts.of("play.hand", now.hand())));
      paint(canvas.getGraphicsContext2D(), now, next);
    }
  }

  private void paint(GraphicsContext g, HandStand now, Optional<HandStand> next) {
    double font = FONT * Math.min(scale, LARGEST_TEXT);
    g.clearRect(0, 0, getWidth(), getHeight());
    g.setFont(Type.of(false, font));
    g.setTextBaseline(VPos.CENTER);
    g.setTextAlign(TextAlignment.CENTER);
    g.setLineWidth(1);
    double top = 1.6 * font;
    double bottom = getHeight() - 1.8 * font;
    // each word at the end that is not under the other stand
    boolean above = next.filter(n -> n.hand() < now.hand()).isPresent();
    stand(g, now, top, bottom, false, Texts.of("play.now"), above);
    next.ifPresent(n -> stand(g, n, top, bottom, true, Texts.of("play.next"), !above));
    g.setStroke(inks.line());
    int strings = page.strings();
    for (int s = 0; s < strings; s++) {
      double y = Math.floor(y(s + 1, top, bottom)) + 0.5;
      g.strokeLine(x(low - 1.0), y, x(high), y);
    }
    for (int fret = low - 1; fret <= high; fret++) {
      double x = Math.floor(x(fret)) + 0.5;
      g.strokeLine(x, top, x, bottom);
      if (fret >= low
          && (fret == now.hand() || next.map(HandStand::hand).equals(Optional.of(fret)))) {
        text(g, Integer.toString(fret), x(fret - 0.5), getHeight() - 0.8 * font, inks.ink());
      }
    }
    next.filter(n -> n.stand() != now.stand()).ifPresent(n -> bridge(g, n, top, bottom));
  }

  /**
   * @param highEnd whether its word stands at the end of its higher frets
   */
  private void stand(
      GraphicsContext g,
      HandStand stand,
      double top,
      double bottom,
      boolean outline,
      String word,
      boolean highEnd) {
    double font = FONT * Math.min(scale, LARGEST_TEXT);
    Color hue = inks.shape(stand.stand());
    double nutSide = x(stand.hand() - 1.0);
    double bodySide = x(stand.hand() - 1.0 + HAND_FRETS);
    double x = Math.min(nutSide, bodySide) + 3;
    double wide = Math.abs(bodySide - nutSide) - 6;
    double tall = bottom - top + 12;
    if (!outline) {
      g.setFill(hue.deriveColor(0, 1, 1, 0.22));
      g.fillRoundRect(x, top - 6, wide, tall, ROUND, ROUND);
    }
    // the upper of two neighbours has a dashed frame, as on the whole neck
    g.setStroke(hue);
    g.setLineWidth(2);
    if (stand.stand() % 2 == 1) {
      g.setLineDashes(7, 5);
    }
    g.strokeRoundRect(x, top - 6, wide, tall, ROUND, ROUND);
    g.setLineDashes();
    g.setLineWidth(1);
    double wordX = highEnd == leftHanded ? x + 1.5 * font : x + wide - 1.5 * font;
    text(g, word, wordX, 0.6 * font, hue);
  }

  /** The landing: from the note before to the first note in the new stand. */
  private void bridge(GraphicsContext g, HandStand next, double top, double bottom) {
    int landing = next.firstStep();
    Place from = page.step(landing - 1).place();
    Place to = page.step(landing).place();
    double fromX = x(from.fret() - 0.5);
    double fromY = y(from.string().number(), top, bottom);
    double toX = x(to.fret() - 0.5);
    double toY = y(to.string().number(), top, bottom);
    g.setStroke(inks.ink());
    g.setLineWidth(2);
    g.beginPath();
    g.moveTo(fromX, fromY);
    double rise = 14 * scale;
    g.bezierCurveTo(fromX, fromY - rise, toX, toY - rise, toX, toY);
    g.stroke();
    double r = 7.5 * scale;
    g.setFill(inks.paper());
    g.fillOval(toX - r, toY - r, 2 * r, 2 * r);
    g.strokeOval(toX - r, toY - r, 2 * r, 2 * r);
    g.setLineWidth(1);
    text(g, Integer.toString(page.step(landing).finger()), toX, toY, inks.ink());
  }

  private static void text(GraphicsContext g, String text, double x, double y, Color fill) {
    g.setFill(fill);
    g.fillText(text, x, y);
  }

  /** Frets by their true spacing, each 2^(-1/12) as wide as the one below it. */
  private double x(double fret) {
    double from = Math.pow(2, -(low - 1) / 12.0);
    double to = Math.pow(2, -high / 12.0);
    double share = (from - Math.pow(2, -fret / 12.0)) / (from - to);
    return 4 + (getWidth() - 8) * (leftHanded ? 1 - share : share);
  }

  private double y(int string, double top, double bottom) {
    int row = lowStringOnTop ? page.strings() - string : string - 1;
    return top + row * (bottom - top) / (page.strings() - 1);
  }
}
