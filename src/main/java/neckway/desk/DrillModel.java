package neckway.desk;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import neckway.drill.Drill;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.file.DrillFile;
import neckway.file.OutputFiles;
import neckway.neck.BadInput;
import neckway.neck.Direction;
import neckway.neck.Join;
import neckway.neck.JoinChoice;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.PlacedShape;
import neckway.neck.PlannedShift;
import neckway.neck.Route;
import neckway.neck.Shape;
import neckway.neck.Tuning;

/**
 * The drill that is chosen. It can be played at all times: what cannot be had leaves it as it was,
 * and {@link #problem()} says in one line why.
 */
public final class DrillModel {
  private static final Drill FIRST =
      new Drill(
          Optional.empty(),
          Tuning.STANDARD,
          Neck.USUAL_FRETS,
          Key.parse("A major"),
          List.of(Shape.MAJOR, Shape.DORIAN),
          OptionalInt.empty(),
          List.of(),
          List.of(),
          1,
          Drill.USUAL_PULSE);

  /** So near to a note a start is meant to be on it, notes: 0.33 beats are a third. */
  private static final double NEAR_A_NOTE = 0.05;

  private final ReadOnlyObjectWrapper<PlayableDrill> drill =
      new ReadOnlyObjectWrapper<>(this, "drill", FIRST.playable());
  private final ReadOnlyStringWrapper problem = new ReadOnlyStringWrapper(this, "problem", "");

  /** The drill, with its start and joins said. */
  public ReadOnlyObjectProperty<PlayableDrill> drillProperty() {
    return drill.getReadOnlyProperty();
  }

  /** The drill, with its start and joins said. */
  public PlayableDrill drill() {
    return drill.get();
  }

  /** Why the last wish could not be met; empty where it was. */
  public ReadOnlyStringProperty problem() {
    return problem.getReadOnlyProperty();
  }

  /** All steps of the take. */
  public Route route() {
    return drill().route();
  }

  /** The shapes in their places. */
  public List<PlacedShape> chain() {
    return drill().chain();
  }

  /** The joins of each pair of neighbours, low to high, cleanest first. */
  public List<List<Join>> pairs() {
    return drill().pairs();
  }

  /** The join that is taken at a pair, counted from the lowest. */
  public Join join(int pair, Direction direction) {
    return join(drill(), pair, direction);
  }

