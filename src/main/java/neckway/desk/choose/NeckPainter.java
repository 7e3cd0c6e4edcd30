package neckway.desk.choose;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import neckway.desk.DrillModel;
import neckway.desk.LookModel.Label;
import neckway.desk.choose.NeckPicture.Bridge;
import neckway.desk.choose.NeckPicture.Dot;
import neckway.desk.choose.NeckPicture.Mark;
import neckway.desk.choose.NeckPicture.Side;
import neckway.desk.choose.NeckPicture.Window;
import neckway.neck.BadInput;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Join;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.Place;
import neckway.neck.PlacedNote;
import neckway.neck.PlacedShape;
import neckway.neck.Shape;

/** Decides what is on the neck for a drill. */
final class NeckPainter {
  /** Between the two labels of a note of two stands. */
  static final String BOTH = "\u00b7";

  private static final int HAND_FRETS = 4;
  private static final int FRETS_BESIDE = 1;
  private static final int FEWEST_CLOSE = 8;

  private final DrillModel model;
  private final Neck neck;
  private final List<PlacedShape> chain;
  private final Label label;

  NeckPainter(DrillModel model, Label label) {
    this.model = model;
    this.label = label;
    neck = model.drill().neck();
    chain = model.chain();
  }

  /**
   * The picture.
   *
   * @param closeUp only the frets that are played
   * @param pair the pair of which every join is shown; of the others only those taken. Its stands
   *     are at full strength, and above those of the others
   */
  NeckPicture picture(boolean closeUp, int pair) {
    List<Window> windows = windows(pair);
    List<Dot> dots = dots(pair);
    int first = 0;
    int last = neck.frets();
    if (closeUp) {
      int low = windows.stream().mapToInt(Window::hand).min().orElse(1);
      int high = windows.stream().mapToInt(Window::lastFret).max().orElse(last);
      boolean open = dots.stream().anyMatch(dot -> dot.place().fret() == 0);
      first = open ? 0 : Math.max(0, low - 1 - FRETS_BESIDE);
      last = Math.min(neck.frets(), Math.max(first + FEWEST_CLOSE, high + FRETS_BESIDE));
    }
    return new NeckPicture(
        neck.tuning(), first, last, marks(first, last), windows, dots, bridges(pair));
  }

  private List<Mark> marks(int first, int last) {
    List<Mark> marks = new ArrayList<>();
    for (int start = 0; start <= neck.frets(); start++) {
      for (Shape shape : Shape.values()) {
        if (neck.starts(shape).contains(start)) {
          placed(shape, start)
              .map(this::mark)
              .filter(mark -> mark.from() > first && mark.to() <= last)
              .ifPresent(marks::add);
        }
      }
    }
    return marks;
  }

  private Optional<PlacedShape> placed(Shape shape, int start) {
    try {
      return Optional.of(neck.chain(List.of(shape), OptionalInt.of(start)).get(0));
    } catch (BadInput e) {
      return Optional.empty();
    }
  }

  private Mark mark(PlacedShape placed) {
    int low = placed.hands().stream().mapToInt(Integer::intValue).min().orElseThrow();
    int high = placed.hands().stream().mapToInt(Integer::intValue).max().orElseThrow();
    Optional<Side> chosen = Optional.empty();
    for (int stand = 0; stand < chain.size(); stand++) {
      PlacedShape mine = chain.get(stand);
      if (mine.shape() == placed.shape() && mine.start() == placed.start()) {
        chosen = Optional.of(Side.of(stand));
      }
    }
    int to = Math.min(neck.frets(), high + HAND_FRETS - 1);
    return new Mark(placed.shape(), placed.start(), low, to, inTurn(placed.hands()), chosen);
  }

  private static List<Integer> inTurn(List<Integer> hands) {
    List<Integer> turn = new ArrayList<>();
    for (int hand : hands) {
      if (turn.isEmpty() || turn.get(turn.size() - 1) != hand) {
        turn.add(hand);
      }
    }
    return turn;
  }

  private static boolean isOfPair(int stand, int pair) {
    return stand == pair || stand == pair + 1;
  }

  /** The stands of the chain, those of a pair last. */
  private List<Integer> pairLast(int pair) {
    return IntStream.range(0, chain.size())
        .boxed()
        .sorted(Comparator.comparing(stand -> isOfPair(stand, pair)))
        .toList();
  }

  private List<Window> windows(int pair) {
    List<Window> windows = new ArrayList<>();
    for (int stand : pairLast(pair)) {
      PlacedShape shape = chain.get(stand);
      GuitarString from = neck.tuning().lowest();
      for (GuitarString string : neck.tuning().strings()) {
        boolean last = string.number() == 1;
        if (last || shape.hand(new GuitarString(string.number() - 1)) != shape.hand(string)) {
          windows.add(
              new Window(Side.of(stand), shape.hand(string), from, string, isOfPair(stand, pair)));
          from = last ? from : new GuitarString(string.number() - 1);
        }
      }
    }
    return windows;
  }

  private List<Dot> dots(int pair) {
    Map<Place, Dot> dots = new LinkedHashMap<>();
    for (int stand : pairLast(pair)) {
      Side side = Side.of(stand);
      boolean inPair = isOfPair(stand, pair);
      for (PlacedNote note : chain.get(stand).notes()) {
        Dot own = dot(note, side, inPair);
        dots.merge(note.place(), own, NeckPainter::shared);
      }
    }
    return List.copyOf(dots.values());
  }

  private Dot dot(PlacedNote note, Side side, boolean inPair) {
    Key key = model.drill().key();
    String text =
        switch (label) {
          case FINGER -> Integer.toString(note.finger());
          case DEGREE -> key.degree(note.midi()).map(String::valueOf).orElse("");
          case NOTE -> key.spell(note.midi()).note();
        };
    return new Dot(note.place(), Optional.of(side), text, key.isTonic(note.midi()), inPair);
  }

  /** What two stands share; one of the chosen pair alone where the other is not. */
  private static Dot shared(Dot lower, Dot upper) {
    if (upper.inPair() && !lower.inPair()) {
      return upper;
    }
    boolean one = lower.label().equals(upper.label());
    String both = one ? lower.label() : lower.label() + BOTH + upper.label();
    return new Dot(lower.place(), Optional.empty(), both, lower.tonic(), lower.inPair());
  }

  private List<Bridge> bridges(int shownPair) {
    List<Bridge> bridges = new ArrayList<>();
    List<List<Join>> pairs = model.pairs();
    for (int pair = 0; pair < pairs.size(); pair++) {
      Join up = model.join(pair, Direction.UP);
      Join down = model.join(pair, Direction.DOWN);
      for (Join join : pairs.get(pair)) {
        List<Direction> taken = new ArrayList<>();
        if (join.equals(up)) {
          taken.add(Direction.UP);
        }
        if (join.equals(down)) {
          taken.add(Direction.DOWN);
        }
        if (pair == shownPair || !taken.isEmpty()) {
          bridges.add(new Bridge(pair, join, taken, pair == shownPair));
        }
      }
    }
    return bridges;
  }
}
