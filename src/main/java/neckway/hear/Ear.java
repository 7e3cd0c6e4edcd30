package neckway.hear;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Samples in, notes out, the same for any block size.
 *
 * <p>A rise of the spectrum raises a possible attack ({@link SpectralFlux}); from {@value
 * #EARLIEST_SECONDS} s on the pitch of what is new is looked for at each hop ({@link NewNotePitch})
 * until it is clear, at the latest after {@value #LATEST_SECONDS} s; the instant is a change point
 * in the time domain ({@link OnsetLocator}, {@link PitchChange}). A pitch that changes without an
 * attack opens a note too. Nothing is allocated but the note itself.
 */
public final class Ear {
  static final double LOWEST_HZ = 38;
  static final double HIGHEST_HZ = 1_400;
  static final double HOP_SECONDS = 0.0029;

  /** Rise of the spectrum, dB, that may be an attack. */
  private static final double LEAST_RISE_DB = 0.8;

  /** A note is not struck again sooner than this. */
  private static final double LEAST_GAP_SECONDS = 0.045;

  /** What rises higher within this time of an attack belongs to it. */
  private static final double ATTACK_SECONDS = 0.04;

  /** Age of an attack at which it is first looked into. */
  static final double EARLIEST_SECONDS = 0.011;

  /** Age of an attack at which it is given up. */
  static final double LATEST_SECONDS = 0.1;

  /** What sounds from the first moment on began before the take. */
  private static final double START_SECONDS = 0.01;

  /** Time in which mains hum is learnt. */
  private static final double HUM_SECONDS = 0.4;

  /** Readings of a pitch that make it sure. */
  private static final int SETTLED_READINGS = 4;

  /** Log-likelihood ratio from which an attack is sure. */
  private static final double SURE_ATTACK = 25;

  /** Rise of what the old period leaves from which a change is sure. */
  private static final double SURE_CHANGE = 15;

  /** Nothing lower is mistaken for a click before the first note. */
  private static final double HIGH_PITCH = 76;

  /** A note loses less of its power than this in {@value #HOLD_SECONDS} s; a click more. */
  private static final double HELD_SHARE = 0.6;

  private static final double HOLD_SECONDS = 0.012;

  private static final double LEAST_HELD_CLARITY = 0.93;

  /** What is left of its first power, at least, in a note. */
  private static final double LEAST_HELD = 0.003;

  /** Power of a note without an attack, at least, as a share of the note's before it. */
  private static final double LEAST_LEGATO = 0.003;

  /** Share of the sound that must be new for the same pitch to be struck again. */
  private static final double STRUCK_AGAIN = 0.2;

  /** With less of an attack, a note a semitone on may be a fret passed in a slide. */
  private static final double PASSING_FLUX = 2.6;

  /** As near to 50 or 60 Hz as this, a sound may be the mains. */
  private static final double MAINS_SHARE = 0.016;

  /** Two notes nearer than this can sound like one between them. */
  private static final double NEAR_SEMITONES = 1.5;

  /** Notes with longer periods show them one by one in the spectrum. */
  private static final double PULSING_SECONDS = 0.014;

  private static final double LOW_PERIOD_SECONDS = 0.0056;

  /** A fret read this long ago may have been passed on the way to the one that sounds. */
  private static final double PASSING_SECONDS = 0.2;

  /** Steady readings of a pitch a semitone on, which may be a fret that is passed. */
  private static final int SEMITONE_READINGS = 18;

  /** Steady readings of the pitch of an attack that could not be named. */
  private static final int STRUCK_READINGS = 9;

  /** An attack that could not be named is this much older than its pitch, at most. */
  private static final double UNNAMED_SECONDS = 0.35;

  /** Steady readings of a pitch after frets that were passed. */
  private static final int SLID_READINGS = 11;

  /** From the old note's end to the new one's start, at least, in a slide. */
  private static final double SLIDE_SECONDS = 0.010;

  /** Fall of what the new period leaves, at least, for it to be an arrival. */
  private static final double LEAST_ARRIVAL = 20;

  /** That fall, at least, as a share of the rise of what the old period leaves. */
  private static final double ARRIVAL_SHARE = 0.35;

  private final double sampleRateHz;
  private final FrontEnd front;
  private final SpectralFlux flux;
  private final NewNotePitch newcomer;
  private final PeriodFinder tracker;
  private final OnsetLocator stamper;
  private final PitchChange change;
  private final TuningOffset tuning = new TuningOffset();
  private final int longestLag;
  private final int shortestLag;
  private long framesIn;
  private final SoundLevels levels = new SoundLevels();

  // the note that sounds
  private boolean sounding;
  private double curPitch;
  private double curPeriod;
  private double curLevel;
  private long curOnset;
  private final double[] oldPeriods = new double[3];
  private int curReadings;
  private double lastRise;

  // a possible attack
  private boolean unnamed;
  private long unnamedStamp;
  private boolean candidate;
  private long candStamp;
  private long candRaised;
  private double candFlux;
  private double candHigh;
  private boolean passing;
  private double passPitch;
  private double passPeriod;
  private double evalPitch;
  private int evalAgree;

  private int departureAt;
  private double departureGain;
  private int arrivalAt;
  private double arrivalGain;

  private final PitchHistory readings = new PitchHistory();
  private boolean trackNow;

  private double[] settled = new double[256];
  private int notes;

  /**
   * @param sampleRateHz 8,000 to 192,000
   * @throws IllegalArgumentException for any other rate
   */
  public Ear(double sampleRateHz) {
    if (!(sampleRateHz >= 8_000 && sampleRateHz <= 192_000)) {
      throw new IllegalArgumentException("sample rate " + sampleRateHz + " Hz");
    }
    this.sampleRateHz = sampleRateHz;
    front = new FrontEnd(sampleRateHz, HOP_SECONDS);
    int size = 128;
    while (size * 2 <= front.rateHz * 0.026) {
      size *= 2;
    }
    flux = new SpectralFlux(front.rateHz, size);
    double half = front.rateHz / 2;
    newcomer = new NewNotePitch(half, LOWEST_HZ, HIGHEST_HZ);
    tracker = new PeriodFinder(half, LOWEST_HZ);
    stamper = new OnsetLocator(front.rateHz);
    change = new PitchChange(half);
    longestLag = (int) (half / LOWEST_HZ);
    shortestLag = (int) (half / HIGHEST_HZ);
  }

  /**
   * Says that a click may be heard on the beats, before the first note and after. Call before any
   * sound. Where it is heard it is taken out; nothing else changes.
   *
   * @param beatSeconds from one beat to the next, more than 0
   * @param beatsPerBar the first beat of a bar may sound otherwise
   */
  public void expectClicks(double beatSeconds, int beatsPerBar) {
    front.clicks.expect(beatSeconds * front.rateHz, beatsPerBar);
  }

  /** Takes samples from -1 to 1. */
  public void process(float[] samples, int offset, int length, NoteListener listener) {
    for (int i = offset; i < offset + length; i++) {
      framesIn++;
      float sample = samples[i];
      levels.sample(sample);
      if (front.accept(sample)) {
        while (front.advance()) {
          hop(listener);
        }
        listener.listenedUntil(now());
      }
    }
  }

  /** Ends the take: what is still open is decided. */
  public void finish(NoteListener listener) {
    settle();
    listener.listenedUntil(now());
  }

  private double now() {
    return framesIn / sampleRateHz;
  }

  private void hop(NoteListener listener) {
    long end = front.end();
    int to = front.index(end);
    flux.process(front.x, to);
    double rise = flux.risen();
    levels.hop(energy(front.x, to - front.hop, front.hop) / front.hop);
    raise(rise, end, to);
    lastRise = rise;
    if (candidate) {
      judge(end, listener);
    }
    trackNow = !trackNow;
    if (trackNow) {
      track(end, listener);
    }
  }

  private void raise(double rise, long end, int to) {
    if (rise < LEAST_RISE_DB || rise < lastRise) {
      return;
    }
    double rate = front.rateHz;
    boolean fresh = !candidate && (!sounding || end - curOnset > LEAST_GAP_SECONDS * rate);
    if (candidate && end - candRaised > ATTACK_SECONDS * rate) {
      fresh = rise > 1.3 * candFlux;
    }
    if (fresh) {
      candidate = true;
      candRaised = end;
      passing = false;
      candFlux = 0;
      evalAgree = 0;
    }
    if (candidate && rise > candFlux && end - candRaised <= ATTACK_SECONDS * rate) {
      candFlux = rise;
      candHigh = flux.highRise();
      long stamp = end - to + stamper.find(front.x, to, sounding ? 2 * curPeriod : 0);
      if (sounding && rise < 2 && candHigh < 1.2 && stamper.score() < SURE_ATTACK) {
        int at = change.find(front.y, to / 2, curPeriod);
        if (change.gain() > SURE_CHANGE) {
          stamp = end - to + 2L * at;
        }
      }
      if (Math.abs(stamp - candStamp) > 0.004 * rate) {
        evalAgree = 0;
      }
      if (stamp != candStamp) {
        newcomer.forget();
      }
      candStamp = stamp;
    }
  }

  private void judge(long end, NoteListener listener) {
    double age = (end - candStamp) / front.rateHz;
    if (age < EARLIEST_SECONDS) {
      return;
    }
    if (age > LATEST_SECONDS) {
      candidate = false;
      unnamed = true;
      unnamedStamp = candStamp;
      return;
    }
    double half = front.rateHz / 2;
    int start = front.index(candStamp) / 2;
    int to = front.index(end) / 2;
    oldPeriods[0] = sounding ? curPeriod : 0;
    boolean found = newcomer.name(front.y, start, to, oldPeriods);
    double pitch = newcomer.pitch();
    double clarity = found ? newcomer.clarity() : 0;
    double period = newcomer.periodFrames();
    double novelty = newcomer.novelty();
    boolean torn = newcomer.torn();
    if (found && clarity >= 0.75 && !(torn && age < 0.06)) {
      boolean agrees = Math.abs(pitch - evalPitch) < (age > 0.06 ? 0.3 : 0.2);
      evalAgree = agrees ? evalAgree + 1 : 1;
      evalPitch = pitch;
    } else {
      evalAgree = 0;
      return;
    }
    boolean another = !sounding || Math.abs(pitch - curPitch) > 0.6;
    if (pitch > 66 && fallen(end, another && clarity > LEAST_HELD_CLARITY)) {
      evalAgree = 0;
      return;
    }
    if (candStamp < START_SECONDS * front.rateHz
        || maybeHum(pitch, end)
        || candFlux < 1.3 && nearMains(pitch)) {
      return;
    }
    if (pitch > HIGH_PITCH && !sounding && age < 0.06) {
      return;
    }
    if (!clear(age, clarity, pitch, period / half)) {
      return;
    }
    if (sounding && maybeBetween(Math.abs(pitch - curPitch), age, clarity)) {
      return;
    }
    if (age > 0.03 && newcomer.contradicted(front.y, to)) {
      evalAgree = 0;
      return;
    }
    boolean same = sounding && Math.abs(pitch - curPitch) < 0.6;
    if (front.clicks.near(candStamp, 0.012 * front.rateHz)
        && (same && (novelty < 0.3 || candHigh < 3) || pitch > HIGH_PITCH && age < 0.05)) {
      return;
    }
    if (sounding && !same && candFlux < PASSING_FLUX) {
      if (Math.abs(pitch - curPitch) < 1.5 && age < 0.075) {
        passing = true;
        passPitch = pitch;
        passPeriod = period;
        return;
      }
      if (passing && Math.abs(pitch - passPitch) > 0.6) {
        int at = change.find(front.y, front.index(end) / 2, passPeriod);
        candidate = false;
        emit(end - front.index(end) + 2L * at, pitch, period, HeardNote.Start.SLIDE, listener);
        return;
      }
    }
    boolean weak = sounding && candFlux < 1.3 && candHigh < 0.5;
    if (weak && (novelty < 0.25 || clarity < 0.95 || evalAgree < 5 || age < 0.04)) {
      return;
    }
    if (!same || novelty > STRUCK_AGAIN && struckAgain(end)) {
      candidate = false;
      emit(
          candStamp,
          pitch,
          period,
          candFlux > 1.2 ? HeardNote.Start.PLUCK : HeardNote.Start.LEGATO,
          listener);
    } else if (age > 0.05) {
      candidate = false;
    }
  }

  /** Whether the attack is enough for the same pitch; a very low note pulses by itself. */
  private boolean struckAgain(long end) {
    if (curPeriod > PULSING_SECONDS * front.rateHz / 2) {
      return candFlux > 4 && end - curOnset > 0.12 * front.rateHz;
    }
    return candFlux > 2.5 || candFlux > 1.2 && candHigh > 1.2;
  }

  /** Whether a pitch so near to the last one may be the two of them sounding at once. */
  private static boolean maybeBetween(double distance, double age, double clarity) {
    return distance > 0.6
        && (distance < 1.5 && age < 0.05 || distance < NEAR_SEMITONES && clarity < 0.9);
  }

  private boolean clear(double age, double clarity, double pitch, double periodSeconds) {
    double inTune = pitch - tuning.semitones();
    double fraction = Math.abs(inTune - Math.rint(inTune));
    boolean low = periodSeconds > LOW_PERIOD_SECONDS;
    if (evalAgree >= 3 && clarity > 0.93 && fraction < 0.22) {
      return age > Math.max(0.018, 1.8 * periodSeconds);
    }
    return evalAgree >= 3 && clarity > 0.88 && fraction < 0.3 && age > (low ? 0.045 : 0.03)
        || evalAgree >= 3 && clarity > 0.8 && fraction < 0.4 && age > (low ? 0.06 : 0.045)
        || evalAgree >= 4 && clarity > 0.75 && age > 0.07;
  }

  /** Whether this may be mains hum: of its pitch, and far softer than any note so far. */
  private boolean maybeHum(double pitch, long end) {
    if (!nearMains(pitch)) {
      return false;
    }
    int span = (int) (0.02 * front.rateHz);
    double now = energy(front.x, front.index(end) - span, span) / span;
    return end < HUM_SECONDS * front.rateHz
        || now < Math.max(8 * levels.noise(), 0.01 * levels.loudest());
  }

  private static boolean nearMains(double pitch) {
    double hz = 440 * Math.pow(2, (pitch - 69) / 12);
    return Math.abs(hz / 50 - 1) < MAINS_SHARE || Math.abs(hz / 60 - 1) < MAINS_SHARE;
  }

  /**
   * Whether what started has died away at once, as a click does. A note that is struck hard may
   * lose as much of its first milliseconds, but then it holds.
   *
   * @param mayHold whether it is clear enough to be such a note
   */
  private boolean fallen(long end, boolean mayHold) {
    int span = (int) (0.006 * front.rateHz);
    int head = front.index(candStamp) + (int) (0.001 * front.rateHz);
    int last = front.index(end) - span;
    double quiet = levels.noise() * span;
    double now = energy(front.x, last, span) - quiet;
    if (now < 2 * quiet) {
      return true;
    }
    double struck = energy(front.x, head, span) - quiet;
    if (now >= 0.15 * struck) {
      return false;
    }
    int earlier = last - (int) (HOLD_SECONDS * front.rateHz);
    return !mayHold
        || now < LEAST_HELD * struck
        || earlier < head + span
        || now < HELD_SHARE * (energy(front.x, earlier, span) - quiet);
  }

  /** Whether the sound is no more than the last notes still sounding. */
  private boolean explained(int from, int to) {
    float[] y = front.y;
    double all = energy(y, from, to - from);
    int count = to - from;
    for (int back = 0; back <= 2; back++) {
      double period = oldPeriods[back];
      if (back > 0 && period <= 0) {
        continue;
      }
      double sum = 0;
      for (int i = 0; i < count; i++) {
        double d = combed(y, from + i, curPeriod);
        if (back > 0) {
          d -= combedAt(y, from + i - period, curPeriod);
        }
        sum += d * d;
      }
      if (sum < 0.12 * all) {
        return true;
      }
    }
    return false;
  }

  private static double combed(float[] y, int i, double period) {
    return y[i] - at(y, i - period);
  }

  private static double combedAt(float[] y, double i, double period) {
    return at(y, i) - at(y, i - period);
  }

  private static double at(float[] y, double i) {
    int whole = (int) i;
    double part = i - whole;
    return y[whole] * (1 - part) + y[whole + 1] * part;
  }

  private static double energy(float[] x, int from, int count) {
    double sum = 0;
    for (int i = from; i < from + count; i++) {
      sum += x[i] * x[i];
    }
    return sum;
  }

  private void emit(
      long onset, double pitch, double period, HeardNote.Start start, NoteListener listener) {
    settle();
    unnamed = false;
    oldPeriods[2] = oldPeriods[1];
    oldPeriods[1] = sounding ? curPeriod : 0;
    sounding = true;
    curPitch = pitch;
    curPeriod = period;
    curOnset = onset;
    curReadings = 0;
    readings.clear();
    if (notes == settled.length) {
      settled = Arrays.copyOf(settled, 2 * notes);
    }
    settled[notes++] = pitch;
    int span = (int) (0.012 * front.rateHz);
    curLevel = energy(front.x, front.index(front.end()) - span, span) / span;
    levels.note(curLevel);
    int midi = (int) Math.rint(pitch - tuning.semitones());
    int from = front.index(onset);
    float top = 0;
    for (int i = from; i < front.index(front.end()); i++) {
      top = Math.max(top, Math.abs(front.x[i]));
    }
    listener.heard(
        new HeardNote(
            notes - 1,
            front.seconds(onset),
            midi,
            pitch,
            start,
            start == HeardNote.Start.PLUCK,
            20 * Math.log10(top + 1e-6),
            now()));
  }

  /** The note before is over: what its pitch came to is kept. */
  private void settle() {
    if (notes > 0 && curReadings >= SETTLED_READINGS) {
      settled[notes - 1] = curPitch;
      tuning.add(curPitch);
    }
  }

  private void track(long end, NoteListener listener) {
    double half = front.rateHz / 2;
    if (!sounding || (end - curOnset) / front.rateHz < 0.04) {
      return;
    }
    int to = front.index(end) / 2;
    int from = to - (int) (0.034 * half);
    if (!tracker.findPeriodOnly(front.y, from, to, shortestLag, longestLag)
        || tracker.clarity() < 0.93) {
      readings.interrupt();
      return;
    }
    double period = tracker.periodFrames();
    if (period > NewNotePitch.LOW_PERIOD_SECONDS * half) {
      period = tracker.onLowPartials(front.y, from, to, period);
    }
    double pitch = tracker.pitchOf(period);
    if (Math.abs(pitch - curPitch) < 0.5) {
      curReadings++;
      double weight = Math.max(0.1, 1.0 / curReadings);
      curPitch += weight * (pitch - curPitch);
      curPeriod += weight * (tracker.periodFrames() - curPeriod);
      readings.clear();
      return;
    }
    if (Math.abs(pitch - curPitch) < 0.65) {
      return;
    }
    readings.add(pitch, end);
    int steady = readings.steady(0.3);
    double step = Math.abs(pitch - curPitch);
    boolean slid =
        readings.between(curPitch, pitch, steady, end - (long) (PASSING_SECONDS * front.rateHz));
    boolean struck = unnamed && end - unnamedStamp < UNNAMED_SECONDS * front.rateHz;
    int need = 4;
    if (struck && (slid || step < 1.5)) {
      need = STRUCK_READINGS;
    } else if (step < 1.5) {
      need = SEMITONE_READINGS;
    } else if (slid) {
      need = SLID_READINGS;
    }
    if (steady >= need
        && !candidate
        && !NewNotePitch.multiple(tracker.periodFrames() / curPeriod)
        && !nearMains(pitch)
        && energy(front.y, from, to - from) / (to - from) > LEAST_LEGATO * curLevel
        && !explained(from, to)) {
      long first = readings.firstFrame(steady);
      long zero = end - front.index(end);
      boolean arrived =
          slides(front.index(first) / 2, to, tracker.periodFrames())
              || slid && arrivalGain > LEAST_ARRIVAL;
      long stamp = zero + 2L * (arrived ? arrivalAt : departureAt);
      HeardNote.Start start = arrived || slid ? HeardNote.Start.SLIDE : HeardNote.Start.LEGATO;
      if (slid && !arrived) {
        stamp = first - (long) (0.014 * front.rateHz);
      }
      if (unnamed && !slid && !arrived && first - unnamedStamp < UNNAMED_SECONDS * front.rateHz) {
        stamp = unnamedStamp;
        start = HeardNote.Start.PLUCK;
      }
      emit(stamp, pitch, tracker.periodFrames(), start, listener);
      curReadings = steady;
    }
  }

  /**
   * Finds where the old period breaks off and where the new one sets in. A hammered note and a
   * plucked one break off the old period at once; a slid one does so little by little, and then the
   * new period sets in at once and later.
   *
   * @return whether this is a slide
   */
  private boolean slides(int departureTo, int to, double period) {
    departureAt = change.find(front.y, departureTo, curPeriod);
    departureGain = change.gain();
    arrivalAt = change.findArrival(front.y, to, period);
    arrivalGain = change.gain();
    return arrivalAt - departureAt > SLIDE_SECONDS * front.rateHz / 2
        && arrivalGain > LEAST_ARRIVAL
        && arrivalGain > ARRIVAL_SHARE * departureGain;
  }

  /**
   * The pitch that a note came to while it sounded, more exact than the one it was told with.
   *
   * @param index of the note, in the order told
   */
  public double settledPitch(int index) {
    return settled[index];
  }

  /** The guitar's offset from A4 = 440 Hz in cents, -50 to 50, once enough notes tell it. */
  public OptionalDouble tuningCents() {
    return tuning.cents();
  }

  /** Highest sample so far, dB of full scale. */
  public double peakDbfs() {
    return levels.peakDbfs();
  }

  /**
   * Level of the quiet between notes so far, dB of full scale; the least where nothing came yet.
   */
  public double noiseDbfs() {
    return levels.noiseDbfs();
  }

  /** Onsets of what sounded like a metronome's clicks, in seconds. */
  public List<Double> clicks() {
    List<Double> times = new ArrayList<>();
    for (int i = 0; i < front.clicks.clicks(); i++) {
      times.add(front.seconds(front.clicks.clickFrame(i)));
    }
    return times;
  }
}
