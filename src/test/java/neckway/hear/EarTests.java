package neckway.hear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import neckway.hear.HeardNote.Start;
import neckway.hear.Sounds.Notebook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Whole takes worked out from formulas: when each note begins and how high it is is known. */
class EarTests {
  private static final double RATE_HZ = 22_050;

  private static final double ONSET_MS = 5;

  /** A minor pentatonic scale, A2 to E4: MIDI note numbers 45 48 50 52 55 57 60 62 64. */
  private static final double[] SCALE = {45, 48, 50, 52, 55, 57, 60, 62, 64};

  private static Integer[] whole(double... midis) {
    return IntStream.range(0, midis.length)
        .mapToObj(i -> (int) Math.rint(midis[i]))
        .toArray(Integer[]::new);
  }

  private static void check(Notebook heard, double gap, double mostMs, double... midis) {
    assertThat(heard.midis()).containsExactly(whole(midis));
    for (int i = 0; i < midis.length; i++) {
      HeardNote note = heard.notes.get(i);
      assertThat(1000 * (note.time() - 0.5 - gap * i))
          .as("ms of note " + i)
          .isCloseTo(0, within(mostMs));
    }
  }

  @Test
  void constants() {
    assertThat(Ear.LOWEST_HZ).isLessThan(Sounds.hz(28));
    assertThat(Ear.HIGHEST_HZ).isGreaterThan(Sounds.hz(88));
    assertThat(Ear.HOP_SECONDS).isEqualTo(0.0029);
  }

