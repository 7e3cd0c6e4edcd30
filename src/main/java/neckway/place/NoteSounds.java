package neckway.place;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import neckway.hear.HeardNote;

/**
 * Keeps the last seconds of the sound and has the stretch after each onset examined, up to the next
 * onset or {@link #LONGEST_SECONDS}, whichever is first. Where {@link #USUAL_SECONDS} of it leave
 * the string open, or the sound is overdriven, stretches of several lengths are weighed together:
 * what an amplifier makes of the partials falls on a string's partials by chance, and otherwise in
 * each.
 */
public final class NoteSounds {
  /** More of a note than this is not waited for. */
  static final double LONGEST_SECONDS = 0.2;

  /** So much of a note tells its string in clean sound. */
  static final double USUAL_SECONDS = 0.16;

  private static final int SEVERAL = 3;

  /** A shorter stretch and one that nearly is the note, as shares of it. */
  private static final double SHORTER = 0.6;

  private static final double NEARLY_ALL = 0.8;

  /** Where a string has no such share of the likelihood, further stretches are weighed. */
  static final double SURE = 0.98;

  /** What one of several stretches of the same note counts. */
  static final double OF_SEVERAL = 0.6;

  /** Left out before the next onset, whose attack may begin ahead of its stamp. */
  private static final double CLEAR_SECONDS = 0.004;

  /** How far back the ear may name a note. */
  private static final double KEPT_SECONDS = 1.5;

  private final double sampleRateHz;
  private final Stiffness stiffness;
  private final Drive drive = new Drive();
  private final StringLikelihood likelihood;
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
    for (int i = 0; i < length; i++) {
      ring[(int) ((frames + i) % ring.length)] = samples[offset + i];
    }
    frames += length;
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
    int length = (int) Math.min(stretch.length, Math.round(end * sampleRateHz) - from);
    Optional<StringEvidence> evidence = Optional.empty();
    if (from >= Math.max(0, frames - ring.length)) {
      for (int i = 0; i < length; i++) {
        stretch[i] = ring[(int) ((from + i) % ring.length)];
      }
      evidence = weigh(note, length);
    }
    listener.sounded(note, evidence.orElseGet(() -> likelihood.even(note.midi())), now);
  }

  private Optional<StringEvidence> weigh(HeardNote note, int length) {
    double f0Hz = 440 * Math.pow(2, (note.pitch() - 69) / 12);
    int usual = Math.min(length, (int) Math.round(USUAL_SECONDS * sampleRateHz));
    Optional<StiffnessReading> one = stiffness.read(stretch, 0, usual, f0Hz).map(drive::known);
    Optional<StringEvidence> evidence = one.map(reading -> likelihood.of(note.midi(), reading));
    if (evidence.isEmpty() || evidence.get().share() >= SURE && !evidence.get().driven()) {
      return evidence;
    }
    List<StiffnessReading> several = new ArrayList<>(List.of(one.get()));
    for (double share : new double[] {SHORTER, usual < length ? 1 : NEARLY_ALL}) {
      stiffness.read(stretch, 0, (int) Math.round(share * length), f0Hz).ifPresent(several::add);
    }
    return several.size() < SEVERAL
        ? evidence
        : Optional.of(
            likelihood.of(
                note.midi(),
                StiffnessReading.together(several, OF_SEVERAL, one.get().drivenBeforehand())));
  }
}
