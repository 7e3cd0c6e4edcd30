package neckway.string.amp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import neckway.string.OverdrivenCurve;
import neckway.string.Stiffness;
import neckway.string.StiffnessCurve;
import neckway.string.StiffnessEstimate;
import org.junit.jupiter.api.Test;

/**
 * Strings made by Fletcher's formula (JASA 36, 1964), bent by one curve or another. The B are those
 * that Barbancho et al. (2012) measured on an electric guitar, brought to the fret by their law B x
 * 2^(fret / 6): open 40 millionths on the second string, 108 on the third and 66 on the fifth.
 */
class OverdrivenNoteTests {
  private static final double RATE = 44_100;
  private static final double HZ = 220;

  /** A3 on those strings: it is below the second, so that one is as if it were tuned down. */
  private static final double[] LN = {ln(40, -2), ln(108, 2), ln(66, 12)};

  private final OverdrivenNote note = new OverdrivenNote(RATE);

  private static double ln(double millionths, int fret) {
    return Math.log(1e-6 * millionths) + fret / 6.0 * Math.log(2);
  }

  private static float[] string(double lnStiffness, double seconds, DoubleUnaryOperator bend) {
    double b = Math.exp(lnStiffness);
    float[] x = new float[(int) (seconds * RATE)];
    double low = 0;
    Random hiss = new Random(3);
    for (int n = 0; n < x.length; n++) {
      double t = n / RATE;
      double sum = 0;
      for (int k = 1; k < 25; k++) {
        double pick = Math.sin(0.17 * Math.PI * k) * Math.sin(0.11 * Math.PI * k) / k;
        double turn = 2 * Math.PI * HZ * k * Math.sqrt(1 + b * k * k) * t;
        sum += pick * Math.exp(-t * (2 + 0.05 * k * k)) * Math.sin(turn);
      }
      // a loudspeaker that rolls off from 4 kHz on
      low += (bend.applyAsDouble(sum) - low) * (1 - Math.exp(-2 * Math.PI * 4_000 / RATE));
      x[n] = (float) (0.5 * low + 1e-4 * hiss.nextGaussian());
    }
    return x;
  }

  private static List<StringModelComparison.Candidate> candidates() {
    return List.of(candidate(0), candidate(1), candidate(2));
  }

  private static StringModelComparison.Candidate candidate(int i) {
    return new StringModelComparison.Candidate(LN[i], 0.06);
  }

  private void tells(DoubleUnaryOperator bend) {
    for (int played = 0; played < LN.length; played++) {
      float[] x = string(LN[played], 0.2, bend);
      OverdrivenNote.Weighed fits = note.weigh(x, x.length, 221, candidates()).orElseThrow();
      double[] log = fits.logLikelihoods();
      for (int other = 0; other < LN.length; other++) {
        if (other != played) {
          assertThat(log[played] - log[other]).as(played + " or " + other).isGreaterThan(5);
        }
      }
      assertThat(fits.astray()).isBetween(0.0, 0.05);
    }
  }

  @Test
  void tellsStringsThroughTheCurveThatItIsBuiltOn() {
    tells(v -> Math.tanh(6 * v + 0.2));
  }

  @Test
  void tellsStringsThroughHardClipping() {
    tells(v -> Math.max(-0.2, Math.min(0.15, v)));
  }

  @Test
  void tellsStringsThroughALopsidedCurve() {
    tells(v -> v > 0 ? 1 - Math.exp(-5 * v) : -0.6 * (1 - Math.exp(5 * v / 0.6)));
  }

  @Test
  void tellsStringsThroughNoAmplifierToo() {
    tells(v -> v);
  }

