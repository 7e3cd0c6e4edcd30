package neckway.hear;

import java.util.Optional;
import neckway.hear.signal.FrontEnd;
import neckway.hear.signal.SoundLevels;

/**
 * The question which note an attack began. At each hop the pitch of what is new is estimated; it is
 * told once it is clear and nothing else would sound like it: no click, hum, mixture of two notes
 * or fret that is passed. Numbers set on development takes (docs/decisions/ear.md), where none is
 * said to be otherwise; ages are from the attack on.
 */
final class AttackNaming {
  /** Age at which an attack is first looked into: nearly a period of an E2. */
  private static final double EARLIEST_SECONDS = 0.011;

  /** Age at which it is given up. */
  private static final double LATEST_SECONDS = 0.1;

  /** What sounds from the first moment on began before the take. */
  private static final double START_SECONDS = 0.01;

  /** An estimate less clear than this counts for nothing. */
  private static final double LEAST_CLARITY = 0.75;

  /** Up to this age two answers as clear as each other are none. */
  private static final double TORN_SECONDS = 0.06;

  /** Estimates agree within this many semitones. */
  private static final double AGREE_SEMITONES = 0.2;

  /** The same from {@value #LOOSE_SECONDS} s on, when the windows move away from the attack. */
  private static final double AGREE_LOOSELY_SEMITONES = 0.3;

  private static final double LOOSE_SECONDS = 0.06;

  /** Estimates in a row of one pitch that a multiple of its period must not undo. */
  private static final int STEADY_ESTIMATES = 3;

  /** From this clarity on a multiple is a low note's own period. */
  private static final double OWN_CLARITY = 0.95;

  /** Lower pitches than this, F#4, are not looked at for a click's decay. */
  private static final double CLICK_PITCH = 66;

  /** From this clarity on, what decays fast may be a note struck hard. */
  private static final double HELD_CLARITY = 0.93;

  /** Nothing lower than this, E5, is mistaken for a click on the beat or before the first note. */
  private static final double HIGH_PITCH = 76;

  /** Age up to which a high sound before the first note may be a click. */
  private static final double FIRST_CLICK_SECONDS = 0.06;

  /** An attack is on the beat within this time. */
  private static final double BEAT_SECONDS = 0.012;

  /** Age up to which a high sound on the beat may be a click's rest. */
  private static final double BEAT_CLICK_SECONDS = 0.05;

  /**
   * On the beat the same pitch is struck again only with this share of the sound new. Clicks on a
   * note that rings left 0.30 to 0.42 of it new, and 118 of 119 notes truly struck again 0.49 or
   * more.
   */
  private static final double BEAT_NOVELTY = 0.5;

  /** On the beat the same pitch is struck again only with this much of a rise over 1.5 kHz. */
  private static final double BEAT_HIGH_RISE_DB = 3;

  /** Age from which the newest sound alone may contradict. */
  private static final double CONTRADICTED_SECONDS = 0.03;

  /** With less of a rise a note a semitone on may be a fret passed in a slide. */
  private static final double PASSING_RISE_DB = 2.6;

  /** Age up to which it may. */
  private static final double PASSING_SECONDS = 0.075;

  /** With less of a rise than these an attack is weak. */
  private static final double WEAK_RISE_DB = 1.3;

  private static final double WEAK_HIGH_RISE_DB = 0.5;

  /** What a weak attack must show. */
  private static final double WEAK_NOVELTY = 0.25;

  private static final double WEAK_CLARITY = 0.95;
  private static final int WEAK_AGREEING = 5;
  private static final double WEAK_SECONDS = 0.04;

  /** Share of the sound that must be new for the same pitch to be struck again. */
  private static final double STRUCK_AGAIN_NOVELTY = 0.2;

  /** Rise with which the same pitch is struck again. */
  private static final double STRUCK_AGAIN_RISE_DB = 2.5;

  /** The same where both the whole spectrum and that over 1.5 kHz have risen by this much. */
  private static final double STRUCK_AGAIN_BOTH_DB = 1.2;

