package neckway.desk.choose;

import java.util.List;
import java.util.Optional;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Join;
import neckway.neck.Place;
import neckway.neck.Shape;
import neckway.neck.Tuning;

/**
 * What is on a neck that is drawn, with nothing said of pixels.
 *
 * @param tuning the strings
 * @param firstLine the fret wire at the nut's end, 0 for the nut
 * @param lastLine the fret wire at the other end
 * @param marks the stands that could be chosen, low to high
 * @param windows the hand in its chosen stands
 * @param dots the notes
 * @param bridges the joins
 */
public record NeckPicture(
    Tuning tuning,
    int firstLine,
    int lastLine,
    List<Mark> marks,
    List<Window> windows,
    List<Dot> dots,
    List<Bridge> bridges) {

  public NeckPicture {
    marks = List.copyOf(marks);
    windows = List.copyOf(windows);
    dots = List.copyOf(dots);
    bridges = List.copyOf(bridges);
  }

  /** Which of two looks a stand has, so that neighbours differ; by hue and by form. */
  public enum Side {
    LOWER,
    UPPER;

    /** Of a stand counted from the lowest. */
    static Side of(int stand) {
      return stand % 2 == 0 ? LOWER : UPPER;
    }
  }

  /**
   * A stand that could be chosen.
   *
   * @param shape its shape
   * @param start fret of its first note
   * @param from the lowest fret that the hand covers
   * @param to the highest
   * @param hands the frets under the first finger, in the order of the way up
   * @param chosen its look, where it is in the chain
   */
  public record Mark(
      Shape shape, int start, int from, int to, List<Integer> hands, Optional<Side> chosen) {
    public Mark {
      hands = List.copyOf(hands);
    }
  }

  /**
   * The hand in one stand over some neighbouring strings: four frets wide.
   *
   * @param hand the fret under the first finger
   * @param lowest the lowest-sounding string
   * @param highest the highest-sounding string
   * @param inPair whether its stand is one of the chosen pair
   */
  public record Window(
      Side side, int hand, GuitarString lowest, GuitarString highest, boolean inPair) {
    /** The last fret under the hand. */
    public int lastFret() {
      return hand + 3;
    }
  }

  /**
   * A note on the neck.
   *
   * @param side its stand's look; empty where two stands share it
   * @param label what stands on it
   * @param tonic whether it is the key's own note
   * @param inPair whether a stand of the chosen pair has it
   */
  public record Dot(
      Place place, Optional<Side> side, String label, boolean tonic, boolean inPair) {}

  /**
   * A join between two stands.
   *
   * @param pair counted from the lowest
   * @param join the join
   * @param taken the ways on which it is taken, none, one or both
   * @param inPair whether it is of the chosen pair
   */
  public record Bridge(int pair, Join join, List<Direction> taken, boolean inPair) {
    public Bridge {
      taken = List.copyOf(taken);
    }
  }
}
