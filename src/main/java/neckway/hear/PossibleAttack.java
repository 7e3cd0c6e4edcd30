package neckway.hear;

import neckway.hear.signal.FrontEnd;
import neckway.hear.signal.OnsetLocator;
import neckway.hear.signal.SpectralFlux;

/**
 * The question whether there was an attack, and where: a rise of the spectrum opens one, a higher
 * rise soon after belongs to it and may move its instant. It stays open until it is named or given
 * up. Numbers set on development takes (docs/decisions/ear.md), where none is said to be otherwise.
 */
final class PossibleAttack {
  /** Mean rise of the spectrum, dB, that may be an attack; far more often than there are notes. */
  private static final double LEAST_RISE_DB = 0.8;

  /** A note is not struck again sooner than this: 22 notes a second. */
  private static final double LEAST_GAP_SECONDS = 0.045;

  /** What rises higher within this time of an attack belongs to it. */
  private static final double ATTACK_SECONDS = 0.04;

  /** Later, a rise this many times as high is another attack. */
  private static final double ANOTHER_SHARE = 1.3;

  /** With less of a rise than these, the instant may be where the old period breaks off. */
  private static final double SOFT_RISE_DB = 2;

  private static final double SOFT_HIGH_RISE_DB = 1.2;

  /** Log-likelihood ratio from which the instant of an attack is sure. */
  private static final double SURE_ATTACK = 25;

  /** Rise of what the old period leaves from which its break is sure: 12 dB. */
  private static final double SURE_CHANGE = 15;

  /** An instant that moves by more than this makes the pitch's estimates start again. */
  private static final double MOVED_SECONDS = 0.004;

  private final FrontEnd front;
  private final SoundingNote note;
  private final OnsetLocator locator;
  private final PitchChange change;
  private final NewNotePitch naming;

  private boolean open;
  private long onset;
  private long raisedFrame;
  private double riseDb;
  private double highRiseDb;
  private double lastRiseDb;
  private boolean unnamed;
  private long unnamedOnset;

  private int agreeing;
  private double agreedPitch;

  private boolean passing;
  private double passingPitch;
  private double passingPeriodFrames;

  /**
   * @param note the one that sounds
   * @param naming told when the instant moves
   */
  PossibleAttack(FrontEnd front, SoundingNote note, PitchChange change, NewNotePitch naming) {
    this.front = front;
    this.note = note;
    this.change = change;
    this.naming = naming;
    locator = new OnsetLocator(front.rateHz);
  }

  /** Takes the rise of the newest hop, which ends before a frame. */
  void hop(SpectralFlux flux, long end) {
    double rise = flux.risen();
    if (rise >= LEAST_RISE_DB && rise >= lastRiseDb) {
      if (begins(rise, end)) {
        open(end);
      }
      if (open && rise > riseDb && end - raisedFrame <= frames(ATTACK_SECONDS)) {
        riseDb = rise;
        highRiseDb = flux.highRise();
        moveTo(locate(end));
      }
    }
    lastRiseDb = rise;
  }

  private boolean begins(double rise, long end) {
    if (!open) {
      return !note.sounds() || end - note.onsetFrame() > frames(LEAST_GAP_SECONDS);
    }
    return end - raisedFrame > frames(ATTACK_SECONDS) && rise > ANOTHER_SHARE * riseDb;
  }

  private void open(long end) {
    open = true;
    raisedFrame = end;
    riseDb = 0;
    agreeing = 0;
    passing = false;
  }

  /** The frame of the attack. */
  private long locate(long end) {
    int to = front.index(end);
    long found = end - to + locator.find(front.x, to, 2 * note.periodFrames());
    boolean soft = riseDb < SOFT_RISE_DB && highRiseDb < SOFT_HIGH_RISE_DB;
    if (note.sounds() && soft && locator.score() < SURE_ATTACK) {
      int at = change.find(front.y, to / 2, note.periodFrames());
      if (change.gain() > SURE_CHANGE) {
        found = end - to + 2L * at;
      }
    }
    return found;
  }

  private void moveTo(long found) {
    if (Math.abs(found - onset) > frames(MOVED_SECONDS)) {
      agreeing = 0;
    }
    if (found != onset) {
      naming.forget();
    }
    onset = found;
  }

  private double frames(double seconds) {
    return seconds * front.rateHz;
  }

  /**
   * Takes another estimate of its pitch.
   *
   * @param within semitones of the last one, it agrees
   */
  void estimate(double pitch, double within) {
    agreeing = Math.abs(pitch - agreedPitch) < within ? agreeing + 1 : 1;
    agreedPitch = pitch;
  }

  /** The estimates of its pitch so far do not count. */
  void disagree() {
    agreeing = 0;
  }

  /** Estimates of its pitch in a row that agree. */
  int agreeing() {
    return agreeing;
  }

  /** The pitch of the last estimate that counted. */
  double agreedPitch() {
    return agreedPitch;
  }

  /** Its pitch may be a fret that is passed in a slide. */
  void pass(double pitch, double periodFrames) {
    passing = true;
    passingPitch = pitch;
    passingPeriodFrames = periodFrames;
  }

  /** Whether a fret of another pitch was passed. */
  boolean passed(double pitch) {
    return passing && Math.abs(pitch - passingPitch) > PitchSteps.SAME;
  }

  /** Period of the fret that was passed. */
  double passingPeriodFrames() {
    return passingPeriodFrames;
  }

  /** It is named, or it is none. */
  void close() {
    open = false;
  }

  /** It cannot be named; its pitch may come out later. */
  void giveUp() {
    open = false;
    unnamed = true;
    unnamedOnset = onset;
  }

  /** A note was told: an attack given up before it is past. */
  void forgetUnnamed() {
    unnamed = false;
  }

  /** Whether one was given up less than some seconds before a frame and no note told since. */
  boolean unnamedWithin(double seconds, long frame) {
    return unnamed && frame - unnamedOnset < frames(seconds);
  }

  /** The frame of the one given up. */
  long unnamedOnset() {
    return unnamedOnset;
  }

  boolean isOpen() {
    return open;
  }

  /** Its frame. */
  long onset() {
    return onset;
  }

  /** Seconds from it to a frame. */
  double ageSeconds(long end) {
    return (end - onset) / front.rateHz;
  }

  /** Highest mean rise over the bands, dB. */
  double riseDb() {
    return riseDb;
  }

  /** The mean rise over the bands above 1.5 kHz at the same time, dB. */
  double highRiseDb() {
    return highRiseDb;
  }
}
