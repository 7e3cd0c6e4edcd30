package neckway.hear;

import java.util.List;
import java.util.OptionalDouble;

/** Samples in, notes out, the same for any block size. */
public final class Ear {
  static final double LOWEST_HZ = 38;
  static final double HIGHEST_HZ = 1400;
  static final double HOP_SECONDS = 0.0029;
  private static final int SIZE = 1 << 15;
  private static final int KEEP = 1 << 13;

  static java.io.PrintStream debug;

  private final double sampleRateHz;
  private final Decimator decimator;
  private final double rateHz;
  private final int hop;
  private final float[] x = new float[SIZE];
  private final float[] y = new float[SIZE / 2];
  private final float[] z = new float[KEEP];
  private int filled;
  private long dropped;
  private long framesIn;
  private int sinceHop;
  private final Flux flux;
  private final int fluxSize;
  private final PeriodFinder finder;
  private final PeriodFinder tracker;
  private double hp1, hp2, hp3, hp4;
  private final double[] hpCoefficients;

  // current note
  private boolean sounding;
  private double curPitch;
  private double curPeriod; // frames at rateHz
  private long curOnset; // frames at rateHz, absolute
  private double prevFlux, prevPrevFlux;

  // candidate
  private boolean candidate;
  private long candStamp;
  private long candRaised;
  private double candFlux, candHigh;
  private double evalPitch;
  private int evalAgree;

  // tracker
  private int trackTick;
  private double trackPitch;
  private int trackCount;
  private long trackFirst;
  private boolean trackSemitone;

  public Ear(double sampleRateHz) {
    if (!(sampleRateHz >= 8_000 && sampleRateHz <= 192_000)) {
      throw new IllegalArgumentException("sample rate " + sampleRateHz + " Hz");
    }
    this.sampleRateHz = sampleRateHz;
    int factor = Math.max(1, (int) (sampleRateHz / 20_000));
    decimator = new Decimator(factor);
    rateHz = sampleRateHz / factor;
    hop = (int) Math.round(HOP_SECONDS * rateHz) & ~1;
    int size = 128;
    while (size * 2 <= rateHz * 0.026) {
      size *= 2;
    }
    fluxSize = size;
    flux = new Flux(rateHz, size);
    finder = new PeriodFinder(rateHz, LOWEST_HZ);
    tracker = new PeriodFinder(rateHz / 2, LOWEST_HZ);
    filled = KEEP;
    dropped = -KEEP;
    // 2nd-order Butterworth high-pass at 60 Hz
    double w = Math.tan(Math.PI * 60 / rateHz);
    double n = 1 / (1 + Math.sqrt(2) * w + w * w);
    hpCoefficients = new double[] {n, 2 * (w * w - 1) * n, (1 - Math.sqrt(2) * w + w * w) * n};
  }

  public void expectClicks(double firstBeat, double beatSeconds) {}

  public void process(float[] samples, int offset, int length, NoteListener listener) {
    for (int i = 0; i < length; i++) {
      framesIn++;
      if (!decimator.accept(samples[offset + i])) {
        continue;
      }
      double in = decimator.value();
      double out =
          hpCoefficients[0] * (in - 2 * hp1 + hp2)
              - hpCoefficients[1] * hp3
              - hpCoefficients[2] * hp4;
      hp2 = hp1;
      hp1 = in;
      hp4 = hp3;
      hp3 = out;
      if (filled == SIZE) {
        System.arraycopy(x, SIZE - KEEP, x, 0, KEEP);
        System.arraycopy(y, (SIZE - KEEP) / 2, y, 0, KEEP / 2);
        dropped += SIZE - KEEP;
        filled = KEEP;
      }
      x[filled++] = (float) out;
      if ((filled & 1) == 0) {
        y[filled / 2 - 1] = 0.25f * x[filled - 3] + 0.5f * x[filled - 2] + 0.25f * x[filled - 1];
      }
      if (++sinceHop == hop) {
        sinceHop = 0;
        hop(listener);
      }
    }
  }

  private double seconds(long frame) {
    return (frame * (double) Math.round(sampleRateHz / rateHz) - decimator.delayFrames())
        / sampleRateHz;
  }

