package neckway.hear;

import neckway.hear.signal.FrontEnd;
import neckway.hear.signal.HumRemover;
import neckway.hear.signal.SoundEnergy;
import neckway.hear.signal.SoundLevels;

/**
 * Whether a pitch may be mains hum, 50 or 60 Hz. Numbers set on development takes with hum
 * (docs/decisions/ear.md).
 */
final class Mains {
  /** As near as this, a quarter of a semitone, a pitch may be the mains. */
  private static final double NEAR_SHARE = 0.016;

  /** Time in which {@link HumRemover} learns the hum; till then nothing is taken off. */
  private static final double LEARNING_SECONDS = 0.4;

  /** Sound that is looked at for its level: one turn of the mains. */
  private static final double LEVEL_SECONDS = 0.02;

  /** A note is this many times the power of the quiet, which the hum makes up: 9 dB. */
  private static final double OVER_QUIET = 8;

  /** A note is at least this share of the loudest note's power: 20 dB under it. */
  private static final double LEAST_OF_LOUDEST = 0.01;

  private final FrontEnd front;
  private final SoundLevels levels;

  Mains(FrontEnd front, SoundLevels levels) {
    this.front = front;
    this.levels = levels;
  }

  /** Whether a pitch is that of the mains. */
  static boolean near(double pitch) {
    double hz = 440 * Math.pow(2, (pitch - 69) / 12);
    return Math.abs(hz / 50 - 1) < NEAR_SHARE || Math.abs(hz / 60 - 1) < NEAR_SHARE;
  }

  /** Whether this is of the mains' pitch, and early or far softer than any note so far. */
  boolean maybeHum(double pitch, long end) {
    if (!near(pitch)) {
      return false;
    }
    int to = front.index(end);
    double power = SoundEnergy.mean(front.x, to - (int) (LEVEL_SECONDS * front.rateHz), to);
    return end < LEARNING_SECONDS * front.rateHz
        || power < Math.max(OVER_QUIET * levels.noise(), LEAST_OF_LOUDEST * levels.loudest());
  }
}
