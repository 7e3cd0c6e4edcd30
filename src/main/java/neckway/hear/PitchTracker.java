package neckway.hear;

import java.util.Optional;
import neckway.hear.signal.FrontEnd;
import neckway.hear.signal.PeriodFinder;
import neckway.hear.signal.SoundEnergy;

/**
 * Follows the pitch of the note that sounds, and finds the note that comes without an attack:
 * hammered, pulled, slid, or drowned by an overdriven amp. Numbers set on development takes
 * (docs/decisions/ear.md), where none is said to be otherwise.
 */
final class PitchTracker {
  /** A note's pitch is followed from this age on, when its attack is past. */
  private static final double LEAST_AGE_SECONDS = 0.04;

  /** Sound that one estimate is of: a good two periods of the lowest common note, 60 Hz. */
  private static final double WINDOW_SECONDS = 0.034;

  /** An estimate less clear than this counts for nothing. */
  private static final double LEAST_CLARITY = 0.93;

  /** Nearer to the note's pitch than this, an estimate is of the note. */
  private static final double OWN_SEMITONES = 0.5;

  /** Further from it than this, an estimate is of another pitch; between, of neither. */
  private static final double ANOTHER_SEMITONES = 0.65;

  /** Estimates are steady within this. */
  private static final double STEADY_SEMITONES = 0.3;

  /** A fret heard this long ago may have been passed on the way to the one that sounds. */
  private static final double PASSING_SECONDS = 0.2;

  /** An attack that could not be named is this much older than its pitch, at most. */
  private static final double UNNAMED_SECONDS = 0.35;

  /** Steady estimates of a pitch that is another note. */
  private static final int PLAIN_ESTIMATES = 4;

  /** The same of the pitch of an attack that could not be named. */
  private static final int STRUCK_ESTIMATES = 9;

  /** The same of a pitch a semitone on, which may be a fret that is passed. */
  private static final int SEMITONE_ESTIMATES = 18;

  /** The same of a pitch after frets that were passed. */
  private static final int SLID_ESTIMATES = 11;

  /** Power of another note, at least, as a share of the note's before it: 25 dB under it. */
  private static final double LEAST_POWER_SHARE = 0.003;

  /** From the old note's end to the new one's start, at least, in a slide. */
  private static final double SLIDE_SECONDS = 0.010;

  /** Fall of what the new period leaves, at least, for it to be an arrival: 13 dB. */
  private static final double LEAST_ARRIVAL = 20;

  /** That fall, at least, as a share of the rise of what the old period leaves. */
  private static final double ARRIVAL_SHARE = 0.35;

  /** A slide whose arrival does not show begins its last fret this long before it is heard. */
  private static final double SLID_LEAD_SECONDS = 0.014;

  private final FrontEnd front;
  private final double rateHz;
  private final PossibleAttack attack;
  private final SoundingNote note;
  private final PitchChange change;
  private final PeriodFinder finder;
  private final PitchHistory others = new PitchHistory();
  private final int longestLag;
  private final int shortestLag;

  /**
   * @param attack the last one
   * @param note the one that sounds; its pitch is followed
   * @param lowestHz lowest pitch that is looked for
   */
  PitchTracker(
      FrontEnd front,
      PossibleAttack attack,
      SoundingNote note,
      PitchChange change,
      double lowestHz) {
    this.front = front;
    this.attack = attack;
    this.note = note;
    this.change = change;
    rateHz = front.rateHz / 2;
    finder = new PeriodFinder(rateHz, lowestHz);
    longestLag = (int) (rateHz / lowestHz);
    shortestLag = (int) (rateHz / Ear.HIGHEST_HZ);
  }

  /** Another note was told: what was heard of other pitches is past. */
  void noteTold() {
    others.clear();
  }

