package neckway.place;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Finds the stiffness of the string of a note that comes through an overdriven amplifier, by
 * fitting string and amplifier together ({@link BentTone}). Such a fit has many local optima, so it
 * is begun from a row of stiffnesses and strengths of drive, roughly and on few frames, and the
 * best of these are gone on with.
 */
final class OverdrivenNote {
  /** From this long after the onset the sound is used: the pick and the note before are gone. */
  static final double SKIP_SECONDS = 0.02;

  /**
   * A misfit higher by this much makes a string less likely by one nat where all is explained:
   * frames overlap, and what the model leaves out goes through all of them. Where more is left
   * over, it takes more, by the square.
   */
  private static final double MISFIT_PER_NAT = 3;

  /** Share of notes whose best fit is none, where all is explained and where it is not. */
  private static final double ASTRAY = 0.012;

  private static final double ASTRAY_UNEXPLAINED = 0.006;

  /** How far the fits of one string stray from note to note, standard deviation of ln B. */
  static final double STRAY = 0.03;

  private static final double TOP_HZ = 3500;
  private static final double TOP_OF_RATE = 0.45;
  private static final int MOST_HARMONICS = 18;
  private static final int FEWEST_HARMONICS = 12;

  /** The pitch is measured anew on so many harmonics. */
  private static final int PITCHED = 2;

  /**
   * How far the highest harmonic may be from where the formula puts it, as a share: half a cent.
   */
  private static final double FORMULA = 3e-4;

  private static final double ERROR = 0.05;
  private static final double ROUGH_ERROR = 0.3;
  private static final int ROUGH_FRAMES = 3;
  private static final double[] DRIVES = {0.5, 1, 2, 4, 8};

  /** The same where the stiffness is sought over the whole range, for time's sake. */
  private static final double[] FEW_DRIVES = {0.8, 3};

  /** Steps between the stiffnesses that are tried, and how far each may then go, in ln B. */
  private static final double GRID = 0.4;

  private static final double FREE = 0.2;

  /** So far beyond what is asked for the row goes, in ln B. */
  private static final double MARGIN = 0.3;

  private static final int KEPT = 8;
  private static final int REFINED = 3;

  private final double sampleRateHz;

  /**
   * A string that may have been played.
   *
   * @param lnStiffness natural logarithm of B expected of the sounding length
   * @param spread standard deviation of that logarithm from note to note
   */
  record Candidate(double lnStiffness, double spread) {}

  /**
   * How well strings fit a note.
   *
   * @param logLikelihoods one for each, up to a constant
   * @param astray share of such notes whose fits tell nothing true
   */
  record Weighed(double[] logLikelihoods, double astray) {}

  /**
   * A string that fits better than those about as stiff.
   *
   * @param lnStiffness natural logarithm of B
   * @param error standard error of that
   * @param logLikelihood the higher, the better it fits
   */
  record Optimum(double lnStiffness, double error, double logLikelihood) {}

  /**
   * The stiffnesses that fit a note.
   *
   * @param all the best first
   * @param astray share of such notes whose fits tell nothing true
   */
  record Optima(List<Optimum> all, double astray) {}

  private record Attempt(double[] parameters, double misfit) {}

  /**
   * @param sampleRateHz 8,000 to 192,000
   */
  OverdrivenNote(double sampleRateHz) {
    this.sampleRateHz = sampleRateHz;
  }

  /**
   * How well each of some strings fits a note.
   *
   * @param samples mono
   * @param frames how many of them, from the onset at the first, are sound of this note
   * @param f0Hz its fundamental, known to some 5 cents
   * @param candidates at least one
   * @return empty where the note is too short, or nothing could be worked out
   */
  Optional<Weighed> weigh(float[] samples, int frames, double f0Hz, List<Candidate> candidates) {
    return tracks(samples, frames, f0Hz)
        .map(tracks -> weigh(tracks, candidates))
        .filter(w -> Arrays.stream(w.logLikelihoods()).allMatch(Double::isFinite));
  }

