package neckway.neck;

import java.util.ArrayList;
import java.util.List;
import neckway.words.Wording;

/**
 * Lays a route through a chain of shapes: up from the lowest note, over each join, and down again.
 *
 * <p>Which note is the landing note: going up by a finger that slides from the lower note, the
 * middle one; by a finger that goes on from the middle note, or by a change of fingers, the top
 * one. Coming down mirrors it: the lower note in the first case, the middle one in the others. So
 * the finger that leads a join up also leads it down, and plays the landing note both ways.
 */
public final class RouteBuilder {
  /** The most rounds in one take. */
  public static final int MOST_ROUNDS = 99;

  private final Neck neck;
  private final List<PlacedShape> chain;
  private final List<List<Join>> pairs;
  private final List<Join> up;
  private final List<Join> down;
  private final List<Step> steps = new ArrayList<>();
  private final List<PlannedShift> shifts = new ArrayList<>();

  private RouteBuilder(
      Neck neck, List<PlacedShape> chain, List<JoinChoice> up, List<JoinChoice> down) {
    this.neck = neck;
    this.chain = chain;
    this.pairs = pairs(neck, chain);
    this.up = new JoinPlan(neck, pairs, Direction.UP).choose(up);
    List<JoinChoice> back = down;
    if (down.isEmpty()) {
      back =
          JoinPlan.inOrderMet(this.up, Direction.DOWN).stream()
              .map(join -> JoinChoice.on(join.string().number()))
              .toList();
    }
    this.down = new JoinPlan(neck, pairs, Direction.DOWN).choose(back);
  }

  /** The joins of each pair of neighbours in a chain, low to high. */
  public static List<List<Join>> pairs(Neck neck, List<PlacedShape> chain) {
    List<List<Join>> pairs = new ArrayList<>();
    for (int i = 1; i < chain.size(); i++) {
      pairs.add(Joins.between(chain.get(i - 1), chain.get(i), neck.tuning().strings()));
    }
    return pairs;
  }

  /**
   * Builds the steps of a whole take.
   *
   * @param neck where
   * @param chain one to five neighbours in their places, low to high
   * @param up a join for each pair in the order met, or none: the cleanest one between two shapes;
   *     through three and more the cleanest by which each shape is played on two strings
   * @param down a join for each pair in the order met, or none for the same strings as up
   * @param rounds 1 to 99
   * @throws BadInput if there is no such join
   */
  public static Route build(
      Neck neck, List<PlacedShape> chain, List<JoinChoice> up, List<JoinChoice> down, int rounds) {
    if (rounds < 1 || rounds > MOST_ROUNDS) {
      throw new BadInput(Wording.of("music.rounds", rounds, MOST_ROUNDS));
    }
    RouteBuilder builder = new RouteBuilder(neck, chain, up, down);
    for (int round = 0; round < rounds; round++) {
      builder.goUp(round);
      builder.goDown(round);
    }
    List<Shape> shapes = chain.stream().map(PlacedShape::shape).toList();
    return new Route(shapes, builder.steps, builder.shifts, rounds);
  }

  private void goUp(int round) {
    int stand = 0;
    for (GuitarString string : neck.tuning().strings()) {
      List<Join> here = up.subList(stand, upTo(up, stand, string));
      List<PlacedNote> line = line(string, stand, here.size());
      int at = stand;
      for (int i = 0; i < line.size(); i++) {
        for (int pair = at; pair < stand + here.size() && landsUp(pair, stand) == i; pair++) {
          at = pair + 1;
          plan(round, Direction.UP, pair, string);
        }
        boolean bottomAgain = round > 0 && stand == 0 && i == 0 && isLowest(string);
        if (!bottomAgain) {
          add(line.get(i), at);
        }
      }
      stand += here.size();
    }
  }

  private void goDown(int round) {
    List<GuitarString> strings = JoinPlan.inOrderMet(neck.tuning().strings(), Direction.DOWN);
    int met = 0;
    for (GuitarString string : strings) {
      int stand = chain.size() - 1 - met;
      int joins = upTo(down, met, string) - met;
      List<PlacedNote> line = line(string, stand - joins, joins);
      int at = stand;
      for (int i = line.size() - 1; i >= 0; i--) {
        while (at > stand - joins && landsDown(at - 1, stand - joins) == i) {
          at--;
          plan(round, Direction.DOWN, at, string);
        }
        boolean topAgain = string.number() == 1 && i == line.size() - 1;
        if (!topAgain) {
          add(line.get(i), at);
        }
      }
      met += joins;
    }
  }

  private boolean isLowest(GuitarString string) {
    return string.equals(neck.tuning().lowest());
  }

  /** End, exclusive, of the joins on a string in a list in the order met. */
  private static int upTo(List<Join> joins, int from, GuitarString string) {
    int end = from;
    while (end < joins.size() && joins.get(end).string().equals(string)) {
      end++;
    }
    return end;
  }

  /** The notes on a string from the lowest, of a stand and of those reached by joins there. */
  private List<PlacedNote> line(GuitarString string, int lowest, int joins) {
    List<PlacedNote> line = new ArrayList<>();
    line.add(chain.get(lowest).first(string));
    for (int stand = lowest; stand <= lowest + joins; stand++) {
      line.add(chain.get(stand).second(string));
    }
    return line;
  }

  private int landsUp(int pair, int lowest) {
    return pair - lowest + (up.get(pair).lead() == Join.Lead.LOW_TO_MIDDLE ? 1 : 2);
  }

  private int landsDown(int pair, int lowest) {
    Join join = down.get(down.size() - 1 - pair);
    return pair - lowest + (join.lead() == Join.Lead.LOW_TO_MIDDLE ? 0 : 1);
  }

  private void plan(int round, Direction direction, int pair, GuitarString string) {
    Join join = direction == Direction.UP ? up.get(pair) : down.get(down.size() - 1 - pair);
    int finger = direction == Direction.UP ? join.finger() : join.downFinger();
    shifts.add(new PlannedShift(round, direction, pair, string, finger, steps.size()));
  }

  private void add(PlacedNote note, int stand) {
    PlacedShape shape = chain.get(stand);
    GuitarString string = note.place().string();
    PlacedNote here = shape.first(string);
    if (!here.place().equals(note.place())) {
      here = shape.second(string);
    }
    steps.add(new Step(steps.size(), note.place(), note.midi(), here.finger(), stand));
  }
}
