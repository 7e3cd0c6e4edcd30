package neckway.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import neckway.neck.GuitarString;
import neckway.neck.Tuning;
import neckway.string.StiffnessCurve;

/** Calibration sequences as the ear would have heard them, without any sound. */
final class Plucked {
  private final Tuning tuning;
  private final List<Pluck> plucks = new ArrayList<>();

  Plucked(Tuning tuning) {
    this.tuning = tuning;
  }

  /** B of an open string that every test here agrees on: 1e-5 times the string's number squared. */
  static double lnStiffness(int string) {
    return Math.log(1e-5 * string * string);
  }

  /** A note that tells ln B with a normal error. */
  static StiffnessCurve bell(double ln, double error) {
    return at -> -0.5 * (at - ln) * (at - ln) / (error * error);
  }

  static Plucked whole(Tuning tuning, List<Integer> frets) {
    Plucked plucked = new Plucked(tuning);
    for (GuitarString string : tuning.strings()) {
      plucked.string(string.number(), frets);
    }
    return plucked;
  }

  Plucked string(int number, List<Integer> frets) {
    frets.forEach(fret -> pluck(number, fret, 0, 0));
    return this;
  }

  /** One more pluck, a second after the last. */
  Plucked pluck(int string, int fret, double cents, double lnOff) {
    double ln = lnStiffness(string) + Math.log(2) * fret / 6 + lnOff;
    return note(
        tuning.openMidi(new GuitarString(string)) + fret + cents / 100,
        Optional.of(bell(ln, 0.02)));
  }

  Plucked note(double pitch, Optional<StiffnessCurve> estimate) {
    plucks.add(new Pluck(1 + plucks.size(), pitch, estimate));
    return this;
  }

  /** Those heard, without the ones at these indices. */
  List<Pluck> without(int... indices) {
    List<Pluck> left = new ArrayList<>(plucks);
    for (int i : indices) {
      left.remove(plucks.get(i));
    }
    return left;
  }

  List<Pluck> all() {
    return plucks;
  }
}
