package neckway.string;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import neckway.hand.Evidence;
import neckway.neck.GuitarString;
import neckway.neck.Tuning;
import neckway.string.amp.OverdrivenNote;
import org.junit.jupiter.api.Test;

class StringLikelihoodTests {
  /** B of a solid-body electric's open strings, measured on recordings, in millionths. */
  private static final double[] MILLIONTHS = {132, 66, 49, 108, 40, 14};

  private static final int D3_OR_MORE = 52;
  private final StringLikelihood likelihood = new StringLikelihood(guitar(), 22);

  private static GuitarProfile guitar() {
    List<StringProfile> strings = new ArrayList<>();
    for (GuitarString string : Tuning.STANDARD.strings()) {
      double ln = Math.log(1e-6 * MILLIONTHS[strings.size()]);
      strings.add(new StringProfile(string, Tuning.STANDARD.openMidi(string), 0, ln, 0.05, 4));
    }
    return new GuitarProfile(strings);
  }

  /** A note whose B is the fifth string's at that pitch, surely. */
  private static StiffnessEstimate fifth(double driven) {
    StringProfile string = guitar().of(new GuitarString(5));
    return at(string.lnStiffnessAt(D3_OR_MORE - string.openMidi()), 0.04, driven);
  }

  private static StiffnessEstimate at(double there, double error, double driven) {
    double[] grid = new double[301];
    double[] curve = new double[301];
    for (int i = 0; i < grid.length; i++) {
      grid[i] = there - 3 + 0.02 * i;
      double z = (grid[i] - there) / error;
      curve[i] = -0.5 * z * z;
    }
    return new StiffnessEstimate(grid, curve, curve, driven);
  }

  private double share(StringEvidence evidence, int string) {
    return Math.exp(evidence.log(new GuitarString(string)));
  }

  /** By hand: three strings have E3; two notes in a hundred tell nothing true. */
  @Test
  void oneStringFitsAndTheOthersKeepTheShareOfMisleadingNotes() {
    StringEvidence evidence = likelihood.of(D3_OR_MORE, fifth(0.01));
    assertThat(share(evidence, 5)).isEqualTo(0.98 + 0.02 / 3, within(1e-6));
    assertThat(share(evidence, 6)).isEqualTo(0.02 / 3, within(1e-6));
    assertThat(evidence.log(new GuitarString(3))).isEqualTo(Double.NEGATIVE_INFINITY);
    assertThat(evidence.driven()).isFalse();
  }

  @Test
  void anOverdrivenNoteTellsLess() {
    StringEvidence evidence = likelihood.of(D3_OR_MORE, fifth(0.99));
    assertThat(share(evidence, 5)).isLessThan(0.95);
    assertThat(evidence.driven()).isTrue();
  }

  /** The fourth string is the slackest of the three; the amplifier can make any sound like it. */
  @Test
  void exactHarmonicsSpeakForTheSlackestStringLessInOverdrivenSound() {
    double slack = Math.log(8e-6);
    StringEvidence clean = likelihood.of(D3_OR_MORE, at(slack, 0.8, 0.01));
    StringEvidence driven = likelihood.of(D3_OR_MORE, at(slack, 0.8, 0.99));
    assertThat(share(clean, 4)).isGreaterThan(0.85);
    assertThat(share(driven, 4)).isBetween(0.34, 0.6);
  }

  /** How much likelier a string is by fits that speak for another one by 20 nats, surely. */
  private double against(int string, int favoured, double driven) {
    StringEvidence spectrum = Evidence.overdriven(new double[GuitarString.MAX_STRINGS], driven);
    List<GuitarString> both = List.of(new GuitarString(string), new GuitarString(favoured));
    StringEvidence fitted =
        likelihood.fitted(spectrum, both, new OverdrivenNote.Weighed(new double[] {-20, 0}, 1e-6));
    return Math.exp(fitted.log(both.get(0)) - fitted.log(both.get(1)));
  }

  @Test
  void fitsToOverdrivenSoundSpeakLessForTheLeastStiffString() {
    assertThat(against(2, 1, 0.99)).isEqualTo(StringLikelihood.COVERED_FIT, within(1e-3));
    assertThat(against(2, 1, 0.01)).isLessThan(1e-5);
    assertThat(against(1, 2, 0.99)).isLessThan(1e-5);
    assertThat(against(2, 3, 0.99)).isLessThan(1e-5);
  }

  @Test
  void theShareIsThatOfTheLikeliest() {
    assertThat(Evidence.share(likelihood.of(D3_OR_MORE, fifth(0.01))))
        .isEqualTo(0.98 + 0.02 / 3, within(1e-6));
    assertThat(Evidence.share(likelihood.even(D3_OR_MORE))).isEqualTo(1 / 3.0, within(1e-9));
  }

  @Test
  void aNoteThatTellsNothingIsEven() {
    for (int string = 4; string <= 6; string++) {
      assertThat(share(likelihood.even(D3_OR_MORE), string)).isEqualTo(1 / 3.0, within(1e-9));
    }
  }
}
