package neckway.desk.choose;

import neckway.neck.GuitarString;

/**
 * Where things are on a neck that is drawn. Frets have their true spacing: fret n of a string of
 * length L lies L (1 - 2^(-n/12)) from the nut, which is equal temperament. Lengths are in pixels.
 *
 * @param left where the drawn part of the neck begins
 * @param width of the drawn part
 * @param top of the string that is drawn first
 * @param gap from string to string
 * @param strings how many
 * @param firstLine the fret wire (0: the nut) at the nut's end of what is drawn
 * @param lastLine the fret wire at the other end
 * @param leftHanded the nut on the right
 * @param lowOnTop the lowest-sounding string first
 */
record NeckGeometry(
    double left,
    double width,
    double top,
    double gap,
    int strings,
    int firstLine,
    int lastLine,
    boolean leftHanded,
    boolean lowOnTop) {

  NeckGeometry {
    if (firstLine < 0 || lastLine <= firstLine) {
      throw new IllegalArgumentException("frets " + firstLine + " to " + lastLine);
    }
  }

  /** A fret's distance from the nut as a share of the string's length. */
  static double shareOfString(double fret) {
    return 1 - Math.pow(2, -fret / 12);
  }

  /** Where a fret's wire is; 0 is the nut. */
  double lineX(int fret) {
    double from = shareOfString(firstLine);
    double share = (shareOfString(fret) - from) / (shareOfString(lastLine) - from);
    return leftHanded ? left + width * (1 - share) : left + width * share;
  }

  /** Where a finger stands that plays a fret: between its wire and the one before. */
  double fingerX(int fret) {
    if (fret == 0) {
      double aside = gap * 0.55;
      return leftHanded ? lineX(0) + aside : lineX(0) - aside;
    }
    return (lineX(fret - 1) + lineX(fret)) / 2;
  }

  /** The room between a fret's wire and the one before. */
  double fretWidth(int fret) {
    return Math.abs(lineX(fret) - lineX(fret - 1));
  }

  /** Where a string is. */
  double stringY(GuitarString string) {
    int row = lowOnTop ? strings - string.number() : string.number() - 1;
    return top + row * gap;
  }

  /** How large a note on a fret can be drawn. */
  double dotRadius(int fret) {
    double room = fret == 0 ? gap : fretWidth(fret);
    return Math.max(5, Math.min(gap * 0.3, room * 0.44));
  }

  /** The neck's lower edge: the last string. */
  double bottom() {
    return top + (strings - 1) * gap;
  }
}
