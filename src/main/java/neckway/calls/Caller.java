package neckway.calls;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Function;
import java.util.stream.Collectors;
import neckway.drill.Cue;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.neck.BadInput;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Join;
import neckway.neck.PlacedNote;
import neckway.neck.PlacedShape;
import neckway.neck.Route;
import neckway.neck.Step;
import neckway.practice.Exercise;
import neckway.practice.State;
import neckway.words.Wording;

/**
 * Calls switches in a run without end, and grows its route by them. The run goes through the shape
 * that the hand is in, up and down in turn; each way it may be called to a neighbour on some
 * string. A call sounds on a beat, a bar or more before the landing, and after the landing before
 * it: so the hand is by then where the call finds it. Where the notes of a bar leave no room for
 * that, or no neighbour lies that way, a way passes without a call. The same drill, states and seed
 * give the same calls.
 */
public final class Caller {
  /** Longer than anybody switches shapes without a rest, seconds (common practice, no source). */
  public static final double LONGEST_SECONDS = 300;

  private static final double FADING_WEIGHT = 3;
  private static final double WORKING_WEIGHT = 6;
  private static final double OPEN_WEIGHT = 2;

  /** Of a join that was never played; the cleaner ones come sooner. */
  private static final double NEW_WEIGHT = 1;

  /** Staying is called so often beside all ways out. */
  private static final double STAY_SHARE = 0.25;

  private final PlayableDrill drill;
  private final Function<Exercise, State> states;
  private final Random random;
  private final List<Step> steps = new ArrayList<>();
  private final List<Call> calls = new ArrayList<>();
  private int stand;
  private Direction direction = Direction.UP;
  private int lastLanding = -1;

  /**
   * @param drill its shapes are where the hand may be; two or more
   * @param states how far each join is, by the log
   * @param seed of what is left to chance
   * @throws BadInput for one shape alone
   */
  public Caller(PlayableDrill drill, Function<Exercise, State> states, long seed) {
    if (drill.chain().size() < 2) {
      throw new BadInput(Wording.of("music.calls.oneShape"));
    }
    this.drill = drill.once();
    this.states = states;
    this.random = new Random(seed);
    add(drill.chain().get(0).first(drill.tuning().lowest()), 0);
  }

  /** One way through a shape, or through two. */
  private record Way(Cue.Move move, Optional<Join> join, List<Step> steps, int landing) {
    int turn() {
      return steps.get(steps.size() - 1).index();
    }
  }

  /** Calls what comes on the next way up or down, and adds its steps. */
  public void grow() {
    Way stay = way(Optional.empty());
    List<Way> out = ways().stream().filter(way -> fits(way.landing())).toList();
    double all = out.stream().mapToDouble(this::weight).sum();
    double stayWeight = fits(stay.turn()) ? STAY_SHARE * all : 0;
    double drawn = random.nextDouble() * (all + stayWeight);
    Way taken = stay;
    for (Way way : out) {
      drawn -= weight(way);
      if (drawn < 0) {
        taken = way;
        break;
      }
    }
    if (taken != stay || stayWeight > 0) {
      Cue cue = new Cue(callBeat(taken.landing()), taken.move(), taken.join().map(Join::string));
      calls.add(new Call(cue, stand, taken.join(), taken.landing(), taken.turn()));
      lastLanding = taken.landing();
    }
    steps.addAll(taken.steps());
    stand += taken.join().isEmpty() ? 0 : direction == Direction.UP ? 1 : -1;
    direction = direction == Direction.UP ? Direction.DOWN : Direction.UP;
  }

  /** Grows until the run takes as long as this, or longer. */
  public void growTo(double seconds) {
    while (drill.pulse().dueSeconds(steps.size()) < seconds) {
      grow();
    }
  }

  private List<Way> ways() {
    int pair = direction == Direction.UP ? stand : stand - 1;
    if (pair < 0 || pair >= drill.pairs().size()) {
      return List.of();
    }
    return drill.pairs().get(pair).stream()
        .collect(Collectors.groupingBy(Join::string))
        .values()
        .stream()
        .map(there -> there.stream().max(Comparator.comparingDouble(this::weight)).orElseThrow())
        .sorted(Comparator.comparing(join -> join.string().number()))
        .map(join -> way(Optional.of(join)))
        .toList();
  }

