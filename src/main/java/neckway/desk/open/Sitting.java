package neckway.desk.open;

import java.util.List;
import java.util.Optional;
import neckway.drill.PlayableDrill;
import neckway.practice.Plan;
import neckway.practice.PlanItem;

/**
 * A plan that is played item by item. It stays through the sitting: what comes next is not changed
 * by each run, but a new plan is taken when this one is played to its end, and on another day.
 *
 * @param plan what is played
 * @param at how many of its items are behind
 */
record Sitting(Optional<Plan> plan, int at) {
  static final Sitting NONE = new Sitting(Optional.empty(), 0);

  private List<PlanItem> left() {
    return plan.map(p -> p.items().subList(Math.min(at, p.items().size()), p.items().size()))
        .orElse(List.of());
  }

  /** The next item that is played. */
  Optional<PlanItem> next() {
    return left().stream().filter(item -> item.drill().isPresent()).findFirst();
  }

  /** The warm-up or rest before it. */
  Optional<PlanItem> before() {
    return left().stream().findFirst().filter(item -> item.drill().isEmpty());
  }

  /** After the first run of all: a plan that knew of none is of use only where it was begun. */
  Sitting afterFirst() {
    return at == 0 ? NONE : this;
  }

  /** Takes a plan of what the log says now, where this one is of no more use. */
  Sitting with(Optional<Plan> now) {
    boolean stays =
        next().isPresent()
            && now.isPresent()
            && plan.get().day().equals(now.get().day())
            && isOfTheSameGuitar(now.get());
    return stays ? this : new Sitting(now, 0);
  }

  private boolean isOfTheSameGuitar(Plan now) {
    Optional<PlayableDrill> theirs =
        now.items().stream().flatMap(item -> item.drill().stream()).findFirst();
    Optional<PlayableDrill> mine = next().flatMap(PlanItem::drill);
    return theirs.map(PlayableDrill::tuning).equals(mine.map(PlayableDrill::tuning));
  }

  /** After a run of a drill; the next item is behind where that was its drill. */
  Sitting played(PlayableDrill drill) {
    boolean done =
        next()
            .flatMap(PlanItem::drill)
            .filter(d -> d.once().route().steps().equals(drill.once().route().steps()))
            .isPresent();
    return done ? new Sitting(plan, at + left().indexOf(next().get()) + 1) : this;
  }
}