  /** Where the fit explains the sound, its B is right; where it does not, it says so. */
  @Test
  void findsTheStiffnessThatItIsNotTold() {
    int explained = 0;
    for (double ln : LN) {
      float[] x = string(ln, 0.4, v -> Math.tanh(6 * v + 0.2));
      OverdrivenNote.Optima optima =
          note.optima(x, x.length, HZ, Math.log(9e-6), Math.log(2.5e-3)).orElseThrow();
      if (optima.astray() < 0.1) {
        explained++;
        assertThat(optima.all().get(0).lnStiffness()).isCloseTo(ln, within(0.04));
        StiffnessCurve curve = new OverdrivenCurve(flat(x), optima);
        for (double off : new double[] {-0.3, 0.3}) {
          assertThat(curve.logLikelihood(ln)).isGreaterThan(curve.logLikelihood(ln + off) + 2);
        }
      }
    }
    assertThat(explained).isGreaterThanOrEqualTo(2);
  }

  /** Half the misfit for numbers worth 40 independent ones: 20 ln 2 nats by hand. */
  @Test
  void aFitCountsByHowManyTimesItIsBetter() {
    float[] x = string(LN[1], 0.2, v -> Math.tanh(6 * v + 0.2));
    HarmonicTracks tracks = HarmonicTracks.of(x, 900, x.length - 900, RATE, HZ, 12).orElseThrow();
    OverdrivenStringFit fit = new OverdrivenStringFit(tracks, 12, 0.05);
    double once = fit.logLikelihood(2000);
    assertThat(fit.logLikelihood(1000) - once).isCloseTo(20 * Math.log(2), within(0.3));
    assertThat(fit.logLikelihood(0)).isFinite();
    assertThat(fit.left(12 * tracks.frames)).isCloseTo(1, within(1e-9));
  }

  /** A string that was learnt wrongly is believed less, but nearer the truth than the others. */
  @Test
  void aStringThatIsNearlyAsLearntWinsOverOneThatIsFarOff() {
    float[] x = string(LN[1] + 0.15, 0.2, v -> Math.tanh(6 * v + 0.2));
    double[] log = note.weigh(x, x.length, HZ, candidates()).orElseThrow().logLikelihoods();
    assertThat(log[1]).isGreaterThan(log[0] + 5).isGreaterThan(log[2] + 5);
  }

  /** Worked out by hand: 1 : e^-4 is 0.982 of the whole, 1 : e^-3 is 0.953. */
  @Test
  void aStringFarAheadNeedsNoSecondLook() {
    assertThat(new OverdrivenNote.Weighed(new double[] {-900, -904}, 0).plain()).isTrue();
    assertThat(new OverdrivenNote.Weighed(new double[] {-903, -900}, 0).plain()).isFalse();
    assertThat(new OverdrivenNote.Weighed(new double[] {-900, -904, -904}, 0).plain()).isFalse();
    assertThat(new OverdrivenNote.Weighed(new double[] {-900}, 0).plain()).isTrue();
  }

  /** By hand: 0, -2, -6 and -4, 0, -6 below their best are -2, -1, -6 in the mean. */
  @Test
  void twoLooksCountAsTheirMean() {
    OverdrivenNote.Weighed one = new OverdrivenNote.Weighed(new double[] {-50, -52, -56}, 0.01);
    OverdrivenNote.Weighed two = new OverdrivenNote.Weighed(new double[] {-74, -70, -76}, 0.03);
    OverdrivenNote.Weighed both = one.and(two);
    assertThat(both.logLikelihoods()).containsExactly(-2, -1, -6);
    assertThat(both.astray()).isCloseTo(0.02, within(1e-12));
  }

  /**
   * The mean of two looks has its best at 0; one look alone has what the fit left there. Two
   * strings that are the same are never told apart; one that is far off is left behind at once.
   */
  @Test
  void stringsThatAreAlikeAreLookedAtTwice() {
    float[] x = string(LN[1], 0.2, Math::tanh);
    List<StringModelComparison.Candidate> alike = List.of(candidate(1), candidate(1));
    double[] twice = note.weigh(x, x.length, 221, alike).orElseThrow().logLikelihoods();
    assertThat(Arrays.stream(twice).max()).hasValue(0);
    double[] once = note.weigh(x, x.length, 221, candidates()).orElseThrow().logLikelihoods();
    assertThat(Arrays.stream(once).max().orElseThrow()).isNotZero();
  }

