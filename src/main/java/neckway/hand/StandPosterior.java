package neckway.hand;

import neckway.neck.Direction;
import neckway.neck.GuitarString;

/** Where the hand stood on the steps of a round, with probabilities. */
final class StandPosterior {
  private final StandMap map;
  private final double[][] stand;
  private final double[][] up;
  private final double[][] down;

  StandPosterior(StandMap map, double[][] stand, double[][] up, double[][] down) {
    this.map = map;
    this.stand = stand;
    this.up = up;
    this.down = down;
  }

  /** Probability of a stand on a step of the round. */
  double stand(int step, int number) {
    return stand[step][number - StandMap.LOWEST];
  }

  /** Probability that a shift was made on a string; 0 while its first step there is to come. */
  double shifted(Direction direction, int pair, GuitarString string) {
    int shows = map.shows(direction, pair, string);
    if (shows >= stand.length) {
      return 0;
    }
    int to = direction == Direction.UP ? pair + 1 : pair;
    return (direction == Direction.UP ? up : down)[shows][to - StandMap.LOWEST];
  }

  /** Probability that the hand is below a stand on a step. */
  double below(int step, int number) {
    double p = 0;
    for (int s = StandMap.LOWEST; s < number; s++) {
      p += stand(step, s);
    }
    return p;
  }
}