  /** Notes with longer periods, under 71 Hz, show them one by one in the spectrum. */
  private static final double PULSING_SECONDS = 0.014;

  /** Rise with which such a note is struck again, this long after its onset at the earliest. */
  private static final double PULSING_RISE_DB = 4;

  private static final double PULSING_GAP_SECONDS = 0.12;

  /** Age from which the same pitch, not struck again, is the old note going on. */
  private static final double SAME_PITCH_SECONDS = 0.05;

  /** With more of a rise a note is plucked, with less hammered or pulled. */
  private static final double PLUCK_RISE_DB = 1.2;

  private final FrontEnd front;
  private final PossibleAttack attack;
  private final SoundingNote note;
  private final NewNotePitch naming;
  private final PitchChange change;
  private final Mains mains;
  private final Decay decay;
  private final Clearness clearness;

  private double ageSeconds;
  private double pitch;
  private double clarity;
  private double novelty;
  private double periodFrames;
  private double agreedClarity;
  private double agreedPeriodFrames;

  /**
   * @param attack asked about, and closed once it is named
   * @param note the one that sounds
   * @param pitches tell how the guitar is tuned
   */
  AttackNaming(
      FrontEnd front,
      PossibleAttack attack,
      SoundingNote note,
      NewNotePitch naming,
      PitchChange change,
      SoundLevels levels,
      SettledPitches pitches) {
    this.front = front;
    this.attack = attack;
    this.note = note;
    this.naming = naming;
    this.change = change;
    mains = new Mains(front, levels);
    decay = new Decay(front, levels);
    clearness = new Clearness(pitches);
  }

  /**
   * Looks into the open attack.
   *
   * @param end frame after the newest sample
   * @return the note that it began, once it is clear
   */
  Optional<NewNote> judge(long end) {
    ageSeconds = attack.ageSeconds(end);
    if (ageSeconds < EARLIEST_SECONDS) {
      return Optional.empty();
    }
    if (ageSeconds > LATEST_SECONDS) {
      attack.giveUp();
      return Optional.empty();
    }
    if (!estimate(end) || !isNote(end) || !isClear() || contradicted(end) || maybeClickOnBeat()) {
      return Optional.empty();
    }
    boolean same = note.isOf(pitch);
    if (note.sounds() && !same && attack.riseDb() < PASSING_RISE_DB) {
      if (maybePassing()) {
        attack.pass(pitch, periodFrames);
        return Optional.empty();
      }
      if (attack.passed(pitch)) {
        return found(arrivedFrom(end), HeardNote.Start.SLIDE);
      }
    }
    if (tooWeak()) {
      return Optional.empty();
    }
    if (!same || struckAgain(end)) {
      boolean plucked = attack.riseDb() > PLUCK_RISE_DB;
      return found(attack.onset(), plucked ? HeardNote.Start.PLUCK : HeardNote.Start.LEGATO);
    }
    if (ageSeconds > SAME_PITCH_SECONDS) {
      attack.close();
    }
    return Optional.empty();
  }

  private Optional<NewNote> found(long onset, HeardNote.Start start) {
    attack.close();
    return Optional.of(new NewNote(onset, pitch, periodFrames, start, 0));
  }

  /** Estimates the pitch of what is new; false where it counts for nothing. */
  private boolean estimate(long end) {
    int start = front.index(attack.onset()) / 2;
    int to = front.index(end) / 2;
    boolean found = naming.name(front.y, start, to, note.ringingPeriods());
    pitch = naming.pitch();
    clarity = naming.clarity();
    novelty = naming.novelty();
    periodFrames = naming.periodFrames();
    if (found && maybeMultiple()) {
      pitch = attack.agreedPitch();
      clarity = agreedClarity;
      periodFrames = agreedPeriodFrames;
    }
    if (!found || clarity < LEAST_CLARITY || naming.torn() && ageSeconds < TORN_SECONDS) {
      attack.disagree();
      return false;
    }
    attack.estimate(pitch, ageSeconds > LOOSE_SECONDS ? AGREE_LOOSELY_SEMITONES : AGREE_SEMITONES);
    agreedClarity = clarity;
    agreedPeriodFrames = periodFrames;
    return true;
  }

