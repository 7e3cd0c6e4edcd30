package neckway.desk.play;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import neckway.drill.Pulse;

/** Beats that somebody taps along with a recording: four or more are a tempo and a beat. */
final class Taps {
  /** Fewer than this are no tempo. */
  static final int LEAST = 4;

  private static final double SLOWEST_BEAT_SECONDS = 60 / Pulse.SLOWEST;

  private final List<Double> seconds = new ArrayList<>();

  /**
   * What was tapped.
   *
   * @param tempo beats a minute
   * @param beatSeconds where the last beat was tapped in the recording
   */
  record Tapped(double tempo, double beatSeconds) {}

  /**
   * A tap. After a pause that is longer than the slowest beat they begin anew.
   *
   * @param at seconds of the recording
   */
  void tap(double at) {
    boolean goesOn = !seconds.isEmpty() && at > last() && at - last() <= SLOWEST_BEAT_SECONDS;
    if (!goesOn) {
      seconds.clear();
    }
    seconds.add(at);
  }

  private double last() {
    return seconds.get(seconds.size() - 1);
  }

  /** How many there are since they began. */
  int count() {
    return seconds.size();
  }

  /** Forgets all. */
  void clear() {
    seconds.clear();
  }

  /** The tempo by the line that fits the taps best, and the last tap; of four taps or more. */
  Optional<Tapped> tapped() {
    if (seconds.size() < LEAST) {
      return Optional.empty();
    }
    double middle = (seconds.size() - 1) / 2.0;
    double product = 0;
    double square = 0;
    for (int i = 0; i < seconds.size(); i++) {
      product += (i - middle) * seconds.get(i);
      square += (i - middle) * (i - middle);
    }
    double tempo = 60 * square / product;
    return tempo >= Pulse.SLOWEST && tempo <= Pulse.FASTEST
        ? Optional.of(new Tapped(tempo, last()))
        : Optional.empty();
  }
}
