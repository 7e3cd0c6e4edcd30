package neckway.calls;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.function.Function;
import java.util.stream.Collectors;
import neckway.drill.Cue;
import neckway.drill.Drill;
import neckway.drill.Drills;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.neck.BadInput;
import neckway.neck.Direction;
import neckway.neck.Key;
import neckway.neck.PlacedShape;
import neckway.neck.Shape;
import neckway.neck.Step;
import neckway.neck.Tuning;
import neckway.practice.Exercise;
import neckway.practice.State;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class CallerTests {
  private static final Function<Exercise, State> NOTHING_PLAYED = exercise -> State.NEW;
  private static final int WAYS = 12;

  /** Ten thousand runs, each in a key, a chain, a tuning and a pulse of its own. */
  @Tag("slow")
  @Test
  void tenThousandRunsFit() {
    for (long seed = 0; seed < 10_000; seed++) {
      fits(seed);
    }
  }

  @Test
  void aFewHundredRunsFit() {
    for (long seed = 10_000; seed < 10_300; seed++) {
      fits(seed);
    }
  }

  private static void fits(long seed) {
    PlayableDrill drill = drawn(new Random(seed));
    Caller caller = new Caller(drill, NOTHING_PLAYED, seed);
    for (int way = 0; way < WAYS; way++) {
      caller.grow();
    }
    PlayableDrill called = caller.drill();
    List<Step> steps = called.route().steps();
    for (Step step : steps) {
      String where = "seed " + seed + ", step " + step;
      assertThat(step.place().fret()).as(where).isBetween(0, drill.frets());
      int open = drill.tuning().openMidi(step.place().string());
      assertThat(open + step.place().fret()).as(where).isEqualTo(step.midi());
      PlacedShape shape = drill.chain().get(step.stand());
      assertThat(shape.notes())
          .as(where)
          .anyMatch(n -> n.place().equals(step.place()) && n.finger() == step.finger());
    }
    neighbours(seed, drill, steps);
    for (Call call : caller.calls()) {
      hasTimeAndReach(seed, called, call);
    }
  }

  /** A step up or down is the scale's next note, and the hand changes shape only as called. */
  private static void neighbours(long seed, PlayableDrill drill, List<Step> steps) {
    List<Integer> scale =
        drill.chain().stream()
            .flatMap(shape -> shape.notes().stream())
            .map(note -> note.midi())
            .distinct()
            .sorted()
            .toList();
    for (int i = 1; i < steps.size(); i++) {
      int way = scale.indexOf(steps.get(i).midi()) - scale.indexOf(steps.get(i - 1).midi());
      assertThat(Math.abs(way)).as("seed " + seed + ", step " + i).isEqualTo(1);
    }
  }

  private static void hasTimeAndReach(long seed, PlayableDrill called, Call call) {
    String which = "seed " + seed + ", " + call;
    Pulse pulse = called.pulse();
    double beatSeconds = call.cue().beat() * pulse.beatSeconds();
    double bar = pulse.beatsPerBar() * pulse.beatSeconds();
    assertThat(call.cue().beat()).as(which).isNotNegative();
    assertThat(pulse.dueSeconds(call.landingStep()) - beatSeconds)
        .as(which)
        .isGreaterThan(bar - 1e-9);
    List<Step> steps = called.route().steps();
    int sounding = 0;
    while (pulse.dueSeconds(sounding + 1) <= beatSeconds + 1e-9) {
      sounding++;
    }
    assertThat(steps.get(sounding).stand()).as(which).isEqualTo(call.stand());
    for (int step = sounding; step < call.landingStep(); step++) {
      assertThat(steps.get(step).stand()).as(which).isEqualTo(call.stand());
    }
    int to =
        call.stand()
            + (call.cue().move() == Cue.Move.UP ? 1 : call.cue().move() == Cue.Move.DOWN ? -1 : 0);
    assertThat(steps.get(call.landingStep()).stand()).as(which).isEqualTo(to);
    call.join()
        .ifPresent(
            join ->
                assertThat(steps.get(call.landingStep()).place().string())
                    .as(which)
                    .isEqualTo(join.string()));
  }

  private static PlayableDrill drawn(Random random) {
    List<Tuning> tunings =
        List.of(Tuning.STANDARD, Tuning.parse("drop D"), Tuning.parse("E1 A1 D2 G2"));
    List<String> keys = List.of("G major", "A minor", "Bb major", "F# minor", "D major");
    while (true) {
      List<Shape> shapes = new ArrayList<>(List.of(Shape.values()[random.nextInt(5)]));
      int count = 2 + random.nextInt(3);
      while (shapes.size() < count) {
        shapes.add(shapes.get(shapes.size() - 1).next());
      }
      int notes = 1 + random.nextInt(4);
      Pulse pulse =
          new Pulse(
              50 + random.nextInt(100),
              notes,
              2 + random.nextInt(3),
              4,
              notes % 2 == 0 && random.nextBoolean() ? 0.62 : 0.5,
              random.nextInt(2 * notes) / (double) notes);
      try {
        return new Drill(
                Optional.empty(),
                tunings.get(random.nextInt(tunings.size())),
                22,
                Key.parse(keys.get(random.nextInt(keys.size()))),
                shapes,
                OptionalInt.empty(),
                List.of(),
                List.of(),
                1,
                pulse)
            .playable();
      } catch (BadInput e) {
        assertThat(e).hasMessageNotContaining("null"); // a chain that this neck has no room for
      }
    }
  }

  @Test
  void theSameSeedGivesTheSameCalls() {
    assertThat(calls(7, NOTHING_PLAYED)).isEqualTo(calls(7, NOTHING_PLAYED));
    assertThat(calls(7, NOTHING_PLAYED)).isNotEqualTo(calls(8, NOTHING_PLAYED));
  }

  private static List<String> calls(long seed, Function<Exercise, State> states) {
    Caller caller = new Caller(Drills.example(), states, seed);
    caller.growTo(600);
    return caller.calls().stream().map(call -> call.words(Tuning.STANDARD)).toList();
  }

  /** One join of six that is worked on, beside five that are new: it comes more often than not. */
  @Test
  void whatIsWorkedOnIsCalledMost() {
    List<String> calls =
        calls(
            3,
            exercise ->
                exercise instanceof Exercise.OfJoin join
                        && join.direction() == Direction.UP
                        && join.string() == 4
                    ? State.WORKING
                    : State.NEW);
    long up = calls.stream().filter(call -> call.startsWith("up")).count();
    long worked = calls.stream().filter("up on D"::equals).count();
    assertThat(up).isGreaterThan(20);
    // by the weights 6 of at most 6 + 6 x 1
    assertThat((double) worked / up).isGreaterThan(0.5);
    assertThat(calls.stream().filter("stay"::equals).count() / (double) calls.size())
        .isCloseTo(0.2, within(0.12));
  }

  @Test
  void stringsOfOneNameAreToldApart() {
    String said = calls(5, NOTHING_PLAYED).stream().distinct().collect(Collectors.joining("; "));
    assertThat(said).contains("up on E, string ").contains("down on A").contains("stay");
  }

  @Test
  void oneShapeAloneHasNothingToCall() {
    PlayableDrill alone =
        new Drill(
                Optional.empty(),
                Tuning.STANDARD,
                22,
                Key.parse("G major"),
                List.of(Shape.MAJOR),
                OptionalInt.empty(),
                List.of(),
                List.of(),
                1,
                Drill.USUAL_PULSE)
            .playable();
    assertThatThrownBy(() -> new Caller(alone, NOTHING_PLAYED, 1))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("two shapes or more");
  }

  /** By hand: G major from the sixth's third fret; Dorian's highest note is the first's seventh. */
  @Test
  void aWayUpWithASwitchHasOneNoteMore() {
    Caller caller = new Caller(Drills.example(), NOTHING_PLAYED, 1);
    while (caller.calls().stream().allMatch(call -> call.join().isEmpty())) {
      caller.grow();
    }
    Call up = caller.calls().stream().filter(c -> c.join().isPresent()).findFirst().orElseThrow();
    List<Step> steps = caller.drill().route().steps();
    int bottom = up.turnStep() - 12;
    assertThat(steps.get(bottom).place()).hasToString("6:3");
    assertThat(steps.get(up.turnStep()).place()).hasToString("1:7");
    assertThat(up.join().orElseThrow().lower()).isEqualTo(Shape.MAJOR);
  }
}
