package neckway.place;

import java.util.Arrays;
import neckway.neck.GuitarString;

/**
 * Weighs the strings that have a note's pitch by the stiffness that its sound shows, given how the
 * guitar's strings were learnt.
 */
final class StringLikelihood {
  /** Share of notes whose sound says nothing true of their string. */
  static final double MISLEADING = 0.02;

  /** Gauss-Hermite nodes and weights of a normal distribution, five of them. */
  private static final double[] NODES = {-2.8569700, -1.3556262, 0, 1.3556262, 2.8569700};

  private static final double[] WEIGHTS = {
    0.011257411, 0.22207592, 0.53333333, 0.22207592, 0.011257411
  };

  private final GuitarProfile guitar;
  private final int frets;

  StringLikelihood(GuitarProfile guitar, int frets) {
    this.guitar = guitar;
    this.frets = frets;
  }

  /** What is known of a note whose sound tells nothing. */
  StringEvidence even(int midi) {
    return of(midi, lnStiffness -> 0);
  }

  /**
   * @param midi the note's MIDI note number
   * @param curve what its sound tells of stiffness
   */
  StringEvidence of(int midi, StiffnessCurve curve) {
    double[] log = new double[GuitarString.MAX_STRINGS];
    Arrays.fill(log, Double.NEGATIVE_INFINITY);
    double most = Double.NEGATIVE_INFINITY;
    for (StringProfile string : guitar.strings()) {
      int fret = midi - string.openMidi();
      if (fret >= 0 && fret <= frets) {
        int index = string.string().number() - 1;
        log[index] = log(string, fret, curve);
        most = Math.max(most, log[index]);
      }
    }
    double sum = 0;
    int candidates = 0;
    for (double l : log) {
      if (l > Double.NEGATIVE_INFINITY) {
        sum += Math.exp(l - most);
        candidates++;
      }
    }
    for (int i = 0; i < log.length; i++) {
      if (log[i] > Double.NEGATIVE_INFINITY) {
        double share = Math.exp(log[i] - most) / sum;
        log[i] = Math.log((1 - MISLEADING) * share + MISLEADING / candidates);
      }
    }
    return new StringEvidence(log);
  }

  private static double log(StringProfile string, int fret, StiffnessCurve curve) {
    double[] logs = new double[NODES.length];
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < NODES.length; i++) {
      logs[i] = curve.logLikelihood(string.lnStiffnessAt(fret) + string.spread() * NODES[i]);
      most = Math.max(most, logs[i]);
    }
    double sum = 0;
    for (int i = 0; i < NODES.length; i++) {
      sum += WEIGHTS[i] * Math.exp(logs[i] - most);
    }
    return most + Math.log(sum);
  }
}
