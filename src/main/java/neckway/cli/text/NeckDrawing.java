package neckway.cli.text;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import neckway.neck.GuitarString;
import neckway.neck.Neck;
import neckway.neck.Place;
import neckway.neck.PlacedNote;
import neckway.neck.PlacedShape;

/**
 * A piece of the neck in text, string 1 on top as in tab, with the finger on each note. A note in
 * brackets is the one that the key is named after. Where two shapes share a note, both fingers
 * stand there, the lower shape's first. A neck that is too long for the terminal is drawn in
 * pieces, one under the other.
 */
final class NeckDrawing {
  private static final int NARROW = 3;
  private static final int WIDE = 5;
  private static final String NUT = "||";
  private static final String FRET = "|";

  private final Neck neck;
  private final List<PlacedShape> shapes;
  private final Handed handed;
  private final int width;
  private final int lowest;
  private final int highest;
  private final int cell;

  private NeckDrawing(Neck neck, List<PlacedShape> shapes, int width, Handed handed) {
    this.neck = neck;
    this.shapes = shapes;
    this.handed = handed;
    this.width = width;
    this.lowest = shapes.stream().mapToInt(NeckDrawing::lowestFret).min().orElseThrow();
    this.highest = shapes.stream().mapToInt(NeckDrawing::highestFret).max().orElseThrow();
    this.cell = shapes.size() > 1 && fretsThatFit(WIDE) >= frets() ? WIDE : NARROW;
  }

  /**
   * Draws one shape, or two neighbours on one neck.
   *
   * @param width columns there are, 40 or more
   */
  static List<String> of(Neck neck, List<PlacedShape> shapes, int width, Handed handed) {
    return new NeckDrawing(neck, shapes, width, handed).lines();
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

  private int frets() {
    return highest - lowest + 1;
  }

  private int fretsThatFit(int wide) {
    return (width - nameWidth() - NUT.length()) / (wide + FRET.length());
  }

  private int nameWidth() {
    int widest =
        neck.tuning().lowToHigh().stream().mapToInt(p -> p.note().length()).max().orElseThrow();
    return widest + 3;
  }

  private List<String> lines() {
    int pieces = (frets() + fretsThatFit(cell) - 1) / fretsThatFit(cell);
    List<String> lines = new ArrayList<>();
    for (int piece = 0; piece < pieces; piece++) {
      if (piece > 0) {
        lines.add("");
      }
      int from = lowest + frets() * piece / pieces;
      int to = lowest + frets() * (piece + 1) / pieces;
      lines.addAll(piece(IntStream.range(from, to).boxed().toList()));
    }
    return lines;
  }

  private List<String> piece(List<Integer> frets) {
    List<String> lines = new ArrayList<>();
    lines.add(header(frets));
    List<GuitarString> strings = neck.tuning().strings();
    for (int i = strings.size() - 1; i >= 0; i--) {
      lines.add(line(strings.get(i), neck.tuning().lowToHigh().get(i).note(), frets));
    }
    return lines;
  }

  private String header(List<Integer> frets) {
    List<String> parts = new ArrayList<>();
    for (String part : parts(frets, this::number)) {
      parts.add(part.equals(NUT) || part.equals(FRET) ? " ".repeat(part.length()) : part);
    }
    return (" ".repeat(nameWidth()) + String.join("", parts)).stripTrailing();
  }

  private String line(GuitarString string, String name, List<Integer> frets) {
    String row = String.join("", parts(frets, fret -> note(new Place(string, fret))));
    return (Wrapped.padded(string.number() + " " + name, nameWidth()) + row).stripTrailing();
  }

  /** Cells and the frets between them, from the left: on a left-handed neck from the body. */
  private List<String> parts(List<Integer> frets, IntFunction<String> text) {
    List<String> parts = new ArrayList<>();
    if (frets.get(0) > 0) {
      parts.add(FRET);
    }
    for (int fret : frets) {
      parts.add(text.apply(fret));
      parts.add(fret == 0 ? NUT : FRET);
    }
    if (handed == Handed.LEFT) {
      Collections.reverse(parts);
    }
    return parts;
  }

  private String number(int fret) {
    return centred(fret == 0 ? "" : Integer.toString(fret), ' ');
  }

  private String note(Place place) {
    return centred(fingers(place), place.fret() == 0 ? ' ' : '-');
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

  private String centred(String text, char around) {
    int left = (cell - text.length()) / 2;
    String pad = String.valueOf(around);
    return pad.repeat(left) + text + pad.repeat(cell - text.length() - left);
  }
}
