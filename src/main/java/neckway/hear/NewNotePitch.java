package neckway.hear;

import neckway.hear.signal.LinearPredictor;
import neckway.hear.signal.PeriodFinder;
import neckway.hear.signal.SoundEnergy;

/**
 * Names the pitch of what began at a possible attack, whatever went on sounding from before: as if
 * all old sound had stopped, as if it all went on, and as if only the last note had stopped. The
 * clearest answer counts; one that repeats only because an old string's period and the new one's
 * have a common multiple does not. Numbers set on development takes (docs/decisions/ear.md).
 */
final class NewNotePitch {
  /** Old notes that may still ring: the last one and two before it. */
  static final int OLD_NOTES = 3;

  /** Notes lower than 222 Hz are sharpened by their string's stiffness. */
  static final double LOW_PERIOD_SECONDS = 0.0045;

  /** Coefficients that the old sound is carried on with, and the past that they are learnt from. */
  private static final int ORDER = 160;

  private static final double PAST_SECONDS = 0.055;

  /** Frames for which old sound is carried on at most. */
  private static final int MOST_CARRIED = 820;

  /** The past ends this long before the attack, whose instant is known to a millisecond or so. */
  private static final double MARGIN_SECONDS = 0.0015;

  /** The same where the attack seems to be placed late. */
  private static final double WIDE_MARGIN_SECONDS = 0.012;

  /** The window begins this long after the attack. */
  private static final double GAP_SECONDS = 0.001;

  /** The same from {@value #OLDER_AGE_SECONDS} s on, so that the noise of the pick is left out. */
  private static final double OLDER_GAP_SECONDS = 0.004;

  private static final double OLDER_AGE_SECONDS = 0.022;
  private static final double LONGEST_WINDOW_SECONDS = 0.045;

  /** From this age on the newest sound is looked at alone, too. */
  private static final double LATE_AGE_SECONDS = 0.024;

  private static final double LATE_WINDOW_SECONDS = 0.016;

  /** Periods that the newest sound holds at least. */
  private static final double LATE_PERIODS = 2.2;

  /** From this age on a low note is settled on its first partials. */
  private static final double SETTLE_AGE_SECONDS = 0.04;

  /** Left out for that, after the attack. */
  private static final double SETTLE_GAP_SECONDS = 0.008;

  /** Sound after an attack of which it is asked how much is new. */
  private static final double NOVEL_SECONDS = 0.025;

  /** Next to no energy; keeps a ratio finite in silence. */
  private static final double NO_ENERGY = 1e-9;

  /**
   * Share of the energy that must be left without the old sound for it to be looked into: -17 dB.
   */
  private static final double LEAST_REST = 0.02;

  /** An answer as clear as this needs no other. */
  private static final double CLEAR = 0.95;

  /** An answer less clear than this gives way easily. */
  private static final double UNCLEAR = 0.8;

  /** Two different answers both as clear as this stand against each other. */
  private static final double CLEAR_ENOUGH = 0.85;

  /** They are as clear as each other within this. */
  private static final double TORN = 0.02;

  /** Answers further apart than this, in semitones, are different. */
  private static final double DIFFERENT_SEMITONES = 0.25;

  /** The newest sound contradicts when it is as clear as this and as far away. */
  private static final double CONTRADICTING = 0.9;

  private static final double CONTRADICTING_SEMITONES = 0.4;

  /** A low note kept to spare must be as clear as this. */
  private static final double LEAST_SPARE_CLARITY = 0.9;

  /** An old note that repeats this well is all there is. */
  private static final double ENOUGH_ALONE = 0.8;

  /** A part of a common multiple counts from this likeness on. */
  private static final double LEAST_PART = 0.45;

  /** Under this likeness a part is none. */
  private static final double NO_PART = 0.2;

  /** Share of the old sound, found by least squares, from which it may have gone on at all. */
  private static final double LEAST_SHARE = 0.4;

  /** Share from which it has gone on for sure. */
  private static final double GOES_ON = 0.75;

  /** Periods are the same within this share, a third of a semitone. */
  private static final double SAME_PERIOD_SHARE = 0.02;

  /** One is a multiple of another within this share, a fifth of a semitone. */
  private static final double MULTIPLE_SHARE = 0.012;

  /** Between twice and three times. */
  private static final double OCTAVE_ROUNDED_UP = 2.5;

