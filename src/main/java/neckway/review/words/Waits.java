package neckway.review.words;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import neckway.words.Wording;

/** Hesitations: at one place, or all over the run. */
final class Waits {
  /** Common practice, no source: a wait of a slot is heard as plainly as a wrong note. */
  private static final double OF_A_SLOT = 1;

  /** Common practice, no source: how much longer one waits does not matter after that. */
  private static final double MOST = 2;

  /** Waits at so many places have one cause, the tempo. */
  private static final int ALL_OVER = 3;

  private final Played played;

  Waits(Played played) {
    this.played = played;
  }

  List<Cause> causes() {
    Map<Integer, List<Stumbles.Wait>> places = new LinkedHashMap<>();
    for (Stumbles.Wait wait : new Stumbles(played).waits()) {
      places.computeIfAbsent(played.inRound(wait.step().index()), p -> new ArrayList<>()).add(wait);
    }
    List<Cause> causes = new ArrayList<>();
    places.values().forEach(waits -> causes.add(atOnePlace(waits)));
    if (places.size() >= ALL_OVER) {
      double all = causes.stream().mapToDouble(Cause::cost).sum();
      return List.of(
          new Cause(
              all,
              causes.get(0).step(),
              causes.stream().flatMap(c -> c.steps().stream()).toList(),
              Wording.of("waits.all", played.slowerTempo())));
    }
    return causes;
  }

  private Cause atOnePlace(List<Stumbles.Wait> waits) {
    double cost = 0;
    for (Stumbles.Wait wait : waits) {
      cost += Math.min(MOST, OF_A_SLOT * 1000 * wait.seconds() / played.slotMs());
    }
    int step = waits.get(0).step().index();
    return new Cause(
        cost,
        step,
        waits.stream().map(w -> w.step().index()).toList(),
        Wording.of("waits.place", Phrases.from(step), Phrases.before(waits.get(0).step().place())));
  }
}
