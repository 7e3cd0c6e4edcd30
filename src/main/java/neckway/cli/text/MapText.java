package neckway.cli.text;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import neckway.neck.GuitarString;
import neckway.neck.Join;
import neckway.neck.Neck;
import neckway.neck.NeckMap;
import neckway.neck.PlacedNote;
import neckway.neck.PlacedShape;

/** A map of the neck as text. */
public final class MapText {
  private static final int BETWEEN = 4;

  private final NeckMap map;
  private final Neck neck;
  private final List<String> lines = new ArrayList<>();

  private MapText(NeckMap map) {
    this.map = map;
    this.neck = map.neck();
  }

  /** The lines of a map, none longer than the terminal is wide. */
  public static List<String> of(NeckMap map) {
    MapText text = new MapText(map);
    text.head();
    if (!map.chain()) {
      text.allShapes();
      text.allJoins();
    } else if (map.shapes().size() == 1) {
      text.lines.addAll(text.titled(map.shapes().get(0)));
      text.lines.add("");
    } else {
      text.pairs();
    }
    return text.lines;
  }

  private void head() {
    Set<String> names = new LinkedHashSet<>();
    for (PlacedNote note : map.shapes().get(0).notes()) {
      names.add(neck.key().spell(note.midi()).note());
    }
    List<String> order = new ArrayList<>(names);
    String tonic = neck.key().tonicName();
    while (order.contains(tonic) && !order.get(0).equals(tonic)) {
      order.add(order.remove(0));
    }
    lines.add(neck.key() + " pentatonic: " + String.join(" ", order));
    lines.add("strings " + neck.tuning() + ", " + neck.frets() + " frets");
    lines.add(
        "The numbers on the strings are fingers, 0 is an open string; (brackets) mark "
            + tonic
            + ".");
    if (map.chain() && map.shapes().size() > 1) {
      lines.add("4/2 is a note of both shapes: finger 4 in the lower one, finger 2 in the upper.");
    }
    lines.add("");
  }

  private void allShapes() {
    List<PlacedShape> low = new ArrayList<>(map.shapes());
    low.sort(Comparator.comparingInt(PlacedShape::start));
    List<List<String>> drawings = low.stream().map(this::titled).toList();
    for (int i = 0; i < drawings.size(); i += 2) {
      List<String> left = drawings.get(i);
      List<String> right = i + 1 < drawings.size() ? drawings.get(i + 1) : List.of();
      int width = left.stream().mapToInt(String::length).max().orElseThrow();
      int rightWidth = right.stream().mapToInt(String::length).max().orElse(0);
      int column = Math.max(width + BETWEEN, Wrapped.COLUMNS / 2);
      if (column + rightWidth > Wrapped.COLUMNS) {
        lines.addAll(left);
        lines.add("");
        lines.addAll(right);
      } else {
        for (int row = 0; row < left.size(); row++) {
          String beside = row < right.size() ? right.get(row) : "";
          lines.add((Wrapped.padded(left.get(row), column) + beside).stripTrailing());
        }
      }
      lines.add("");
    }
  }

  private List<String> titled(PlacedShape shape) {
    List<String> drawing = new ArrayList<>();
    drawing.addAll(title(shape));
    drawing.addAll(NeckDrawing.of(neck, List.of(shape), Wrapped.COLUMNS));
    return drawing;
  }

  private List<String> title(PlacedShape shape) {
    return Wrapped.lines(shape.shape().spoken() + ": " + hand(shape), Wrapped.COLUMNS);
  }

  /** Where the hand is: "hand at fret 6, at 7 from string 2". */
  private String hand(PlacedShape shape) {
    StringBuilder hand = new StringBuilder("hand at fret ");
    int before = 0;
    int moves = 0;
    for (GuitarString string : neck.tuning().strings()) {
      int now = shape.hand(string);
      if (before == 0) {
        hand.append(now);
      } else if (now != before) {
        hand.append(moves == 0 ? ", at " : ", ").append(now);
        hand.append(" from string ").append(string);
        moves++;
      }
      before = now;
    }
    return hand.toString();
  }

  private void allJoins() {
    lines.add("Where the hand can go from a shape to the next, the cleanest first,");
    lines.add("as string, finger that lands, frets:");
    for (PlacedShape shape : map.shapes()) {
      List<Join> joins = map.joinsAbove(shape.shape());
      if (joins.isEmpty()) {
        continue;
      }
      String name = pair(joins.get(0));
      String list = joins.stream().map(MapText::shortly).collect(Collectors.joining("; "));
      List<String> rows = Wrapped.lines(list, Wrapped.COLUMNS - 26);
      for (int i = 0; i < rows.size(); i++) {
        lines.add(Wrapped.padded(i == 0 ? "  " + name : "", 26) + rows.get(i).replace('_', ' '));
      }
    }
    lines.add("");
    lines.add("A star: no finger stays down, fingers change there.");
    lines.add("--shapes major,dorian shows a chain with the reasons and the route as tab.");
  }

  private static String shortly(Join join) {
    String star = join.lead() == Join.Lead.CHANGE ? "*" : "";
    return join.string()
        + ":_finger_"
        + join.finger()
        + star
        + ",_"
        + join.from()
        + "-"
        + join.to();
  }

  private static String pair(Join join) {
    return join.lower().spoken() + " to " + join.upper().spoken();
  }

  private void pairs() {
    for (int i = 1; i < map.shapes().size(); i++) {
      PlacedShape lower = map.shapes().get(i - 1);
      PlacedShape upper = map.shapes().get(i);
      lines.addAll(title(lower));
      lines.addAll(title(upper));
      lines.addAll(NeckDrawing.of(neck, List.of(lower, upper), Wrapped.COLUMNS));
      lines.add("");
      List<Join> joins = map.joinsAbove(lower.shape());
      lines.add(
          "From "
              + lower.shape().spoken()
              + " to "
              + upper.shape().spoken()
              + ", the cleanest join first:");
      joins.forEach(this::reasoned);
      lines.add("");
    }
  }

  private void reasoned(Join join) {
    String head =
        String.format(
            "%3d. string %s, finger %d, %2d to %-2d  ",
            join.rank(), join.string(), join.finger(), join.from(), join.to());
    List<String> why = Wrapped.lines(join.why(), Wrapped.COLUMNS - head.length());
    for (int i = 0; i < why.size(); i++) {
      lines.add((i == 0 ? head : " ".repeat(head.length())) + why.get(i));
    }
  }
}
