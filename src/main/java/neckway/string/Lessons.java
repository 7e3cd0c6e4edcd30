package neckway.string;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import neckway.hear.RobustStatistics;
import neckway.neck.GuitarString;
import neckway.neck.Place;

/**
 * Gathers what a run teaches of the guitar: from notes whose place is certain without their own
 * sound, heard in clean sound, near enough to what is known to be no mistake.
 */
public final class Lessons {
  /** A place is certain from this probability on, its own note's sound left out of account. */
  static final double CERTAIN = 0.99;

  /** A estimate vaguer than this teaches nothing, standard error of ln B. */
  static final double VAGUE = 0.12;

  private static final double FAR_DEVIATIONS = 3;

  /**
   * Median distance of the certain notes from the profile, standard deviations. Measured: 0.08 to
   * 0.46 on 52 takes with the profile of their guitar, 1.45 to 54 on 64 with another's, of the same
   * make or not.
   */
  private static final double MOST_DEVIATIONS = 1;

  /** Fewer certain notes do not tell whether the guitar is the one that was learnt. */
  private static final int FEWEST_CERTAIN = 5;

  private static final double LN_PER_FRET = Math.log(2) / 6;

  private final GuitarProfile guitar;
  private final Map<GuitarString, Lesson> byString = new TreeMap<>();
  private final List<Double> certain = new ArrayList<>();

  public Lessons(GuitarProfile guitar) {
    this.guitar = guitar;
  }

  /**
   * A note.
   *
   * @param place where it was played, most likely
   * @param p probability of that place, the note's own sound left out of account
   * @param estimate what its sound tells
   */
  public void note(Place place, double p, StiffnessEstimate estimate) {
    if (p < CERTAIN || estimate.drivenEvidence() > 0 || estimate.standardError() > VAGUE) {
      return;
    }
    StringProfile string = guitar.of(place.string());
    double lnOpen = estimate.lnStiffness() - LN_PER_FRET * place.fret();
    double deviations =
        Math.abs(lnOpen - string.lnStiffness())
            / Math.hypot(string.spread(), estimate.standardError());
    certain.add(deviations);
    if (deviations <= FAR_DEVIATIONS) {
      byString.merge(place.string(), new Lesson(place.string(), 1, lnOpen), Lesson::and);
    }
  }

  /** Whether the certain notes lie too far from what was learnt of their strings. */
  public boolean areOfAnotherGuitar() {
    return certain.size() >= FEWEST_CERTAIN
        && RobustStatistics.median(certain.stream().mapToDouble(Double::doubleValue).toArray())
            > MOST_DEVIATIONS;
  }

  /** What was gathered, a lesson for each string that taught something. */
  public List<Lesson> all() {
    return new ArrayList<>(byString.values());
  }
}
