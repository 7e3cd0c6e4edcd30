package neckway.hear;

import neckway.hear.signal.LinearPredictor;
import neckway.hear.signal.PeriodFinder;

/**
 * Names the pitch of what began at a possible attack, whatever went on sounding from before: as if
 * all old sound had stopped, as if it all went on, and as if only the last note had stopped. The
 * clearest answer counts; one that repeats only because an old string's period and the new one's
 * have a common multiple does not.
 */
final class NewNotePitch {
  /** Old notes that may still ring. */
  static final int OLD_NOTES = 3;

  private static final int ORDER = 160;
  private static final double PAST_SECONDS = 0.055;

  /** Notes lower than this are sharpened by their string's stiffness. */
  static final double LOW_PERIOD_SECONDS = 0.0045;

  /** From this age on a low note is settled on its first partials. */
  private static final double SETTLE_AGE_SECONDS = 0.04;

  /** An old note that repeats this well is all there is. */
  private static final double ENOUGH_ALONE = 0.8;

  private static final double MARGIN_SECONDS = 0.0015;

  /** Kept off the attack where it seems to have been stamped late. */
  private static final double WIDE_MARGIN_SECONDS = 0.012;

  private static final int MOST_CARRIED = 820;
  private static final double LONGEST_WINDOW_SECONDS = 0.045;
  private static final double LATE_AGE_SECONDS = 0.024;
  private static final double LATE_WINDOW_SECONDS = 0.016;

  /** A part of a common multiple counts from this likeness on. */
  private static final double LEAST_PART = 0.45;

  /** Under this likeness a part is none. */
  private static final double NO_PART = 0.2;

  /** Share of the old sound, found by least squares, from which it may have gone on at all. */
  private static final double LEAST_SHARE = 0.4;

  /** Share from which it has gone on for sure. */
  private static final double GOES_ON = 0.75;

  private final double rateHz;
  private final int shortestLag;
  private final int longestLag;
  private final PeriodFinder finder;
  private final LinearPredictor before;
  private final float[] rest = new float[1 << 11];
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
   * @param oldPeriods in frames, of the note before first; 0 for none
   * @return whether a period was found
   */
  boolean name(float[] y, int start, int to, double[] oldPeriods) {
    double age = (to - start) / rateHz;
    int from = start + (int) ((age > 0.022 ? 0.004 : 0.001) * rateHz);
    from = Math.max(from, to - (int) (LONGEST_WINDOW_SECONDS * rateHz));
    found = false;
    torn = false;
    over = false;
    clarity = 0;
    novelty = 1;
    spareClarity = 0;
    if (finder.find(y, from, to, shortestLag, longestLag)) {
      weigh(oldPeriods, Double.POSITIVE_INFINITY, false);
    }
    boolean old = oldPeriods[0] > 0;
    if (old) {
      carryOn(y, start, to - start + (int) Math.ceil(2 * oldPeriods[0]));
      takeOut(y, from, to, start, 0);
      int early = Math.min(to - from, (int) (0.025 * rateHz));
      novelty = energy(rest, 0, early) / (1e-9 + energy(y, from, from + early));
      double share = shareOfOld(y, start, Math.min(to, start + (int) (0.025 * rateHz)));
      if (share > LEAST_SHARE) {
        boolean goesOn = share > GOES_ON && share < 2 - GOES_ON;
        weighRest(y, from, to, oldPeriods, Double.POSITIVE_INFINITY, goesOn);
      }
      takeOut(y, from, to, start, oldPeriods[0]);
      weighRest(y, from, to, oldPeriods, Double.POSITIVE_INFINITY, false);
    }
    if (age > LATE_AGE_SECONDS && clarity < 0.95) {
      int late = Math.max(from, to - (int) (LATE_WINDOW_SECONDS * rateHz));
      double longest = (to - late) / 2.2;
      if (finder.find(y, late, to, shortestLag, (int) longest)) {
        weigh(oldPeriods, longest, false);
      }
      if (old) {
        takeOut(y, late, to, start, oldPeriods[0]);
        weighRest(y, late, to, oldPeriods, longest, false);
      }
    }
    if (!found && age > LATE_AGE_SECONDS && spareClarity > 0.9) {
      found = true;
      clarity = spareClarity;
      period = sparePeriod;
      pitch = finder.pitchOf(period);
    }
    if (found && !old && age > SETTLE_AGE_SECONDS && period > LOW_PERIOD_SECONDS * rateHz) {
      period = finder.onLowPartials(y, Math.max(from, start + (int) (0.008 * rateHz)), to, period);
      pitch = finder.pitchOf(period);
    }
    if (old && !wide && age > LATE_AGE_SECONDS && clarity < 0.8) {
      wide = true;
      learnt = false;
    }
    return found;
  }

  /** Whether the newest sound alone says clearly that it is another pitch. */
  boolean contradicted(float[] y, int to) {
    int window = (int) (LATE_WINDOW_SECONDS * rateHz);
    return period < window / 2.2
        && finder.find(y, to - window, to, shortestLag, (int) (window / 2.2))
        && finder.clarity() > 0.9
        && Math.abs(finder.pitch() - pitch) > 0.4;
  }

  private void weighRest(
      float[] y, int from, int to, double[] oldPeriods, double longest, boolean goesOn) {
    if (energy(rest, 0, to - from) > 0.02 * energy(y, from, to)
        && finder.find(rest, 0, to - from, shortestLag, longestLag)) {
      weigh(oldPeriods, longest, goesOn);
    }
  }

  private void weigh(double[] oldPeriods, double longest, boolean goesOn) {
    double newPeriod = finder.periodFrames();
    double newClarity = finder.clarity();
    if (newPeriod > longest) {
      return;
    }
    if (common(newPeriod, oldPeriods)) {
      int lag = finder.bestPart(newPeriod, shortestLag, oldPeriods);
      double part = lag == 0 ? 0 : finder.likenessAt(lag);
      if (part >= LEAST_PART) {
        finder.settleOn(lag);
        newPeriod = finder.periodFrames();
        newClarity = finder.clarity();
      } else if (!goesOn || part > NO_PART) {
        if (part < NO_PART) {
          spare(newPeriod, newClarity, oldPeriods);
        }
        return;
      }
    }
    boolean better = newClarity > clarity;
    if (found && multiple(period / newPeriod)) {
      better |= newClarity > 0.8 && (period / newPeriod > 2.5 || common(period, oldPeriods));
    } else if (found && multiple(newPeriod / period)) {
      better &= clarity < 0.8 || newPeriod / period < 2.5 && !common(newPeriod, oldPeriods);
    }
    if (over && multiple(newPeriod / period)) {
      return;
    }
    if (goesOn && found && overOld(period, newPeriod, oldPeriods[0]) && newClarity > 0.85) {
      better = true;
      over = true;
    }
    double newPitch = finder.pitch();
    if (found && Math.abs(newPitch - pitch) > 0.25 && Math.min(newClarity, clarity) > 0.85) {
      torn = Math.abs(newClarity - clarity) < 0.02;
    } else if (better) {
      torn = false;
    }
    if (better) {
      found = true;
      period = newPeriod;
      clarity = newClarity;
      pitch = newPitch;
    }
  }

  /** Whether a note sounds an octave or more above the old one, whose period it shares. */
  private static boolean overOld(double period, double newPeriod, double old) {
    return old > 0 && Math.abs(period / old - 1) < 0.02 && multiple(period / newPeriod);
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
    return times > 1.5 && Math.abs(times / Math.rint(times) - 1) < 0.012;
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

  private static double energy(float[] x, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += x[i] * x[i];
    }
    return sum;
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
