package neckway.string;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleBiFunction;
import neckway.neck.GuitarString;
import neckway.string.amp.OverdrivenNote;
import neckway.string.amp.StringModelComparison;

/**
 * Weighs the strings that have a note's pitch by the stiffness that its sound shows, given how the
 * guitar's strings were learnt.
 */
final class StringLikelihood {
  /** Share of notes whose sound says nothing true of their string. */
  static final double MISLEADING = 0.02;

  /** The same of overdriven sound, in which the amplifier covers the strings' own partials. */
  static final double MISLEADING_DRIVEN = 0.1;

  /**
   * Share of overdriven notes whose partials lie wholly under the exact harmonics that the
   * amplifier makes, so that any string sounds like one of next to no stiffness.
   */
  static final double COVERED = 0.1;

  /**
   * Share of overdriven notes of other strings whose spectrum and fits favour the least stiff one:
   * there is so little of their own partials in the sound that it seems to have none.
   */
  static final double COVERED_FIT = 0.03;

  /** B of a string that sounds so, and its spread. */
  private static final double LN_COVERED_STIFFNESS = Math.log(8e-6);

  private static final double COVERED_SPREAD = 0.5;

  private final GuitarProfile guitar;
  private final int frets;
  private final GuitarString leastStiff;

  StringLikelihood(GuitarProfile guitar, int frets) {
    this.guitar = guitar;
    this.frets = frets;
    this.leastStiff =
        guitar.strings().stream()
            .min(Comparator.comparingDouble(StringProfile::lnStiffness))
            .orElseThrow()
            .string();
  }

  /**
   * What the sound of a note tells.
   *
   * @param midi its MIDI note number
   */
  StringEvidence of(int midi, StiffnessEstimate estimate) {
    double driven = estimate.drivenBeforehand();
    double open = Math.log(1 - COVERED * driven);
    double covered =
        Math.log(COVERED * driven) + estimate.logLikelihood(LN_COVERED_STIFFNESS, COVERED_SPREAD);
    return weigh(
        midi,
        Optional.of(estimate),
        MISLEADING + (MISLEADING_DRIVEN - MISLEADING) * Math.max(0, 2 * driven - 1),
        (string, fret) ->
            StiffnessEstimate.sum(
                open + estimate.logLikelihoodOfString(string.lnStiffnessAt(fret), string.spread()),
                covered));
  }

  /**
   * What the fits of some strings to the note's sound tell on top of its spectrum.
   *
   * @param spectrum what its spectrum tells
   * @param strings that were fitted, all with the pitch
   * @param fits one for each
   */
  StringEvidence fitted(
      StringEvidence spectrum, List<GuitarString> strings, OverdrivenNote.Weighed fits) {
    double[] fit = fits.logLikelihoods();
    double most = Arrays.stream(fit).max().orElseThrow();
    double sum = Arrays.stream(fit).map(log -> Math.exp(log - most)).sum();
    double even = 1.0 / fit.length;
    double[] log = spectrum.logs();
    for (int i = 0; i < log.length; i++) {
      int at = strings.indexOf(new GuitarString(i + 1));
      double own = at < 0 ? even : Math.exp(fit[at] - most) / sum;
      log[i] += Math.log((1 - fits.astray()) * own + fits.astray() * even);
    }
    if (spectrum.driven() && strings.contains(leastStiff)) {
      double covered = Math.log(COVERED_FIT) + log[leastStiff.number() - 1];
      for (GuitarString string : strings) {
        if (!string.equals(leastStiff)) {
          int i = string.number() - 1;
          log[i] = StiffnessEstimate.sum(Math.log(1 - COVERED_FIT) + log[i], covered);
        }
      }
    }
    return new StringEvidence(log, spectrum.estimate(), Optional.empty());
  }

  /** The strings that were learnt, as they are at a note's fret, in the order given. */
  List<StringModelComparison.Candidate> candidates(int midi, List<GuitarString> strings) {
    return strings.stream()
        .map(
            string ->
                guitar.strings().stream()
                    .filter(s -> s.string().equals(string))
                    .map(
                        s ->
                            new StringModelComparison.Candidate(
                                s.lnStiffnessAt(midi - s.openMidi()), s.spread()))
                    .findFirst()
                    .orElseThrow())
        .toList();
  }

  /** What is known of a note whose sound tells nothing. */
  StringEvidence even(int midi) {
    return weigh(midi, Optional.empty(), MISLEADING, (string, fret) -> 0);
  }

  private StringEvidence weigh(
      int midi,
      Optional<StiffnessEstimate> estimate,
      double misleading,
      ToDoubleBiFunction<StringProfile, Integer> fit) {
    double[] log = new double[GuitarString.MAX_STRINGS];
    Arrays.fill(log, Double.NEGATIVE_INFINITY);
    double most = Double.NEGATIVE_INFINITY;
    for (StringProfile string : guitar.strings()) {
      int fret = midi - string.openMidi();
      if (fret >= 0 && fret <= frets) {
        int index = string.string().number() - 1;
        log[index] = fit.applyAsDouble(string, fret);
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
        log[i] = Math.log((1 - misleading) * share + misleading / candidates);
      }
    }
    return new StringEvidence(log, estimate, Optional.empty());
  }
}