  private double now() {
    return framesIn / sampleRateHz;
  }

  private void hop(NoteListener listener) {
    flux.process(x, filled);
    long end = dropped + filled;
    double rise = flux.risen();
    if (rise > 0.8 && rise >= prevFlux) {
      boolean better = candidate && rise > candFlux * 1.0;
      if (candidate && rise > 1.3 * candFlux && end - candRaised >= 0.04 * rateHz) {
        candidate = false;
      }
      if (!candidate && (!sounding || end - curOnset > 0.045 * rateHz)) {
        candidate = true;
        candFlux = 0;
        candHigh = 0;
        candRaised = end;
        better = true;
        evalAgree = 0;
      }
      if (better && end - candRaised < 0.04 * rateHz) {
        candFlux = rise;
        candHigh = flux.highRise();
        long stamp = stamp(end);
        if (Math.abs(stamp - candStamp) > 0.004 * rateHz) {
          evalAgree = 0;
        }
        candStamp = stamp;
      }
    }
    prevPrevFlux = prevFlux;
    prevFlux = rise;
    if (candidate) {
      judge(end, listener);
    }
    if (++trackTick >= 2) {
      trackTick = 0;
      track(end, listener);
    }
    listener.listenedUntil(now());
  }

  /** Energy change point in the high-passed sound within the last 25 ms. */
  private long stamp(long end) {
    int to = (int) (end - dropped);
    int from = to - (int) (0.030 * rateHz);
    int frame = Math.max(4, (int) (0.0007 * rateHz));
    int n = (to - from) / frame;
    double bestScore = Double.NEGATIVE_INFINITY;
    int best = n / 2;
    double[] e = new double[n];
    for (int k = 0; k < n; k++) {
      double s = 1e-9;
      for (int i = from + k * frame; i < from + (k + 1) * frame; i++) {
        float d = x[i] - 2 * x[i - 1] + x[i - 2];
        s += d * d;
      }
      e[k] = s;
    }
    for (int k = 6; k < n - 3; k++) {
      double before = 0, after = 0;
      int nb = Math.min(k, 18), na = Math.min(n - k, 7);
      for (int j = k - nb; j < k; j++) before += e[j];
      for (int j = k; j < k + na; j++) after += e[j];
      before /= nb;
      after /= na;
      double all = (before * nb + after * na) / (nb + na);
      double score = (nb + na) * Math.log(all) - nb * Math.log(before) - na * Math.log(after);
      if (after > before && score > bestScore) {
        bestScore = score;
        best = k;
      }
    }
    // fine: first sample in the frame before / of the change that is large
    int at = from + best * frame;
    double level = 0;
    for (int i = at; i < Math.min(to, at + 3 * frame); i++)
      level = Math.max(level, Math.abs(x[i] - 2 * x[i - 1] + x[i - 2]));
    for (int i = at - frame / 2; i < at + 2 * frame; i++) {
      if (Math.abs(x[i] - 2 * x[i - 1] + x[i - 2]) > 0.3 * level) {
        at = i;
        break;
      }
    }
    return dropped + at;
  }

