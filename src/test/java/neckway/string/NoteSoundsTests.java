package neckway.string;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import neckway.hand.Evidence;
import neckway.hear.HeardNote;
import neckway.neck.GuitarString;
import neckway.neck.Tuning;
import org.junit.jupiter.api.Test;

class NoteSoundsTests {
  private static final double RATE = 44_100;
  private static final int A3 = 57;
  private final List<StringEvidence> told = new ArrayList<>();
  private final List<Double> when = new ArrayList<>();

  private NoteSounds sounds(double third, double fourth) {
    List<StringProfile> strings = new ArrayList<>();
    double[] millionths = {132, 66, fourth, third, 40, 14};
    for (GuitarString string : Tuning.STANDARD.strings()) {
      double ln = Math.log(1e-6 * millionths[strings.size()]);
      strings.add(new StringProfile(string, Tuning.STANDARD.openMidi(string), 0, ln, 0.03, 4));
    }
    return new NoteSounds(
        RATE,
        new GuitarProfile(strings),
        22,
        (note, evidence, now) -> {
          told.add(evidence);
          when.add(now);
        });
  }

  private static HeardNote note(double seconds) {
    return new HeardNote(0, seconds, A3, A3, HeardNote.Start.PLUCK, true, -20, seconds + 0.02);
  }

  /** A string by Fletcher's formula (JASA 36, 1964), struck at 0.1 s. */
  private static float[] string(double b) {
    float[] x = new float[(int) RATE];
    for (int k = 1; k < 25; k++) {
      double hz = 220 * k * Math.sqrt(1 + b * k * k);
      for (int n = (int) (0.1 * RATE); n < x.length; n++) {
        double t = n / RATE - 0.1;
        x[n] += (float) (Math.exp(-2 * t) * Math.sin(2 * Math.PI * hz * t + k * k) / (8.0 * k));
      }
    }
    return x;
  }

  private void play(NoteSounds sounds, double b, double until) {
    float[] x = string(b);
    int block = 441;
    boolean heard = false;
    for (int n = 0; n + block <= until * RATE; n += block) {
      sounds.feed(x, n, block);
      double now = (n + block) / RATE;
      if (!heard && now > 0.12) {
        sounds.heard(note(0.1));
        heard = true;
      }
      sounds.listenedUntil(now);
    }
  }

  /** On the third string at fret 2, B is 108 x 2^(2/6) millionths (Barbancho et al. 2012). */
  @Test
  void aNoteIsWeighedOnceItsLongestStretchWasHeard() {
    play(sounds(108, 49), 108e-6 * Math.pow(2, 2 / 6.0), 0.5);
    assertThat(told).hasSize(1);
    assertThat(when.get(0)).isBetween(0.1 + NoteSounds.LONGEST_SECONDS, 0.32);
    assertThat(Evidence.share(told.get(0))).isGreaterThan(0.9);
    assertThat(told.get(0).log(new GuitarString(3)))
        .isGreaterThan(told.get(0).log(new GuitarString(4)));
  }

  @Test
  void stringsThatAreAlikeStayOpenHoweverLongTheStretch() {
    double alike = 108 * Math.pow(2, -5 / 6.0);
    play(sounds(108, alike), 108e-6 * Math.pow(2, 2 / 6.0), 0.5);
    double apart = told.get(0).log(new GuitarString(3)) - told.get(0).log(new GuitarString(4));
    assertThat(Math.abs(apart)).isLessThan(0.1);
    assertThat(Evidence.share(told.get(0))).isLessThan(0.6);
  }

  /** The third string's B and the fourth's lie a fifth of one in a hundred apart at this pitch. */
  @Test
  void whereTheSpectrumLeavesTheStringOpenACloserLookIsThere() {
    double b = 108e-6 * Math.pow(2, 2 / 6.0);
    play(sounds(108, 1.002 * 108 * Math.pow(2, -5 / 6.0)), b, 0.5);
    StringEvidence spectrum = told.get(0);
    assertThat(spectrum.open()).isTrue();
    StringEvidence closer =
        spectrum.closer(Set.of(new GuitarString(3), new GuitarString(4), new GuitarString(5)));
    assertThat(closer.open()).isFalse();
    assertThat(apart(closer, 5)).isGreaterThan(apart(spectrum, 5) + 2);
    assertThat(Math.abs(apart(closer, 4))).isLessThan(0.5);
    assertThat(closer.log(new GuitarString(6))).isLessThan(closer.log(new GuitarString(3)));
  }

  @Test
  void betweenStringsThatAreAlikeNoCloserLookTellsMore() {
    double b = 108e-6 * Math.pow(2, 2 / 6.0);
    play(sounds(108, 1.002 * 108 * Math.pow(2, -5 / 6.0)), b, 0.5);
    assertThat(told.get(0).open()).isTrue();
    StringEvidence closer = told.get(0).closer(Set.of(new GuitarString(3), new GuitarString(4)));
    assertThat(closer.logs()).containsExactly(told.get(0).logs());
  }

  /** After 0.22 s of the third string, fret 2, with two notes named in it. */
  private NoteSounds named(double first, double second) {
    NoteSounds sounds = sounds(108, 49);
    sounds.feed(string(108e-6 * Math.pow(2, 2 / 6.0)), 0, (int) (0.22 * RATE));
    sounds.heard(note(first));
    sounds.heard(note(second));
    assertThat(told).hasSize(1);
    return sounds;
  }

  private static double apart(StringEvidence evidence, int other) {
    return evidence.log(new GuitarString(3)) - evidence.log(new GuitarString(other));
  }

  @Test
  void whereTheHandSpeaksAgainstAClearSpectrumACloserLookBacksIt() {
    play(sounds(108, 49), 108e-6 * Math.pow(2, 2 / 6.0), 0.5);
    StringEvidence spectrum = told.get(0);
    assertThat(Evidence.share(spectrum)).isGreaterThan(0.95);
    StringEvidence closer = spectrum.closer(Set.of(new GuitarString(3), new GuitarString(4)));
    assertThat(closer.open()).isFalse();
    assertThat(apart(closer, 4)).isGreaterThan(apart(spectrum, 4) + 2);
  }

  @Test
  void notesThatComeInTheWrongOrderTellNothing() {
    named(0.2, 0.19);
    assertThat(Evidence.share(told.get(0))).isEqualTo(0.25, within(1e-9));
  }

  @Test
  void whatTheNextNoteCutsShortIsWeighedAsFarAsItGoes() {
    NoteSounds sounds = named(0.1, 0.2);
    assertThat(told.get(0).log(new GuitarString(3)))
        .isGreaterThan(told.get(0).log(new GuitarString(5)));
    sounds.finish();
    assertThat(told).hasSize(2);
    assertThat(Evidence.share(told.get(1))).isEqualTo(0.25, within(1e-9));
  }
}
