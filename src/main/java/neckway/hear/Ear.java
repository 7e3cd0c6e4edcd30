package neckway.hear;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import neckway.hear.signal.FrontEnd;
import neckway.hear.signal.SoundEnergy;
import neckway.hear.signal.SoundLevels;
import neckway.hear.signal.SpectralFlux;

/**
 * Samples in, notes out, the same for any block size.
 *
 * <p>A rise of the spectrum ({@link SpectralFlux}) raises a possible attack, whose instant is a
 * change point in the time domain ({@link PossibleAttack}). From some ten milliseconds on the pitch
 * of what is new is looked for at each hop until it is clear ({@link AttackNaming}). A pitch that
 * changes without an attack opens a note too ({@link PitchTracker}). Nothing is allocated but the
 * note itself.
 */
public final class Ear {
  /** Lowest pitch that is looked for: a little under E1, 41.2 Hz. */
  public static final double LOWEST_HZ = 38;

  /**
   * Highest pitch that is looked for: a little over E6, 1,319 Hz, the 24th fret of an E4 string.
   */
  public static final double HIGHEST_HZ = 1_400;

  /** From one look at the sound to the next; {@link FrontEnd} rounds it to whole frames. */
  static final double HOP_SECONDS = 0.0029;

  /** Window of the spectrum, at most. Set on development takes. */
  private static final double FLUX_SECONDS = 0.026;

  /** Sound, up to when a note is told, whose level is the note's. */
  private static final double LEVEL_SECONDS = 0.012;

  private final double sampleRateHz;
  private final FrontEnd front;
  private final SpectralFlux flux;
  private final SoundLevels levels = new SoundLevels();
  private final SettledPitches pitches = new SettledPitches();
  private final SoundingNote note = new SoundingNote();
  private final PossibleAttack attack;
  private final AttackNaming naming;
  private final PitchTracker tracker;
  private long framesIn;
  private boolean trackNow;

  /**
   * @param sampleRateHz 8,000 to 192,000
   * @throws IllegalArgumentException for any other rate
   */
  public Ear(double sampleRateHz) {
    this(sampleRateHz, LOWEST_HZ);
  }

  /**
   * An ear for a guitar whose lowest note is known. Lower pitches are not looked for: of a guitar
   * that is heard to play one, another note was taken for it, or something else sounded.
   *
   * @param sampleRateHz 8,000 to 192,000
   * @param lowestHz lowest pitch that is looked for; not lower than {@link #LOWEST_HZ}
   * @throws IllegalArgumentException for any other rate or pitch
   */
  public Ear(double sampleRateHz, double lowestHz) {
    if (!(lowestHz >= LOWEST_HZ && lowestHz < HIGHEST_HZ / 2)) {
      throw new IllegalArgumentException("lowest pitch " + lowestHz + " Hz");
    }
    if (!(sampleRateHz >= 8_000 && sampleRateHz <= 192_000)) {
      throw new IllegalArgumentException("sample rate " + sampleRateHz + " Hz");
    }
    this.sampleRateHz = sampleRateHz;
    front = new FrontEnd(sampleRateHz, HOP_SECONDS);
    flux = new SpectralFlux(front.rateHz, fluxSize(front.rateHz));
    NewNotePitch newPitch = new NewNotePitch(front.rateHz / 2, lowestHz, HIGHEST_HZ);
    PitchChange change = new PitchChange(front.rateHz / 2);
    attack = new PossibleAttack(front, note, change, newPitch);
    naming = new AttackNaming(front, attack, note, newPitch, change, levels, pitches);
    tracker = new PitchTracker(front, attack, note, change, lowestHz);
  }

  /** The greatest power of two of frames within {@value #FLUX_SECONDS} s. */
  private static int fluxSize(double rateHz) {
    return Integer.highestOneBit((int) (FLUX_SECONDS * rateHz));
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
    int from = offset;
    while (from < offset + length) {
      int taken = front.accept(samples, from, offset + length - from);
      levels.samples(samples, from, from + taken);
      from += taken;
      framesIn += taken;
      if (front.ready()) {
        while (front.advance()) {
          hop(listener);
        }
        listener.listenedUntil(now());
      }
    }
  }

  /** Ends the take: what is still open is decided. */
  public void finish(NoteListener listener) {
    pitches.end(note);
    listener.listenedUntil(now());
  }

  private double now() {
    return framesIn / sampleRateHz;
  }

  private void hop(NoteListener listener) {
    long end = front.end();
    int to = front.index(end);
    flux.process(front.x, to);
    levels.hop(SoundEnergy.mean(front.x, to - front.hop, to));
    attack.hop(flux, end);
    if (attack.isOpen()) {
      tell(naming.judge(end), listener);
    }
    trackNow = !trackNow;
    if (trackNow) {
      tell(tracker.follow(end), listener);
    }
  }

  private void tell(Optional<NewNote> found, NoteListener listener) {
    if (found.isPresent()) {
      tell(found.get(), listener);
    }
  }

  private void tell(NewNote found, NoteListener listener) {
    int to = front.index(front.end());
    double power = SoundEnergy.mean(front.x, to - (int) (LEVEL_SECONDS * front.rateHz), to);
    pitches.close(note);
    pitches.open(found.pitch());
    note.begin(found, power);
    levels.note(power);
    attack.forgetUnnamed();
    tracker.noteTold();
    listener.heard(
        new HeardNote(
            pitches.count() - 1,
            front.seconds(found.onsetFrame()),
            (int) Math.rint(pitches.inTune(found.pitch())),
            found.pitch(),
            found.start(),
            found.start() == HeardNote.Start.PLUCK,
            peakDbfs(front.index(found.onsetFrame()), to),
            now()));
  }

  private double peakDbfs(int from, int to) {
    float top = 0;
    for (int i = from; i < to; i++) {
      top = Math.max(top, Math.abs(front.x[i]));
    }
    return 20 * Math.log10(top + 1e-6);
  }

  /**
   * The pitch that a note came to while it sounded, more exact than the one it was told with.
   *
   * @param index of the note, in the order told
   */
  public double settledPitch(int index) {
    return pitches.pitch(index);
  }

  /**
   * Whether a note's pitch stood still while it sounded, as a plucked string's does and a voice's
   * does not; true of one that still sounds.
   *
   * @param index of the note, in the order told
   */
  public boolean isSteady(int index) {
    return pitches.isSteady(index);
  }

  /** The guitar's offset from A4 = 440 Hz in cents, -50 to 50, once enough notes tell it. */
  public OptionalDouble tuningCents() {
    return pitches.tuningCents();
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
