package neckway.neck;

import java.util.Optional;
import neckway.words.Wording;

/**
 * A place where the hand can go from a shape to the next one up, and back.
 *
 * <p>On the join's string three notes are played: the lower shape's two and the upper shape's
 * second. The middle one belongs to both shapes. Either the finger that plays the lower note slides
 * to the middle one, which is then the landing note, or the finger that plays the middle note goes
 * on to the top one. Coming down is the same shift backwards: the finger that led up leads down,
 * and the landing note is where it arrives, the lower or the middle note.
 *
 * @param lower the shape below
 * @param upper the shape above
 * @param string where the hand goes
 * @param finger the finger that plays the landing note going up
 * @param downFinger the finger that plays the landing note coming down: the same one, unless
 *     fingers change
 * @param from fret that the hand leaves, going up
 * @param to fret where it lands, going up
 * @param lead whether one finger stays down, and between which notes
 * @param rank 1 is the cleanest of this pair of shapes
 * @param shiftsAgain the shape inside which the hand shifts again on a string beside it, if any
 * @param outer whether it is on an outer string, where the run also turns round
 */
public record Join(
    Shape lower,
    Shape upper,
    GuitarString string,
    int finger,
    int downFinger,
    int from,
    int to,
    Lead lead,
    int rank,
    Optional<Shape> shiftsAgain,
    boolean outer) {
  /** A slide over more frets than this is a longer way. */
  private static final int USUAL_TRAVEL = 2;

  /** How the hand goes. */
  public enum Lead {
    /** One finger stays down and slides between the lower note and the middle one. */
    LOW_TO_MIDDLE,
    /** One finger stays down and slides between the middle note and the top one. */
    MIDDLE_TO_TOP,
    /** The finger on the middle note lifts, and another one takes the top note. */
    CHANGE
  }

  /** Frets from where the shift begins to where it ends. */
  public int travel() {
    return to - from;
  }

  /** In a sentence or more, in the language that is spoken, what makes it clean or awkward. */
  public String why() {
    StringBuilder why = new StringBuilder(lead == Lead.CHANGE ? change() : slide());
    shiftsAgain.ifPresent(
        shape -> why.append(Wording.of("music.join.shiftsAgain", shape.spoken())));
    if (outer) {
      why.append(Wording.of("music.join.outer"));
    }
    return why.toString();
  }

  private String change() {
    return Wording.of(
        "music.join.change", Wording.ordinal(downFinger), Wording.ordinal(finger), travel());
  }

  private String slide() {
    String way = travel() > USUAL_TRAVEL ? "music.join.slide.far" : "music.join.slide.near";
    return Wording.of(way, Wording.ordinal(finger), travel(), whatTheHandDoes());
  }

  private String whatTheHandDoes() {
    return switch (finger) {
      case 1 -> Wording.of("music.join.hand.goes");
      case 4 -> Wording.of("music.join.hand.follows");
      default -> Wording.of("music.join.hand.lifts");
    };
  }

  /** Whether the finger is one by which this join can be asked for in a direction. */
  public boolean isAskedForBy(int asked, Direction direction) {
    return asked == finger || direction == Direction.DOWN && asked == downFinger;
  }
}