  @ParameterizedTest
  @ValueSource(
      ints = {8_000, 11_025, 16_000, 22_050, 32_000, 44_100, 48_000, 88_200, 96_000, 192_000})
  void hearsAScaleAtAnyRate(int rateHz) {
    double[] part = {45, 48, 52, 57, 64};
    check(Sounds.hear(Sounds.line(rateHz, 0.25, 0.4, part), rateHz), 0.25, ONSET_MS, part);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 7_999, 192_001, -44_100, Double.NaN, Double.POSITIVE_INFINITY})
  void refusesOtherRates(double rateHz) {
    assertThatThrownBy(() -> new Ear(rateHz))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("sample rate");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 37.9, 700, Double.NaN})
  void refusesOtherLowestPitches(double lowestHz) {
    assertThatThrownBy(() -> new Ear(RATE_HZ, lowestHz))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("lowest pitch");
  }

  @Test
  void looksForNothingUnderTheLowestNoteOfTheGuitar() {
    float[] sound = Sounds.line(RATE_HZ, 0.4, 0.4, 33, 40, 45);
    assertThat(Sounds.hear(sound, RATE_HZ).midis()).containsExactly(33, 40, 45);
    Notebook heard = new Notebook();
    Ear ear = new Ear(RATE_HZ, Sounds.hz(39.4));
    ear.process(sound, 0, sound.length, heard);
    ear.finish(heard);
    assertThat(heard.midis()).allMatch(midi -> midi >= 40).endsWith(40, 45);
  }

  /** From two to eight notes a second. */
  @ParameterizedTest
  @ValueSource(doubles = {0.125, 0.2, 0.5})
  void hearsAScaleAtAnyTempo(double gap) {
    check(Sounds.hear(Sounds.line(RATE_HZ, gap, 0.4, SCALE), RATE_HZ), gap, ONSET_MS, SCALE);
  }

  @ParameterizedTest
  @ValueSource(ints = {-50, -40, -30, -20, -10, 0})
  void hearsAScaleAtAnyLevel(int dbfs) {
    float[] sound = Sounds.line(RATE_HZ, 0.25, 0.4, SCALE);
    float top = 0;
    for (float v : sound) {
      top = Math.max(top, Math.abs(v));
    }
    double gain = Math.pow(10, dbfs / 20.0) / top;
    for (int i = 0; i < sound.length; i++) {
      sound[i] *= (float) gain;
    }
    Ear ear = new Ear(RATE_HZ);
    check(Sounds.hear(ear, sound), 0.25, ONSET_MS, SCALE);
    assertThat(ear.peakDbfs()).isCloseTo(dbfs, within(0.01));
  }

  /** A guitar tuned to another A than 440 Hz (ISO 16): what it is off by is told, and taken off. */
  @ParameterizedTest
  @ValueSource(ints = {-40, -25, -10, 0, 10, 25, 40})
  void saysHowFarTheGuitarIsOut(int cents) {
    double[] midis = new double[SCALE.length];
    for (int i = 0; i < midis.length; i++) {
      midis[i] = SCALE[i] + cents / 100.0;
    }
    Ear ear = new Ear(RATE_HZ);
    Notebook heard = Sounds.hear(ear, Sounds.line(RATE_HZ, 0.25, 0.4, midis));
    assertThat(heard.midis()).containsExactly(whole(SCALE));
    assertThat(ear.tuningCents().getAsDouble()).isCloseTo(cents, within(5.0));
  }

  /** E1, a bass's lowest, 41.2 Hz (ISO 16): named right, however often it seems struck. */
  @ParameterizedTest
  @ValueSource(ints = {28, 33})
  void namesABassNote(int midi) {
    assertThat(Sounds.hear(Sounds.line(RATE_HZ, 0.8, 0.4, midi), RATE_HZ).midis())
        .startsWith(midi)
        .containsOnly(midi);
  }

  /** E2 82.4 Hz, a guitar's lowest, to E6 1318.5 Hz, its 24th fret (ISO 16). */
  @ParameterizedTest
  @ValueSource(ints = {40, 43, 52, 64, 76, 83, 88})
  void hearsOneNoteOfAnyHeight(int midi) {
    Ear ear = new Ear(RATE_HZ);
    Notebook heard = Sounds.hear(ear, Sounds.line(RATE_HZ, 0.8, 0.4, midi));
    check(heard, 0.8, ONSET_MS, midi);
    assertThat(heard.notes.get(0).start()).isEqualTo(Start.PLUCK);
    assertThat(heard.notes.get(0).fine()).isTrue();
    assertThat(100 * (ear.settledPitch(0) - midi)).as("cents").isCloseTo(0, within(6.0));
  }

  @ParameterizedTest
  @ValueSource(ints = {40, 45, 52, 57, 64, 69})
  void oneNoteStruckFourTimesIsFourNotes(int midi) {
    double[] midis = {midi, midi, midi, midi};
    check(Sounds.hear(Sounds.line(RATE_HZ, 0.25, 0.4, midis), RATE_HZ), 0.25, ONSET_MS, midis);
  }

  /** Octaves and fifths, the hardest for a finder of periods. */
  @Test
  void hearsOctavesAndFifths() {
    double[] midis = {40, 52, 40, 64, 45, 57, 45, 52, 64, 52, 57};
    check(Sounds.hear(Sounds.line(RATE_HZ, 0.25, 0.4, midis), RATE_HZ), 0.25, ONSET_MS, midis);
  }

  /**
   * A note that is damped, a pause, and a string whose second, third or fourth partial is strong
   * and as high as the note that was: half a second later nothing of it sounds any more.
   */
  @ParameterizedTest
  @CsvSource({"45, 2", "45, 3", "45, 4", "40, 2", "40, 3"})
  void aNoteThatDiedAwayHidesNoOther(int low, int partial) {
    double high = low + 12 * Math.log(partial) / Math.log(2);
    float[] sound = Sounds.silence(RATE_HZ, 2.6);
    Sounds.pluck(sound, RATE_HZ, high, 0, 0.4, 0.5, 1.5);
    Sounds.pluck(sound, RATE_HZ, low, 0, 0.4, 2, 2.5);
    Sounds.pluck(sound, RATE_HZ, high, 0, 0.25, 2, 2.5);
    Sounds.addNoise(sound, 0, sound.length, 1e-5, 9);
    check(Sounds.hear(sound, RATE_HZ), 1.5, ONSET_MS, high, low);
  }

  /**
   * From a low wound string to a high plain one: stiffness of the open string and its lowest note.
   */
  private static final double[][] STRINGS = {{2e-4, 43}, {5e-5, 50}, {1e-4, 57}, {2e-5, 67}};

  /**
   * One string slid over frets, each held as long as the last; the string sounds on. Frets passed
   * are no notes, and the time is the arrival, whichever way the hand goes.
   */
  @ParameterizedTest
  @CsvSource({"2, 40", "2, 80", "3, 40", "3, 80", "3, 130", "4, 40", "4, 80", "4, 130"})
  void aSlideIsOneNoteAtItsArrival(int frets, int slideMs) {
    for (double[] string : STRINGS) {
      for (int way : new int[] {1, -1}) {
        int low = (int) string[1];
        int from = way > 0 ? low : low + frets;
        int to = from + way * frets;
        double span = slideMs / 1000.0;
        float[] sound = Sounds.silence(RATE_HZ, 2.2);
        Sounds.bend(sound, RATE_HZ, slide(from, way, frets, 0.4, span), string[0], 0.4, 0.5, 1.6);
        Sounds.addNoise(sound, 0, sound.length, 1e-5, 9);
        Notebook heard = Sounds.hear(sound, RATE_HZ);
        assertThat(heard.midis()).containsExactly(from, to);
        HeardNote landing = heard.notes.get(1);
        assertThat(1000 * (landing.time() - 0.9 - span))
            .as("ms, from %d to %d", from, to)
            .isCloseTo(0, within(8.0));
        assertThat(landing.start()).isEqualTo(Start.SLIDE);
        assertThat(landing.fine()).isFalse();
      }
    }
  }

  /** The same with a new stroke at the arrival: the time is the stroke's. */
  @ParameterizedTest
  @CsvSource({"2, 40", "2, 80", "3, 40", "3, 130", "4, 80", "4, 130"})
  void aSlideWithANewStrokeIsOneNoteAtTheStroke(int frets, int slideMs) {
    for (double[] string : STRINGS) {
      for (int way : new int[] {1, -1}) {
        int low = (int) string[1];
        int from = way > 0 ? low : low + frets;
        int to = from + way * frets;
        double arrival = 0.9 + slideMs / 1000.0;
        float[] sound = Sounds.silence(RATE_HZ, 2.2);
        Sounds.Course course = slide(from, way, frets, 0.4, slideMs / 1000.0);
        Sounds.bend(sound, RATE_HZ, course, string[0], 0.4, 0.5, arrival);
        Sounds.pluck(sound, RATE_HZ, to, string[0], 0.4, arrival, 1.6);
        Sounds.addNoise(sound, 0, sound.length, 1e-5, 9);
        Notebook heard = Sounds.hear(sound, RATE_HZ);
        assertThat(heard.midis()).containsExactly(from, to);
        assertThat(1000 * (heard.notes.get(1).time() - arrival))
            .as("ms, from %d to %d", from, to)
            .isCloseTo(0, within(3.0));
      }
    }
  }

  /** The first fret is passed at {@code begin}, the last one reached {@code span} later. */
  private static Sounds.Course slide(int from, int way, int frets, double begin, double span) {
    double each = span / (frets - 1);
    return t -> {
      double passed = t < begin ? 0 : Math.floor((t - begin) / each + 1e-9) + 1;
      return from + way * Math.min(frets, passed);
    };
  }

  /** A finger comes down on a ringing string: a new pitch without an attack. */
  @ParameterizedTest
  @CsvSource({"45, 47", "45, 48", "52, 55", "57, 59", "62, 64", "55, 52", "48, 45"})
  void aHammerOnOrPullOffIsANote(int from, int to) {
    float[] sound = Sounds.silence(RATE_HZ, 2.2);
    Sounds.bend(sound, RATE_HZ, t -> t < 0.4 ? from : to, Sounds.STIFFNESS, 0.4, 0.5, 1.6);
    Sounds.addNoise(sound, 0, sound.length, 1e-5, 9);
    Notebook heard = Sounds.hear(sound, RATE_HZ);
    assertThat(heard.midis()).containsExactly(from, to);
    assertThat(1000 * (heard.notes.get(1).time() - 0.9)).as("ms").isCloseTo(0, within(12.0));
  }

  /** 5.5 times a second, 30 cents either way: common practice, no published source. */
  @ParameterizedTest
  @ValueSource(ints = {45, 52, 57, 64, 71})
  void vibratoIsOneNote(int midi) {
    float[] sound = Sounds.silence(RATE_HZ, 3);
    Sounds.bend(
        sound,
        RATE_HZ,
        t -> midi + 0.3 * Math.sin(2 * Math.PI * 5.5 * t) * Math.min(1, 3 * t),
        Sounds.STIFFNESS,
        0.4,
        0.5,
        2.5);
    Sounds.addNoise(sound, 0, sound.length, 1e-5, 9);
    assertThat(Sounds.hear(sound, RATE_HZ).midis()).containsExactly(midi);
  }

  @Test
  void hearsNothingInSilenceAndDirectCurrent() {
    float[] sound = Sounds.silence(RATE_HZ, 3);
    Ear ear = new Ear(RATE_HZ);
    assertThat(Sounds.hear(ear, sound).notes).isEmpty();
    assertThat(ear.tuningCents()).isEmpty();
    assertThat(ear.peakDbfs()).isEqualTo(-120);
    assertThat(ear.noiseDbfs()).isEqualTo(-120);
    assertThat(ear.clicks()).isEmpty();
    java.util.Arrays.fill(sound, 0.5f);
    assertThat(Sounds.hear(sound, RATE_HZ).notes).isEmpty();
    java.util.Arrays.fill(sound, 0, sound.length / 2, 0);
    assertThat(Sounds.hear(sound, RATE_HZ).notes).as("a step").isEmpty();
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.3, 0.03, 0.001})
  void hearsNothingInWhiteNoise(double size) {
    for (int seed = 0; seed < 3; seed++) {
      float[] sound = Sounds.silence(RATE_HZ, 5);
      Sounds.addNoise(sound, 0, sound.length, size, seed);
      assertThat(Sounds.hear(sound, RATE_HZ).notes).as("seed " + seed).isEmpty();
    }
  }

  /** A mains hum with its harmonics, from the first sample on and for as long as it lasts. */
  @ParameterizedTest
  @ValueSource(doubles = {50.03, 59.95})
  void hearsNothingInHum(double mainsHz) {
    float[] sound = Sounds.silence(RATE_HZ, 4);
    for (int k = 1; k <= 10; k++) {
      Sounds.addSine(sound, RATE_HZ, k * mainsHz, 0.02 / k, k * k);
    }
    Sounds.addNoise(sound, 0, sound.length, 1e-4, 2);
    assertThat(Sounds.hear(sound, RATE_HZ).notes).isEmpty();
  }

  /**
   * A voice that glides an octave, by source and filter (Fant 1960): a buzz through formants at 500
   * and 1,700 Hz. What starts it may be told, no note of the glide.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.5, 1, 2, 4})
  void hearsOneNoteAtMostInAGlide(double seconds) {
    float[] sound = Sounds.silence(RATE_HZ, seconds + 1);
    Sounds.addNoise(sound, 0, sound.length, 1e-4, 3);
    int length = (int) (seconds * RATE_HZ);
    for (int k = 1; k <= 20; k++) {
      double angle = 0;
      for (int i = 0; i < length; i++) {
        double share = (double) i / length;
        double hz = k * 110 * Math.pow(2, share);
        angle += 2 * Math.PI * hz / RATE_HZ;
        double near = 1 / (1 + Math.pow((hz - 500) / 120, 2));
        double far = 0.4 / (1 + Math.pow((hz - 1700) / 200, 2));
        sound[11_025 + i] +=
            (float) (0.2 * Math.sin(Math.PI * share) * (near + far) * Math.sin(angle));
      }
    }
    assertThat(Sounds.hear(sound, RATE_HZ).notes).hasSizeLessThanOrEqualTo(1);
  }

  @Test
  void tellsInOrderAndNotBeforeItHappened() {
    float[] sound = Sounds.line(RATE_HZ, 0.2, 0.4, SCALE);
    Ear ear = new Ear(RATE_HZ);
    double[] last = {0, 0};
    NoteListener listener =
        new NoteListener() {
          @Override
          public void heard(HeardNote note) {
            assertThat(note.decided()).isGreaterThan(note.time()).isGreaterThanOrEqualTo(last[0]);
            assertThat(note.decided() - note.time()).as("seconds to decide").isLessThan(0.1);
            assertThat(note.decided()).as("a promise kept").isGreaterThanOrEqualTo(last[1]);
            last[0] = note.decided();
          }

          @Override
          public void listenedUntil(double seconds) {
            assertThat(seconds).isGreaterThanOrEqualTo(last[1]);
            last[1] = seconds;
          }
        };
    ear.process(sound, 0, sound.length, listener);
    assertThat(last[0]).isGreaterThan(2);
    ear.finish(listener);
    assertThat(last[1]).isCloseTo(sound.length / RATE_HZ, within(1e-9));
  }

  /** The last note's own pitch counts once it is over, and that is at the end of the take. */
  @Test
  void finishingSettlesTheLastNote() {
    float[] sound = Sounds.line(RATE_HZ, 0.4, 0.4, 45.2, 50.2, 57.2);
    Ear ear = new Ear(RATE_HZ);
    Notebook notebook = new Notebook();
    ear.process(sound, 0, sound.length, notebook);
    assertThat(notebook.notes).hasSize(3);
    assertThat(ear.tuningCents()).isEmpty();
    ear.finish(notebook);
    assertThat(ear.tuningCents().getAsDouble()).isCloseTo(20, within(3.0));
    for (int i = 0; i < 3; i++) {
      assertThat(ear.settledPitch(i)).isCloseTo(notebook.notes.get(i).midi() + 0.2, within(0.04));
    }
  }

  /**
   * A count-in, then a scale on the clicks: the notes, and the clicks, each at its time. So it is
   * where the drill is written for another tempo, 80 beats a minute in place of 120.
   */
  @ParameterizedTest
  @CsvSource({"22050, 0.5", "44100, 0.5", "22050, 0.75", "44100, 0.75"})
  void hearsAScaleUnderAMetronome(int rateHz, double expectedBeat) {
    double beat = 0.5;
    float[] sound = Sounds.silence(rateHz, 8);
    for (int i = 0; i < SCALE.length; i++) {
      double at = 0.5 + 4 * beat + i * beat + 0.013;
      Sounds.pluck(sound, rateHz, SCALE[i], Sounds.STIFFNESS, 0.4, at, at + beat);
    }
    for (int i = 0; i < 14; i++) {
      int at = (int) Math.round((0.5 + i * beat) * rateHz);
      for (int k = 0; k < 0.05 * rateHz; k++) {
        double t = (double) k / rateHz;
        double hz = i % 4 == 0 ? 2000 : 1500;
        sound[at + k] += (float) (0.1 * Math.exp(-t / 0.007) * Math.cos(2 * Math.PI * hz * t));
      }
    }
    Sounds.addNoise(sound, 0, sound.length, 1e-5, 9);
    Ear ear = new Ear(rateHz);
    ear.expectClicks(expectedBeat, 4);
    Notebook heard = Sounds.hear(ear, sound);
    assertThat(heard.midis()).containsExactly(whole(SCALE));
    for (int i = 0; i < SCALE.length; i++) {
      double at = 0.5 + 4 * beat + i * beat + 0.013;
      assertThat(1000 * (heard.notes.get(i).time() - at))
          .as("ms of note " + i)
          .isCloseTo(0, within(5.0));
    }
    assertThat(ear.clicks()).hasSizeGreaterThanOrEqualTo(4);
    for (double click : ear.clicks()) {
      double beats = (click - 0.5) / beat;
      assertThat(1000 * beat * (beats - Math.rint(beats)))
          .as("ms of click")
          .isCloseTo(0, within(1.0));
    }
  }

  /**
   * A count-in of tones, then clicks of noise, each another, so that none can be taken out: a note
   * that rings through them, 60 ms behind the first, is one note.
   */
  @ParameterizedTest
  @CsvSource({"45, 0.02", "45, 0.05", "45, 0.1", "57, 0.02", "57, 0.05", "57, 0.1"})
  void aClickIsNoNewStrokeOfTheNoteThatRings(int midi, double size) {
    double beat = 0.5;
    float[] sound = Sounds.silence(RATE_HZ, 6);
    Sounds.pluck(sound, RATE_HZ, midi, Sounds.STIFFNESS, 0.4, 0.5 + 4 * beat + 0.06, 5.5);
    for (int i = 0; i < 9; i++) {
      Random random = new Random(i);
      int at = (int) Math.round((0.5 + i * beat) * RATE_HZ);
      for (int k = 0; k < 0.05 * RATE_HZ; k++) {
        double t = k / RATE_HZ;
        double wave = i < 4 ? Math.cos(2 * Math.PI * 1500 * t) : random.nextGaussian();
        sound[at + k] += (float) (size * Math.exp(-t / 0.007) * wave);
      }
    }
    Sounds.addNoise(sound, 0, sound.length, 1e-5, 9);
    Ear ear = new Ear(RATE_HZ);
    ear.expectClicks(beat, 4);
    assertThat(Sounds.hear(ear, sound).midis()).containsExactly(midi);
  }

  /** The pick's own sound is 13 dB above the note for some milliseconds; the note holds. */
  @ParameterizedTest
  @ValueSource(ints = {69, 72, 74, 76})
  void namesAtOnceAHighNoteWhosePickIsLouderThanItself(int midi) {
    float[] sound = Sounds.silence(RATE_HZ, 1.6);
    Sounds.pluck(sound, RATE_HZ, 67, 1e-4, 0.1, 0.5, 1.0);
    Sounds.pluck(sound, RATE_HZ, midi, 1e-4, 0.1, 1.0, 1.5);
    addPick(sound, 1.0, 0.6);
    Sounds.addNoise(sound, 0, sound.length, 1e-5, 9);

    Notebook heard = Sounds.hear(sound, RATE_HZ);

    assertThat(heard.midis()).containsExactly(67, midi);
    HeardNote note = heard.notes.get(1);
    assertThat(1000 * (note.time() - 1.0)).as("ms").isCloseTo(0, within(3.0));
    assertThat(1000 * (note.decided() - 1.0)).as("ms until decided").isLessThan(50);
  }

  @Test
  void hearsNoNoteWhereAPickOnlyClicks() {
    float[] sound = Sounds.silence(RATE_HZ, 1.6);
    Sounds.pluck(sound, RATE_HZ, 67, 1e-4, 0.1, 0.5, 1.0);
    addPick(sound, 1.2, 0.6);
    Sounds.addNoise(sound, 0, sound.length, 1e-5, 9);

    assertThat(Sounds.hear(sound, RATE_HZ).midis()).containsExactly(67);
  }

  /** A burst at 4 kHz that dies away by 1/e in 2.5 ms. */
  private static void addPick(float[] sound, double atSeconds, double size) {
    int from = (int) (atSeconds * RATE_HZ);
    for (int i = 0; i < (int) (0.03 * RATE_HZ); i++) {
      double seconds = i / RATE_HZ;
      sound[from + i] +=
          (float) (size * Math.exp(-seconds / 0.0025) * Math.sin(2 * Math.PI * 4_000 * seconds));
    }
  }
}
