package neckway.desk.play;

import java.util.Optional;
import java.util.OptionalLong;
import javafx.animation.AnimationTimer;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.shape.Circle;
import neckway.drill.Pulse;

/**
 * A lamp that lights at each beat and goes out until the next; larger on the first of a bar. WCAG
 * 2.1, success criterion 2.3.1, allows three flashes a second, and does not call a flash what
 * changes by less than a tenth of the greatest relative luminance. So at fast tempos it pulses
 * between two shades that are that near each other.
 */
final class BeatLight extends Region {
  /** The most flashes a second (WCAG 2.1, 2.3.1). */
  static final double MOST_FLASHES = 3;

  private static final double SECONDS_A_MINUTE = 60;
  private static final double NANOS = 1e9;

  /** The lamp is out again after this share of a beat. */
  private static final double FADE_SHARE = 0.7;

  /** Radius as a share of the room; on the first beat of a bar all of it. */
  private static final double USUAL_RADIUS = 0.68;

  /** It is painted anew only when its light has changed by this share. */
  private static final int STEPS = 12;

  private static final Shades LIGHT =
      new Shades(Color.web("#1d1d1b"), Color.web("#fbfaf6"), Color.web("#555550"));
  private static final Shades DARK =
      new Shades(Color.web("#ecebe6"), Color.web("#1b1c1e"), Color.web("#5a5a57"));

  /**
   * @param ink as it is lit at slow tempos, and the darker of the soft shades on paper
   * @param out as it is out at slow tempos, and the darker of the soft shades in a dark room
   * @param soft the lighter of the soft shades
   */
  private record Shades(Color ink, Color out, Color soft) {}

  /** All that its picture depends on. */
  private record Seen(
      double lit, OptionalLong beat, Pulse pulse, boolean dark, double width, double height) {}

  private final Circle lamp = new Circle();
  private final AnimationTimer frames =
      new AnimationTimer() {
        @Override
        public void handle(long now) {
          shine(now);
        }
      };
  private Pulse pulse;
  private boolean dark;
  private OptionalLong beat = OptionalLong.empty();
  private OptionalLong litNanos = OptionalLong.empty();
  private Optional<Seen> painted = Optional.empty();

  BeatLight(Pulse pulse) {
    this.pulse = pulse;
    getStyleClass().add("beat-light");
    getChildren().add(lamp);
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

  void look(boolean inTheDark) {
    dark = inTheDark;
  }

  /** Out, and from now on at another pulse. */
  void rest(Pulse other) {
    pulse = other;
    beat = OptionalLong.empty();
    litNanos = OptionalLong.empty();
  }

  /** A beat sounds, counted from the first of the route; below 0 in the count-in. */
  void beat(long now) {
    beat = OptionalLong.of(now);
    litNanos = OptionalLong.empty();
  }

  private void shine(long now) {
    if (beat.isPresent() && litNanos.isEmpty()) {
      litNanos = OptionalLong.of(now);
    }
    double lit = litNanos.isEmpty() ? 0 : lit(pulse, (now - litNanos.getAsLong()) / NANOS);
    Seen seen =
        new Seen(Math.rint(lit * STEPS) / STEPS, beat, pulse, dark, getWidth(), getHeight());
    if (!painted.equals(Optional.of(seen))) {
      painted = Optional.of(seen);
      paint(seen.lit());
    }
  }

  private void paint(double share) {
    lamp.setFill(shade(pulse.tempo(), share, dark));
    lamp.setStroke(dark ? DARK.ink() : LIGHT.ink());
    boolean first =
        beat.isPresent() && Math.floorMod(beat.getAsLong(), (long) pulse.beatsPerBar()) == 0;
    double most = Math.min(getWidth(), getHeight()) / 2 - 2;
    lamp.setRadius(Math.max(1, first ? most : USUAL_RADIUS * most));
    lamp.setStrokeWidth(2);
    lamp.setCenterX(getWidth() / 2);
    lamp.setCenterY(getHeight() / 2);
  }

  /** How much of its light it has some seconds after a beat, 1 to 0. */
  static double lit(Pulse pulse, double seconds) {
    double share = seconds / (FADE_SHARE * pulse.beatSeconds());
    return Math.max(0, 1 - share);
  }

  /**
   * Its colour.
   *
   * @param tempo beats a minute
   * @param lit how much of its light it has, 0 to 1
   */
  static Color shade(double tempo, double lit, boolean dark) {
    Shades shades = dark ? DARK : LIGHT;
    if (tempo <= MOST_FLASHES * SECONDS_A_MINUTE) {
      return shades.out().interpolate(shades.ink(), lit);
    }
    return dark
        ? shades.out().interpolate(shades.soft(), lit)
        : shades.soft().interpolate(shades.ink(), lit);
  }
}
