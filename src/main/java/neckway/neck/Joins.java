package neckway.neck;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Every join between two neighbours, from the cleanest to the most awkward.
 *
 * <p>The order is common practice, no published source: a finger that stays down comes before a
 * change of fingers; then the shorter slide; then the first finger, which carries the whole frame
 * of the hand, before the fourth, which only stretches ahead of it, and both before the second and
 * third, which leave fingers hanging on either side; then a join with no further move of the hand
 * beside it; then the inner strings, where there is line on both sides of the join.
 */
public final class Joins {
  private static final String[] FINGERS = {"open string", "first", "second", "third", "fourth"};

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
    boolean edge = string.number() == 1 || string.number() == strings;
    Shape restless = null;
    if (movesBeside(upper, string, strings)) {
      restless = upper.shape();
    } else if (movesBeside(lower, string, strings)) {
      restless = lower.shape();
    }
    double offMiddle = Math.abs(string.number() - (strings + 1) / 2.0);
    boolean led = false;
    if (low.finger() > 0 && low.finger() == middleAbove.finger()) {
      candidates.add(
          new Candidate(
              string, low, middleAbove, Join.Lead.LOW_TO_MIDDLE, restless, edge, offMiddle));
      led = true;
    }
    if (middle.finger() == top.finger()) {
      candidates.add(
          new Candidate(string, middle, top, Join.Lead.MIDDLE_TO_TOP, restless, edge, offMiddle));
      led = true;
    }
    if (!led) {
      candidates.add(
          new Candidate(string, middle, top, Join.Lead.CHANGE, restless, edge, offMiddle));
    }
  }

  private static boolean movesBeside(PlacedShape shape, GuitarString string, int strings) {
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
      Shape restless,
      boolean edge,
      double offMiddle) {
    static final Comparator<Candidate> CLEANEST_FIRST =
        Comparator.comparing((Candidate c) -> c.lead == Join.Lead.CHANGE)
            .thenComparing(Candidate::travel)
            .thenComparing(Candidate::fingerOrder)
            .thenComparing(c -> c.restless != null)
            .thenComparing(Candidate::edge)
            .thenComparing(Candidate::offMiddle)
            .thenComparing(c -> c.string.number());

    int travel() {
      return lands.place().fret() - leaves.place().fret();
    }

    int fingerOrder() {
      return switch (lands.finger()) {
        case 1 -> 0;
        case 4 -> 1;
        default -> 2;
      };
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
          why());
    }

    private String why() {
      StringBuilder why = new StringBuilder();
      if (lead == Join.Lead.CHANGE) {
        why.append("No finger stays down: the ")
            .append(FINGERS[leaves.finger()])
            .append(" lets go and the ")
            .append(FINGERS[lands.finger()])
            .append(" has to find its fret ")
            .append(travel())
            .append(" higher.");
      } else {
        why.append("The ")
            .append(FINGERS[lands.finger()])
            .append(" finger stays down and slides ")
            .append(travel())
            .append(" frets")
            .append(travel() > 2 ? ", a longer way" : "")
            .append(ofFinger())
            .append('.');
      }
      if (restless != null) {
        why.append(" The hand moves again beside it, inside the ")
            .append(restless.spoken())
            .append(" shape.");
      }
      if (edge) {
        why.append(" On an outer string it falls together with the turn.");
      }
      return why.toString();
    }

    private String ofFinger() {
      return switch (lands.finger()) {
        case 1 -> "; the whole hand goes with it";
        case 4 -> "; the hand follows behind";
        default -> "; the fingers beside it must lift";
      };
    }
  }
}
