package neckway.follow;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.OptionalInt;
import neckway.hear.HeardNote;
import neckway.hear.RobustStatistics;

/**
 * What speaks against a heard note being what the ear took it for. All figures are of the ear as it
 * is: of 200 strings struck again none took 60 ms to be named, of those that were only damped half
 * did; of 370 wrong notes five lay more than a quarter of a semitone off, of notes that were named
 * a semitone beside two in three.
 */
final class EarErrorModel {
  /** A string struck again is named sooner than this, or it was only damped. */
  private static final double SLOW_SECONDS = 0.07;

  /**
   * Nobody strikes a string again sooner than this: 15 strokes a second. Common practice, no
   * source; a low string before a bridge pickup beats that fast by itself.
   */
  private static final double SOONEST_STROKE_SECONDS = 0.065;

  /** The same of a fast run, in slots: a string struck twice is so at about half a slot. */
  private static final double SOONEST_STROKE_SLOTS = 0.35;

  /** Tones of which the ear is not sure take it at least this long. */
  private static final double RATHER_SLOW_SECONDS = 0.045;

  /** Nobody hammers on or pulls off as far as this. */
  private static final int FARTHEST_LEGATO = 20;

  /** Farther than this from a semitone, the next one may be meant. */
  private static final double BETWEEN_SEMITONES = 0.27;

  private static final int REMEMBERED = 15;

  /** Semitones from a tone to its harmonics 2 to 8 in equal temperament. */
  private static final int[] HARMONICS = {12, 19, 24, 28, 31, 34, 36};

  /**
   * The doubts about a note.
   *
   * @param madeUp there may have been no note
   * @param harmonic its pitch may be that of which the true one is a harmonic, or its octave
   * @param leaning semitones to the true pitch, 1 or -1, if it lies nearly between two; else 0
   */
  record Doubt(boolean madeUp, boolean harmonic, int leaning) {}

  private final Deque<Double> offSemitone = new ArrayDeque<>();
  private final double soonestStrokeSeconds;
  private OptionalInt midiBefore = OptionalInt.empty();
  private OptionalInt midiNow = OptionalInt.empty();
  private double timeBefore = Double.NEGATIVE_INFINITY;

  EarErrorModel(double slotSeconds) {
    soonestStrokeSeconds = Math.min(SOONEST_STROKE_SECONDS, SOONEST_STROKE_SLOTS * slotSeconds);
  }

  /**
   * Takes the next note.
   *
   * @param inPlaceOfLast whether the last one was no note of its own
   */
  Doubt heard(HeardNote note, boolean inPlaceOfLast) {
    if (!inPlaceOfLast) {
      midiBefore = midiNow;
    }
    midiNow = OptionalInt.of(note.midi());
    boolean again = midiBefore.equals(midiNow);
    double earDelay = note.decided() - note.time();
    boolean tooSoon = note.time() - timeBefore < soonestStrokeSeconds;
    timeBefore = note.time();
    boolean madeUp = again && (earDelay >= SLOW_SECONDS || tooSoon) || tooFarWithoutAttack(note);
    return new Doubt(madeUp, again || earDelay >= RATHER_SLOW_SECONDS, leaning(note));
  }

  /** Whether a pitch so many semitones up is a low harmonic's. */
  static boolean isHarmonic(int semitones) {
    return Arrays.binarySearch(HARMONICS, semitones) >= 0;
  }

  /** The last note but one, where it had the pitch of a note. */
  boolean isPitchBefore(HeardNote last) {
    return midiBefore.isPresent() && midiBefore.getAsInt() == last.midi();
  }

  /** A note was right: so it is that the guitar is tuned. */
  void right(HeardNote note) {
    offSemitone.addLast(note.pitch() - note.midi());
    if (offSemitone.size() > REMEMBERED) {
      offSemitone.removeFirst();
    }
  }

  private boolean tooFarWithoutAttack(HeardNote note) {
    return midiBefore.isPresent()
        && note.start() != HeardNote.Start.PLUCK
        && Math.abs(note.midi() - midiBefore.getAsInt()) >= FARTHEST_LEGATO;
  }

  private int leaning(HeardNote note) {
    if (offSemitone.isEmpty()) {
      return 0;
    }
    double tuning = RobustStatistics.median(offSemitone.stream().mapToDouble(off -> off).toArray());
    double off = note.pitch() - note.midi() - tuning;
    return Math.abs(off) < BETWEEN_SEMITONES ? 0 : off > 0 ? 1 : -1;
  }
}
