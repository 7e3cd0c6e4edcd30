package neckway.neck;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Finds which join is taken at each pair of a chain, on one way. */
final class JoinPlan {
  private static final int SAME_LANDING = 1000;

  private final Neck neck;
  private final List<List<Join>> pairs;
  private final Direction direction;

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
   * @param choices what the player asks for, one for each pair in the order met; none: the cleanest
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
    Best best = new Best();
    search(candidates, new ArrayList<>(), 0, best);
    return best.joins;
  }

  private String word() {
    return direction == Direction.UP ? "up" : "down";
  }

  private String wrongNumber(int given) {
    int wanted = pairs.size();
    String has = given == 1 ? "1 join" : given + " joins";
    if (wanted == 0) {
      return word() + ": " + has + ", but one shape alone has none; leave it out";
    }
    return word()
        + ": "
        + has
        + ", but this chain has "
        + (wanted == 1 ? "1 pair" : wanted + " pairs")
        + " of shapes; name one join for each, or none";
  }

  private List<Join> asked(int index, JoinChoice choice) {
    int strings = neck.tuning().count();
    if (!neck.tuning().has(choice.string())) {
      throw new BadInput(
          word() + ": string " + choice.string() + ": this tuning has strings 1 to " + strings);
    }
    List<Join> there =
        pairs.get(index).stream().filter(j -> j.string().number() == choice.string()).toList();
    if (choice.finger().isEmpty()) {
      return there;
    }
    int finger = choice.finger().getAsInt();
    List<Join> by = there.stream().filter(j -> j.isAskedForBy(finger, direction)).toList();
    if (by.isEmpty()) {
      String can =
          there.stream().map(j -> "finger " + j.finger()).collect(Collectors.joining(" or "));
      throw new BadInput(
          word()
              + ": no join from "
              + there.get(0).lower().spoken()
              + " to "
              + there.get(0).upper().spoken()
              + " on string "
              + choice.string()
              + " by finger "
              + finger
              + "; on that string take "
              + can);
    }
    return by;
  }

  private void checkOrder(int before, int after) {
    if (direction == Direction.UP && after > before) {
      throw new BadInput(
          "up: string "
              + after
              + " after string "
              + before
              + ": going up the line has left it; the string numbers of up may not rise");
    }
    if (direction == Direction.DOWN && after < before) {
      throw new BadInput(
          "down: string "
              + after
              + " after string "
              + before
              + ": coming down the line has left it; the string numbers of down may not fall");
    }
  }

  private void search(List<List<Join>> candidates, List<Join> sofar, int cost, Best best) {
    if (cost >= best.cost) {
      return;
    }
    if (sofar.size() == candidates.size()) {
      best.cost = cost;
      best.joins = List.copyOf(sofar);
      return;
    }
    for (Join join : candidates.get(sofar.size())) {
      int more = join.rank();
      if (!sofar.isEmpty()) {
        Join before = sofar.get(sofar.size() - 1);
        if (outOfOrder(before, join)) {
          continue;
        }
        more += landOnOneNote(before, join) ? SAME_LANDING : 0;
      }
      sofar.add(join);
      search(candidates, sofar, cost + more, best);
      sofar.remove(sofar.size() - 1);
    }
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

  private static final class Best {
    private int cost = Integer.MAX_VALUE;
    private List<Join> joins = List.of();
  }
}
