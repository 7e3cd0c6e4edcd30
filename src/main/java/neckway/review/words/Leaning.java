package neckway.review.words;

import java.util.List;
import java.util.OptionalDouble;
import neckway.review.Timing;
import neckway.words.Wording;

/** A run that lies ahead of the beat or behind it as a whole. */
final class Leaning {
  /** Common practice, no source: even notes beside the beat are a small fault. */
  private static final double BY_A_SLOT = 5;

  private final Played played;

  Leaning(Played played) {
    this.played = played;
  }

  List<Cause> causes() {
    OptionalDouble leanMs = new KeptTime(played).leanMs();
    double least = Timing.bandMs(played.review().grid().slotSeconds());
    if (leanMs.isEmpty() || Math.abs(leanMs.getAsDouble()) <= least) {
      return List.of();
    }
    double lean = leanMs.getAsDouble();
    String advice = Wording.of(lean < 0 ? "lean.ahead" : "lean.behind");
    return List.of(Cause.ofTheWhole(BY_A_SLOT * Math.abs(lean) / played.slotMs(), advice));
  }
}
