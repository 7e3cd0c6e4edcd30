package neckway.string.amp;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import neckway.string.amp.OverdrivenStringFit.Fitted;

/**
 * Finds the stiffness of the string of a note that comes through an overdriven amplifier, by
 * fitting string and amplifier together ({@link OverdrivenString}). Such a fit has many local
 * optima, so it is begun from several strengths of drive, and from a row of stiffnesses where the
 * strings are not known.
 */
public final class OverdrivenNote {
  /** From this long after the onset the sound is used: the pick and the note before are gone. */
  static final double SKIP_SECONDS = 0.02;

  /**
   * Share of notes whose fits favour a wrong string, where all is explained and where it is not.
   */
  private static final double ASTRAY = 0.005;

  private static final double ASTRAY_UNEXPLAINED = 0.0005;

  /** Share of notes among whose stiffnesses that fit is not the true one, at best and at worst. */
  private static final double UNFOUND = 0.05;

  private static final double UNFOUND_UNEXPLAINED = 0.4;

  /** What is left over where the share is half way between, squared. */
  private static final double HALF_WAY = 6;

  /**
   * Where the best string is less likely than that among the others, the fits are done again from a
   * little later in the note on: half of what makes a fit go astray is new then.
   */
  private static final double PLAIN = 0.97;

  private static final double LATER_SECONDS = 0.01;

  private static final double TOP_HZ = 3500;
  private static final double TOP_OF_RATE = 0.45;
  private static final int MOST_HARMONICS = 18;
  private static final int FEWEST_HARMONICS = 12;

  /** So many are enough where the strings are known; the work grows with their third power. */
  private static final int MOST_TO_WEIGH = 14;

  private static final int FEWEST_TO_WEIGH = 11;

  /** The pitch is measured anew on so many harmonics. */
  private static final int PITCHED = 2;

  /**
   * How far the highest harmonic may be from where the formula puts it, as a share: half a cent.
   */
  private static final double FORMULA = 3e-4;

  /**
   * What a fit leaves of a harmonic, as a share of its strength, on low notes and at the least; in
   * between it falls with the pitch to a power, since a note with a higher pitch has fewer partials
   * and more periods in a window.
   */
  private static final double ERROR = 0.05;

  private static final double LEAST_ERROR = 0.01;
  private static final double LOW_HZ = 150;
  private static final double FALL = 1.5;

  /** Steps between the stiffnesses that are tried, and how far each may then go, in ln B. */
  private static final double GRID = 0.4;

  private static final double FREE = 0.2;

  /** What lies no farther apart than this is one answer, in ln B. */
  private static final double SAME = 0.1;

  /** Beginnings that each is tried from at once; more as long as that does not solve it. */
  private static final int DRIVES = 2;

  /** And as long as what is left over becomes less by such a factor each time. */
  private static final double GAIN = 0.9;

  private static final int REFINED = 4;

  private final double sampleRateHz;

  /**
   * How well strings fit a note.
   *
   * @param logLikelihoods one for each, up to a constant
   * @param astray share of such notes whose fits tell nothing true
   */
  public record Weighed(double[] logLikelihoods, double astray) {
    /** Whether one string is far ahead. */
    boolean plain() {
      double most = most();
      return 1 > PLAIN * Arrays.stream(logLikelihoods).map(log -> Math.exp(log - most)).sum();
    }

    /** The mean of two looks at one note: much the same sound, so not their sum. */
    Weighed and(Weighed other) {
      double most = most();
      double otherMost = other.most();
      double[] mean = new double[logLikelihoods.length];
      for (int i = 0; i < mean.length; i++) {
        mean[i] = 0.5 * (logLikelihoods[i] - most + other.logLikelihoods[i] - otherMost);
      }
      return new Weighed(mean, 0.5 * (astray + other.astray));
    }

    private double most() {
      return Arrays.stream(logLikelihoods).max().orElseThrow();
    }
  }

  /**
   * A string that fits better than those about as stiff.
   *
   * @param lnStiffness natural logarithm of B
   * @param error standard error of that
   * @param logLikelihood the higher, the better it fits
   */
  public record Optimum(double lnStiffness, double error, double logLikelihood) {}

  /**
   * The stiffnesses that fit a note.
   *
   * @param all the best first
   * @param astray share of such notes whose fits tell nothing true
   * @param harmonics how many were looked at
   */
  public record Optima(List<Optimum> all, double astray, int harmonics) {
    /**
     * What the highest harmonic, a little off the formula, makes of ln B: much where B is small.
     */
    public double formulaError(double lnStiffness) {
      return 2 * FORMULA / (Math.exp(lnStiffness) * harmonics * harmonics);
    }
  }

