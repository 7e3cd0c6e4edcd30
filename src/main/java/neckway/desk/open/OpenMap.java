package neckway.desk.open;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import neckway.neck.BadInput;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.PlacedShape;
import neckway.practice.Exercise;
import neckway.practice.Progress;
import neckway.practice.Reach;
import neckway.practice.State;

/**
 * The stands of the hand along the neck and the bridges between them, with nothing said of pixels.
 *
 * @param columns stands and bridges in turn, from the nut on
 */
public record OpenMap(List<Column> columns) {
  private static final int HAND_FRETS = 4;

  public OpenMap {
    columns = List.copyOf(columns);
  }

  /** A stand or a bridge. */
  public sealed interface Column {
    /** What can be pointed at, from the top; a bridge's ways up come before its ways down. */
    List<Progress> spots();
  }

  /**
   * A stand of the hand.
   *
   * @param placed its shape in its place
   * @param progress of the shape alone
   * @param from the lowest fret that the hand covers
   * @param to the highest
   */
  public record Stand(PlacedShape placed, Progress progress, int from, int to) implements Column {
    @Override
    public List<Progress> spots() {
      return List.of(progress);
    }
  }

  /**
   * The ways between two stands, one a string; of several fingers the one that was played most.
   *
   * @param up from the highest-sounding string on
   * @param down the same
   */
  public record Bridge(List<Progress> up, List<Progress> down) implements Column {
    public Bridge {
      up = List.copyOf(up);
      down = List.copyOf(down);
    }

    @Override
    public List<Progress> spots() {
      List<Progress> both = new ArrayList<>(up);
      both.addAll(down);
      return both;
    }

    /** What is known of a direction: the state of its best way. */
    public State state(Direction direction) {
      List<Progress> ways = direction == Direction.UP ? up : down;
      for (State state : List.of(State.OPEN, State.FADING, State.WORKING)) {
        if (ways.stream().anyMatch(p -> p.state() == state)) {
          return state;
        }
      }
      return State.NEW;
    }
  }

  /**
   * Of what is open of a key.
   *
   * @param lowOnTop whether the lowest-sounding string is drawn first
   */
  static OpenMap of(Reach reach, boolean lowOnTop) {
    List<PlacedShape> along = new ArrayList<>(reach.map().shapes());
    along.sort(Comparator.comparingInt(PlacedShape::start));
    List<Column> columns = new ArrayList<>();
    PlacedShape last = null;
    for (PlacedShape lower : along) {
      Optional<PlacedShape> upper = upper(reach, lower);
      if (!lower.equals(last)) {
        columns.add(stand(reach, lower));
        last = lower;
      }
      if (upper.isPresent()) {
        columns.add(bridge(reach, lower, lowOnTop));
        columns.add(stand(reach, upper.get()));
        last = upper.get();
      }
    }
    return new OpenMap(columns);
  }

  private static Optional<PlacedShape> upper(Reach reach, PlacedShape lower) {
    if (reach.joins(lower.shape(), Direction.UP).isEmpty()) {
      return Optional.empty();
    }
    try {
      return reach.map().neck().neighbourAbove(lower);
    } catch (BadInput beyondTheNeck) {
      return Optional.empty();
    }
  }

  private static Stand stand(Reach reach, PlacedShape placed) {
    int low = placed.hands().stream().mapToInt(Integer::intValue).min().orElseThrow();
    int high = placed.hands().stream().mapToInt(Integer::intValue).max().orElseThrow();
    return new Stand(
        placed,
        reach.shape(placed.shape()),
        low,
        Math.min(reach.map().neck().frets(), high + HAND_FRETS - 1));
  }

  private static Bridge bridge(Reach reach, PlacedShape lower, boolean lowOnTop) {
    return new Bridge(
        ways(reach, lower, Direction.UP, lowOnTop), ways(reach, lower, Direction.DOWN, lowOnTop));
  }

