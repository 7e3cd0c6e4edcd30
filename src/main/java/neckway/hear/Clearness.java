package neckway.hear;

/**
 * Whether an estimate of a pitch is clear enough to be told: the less clear it is, or the further
 * from the nearest semitone, the longer it is waited for. Numbers set on development takes
 * (docs/decisions/ear.md).
 */
final class Clearness {
  /** Longer periods, under 179 Hz, take longer. */
  private static final double LOW_PERIOD_SECONDS = 0.0056;

  /** Estimates in a row that agree. */
  private static final int AGREEING = 3;

  /** Of a pitch as clear and as near to a semitone as this, in semitones. */
  private static final double SURE_CLARITY = 0.93;

  private static final double SURE_SEMITONES = 0.22;

  /** Its least age, in seconds and in periods. */
  private static final double SURE_SECONDS = 0.018;

  private static final double SURE_PERIODS = 1.8;

  /** Of a fair one; its least age, and that of a low one. */
  private static final double FAIR_CLARITY = 0.88;

  private static final double FAIR_SEMITONES = 0.3;
  private static final double FAIR_SECONDS = 0.03;
  private static final double FAIR_LOW_SECONDS = 0.045;

  /** Of a poor one; its least age, and that of a low one. */
  private static final double POOR_CLARITY = 0.8;

  private static final double POOR_SEMITONES = 0.4;
  private static final double POOR_SECONDS = 0.045;
  private static final double POOR_LOW_SECONDS = 0.06;

  /** Of any other, with one estimate more. */
  private static final double LAST_CLARITY = 0.75;

  private static final double LAST_SECONDS = 0.07;

  /** Age up to which a pitch a fret away may be two notes at once. */
  private static final double BETWEEN_SECONDS = 0.05;

  /** A pitch a fret away that is less clear than this may be two notes at any age. */
  private static final double BETWEEN_CLARITY = 0.9;

  private final SettledPitches pitches;

  Clearness(SettledPitches pitches) {
    this.pitches = pitches;
  }

  /**
   * @param pitch MIDI note number with its fraction
   * @param clarity 0 to 1
   * @param agreeing estimates in a row
   * @param ageSeconds of the attack
   */
  boolean isClear(
      double pitch, double periodSeconds, double clarity, int agreeing, double ageSeconds) {
    if (agreeing < AGREEING) {
      return false;
    }
    double inTune = pitches.inTune(pitch);
    double off = Math.abs(inTune - Math.rint(inTune));
    boolean low = periodSeconds > LOW_PERIOD_SECONDS;
    if (clarity > SURE_CLARITY && off < SURE_SEMITONES) {
      return ageSeconds > Math.max(SURE_SECONDS, SURE_PERIODS * periodSeconds);
    }
    boolean fair = clarity > FAIR_CLARITY && off < FAIR_SEMITONES;
    boolean poor = clarity > POOR_CLARITY && off < POOR_SEMITONES;
    return fair && ageSeconds > (low ? FAIR_LOW_SECONDS : FAIR_SECONDS)
        || poor && ageSeconds > (low ? POOR_LOW_SECONDS : POOR_SECONDS)
        || agreeing > AGREEING && clarity > LAST_CLARITY && ageSeconds > LAST_SECONDS;
  }

  /**
   * Whether a pitch so near to the last note's may be the last note and one further on that sound
   * at once.
   *
   * @param distance in semitones
   */
  static boolean maybeBetween(double distance, double clarity, double ageSeconds) {
    return distance > PitchSteps.SAME
        && distance < PitchSteps.NEXT_FRET
        && (ageSeconds < BETWEEN_SECONDS || clarity < BETWEEN_CLARITY);
  }
}
