package neckway.drill;

import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * The pulse of a drill.
 *
 * @param tempo beats a minute, 20 to 400
 * @param notesPerBeat 1 or more
 * @param beatsPerBar 1 or more
 * @param countIn beats clicked before the first beat
 * @param swing the share of a pair of notes that the first one takes, 0.5 to 0.75; 0.5 is straight.
 *     With 2, 4, 6 or 8 notes a beat the pairs are those of a beat; with an odd number there are
 *     none
 * @param offsetBeats the first step comes so many beats after the first beat: a whole number of
 *     notes
 */
public record Pulse(
    double tempo,
    int notesPerBeat,
    int beatsPerBar,
    int countIn,
    double swing,
    double offsetBeats) {
  /** The swing of notes that are all as long. */
  public static final double STRAIGHT = 0.5;

  /** The most that the first note of a pair can take: a dotted one, and a short one. */
  public static final double MOST_SWING = 0.75;

  /** The latest first step, beats. */
  public static final double LATEST_OFFSET = 16;

  /** So near to a whole number of notes an offset is meant as one, so that 0.33 is a third. */
  private static final double WHOLE = 0.05;

  /** The slowest tempo, beats a minute. */
  public static final double SLOWEST = 20;

  /** The fastest tempo, beats a minute. */
  public static final double FASTEST = 400;

  /** The most notes in a beat. */
  public static final int MOST_NOTES_PER_BEAT = 8;

  /** Straight, and from the first beat on. */
  public Pulse(double tempo, int notesPerBeat, int beatsPerBar, int countIn) {
    this(tempo, notesPerBeat, beatsPerBar, countIn, STRAIGHT, 0);
  }

  /** The same feel at another tempo. */
  public Pulse withTempo(double otherTempo) {
    return new Pulse(otherTempo, notesPerBeat, beatsPerBar, countIn, swing, offsetBeats);
  }

  /** The same with other notes in a beat; a feel that they cannot have becomes the plain one. */
  public Pulse withNotesPerBeat(int notes) {
    Pulse plain = new Pulse(tempo, notes, beatsPerBar, countIn);
    double kept = notes % 2 == 0 ? swing : STRAIGHT;
    return plain.withFeel(kept, isWhole(offsetBeats * notes) ? offsetBeats : 0);
  }

  /** The same tempo and beats with another feel. */
  public Pulse withFeel(double otherSwing, double otherOffsetBeats) {
    return new Pulse(tempo, notesPerBeat, beatsPerBar, countIn, otherSwing, otherOffsetBeats);
  }

  /**
   * The swing, where these notes can have it.
   *
   * @throws BadInput if the notes of a beat are no pairs
   */
  public Pulse checkedSwing() {
    if (swing != STRAIGHT && notesPerBeat % 2 != 0) {
      throw new BadInput(Wording.counted("music.pulse.noPairs", notesPerBeat, swing, notesPerBeat));
    }
    return this;
  }

  /**
   * The offset, where a note can be there.
   *
   * @throws BadInput if it is no whole number of notes
   */
  public Pulse checkedOffset() {
    if (!isWhole(offsetBeats * notesPerBeat)) {
      String note = notesPerBeat == 1 ? "1" : "1/" + notesPerBeat;
      throw new BadInput(Wording.of("music.pulse.noNote", offsetBeats, note));
    }
    return this;
  }

  private static boolean isWhole(double notes) {
    return Math.abs(notes - Math.rint(notes)) <= WHOLE;
  }

  /** Where the slots lie. */
  public Slots slots() {
    return new Slots(swing, (int) Math.rint(offsetBeats * notesPerBeat));
  }

  /** Seconds from the first beat to where a step is due. */
  public double dueSeconds(int step) {
    return slots().position(step) * slotSeconds();
  }

  /** Whether it is played straight and from the first beat on. */
  public boolean isPlain() {
    return slots().equals(Slots.EVEN);
  }

  /** Seconds from one slot to the next, on the whole. */
  public double slotSeconds() {
    return 60 / tempo / notesPerBeat;
  }

  /** Seconds from one beat to the next. */
  public double beatSeconds() {
    return 60 / tempo;
  }
}