  /**
   * The stiffnesses that fit a note, of any string.
   *
   * @param lowest natural logarithm of the least B that is thought of
   * @param highest of the greatest
   * @return empty where the note is too short, or nothing could be worked out
   */
  Optional<Optima> optima(float[] samples, int frames, double f0Hz, double lowest, double highest) {
    return tracks(samples, frames, f0Hz)
        .map(tracks -> optima(tracks, lowest, highest))
        .filter(o -> !o.all().isEmpty());
  }

  private Optional<HarmonicTracks> tracks(float[] samples, int frames, double f0Hz) {
    int skip = (int) Math.round(SKIP_SECONDS * sampleRateHz);
    int wished = Math.max(FEWEST_HARMONICS, Math.min(MOST_HARMONICS, (int) (TOP_HZ / f0Hz)));
    int harmonics = Math.min(wished, (int) (TOP_OF_RATE * sampleRateHz / f0Hz));
    if (frames <= skip || harmonics < PITCHED) {
      return Optional.empty();
    }
    return HarmonicTracks.of(samples, skip, frames - skip, sampleRateHz, f0Hz, PITCHED)
        .flatMap(
            t -> {
              double hz = f0Hz + t.offHz();
              return HarmonicTracks.of(samples, skip, frames - skip, sampleRateHz, hz, harmonics);
            });
  }

  private static BentToneFit fine(HarmonicTracks tracks) {
    return new BentToneFit(tracks, tracks.harmonics, ERROR);
  }

  private static Weighed weigh(HarmonicTracks tracks, List<Candidate> candidates) {
    BentToneFit fit = fine(tracks);
    int ln = fit.other(BentTone.LN_STIFFNESS);
    double lowest = candidates.stream().mapToDouble(Candidate::lnStiffness).min().orElseThrow();
    double highest = candidates.stream().mapToDouble(Candidate::lnStiffness).max().orElseThrow();
    List<Attempt> attempts = rough(tracks, fit, lowest, highest, DRIVES);
    Attempt first = best(fit, attempts).get(0);
    double[] best = first.parameters;
    double[] misfits = new double[candidates.size()];
    for (int c = 0; c < misfits.length; c++) {
      Candidate candidate = candidates.get(c);
      double reach = 2 * candidate.spread();
      Attempt from = refined(fit, best, candidate, reach);
      Attempt near =
          attempts.stream()
              .filter(a -> Math.abs(a.parameters[ln] - candidate.lnStiffness()) < GRID)
              .min(Comparator.comparingDouble(Attempt::misfit))
              .map(a -> refined(fit, a.parameters, candidate, reach))
              .orElse(from);
      misfits[c] = Math.min(from.misfit, near.misfit);
    }
    double left = left(tracks, Math.min(first.misfit, Arrays.stream(misfits).min().orElseThrow()));
    double[] log = new double[misfits.length];
    for (int c = 0; c < log.length; c++) {
      // what is spread widely is the less likely to lie just there
      log[c] = -misfits[c] / perNat(left) - Math.log(Math.hypot(candidates.get(c).spread(), STRAY));
    }
    return new Weighed(log, astray(left));
  }

  /** What such an error of the highest harmonic makes of ln B: much where B is small. */
  private static double formulaError(HarmonicTracks tracks, double lnStiffness) {
    return 2 * FORMULA / (Math.exp(lnStiffness) * tracks.harmonics * tracks.harmonics);
  }

  /** Misfit of each number that was to be explained. */
  private static double left(HarmonicTracks tracks, double misfit) {
    return misfit / (tracks.harmonics * tracks.frames);
  }

  private static double perNat(double left) {
    return MISFIT_PER_NAT * (1 + left * left);
  }

  private static double astray(double left) {
    return ASTRAY + ASTRAY_UNEXPLAINED * left * left;
  }

