package neckway.desk.read;

import neckway.neck.Place;

/**
 * Where places lie on a small neck with frets of one width. Lengths are in pixels.
 *
 * @param left where it begins
 * @param wide how wide it is
 * @param top its upper string
 * @param bottom its lower string
 * @param strings how many
 * @param low the lowest fret that is shown
 * @param high the highest
 * @param leftHanded the nut's side on the right
 * @param lowOnTop the lowest-sounding string first
 */
record SmallNeck(
    double left,
    double wide,
    double top,
    double bottom,
    int strings,
    int low,
    int high,
    boolean leftHanded,
    boolean lowOnTop) {

  /** The room of a fret. */
  double fret() {
    return wide / (high - low + 1);
  }

  /** The middle of a fret's room, where a finger stands. */
  double x(int fret) {
    double from = (fret - low + 0.5) * fret();
    return leftHanded ? left + wide - from : left + from;
  }

  double x(Place place) {
    return x(place.fret());
  }

  /** Where a string is, in the middle of a pixel. */
  double y(int string) {
    int row = lowOnTop ? strings - string : string - 1;
    return Math.floor(top + row * (bottom - top) / (strings - 1)) + 0.5;
  }

  double y(Place place) {
    return y(place.string().number());
  }
}
