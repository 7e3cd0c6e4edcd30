package neckway.desk.read;

import java.util.Optional;
import java.util.OptionalDouble;
import javafx.geometry.VPos;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.text.FontWeight;
import javafx.scene.text.TextAlignment;
import neckway.desk.Texts;
import neckway.desk.Type;
import neckway.desk.page.Inks;

/**
 * Draws a shift in close-up: its sound, its notes, the stumble, the planned and the heard place.
 */
final class CloseUpView extends Region {
  private static final double NECK_SHARE = 0.26;
  private static final int FRETS_SHOWN = 5;

  private final Canvas canvas = new Canvas();
  private Optional<CloseUp> near = Optional.empty();
  private Optional<Waveform> outline = Optional.empty();
  private int strings = 6;
  private Inks inks = Inks.of(false);
  private double font = 13;
  private OptionalDouble playhead = OptionalDouble.empty();
  private boolean leftHanded;
  private boolean lowStringOnTop;

  CloseUpView() {
    getChildren().add(canvas);
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    setMinHeight(100);
    setPrefHeight(125);
  }

  void look(boolean dark, double scale) {
    inks = Inks.of(dark);
    font = 13 * scale;
    setPrefHeight(65 + 60 * scale);
    paint();
  }

  /** Which way round the neck is. */
  void turn(boolean nutOnTheRight, boolean lowestOnTop) {
    leftHanded = nutOnTheRight;
    lowStringOnTop = lowestOnTop;
    paint();
  }

  void show(Optional<CloseUp> closeUp, Optional<Waveform> waveform, int stringCount) {
    near = closeUp;
    outline = waveform;
    strings = stringCount;
    setAccessibleText(near.map(ReadingWords::shift).orElse(""));
    paint();
  }

  /** Draws where the take sounds, seconds of the take; empty where it does not. */
  void playhead(OptionalDouble seconds) {
    if (!seconds.equals(playhead)) {
      playhead = seconds;
      paint();
    }
  }

  @Override
  protected void layoutChildren() {
    canvas.setWidth(getWidth());
    canvas.setHeight(getHeight());
    paint();
  }

  private void paint() {
    GraphicsContext g = canvas.getGraphicsContext2D();
    g.clearRect(0, 0, getWidth(), getHeight());
    if (near.isEmpty() || getWidth() < 50) {
      return;
    }
    g.setTextBaseline(VPos.CENTER);
    double wide = getWidth() * (1 - NECK_SHARE);
    sound(g, near.get(), wide - 2 * font);
    neck(g, near.get(), wide, getWidth() - wide);
  }

  private void sound(GraphicsContext g, CloseUp shift, double wide) {
    double top = 1.6 * font;
    double bottom = getHeight() - 1.8 * font;
    double middle = (top + bottom) / 2;
    stumble(g, shift, wide, top, bottom);
    g.setStroke(inks.line());
    g.setLineWidth(1);
    g.strokeLine(0, middle, wide, middle);
    outline.ifPresent(o -> wave(g, o, wide, middle, (bottom - top) / 2));
    playhead.stream()
        .filter(at -> at >= shift.fromSeconds() && at <= shift.toSeconds())
        .forEach(at -> playhead(g, x(shift, at, wide), top, bottom));
    for (CloseUp.Heard note : shift.notes()) {
      double x = x(shift, note.seconds(), wide);
      g.setStroke(inks.ink());
      g.setLineWidth(note.wrong() ? 1.5 : 2);
      g.setLineDashes(note.wrong() ? 4 : 0, note.wrong() ? 4 : 0);
      g.strokeLine(x, top, x, bottom);
      g.setLineDashes();
      text(g, note.label(), x, bottom + 0.9 * font, FontWeight.NORMAL, inks.ink());
    }
    shift
        .expected()
        .ifPresent(
            due -> {
              double x = x(shift, due, wide);
              g.setStroke(inks.upperShape());
              g.setLineWidth(2);
              g.setLineDashes(2, 4);
              g.strokeLine(x, top - 4, x, bottom);
              g.setLineDashes();
              boolean before = shift.shift().lateMs().orElse(0) > 0;
              label(g, Texts.of("read.expected"), x, 0.7 * font, before);
            });
    shift
        .landed()
        .ifPresent(
            at ->
                label(
                    g,
                    Texts.of("read.landed"),
                    x(shift, at, wide),
                    0.7 * font,
                    shift.shift().lateMs().orElse(0) <= 0));
  }

  /** A line with a head at both ends, unlike the lines of notes. */
  private void playhead(GraphicsContext g, double x, double top, double bottom) {
    double half = 0.35 * font;
    g.setFill(inks.ink());
    g.fillRect(x - 1.5, top, 3, bottom - top);
    g.fillPolygon(
        new double[] {x - half, x + half, x}, new double[] {top, top, top + 1.4 * half}, 3);
    g.fillPolygon(
        new double[] {x - half, x + half, x},
        new double[] {bottom, bottom, bottom - 1.4 * half},
        3);
  }

