package neckway.practice;

import java.util.Locale;
import java.util.Optional;
import neckway.drill.PlayableDrill;

/**
 * One thing to do.
 *
 * @param kind what it is
 * @param minutes how long, 1 or more
 * @param rounds how often the drill is played; 0 where there is none
 * @param drill what is played; empty for a warm-up or a rest
 * @param why in a sentence
 */
public record PlanItem(
    Kind kind, int minutes, int rounds, Optional<PlayableDrill> drill, String why) {
  /** What is done. */
  public enum Kind {
    /** One shape alone. */
    SHAPE,
    /** One pair of shapes, up and down. */
    JOIN,
    /** Joins that are known alone, one going up and another coming down. */
    MIX,
    /** Three shapes or more. */
    CHAIN,
    /** Easy playing before the rest. */
    WARM_UP,
    /** No playing. */
    REST,
    /** Playing over chords. */
    BACKING;

    /** The word for it in files. */
    public String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }
}
