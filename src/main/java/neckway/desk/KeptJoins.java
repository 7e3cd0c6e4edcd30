package neckway.desk;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import neckway.drill.Drill;
import neckway.drill.PlayableDrill;
import neckway.neck.BadInput;
import neckway.neck.Direction;
import neckway.neck.Join;
import neckway.neck.JoinChoice;

/**
 * The joins that a drill takes along to other shapes. Strings that were good between other shapes
 * may be the worst between these, so each join that would be the most awkward of several is taken
 * anew, as cleanly as the others' order on the neck allows; the others stay.
 */
final class KeptJoins {
  private final PlayableDrill drill;
  private final Direction direction;

  private KeptJoins(PlayableDrill drill, Direction direction) {
    this.drill = drill;
    this.direction = direction;
  }

  /** A drill without a join that is the worst of several; empty where there is none such. */
  static Optional<Drill> withoutTheWorst(Drill candidate) {
    PlayableDrill playable;
    try {
      playable = candidate.playable();
    } catch (BadInput e) {
      // joins of other shapes are not all there on these: the next candidate keeps fewer of them
      return Optional.empty();
    }
    Optional<List<JoinChoice>> up = new KeptJoins(playable, Direction.UP).choices(candidate.up());
    Optional<List<JoinChoice>> down =
        new KeptJoins(playable, Direction.DOWN).choices(candidate.down());
    return up.flatMap(u -> down.map(d -> DrillModel.withJoins(candidate, u, d)));
  }

  /** In the order in which they are met; what was asked where none of them is the worst. */
  private Optional<List<JoinChoice>> choices(List<JoinChoice> asked) {
    int pairs = drill.pairs().size();
    List<Optional<Join>> kept = new ArrayList<>();
    for (int pair = 0; pair < pairs; pair++) {
      Join join = DrillModel.join(drill, pair, direction);
      kept.add(isWorst(pair, join) ? Optional.empty() : Optional.of(join));
    }
    if (kept.stream().allMatch(Optional::isPresent)) {
      return Optional.of(asked);
    }
    return cleanest(kept, Integer.MAX_VALUE).map(this::asMet);
  }

  private boolean isWorst(int pair, Join join) {
    List<Join> joins = drill.pairs().get(pair);
    return joins.size() > 1 && join.equals(joins.get(joins.size() - 1));
  }

  /**
   * Joins from a pair on, those kept among them, with the least sum of ranks: a higher pair is
   * joined on the same string as the one below it or on a thinner one.
   *
   * @param kept from that pair on; empty where one is taken anew
   * @param thickest number of the thickest string that may be used
   */
  private Optional<List<Join>> cleanest(List<Optional<Join>> kept, int thickest) {
    if (kept.isEmpty()) {
      return Optional.of(List.of());
    }
    int pair = drill.pairs().size() - kept.size();
    List<Join> here = kept.get(0).map(List::of).orElseGet(() -> drill.pairs().get(pair));
    Optional<List<Join>> best = Optional.empty();
    for (Join join : here) {
      int string = join.string().number();
      if (string > thickest || isWorst(pair, join)) {
        continue;
      }
      Optional<List<Join>> all =
          cleanest(kept.subList(1, kept.size()), string).map(rest -> before(join, rest));
      if (all.isPresent() && (best.isEmpty() || ranks(all.get()) < ranks(best.get()))) {
        best = all;
      }
    }
    return best;
  }

  private static List<Join> before(Join first, List<Join> rest) {
    List<Join> all = new ArrayList<>(rest);
    all.add(0, first);
    return all;
  }

  private static int ranks(List<Join> joins) {
    return joins.stream().mapToInt(Join::rank).sum();
  }

  private List<JoinChoice> asMet(List<Join> joins) {
    boolean up = direction == Direction.UP;
    List<JoinChoice> choices = new ArrayList<>();
    for (Join join : joins) {
      choices.add(JoinChoice.on(join.string().number(), up ? join.finger() : join.downFinger()));
    }
    if (!up) {
      Collections.reverse(choices);
    }
    return choices;
  }
}