  private static Optima optima(HarmonicTracks tracks, double lowest, double highest) {
    BentToneFit fit = fine(tracks);
    int ln = fit.other(BentTone.LN_STIFFNESS);
    List<Attempt> best = best(fit, rough(tracks, fit, lowest, highest, FEW_DRIVES));
    double left = left(tracks, best.get(0).misfit);
    double perNat = perNat(left);
    List<Optimum> optima =
        best.stream()
            .map(
                a ->
                    new Optimum(
                        a.parameters[ln],
                        Math.hypot(
                            Math.sqrt(perNat / 2) * fit.error(a.parameters, ln),
                            formulaError(tracks, a.parameters[ln])),
                        -a.misfit / perNat))
            .filter(o -> Double.isFinite(o.error()) && Double.isFinite(o.logLikelihood()))
            .toList();
    return new Optima(optima, astray(left));
  }

  /** Fits few frames loosely, from many beginnings; the best first. */
  private static List<Attempt> rough(
      HarmonicTracks tracks, BentToneFit fine, double lowest, double highest, double[] drives) {
    BentToneFit fit = new BentToneFit(tracks.every(ROUGH_FRAMES), fine.partials(), ROUGH_ERROR);
    double width = highest - lowest + 2 * MARGIN;
    int steps = (int) Math.ceil(width / GRID);
    List<Attempt> attempts = new ArrayList<>();
    for (int i = 0; i <= steps; i++) {
      double ln = lowest - MARGIN + i * width / steps;
      for (double drive : drives) {
        double[] p = beginning(tracks, fit, drive);
        p[fit.other(BentTone.LN_STIFFNESS)] = ln;
        fit.expect(ln, FREE);
        attempts.add(new Attempt(p, fit.improve(p, 8, 2)));
      }
    }
    attempts.sort(Comparator.comparingDouble(Attempt::misfit));
    return attempts;
  }

  /** Goes on with the best. */
  private static List<Attempt> best(BentToneFit fit, List<Attempt> attempts) {
    Stream<Attempt> closer = attempts.stream().limit(KEPT).map(a -> again(fit, a, 2, 1));
    return closer
        .sorted(Comparator.comparingDouble(Attempt::misfit))
        .limit(REFINED)
        .map(a -> again(fit, a, 15, 6))
        .sorted(Comparator.comparingDouble(Attempt::misfit))
        .toList();
  }

  private static Attempt again(BentToneFit fit, Attempt attempt, int steps, int weighings) {
    double[] p = attempt.parameters.clone();
    fit.expect(p[fit.other(BentTone.LN_STIFFNESS)], FREE);
    return new Attempt(p, fit.improve(p, steps, weighings));
  }

  private static Attempt refined(
      BentToneFit fit, double[] from, Candidate candidate, double reach) {
    double[] p = from.clone();
    int ln = fit.other(BentTone.LN_STIFFNESS);
    double middle = candidate.lnStiffness();
    p[ln] = Math.max(middle - reach, Math.min(middle + reach, p[ln]));
    fit.expect(middle, candidate.spread());
    return new Attempt(p, fit.improve(p, 15, 6));
  }

  /** The string as it would be if the amplifier changed nothing, but so much louder. */
  private static double[] beginning(HarmonicTracks tracks, BentToneFit fit, double drive) {
    double[] p = new double[fit.parameters()];
    int at = tracks.frames / 3;
    double most = 1e-12;
    for (int j = 0; j < fit.partials(); j++) {
      int i = j * tracks.frames + at;
      most = Math.max(most, Math.hypot(tracks.re[i], tracks.im[i]));
    }
    for (int j = 0; j < fit.partials(); j++) {
      int i = j * tracks.frames + at;
      p[j] = drive * tracks.re[i] / most;
      p[fit.partials() + j] = drive * tracks.im[i] / most;
    }
    p[fit.other(BentTone.BIAS)] = 0.1;
    p[fit.other(BentTone.LOSS)] = 3;
    p[fit.other(BentTone.LOSS_HIGH)] = 3;
    p[fit.other(BentTone.SECOND_SHARE)] = 0.15;
    return p;
  }
}
