package neckway.review.words;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.drill.Pulse;
import neckway.review.OwnSwing;

/** Says how the player swings, where that can be told and is not what goes without saying. */
final class SwingKept {
  private static final double PERCENT = 100;

  /** As uneven time is weighed: common practice, no source. */
  private static final double BY_A_SLOT = 10;

  private final double asked;
  private final OptionalDouble swing;

  SwingKept(Played played) {
    this.asked = played.drill().pulse().swing();
    this.swing = played.review().summary().swing();
  }

  /** "You swing 62 to 38.", and what the drill asks for where that is another feel. */
  Optional<Sentence> sentence() {
    if (swing.isEmpty() || asked == Pulse.STRAIGHT && !isAnother()) {
      return Optional.empty();
    }
    return Optional.of(
        Sentence.of(
            "You swing "
                + shares(swing.getAsDouble())
                + (isAnother() ? ", and the drill " + askedFor() + "." : ".")));
  }

  List<Cause> causes() {
    if (swing.isEmpty() || !isAnother()) {
      return List.of();
    }
    String rather =
        asked == Pulse.STRAIGHT
            ? "the drill is straight and you swing it; count both notes of a pair evenly, or give the"
                + " drill a swing of "
                + String.format(Locale.ROOT, "%.2f", swing.getAsDouble())
            : "let the first note of a pair be "
                + (swing.getAsDouble() < asked ? "longer" : "shorter")
                + ": the drill swings "
                + shares(asked)
                + ", and you "
                + shares(swing.getAsDouble());
    return List.of(Cause.ofTheWhole(BY_A_SLOT * Math.abs(swing.getAsDouble() - asked), rather));
  }

  private boolean isAnother() {
    return OwnSwing.isAnother(swing.getAsDouble(), asked);
  }

  private String askedFor() {
    return asked == Pulse.STRAIGHT ? "is straight" : "swings " + shares(asked);
  }

  private static String shares(double share) {
    long first = Math.round(PERCENT * share);
    return first + " to " + Math.round(PERCENT - first);
  }
}
