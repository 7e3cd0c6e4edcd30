package neckway.hear.signal;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * Learns how a metronome sounds in this recording from the clicks that come alone, as in a
 * count-in, and takes it out of the sound wherever the grid says that it comes again and the sound
 * agrees.
 *
 * <p>A click is a burst out of the quiet that has fallen by 20 dB within 85 ms. Two clicks a beat
 * apart make a grid, and so do three that keep a beat of their own ({@link LoneBursts}): a drill
 * may be played at another tempo than it is written. On each beat of it the learnt sound is
 * subtracted; where a click would be plain to hear and is not there (it projects on the learnt one
 * at under {@value #LEAST_SHARE} or over {@value #MOST_SHARE}), nothing is, and after two such
 * beats nothing until one is heard again.
 */
public final class ClickRemover {
  static final double LEAST_SHARE = 0.4;
  static final double MOST_SHARE = 1.8;

  /** Sound needed after a click's start before it is judged; hearing waits as long at a beat. */
  static final double LOOK_SECONDS = 0.008;

  private static final double LENGTH_SECONDS = 0.120;
  private static final double LEAD_SECONDS = 0.001;
  private static final double TAIL_FROM_SECONDS = 0.085;
  private static final double QUIET_SECONDS = 0.060;
  private static final double BEAT_TOLERANCE = 0.02;
  private static final int KINDS = 2;

  /** A click of the other sort is looked for this near to the grid. */
  private static final double GRID_SECONDS = 0.015;

  /** Share of the sound that a click must make up for its absence to be told. */
  private static final double PLAIN_SHARE = 0.15;

  /** Correlation from which a click is of a kind that was heard before. */
  private static final double LEAST_LIKENESS = 0.7;

  /** Share of the learnt sound, at its end, that is faded out. */
  private static final float FADE_SHARE = 0.25f;

  /** Plain clicks in a row that were not there, from which a faint one is not believed. */
  private static final int MOST_GONE = 2;

  /** A click is taken out no softer and no louder than this, by its learnt sound. */
  private static final double LEAST_GAIN = 0.8;

  private static final double MOST_GAIN = 1.2;

  /** A click is looked for a frame before and after, a quarter of a frame at a time. */
  private static final int MATCH_STEPS = 4;

  private static final double MATCH_STEP_FRAMES = 0.25;

  private static final int MAX_CLICKS = 100_000;

  private final double rateHz;
  private final int length;
  private final int lead;
  private final int look;
  private final float[][] sound = new float[KINDS][];
  private final int[] learnt = new int[KINDS];
  private final OnsetLocator locator;
  private final LoneBursts lone;

  private double beatFrames;
  private boolean ownBeat;
  private int beatsPerBar = 1;
  private final int[] kindOfBeat = new int[64];

  private double floor = Double.NaN;
  private long quietSince;
  private boolean open;
  private long openedAt;

  private boolean running;
  private double gridFrame;
  private long nextBeat;
  private long takingFrom;
  private long takingUpTo;
  private float takingGain;
  private int takingKind;
  private double takingShift;
  private boolean taking;
  private boolean takenOut;
  private int gone;
  private int firstKind;
  private int matchShift;
  private double matchAt;
  private double matchGain;

  private double[] clickFrames = new double[64];
  private int clicks;

  ClickRemover(double rateHz) {
    this.rateHz = rateHz;
    length = (int) (LENGTH_SECONDS * rateHz);
    lead = (int) (LEAD_SECONDS * rateHz);
    look = (int) (LOOK_SECONDS * rateHz);
    for (int kind = 0; kind < KINDS; kind++) {
      sound[kind] = new float[length + 4];
    }
    locator = new OnsetLocator(rateHz);
    lone = new LoneBursts(rateHz, length, lead, 4 * look);
    Arrays.fill(kindOfBeat, -1);
  }

  /** Names the beat that clicks would keep, in frames, and the bar. */
  public void expect(double beatFrames, int beatsPerBar) {
    this.beatFrames = beatFrames;
    this.beatsPerBar = Math.max(1, Math.min(kindOfBeat.length, beatsPerBar));
  }

  /**
   * Takes the newest sound.
   *
   * @param x sound; changed where a click is taken out
   * @param from index of the first new sample
   * @param to index after the last
   * @param firstFrame absolute frame of {@code x[0]}
   */
  void process(float[] x, int from, int to, long firstFrame) {
    if (beatFrames <= 0) {
      return;
    }
    listen(x, from, to, firstFrame);
    if (running) {
      remove(x, from, to, firstFrame);
    }
  }

  /** The frame up to which the sound is as it will stay; later sound may still hold a click. */
  long settledTo(long end) {
    if (!running) {
      return end;
    }
    double start = gridFrame + nextBeat * beatFrames - lead;
    return start < end ? Math.min(end, (long) start) : end;
  }

  /** Whether a click is known to start within some frames of this one. */
  public boolean near(double frame, double within) {
    if (!running) {
      return false;
    }
    double beats = (frame - gridFrame) / beatFrames;
    return Math.abs(beats - Math.rint(beats)) * beatFrames <= within;
  }

  public int clicks() {
    return clicks;
  }

  public double clickFrame(int index) {
    return clickFrames[index];
  }

  private void listen(float[] x, int from, int to, long firstFrame) {
    double energy = 1e-12;
    for (int i = from; i < to; i++) {
      energy += x[i] * x[i];
    }
    energy /= to - from;
    long end = firstFrame + to;
    if (Double.isNaN(floor)) {
      floor = energy;
      quietSince = end;
      return;
    }
    boolean loud = energy > 20 * floor + 1e-8;
    if (open) {
      if (end - openedAt >= length + 2 * (to - from) + lead + GRID_SECONDS * rateHz) {
        open = false;
        judge(x, firstFrame);
        quietSince = end;
      }
    } else if (loud) {
      if (end - quietSince > QUIET_SECONDS * rateHz) {
        open = true;
        openedAt = firstFrame + from;
      } else {
        quietSince = end;
      }
    } else {
      floor += (energy < floor ? 0.1 : 0.01) * (energy - floor);
    }
  }

  private void judge(float[] x, long firstFrame) {
    int span = (int) (0.008 * rateHz);
    int start = locator.find(x, (int) (openedAt - firstFrame) + 2 * span, 0);
    int tailFrom = start + (int) (TAIL_FROM_SECONDS * rateHz);
    double head = SoundEnergy.mean(x, start, start + span);
    double tail = SoundEnergy.mean(x, tailFrom, tailFrom + span);
    if (head < 20 * floor + 1e-8 || tail > 0.01 * head + 4 * floor) {
      return;
    }
    // what is left where one was taken out tells nothing of the beat
    boolean restOfOne = takenOut && Math.abs(firstFrame + start - takingFrom) < length;
    if (!restOfOne) {
      lone.add(x, start, firstFrame + start);
    }
    if (!restOfOne && keepAnotherBeat()) {
      startAgain();
    } else {
      learn(x, start - lead, firstFrame);
    }
  }

  /**
   * Whether the last lone clicks keep a beat that is not the one expected; then it is now. Clicks
   * on every second beat keep the one expected.
   */
  private boolean keepAnotherBeat() {
    double found = lone.beatFrames().orElse(beatFrames);
    double beats = Math.max(1, Math.rint(found / beatFrames));
    double off = Math.abs(found - beats * beatFrames);
    if (off < LoneBursts.EVEN_SECONDS * rateHz) {
      return false;
    }
    beatFrames = off < BEAT_TOLERANCE * beatFrames ? found / beats : found;
    ownBeat = true;
    return true;
  }

  /** Learns the last lone clicks anew, with the beat that they keep. */
  private void startAgain() {
    running = false;
    taking = false;
    gone = 0;
    clicks = 0;
    Arrays.fill(learnt, 0);
    Arrays.fill(kindOfBeat, -1);
    for (float[] kind : sound) {
      Arrays.fill(kind, 0);
    }
    for (int i = 0; i < LoneBursts.BURSTS; i++) {
      learn(lone.sound(i), lone.margin() - lead, lone.frame(i) - lone.margin());
    }
  }

  /** Takes a click that came alone into the sound of its kind. */
  private void learn(float[] x, int at, long firstFrame) {
    int kind = recognise(x, at);
    if (kind == KINDS) {
      kind = learnt[0] == 0 ? 0 : learnt[1] == 0 ? 1 : KINDS;
      matchShift = clicks == 0 ? 0 : (int) Math.rint(offGrid(firstFrame + at + lead));
      if (kind == KINDS || Math.abs(matchShift) > GRID_SECONDS * rateHz) {
        return;
      }
    }
    int n = ++learnt[kind];
    for (int i = 0; i < length; i++) {
      float fade = Math.min(1, (length - i) / (FADE_SHARE * length));
      sound[kind][i + 1] += (fade * x[at + matchShift + i] - sound[kind][i + 1]) / n;
    }
    keepGrid(firstFrame + at + matchShift + lead, kind);
  }

  /** The kind that a click sounds like, and by what shift; {@link #KINDS} for none. */
  private int recognise(float[] x, int at) {
    int kind = KINDS;
    matchShift = 0;
    double likeness = LEAST_LIKENESS;
    for (int k = 0; k < KINDS && learnt[k] > 0; k++) {
      for (int shift = -lead; shift <= lead; shift++) {
        double c = likeness(x, at + shift, sound[k], Math.min(length, 4 * look));
        if (c > likeness) {
          likeness = c;
          matchShift = shift;
          kind = k;
        }
      }
    }
    return kind;
  }

  /** Starts the grid or keeps it to the click at a frame, if it is whole beats from the last. */
  private void keepGrid(double frame, int kind) {
    if (clicks > 0) {
      double beats = (frame - clickFrames[clicks - 1]) / beatFrames;
      double off = Math.abs(beats - Math.rint(beats));
      if (Math.rint(beats) >= 1 && off < BEAT_TOLERANCE) {
        begin(frame);
      }
    }
    add(frame);
    keepBeat(frame);
    if (running) {
      kindOfBeat[bar(Math.round((frame - gridFrame) / beatFrames))] = kind;
    } else {
      firstKind = kind;
    }
  }

  /** Frames from here to where the grid of the first click has its nearest beat. */
  private double offGrid(double frame) {
    double from = running ? gridFrame : clickFrames[0];
    return from + Math.rint((frame - from) / beatFrames) * beatFrames - frame;
  }

  private void begin(double frame) {
    if (running) {
      // keep to the middle of what was heard
      double beat = Math.rint((frame - gridFrame) / beatFrames);
      gridFrame += (frame - gridFrame - beat * beatFrames) / Math.max(2, clicks);
    } else {
      running = true;
      gridFrame = clickFrames[clicks - 1];
      kindOfBeat[0] = firstKind;
    }
    nextBeat = (long) Math.ceil((frame + length - gridFrame) / beatFrames);
  }

  /** A beat that was found is known better with each click: it is the mean since the first one. */
  private void keepBeat(double frame) {
    double beats = Math.rint((frame - gridFrame) / beatFrames);
    if (ownBeat && running && beats >= LoneBursts.BURSTS) {
      beatFrames = (frame - gridFrame) / beats;
    }
  }

  private int bar(long beat) {
    return (int) Math.floorMod(beat, (long) beatsPerBar);
  }

  private void add(double frame) {
    if (clicks == MAX_CLICKS) {
      return;
    }
    if (clicks == clickFrames.length) {
      clickFrames = Arrays.copyOf(clickFrames, 2 * clicks);
    }
    clickFrames[clicks++] = frame;
  }

  private void remove(float[] x, int from, int to, long firstFrame) {
    double start = gridFrame + nextBeat * beatFrames - lead;
    long end = firstFrame + to;
    if (!taking && end >= start + look) {
      decide(x, start, firstFrame);
      nextBeat++;
    }
    if (taking) {
      subtract(x, end, firstFrame);
    }
  }

  /** Decides whether the click due at a frame is there, and where to take it out if it is. */
  private void decide(float[] x, double start, long firstFrame) {
    int kind = kindOfBeat[bar(nextBeat)];
    if (kind < 0) {
      kind = learnt[1] > learnt[0] ? 1 : 0;
    }
    boolean plain = match(x, sound[kind], start, firstFrame);
    if (plain) {
      taking = matchGain > LEAST_SHARE && matchGain < MOST_SHARE;
      gone = taking ? 0 : gone + 1;
    } else {
      taking = gone < MOST_GONE;
      matchAt = start;
      matchGain = 1;
    }
    if (!taking) {
      return;
    }
    takingKind = kind;
    takingGain = (float) Math.max(LEAST_GAIN, Math.min(MOST_GAIN, matchGain));
    takingFrom = (long) Math.floor(matchAt);
    takingShift = matchAt - takingFrom;
    takingUpTo = takingFrom;
    takenOut = true;
    if (plain) {
      add(matchAt + lead);
      keepBeat(matchAt + lead);
    }
  }

  /**
   * Finds where, within a frame of where it is due, the learnt click takes most of the sound away,
   * and how loud it is there: {@code matchAt} and {@code matchGain}. Differences are held against
   * each other, in which a low string still ringing weighs less.
   *
   * @return whether the click would be plain to hear if it were there
   */
  private boolean match(float[] x, float[] click, double start, long firstFrame) {
    double least = Double.POSITIVE_INFINITY;
    boolean plain = false;
    for (int step = -MATCH_STEPS; step <= MATCH_STEPS; step++) {
      double at = start + step * MATCH_STEP_FRAMES;
      int index = (int) (Math.floor(at) - firstFrame);
      float part = (float) (at - Math.floor(at));
      double dot = 0;
      double own = 1e-12;
      double all = 1e-12;
      for (int i = 2; i < look; i++) {
        float s = shifted(click, i, part) - shifted(click, i - 1, part);
        float v = x[index + i] - x[index + i - 1];
        dot += s * v;
        own += s * s;
        all += v * v;
      }
      plain |= own > PLAIN_SHARE * all;
      double left = all - 2 * dot + own;
      if (left < least) {
        least = left;
        matchGain = dot / own;
        matchAt = at;
      }
    }
    return plain;
  }

  private static float shifted(float[] s, int i, float part) {
    return s[i + 1] * (1 - part) + s[i] * part;
  }

  private void subtract(float[] x, long end, long firstFrame) {
    long last = Math.min(end, takingFrom + length);
    for (long frame = takingUpTo; frame < last; frame++) {
      x[(int) (frame - firstFrame)] -=
          takingGain * shifted(sound[takingKind], (int) (frame - takingFrom), (float) takingShift);
    }
    takingUpTo = last;
    if (takingUpTo == takingFrom + length) {
      taking = false;
    }
  }

  private static double likeness(float[] x, int at, float[] s, int count) {
    double dot = 0;
    double a = 1e-12;
    double b = 1e-12;
    for (int i = 0; i < count; i++) {
      dot += x[at + i] * s[i + 1];
      a += x[at + i] * x[at + i];
      b += s[i + 1] * s[i + 1];
    }
    return dot / Math.sqrt(a * b);
  }

  /** Period of the grid in frames if one is running. */
  OptionalDouble grid() {
    return running ? OptionalDouble.of(gridFrame) : OptionalDouble.empty();
  }
}
