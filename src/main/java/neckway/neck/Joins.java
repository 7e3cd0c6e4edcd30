package neckway.neck;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Every join between two neighbours, from the cleanest to the most awkward.
 *
 * <p>What tells two joins apart, the weightiest first (common practice, no published source):
 *
 * <ol>
 *   <li>a finger that stays down before a change of fingers;
 *   <li>the shorter slide, two frets before three;
 *   <li>an inner string before an outer one, where the run also turns round;
 *   <li>the first finger, which takes the whole hand along, then the third, the fourth, the second;
 *   <li>no other shift on a string beside it;
 *   <li>nearer the middle of the strings, where both shapes are played;
 *   <li>the higher string.
 * </ol>
 */
public final class Joins {
  private static final List<Integer> FINGERS_USUAL_FIRST = List.of(1, 3, 4, 2);

  private Joins() {}

  /**
   * Joins between two shapes of a chain.
   *
   * @param lower the shape below
   * @param upper its neighbour, which starts on the second note of the lower one
   * @param strings from the lowest-sounding to the highest
   */
  public static List<Join> between(
      PlacedShape lower, PlacedShape upper, List<GuitarString> strings) {
    List<Candidate> candidates = new ArrayList<>();
    for (GuitarString string : strings) {
      addOn(string, lower, upper, strings.size(), candidates);
    }
    candidates.sort(Candidate.CLEANEST_FIRST);
    List<Join> joins = new ArrayList<>();
    for (Candidate candidate : candidates) {
      joins.add(candidate.join(lower.shape(), upper.shape(), joins.size() + 1));
    }
    return joins;
  }

  private static void addOn(
      GuitarString string,
      PlacedShape lower,
      PlacedShape upper,
      int strings,
      List<Candidate> candidates) {
    PlacedNote low = lower.first(string);
    PlacedNote middle = lower.second(string);
    PlacedNote middleAbove = upper.first(string);
    PlacedNote top = upper.second(string);
    boolean outer = string.number() == 1 || string.number() == strings;
    Optional<Shape> shiftsAgain =
        Stream.of(upper, lower)
            .filter(shape -> shiftsBeside(shape, string, strings))
            .map(PlacedShape::shape)
            .findFirst();
    double offMiddle = Math.abs(string.number() - (strings + 1) / 2.0);
    boolean led = false;
    if (low.finger() > 0 && low.finger() == middleAbove.finger()) {
      candidates.add(
          new Candidate(
              string, low, middleAbove, Join.Lead.LOW_TO_MIDDLE, shiftsAgain, outer, offMiddle));
      led = true;
    }
    if (middle.finger() == top.finger()) {
      candidates.add(
          new Candidate(
              string, middle, top, Join.Lead.MIDDLE_TO_TOP, shiftsAgain, outer, offMiddle));
      led = true;
    }
    if (!led) {
      candidates.add(
          new Candidate(string, middle, top, Join.Lead.CHANGE, shiftsAgain, outer, offMiddle));
    }
  }

  private static boolean shiftsBeside(PlacedShape shape, GuitarString string, int strings) {
    int number = string.number();
    int hand = shape.hand(string);
    return number > 1 && shape.hand(new GuitarString(number - 1)) != hand
        || number < strings && shape.hand(new GuitarString(number + 1)) != hand;
  }

  private record Candidate(
      GuitarString string,
      PlacedNote leaves,
      PlacedNote lands,
      Join.Lead lead,
      Optional<Shape> shiftsAgain,
      boolean outer,
      double offMiddle) {
    static final Comparator<Candidate> CLEANEST_FIRST =
        Comparator.comparing(Candidate::changesFingers)
            .thenComparing(Candidate::travel)
            .thenComparing(Candidate::outer)
            .thenComparing(Candidate::fingerOrder)
            .thenComparing(Candidate::shiftsBeside)
            .thenComparing(Candidate::offMiddle)
            .thenComparing(c -> c.string.number());

    int travel() {
      return lands.place().fret() - leaves.place().fret();
    }

    int fingerOrder() {
      return FINGERS_USUAL_FIRST.indexOf(lands.finger());
    }

    boolean changesFingers() {
      return lead == Join.Lead.CHANGE;
    }

    boolean shiftsBeside() {
      return shiftsAgain.isPresent();
    }

    Join join(Shape lower, Shape upper, int rank) {
      return new Join(
          lower,
          upper,
          string,
          lands.finger(),
          leaves.finger(),
          leaves.place().fret(),
          lands.place().fret(),
          lead,
          rank,
          shiftsAgain,
          outer);
    }
  }
}
