package neckway.hear;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** A plucked string keeps its pitch; a voice glides through its vowels. */
class SteadyPitchTests {
  private static final double RATE_HZ = 22_050;

  private static SettledPitches after(double pitch, double glideSemitones, int estimates) {
    SettledPitches pitches = new SettledPitches();
    SoundingNote note = new SoundingNote();
    pitches.open(pitch);
    note.begin(new NewNote(0, pitch, 100, HeardNote.Start.PLUCK, 1), 0.01);
    for (int i = 1; i < estimates; i++) {
      note.refine(pitch + glideSemitones * i / estimates, 100);
    }
    pitches.close(note);
    return pitches;
  }

  @Test
  void aPitchThatStandsStillIsSteadyAndTellsTheTuning() {
    SettledPitches pitches = after(50.2, 0, 30);
    assertThat(pitches.isSteady(0)).isTrue();
    assertThat(pitches.inTune(50.2)).isLessThan(50.2);
  }

  @Test
  void oneThatGlidesASemitoneIsNotAndTellsNothing() {
    SettledPitches pitches = after(50.2, 1, 30);
    assertThat(pitches.isSteady(0)).isFalse();
    assertThat(pitches.inTune(50.2)).isEqualTo(50.2);
  }

  @Test
  void oneOfASyllableIsTooShortToTell() {
    assertThat(after(50.2, 0, 5).isSteady(0)).isFalse();
  }

  @Test
  void aNoteAtTheEndOfATakeHadNoTime() {
    SettledPitches pitches = new SettledPitches();
    SoundingNote note = new SoundingNote();
    pitches.open(50);
    note.begin(new NewNote(0, 50, 100, HeardNote.Start.PLUCK, 1), 0.01);
    pitches.end(note);
    assertThat(pitches.isSteady(0)).isTrue();
  }

  @Test
  void stringsAreSteadyThroughTheWholeEar() {
    double[] scale = {45, 48, 50, 52, 55, 57, 60, 62, 64};
    Ear ear = new Ear(RATE_HZ);
    int notes = Sounds.hear(ear, Sounds.line(RATE_HZ, 0.25, 0.4, scale)).notes.size();
    assertThat(notes).isEqualTo(scale.length);
    for (int i = 0; i < notes; i++) {
      assertThat(ear.isSteady(i)).as("note " + i).isTrue();
    }
  }
}
