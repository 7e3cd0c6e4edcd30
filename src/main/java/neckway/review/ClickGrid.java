package neckway.review;

import java.util.List;
import java.util.Optional;
import neckway.drill.Pulse;
import neckway.hear.RobustStatistics;

/** The grid as the clicks in a recording give it, at the drill's tempo. */
final class ClickGrid {
  private static final int FEWEST = 4;
  private static final double NEAR_SECONDS = 0.03;
  private static final double FITTING_SHARE = 0.6;

  private ClickGrid() {}

  /**
   * @param clicks onsets, seconds, rising
   * @param firstNote when step 0 was played or would have been, seconds
   * @return empty where the clicks are too few or keep another time
   */
  static Optional<Grid> of(List<Double> clicks, double firstNote, Pulse pulse) {
    if (clicks.size() < FEWEST) {
      return Optional.empty();
    }
    double beat = pulse.beatSeconds();
    double phase = phase(clicks, beat);
    double[] near =
        clicks.stream()
            .mapToDouble(c -> Math.IEEEremainder(c - phase, beat))
            .filter(off -> Math.abs(off) < NEAR_SECONDS)
            .toArray();
    if (near.length < FEWEST || near.length < FITTING_SHARE * clicks.size()) {
      return Optional.empty();
    }
    double exact = phase + RobustStatistics.median(near);
    return Optional.of(
        Grid.of(Grid.Source.CLICK, pulse, firstBeat(clicks, exact, firstNote, pulse)));
  }

  /** The click that most others agree with. */
  private static double phase(List<Double> clicks, double beat) {
    double best = clicks.get(0);
    long most = 0;
    for (double candidate : clicks) {
      long agree =
          clicks.stream()
              .filter(c -> Math.abs(Math.IEEEremainder(c - candidate, beat)) < NEAR_SECONDS)
              .count();
      if (agree > most) {
        most = agree;
        best = candidate;
      }
    }
    return best;
  }

  /** The beat after the count-in, where the first note is not far; else the first note's beat. */
  private static double firstBeat(
      List<Double> clicks, double phase, double firstNote, Pulse pulse) {
    double beat = pulse.beatSeconds();
    double firstClick = phase + beat * Math.rint((clicks.get(0) - phase) / beat);
    double counted = firstClick + pulse.countIn() * beat;
    boolean countedIn = pulse.countIn() > 0 && firstNote - firstClick > 1.5 * beat;
    if (countedIn && Math.abs(firstNote - counted) < 1.5 * beat) {
      return counted;
    }
    return phase + beat * Math.rint((firstNote - phase) / beat);
  }
}