  /**
   * Estimates the pitch anew.
   *
   * @param end frame after the newest sample
   * @return the note that has come without an attack, if one has
   */
  Optional<NewNote> follow(long end) {
    if (!note.sounds() || (end - note.onsetFrame()) / front.rateHz < LEAST_AGE_SECONDS) {
      return Optional.empty();
    }
    int to = front.index(end) / 2;
    int from = to - (int) (WINDOW_SECONDS * rateHz);
    boolean found =
        finder.keeps(front.y, from, to, note.periodFrames(), LEAST_CLARITY)
            || finder.findPeriodOnly(front.y, from, to, shortestLag, longestLag);
    if (!found || finder.clarity() < LEAST_CLARITY) {
      others.interrupt();
      return Optional.empty();
    }
    double pitch = settledPitch(from, to);
    if (note.distance(pitch) < OWN_SEMITONES) {
      note.refine(pitch, finder.periodFrames());
      others.clear();
    } else if (note.distance(pitch) >= ANOTHER_SEMITONES) {
      return another(pitch, end, from, to);
    }
    return Optional.empty();
  }

  private double settledPitch(int from, int to) {
    double period = finder.periodFrames();
    if (period > NewNotePitch.LOW_PERIOD_SECONDS * rateHz) {
      period = finder.onLowPartials(front.y, from, to, period);
    }
    return finder.pitchOf(period);
  }

  /** The note of another pitch, if it has been steady for long enough and is no echo. */
  private Optional<NewNote> another(double pitch, long end, int from, int to) {
    others.add(pitch, end);
    int steady = others.steady(STEADY_SEMITONES);
    long since = end - (long) (PASSING_SECONDS * front.rateHz);
    boolean slid = others.between(note.pitch(), pitch, steady, since);
    if (steady < needed(pitch, slid, end) || attack.isOpen() || isEcho(pitch, from, to)) {
      return Optional.empty();
    }
    return Optional.of(begun(pitch, steady, slid, end, to));
  }

  /** Steady estimates that make a pitch another note. */
  private int needed(double pitch, boolean slid, long end) {
    boolean near = note.distance(pitch) < PitchSteps.NEXT_FRET;
    if (attack.unnamedWithin(UNNAMED_SECONDS, end) && (slid || near)) {
      return STRUCK_ESTIMATES;
    }
    if (near) {
      return SEMITONE_ESTIMATES;
    }
    return slid ? SLID_ESTIMATES : PLAIN_ESTIMATES;
  }

  /** Whether the pitch is the old notes' own, the mains', or of next to nothing. */
  private boolean isEcho(double pitch, int from, int to) {
    return NewNotePitch.multiple(finder.periodFrames() / note.periodFrames())
        || Mains.near(pitch)
        || SoundEnergy.mean(front.y, from, to) <= LEAST_POWER_SHARE * note.power()
        || RingingNotes.explain(front.y, from, to, note.ringingPeriods());
  }

  /** When and how a note began that is heard now; see {@link #slides}. */
  private NewNote begun(double pitch, int steady, boolean slid, long end, int to) {
    long first = others.firstFrame(steady);
    double period = finder.periodFrames();
    int departureAt = change.find(front.y, front.index(first) / 2, note.periodFrames());
    double departure = change.gain();
    int arrivalAt = change.findArrival(front.y, to, period);
    double arrival = change.gain();
    boolean arrived =
        slides(arrivalAt - departureAt, departure, arrival) || slid && arrival > LEAST_ARRIVAL;
    long onset = end - front.index(end) + 2L * (arrived ? arrivalAt : departureAt);
    HeardNote.Start start = arrived || slid ? HeardNote.Start.SLIDE : HeardNote.Start.LEGATO;
    if (slid && !arrived) {
      onset = first - (long) (SLID_LEAD_SECONDS * front.rateHz);
    }
    if (!slid && !arrived && attack.unnamedWithin(UNNAMED_SECONDS, first)) {
      onset = attack.unnamedOnset();
      start = HeardNote.Start.PLUCK;
    }
    return new NewNote(onset, pitch, period, start, steady);
  }

  /**
   * Whether this is a slide. A hammered note and a plucked one break off the old period at once; a
   * slid one does so little by little, and then the new period sets in at once and later.
   *
   * @param gap frames from where the old period breaks off to where the new one sets in
   * @param departure rise of what the old period leaves
   * @param arrival fall of what the new period leaves
   */
  private boolean slides(int gap, double departure, double arrival) {
    return gap > SLIDE_SECONDS * rateHz
        && arrival > LEAST_ARRIVAL
        && arrival > ARRIVAL_SHARE * departure;
  }
}
