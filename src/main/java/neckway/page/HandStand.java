package neckway.page;

import java.util.Optional;
import neckway.neck.Step;

/**
 * Where the hand is and where it goes next.
 *
 * @param hand fret of the first finger
 * @param stand the shape of the chain that it is in
 * @param firstStep the step with which it is there
 */
public record HandStand(int hand, int stand, int firstStep) {
  private static HandStand at(PageModel page, int step) {
    return new HandStand(page.hand(step), page.stand(step), step);
  }

  /** The stand at the step reached last, or the first one. */
  public static HandStand now(PageModel page) {
    return at(page, page.here().map(Step::index).orElse(0));
  }

  /** The stand after that; empty where the hand stays to the end. */
  public static Optional<HandStand> next(PageModel page) {
    int here = now(page).firstStep();
    for (int step = here + 1; step < page.knownSteps(); step++) {
      if (page.hand(step) != page.hand(here)) {
        return Optional.of(at(page, step));
      }
    }
    return Optional.empty();
  }
}
