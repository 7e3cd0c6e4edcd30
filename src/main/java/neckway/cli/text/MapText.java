package neckway.cli.text;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
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
import neckway.neck.Shape;
import neckway.words.Wording;

/** A map of the neck as text. */
public final class MapText {
  private static final int BETWEEN = 4;
  private static final int USUAL_STRINGS = 6;

  /** Columns that a list or a reason beside a name should have; else it stands below. */
  private static final int LEAST_BESIDE = 30;

  /** Columns of a title over a shape that stands beside another one. */
  private static final int TITLE = 36;

  private static final String INDENT = "     ";

  private final NeckMap map;
  private final Neck neck;
  private final int width;
  private final Handed handed;
  private final List<String> lines = new ArrayList<>();

  private MapText(NeckMap map, int width, Handed handed) {
    this.map = map;
    this.neck = map.neck();
    this.width = width;
    this.handed = handed;
  }

  /**
   * The lines of a map, none longer than the terminal is wide.
   *
   * @param width columns there are, 40 or more
   */
  public static List<String> of(NeckMap map, int width, Handed handed) {
    MapText text = new MapText(map, width, handed);
    text.head();
    if (!map.chain()) {
      text.allShapes();
      text.allJoins();
    } else if (map.shapes().size() == 1) {
      text.titleInALine(map.shapes().get(0));
      text.lines.addAll(text.drawing(map.shapes()));
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
    say(Wording.of("terminal.map.head", neck.key(), String.join(" ", order)));
    String name = neck.tuning().name().map(known -> " (" + known + ")").orElse("");
    say(Wording.of("terminal.map.strings", neck.tuning() + name, neck.frets()));
    say(Wording.of("terminal.map.fingers", tonic));
    if (map.chain() && map.shapes().size() > 1) {
      say(Wording.of("terminal.map.both"));
    }
    say(
        Wording.of(
            "terminal.map.numbers",
            neck.key().spell(neck.key().majorTonic()).note(),
            Arrays.stream(Shape.values())
                .map(shape -> shape.spoken() + " " + shape.number())
                .collect(Collectors.joining(", "))));
    if (hasMoreStrings()) {
      say(Wording.of("terminal.map.more", neck.tuning().lowest()));
    }
    lines.add("");
  }

  private void say(String sentence) {
    lines.addAll(Wrapped.lines(sentence, width));
  }

  private boolean hasMoreStrings() {
    return neck.tuning().count() > USUAL_STRINGS;
  }

  private void allShapes() {
    List<PlacedShape> low = new ArrayList<>(map.shapes());
    low.sort(Comparator.comparingInt(PlacedShape::start));
    for (int i = 0; i < low.size(); i += 2) {
      sideBySide(low.subList(i, Math.min(i + 2, low.size())));
      lines.add("");
    }
  }

  /** Two shapes beside each other, or one under the other where that is too wide. */
  private void sideBySide(List<PlacedShape> shapes) {
    List<List<String>> titles = shapes.stream().map(this::title).toList();
    int titleLines = titles.stream().mapToInt(List::size).max().orElseThrow();
    List<List<String>> drawings = new ArrayList<>();
    for (int i = 0; i < shapes.size(); i++) {
      List<String> drawing = new ArrayList<>(titles.get(i));
      drawing.addAll(Collections.nCopies(titleLines - drawing.size(), ""));
      drawing.addAll(drawing(shapes.subList(i, i + 1)));
      drawings.add(drawing);
    }
    List<String> left = drawings.get(0);
    List<String> right = drawings.size() > 1 ? drawings.get(1) : List.of();
    int column = Math.max(widest(left) + BETWEEN, width / 2);
    if (column + widest(right) > width) {
      lines.addAll(left);
      lines.add("");
      lines.addAll(right);
      return;
    }
    for (int row = 0; row < Math.max(left.size(), right.size()); row++) {
      String here = row < left.size() ? left.get(row) : "";
      String beside = row < right.size() ? right.get(row) : "";
      lines.add((Wrapped.padded(here, column) + beside).stripTrailing());
    }
  }

  private static int widest(List<String> drawing) {
    return drawing.stream().mapToInt(String::length).max().orElse(0);
  }

  /** Name and hand, each in lines of their own, no wider than half an ordinary terminal. */
  private List<String> title(PlacedShape shape) {
    List<String> title = new ArrayList<>(Wrapped.lines(name(shape.shape()), TITLE));
    title.addAll(Wrapped.lines(hand(shape), TITLE));
    return title;
  }

  private void titleInALine(PlacedShape shape) {
    say(name(shape.shape()) + ": " + hand(shape));
  }

  private List<String> drawing(List<PlacedShape> shapes) {
    return NeckDrawing.of(neck, shapes, width, handed);
  }

  /** "major (shape 1)", with the name of its upper six strings where there are more. */
  private String name(Shape shape) {
    if (!hasMoreStrings()) {
      return Wording.of("terminal.map.shape", shape.spoken(), shape.number());
    }
    Shape six = shape;
    for (int note = 0; note < 2 * (neck.tuning().count() - USUAL_STRINGS); note++) {
      six = six.next();
    }
    return Wording.of(
        "terminal.map.shapeOfMore",
        shape.spoken(),
        shape.number(),
        neck.tuning().lowest(),
        six.spoken(),
        six.number());
  }

  /** Where the hand is: "hand at fret 6, at 7 from string 2". */
  private String hand(PlacedShape shape) {
    String hand = "";
    int before = 0;
    int shifts = 0;
    for (GuitarString string : neck.tuning().strings()) {
      int now = shape.hand(string);
      if (before == 0) {
        hand = Wording.of("terminal.map.hand", now);
      } else if (now != before) {
        String key = shifts == 0 ? "terminal.map.hand.from" : "terminal.map.hand.more";
        hand = Wording.of(key, hand, now, string);
        shifts++;
      }
      before = now;
    }
    return hand;
  }

  private void allJoins() {
    say(Wording.of("terminal.map.joins"));
    int column = pairColumns();
    for (PlacedShape shape : map.shapes()) {
      List<Join> joins = map.joinsAbove(shape.shape());
      if (joins.isEmpty()) {
        continue;
      }
      String list = joins.stream().map(MapText::shortly).collect(Collectors.joining("; "));
      beside("  " + pair(joins.get(0).lower(), joins.get(0).upper()), column, list);
    }
    lines.add("");
    say(Wording.of("terminal.map.star"));
    say(Wording.of("terminal.map.chain"));
  }

  /** A text beside its name, or below where there is too little room; _ is a space that holds. */
  private void beside(String name, int column, String text) {
    boolean below = width - column < LEAST_BESIDE;
    int from = below ? INDENT.length() : column;
    if (below) {
      lines.add(name.stripTrailing());
    }
    List<String> rows = Wrapped.lines(text, width - from);
    for (int i = 0; i < rows.size(); i++) {
      String before = i == 0 && !below ? name : "";
      lines.add(Wrapped.padded(before, from) + rows.get(i).replace('_', ' '));
    }
  }

  private static String shortly(Join join) {
    String star = join.lead() == Join.Lead.CHANGE ? "*" : "";
    return Wording.of(
        "terminal.map.join", join.string(), join.finger() + star, join.from(), join.to());
  }

  private static String pair(Shape lower, Shape upper) {
    return Wording.of("terminal.map.pair", lower.spoken(), upper.spoken());
  }

  /** Columns of the names of two shapes in the list of joins, with two free on either side. */
  private static int pairColumns() {
    return Arrays.stream(Shape.values())
        .mapToInt(shape -> pair(shape, shape.next()).length() + 4)
        .max()
        .orElseThrow();
  }

  private void pairs() {
    for (int i = 1; i < map.shapes().size(); i++) {
      PlacedShape lower = map.shapes().get(i - 1);
      PlacedShape upper = map.shapes().get(i);
      titleInALine(lower);
      titleInALine(upper);
      lines.addAll(drawing(List.of(lower, upper)));
      lines.add("");
      List<Join> joins = map.joinsAbove(lower.shape());
      say(Wording.of("terminal.map.from", lower.shape().spoken(), upper.shape().spoken()));
      joins.forEach(this::reasoned);
      lines.add("");
    }
  }

  private void reasoned(Join join) {
    String head =
        Wording.of(
                "terminal.map.reasoned",
                String.format("%3d", join.rank()),
                join.string(),
                join.finger(),
                String.format("%2d", join.from()),
                String.format("%-2d", join.to()))
            + "  ";
    beside(head, head.length(), join.why());
  }
}
