package neckway.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import neckway.neck.BadInput;
import neckway.neck.GuitarString;
import neckway.neck.Tuning;
import neckway.string.StringProfile;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CalibrationTests {
  private static final List<Integer> FRETS = List.of(0, 3, 7, 12);
  private static final Tuning STANDARD = Tuning.STANDARD;

  private static Calibrated learn(List<Pluck> heard) {
    return learn(STANDARD, heard);
  }

  private static Calibrated learn(Tuning tuning, List<Pluck> heard) {
    return new Calibration(tuning, FRETS).learn(heard);
  }

  private static void assertLearnt(Calibrated learnt, Tuning tuning) {
    assertThat(learnt.profile().strings()).hasSize(tuning.count());
    for (StringProfile string : learnt.profile().strings()) {
      assertThat(string.lnStiffness())
          .as("string " + string.string())
          .isCloseTo(Plucked.lnStiffness(string.string().number()), within(0.02));
      assertThat(string.openMidi()).isEqualTo(tuning.openMidi(string.string()));
    }
  }

  private static void assertOnly(Calibrated learnt, Finding.Kind kind, String words) {
    assertThat(learnt.findings())
        .singleElement()
        .satisfies(
            finding -> {
              assertThat(finding.kind()).isEqualTo(kind);
              assertThat(finding.words()).contains(words);
            });
  }

  @Test
  void wholeSequenceTeachesEveryStringAndFindsNothing() {
    Calibrated learnt = learn(Plucked.whole(STANDARD, FRETS).all());
    assertLearnt(learnt, STANDARD);
    assertThat(learnt.findings()).isEmpty();
    assertThat(learnt.profile().strings()).allMatch(s -> s.plucks() == 4);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"D2 A2 D3 G3 B3 E4", "B1 E2 A2 D3 G3 B3 E4", "D2 A2 D3 G3 A3 D4", "G2 C3 E3 A3"})
  void everyTuningIsLearnt(String names) {
    Tuning tuning = Tuning.parse(names);
    assertLearnt(learn(tuning, Plucked.whole(tuning, FRETS).all()), tuning);
  }

  @Property(tries = 100)
  void anyOnePluckMayBeLeftOut(@ForAll @IntRange(min = 0, max = 23) int at) {
    Calibrated learnt = learn(Plucked.whole(STANDARD, FRETS).without(at));
    assertLearnt(learnt, STANDARD);
    String fret = "String " + (6 - at / 4) + " (" + STANDARD.names().get(at / 4) + "), fret ";
    assertOnly(learnt, Finding.Kind.LEFT_OUT, fret + FRETS.get(at % 4) + " was not heard");
  }

  @Property(tries = 100)
  void anyOnePluckMayBeBad(
      @ForAll @IntRange(min = 0, max = 23) int at,
      @ForAll @DoubleRange(min = -2, max = 2) double lnOff) {
    List<Pluck> heard = new ArrayList<>(Plucked.whole(STANDARD, FRETS).all());
    Pluck good = heard.get(at);
    heard.set(
        at,
        new Pluck(
            good.time(),
            good.pitch(),
            good.stiffness().map(curve -> ln -> curve.logLikelihood(ln - lnOff))));
    Calibrated learnt = learn(heard);
    GuitarString string = new GuitarString(6 - at / 4);
    double off =
        Math.abs(learnt.profile().of(string).lnStiffness() - Plucked.lnStiffness(string.number()));
    // a quarter of what is too small to be seen as odd, and no more
    assertThat(off).isLessThanOrEqualTo(0.08);
    if (Math.abs(lnOff) > 0.6) {
      assertThat(off).isLessThan(0.02);
      assertThat(learnt.findings())
          .anyMatch(
              f ->
                  f.kind() == Finding.Kind.ODD_PLUCK
                      && f.string().equals(Optional.of(string))
                      && f.words().contains("fret " + FRETS.get(at % 4)));
    }
  }

  @Property(tries = 100)
  void wholeGuitarMayBeOff(@ForAll @DoubleRange(min = -45, max = 45) double cents) {
    Plucked plucked = new Plucked(STANDARD);
    STANDARD
        .strings()
        .forEach(s -> FRETS.forEach(fret -> plucked.pluck(s.number(), fret, cents, 0)));
    Calibrated learnt = learn(plucked.all());
    assertLearnt(learnt, STANDARD);
    assertThat(learnt.profile().strings())
        .allSatisfy(s -> assertThat(s.centsOff()).isCloseTo(cents, within(1e-6)));
    if (Math.abs(cents) > 16) {
      assertOnly(learnt, Finding.Kind.GUITAR_OFF, cents < 0 ? "flat" : "sharp");
    }
  }

  @Test
  void stringThatIsOutOfTuneIsToldInCents() {
    Plucked plucked = new Plucked(STANDARD);
    STANDARD
        .strings()
        .forEach(
            s ->
                FRETS.forEach(
                    fret -> plucked.pluck(s.number(), fret, s.number() == 4 ? -32 : 0, 0)));
    Calibrated learnt = learn(plucked.all());
    assertOnly(learnt, Finding.Kind.STRING_OFF, "String 4 (D3) is 32 cents flat");
    assertThat(learnt.profile().of(new GuitarString(4)).centsOff()).isCloseTo(-32, within(1e-6));
  }

  @Test
  void notePluckedTwiceIsToldAndUsed() {
    Plucked plucked = new Plucked(STANDARD).string(6, FRETS).pluck(5, 0, 0, 0).pluck(5, 3, 0, 0);
    plucked.pluck(5, 3, 2, 0).pluck(5, 7, 0, 0).pluck(5, 12, 0, 0);
    for (int s = 4; s >= 1; s--) {
      plucked.string(s, FRETS);
    }
    Calibrated learnt = learn(plucked.all());
    assertLearnt(learnt, STANDARD);
    assertOnly(learnt, Finding.Kind.TWICE, "String 5 (A2), fret 3 was plucked more than once");
    assertThat(learnt.profile().of(new GuitarString(5)).plucks()).isEqualTo(5);
  }

  @Test
  void stringPlayedTwiceIsToldAndUsed() {
    Plucked plucked = new Plucked(STANDARD).string(6, FRETS).string(5, FRETS).string(5, FRETS);
    for (int s = 4; s >= 1; s--) {
      plucked.string(s, FRETS);
    }
    Calibrated learnt = learn(plucked.all());
    assertLearnt(learnt, STANDARD);
    assertOnly(learnt, Finding.Kind.TWICE, "String 5 (A2) was played twice");
    assertThat(learnt.profile().of(new GuitarString(5)).plucks()).isEqualTo(8);
  }

  @Test
  void falseStartIsNoHarm() {
    Plucked plucked = new Plucked(STANDARD).string(6, FRETS).pluck(5, 0, 0, 0);
    for (int s = 6; s >= 1; s--) {
      plucked.string(s, FRETS);
    }
    Calibrated learnt = learn(plucked.all());
    assertLearnt(learnt, STANDARD);
    assertThat(learnt.findings()).isNotEmpty();
  }

  @Test
  void strayNotesArePassedOver() {
    Plucked plucked = new Plucked(STANDARD).string(6, FRETS).note(61.3, Optional.empty());
    for (int s = 5; s >= 1; s--) {
      plucked.string(s, FRETS);
    }
    Calibrated learnt = learn(plucked.all());
    assertLearnt(learnt, STANDARD);
    assertOnly(learnt, Finding.Kind.STRAY, "One note (at 5.0 s)");
  }

  @Test
  void wrongFretIsToldWithBothFrets() {
    Plucked plucked = new Plucked(STANDARD).string(6, List.of(0, 3, 8, 12));
    for (int s = 5; s >= 1; s--) {
      plucked.string(s, FRETS);
    }
    Calibrated learnt = learn(plucked.all());
    assertLearnt(learnt, STANDARD);
    assertOnly(
        learnt, Finding.Kind.WRONG_FRET, "String 6 (E2): fret 8 sounded (at 3.0 s) where fret 7");
  }

  @Test
  void sameWrongFretOnAllStringsIsOneFinding() {
    Calibrated learnt = learn(Plucked.whole(STANDARD, List.of(0, 4, 7, 12)).all());
    assertOnly(learnt, Finding.Kind.WRONG_FRET, "On 6 strings fret 4 sounded where fret 3");
  }

  @Test
  void stringsThatSoundAlikeAreToldInPlainWords() {
    // The second's open pitch is the third's fourth fret, where B is 2^(4/6) times the open
    // third's.
    Plucked plucked = new Plucked(STANDARD);
    STANDARD
        .strings()
        .forEach(
            s ->
                FRETS.forEach(
                    fret ->
                        plucked.pluck(
                            s.number(),
                            fret,
                            0,
                            s.number() == 3
                                ? Plucked.lnStiffness(2)
                                    - Plucked.lnStiffness(3)
                                    - 4 * Math.log(2) / 6
                                : 0)));
    Calibrated learnt = learn(plucked.all());
    assertOnly(learnt, Finding.Kind.ALIKE, "Strings 3 and 2 cannot be told apart");
  }

  @Property(tries = 60)
  void skippedStringIsOneLineThatNamesIt(@ForAll @IntRange(min = 1, max = 6) int skipped) {
    Plucked plucked = new Plucked(STANDARD);
    for (int s = 6; s >= 1; s--) {
      if (s != skipped) {
        plucked.string(s, FRETS);
      }
    }
    assertThatThrownBy(() -> learn(plucked.all()))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("string " + skipped + " (")
        .hasMessageContaining("was skipped");
  }

  @Test
  void twoSkippedStringsAreBothNamed() {
    Plucked plucked = new Plucked(STANDARD);
    List.of(6, 4, 2, 1).forEach(s -> plucked.string(s, FRETS));
    assertThatThrownBy(() -> learn(plucked.all()))
        .hasMessageContaining("string 5 (A2), string 3 (G3) were skipped");
  }

  @Test
  void fewerNotesThanNeededIsOneLine() {
    Plucked plucked = new Plucked(STANDARD).string(6, FRETS).string(5, List.of(3));
    for (int s = 4; s >= 1; s--) {
      plucked.string(s, FRETS);
    }
    assertThatThrownBy(() -> learn(plucked.all()))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("string 5 (A2): only 1 of its 4 plucks is heard, and it takes 2");
  }

  @Test
  void silenceIsOneLine() {
    assertThatThrownBy(() -> learn(List.of()))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("no notes are heard");
  }

  @Test
  void somethingElseIsOneLine() {
    Plucked plucked = new Plucked(STANDARD).string(3, List.of(0, 2, 4, 5, 4, 2, 0));
    assertThatThrownBy(() -> learn(plucked.all()))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("of the 24 notes of the calibration sequence are heard");
  }

  @Test
  void highestStringFirstIsSaidSo() {
    Plucked plucked = new Plucked(STANDARD);
    for (int s = 1; s <= 6; s++) {
      plucked.string(s, FRETS);
    }
    assertThatThrownBy(() -> learn(plucked.all()))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("from the highest to the lowest");
  }

  @Test
  void stringFarOutOfTuneIsOneLineInCents() {
    Plucked plucked = new Plucked(STANDARD);
    STANDARD
        .strings()
        .forEach(
            s ->
                FRETS.forEach(
                    fret -> plucked.pluck(s.number(), fret, s.number() == 3 ? 83 : 0, 0)));
    assertThatThrownBy(() -> learn(plucked.all()))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("string 3 (G3) is 83 cents sharp against the other strings; tune it");
  }

  @Test
  void guitarTunedToSomethingElseIsOneLineThatNamesIt() {
    Tuning lower = Tuning.parse("Eb2 Ab2 Db3 Gb3 Bb3 Eb4");
    assertThatThrownBy(() -> learn(Plucked.whole(lower, FRETS).all()))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("100 cents flat of E2 A2 D3 G3 B3 E4")
        .hasMessageContaining("--tuning \"D#2 G#2 C#3 F#3 A#3 D#4\"");
  }

  @Test
  void stringWhosePlucksTellNothingIsOneLine() {
    Plucked plucked = new Plucked(STANDARD);
    for (int fret : FRETS) {
      plucked.note(40 + fret, Optional.empty());
    }
    for (int s = 5; s >= 1; s--) {
      plucked.string(s, FRETS);
    }
    assertThatThrownBy(() -> learn(plucked.all()))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("string 6 (E2): none of its plucks tells the string's stiffness");
  }

  @Test
  void fretsThatCannotBeAskedForAreOneLine() {
    assertThatThrownBy(() -> new Calibration(STANDARD, List.of()))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("0,3,7,12");
    assertThatThrownBy(() -> new Calibration(STANDARD, List.of(0, 3, 0)))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("twice");
    assertThatThrownBy(() -> new Calibration(STANDARD, List.of(0, 25)))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("fret 25");
  }

  @Test
  void oneFretAStringIsEnoughToBegin() {
    Calibrated learnt =
        new Calibration(STANDARD, List.of(5)).learn(Plucked.whole(STANDARD, List.of(5)).all());
    assertLearnt(learnt, STANDARD);
  }
}
