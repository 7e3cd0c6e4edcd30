package neckway.calibration;

/**
 * What the stiffness of an open string usually is, before it is heard: by its pitch, from the sets
 * measured on a solid-body electric, a hum-bucker electric and an acoustic with wound third (B from
 * the lowest string: 132, 66, 49, 108, 40, 14; 224, 110, 73, 97, 28, 10; 95, 60, 44, 34, 54, 15
 * millionths), their geometric means; lower strings as they go on. A weak belief: it decides only
 * where a string's plucks tell next to nothing.
 */
final class UsualStrings {
  /** How far ln B of a string may well be from the usual, standard deviation. */
  static final double SPREAD = 0.7;

  private static final int[] MIDI = {28, 35, 40, 45, 50, 55, 59, 64};
  private static final double[] MILLIONTHS = {350, 220, 141, 76, 54, 71, 39, 13};

  private UsualStrings() {}

  /**
   * Natural logarithm of the usual B.
   *
   * @param openMidi MIDI note number of the open string
   */
  static double lnStiffness(int openMidi) {
    int i = 1;
    while (i < MIDI.length - 1 && openMidi > MIDI[i]) {
      i++;
    }
    double share = (double) (openMidi - MIDI[i - 1]) / (MIDI[i] - MIDI[i - 1]);
    share = Math.max(0, Math.min(1, share));
    double low = Math.log(1e-6 * MILLIONTHS[i - 1]);
    return low + share * (Math.log(1e-6 * MILLIONTHS[i]) - low);
  }
}