  /** Sound before an attack whose level is that of the old notes: two periods of an E2. */
  private static final double BEFORE_SECONDS = 0.025;

  /**
   * Old sound with less than this share of the new sound's power, 20 dB under it, explains none of
   * it. Of 90 takes broken off and begun again, each a guitar, amp, room or noise, 9 stay wrong
   * with it and 13 with a tenth of it (development takes).
   */
  private static final double DROWNED_SHARE = 0.01;

  /** No old note. */
  private static final double[] NONE = new double[OLD_NOTES];

  private final double rateHz;
  private final int shortestLag;
  private final int longestLag;
  private final PeriodFinder finder;
  private final LinearPredictor before;
  private final float[] rest = new float[1 << 11];
  private final int lateFrames;
  private int learntTo;
  private boolean learnt;
  private boolean wide;

  private boolean found;
  private double pitch;
  private double clarity;
  private double period;
  private double novelty;
  private boolean torn;
  private boolean over;
  private double spareClarity;
  private double sparePeriod;

  /**
   * @param rateHz of the sound with the brightness taken off
   */
  NewNotePitch(double rateHz, double lowestHz, double highestHz) {
    this.rateHz = rateHz;
    shortestLag = (int) (rateHz / highestHz);
    longestLag = (int) (rateHz / lowestHz);
    lateFrames = (int) (LATE_WINDOW_SECONDS * rateHz);
    finder = new PeriodFinder(rateHz, lowestHz);
    before =
        new LinearPredictor(
            Math.min(ORDER, (int) (PAST_SECONDS * rateHz) / 2 - 1),
            (int) (PAST_SECONDS * rateHz),
            MOST_CARRIED);
  }

  /** Forgets what sounded before: the attack is elsewhere. */
  void forget() {
    learnt = false;
    wide = false;
  }

  /**
   * Names it.
   *
   * @param y sound
   * @param start index of the attack
   * @param to index after the newest sample
   * @param ringingPeriods in frames, of the note before first; 0 for none
   * @return whether a period was found
   */
  boolean name(float[] y, int start, int to, double[] ringingPeriods) {
    double ageSeconds = (to - start) / rateHz;
    double[] oldPeriods = isDrowned(y, start, to) ? NONE : ringingPeriods;
    boolean late = ageSeconds > LATE_AGE_SECONDS;
    boolean old = oldPeriods[0] > 0;
    int from = windowStart(start, to, ageSeconds);
    begin();
    if (finder.find(y, from, to, shortestLag, longestLag)) {
      weigh(oldPeriods, Double.POSITIVE_INFINITY, false);
    }
    if (old) {
      withOldSound(y, start, from, to, oldPeriods);
    }
    if (late && clarity < CLEAR) {
      newestSound(y, start, Math.max(from, to - lateFrames), to, oldPeriods);
    }
    if (late && !found && spareClarity > LEAST_SPARE_CLARITY) {
      take(sparePeriod, spareClarity, finder.pitchOf(sparePeriod));
    }
    if (found && !old && ageSeconds > SETTLE_AGE_SECONDS && period > LOW_PERIOD_SECONDS * rateHz) {
      int settledFrom = Math.max(from, start + (int) (SETTLE_GAP_SECONDS * rateHz));
      period = finder.onLowPartials(y, settledFrom, to, period);
      pitch = finder.pitchOf(period);
    }
    if (late && old && !wide && clarity < UNCLEAR) {
      wide = true;
      learnt = false;
    }
    return found;
  }

  /**
   * Whether what sounded before the attack is so far under it that it can explain none of it. Then
   * the old notes have died away or make no difference, and the new one is named as if it were the
   * first.
   */
  private boolean isDrowned(float[] y, int start, int to) {
    int end = start - (int) (WIDE_MARGIN_SECONDS * rateHz);
    double before = SoundEnergy.mean(y, end - (int) (BEFORE_SECONDS * rateHz), end);
    return before < DROWNED_SHARE * SoundEnergy.mean(y, start, to);
  }

  /** Where the window begins: soon after the attack, later once there is enough of the note. */
  private int windowStart(int start, int to, double ageSeconds) {
    double gap = ageSeconds > OLDER_AGE_SECONDS ? OLDER_GAP_SECONDS : GAP_SECONDS;
    return Math.max(start + (int) (gap * rateHz), to - (int) (LONGEST_WINDOW_SECONDS * rateHz));
  }