  @Test
  void silenceTellsNothing() {
    float[] x = new float[(int) (0.3 * RATE)];
    OverdrivenNote.Weighed fits = note.weigh(x, x.length, HZ, candidates()).orElseThrow();
    for (double log : fits.logLikelihoods()) {
      assertThat(log).isCloseTo(fits.logLikelihoods()[0], within(1.0));
    }
  }

  private static StiffnessEstimate flat(float[] x) {
    return new Stiffness(RATE).read(x, 0, (int) (0.15 * RATE), HZ).orElseThrow();
  }

  @Test
  void noiseIsNoStringInParticular() {
    Random random = new Random(5);
    float[] x = new float[(int) (0.2 * RATE)];
    for (int n = 0; n < x.length; n++) {
      x[n] = (float) (0.1 * random.nextGaussian());
    }
    OverdrivenNote.Weighed fits = note.weigh(x, x.length, HZ, candidates()).orElseThrow();
    double[] log = fits.logLikelihoods();
    for (double l : log) {
      assertThat(Math.abs(l - log[0])).isLessThan(3);
    }
  }

  @Test
  void tooLittleSoundTellsNothing() {
    float[] x = string(LN[0], 0.05, v -> v);
    assertThat(note.weigh(x, x.length, HZ, candidates())).isEmpty();
    assertThat(note.weigh(x, 100, HZ, candidates())).isEmpty();
    assertThat(note.optima(x, x.length, HZ, -11, -6)).isEmpty();
  }

  @Test
  void derivativesAreThoseOfTheModel() {
    float[] x = string(LN[1], 0.2, v -> Math.tanh(6 * v + 0.2));
    HarmonicTracks tracks = HarmonicTracks.of(x, 900, x.length - 900, RATE, HZ, 12).orElseThrow();
    OverdrivenString tone = new OverdrivenString(tracks, 8);
    Random random = new Random(11);
    double[] p = new double[tone.parameters];
    for (int i = 0; i < 16; i++) {
      p[i] = 0.5 * random.nextGaussian();
    }
    p[tone.other(OverdrivenString.BIAS)] = 0.2;
    p[tone.other(OverdrivenString.LOSS)] = 4;
    p[tone.other(OverdrivenString.LOSS_HIGH)] = 6;
    p[tone.other(OverdrivenString.DETUNE)] = 1;
    p[tone.other(OverdrivenString.SETTLE)] = 2;
    p[tone.other(OverdrivenString.LN_STIFFNESS)] = LN[1];
    p[tone.other(OverdrivenString.SECOND_SHARE)] = 0.2;
    p[tone.other(OverdrivenString.SECOND_CENTS)] = 1.5;
    tone.at(p);
    tone.changes(p);
    double[][] changeRe = tone.changeRe.clone();
    double[][] changeIm = tone.changeIm.clone();
    for (int i = 0; i < p.length; i++) {
      double step = 1e-5 * Math.max(1, Math.abs(p[i]));
      double at = p[i];
      p[i] = at + step;
      tone.at(p);
      double[] re = tone.re.clone();
      double[] im = tone.im.clone();
      p[i] = at - step;
      tone.at(p);
      p[i] = at;
      for (int d = 0; d < re.length; d++) {
        assertThat(changeRe[d][i])
            .as("parameter " + i)
            .isCloseTo((re[d] - tone.re[d]) / (2 * step), within(1e-6));
        assertThat(changeIm[d][i])
            .as("parameter " + i)
            .isCloseTo((im[d] - tone.im[d]) / (2 * step), within(1e-6));
      }
    }
  }
}
