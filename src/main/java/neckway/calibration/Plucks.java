package neckway.calibration;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import neckway.hear.Ear;
import neckway.hear.HeardNote;
import neckway.hear.NoteListener;
import neckway.neck.Pitch;
import neckway.string.Drive;
import neckway.string.OverdrivenCurve;
import neckway.string.Stiffness;
import neckway.string.StiffnessCurve;
import neckway.string.StiffnessEstimate;
import neckway.string.amp.OverdrivenNote;

/**
 * Listens to a calibration take: samples in, the notes with what each tells of stiffness out. It
 * holds on to the last {@value #KEPT_SECONDS} s of sound, however long the take is.
 */
public final class Plucks {
  /**
   * Of how much of a note the spectrum is read, seconds: no more than a run gives, so that what the
   * amp does to a run's notes it does to these. A longer stretch was tried and is worse: as the
   * pluck dies away, the strings plucked before it are heard beside it.
   */
  static final double WINDOW_SECONDS = 0.15;

  /** A note's sound ends this long before the next one's onset, seconds. */
  static final double BEFORE_NEXT_SECONDS = 0.015;

  /** The ear has a note at the latest this long after its onset, seconds. */
  private static final double DECIDED_SECONDS = 0.3;

  /** How much of a note is fitted, seconds. */
  private static final double FIT_SECONDS = 0.4;

  /** The common pool leaves one processor to whoever waits for it, which is idle then. */
  private static final ForkJoinPool FITTERS =
      new ForkJoinPool(Runtime.getRuntime().availableProcessors());

  /** So many fits may wait to be made; a recording, which is heard faster, waits for them. */
  private static final int AHEAD = 4;

  /** Natural logarithms of the least and the greatest B of a string that may be plucked. */
  private static final double LN_LEAST = Math.log(9e-6);

  private static final double LN_GREATEST = Math.log(2.5e-3);

  private static final double KEPT_SECONDS = 2;
  private static final int CHUNK = 1024;

  private final double sampleRateHz;
  private final Ear ear;
  private final Stiffness stiffness;
  private final float[] kept;
  private final List<HeardNote> notes = new ArrayList<>();
  private final OverdrivenNote overdriven;
  private final List<Optional<StiffnessEstimate>> estimates = new ArrayList<>();

  /**
   * Fits, much more work than all else, are made beside the listening, which they must not hold.
   */
  private final List<ForkJoinTask<Optional<OverdrivenNote.Optima>>> fits = new ArrayList<>();

  private final NoteListener listener =
      new NoteListener() {
        @Override
        public void heard(HeardNote note) {
          notes.add(note);
        }

        @Override
        public void listenedUntil(double seconds) {
          // notes are read once their sound is whole
        }
      };
  private long frames;

  /** Sound of the first note that is not read yet, once it is whole. */
  private float[] sound;

  /**
   * @param sampleRateHz 8,000 to 192,000
   */
  public Plucks(double sampleRateHz) {
    this.sampleRateHz = sampleRateHz;
    ear = new Ear(sampleRateHz);
    stiffness = new Stiffness(sampleRateHz);
    overdriven = new OverdrivenNote(sampleRateHz);
    kept = new float[(int) Math.ceil(KEPT_SECONDS * sampleRateHz)];
  }

  /** Takes samples from -1 to 1, in blocks of any size. */
  public void feed(float[] samples, int offset, int length) {
    for (int at = 0; at < length; ) {
      int now = Math.min(length - at, CHUNK - (int) (frames % CHUNK));
      for (int i = 0; i < now; i++) {
        kept[(int) ((frames + i) % kept.length)] = samples[offset + at + i];
      }
      ear.process(samples, offset + at, now, listener);
      frames += now;
      at += now;
      if (frames % CHUNK == 0) {
        read(false);
      }
    }
  }

  /** The notes so far in the order heard, at once; a view that grows. */
  public List<HeardNote> heard() {
    return Collections.unmodifiableList(notes);
  }

  /** The sound is over: the notes, in order of time. */
  public List<Pluck> finish() {
    ear.finish(listener);
    read(true);
    double driven =
        Drive.ofTake(
            estimates.stream().flatMap(Optional::stream).mapToDouble(r -> r.drivenEvidence()));
    List<Pluck> plucks = new ArrayList<>();
    for (int i = 0; i < notes.size(); i++) {
      Optional<StiffnessEstimate> estimate = estimates.get(i).map(r -> r.givenDriven(driven));
      Optional<OverdrivenNote.Optima> fit = fits.get(i).join();
      Optional<StiffnessCurve> heard =
          estimate.map(r -> fit.isPresent() ? new OverdrivenCurve(r, fit.get()) : r);
      plucks.add(new Pluck(notes.get(i).time(), ear.settledPitch(i), heard));
    }
    plucks.sort((a, b) -> Double.compare(a.time(), b.time()));
    return plucks;
  }

  /** Seconds of sound so far. */
  public double seconds() {
    return frames / sampleRateHz;
  }

  /**
   * Cuts out each note's sound once it is whole, and reads it once the ear has settled on the
   * note's pitch, which is when it has the next one.
   */
  private void read(boolean over) {
    while (estimates.size() < notes.size()) {
      int at = estimates.size();
      boolean settled = over || at + 1 < notes.size();
      if (sound == null) {
        double onset = notes.get(at).time();
        double end = onset + FIT_SECONDS;
        if (at + 1 < notes.size()) {
          end = Math.min(end, notes.get(at + 1).time() - BEFORE_NEXT_SECONDS);
        }
        if (!settled && seconds() < end + DECIDED_SECONDS) {
          return;
        }
        sound = cut(onset, Math.min(end, seconds()));
      }
      if (!settled) {
        return;
      }
      double hz = Pitch.hz(ear.settledPitch(at));
      int window = (int) Math.min(sound.length, WINDOW_SECONDS * sampleRateHz);
      estimates.add(stiffness.read(sound, 0, window, hz));
      if (at >= AHEAD) {
        fits.get(at - AHEAD).join();
      }
      float[] whole = sound;
      fits.add(
          FITTERS.submit(() -> overdriven.optima(whole, whole.length, hz, LN_LEAST, LN_GREATEST)));
      sound = null;
    }
  }

  private float[] cut(double onset, double end) {
    long from = Math.max(Math.round(onset * sampleRateHz), frames - kept.length);
    long to = Math.max(from, Math.round(end * sampleRateHz));
    float[] cut = new float[(int) (to - from)];
    for (int i = 0; i < cut.length; i++) {
      cut[i] = kept[(int) ((from + i) % kept.length)];
    }
    return cut;
  }
}
