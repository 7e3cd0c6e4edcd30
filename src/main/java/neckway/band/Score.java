package neckway.band;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What chords, bass and drums play, bar by bar, from bar 1 on.
 *
 * @param notes in the order in which they begin
 * @param beats how long it is
 */
record Score(List<Note> notes, long beats) {
  /** Who plays. */
  enum Part {
    CHORDS,
    BASS,
    DRUMS
  }

  /**
   * One note.
   *
   * @param beat when it begins, beats from bar 1
   * @param beats how long it is held
   * @param pitch MIDI note number; of drums, General MIDI's percussion key
   * @param velocity MIDI velocity, 1 to 127
   */
  record Note(Part part, double beat, double beats, int pitch, int velocity) {}

  /** Keys of General MIDI's percussion map (GM 1, 1991; from memory). */
  private static final int KICK = 36;

  private static final int STICK_ON_RIM = 37;
  private static final int SNARE = 38;
  private static final int CLOSED_HI_HAT = 42;

  /** Under the guitar's middle strings, so that what is played stands out; E1 to D#2. */
  private static final int LOWEST_BASS = 28;

  /** Chords lie around middle C. */
  private static final int LOWEST_CHORD = 53;

  private static final double SHORT = 0.4;

  Score {
    notes = notes.stream().sorted(Comparator.comparingDouble(Note::beat)).toList();
  }

  /**
   * Writes it out.
   *
   * @param beatsPerBar 1 or more
   * @param bars how many
   */
  static Score of(ChordRow row, Feel feel, int beatsPerBar, int bars) {
    List<Note> notes = new ArrayList<>();
    for (int bar = 0; bar < bars; bar++) {
      List<Chord> chords = row.bar(bar);
      for (int beat = 0; beat < beatsPerBar; beat++) {
        double at = (double) bar * beatsPerBar + beat;
        int of = chords.size() == 1 ? 0 : beat * chords.size() / beatsPerBar;
        boolean begins =
            beat == 0 || (beat - 1) * chords.size() / beatsPerBar != of && chords.size() > 1;
        Chord chord = chords.get(of);
        drums(notes, feel, at, beat, beatsPerBar);
        bass(notes, feel, chord, at, beat, begins);
        chords(notes, feel, chord, at, beat, begins, beatsLeft(chords.size(), beat, beatsPerBar));
      }
    }
    return new Score(notes, (long) bars * beatsPerBar);
  }

  /** Beats until the next chord or the end of the bar. */
  private static int beatsLeft(int chords, int beat, int beatsPerBar) {
    int left = 1;
    while (beat + left < beatsPerBar
        && (beat + left) * chords / beatsPerBar == beat * chords / beatsPerBar) {
      left++;
    }
    return left;
  }

  private static void drums(List<Note> notes, Feel feel, double at, int beat, int beatsPerBar) {
    boolean first = beat == 0;
    boolean middle = beatsPerBar >= 4 && beat == beatsPerBar / 2;
    boolean back = beat % 2 == 1;
    if (feel == Feel.QUIET) {
      notes.add(new Note(Part.DRUMS, at, SHORT, CLOSED_HI_HAT, 34));
      if (first) {
        notes.add(new Note(Part.DRUMS, at, SHORT, KICK, 58));
      } else if (middle || beatsPerBar < 4 && beat == beatsPerBar - 1) {
        notes.add(new Note(Part.DRUMS, at, SHORT, STICK_ON_RIM, 52));
      }
      return;
    }
    double[] parts = feel.parts();
    for (int p = 0; p < parts.length; p++) {
      notes.add(new Note(Part.DRUMS, at + parts[p], SHORT, CLOSED_HI_HAT, p == 0 ? 56 : 40));
    }
    if (first || middle && feel != Feel.TRIPLETS) {
      notes.add(new Note(Part.DRUMS, at, SHORT, KICK, 78));
    }
    if (feel == Feel.TRIPLETS && beatsPerBar >= 4 ? middle : back) {
      notes.add(new Note(Part.DRUMS, at, SHORT, SNARE, 66));
    }
  }

  private static void bass(
      List<Note> notes, Feel feel, Chord chord, double at, int beat, boolean begins) {
    int root = LOWEST_BASS + Math.floorMod(chord.root() - LOWEST_BASS, 12);
    int fifth = root + chord.fifthAbove();
    switch (feel) {
      case STRAIGHT -> {
        notes.add(new Note(Part.BASS, at, 0.45, root, begins ? 84 : 74));
        notes.add(new Note(Part.BASS, at + 0.5, 0.4, root, 66));
      }
      case SHUFFLE -> {
        int[] walk = {root, fifth, root + 12, fifth};
        notes.add(new Note(Part.BASS, at, 0.8, begins ? root : walk[beat % walk.length], 80));
      }
      case TRIPLETS -> {
        notes.add(new Note(Part.BASS, at, 0.6, begins || beat % 2 == 0 ? root : fifth, 80));
        notes.add(new Note(Part.BASS, at + 2 / 3.0, 0.3, root, 62));
      }
      case QUIET -> {
        if (begins || beat % 2 == 0) {
          notes.add(new Note(Part.BASS, at, 1.8, begins ? root : fifth, 64));
        }
      }
    }
  }

  private static void chords(
      List<Note> notes,
      Feel feel,
      Chord chord,
      double at,
      int beat,
      boolean begins,
      int beatsLeft) {
    switch (feel) {
      case STRAIGHT -> {
        if (begins) {
          strike(notes, chord, at, beatsLeft - 0.1, 62);
        }
      }
      case SHUFFLE -> {
        if (begins) {
          strike(notes, chord, at, beatsLeft - 0.1, 52);
        }
        strike(notes, chord, at + 2 / 3.0, 0.25, beat % 2 == 1 ? 60 : 48);
      }
      case TRIPLETS -> {
        for (double part : feel.parts()) {
          strike(notes, chord, at + part, 0.3, part == 0 ? 56 : 44);
        }
      }
      case QUIET -> {
        if (begins) {
          strike(notes, chord, at, beatsLeft - 0.05, 48);
        }
      }
    }
  }

  private static void strike(List<Note> notes, Chord chord, double at, double beats, int velocity) {
    for (int pitchClass : chord.pitchClasses()) {
      int pitch = LOWEST_CHORD + Math.floorMod(pitchClass - LOWEST_CHORD, 12);
      notes.add(new Note(Part.CHORDS, at, beats, pitch, velocity));
    }
  }
}
