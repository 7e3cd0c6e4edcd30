package neckway.drill;

/**
 * The pulse of a drill.
 *
 * @param tempo beats a minute, 20 to 400
 * @param notesPerBeat 1 or more
 * @param beatsPerBar 1 or more
 * @param countIn beats clicked before the first step
 */
public record Pulse(double tempo, int notesPerBeat, int beatsPerBar, int countIn) {
  /** The slowest tempo, beats a minute. */
  public static final double SLOWEST = 20;

  /** The fastest tempo, beats a minute. */
  public static final double FASTEST = 400;

  /** The most notes in a beat. */
  public static final int MOST_NOTES_PER_BEAT = 8;

  /** Seconds from one slot to the next. */
  public double slotSeconds() {
    return 60 / tempo / notesPerBeat;
  }

  /** Seconds from one beat to the next. */
  public double beatSeconds() {
    return 60 / tempo;
  }

  /** The same at another tempo, beats a minute. */
  public Pulse withTempo(double beats) {
    return new Pulse(beats, notesPerBeat, beatsPerBar, countIn);
  }
}
