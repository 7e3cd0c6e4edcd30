package neckway.hand;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalInt;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.string.StringEvidence;

/**
 * Finds the stand of the hand on each step of one round from how well the notes' sound fits each
 * string: a hidden Markov model, whose states are the stands, solved by the forward-backward
 * algorithm (Rabiner 1989, equations 19 to 37, scaled as in 91 to 103). The hand seldom moves;
 * where it is planned to, it most likely does; where it may also, it may.
 */
final class HandHmm {
  private static final double START_ELSEWHERE = 0.005;
  private static final double BACK = 0.002;
  private static final double ASTRAY = 0.0003;

  /** Of a note heard where the stand cannot play it. */
  private static final double LOG_UNPLAYABLE = -10;

  /** Of a note left out that the stand could play: as a slip, and where there was time for it. */
  private static final double LOG_SLIPPED = Math.log(0.01);

  private static final double LOG_UNHEARD = Math.log(0.3);

  /**
   * Whether a hand that turns round too early strikes the note it turns on again. Mostly it does
   * not: common practice, no source.
   */
  private static final double TURN_STRUCK_AGAIN = 0.3;

  /** Of a note begun without a stroke on another string than the one before. */
  private static final double OTHER_STRING = 0.05;

  private static final double SAME_STRING = 0.95;

  private final StandMap map;
  private final int round;
  private final ShiftPrior prior;

  /** Index into the map's strings of the one on which a step lies in a stand, -1 for none. */
  private final int[][] string;

  /** Probability of a move before a step, [step][from][to], whatever the notes' beginnings. */
  private final double[][][] moves;

  final double[][] emission;
  private final boolean[] tied;
  private final double[][] forward;
  private final double[][] backward;

  HandHmm(StandMap map, int round, ShiftPrior prior) {
    this.map = map;
    this.round = round;
    this.prior = prior;
    int n = map.stands();
    this.emission = new double[map.steps()][n];
    this.tied = new boolean[map.steps()];
    this.forward = new double[map.steps()][n];
    this.backward = new double[map.steps()][n];
    this.string = new int[map.steps()][n];
    this.moves = new double[map.steps()][n][n];
    for (int step = 0; step < map.steps(); step++) {
      for (int s = 0; s < n; s++) {
        string[step][s] =
            map.place(step, s + StandMap.LOWEST)
                .map(place -> map.strings().indexOf(place.string()))
                .orElse(-1);
        moves(step, s);
      }
    }
  }

  /** Forgets what was heard. */
  void clear() {
    for (double[] e : emission) {
      Arrays.fill(e, 0);
    }
    Arrays.fill(tied, false);
  }

  /** A step's own pitch was heard. */
  void heard(int step, Optional<StringEvidence> evidence) {
    for (int s = 0; s < map.stands(); s++) {
      double log = LOG_UNPLAYABLE;
      if (string[step][s] >= 0) {
        GuitarString here = map.strings().get(string[step][s]);
        log = evidence.map(e -> e.log(here)).orElse(0.0);
      }
      double turn = turnsOn(step, s) ? Math.log(TURN_STRUCK_AGAIN) : 0;
      emission[step][s] += Math.max(LOG_UNPLAYABLE, log) + turn;
    }
  }

  private boolean turnsOn(int step, int s) {
    return map.turnsOn(s + StandMap.LOWEST).equals(OptionalInt.of(step));
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
      if (turnsOn(step, s)) {
        emission[step][s] += Math.log(1 - TURN_STRUCK_AGAIN);
      } else if (string[step][s] >= 0) {
        emission[step][s] += timeForIt ? LOG_UNHEARD : LOG_SLIPPED;
      }
    }
  }

  /** A step's note began without a stroke, straight after the step before. */
  void tied(int step) {
    tied[step] = true;
  }

  /** Logarithm of the probability of a stand before the first note. */
  double start(int s) {
    return Math.log(
        s + StandMap.LOWEST == 0 ? 1 - (map.stands() - 1) * START_ELSEWHERE : START_ELSEWHERE);
  }

  /**
   * Solves for the steps so far.
   *
   * @param last step of the round
   */
  StandPosterior solve(int last) {
    int n = map.stands();
    double[][] stand = new double[last + 1][n];
    double[][] up = new double[last + 1][n];
    double[][] down = new double[last + 1][n];
    double[][] weight = new double[last + 1][];
    for (int t = 0; t <= last; t++) {
      double most = Arrays.stream(emission[t]).max().orElseThrow();
      weight[t] = Arrays.stream(emission[t]).map(log -> Math.exp(log - most)).toArray();
      for (int to = 0; to < n; to++) {
        double before = t == 0 ? Math.exp(start(to)) : 0;
        for (int from = 0; from < n && t > 0; from++) {
          before += forward[t - 1][from] * move(t, from, to);
        }
        forward[t][to] = before * weight[t][to];
      }
    }
    Arrays.fill(backward[last], 1);
    for (int t = last; t >= 0; t--) {
      if (t > 0) {
        fillBackward(t, weight[t]);
      }
      double sum = 0;
      for (int s = 0; s < n; s++) {
        stand[t][s] = forward[t][s] * backward[t][s];
        sum += stand[t][s];
      }
      for (int s = 0; s < n; s++) {
        stand[t][s] /= sum;
      }
    }
    for (int t = 1; t <= last; t++) {
      double sum = 0;
      for (int to = 0; to < n; to++) {
        double after = weight[t][to] * backward[t][to];
        for (int from = 0; from < n; from++) {
          double p = forward[t - 1][from] * move(t, from, to) * after;
          sum += p;
          if (from == to - 1) {
            up[t][to] = p;
          } else if (from == to + 1) {
            down[t][to] = p;
          }
        }
      }
      for (int to = 0; to < n; to++) {
        up[t][to] /= sum;
        down[t][to] /= sum;
      }
    }
    return new StandPosterior(map, stand, up, down);
  }

  private void fillBackward(int t, double[] weight) {
    int n = map.stands();
    for (int from = 0; from < n; from++) {
      double sum = 0;
      for (int to = 0; to < n; to++) {
        sum += move(t, from, to) * weight[to] * backward[t][to];
      }
      backward[t - 1][from] = sum;
    }
    scale(backward[t - 1]);
  }

  /** Makes the sum 1; returns what it was. */
  private static double scale(double[] p) {
    double sum = Arrays.stream(p).sum();
    for (int s = 0; s < p.length; s++) {
      p[s] /= sum;
    }
    return sum;
  }

  /** A hand that is still above comes down for the next round's first note, however far that is. */
  private void moves(int step, int from) {
    boolean up = step <= map.top();
    double shift = shift(step, from + StandMap.LOWEST, up);
    for (int to = 0; to < map.stands(); to++) {
      moves[step][from][to] =
          switch (up ? to - from : from - to) {
            case 0 -> 1 - shift - BACK - ASTRAY * (map.stands() - 2);
            case 1 -> Math.max(shift, ASTRAY);
            case -1 -> BACK;
            default -> ASTRAY;
          };
    }
    if (from + StandMap.LOWEST > 0 && step == map.steps() - 1 && map.anotherRoundAfter(round)) {
      moves[step][from][-StandMap.LOWEST] += moves[step][from][from];
      moves[step][from][from] = 0;
    }
  }

  /** Probability that the hand goes from a stand to another before a step. */
  double move(int step, int from, int to) {
    double p = moves[step][from][to];
    if (tied[step] && string[step - 1][from] >= 0 && string[step][to] >= 0) {
      p *= string[step - 1][from] == string[step][to] ? SAME_STRING : OTHER_STRING;
    }
    return p;
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
}
