package neckway.practice;

import java.time.LocalDate;
import java.util.List;

/**
 * What to play next in the time there is.
 *
 * @param day the day that it is of
 * @param minutes there are
 * @param items in their order; their minutes add up to no more
 */
public record Plan(LocalDate day, int minutes, List<PlanItem> items) {
  public Plan {
    items = List.copyOf(items);
  }
}
