package neckway.review.words;

import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import neckway.hand.ShiftVerdict;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.PlannedShift;
import neckway.neck.Step;
import neckway.review.HeardAs;
import neckway.review.ReviewedShift;

/**
 * How a wrong note missed the one that was due, as far as its pitch and the hand's planned way
 * there show it. What they do not show is {@link Kind#OTHER}.
 *
 * @param kind the way in which it missed
 * @param semitones from the note due to the one heard
 */
record Miss(Kind kind, int semitones) {
  /** Ways to miss a note, each worked on in a way of its own. */
  enum Kind {
    /** The open string sounded. */
    OPEN,
    /** The hand landed short of the landing, seen from where it came. */
    LANDED_SHORT,
    /** The hand landed beyond it. */
    LANDED_FAR,
    /** The hand moves a fret inside the shape here, and it sounded as if it had not. */
    HAND_STAYED,
    /** A fret off at one end of the stretch from the first to the fourth finger. */
    REACH,
    /** The same fret of a string beside it. */
    NEXT_STRING,
    OTHER
  }

  /** Frets by which a hand that lands beside its place is off (common practice, no source). */
  private static final int MOST_BESIDE = 2;

  /** From the first to the fourth finger. */
  private static final int STRETCH_FINGERS = 3;

  /**
   * How a step was missed.
   *
   * @param midi the pitch that was heard in its place
   */
  static Miss of(Played played, Step due, int midi) {
    return new Miss(kind(played, due, midi), midi - due.midi());
  }

  private static Kind kind(Played played, Step due, int midi) {
    int off = midi - due.midi();
    if (due.finger() == 0) {
      return Kind.OTHER;
    }
    if (midi == played.drill().tuning().openMidi(due.place().string())) {
      return Kind.OPEN;
    }
    if (nextString(played, due, midi).isPresent()) {
      return Kind.NEXT_STRING;
    }
    return handAsPlanned(played, due) ? byTheHand(played, due, off) : Kind.OTHER;
  }

  /** As the hand was where it is planned. */
  private static Kind byTheHand(Played played, Step due, int off) {
    Optional<PlannedShift> shift = landedBy(played, due);
    if (shift.isPresent()) {
      boolean beyond = (shift.get().direction() == Direction.UP) == off > 0;
      return Math.abs(off) > MOST_BESIDE
          ? Kind.OTHER
          : beyond ? Kind.LANDED_FAR : Kind.LANDED_SHORT;
    }
    if (Math.abs(off) != 1) {
      return Kind.OTHER;
    }
    int moved = movedInside(played, due);
    if (moved == -off) {
      return Kind.HAND_STAYED;
    }
    // where the hand moves, it may be the hand that went too far, and not the finger
    return moved == 0 && otherEnd(played, due).isPresent() ? Kind.REACH : Kind.OTHER;
  }

  /** Whether no shift of the round was heard to be made elsewhere, or not at all. */
  private static boolean handAsPlanned(Played played, Step due) {
    return played.review().shifts().stream()
        .filter(s -> s.planned().round() == played.round(due.index()))
        .noneMatch(s -> s.verdict() == ShiftVerdict.MISSED || s.verdict() == ShiftVerdict.MOVED);
  }

  /** The shift that lands on a step, where nothing says that it was made otherwise. */
  static Optional<PlannedShift> landedBy(Played played, Step due) {
    return played.review().shifts().stream()
        .filter(s -> s.verdict() == ShiftVerdict.MADE || s.verdict() == ShiftVerdict.UNHEARD)
        .map(ReviewedShift::planned)
        .filter(s -> s.landingStep() == due.index())
        .findFirst();
  }

  /** Frets by which the hand moves inside its shape between the note before and this one. */
  private static int movedInside(Played played, Step due) {
    if (due.index() == 0) {
      return 0;
    }
    Step before = played.step(due.index() - 1);
    boolean oneHand = before.stand() == due.stand() && before.finger() > 0;
    return oneHand ? firstFingerFret(due) - firstFingerFret(before) : 0;
  }

  /** Where the first finger is, a finger a fret. */
  private static int firstFingerFret(Step step) {
    return step.place().fret() - step.finger() + 1;
  }

  /** The other note of a step's string and shape, where a stretch of all fingers lies between. */
  static Optional<Step> otherEnd(Played played, Step due) {
    return played.drill().route().steps().stream()
        .filter(s -> s.stand() == due.stand() && s.finger() > 0)
        .filter(s -> s.place().string().equals(due.place().string()))
        .filter(s -> Math.abs(s.finger() - due.finger()) == STRETCH_FINGERS)
        .filter(s -> Math.abs(s.place().fret() - due.place().fret()) >= STRETCH_FINGERS)
        .findFirst();
  }

  /** The string beside the one due on whose same fret a pitch lies, out of reach on the one due. */
  static Optional<GuitarString> nextString(Played played, Step due, int midi) {
    OptionalInt inReach = HeardAs.of(played.drill(), due, midi).fret();
    int string = due.place().string().number();
    return IntStream.of(string - 1, string + 1)
        .filter(s -> inReach.isEmpty() && s >= 1 && s <= played.drill().tuning().strings().size())
        .mapToObj(GuitarString::new)
        .filter(s -> played.drill().tuning().openMidi(s) + due.place().fret() == midi)
        .findFirst();
  }
}