  private void begin() {
    found = false;
    torn = false;
    over = false;
    clarity = 0;
    novelty = 1;
    spareClarity = 0;
  }

  /** As if all old sound went on, and as if all of it but the last note did. */
  private void withOldSound(float[] y, int start, int from, int to, double[] oldPeriods) {
    carryOn(y, start, to - start + (int) Math.ceil(2 * oldPeriods[0]));
    takeOut(y, from, to, start, 0);
    int novel = (int) (NOVEL_SECONDS * rateHz);
    int early = Math.min(to - from, novel);
    novelty = SoundEnergy.of(rest, 0, early) / (NO_ENERGY + SoundEnergy.of(y, from, from + early));
    double share = shareOfOld(y, start, Math.min(to, start + novel));
    if (share > LEAST_SHARE) {
      boolean goesOn = share > GOES_ON && share < 2 - GOES_ON;
      weighRest(y, from, to, oldPeriods, Double.POSITIVE_INFINITY, goesOn);
    }
    takeOut(y, from, to, start, oldPeriods[0]);
    weighRest(y, from, to, oldPeriods, Double.POSITIVE_INFINITY, false);
  }

  /** As if the newest sound were all there is: what came before may be another note's end. */
  private void newestSound(float[] y, int start, int from, int to, double[] oldPeriods) {
    double longest = (to - from) / LATE_PERIODS;
    if (finder.find(y, from, to, shortestLag, (int) longest)) {
      weigh(oldPeriods, longest, false);
    }
    if (oldPeriods[0] > 0) {
      takeOut(y, from, to, start, oldPeriods[0]);
      weighRest(y, from, to, oldPeriods, longest, false);
    }
  }

  /** Whether the newest sound alone says clearly that it is another pitch. */
  boolean contradicted(float[] y, int to) {
    double longest = lateFrames / LATE_PERIODS;
    return period < longest
        && finder.find(y, to - lateFrames, to, shortestLag, (int) longest)
        && finder.clarity() > CONTRADICTING
        && Math.abs(finder.pitch() - pitch) > CONTRADICTING_SEMITONES;
  }

  private void weighRest(
      float[] y, int from, int to, double[] oldPeriods, double longest, boolean goesOn) {
    if (SoundEnergy.of(rest, 0, to - from) > LEAST_REST * SoundEnergy.of(y, from, to)
        && finder.find(rest, 0, to - from, shortestLag, longestLag)) {
      weigh(oldPeriods, longest, goesOn);
    }
  }

  /**
   * Weighs the period just found against the best so far.
   *
   * @param longest period that counts
   * @param goesOn whether old sound that went on for sure was taken out
   */
  private void weigh(double[] oldPeriods, double longest, boolean goesOn) {
    if (finder.periodFrames() > longest
        || common(finder.periodFrames(), oldPeriods) && !isOwn(oldPeriods, goesOn)) {
      return;
    }
    double newPeriod = finder.periodFrames();
    double newClarity = finder.clarity();
    double newPitch = finder.pitch();
    if (over && multiple(newPeriod / period)) {
      return;
    }
    boolean above =
        goesOn && found && newClarity > CLEAR_ENOUGH && overOld(newPeriod, oldPeriods[0]);
    boolean better = above || isBetter(newPeriod, newClarity, oldPeriods);
    over |= above;
    boolean differs = found && Math.abs(newPitch - pitch) > DIFFERENT_SEMITONES;
    if (differs && Math.min(newClarity, clarity) > CLEAR_ENOUGH) {
      torn = Math.abs(newClarity - clarity) < TORN;
    } else if (better) {
      torn = false;
    }
    if (better) {
      take(newPeriod, newClarity, newPitch);
    }
  }

  private void take(double newPeriod, double newClarity, double newPitch) {
    found = true;
    period = newPeriod;
    clarity = newClarity;
    pitch = newPitch;
  }

  /**
   * Whether a period that is a multiple of an old one's is the new note's own. Where a part of it
   * is the new note's, the finder is settled on that; where it may be a low note's, it is kept to
   * spare.
   */
  private boolean isOwn(double[] oldPeriods, boolean goesOn) {
    int lag = finder.bestPart(finder.periodFrames(), shortestLag, oldPeriods);
    double part = lag == 0 ? 0 : finder.likenessAt(lag);
    if (part >= LEAST_PART) {
      finder.settleOn(lag);
      return true;
    }
    if (goesOn && part <= NO_PART) {
      return true;
    }
    if (part < NO_PART) {
      spare(finder.periodFrames(), finder.clarity(), oldPeriods);
    }
    return false;
  }

