package neckway.place;

import java.util.Arrays;
import java.util.Optional;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Place;

/**
 * Finds the stand of the hand on each step of one round from how well the notes' sound fits each
 * string: a hidden Markov model, whose states are the stands, solved by the forward-backward
 * algorithm (Rabiner 1989, equations 19 to 37, in logarithms). The hand seldom moves; where it is
 * planned to, it most likely does; where it may also, it may.
 */
final class HandDecoder {
  private static final double START_ELSEWHERE = 0.005;
  private static final double BACK = 0.002;
  private static final double ASTRAY = 0.0003;

  /** Of a note heard where the stand cannot play it. */
  private static final double LOG_UNPLAYABLE = -10;

  /** Of a note left out that the stand could play: as a slip, and where there was time for it. */
  private static final double LOG_SLIPPED = Math.log(0.01);

  private static final double LOG_UNHEARD = Math.log(0.3);

  /** Of a note begun without a stroke on another string than the one before. */
  private static final double LOG_OTHER_STRING = Math.log(0.05);

  private static final double LOG_SAME_STRING = Math.log(0.95);

  private final StandMap map;
  private final int round;
  private final ShiftPrior prior;
  private final double[][] emission;
  private final boolean[] tied;
  private final double[][] forward;
  private final double[][] backward;

  HandDecoder(StandMap map, int round, ShiftPrior prior) {
    this.map = map;
    this.round = round;
    this.prior = prior;
    this.emission = new double[map.steps()][map.stands()];
    this.tied = new boolean[map.steps()];
    this.forward = new double[map.steps()][map.stands()];
    this.backward = new double[map.steps()][map.stands()];
  }

  /** A step's own pitch was heard. */
  void heard(int step, Optional<StringEvidence> evidence) {
    for (int s = 0; s < map.stands(); s++) {
      Optional<Place> place = place(step, s);
      double log = LOG_UNPLAYABLE;
      if (place.isPresent()) {
        log = evidence.map(e -> e.log(place.get().string())).orElse(0.0);
      }
      emission[step][s] += Math.max(LOG_UNPLAYABLE, log);
    }
  }

  /** Another pitch was heard in a step's place: stands whose frets are near it are likelier. */
  void heardElsewhere(int step, double[] logByStand) {
    for (int s = 0; s < map.stands(); s++) {
      emission[step][s] += Math.max(LOG_UNPLAYABLE, logByStand[s]);
    }
  }

  /**
   * A step was left out.
   *
   * @param timeForIt whether the notes around it left time for it
   */
  void leftOut(int step, boolean timeForIt) {
    for (int s = 0; s < map.stands(); s++) {
      if (place(step, s).isPresent()) {
        emission[step][s] += timeForIt ? LOG_UNHEARD : LOG_SLIPPED;
      }
    }
  }

  /** A step's note began without a stroke, straight after the step before. */
  void tied(int step) {
    tied[step] = true;
  }

  /** Logarithm of how well a stand explains what was heard of a step. */
  double emission(int step, int s) {
    return emission[step][s];
  }

  /** Logarithm of the probability of a stand before the first note. */
  double start(int s) {
    return Math.log(
        s + StandMap.LOWEST == 0 ? 1 - (map.stands() - 1) * START_ELSEWHERE : START_ELSEWHERE);
  }

  private Optional<Place> place(int step, int s) {
    return map.place(step, s + StandMap.LOWEST);
  }

  /**
   * Solves for the steps so far.
   *
   * @param last step of the round
   */
  HandReading solve(int last) {
    int n = map.stands();
    for (int s = 0; s < n; s++) {
      forward[0][s] = start(s) + emission[0][s];
    }
    double[] sum = new double[n];
    for (int t = 1; t <= last; t++) {
      for (int to = 0; to < n; to++) {
        for (int from = 0; from < n; from++) {
          sum[from] = forward[t - 1][from] + move(t, from, to);
        }
        forward[t][to] = logSum(sum) + emission[t][to];
      }
    }
    Arrays.fill(backward[last], 0);
    for (int t = last; t > 0; t--) {
      for (int from = 0; from < n; from++) {
        for (int to = 0; to < n; to++) {
          sum[to] = move(t, from, to) + emission[t][to] + backward[t][to];
        }
        backward[t - 1][from] = logSum(sum);
      }
    }
    double total = logSum(forward[last]);
    double[][] stand = new double[last + 1][n];
    double[][] up = new double[last + 1][n];
    double[][] down = new double[last + 1][n];
    for (int t = 0; t <= last; t++) {
      for (int s = 0; s < n; s++) {
        stand[t][s] = Math.exp(forward[t][s] + backward[t][s] - total);
        if (t > 0 && s > 0) {
          up[t][s] = moved(t, s - 1, s, total);
        }
        if (t > 0 && s + 1 < n) {
          down[t][s] = moved(t, s + 1, s, total);
        }
      }
    }
    return new HandReading(map, stand, up, down, total);
  }

  private double moved(int t, int from, int to, double total) {
    return Math.exp(
        forward[t - 1][from] + move(t, from, to) + emission[t][to] + backward[t][to] - total);
  }

  /** Logarithm of the probability that the hand goes from a stand to another before a step. */
  double move(int step, int from, int to) {
    boolean up = step <= map.top();
    int way = up ? to - from : from - to;
    double shift = shift(step, from + StandMap.LOWEST, up);
    double p =
        switch (way) {
          case 0 -> 1 - shift - BACK - ASTRAY * (map.stands() - 2);
          case 1 -> Math.max(shift, ASTRAY);
          case -1 -> BACK;
          default -> ASTRAY;
        };
    double log = Math.log(p);
    if (tied[step]) {
      Optional<Place> before = place(step - 1, from);
      Optional<Place> here = place(step, to);
      if (before.isPresent() && here.isPresent()) {
        log +=
            before.get().string().equals(here.get().string()) ? LOG_SAME_STRING : LOG_OTHER_STRING;
      }
    }
    return log;
  }

  /** Probability that the hand, still in a stand, now goes to the next one on its way. */
  private double shift(int step, int stand, boolean up) {
    int pair = up ? stand : stand - 1;
    if (pair < 0 || pair >= map.pairs()) {
      return 0;
    }
    Direction direction = up ? Direction.UP : Direction.DOWN;
    GuitarString planned = map.shift(round, direction, pair).string();
    double still = prior.missed();
    double here = 0;
    for (GuitarString string : map.strings()) {
      int shows = map.shows(direction, pair, string);
      double p = prior.on(string.equals(planned), map.strings().size());
      if (shows >= step) {
        still += p;
      }
      if (shows == step) {
        here = p;
      }
    }
    return here / still;
  }

  private static double logSum(double[] logs) {
    double most = Double.NEGATIVE_INFINITY;
    for (double log : logs) {
      most = Math.max(most, log);
    }
    if (most == Double.NEGATIVE_INFINITY) {
      return most;
    }
    double sum = 0;
    for (double log : logs) {
      sum += Math.exp(log - most);
    }
    return most + Math.log(sum);
  }
}
