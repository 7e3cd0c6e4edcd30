package neckway.cli.text;

import java.util.ArrayList;
import java.util.List;
import neckway.neck.GuitarString;
import neckway.neck.Neck;
import neckway.neck.Place;
import neckway.neck.PlacedNote;
import neckway.neck.PlacedShape;

/**
 * A piece of the neck in text, string 1 on top as in tab, with the finger on each note. A note in
 * brackets is the one that the key is named after. Where two shapes share a note, both fingers
 * stand there, the lower shape's first.
 */
final class NeckDrawing {
  private static final int NARROW = 3;
  private static final int WIDE = 5;
  private static final String NUT = "||";

  private final Neck neck;
  private final List<PlacedShape> shapes;
  private final int lowest;
  private final int highest;
  private final int cell;

  private NeckDrawing(Neck neck, List<PlacedShape> shapes, int width) {
    this.neck = neck;
    this.shapes = shapes;
    this.lowest = shapes.stream().mapToInt(NeckDrawing::lowestFret).min().orElseThrow();
    this.highest = shapes.stream().mapToInt(NeckDrawing::highestFret).max().orElseThrow();
    int wide = nameWidth() + (highest - lowest + 1) * (WIDE + 1) + NUT.length();
    this.cell = shapes.size() > 1 && wide <= width ? WIDE : NARROW;
  }

  /**
   * Draws one shape, or two neighbours on one neck.
   *
   * @param width characters there are
   */
  static List<String> of(Neck neck, List<PlacedShape> shapes, int width) {
    return new NeckDrawing(neck, shapes, width).lines();
  }

  private static int lowestFret(PlacedShape shape) {
    int note = shape.notes().stream().mapToInt(n -> n.place().fret()).min().orElseThrow();
    int hand = shape.hands().stream().mapToInt(Integer::intValue).min().orElseThrow();
    return Math.min(note, hand);
  }

  private static int highestFret(PlacedShape shape) {
    int note = shape.notes().stream().mapToInt(n -> n.place().fret()).max().orElseThrow();
    return Math.max(note, lowestFret(shape) + 3);
  }

  private int nameWidth() {
    int widest =
        neck.tuning().lowToHigh().stream().mapToInt(p -> p.note().length()).max().orElseThrow();
    return widest + 3;
  }

  private List<String> lines() {
    List<String> lines = new ArrayList<>();
    lines.add(header());
    List<GuitarString> strings = neck.tuning().strings();
    for (int i = strings.size() - 1; i >= 0; i--) {
      lines.add(line(strings.get(i), neck.tuning().lowToHigh().get(i).note()));
    }
    return lines;
  }

  private String header() {
    StringBuilder header = new StringBuilder(" ".repeat(nameWidth()));
    for (int fret = lowest; fret <= highest; fret++) {
      String number = fret == 0 ? "" : Integer.toString(fret);
      header.append(centred(number, cell, ' ')).append(fret == 0 ? "  " : " ");
      if (fret == lowest && fret > 0) {
        header.insert(nameWidth(), " ");
      }
    }
    return header.toString().stripTrailing();
  }

  private String line(GuitarString string, String name) {
    StringBuilder line = new StringBuilder();
    line.append(string.number()).append(' ').append(name);
    line.append(" ".repeat(nameWidth() - line.length()));
    if (lowest > 0) {
      line.append('|');
    }
    for (int fret = lowest; fret <= highest; fret++) {
      String fingers = fingers(new Place(string, fret));
      line.append(centred(fingers, cell, fret == 0 ? ' ' : '-')).append(fret == 0 ? NUT : "|");
    }
    return line.toString();
  }

  private String fingers(Place place) {
    StringBuilder fingers = new StringBuilder();
    boolean tonic = false;
    for (PlacedShape shape : shapes) {
      for (PlacedNote note : shape.notes()) {
        if (note.place().equals(place)) {
          fingers.append(fingers.isEmpty() ? "" : "/").append(note.finger());
          tonic = neck.key().isTonic(note.midi());
        }
      }
    }
    return tonic && fingers.length() + 2 <= cell ? "(" + fingers + ")" : fingers.toString();
  }

  private static String centred(String text, int width, char around) {
    int left = (width - text.length()) / 2;
    String pad = String.valueOf(around);
    return pad.repeat(left) + text + pad.repeat(width - text.length() - left);
  }
}
