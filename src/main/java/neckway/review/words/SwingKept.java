package neckway.review.words;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.drill.Pulse;
import neckway.review.OwnSwing;
import neckway.words.Wording;

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
            isAnother() ? besideTheDrill() : Wording.of("swing", shares(swing.getAsDouble()))));
  }

  List<Cause> causes() {
    if (swing.isEmpty() || !isAnother()) {
      return List.of();
    }
    String rather =
        asked == Pulse.STRAIGHT
            ? Wording.of("swing.evenly", Wording.fixed(swing.getAsDouble(), 2))
            : Wording.of(
                swing.getAsDouble() < asked ? "swing.longer" : "swing.shorter",
                shares(asked),
                shares(swing.getAsDouble()));
    return List.of(Cause.ofTheWhole(BY_A_SLOT * Math.abs(swing.getAsDouble() - asked), rather));
  }

  private boolean isAnother() {
    return OwnSwing.isAnother(swing.getAsDouble(), asked);
  }

  private String besideTheDrill() {
    String own = shares(swing.getAsDouble());
    return asked == Pulse.STRAIGHT
        ? Wording.of("swing.straight", own)
        : Wording.of("swing.other", own, shares(asked));
  }

  private static String shares(double share) {
    long first = Math.round(PERCENT * share);
    return Wording.of("swing.shares", first, Math.round(PERCENT - first));
  }
}
