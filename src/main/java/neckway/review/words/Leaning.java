package neckway.review.words;

import java.util.List;
import java.util.OptionalDouble;
import neckway.review.Timing;

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
    String advice =
        lean < 0
            ? "you play ahead of the beat; tap your foot to a bar of clicks, then play no note"
                + " before your foot is down"
            : "you play behind the beat; tap your foot to a bar of clicks, then let each note"
                + " start with your foot";
    return List.of(Cause.ofTheWhole(BY_A_SLOT * Math.abs(lean) / played.slotMs(), advice));
  }
}
