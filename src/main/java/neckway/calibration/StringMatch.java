package neckway.calibration;

import java.util.ArrayList;
import java.util.List;
import neckway.hear.RobustStatistics;
import neckway.neck.GuitarString;

/** What was heard of one string's part of the calibration sequence. */
final class StringMatch {
  /** A note that sounds another fret than the one whose turn it was. */
  record WrongFret(int asked, int heard, Pluck pluck) {}

  final GuitarString string;

  /** Pitch of the string against the tuning, semitones. */
  final double offSemitones;

  /** For each fret asked, every pluck of it; empty where it was left out. */
  final List<List<Pluck>> plucks = new ArrayList<>();

  final List<WrongFret> wrong = new ArrayList<>();

  StringMatch(GuitarString string, double offSemitones, int frets) {
    this.string = string;
    this.offSemitones = offSemitones;
    for (int i = 0; i < frets; i++) {
      plucks.add(new ArrayList<>());
    }
  }

  /** How many of the frets asked were heard. */
  int heard() {
    return (int) plucks.stream().filter(p -> !p.isEmpty()).count();
  }

  /** How far its plucks are from the tuning, the middle one, semitones. */
  double middleOff(int openMidi, List<Integer> frets) {
    List<Double> off = new ArrayList<>();
    for (int f = 0; f < frets.size(); f++) {
      for (Pluck pluck : plucks.get(f)) {
        off.add(pluck.pitch() - openMidi - frets.get(f));
      }
    }
    return off.isEmpty() ? offSemitones : RobustStatistics.median(off);
  }
}