  /**
   * Whether a period is no more than a multiple of the one that the attack has had so far: what
   * else sounds repeats with that, too. A low note that is heard at last by its own period is
   * clearer than this.
   */
  private boolean maybeMultiple() {
    return attack.agreeing() >= STEADY_ESTIMATES
        && clarity < OWN_CLARITY
        && NewNotePitch.multiple(periodFrames / agreedPeriodFrames);
  }

  /** Whether it is a note and nothing else that has a pitch. */
  private boolean isNote(long end) {
    boolean another = !note.isOf(pitch);
    if (pitch > CLICK_PITCH
        && decay.diedAway(attack.onset(), end, another && clarity > HELD_CLARITY)) {
      attack.disagree();
      return false;
    }
    boolean before = attack.onset() < START_SECONDS * front.rateHz;
    boolean firstClick = pitch > HIGH_PITCH && !note.sounds() && ageSeconds < FIRST_CLICK_SECONDS;
    return !before
        && !firstClick
        && !mains.maybeHum(pitch, end)
        && !(attack.riseDb() < WEAK_RISE_DB && Mains.near(pitch));
  }

  private boolean isClear() {
    double periodSeconds = periodFrames / (front.rateHz / 2);
    return clearness.isClear(pitch, periodSeconds, clarity, attack.agreeing(), ageSeconds)
        && !(note.sounds() && Clearness.maybeBetween(note.distance(pitch), clarity, ageSeconds));
  }

  /** Whether the newest sound alone says something else; then the estimates start again. */
  private boolean contradicted(long end) {
    boolean contradicted =
        ageSeconds > CONTRADICTED_SECONDS && naming.contradicted(front.y, front.index(end) / 2);
    if (contradicted) {
      attack.disagree();
    }
    return contradicted;
  }

  private boolean maybeClickOnBeat() {
    if (!front.clicks.near(attack.onset(), BEAT_SECONDS * front.rateHz)) {
      return false;
    }
    boolean goesOn = novelty < BEAT_NOVELTY || attack.highRiseDb() < BEAT_HIGH_RISE_DB;
    return note.isOf(pitch) && goesOn || pitch > HIGH_PITCH && ageSeconds < BEAT_CLICK_SECONDS;
  }

  /** Whether this may be a fret that is passed in a slide. */
  private boolean maybePassing() {
    return note.distance(pitch) < PitchSteps.NEXT_FRET && ageSeconds < PASSING_SECONDS;
  }

  /** Where the fret that was passed breaks off. */
  private long arrivedFrom(long end) {
    int to = front.index(end);
    return end - to + 2L * change.find(front.y, to / 2, attack.passingPeriodFrames());
  }

  /** Whether the attack is weak and what sounds does not make up for it. */
  private boolean tooWeak() {
    boolean weak =
        note.sounds() && attack.riseDb() < WEAK_RISE_DB && attack.highRiseDb() < WEAK_HIGH_RISE_DB;
    return weak
        && (novelty < WEAK_NOVELTY
            || clarity < WEAK_CLARITY
            || attack.agreeing() < WEAK_AGREEING
            || ageSeconds < WEAK_SECONDS);
  }

  /** Whether the attack is enough for the same pitch; a very low note pulses by itself. */
  private boolean struckAgain(long end) {
    if (novelty <= STRUCK_AGAIN_NOVELTY) {
      return false;
    }
    double rise = attack.riseDb();
    if (note.periodFrames() > PULSING_SECONDS * front.rateHz / 2) {
      return rise > PULSING_RISE_DB && end - note.onsetFrame() > PULSING_GAP_SECONDS * front.rateHz;
    }
    return rise > STRUCK_AGAIN_RISE_DB
        || Math.min(rise, attack.highRiseDb()) > STRUCK_AGAIN_BOTH_DB;
  }
}