  /** Whether there is time to call a landing. */
  private boolean fits(int landing) {
    Pulse pulse = drill.pulse();
    long beat = callBeat(landing);
    long slot = beat * pulse.notesPerBeat() - pulse.slots().offset();
    return beat >= 0 && slot > lastLanding;
  }

  /** The last beat that is a bar or more before a landing. */
  private long callBeat(int landing) {
    Pulse pulse = drill.pulse();
    return Math.floorDiv(landing + pulse.slots().offset(), pulse.notesPerBeat())
        - pulse.beatsPerBar();
  }

  private double weight(Way way) {
    return weight(way.join().orElseThrow());
  }

  private double weight(Join join) {
    int finger = direction == Direction.UP ? join.finger() : join.downFinger();
    Exercise exercise =
        new Exercise.OfJoin(join.lower(), join.upper(), direction, join.string().number(), finger);
    return switch (states.apply(exercise)) {
      case WORKING -> WORKING_WEIGHT;
      case FADING -> FADING_WEIGHT;
      case OPEN -> OPEN_WEIGHT;
      case NEW -> NEW_WEIGHT / join.rank();
    };
  }

  /** The steps from the turn on, which has sounded, to the next one. */
  private Way way(Optional<Join> join) {
    boolean up = direction == Direction.UP;
    int to = stand + (join.isEmpty() ? 0 : up ? 1 : -1);
    List<GuitarString> strings = new ArrayList<>(drill.tuning().strings());
    if (!up) {
      Collections.reverse(strings);
    }
    List<Step> added = new ArrayList<>();
    int landing = -1;
    int at = stand;
    for (GuitarString string : strings) {
      boolean here = join.isPresent() && join.get().string().equals(string);
      List<PlacedNote> line = here ? line(string, Math.min(stand, to), 1) : line(string, at, 0);
      int lands = here ? landsAt(join.get()) : line.size();
      for (int i = 0; i < line.size(); i++) {
        if (here && i == lands) {
          at = to;
          landing = steps.size() + added.size() - 1;
        }
        added.add(step(line.get(i), at, steps.size() + added.size() - 1));
      }
    }
    List<Step> after = added.subList(1, added.size());
    int turn = after.get(after.size() - 1).index();
    Cue.Move move = join.isEmpty() ? Cue.Move.STAY : up ? Cue.Move.UP : Cue.Move.DOWN;
    return new Way(move, join, List.copyOf(after), join.isEmpty() ? turn : landing);
  }

  /** The notes on a string in the order played, of a stand and of the one above it. */
  private List<PlacedNote> line(GuitarString string, int lower, int joins) {
    List<PlacedNote> line = new ArrayList<>();
    line.add(drill.chain().get(lower).first(string));
    for (int i = lower; i <= lower + joins; i++) {
      line.add(drill.chain().get(i).second(string));
    }
    if (direction == Direction.DOWN) {
      Collections.reverse(line);
    }
    return line;
  }

  /** Which of the three notes on a join's string is the landing, in the order played. */
  private int landsAt(Join join) {
    boolean low = join.lead() == Join.Lead.LOW_TO_MIDDLE;
    return direction == Direction.UP ? (low ? 1 : 2) : low ? 2 : 1;
  }

  private void add(PlacedNote note, int in) {
    steps.add(step(note, in, 0));
  }

  private Step step(PlacedNote note, int in, int index) {
    PlacedShape shape = drill.chain().get(in);
    GuitarString string = note.place().string();
    PlacedNote here = shape.first(string);
    if (!here.place().equals(note.place())) {
      here = shape.second(string);
    }
    return new Step(index, note.place(), note.midi(), here.finger(), in);
  }

  /** The calls so far, in the order in which they sound. */
  public List<Call> calls() {
    return List.copyOf(calls);
  }

  /** What has been called so far, as a drill that can be followed and played. */
  public PlayableDrill drill() {
    Route route = new Route(drill.shapes(), steps, List.of(), 1);
    return drill.called(route, calls.stream().map(Call::cue).toList());
  }
}