  /** A word beside its line, so that two lines close together do not run into each other. */
  private void label(GraphicsContext g, String word, double x, double y, boolean left) {
    g.setFont(Type.of(false, font));
    g.setFill(inks.ink());
    g.setTextAlign(left ? TextAlignment.RIGHT : TextAlignment.LEFT);
    g.fillText(word, left ? x - 4 : x + 4, y);
  }

  private void stumble(GraphicsContext g, CloseUp shift, double wide, double top, double bottom) {
    if (shift.expected().isEmpty() || shift.landed().isEmpty()) {
      return;
    }
    double a = x(shift, shift.expected().getAsDouble(), wide);
    double b = x(shift, shift.landed().getAsDouble(), wide);
    g.setFill(inks.upperShape().deriveColor(0, 1, 1, 0.25));
    g.fillRect(Math.min(a, b), top, Math.abs(b - a), bottom - top);
  }

  private void wave(GraphicsContext g, Waveform wave, double wide, double middle, double half) {
    float loudest = 1e-6f;
    for (int c = 0; c < wave.low().length; c++) {
      loudest = Math.max(loudest, Math.max(-wave.low()[c], wave.high()[c]));
    }
    g.setStroke(inks.lowerShape().deriveColor(0, 1, 1, 0.75));
    g.setLineWidth(1);
    for (int x = 0; x < wide; x++) {
      int c = (int) (x * wave.low().length / wide);
      double high = middle - half * wave.high()[c] / loudest;
      double low = middle - half * wave.low()[c] / loudest;
      g.strokeLine(x + 0.5, high, x + 0.5, Math.max(low, high + 1));
    }
  }

  private static double x(CloseUp shift, double seconds, double wide) {
    double share = (seconds - shift.fromSeconds()) / (shift.toSeconds() - shift.fromSeconds());
    return Math.max(1, Math.min(wide - 1, share * wide));
  }

  // ---- the planned and the heard place

  private void neck(GraphicsContext g, CloseUp shift, double left, double wide) {
    int low = lowest(shift);
    int high = Math.max(low + FRETS_SHOWN, highest(shift) + 1);
    SmallNeck at =
        new SmallNeck(
            left,
            wide,
            1.2 * font,
            getHeight() - 1.8 * font,
            strings,
            low,
            high,
            leftHanded,
            lowStringOnTop);
    g.setStroke(inks.line());
    g.setLineWidth(1);
    for (int s = 1; s <= strings; s++) {
      g.strokeLine(left, at.y(s), left + wide, at.y(s));
    }
    for (int f = 0; f <= high - low + 1; f++) {
      double x = left + f * at.fret();
      g.strokeLine(x, at.top(), x, at.bottom());
    }
    for (int f = low; f <= high; f++) {
      text(
          g,
          Integer.toString(f),
          at.x(f),
          at.bottom() + 0.9 * font,
          FontWeight.NORMAL,
          inks.pale());
    }
    if (shift.otherwise()) {
      g.setLineDashes(4, 4);
    }
    way(g, at, new CloseUp.Way(shift.before(), shift.planned()), inks.paper());
    g.setLineDashes();
    shift.made().ifPresent(way -> way(g, at, way, inks.upperShape()));
  }

  private void way(GraphicsContext g, SmallNeck at, CloseUp.Way way, Color landing) {
    double r = Math.min(0.8 * font, 0.4 * (at.bottom() - at.top()) / (strings - 1));
    double fromX = at.x(way.from());
    double fromY = at.y(way.from());
    double toX = at.x(way.to());
    double toY = at.y(way.to());
    g.setStroke(inks.ink());
    g.setLineWidth(2);
    g.beginPath();
    g.moveTo(fromX, fromY);
    g.bezierCurveTo(fromX, fromY - 1.6 * r, toX, toY - 1.6 * r, toX, toY);
    g.stroke();
    dot(g, fromX, fromY, 0.65 * r, inks.paper());
    dot(g, toX, toY, r, landing);
  }

  private static int lowest(CloseUp shift) {
    int low = Math.min(shift.planned().fret(), shift.before().fret());
    int made = shift.made().map(w -> Math.min(w.from().fret(), w.to().fret())).orElse(low);
    return Math.max(0, Math.min(low, made) - 1);
  }

  private static int highest(CloseUp shift) {
    int high = Math.max(shift.planned().fret(), shift.before().fret());
    return Math.max(
        high, shift.made().map(w -> Math.max(w.from().fret(), w.to().fret())).orElse(high));
  }

  private void dot(GraphicsContext g, double x, double y, double r, Color fill) {
    g.setFill(fill);
    g.fillOval(x - r, y - r, 2 * r, 2 * r);
    g.setStroke(inks.ink());
    g.setLineWidth(2);
    g.strokeOval(x - r, y - r, 2 * r, 2 * r);
  }

  private void text(
      GraphicsContext g, String text, double x, double y, FontWeight weight, Color fill) {
    g.setFont(Type.of(weight == FontWeight.BOLD, font));
    g.setFill(fill);
    g.setTextAlign(TextAlignment.CENTER);
    g.fillText(text, x, y);
  }
}
