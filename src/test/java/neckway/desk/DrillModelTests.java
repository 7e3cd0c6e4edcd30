package neckway.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import neckway.drill.PlayableDrill;
import neckway.file.DrillFile;
import neckway.neck.Direction;
import neckway.neck.Join;
import neckway.neck.JoinChoice;
import neckway.neck.Key;
import neckway.neck.Shape;
import neckway.neck.Tuning;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DrillModelTests {
  private final DrillModel model = new DrillModel();
  @TempDir private Path folder;

  private Join joinOn(int pair, int string, int finger) {
    return model.pairs().get(pair).stream()
        .filter(j -> j.string().number() == string && j.finger() == finger)
        .findFirst()
        .orElseThrow();
  }

  /** The route that the contract of the formats gives for this drill, note by note. */
  @Test
  void theRouteIsTheOneOfTheContract() {
    model.key(Key.parse("G major"));
    model.start(3);
    model.join(0, Direction.UP, joinOn(0, 3, 1));
    model.join(0, Direction.DOWN, joinOn(0, 5, 4));
    String route =
        model.route().steps().stream()
            .map(step -> step.place().toString())
            .collect(Collectors.joining(" "));
    assertThat(route)
        .isEqualTo(
            "6:3 6:5 5:2 5:5 4:2 4:5 3:2 3:4 3:7 2:5 2:8 1:5 1:7 1:5 2:8 2:5 3:7 3:4 4:7 4:5 5:7"
                + " 5:5 5:2 6:5 6:3");
  }

  @Test
  void whatIsOutOfBoundsLeavesTheDrillAsItWasAndSaysWhyInOneLine() {
    PlayableDrill before = model.drill();
    List<Runnable> wishes =
        List.of(
            () -> model.tempo(19),
            () -> model.tempo(401),
            () -> model.tempo(Double.NaN),
            () -> model.notesPerBeat(0),
            () -> model.notesPerBeat(9),
            () -> model.swing(0.49),
            () -> model.swing(0.8),
            () -> model.offsetBeats(-1),
            () -> model.offsetBeats(17),
            () -> model.offsetBeats(0.3),
            () -> model.rounds(0),
            () -> model.rounds(100),
            () -> model.start(6),
            () -> model.tuning("A2 E2"),
            () -> model.tuning("six strings please"),
            () -> model.shapes(List.of(Shape.MAJOR, Shape.PHRYGIAN), 3),
            () -> model.open(folder.resolve("nothing.json")),
            () -> model.save(folder.resolve("no-folder").resolve("x.json")));
    for (Runnable wish : wishes) {
      wish.run();
      assertThat(model.drill()).isEqualTo(before);
      assertThat(model.problem().get().lines()).hasSize(1);
      assertThat(model.problem().get()).hasSizeGreaterThan(10);
    }
    assertThat(model.tempo(90.5)).isTrue();
    assertThat(model.problem().get()).isEmpty();
    assertThat(model.drill().pulse().tempo()).isEqualTo(90.5);
  }

  @Test
  void theBoundsThemselvesAreWithin() {
    assertThat(model.tempo(20) && model.tempo(400)).isTrue();
    assertThat(model.notesPerBeat(1) && model.notesPerBeat(8)).isTrue();
    assertThat(model.rounds(1) && model.rounds(99)).isTrue();
  }

  @Test
  void feelIsKeptFromTempoToTempoAndLetGoWhereTheNotesCannotHaveIt() {
    assertThat(model.swing(2.0 / 3) && model.offsetBeats(1.5)).isTrue();
    model.tempo(90);
    assertThat(model.drill().pulse().swing()).isEqualTo(2.0 / 3);
    assertThat(model.drill().pulse().offsetBeats()).isEqualTo(1.5);
    model.notesPerBeat(3);
    assertThat(model.drill().pulse().isPlain()).isTrue();
    assertThat(model.swing(0.6)).isFalse();
    assertThat(model.problem().get()).contains("three a beat cannot be paired");
    assertThat(model.offsetBeats(0.33)).isTrue();
    assertThat(model.drill().pulse().slots().offset()).isEqualTo(1);
  }

  @Test
  void anotherKeyKeepsJoinsAndStaysNear() {
    model.join(0, Direction.UP, joinOn(0, 5, 4));
    model.key(Key.parse("G major"));
    assertThat(model.drill().start()).isEqualTo(3);
    assertThat(model.drill().drill().up()).containsExactly(JoinChoice.on(5, 4));
    model.start(15);
    model.key(Key.parse("A major"));
    assertThat(model.drill().start()).isGreaterThanOrEqualTo(5);
  }

  /** Walked along the neck, no pair of shapes is left with the worst of its joins. */
  @Test
  void otherShapesDoNotKeepAJoinThatIsTheMostAwkwardThere() {
    int kept = 0;
    for (Shape first : Shape.values()) {
      Chains.lowest(model, List.of(first, first.next()));
      for (Join join : model.pairs().get(0)) {
        Chains.lowest(model, List.of(first, first.next()));
        model.join(0, Direction.UP, join);
        model.join(0, Direction.DOWN, join);
        Shape second = first.next();
        int start = model.chain().get(1).start();
        if (!model.shapes(List.of(second, second.next()), start)) {
          continue;
        }
        List<Join> there = model.pairs().get(0);
        for (Direction way : Direction.values()) {
          assertThat(model.join(0, way)).isNotEqualTo(there.get(there.size() - 1));
        }
        kept += model.join(0, Direction.UP).string().equals(join.string()) ? 1 : 0;
      }
    }
    assertThat(kept).as("a good string stays").isGreaterThan(5);
  }

  /** Of a chain each join is kept or taken anew by itself: one that would be the worst, alone. */
  @Test
  void aChainKeepsItsOtherJoinsWhereOneWouldBeTheMostAwkward() {
    int keptBesideOneTakenAnew = 0;
    for (Shape first : Shape.values()) {
      List<Shape> chain = List.of(first, first.next(), first.next().next());
      List<Shape> next = chain.stream().map(Shape::next).toList();
      Chains.lowest(model, chain);
      for (Join lower : model.pairs().get(0)) {
        for (Join upper : model.pairs().get(1)) {
          if (upper.string().number() > lower.string().number()) {
            continue;
          }
          Chains.lowest(model, chain);
          model.join(0, Direction.UP, lower);
          model.join(1, Direction.UP, upper);
          if (!model.shapes(next, model.chain().get(1).start())) {
            continue;
          }
          boolean lowerKept = model.join(0, Direction.UP).string().equals(lower.string());
          boolean upperKept = model.join(1, Direction.UP).string().equals(upper.string());
          keptBesideOneTakenAnew += lowerKept != upperKept ? 1 : 0;
          for (int pair = 0; pair < 2; pair++) {
            List<Join> there = model.pairs().get(pair);
            assertThat(model.join(pair, Direction.UP)).isNotEqualTo(there.get(there.size() - 1));
          }
        }
      }
    }
    assertThat(keptBesideOneTakenAnew).isGreaterThan(10);
  }

  @Test
  void joinsThatWouldBeOutOfOrderFollow() {
    Chains.lowest(model, List.of(Shape.MAJOR, Shape.DORIAN, Shape.PHRYGIAN));
    model.join(
        0,
        Direction.UP,
        model.pairs().get(0).stream()
            .filter(j -> j.string().number() == 2)
            .findFirst()
            .orElseThrow());
    assertThat(model.problem().get()).isEmpty();
    assertThat(model.join(0, Direction.UP).string().number()).isEqualTo(2);
    assertThat(model.join(1, Direction.UP).string().number()).isLessThanOrEqualTo(2);
    model.join(
        1,
        Direction.UP,
        model.pairs().get(1).stream()
            .filter(j -> j.string().number() == 5)
            .findFirst()
            .orElseThrow());
    assertThat(model.join(1, Direction.UP).string().number()).isEqualTo(5);
    assertThat(model.join(0, Direction.UP).string().number()).isGreaterThanOrEqualTo(5);
  }

  @Property(tries = 150)
  void everyListedJoinCanBeTakenBothWaysWhateverTheChain(
      @ForAll @IntRange(max = 4) int first,
      @ForAll @IntRange(min = 2, max = 4) int count,
      @ForAll @Size(6) List<@IntRange(max = 20) Integer> picks) {
    DrillModel any = new DrillModel();
    List<Shape> chain = new ArrayList<>();
    Shape shape = Shape.values()[first];
    for (int i = 0; i < count; i++, shape = shape.next()) {
      chain.add(shape);
    }
    Chains.lowest(any, chain);
    assertThat(any.problem().get()).isEmpty();
    for (int i = 0; i < picks.size(); i++) {
      int pair = i % (count - 1);
      Direction way = i % 2 == 0 ? Direction.UP : Direction.DOWN;
      List<Join> joins = any.pairs().get(pair);
      Join join = joins.get(picks.get(i) % joins.size());
      assertThat(any.join(pair, way, join)).as(any.problem().get()).isTrue();
      assertThat(any.join(pair, way)).isEqualTo(join);
    }
  }

  @Test
  void theListOfJoinsIsWalkedToItsEndsAndNoFurther() {
    for (int i = 0; i < 20; i++) {
      model.joinBy(0, Direction.DOWN, 1);
    }
    List<Join> joins = model.pairs().get(0);
    assertThat(model.join(0, Direction.DOWN)).isEqualTo(joins.get(joins.size() - 1));
    for (int i = 0; i < 20; i++) {
      model.joinBy(0, Direction.DOWN, -1);
    }
    assertThat(model.join(0, Direction.DOWN).rank()).isEqualTo(1);
  }

  @Test
  void aDrillGoesToAFileAndBackAndKeepsItsTitle() throws IOException {
    Path file = folder.resolve("mine.json");
    Files.writeString(
        file,
        "{\"format\":\"neckway-drill/1\",\"title\":\"Evening\",\"key\":\"E minor\","
            + "\"route\":{\"shapes\":[\"minor\",\"major\"]},\"rounds\":2}");
    assertThat(model.open(file)).isTrue();
    model.tempo(66);
    model.rounds(4);
    assertThat(model.save(file)).isTrue();
    assertThat(DrillFile.read(file)).isEqualTo(model.drill());
    assertThat(model.drill().title()).isEqualTo("Evening");
    model.key(Key.parse("A minor"));
    assertThat(model.drill().title()).isEqualTo("A minor: minor to major");
  }

  @Test
  void aTuningOfAnotherNumberOfStringsTakesTheDrillAlong() {
    assertThat(model.tuning("B1 E2 A2 D3 G3 B3 E4")).isTrue();
    assertThat(model.drill().tuning().count()).isEqualTo(7);
    assertThat(model.join(0, Direction.UP).rank()).isEqualTo(1);
    assertThat(model.tuning(Tuning.STANDARD)).isTrue();
  }
}
