package neckway.player.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import neckway.neck.Route;
import neckway.player.settings.Behaviour;

/** Draws slips by chance, at least three steps apart unless two are to crowd. */
final class ChanceMistakes {
  private final Route route;
  private final Random random;

  ChanceMistakes(Route route, Random random) {
    this.route = route;
    this.random = random;
  }

  List<Mistake> draw(Behaviour behaviour, List<Mistake> listed) {
    List<Integer> taken = new ArrayList<>();
    for (Mistake mistake : listed) {
      if (mistake instanceof Mistake.Slip slip) {
        taken.add(slip.step());
      }
    }
    List<Mistake> drawn = new ArrayList<>();
    int last = behaviour.stopAfter().orElse(route.steps().size() - 1);
    if (behaviour.crowdedMistakes() && last >= 6) {
      int step = 1 + random.nextInt(last - 4);
      Mistake.Kind first = any();
      int apart = 1 + random.nextInt(2);
      drawn.add(new Mistake.Slip(first, step, OptionalInt.empty()));
      drawn.add(new Mistake.Slip(any(), step + apart, OptionalInt.empty()));
      taken.add(step);
    }
    for (int tries = 0; tries < 1000 && drawn.size() < behaviour.randomMistakes(); tries++) {
      int step = 1 + random.nextInt(Math.max(1, last - 2));
      if (taken.stream().allMatch(t -> Math.abs(t - step) >= 3)) {
        taken.add(step);
        drawn.add(new Mistake.Slip(any(), step, OptionalInt.empty()));
      }
    }
    return drawn;
  }

  private Mistake.Kind any() {
    Mistake.Kind[] kinds = Mistake.Kind.values();
    return kinds[random.nextInt(kinds.length)];
  }
}