  private static List<Progress> ways(
      Reach reach, PlacedShape lower, Direction direction, boolean lowOnTop) {
    List<Progress> all = reach.joins(lower.shape(), direction);
    List<Progress> ways = new ArrayList<>();
    List<GuitarString> strings = new ArrayList<>(reach.map().neck().tuning().strings());
    strings.sort(Comparator.comparingInt(s -> lowOnTop ? -s.number() : s.number()));
    for (GuitarString string : strings) {
      all.stream()
          .filter(p -> string(p) == string.number())
          .reduce((a, b) -> b.rounds() > a.rounds() ? b : a)
          .ifPresent(ways::add);
    }
    return ways;
  }

  private static int string(Progress progress) {
    return ((Exercise.OfJoin) progress.exercise()).string();
  }

  /** Where something is. */
  record Spot(int column, int row) {}

  /** Where an exercise is; of a stand that is there twice the first. */
  Optional<Spot> find(Exercise exercise) {
    return find(exercise, false).or(() -> find(exercise, true));
  }

  private static boolean isSame(Exercise one, Exercise other, boolean anyFinger) {
    return one.equals(other)
        || anyFinger
            && one instanceof Exercise.OfJoin a
            && other instanceof Exercise.OfJoin b
            && a.lower() == b.lower()
            && a.direction() == b.direction()
            && a.string() == b.string();
  }

  private Optional<Spot> find(Exercise exercise, boolean anyFinger) {
    for (int column = 0; column < columns.size(); column++) {
      List<Progress> spots = columns.get(column).spots();
      for (int row = 0; row < spots.size(); row++) {
        if (isSame(spots.get(row).exercise(), exercise, anyFinger)) {
          return Optional.of(new Spot(column, row));
        }
      }
    }
    return Optional.empty();
  }

  /** What is so many columns and rows from a spot; at the ends it stays. */
  Spot from(Spot spot, int columnsOn, int rowsOn) {
    int column = Math.max(0, Math.min(columns.size() - 1, spot.column() + columnsOn));
    int rows = columns.get(column).spots().size();
    int last = columns.get(spot.column()).spots().size();
    int row = spot.row();
    if (column != spot.column() && rows != last) {
      row = mostPlayed(columns.get(column));
    }
    return new Spot(column, Math.max(0, Math.min(rows - 1, row + rowsOn)));
  }

  /** Of a bridge the way that was played most; where none was, one in the middle. */
  private static int mostPlayed(Column column) {
    List<Progress> spots = column.spots();
    int best = Math.max(0, spots.size() / 2 - 1);
    for (int row = 0; row < spots.size(); row++) {
      best = spots.get(row).rounds() > spots.get(best).rounds() ? row : best;
    }
    return best;
  }

  /** The join that was played last, of several on that day the one that was played most. */
  Optional<Spot> lastPlayed() {
    return columns.stream()
        .filter(c -> c instanceof Bridge)
        .flatMap(c -> c.spots().stream())
        .filter(p -> p.rounds() > 0)
        .max(
            Comparator.comparing((Progress p) -> p.lastDay().orElseThrow())
                .thenComparingInt(Progress::rounds))
        .flatMap(p -> find(p.exercise()));
  }

  Progress at(Spot spot) {
    return columns.get(spot.column()).spots().get(spot.row());
  }

  /** Whether nobody goes on here: over a bridge that is not open, or where there is none. */
  private boolean breaks(int column) {
    return columns.get(column) instanceof Bridge || columns.get(column - 1) instanceof Stand;
  }

  /** The stands of a direction that open ways join, each run as its first and last stand. */
  List<List<Stand>> open(Direction direction) {
    List<List<Stand>> runs = new ArrayList<>();
    List<Stand> run = new ArrayList<>();
    for (int i : IntStream.range(0, columns.size()).toArray()) {
      if (columns.get(i) instanceof Bridge bridge && bridge.state(direction) == State.OPEN) {
        if (run.isEmpty()) {
          run.add((Stand) columns.get(i - 1));
        }
        run.add((Stand) columns.get(i + 1));
      } else if (!run.isEmpty() && breaks(i)) {
        runs.add(run);
        run = new ArrayList<>();
      }
    }
    if (!run.isEmpty()) {
      runs.add(run);
    }
    return runs;
  }
}