  /** The clearer one is better; of one period and its multiple, mostly the shorter one. */
  private boolean isBetter(double newPeriod, double newClarity, double[] oldPeriods) {
    boolean clearer = newClarity > clarity;
    if (found && multiple(period / newPeriod)) {
      boolean farShorter = period / newPeriod > OCTAVE_ROUNDED_UP;
      return clearer || newClarity > UNCLEAR && (farShorter || common(period, oldPeriods));
    }
    if (found && multiple(newPeriod / period)) {
      boolean octave = newPeriod / period < OCTAVE_ROUNDED_UP;
      return clearer && (clarity < UNCLEAR || octave && !common(newPeriod, oldPeriods));
    }
    return clearer;
  }

  /** Whether a note sounds an octave or more above the old one, whose period it shares. */
  private boolean overOld(double newPeriod, double old) {
    return old > 0
        && Math.abs(period / old - 1) < SAME_PERIOD_SHARE
        && multiple(period / newPeriod);
  }

  /** A low note whose period is a multiple of an old one's, where the old one is not enough. */
  private void spare(double newPeriod, double newClarity, double[] oldPeriods) {
    for (double old : oldPeriods) {
      if (old > 0 && multiple(newPeriod / old) && finder.likenessAt(old) > ENOUGH_ALONE) {
        return;
      }
    }
    if (newClarity > spareClarity) {
      spareClarity = newClarity;
      sparePeriod = newPeriod;
    }
  }

  private static boolean common(double period, double[] oldPeriods) {
    for (double old : oldPeriods) {
      if (old > 0 && multiple(period / old)) {
        return true;
      }
    }
    return false;
  }

  /** Whether this is a whole number of times, two or more, within a fifth of a semitone. */
  static boolean multiple(double times) {
    return times > 1.5 && Math.abs(times / Math.rint(times) - 1) < MULTIPLE_SHARE;
  }

  /** Has the old sound go on for some frames after the attack. */
  private void carryOn(float[] y, int start, int frames) {
    if (!learnt) {
      learnt = true;
      learntTo = (int) ((wide ? WIDE_MARGIN_SECONDS : MARGIN_SECONDS) * rateHz);
      before.learn(y, start - learntTo);
    }
    before.carryOn(Math.min(MOST_CARRIED, learntTo + frames + 2));
  }

  /** Leaves in {@code rest} what is new; the part with {@code stoppedPeriod} has not gone on. */
  private void takeOut(float[] y, int from, int to, int start, double stoppedPeriod) {
    for (int i = from; i < to; i++) {
      int k = i - start + learntTo;
      rest[i - from] = k < MOST_CARRIED ? y[i] - (float) old(k, stoppedPeriod) : y[i];
    }
  }

  private double old(int k, double stoppedPeriod) {
    double all = before.at(k);
    if (stoppedPeriod <= 0) {
      return all;
    }
    double own = 0;
    int turns = 0;
    for (int turn = -2; turn <= 2; turn++) {
      double at = k + turn * stoppedPeriod;
      int whole = (int) Math.floor(at);
      if (whole < 0 || whole + 1 >= MOST_CARRIED) {
        continue;
      }
      double part = at - whole;
      own += before.at(whole) * (1 - part) + before.at(whole + 1) * part;
      turns++;
    }
    return all - own / turns;
  }

  private double shareOfOld(float[] y, int start, int to) {
    double dot = 0;
    double all = 1e-12;
    for (int i = start; i < to; i++) {
      double old = before.at(i - start + learntTo);
      dot += old * y[i];
      all += old * old;
    }
    return dot / all;
  }

  /** MIDI note number with its fraction. */
  double pitch() {
    return pitch;
  }

  double clarity() {
    return clarity;
  }

  double periodFrames() {
    return period;
  }

  /** Share of the first 25 ms that old sound going on does not explain. */
  double novelty() {
    return novelty;
  }

  /** Whether two answers are as clear as each other. */
  boolean torn() {
    return torn;
  }
}