  /**
   * @param sampleRateHz 8,000 to 192,000
   */
  public OverdrivenNote(double sampleRateHz) {
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
  public Optional<Weighed> weigh(
      float[] samples, int frames, double f0Hz, List<StringModelComparison.Candidate> candidates) {
    Optional<Weighed> first = weighOnce(samples, frames, f0Hz, candidates);
    int later = (int) Math.round(LATER_SECONDS * sampleRateHz);
    if (first.map(Weighed::plain).orElse(true) || frames <= later) {
      return first;
    }
    float[] rest = Arrays.copyOfRange(samples, later, frames);
    Optional<Weighed> second = weighOnce(rest, rest.length, f0Hz, candidates);
    return second.map(first.get()::and).or(() -> first);
  }

  private Optional<Weighed> weighOnce(
      float[] samples, int frames, double f0Hz, List<StringModelComparison.Candidate> candidates) {
    return tracks(samples, frames, f0Hz, FEWEST_TO_WEIGH, MOST_TO_WEIGH)
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
  public Optional<Optima> optima(
      float[] samples, int frames, double f0Hz, double lowest, double highest) {
    return tracks(samples, frames, f0Hz, FEWEST_HARMONICS, MOST_HARMONICS)
        .map(tracks -> optima(tracks, lowest, highest))
        .filter(o -> !o.all().isEmpty());
  }

  private Optional<HarmonicTracks> tracks(
      float[] samples, int frames, double f0Hz, int fewest, int most) {
    int skip = (int) Math.round(SKIP_SECONDS * sampleRateHz);
    int wished = Math.max(fewest, Math.min(most, (int) (TOP_HZ / f0Hz)));
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

  private static OverdrivenStringFit fine(HarmonicTracks tracks) {
    double error = ERROR * Math.min(1, Math.pow(LOW_HZ / tracks.f0Hz, FALL));
    return new OverdrivenStringFit(tracks, tracks.harmonics, Math.max(LEAST_ERROR, error));
  }

  private static Weighed weigh(
      HarmonicTracks tracks, List<StringModelComparison.Candidate> candidates) {
    StringModelComparison contest = new StringModelComparison(() -> fine(tracks), candidates);
    double left = contest.left();
    return new Weighed(contest.logLikelihoods(), ASTRAY + ASTRAY_UNEXPLAINED * left * left);
  }

  private static Optima optima(HarmonicTracks tracks, double lowest, double highest) {
    OverdrivenStringFit fit = fine(tracks);
    int ln = fit.other(OverdrivenString.LN_STIFFNESS);
    int steps = (int) Math.ceil((highest - lowest) / GRID);
    List<Fitted> best = List.of();
    double left = Double.POSITIVE_INFINITY;
    boolean gained = true;
    for (int from = 0;
        from < OverdrivenStringFit.BEGINNINGS && gained && left > OverdrivenStringFit.SOLVED;
        from += DRIVES) {
      List<Fitted> tried = new ArrayList<>(best);
      for (int i = 0; i <= steps; i++) {
        for (int b = from; b < from + DRIVES; b++) {
          double[] p = fit.beginning(b);
          p[ln] = lowest + i * (highest - lowest) / steps;
          tried.add(improved(fit, p, 6, 2));
        }
      }
      best =
          apart(tried, ln).stream()
              .limit(REFINED)
              .map(a -> improved(fit, a.parameters(), 15, 6))
              .toList();
      best = apart(best, ln);
      double now = fit.left(best.get(0).misfit());
      gained = now < GAIN * left;
      left = now;
    }
    List<Optimum> optima =
        best.stream()
            .map(a -> optimum(fit, a))
            .filter(o -> Double.isFinite(o.error()) && Double.isFinite(o.logLikelihood()))
            .toList();
    double unexplained = left * left / (HALF_WAY + left * left);
    return new Optima(
        optima, UNFOUND + (UNFOUND_UNEXPLAINED - UNFOUND) * unexplained, tracks.harmonics);
  }

  private static Fitted improved(OverdrivenStringFit fit, double[] from, int steps, int weighings) {
    double[] p = from.clone();
    fit.expect(p[fit.other(OverdrivenString.LN_STIFFNESS)], FREE);
    return new Fitted(p, fit.improve(p, steps, weighings));
  }

  /** The best first, and of those about as stiff only the best. */
  private static List<Fitted> apart(List<Fitted> all, int ln) {
    List<Fitted> kept = new ArrayList<>();
    for (Fitted a : all.stream().sorted(Comparator.comparingDouble(Fitted::misfit)).toList()) {
      double at = a.parameters()[ln];
      if (kept.stream().noneMatch(k -> Math.abs(k.parameters()[ln] - at) < SAME)) {
        kept.add(a);
      }
    }
    return kept;
  }

  private static Optimum optimum(OverdrivenStringFit fit, Fitted a) {
    int ln = fit.other(OverdrivenString.LN_STIFFNESS);
    double error = Math.sqrt(fit.misfitPerNat(a.misfit()) / 2) * fit.error(a.parameters(), ln);
    return new Optimum(a.parameters()[ln], error, fit.logLikelihood(a.misfit()));
  }
}
