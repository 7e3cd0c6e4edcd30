package neckway.string.amp;

import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.function.IntConsumer;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import neckway.string.amp.OverdrivenStringFit.Fitted;

/**
 * Fits several strings to one note, each from the same beginnings and from what was found for the
 * others, until one is ahead by much or no beginning brings more.
 */
public final class StringModelComparison {
  /**
   * Nobody catches up with a lead of so many nats, where the leader leaves no more than that of the
   * harmonics, as a share of their strength.
   */
  private static final double LEAD = 7;

  private static final double EXPLAINED = 0.07;

  /** What leaves more is most often a wrong valley. */
  private static final double SOLVED = 0.06;

  /** A round that lowers the misfits by no more than that in all, as a logarithm, was idle. */
  private static final double GAIN = 0.05;

  /** After so many idle rounds nothing more is expected of a fit that is solved. */
  private static final int IDLE_ROUNDS = 2;

  /** The same where the strings lie no farther apart than {@link #CLOSE}: all in one valley. */
  private static final int IDLE_ROUNDS_CLOSE = 1;

  /** In ln B. */
  private static final double CLOSE = 0.3;

  /** A fit that is not solved by then will not be. */
  private static final int MOST_ROUNDS = 4;

  /** Steps of a fit for each weighing of the frames, and weighings. */
  private static final int STEPS = 6;

  private static final int WEIGHINGS = 5;

  /** How much less a string's stiffness may stray before it is known how good the fits are. */
  private static final double FIRST_SHARPNESS = 0.5;

  /**
   * A string that may have been played.
   *
   * @param lnStiffness natural logarithm of B expected of the sounding length
   * @param spread standard deviation of that logarithm from note to note
   */
  public record Candidate(double lnStiffness, double spread) {}

  private final List<OverdrivenStringFit> fits;
  private final List<Candidate> candidates;
  private final int ln;
  private final Fitted[] best;

  /** Whose parameters the others began from last. */
  private Fitted followed;

  /**
   * Fits them, side by side on as many processors as are free.
   *
   * @param fit of the note; asked for once for each string
   * @param candidates at least one
   */
  StringModelComparison(Supplier<OverdrivenStringFit> fit, List<Candidate> candidates) {
    this.fits = candidates.stream().map(c -> fit.get()).toList();
    this.candidates = candidates;
    this.ln = fits.get(0).other(OverdrivenString.LN_STIFFNESS);
    this.best = new Fitted[candidates.size()];
    int idleRounds = apart(candidates) < CLOSE ? IDLE_ROUNDS_CLOSE : IDLE_ROUNDS;
    double before = Double.POSITIVE_INFINITY;
    int idle = 0;
    for (int round = 0; round < MOST_ROUNDS && !decided(); round++) {
      round(round);
      double sum = Arrays.stream(best).mapToDouble(a -> Math.log(a.misfit())).sum();
      idle = before - sum < GAIN ? idle + 1 : 0;
      before = sum;
      if (idle >= idleRounds && leftShare() < SOLVED) {
        break;
      }
    }
  }

  /** One for each string, up to a constant. */
  double[] logLikelihoods() {
    double[] log = new double[best.length];
    for (int c = 0; c < log.length; c++) {
      double spread = candidates.get(c).spread();
      double z = (best[c].parameters()[ln] - candidates.get(c).lnStiffness()) / spread;
      // what is spread widely is the less likely to lie just there
      log[c] =
          fits.get(c).logLikelihood(best[c].misfit())
              - 0.5 * z * z
              - Math.log(Math.hypot(spread, OverdrivenStringFit.STRAY));
    }
    return log;
  }

  /** What the best fit leaves of each number that was to be explained. */
  double left() {
    return fits.get(0).left(best[leader()].misfit());
  }

  private double leftShare() {
    return fits.get(0).leftShare(best[leader()].misfit());
  }

  private static double apart(List<Candidate> candidates) {
    DoubleSummaryStatistics ln =
        candidates.stream().mapToDouble(Candidate::lnStiffness).summaryStatistics();
    return ln.getMax() - ln.getMin();
  }

  private void round(int round) {
    double sharpness = best[0] == null ? FIRST_SHARPNESS : sharpness();
    sideBySide(
        c -> {
          double[] p = fits.get(c).beginning(round);
          p[ln] = candidates.get(c).lnStiffness();
          improve(c, p, sharpness);
        });
    int leader = leader();
    Fitted ahead = best[leader];
    if (ahead == followed) {
      return;
    }
    followed = ahead;
    double sharper = sharpness();
    sideBySide(
        c -> {
          if (c != leader) {
            improve(c, ahead.parameters(), sharper);
          }
        });
    if (leader() != leader) {
      improve(leader, best[leader()].parameters(), sharpness());
    }
  }

  private void sideBySide(IntConsumer work) {
    IntStream.range(0, best.length).parallel().forEach(work);
  }

  private void improve(int c, double[] from, double sharpness) {
    Candidate candidate = candidates.get(c);
    double[] p = from.clone();
    double reach = 2 * candidate.spread();
    double off = p[ln] - candidate.lnStiffness();
    p[ln] = candidate.lnStiffness() + Math.max(-reach, Math.min(reach, off));
    double spread = candidate.spread() * sharpness;
    OverdrivenStringFit fit = fits.get(c);
    fit.expect(candidate.lnStiffness(), spread);
    double misfit = fit.improve(p, STEPS, WEIGHINGS);
    double z = (p[ln] - candidate.lnStiffness()) / spread;
    best[c] = Fitted.better(best[c], new Fitted(p, misfit - z * z));
  }

  /**
   * In the fit a deviation of one spread counts as a misfit of 1, and is half a nat; the more
   * misfit it takes for half a nat, the narrower the spread must be for the two to balance.
   */
  private double sharpness() {
    return Math.min(1, 1 / Math.sqrt(fits.get(0).misfitPerNat(best[leader()].misfit()) / 2));
  }

  private int leader() {
    int leader = 0;
    for (int c = 1; c < best.length; c++) {
      if (best[c].misfit() < best[leader].misfit()) {
        leader = c;
      }
    }
    return leader;
  }

  private boolean decided() {
    if (best[0] == null) {
      return false;
    }
    double[] log = logLikelihoods();
    Arrays.sort(log);
    int last = log.length - 1;
    return leftShare() < EXPLAINED && (last == 0 || log[last] - log[last - 1] > LEAD);
  }
}
