package neckway.neck;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import neckway.words.Wording;

/**
 * Finds which join is taken at each pair of a chain, on one way.
 *
 * <p>Of all joins that are open to it, it takes those that are the best by the first of these that
 * tells them apart (common practice, no published source):
 *
 * <ol>
 *   <li>no two shifts land on one note;
 *   <li>in a chain of three shapes or more, each shape is played on two strings at least, which is
 *       four of its notes, or as few as can be on one;
 *   <li>the fewest changes of fingers;
 *   <li>the cleanest joins: the sum of their ranks is the least;
 *   <li>the strings are shared out evenly among the shapes.
 * </ol>
 */
final class JoinPlan {
  /** A shape on fewer strings than this is passed through rather than played. */
  static final int STRINGS_TO_PLAY_A_SHAPE = 2;

  private final Neck neck;
  private final List<List<Join>> pairs;
  private final Direction direction;
  private Optional<Plan> best = Optional.empty();

  /**
   * @param pairs the joins of each pair, low to high in the chain
   */
  JoinPlan(Neck neck, List<List<Join>> pairs, Direction direction) {
    this.neck = neck;
    this.direction = direction;
    this.pairs = inOrderMet(pairs, direction);
  }

  /** Low to high going up, high to low coming down. */
  static <T> List<T> inOrderMet(List<T> pairs, Direction direction) {
    List<T> met = new ArrayList<>(pairs);
    if (direction == Direction.DOWN) {
      java.util.Collections.reverse(met);
    }
    return met;
  }

  /**
   * The joins in the order met.
   *
   * @param choices what the player asks for, one for each pair in the order met; none: by the rule
   *     above
   * @throws BadInput if the number is wrong, a string is outside the tuning or out of order, or
   *     there is no such join
   */
  List<Join> choose(List<JoinChoice> choices) {
    if (!choices.isEmpty() && choices.size() != pairs.size()) {
      throw new BadInput(wrongNumber(choices.size()));
    }
    List<List<Join>> candidates = new ArrayList<>();
    for (int i = 0; i < pairs.size(); i++) {
      candidates.add(choices.isEmpty() ? pairs.get(i) : asked(i, choices.get(i)));
      if (i > 0 && !choices.isEmpty()) {
        checkOrder(choices.get(i - 1).string(), choices.get(i).string());
      }
    }
    search(candidates, new ArrayList<>());
    return best.map(Plan::joins).orElseThrow();
  }

  /**
   * On how many strings each shape of a chain is played, two notes on each. Where the hand shifts,
   * both shapes have their two notes.
   *
   * @param strings how many the guitar has
   * @param joins where the hand shifts, from the lowest pair of shapes to the highest
   */
  static List<Integer> stringsPlayed(int strings, List<GuitarString> joins) {
    List<Integer> played = new ArrayList<>();
    int enters = strings;
    for (GuitarString join : joins) {
      played.add(enters - join.number() + 1);
      enters = join.number();
    }
    played.add(enters);
    return played;
  }

  /** As options and files have it. */
  private String word() {
    return direction == Direction.UP ? "up" : "down";
  }

  private String wrongNumber(int given) {
    return switch (pairs.size()) {
      case 0 -> Wording.counted("music.joins.oneShape", given, word(), given);
      case 1 -> Wording.of("music.joins.onePair", word(), given);
      default -> Wording.counted("music.joins.pairs", given, word(), given, pairs.size());
    };
  }

  private List<Join> asked(int index, JoinChoice choice) {
    int strings = neck.tuning().count();
    if (!neck.tuning().has(choice.string())) {
      throw new BadInput(Wording.of("music.joins.noString", word(), choice.string(), strings));
    }
    List<Join> there =
        pairs.get(index).stream().filter(j -> j.string().number() == choice.string()).toList();
    if (choice.finger().isEmpty()) {
      return there;
    }
    int finger = choice.finger().getAsInt();
    List<Join> by = there.stream().filter(j -> j.isAskedForBy(finger, direction)).toList();
    if (by.isEmpty()) {
      throw new BadInput(
          Wording.of(
              "music.joins.noFinger",
              word(),
              there.get(0).lower().spoken(),
              there.get(0).upper().spoken(),
              choice.string(),
              finger,
              Either.of(there, join -> Wording.of("music.joins.finger", join.finger()))));
    }
    return by;
  }

  private void checkOrder(int before, int after) {
    if (direction == Direction.UP && after > before) {
      throw new BadInput(Wording.of("music.joins.order.up", after, before));
    }
    if (direction == Direction.DOWN && after < before) {
      throw new BadInput(Wording.of("music.joins.order.down", after, before));
    }
  }

  private void search(List<List<Join>> candidates, List<Join> sofar) {
    if (sofar.size() == candidates.size()) {
      Plan plan = plan(sofar);
      if (best.isEmpty() || Plan.BEST_FIRST.compare(plan, best.get()) < 0) {
        best = Optional.of(plan);
      }
      return;
    }
    for (Join join : candidates.get(sofar.size())) {
      if (sofar.isEmpty() || !outOfOrder(sofar.get(sofar.size() - 1), join)) {
        sofar.add(join);
        search(candidates, sofar);
        sofar.remove(sofar.size() - 1);
      }
    }
  }

  private Plan plan(List<Join> met) {
    int sameLandings = 0;
    for (int i = 1; i < met.size(); i++) {
      sameLandings += landOnOneNote(met.get(i - 1), met.get(i)) ? 1 : 0;
    }
    List<GuitarString> lowToHigh = inOrderMet(met, direction).stream().map(Join::string).toList();
    int missing = 0;
    int unevenness = 0;
    for (int played : stringsPlayed(neck.tuning().count(), lowToHigh)) {
      missing += Math.max(0, STRINGS_TO_PLAY_A_SHAPE - played);
      unevenness += played * played;
    }
    int changes = (int) met.stream().filter(j -> j.lead() == Join.Lead.CHANGE).count();
    int ranks = met.stream().mapToInt(Join::rank).sum();
    boolean longChain = met.size() > 1;
    return new Plan(
        List.copyOf(met), sameLandings, longChain ? missing : 0, changes, ranks, unevenness);
  }

  private boolean outOfOrder(Join before, Join after) {
    int step = after.string().compareTo(before.string());
    return direction == Direction.UP ? step > 0 : step < 0;
  }

  private boolean landOnOneNote(Join before, Join after) {
    Join lower = direction == Direction.UP ? before : after;
    Join upper = direction == Direction.UP ? after : before;
    return before.string().equals(after.string())
        && lower.lead() != Join.Lead.LOW_TO_MIDDLE
        && upper.lead() == Join.Lead.LOW_TO_MIDDLE;
  }

  /**
   * A join for each pair.
   *
   * @param joins in the order met
   * @param sameLandings how often two shifts land on one note
   * @param missing strings that shapes are short of, to be played on two each
   * @param changes joins where fingers change
   * @param ranks sum of the joins' ranks
   * @param unevenness sum of the squares of how many strings each shape is played on
   */
  private record Plan(
      List<Join> joins, int sameLandings, int missing, int changes, int ranks, int unevenness) {
    static final Comparator<Plan> BEST_FIRST =
        Comparator.comparingInt(Plan::sameLandings)
            .thenComparingInt(Plan::missing)
            .thenComparingInt(Plan::changes)
            .thenComparingInt(Plan::ranks)
            .thenComparingInt(Plan::unevenness);
  }
}
