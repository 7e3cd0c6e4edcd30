package neckway.string;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import neckway.hear.HeardNote;
import neckway.neck.GuitarString;
import neckway.neck.Pitch;
import neckway.string.amp.OverdrivenNote;
import neckway.string.amp.StringModelComparison;

/**
 * Keeps the last seconds of the sound and has the stretch after each onset examined, up to the next
 * onset or {@link #LONGEST_SECONDS}, whichever is first. String and amplifier can be fitted to it
 * besides, which is much more work and done where spectrum and hand together leave the string open
 * ({@link StringEvidence#closer}).
 */
public final class NoteSounds {
  /** More of a note than this is not waited for. */
  static final double LONGEST_SECONDS = 0.2;

  /** So much of a note tells its string in clean sound. */
  static final double USUAL_SECONDS = 0.16;

  /**
   * Strings that lie no farther apart than that, in standard deviations of one note, are not worth
   * the work of a closer look.
   */
  private static final double ALIKE = 0.7;

  /** Left out before the next onset, whose attack may begin ahead of its stamp. */
  private static final double CLEAR_SECONDS = 0.004;

  /** How far back the ear may name a note. */
  private static final double KEPT_SECONDS = 1.5;

  private final double sampleRateHz;
  private final Stiffness stiffness;
  private final Drive drive = new Drive();
  private final StringLikelihood likelihood;
  private final OverdrivenNote overdriven;
  private final SoundListener listener;
  private final float[] ring;
  private final float[] stretch;
  private final Deque<HeardNote> open = new ArrayDeque<>();
  private long frames;

  /**
   * @param sampleRateHz of the sound
   * @param guitar that is played
   * @param frets of its neck
   * @param listener told of each note
   */
  public NoteSounds(double sampleRateHz, GuitarProfile guitar, int frets, SoundListener listener) {
    this.sampleRateHz = sampleRateHz;
    this.stiffness = new Stiffness(sampleRateHz);
    this.likelihood = new StringLikelihood(guitar, frets);
    this.overdriven = new OverdrivenNote(sampleRateHz);
    this.listener = Objects.requireNonNull(listener);
    this.ring = new float[(int) (KEPT_SECONDS * sampleRateHz)];
    this.stretch = new float[(int) (LONGEST_SECONDS * sampleRateHz) + 1];
  }

  /** The longest block that may be fed at once, frames. */
  public int longestBlock() {
    return ring.length / 4;
  }

  /** Takes the sound before the ear hears it. */
  public void feed(float[] samples, int offset, int length) {
    for (int done = 0; done < length; ) {
      int at = (int) (frames % ring.length);
      int now = Math.min(length - done, ring.length - at);
      System.arraycopy(samples, offset + done, ring, at, now);
      frames += now;
      done += now;
    }
  }

  /** The ear heard a note. */
  public void heard(HeardNote note) {
    while (!open.isEmpty()) {
      HeardNote before = open.removeFirst();
      examine(before, Math.min(note.time() - CLEAR_SECONDS, end(before)), note.decided());
    }
    open.addLast(note);
  }

  /** The ear has listened until here. */
  public void listenedUntil(double seconds) {
    while (!open.isEmpty() && end(open.peekFirst()) <= seconds) {
      HeardNote note = open.removeFirst();
      examine(note, end(note), seconds);
    }
  }

  /** The sound is over. */
  public void finish() {
    double seconds = frames / sampleRateHz;
    while (!open.isEmpty()) {
      HeardNote note = open.removeFirst();
      examine(note, Math.min(seconds, end(note)), seconds);
    }
  }

  private static double end(HeardNote note) {
    return note.time() + LONGEST_SECONDS;
  }

  private void examine(HeardNote note, double end, double now) {
    long from = Math.round(note.time() * sampleRateHz);
    long sounding = Math.max(0, Math.round(end * sampleRateHz) - from);
    int length = (int) Math.min(stretch.length, sounding);
    Optional<StringEvidence> evidence = Optional.empty();
    if (from >= Math.max(0, frames - ring.length)) {
      int at = (int) (from % ring.length);
      int whole = Math.min(length, ring.length - at);
      System.arraycopy(ring, at, stretch, 0, whole);
      System.arraycopy(ring, 0, stretch, whole, length - whole);
      evidence = weigh(note, length);
    }
    listener.sounded(note, evidence.orElseGet(() -> likelihood.even(note.midi())), now);
  }

  private Optional<StringEvidence> weigh(HeardNote note, int length) {
    double f0Hz = Pitch.hz(note.pitch());
    int usual = Math.min(length, (int) Math.round(USUAL_SECONDS * sampleRateHz));
    Optional<StiffnessEstimate> one = stiffness.read(stretch, 0, usual, f0Hz).map(drive::known);
    return one.map(
        estimate -> {
          StringEvidence spectrum = likelihood.of(note.midi(), estimate);
          float[] sound = Arrays.copyOf(stretch, length);
          return new StringEvidence(
              spectrum.logs(),
              Optional.of(estimate),
              Optional.of(strings -> closer(note.midi(), f0Hz, sound, spectrum, strings)));
        });
  }

  private StringEvidence closer(
      int midi, double f0Hz, float[] sound, StringEvidence spectrum, Set<GuitarString> strings) {
    List<GuitarString> fitted = List.copyOf(strings);
    List<StringModelComparison.Candidate> candidates = likelihood.candidates(midi, fitted);
    if (alike(candidates)) {
      return spectrum;
    }
    return overdriven
        .weigh(sound, sound.length, f0Hz, candidates)
        .map(fits -> likelihood.fitted(spectrum, fitted, fits))
        .orElse(spectrum);
  }

  private static boolean alike(List<StringModelComparison.Candidate> candidates) {
    for (StringModelComparison.Candidate a : candidates) {
      for (StringModelComparison.Candidate b : candidates) {
        double apart = Math.abs(a.lnStiffness() - b.lnStiffness());
        if (apart > ALIKE * Math.hypot(a.spread(), b.spread())) {
          return false;
        }
      }
    }
    return true;
  }
}