  private void judge(long end, NoteListener listener) {
    double age = (end - candStamp) / rateHz;
    if (age < 0.011) {
      return;
    }
    int from = (int) (candStamp - dropped) + (int) (0.001 * rateHz);
    int to = filled;
    int longest = (int) (rateHz / LOWEST_HZ);
    int shortest = (int) (rateHz / HIGHEST_HZ);
    to = Math.min(to, from + (int) (0.05 * rateHz));
    boolean found = finder.find(x, from, to, shortest, longest);
    double pitch = found ? finder.pitch() : 0;
    double clarity = found ? finder.clarity() : 0;
    double period = found ? finder.periodFrames() : 0;
    if (sounding && (!found || clarity < 0.95 || Math.abs(pitch - curPitch) < 0.6)) {
      // old note's ringing taken out
      int p = (int) Math.round(curPeriod);
      int src = (int) (candStamp - dropped) - (int) (0.002 * rateHz);
      int len = to - from;
      for (int i = 0; i < len; i++) {
        int k = from + i - src;
        int back = (k / p + 1) * p;
        z[i] = x[from + i] - x[Math.max(0, from + i - back)];
      }
      if (finder.find(z, 0, len, shortest, longest)
          && finder.clarity() > Math.max(0.9, clarity)
          && Math.abs(finder.pitch() - curPitch) > 0.6) {
        found = true;
        pitch = finder.pitch();
        clarity = finder.clarity();
        period = finder.periodFrames();
      }
    }
    if (debug != null) {
      debug.printf(
          "  eval %.4f age %.1f found %s pitch %.2f clarity %.3f flux %.2f high %.2f%n",
          now(), age * 1000, found, pitch, clarity, candFlux, candHigh);
    }
    if (found && clarity >= 0.88) {
      evalAgree = Math.abs(pitch - evalPitch) < 0.4 ? evalAgree + 1 : 1;
      evalPitch = pitch;
    } else {
      evalAgree = 0;
    }
    boolean same = sounding && Math.abs(pitch - curPitch) < 0.6;
    double fraction = Math.abs(pitch - Math.rint(pitch));
    boolean clear =
        age > 0.045 || (fraction < 0.3 && age > 0.016) || (fraction < 0.4 && age > 0.03);
    if (evalAgree >= 2 && clear) {
      if (!same || candFlux > 2.0) {
        emit(
            candStamp,
            pitch,
            period,
            candFlux > 1.2 ? HeardNote.Start.PLUCK : HeardNote.Start.LEGATO,
            listener);
        candidate = false;
        return;
      }
      if (age > 0.05) {
        candidate = false;
      }
    }
    if (age > 0.1) {
      candidate = false;
    }
  }

  private void emit(
      long onset, double pitch, double period, HeardNote.Start start, NoteListener listener) {
    sounding = true;
    curPitch = pitch;
    curPeriod = period;
    curOnset = onset;
    trackCount = 0;
    if (debug != null) {
      debug.printf("NOTE %.4f %.2f %s at %.4f%n", seconds(onset), pitch, start, now());
    }
    listener.heard(
        new HeardNote(seconds(onset), (int) Math.round(pitch), pitch, start, true, -20, now()));
  }

  private void track(long end, NoteListener listener) {
    if (!sounding) {
      return;
    }
    int to = filled / 2;
    int from = to - (int) (0.034 * rateHz / 2);
    double age = (end - curOnset) / rateHz;
    if (age < 0.04) {
      return;
    }
    if (!tracker.find(
        y, from, to, (int) (rateHz / 2 / HIGHEST_HZ), (int) (rateHz / 2 / LOWEST_HZ))) {
      trackCount = 0;
      return;
    }
    double clarity = tracker.clarity();
    double pitch = tracker.pitch();
    if (clarity > 0.93 && Math.abs(pitch - curPitch) < 0.5) {
      // follow slowly
      curPitch += 0.2 * (pitch - curPitch);
      curPeriod += 0.2 * (2 * tracker.periodFrames() - curPeriod);
      trackCount = 0;
      return;
    }
    if (clarity > 0.93 && Math.abs(pitch - curPitch) > 0.65) {
      if (trackCount > 0 && Math.abs(pitch - trackPitch) < 0.4) {
        trackCount++;
      } else {
        trackCount = 1;
        trackFirst = end;
        trackSemitone = Math.abs(pitch - curPitch) < 1.5;
      }
      trackPitch = pitch;
      int need = trackSemitone ? 9 : 4;
      double old = tracker.likenessAt(curPeriod / 2);
      if (trackCount >= need && old < 0.8 && !candidate) {
        emit(
            trackFirst - (long) (0.027 * rateHz),
            pitch,
            2 * tracker.periodFrames(),
            HeardNote.Start.LEGATO,
            listener);
      }
    } else {
      trackCount = 0;
    }
  }

  public void finish(NoteListener listener) {
    listener.listenedUntil(now());
  }

  public OptionalDouble tuningCents() {
    return OptionalDouble.empty();
  }

  public double peakDbfs() {
    return -120;
  }

  public double noiseDbfs() {
    return -120;
  }

  public List<Double> clicks() {
    return List.of();
  }
}
