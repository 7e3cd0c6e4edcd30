package neckway.review;

import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.drill.PlayableDrill;
import neckway.drill.Slots;
import neckway.follow.NoteVerdict;
import neckway.follow.Verdict;
import neckway.hear.RobustStatistics;
import neckway.neck.PlannedShift;

/**
 * The player's own swing: the share of a pair of notes that the first one took, whatever the drill
 * asks for. A pair tells it where both its notes and the next pair's first one were right, none of
 * them a landing. The pairs' shares are averaged as Hodges and Lehmann do (1963): the median of the
 * means of every two.
 */
public final class OwnSwing {
  /** Fewer pairs tell no swing. */
  private static final int FEWEST_PAIRS = 6;

  /** The standard error of the share at which it may still be told. */
  private static final double MOST_ERROR = 0.01;

  /** Beyond this distance two shares are two feels: five errors at most. */
  private static final double ANOTHER_FEEL = 0.05;

  private OwnSwing() {}

  /**
   * @param verdicts of any attempts
   * @return empty where the drill's notes are no pairs, too few were played, or they agree too
   *     little
   */
  static OptionalDouble of(PlayableDrill drill, Collection<NoteVerdict> verdicts) {
    if (drill.pulse().notesPerBeat() % 2 != 0) {
      return OptionalDouble.empty();
    }
    Map<List<Integer>, NoteVerdict> right = new HashMap<>();
    verdicts.stream()
        .filter(v -> v.verdict() == Verdict.RIGHT && v.note().fine())
        .forEach(v -> right.putIfAbsent(List.of(v.attempt(), v.step().getAsInt()), v));
    drill.route().shifts().stream()
        .map(PlannedShift::landingStep)
        .forEach(landing -> right.keySet().removeIf(key -> key.get(1).equals(landing)));
    Slots slots = drill.pulse().slots();
    double[] shares =
        right.values().stream()
            .filter(v -> slots.isSecond(v.step().getAsInt()))
            .map(second -> share(right, second))
            .flatMap(Optional::stream)
            .mapToDouble(Double::doubleValue)
            .toArray();
    boolean told =
        shares.length >= FEWEST_PAIRS
            && RobustStatistics.spread(shares) / Math.sqrt(shares.length) <= MOST_ERROR;
    return told ? OptionalDouble.of(middle(shares)) : OptionalDouble.empty();
  }

  private static Optional<Double> share(Map<List<Integer>, NoteVerdict> right, NoteVerdict second) {
    int step = second.step().getAsInt();
    NoteVerdict first = right.get(List.of(second.attempt(), step - 1));
    NoteVerdict next = right.get(List.of(second.attempt(), step + 1));
    if (first == null || next == null) {
      return Optional.empty();
    }
    double begun = first.note().time();
    return Optional.of((second.note().time() - begun) / (next.note().time() - begun));
  }

  private static double middle(double[] shares) {
    double[] means = new double[shares.length * (shares.length + 1) / 2];
    int count = 0;
    for (int i = 0; i < shares.length; i++) {
      for (int j = i; j < shares.length; j++) {
        means[count++] = (shares[i] + shares[j]) / 2;
      }
    }
    return RobustStatistics.median(Arrays.copyOf(means, count));
  }

  /** Whether a share is clearly another feel than what was asked for. */
  public static boolean isAnother(double swing, double asked) {
    return Math.abs(swing - asked) >= ANOTHER_FEEL;
  }

  /** The slots as the player kept them: those asked for, unless the feel was clearly another. */
  static Slots slots(Slots asked, OptionalDouble swing) {
    return swing.isPresent() && isAnother(swing.getAsDouble(), asked.swing())
        ? asked.withSwing(swing.getAsDouble())
        : asked;
  }
}