  static Join join(PlayableDrill drill, int pair, Direction direction) {
    PlannedShift shift =
        drill.route().shifts().stream()
            .filter(s -> s.round() == 0 && s.pair() == pair && s.direction() == direction)
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("pair " + pair));
    return drill.pairs().get(pair).stream()
        .filter(j -> j.string().equals(shift.string()))
        .filter(j -> j.isAskedForBy(shift.finger(), direction))
        .findFirst()
        .orElseThrow();
  }

  /** Takes a whole drill, such as one that was kept. */
  public void use(PlayableDrill other) {
    drill.set(other);
    problem.set("");
  }

  /** Reads a drill; returns whether it could be taken. */
  public boolean open(Path file) {
    try {
      use(DrillFile.read(file));
      return true;
    } catch (BadInput e) {
      refuse(e.getMessage());
      return false;
    }
  }

  /** Writes the drill; returns whether it could be written. */
  public boolean save(Path file) {
    try {
      OutputFiles.check(file, OutputFiles.Kind.DRILL);
      DrillFile.write(file, drill());
      problem.set("");
      return true;
    } catch (BadInput e) {
      refuse(e.getMessage());
      return false;
    }
  }

  /** Another key, as near to the old place as it fits; the joins stay where they can. */
  public boolean key(Key key) {
    return moved(drill().tuning(), key, drill().shapes());
  }

  /** Another tuning; the joins stay where they can. */
  public boolean tuning(Tuning tuning) {
    return moved(tuning, drill().key(), drill().shapes());
  }

  /** Another tuning by its notes from the lowest. */
  public boolean tuning(String names) {
    try {
      return tuning(Tuning.parse(names));
    } catch (BadInput e) {
      refuse(e.getMessage());
      return false;
    }
  }

  /** Other shapes with the first note on a fret. */
  public boolean shapes(List<Shape> shapes, int start) {
    Drill d = drill().drill();
    List<Drill> all = candidates(d, d.tuning(), d.key(), shapes, OptionalInt.of(start));
    if (shapes.equals(d.shapes())) {
      return takeFirst(all);
    }
    List<Drill> mended =
        all.stream().map(KeptJoins::withoutTheWorst).flatMap(Optional::stream).toList();
    return takeFirst(mended) || take(all.get(all.size() - 1));
  }

  /** Begins on another fret. */
  public boolean start(int fret) {
    return shapes(drill().shapes(), fret);
  }

  /** The frets on which the chain can begin. */
  public List<Integer> starts() {
    return starts(drill().neck(), drill().shapes());
  }

  private static List<Integer> starts(Neck neck, List<Shape> shapes) {
    return neck.starts(shapes.get(0)).stream().filter(s -> fits(neck, shapes, s)).toList();
  }

  private static boolean fits(Neck neck, List<Shape> shapes, int start) {
    try {
      neck.chain(shapes, OptionalInt.of(start));
      return true;
    } catch (BadInput e) {
      return false;
    }
  }

  /** Beats a minute, 20 to 400. */
  public boolean tempo(double tempo) {
    if (!(tempo >= Pulse.SLOWEST && tempo <= Pulse.FASTEST)) {
      refuse(
          Texts.of(
              "problem.tempo",
              Texts.plain(tempo),
              Texts.plain(Pulse.SLOWEST),
              Texts.plain(Pulse.FASTEST)));
      return false;
    }
    Pulse p = drill().pulse();
    return take(drill().drill().withPulse(p.withTempo(tempo)));
  }

  /** Notes in a beat, 1 to 8. */
  public boolean notesPerBeat(int notes) {
    if (notes < 1 || notes > Pulse.MOST_NOTES_PER_BEAT) {
      refuse(Texts.of("problem.notes", notes, Pulse.MOST_NOTES_PER_BEAT));
      return false;
    }
    Pulse p = drill().pulse();
    return take(drill().drill().withPulse(p.withNotesPerBeat(notes)));
  }

  /** The share of a pair that its first note takes, 0.5 to 0.75; 0.5 is straight. */
  public boolean swing(double share) {
    if (!(share >= Pulse.STRAIGHT && share <= Pulse.MOST_SWING)) {
      refuse(Texts.of("problem.swing", Texts.plain(100 * share)));
      return false;
    }
    Pulse p = drill().pulse();
    if (share != Pulse.STRAIGHT && p.notesPerBeat() % 2 != 0) {
      refuse(Texts.of("problem.swing.pairs", Texts.number(p.notesPerBeat())));
      return false;
    }
    return take(drill().drill().withPulse(p.withFeel(share, p.offsetBeats())));
  }

  /** Beats from the first beat to the first note, 0 to 16; a whole number of notes. */
  public boolean offsetBeats(double beats) {
    if (!(beats >= 0 && beats <= Pulse.LATEST_OFFSET)) {
      refuse(Texts.of("problem.offset", Texts.plain(beats), Texts.plain(Pulse.LATEST_OFFSET)));
      return false;
    }
    Pulse p = drill().pulse();
    double notes = Math.rint(beats * p.notesPerBeat());
    if (Math.abs(notes - beats * p.notesPerBeat()) > NEAR_A_NOTE) {
      refuse(
          Texts.of("problem.offset.note", Texts.fixed(beats, 2), Texts.number(p.notesPerBeat())));
      return false;
    }
    return take(drill().drill().withPulse(p.withFeel(p.swing(), notes / p.notesPerBeat())));
  }

  /** How often the route is played without a pause, 1 to 99. */
  public boolean rounds(int rounds) {
    return take(drill().drill().withRounds(rounds));
  }

  /**
   * Chooses a join. Where joins of other pairs would be out of order with it, they follow to the
   * same string.
   *
   * @param pair counted from the lowest
   */
  public boolean join(int pair, Direction direction, Join join) {
    Drill d = drill().drill();
    boolean goingUp = direction == Direction.UP;
    List<JoinChoice> old = goingUp ? d.up() : d.down();
    int finger = goingUp ? join.finger() : join.downFinger();
    int string = join.string().number();
    int met = goingUp ? pair : old.size() - 1 - pair;
    List<JoinChoice> asked = new ArrayList<>(old);
    asked.set(met, JoinChoice.on(string, finger));
    for (int i = 0; i < asked.size(); i++) {
      int there = asked.get(i).string();
      boolean before = i < met;
      boolean tooLow = before == goingUp && there < string;
      boolean tooHigh = before != goingUp && there > string;
      if (i != met && (tooLow || tooHigh)) {
        asked.set(i, JoinChoice.on(string));
      }
    }
    List<JoinChoice> up = goingUp ? asked : d.up();
    List<JoinChoice> down = goingUp ? d.down() : asked;
    return take(copy(d, d.tuning(), d.key(), d.shapes(), d.start(), up, down, d.rounds()));
  }

  /** The next cleaner or less clean join of a pair; at the end of the list it stays. */
  public boolean joinBy(int pair, Direction direction, int ranks) {
    List<Join> joins = pairs().get(pair);
    int now = joins.indexOf(join(pair, direction));
    int next = Math.max(0, Math.min(joins.size() - 1, now + ranks));
    return join(pair, direction, joins.get(next));
  }

  private boolean moved(Tuning tuning, Key key, List<Shape> shapes) {
    Drill d = drill().drill();
    List<Drill> candidates = new ArrayList<>();
    int old = d.start().orElse(0);
    List<Integer> near = new ArrayList<>();
    try {
      near.addAll(starts(new Neck(key, tuning, d.frets()), shapes));
    } catch (BadInput e) {
      refuse(e.getMessage());
      return false;
    }
    near.sort((a, b) -> Integer.compare(Math.abs(a - old), Math.abs(b - old)));
    for (int start : near) {
      candidates.addAll(candidates(d, tuning, key, shapes, OptionalInt.of(start)));
    }
    candidates.addAll(candidates(d, tuning, key, shapes, OptionalInt.empty()));
    return takeFirst(candidates);
  }

  /**
   * With the joins as they are, then with their strings alone, then with the cleanest; on another
   * number of strings with the cleanest at once.
   */
  private static List<Drill> candidates(
      Drill d, Tuning tuning, Key key, List<Shape> shapes, OptionalInt start) {
    if (tuning.count() != d.tuning().count()) {
      return List.of(copy(d, tuning, key, shapes, start, List.of(), List.of(), d.rounds()));
    }
    return List.of(
        copy(d, tuning, key, shapes, start, d.up(), d.down(), d.rounds()),
        copy(d, tuning, key, shapes, start, strings(d.up()), strings(d.down()), d.rounds()),
        copy(d, tuning, key, shapes, start, List.of(), List.of(), d.rounds()));
  }

  private static List<JoinChoice> strings(List<JoinChoice> joins) {
    return joins.stream().map(j -> JoinChoice.on(j.string())).toList();
  }

  private boolean takeFirst(List<Drill> candidates) {
    return IntStream.range(0, candidates.size()).anyMatch(i -> take(candidates.get(i)));
  }

  /** Said anew even where it is the same as before. */
  private void refuse(String why) {
    problem.set("");
    problem.set(why);
  }

  private boolean take(Drill candidate) {
    try {
      use(candidate.playable());
      return true;
    } catch (BadInput e) {
      refuse(e.getMessage());
      return false;
    }
  }

  /** The same drill with other joins, in the order in which they are met. */
  static Drill withJoins(Drill d, List<JoinChoice> up, List<JoinChoice> down) {
    return copy(d, d.tuning(), d.key(), d.shapes(), d.start(), up, down, d.rounds());
  }

  private static Drill copy(
      Drill d,
      Tuning tuning,
      Key key,
      List<Shape> shapes,
      OptionalInt start,
      List<JoinChoice> up,
      List<JoinChoice> down,
      int rounds) {
    boolean same = key.equals(d.key()) && shapes.equals(d.shapes());
    Optional<String> title = same ? d.givenTitle() : Optional.empty();
    return new Drill(title, tuning, d.frets(), key, shapes, start, up, down, rounds, d.pulse());
  }
}
