package neckway.desk.choose;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import neckway.desk.Chains;
import neckway.desk.DrillModel;
import neckway.desk.LookModel.Label;
import neckway.desk.choose.NeckPicture.Dot;
import neckway.desk.choose.NeckPicture.Side;
import neckway.desk.choose.NeckPicture.Window;
import neckway.neck.Direction;
import neckway.neck.Key;
import neckway.neck.Shape;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class NeckPainterTests {
  private final DrillModel model = new DrillModel();

  private NeckPicture picture(Label label) {
    return new NeckPainter(model, label).picture(false, 0);
  }

  /** The fingers of both shapes: common practice, no published source. */
  @Test
  void theMajorShapeOfAAtTheFifthFretHasItsFingers() {
    String lower =
        picture(Label.FINGER).dots().stream()
            .filter(dot -> !dot.side().equals(Optional.of(Side.UPPER)))
            .sorted(
                Comparator.comparing((Dot d) -> -d.place().string().number())
                    .thenComparing(d -> d.place().fret()))
            .map(dot -> dot.place() + "(" + dot.label().charAt(0) + ")")
            .collect(Collectors.joining(" "));
    assertThat(lower)
        .isEqualTo(
            "6:5(2) 6:7(4) 5:4(1) 5:7(4) 4:4(1) 4:7(4) 3:4(1) 3:6(3) 2:5(2) 2:7(4) 1:5(2) 1:7(4)");
  }

  @Test
  void aNoteOfBothShapesShowsBothFingersAndIsThereOnce() {
    List<Dot> dots = picture(Label.FINGER).dots();
    assertThat(dots).extracting(Dot::place).doesNotHaveDuplicates();
    assertThat(dots).hasSize(18);
    List<String> shared =
        dots.stream()
            .filter(dot -> dot.side().isEmpty())
            .map(dot -> dot.place() + " " + dot.label())
            .sorted()
            .toList();
    assertThat(shared)
        .containsExactly("1:7 4·1", "2:7 4·1", "3:6 3·1", "4:7 4·2", "5:7 4·2", "6:7 4·2");
  }

  @Test
  void dotsSayDegreesOrNotes() {
    assertThat(label(Label.DEGREE, "6:5")).isEqualTo("1");
    assertThat(label(Label.DEGREE, "5:4")).isEqualTo("3");
    assertThat(label(Label.NOTE, "5:4")).isEqualTo("C#");
    model.key(Key.parse("F minor"));
    assertThat(picture(Label.NOTE).dots()).extracting(Dot::label).contains("Ab", "Eb");
  }

  private String label(Label label, String place) {
    return picture(label).dots().stream()
        .filter(dot -> dot.place().toString().equals(place))
        .findFirst()
        .orElseThrow()
        .label();
  }

  /** Where the hand stands in both shapes: common practice, no published source. */
  @Test
  void theHandMovesUpOneFretInsideTheDorianShapeAndNotInTheMajorOne() {
    List<String> windows =
        picture(Label.FINGER).windows().stream()
            .map(w -> w.side() + " " + w.hand() + ": " + w.lowest() + "-" + w.highest())
            .toList();
    assertThat(windows).containsExactly("LOWER 4: 6-1", "UPPER 6: 6-3", "UPPER 7: 2-1");
  }

  @Test
  void everyJoinIsABridgeAndTheTakenOnesSayWhichWay() {
    NeckPicture p = picture(Label.FINGER);
    assertThat(p.bridges()).hasSameSizeAs(model.pairs().get(0));
    assertThat(p.bridges().get(0).join().rank()).isEqualTo(1);
    assertThat(p.bridges().get(0).taken()).containsExactly(Direction.UP, Direction.DOWN);
    model.joinBy(0, Direction.UP, 1);
    assertThat(picture(Label.FINGER).bridges().get(1).taken()).containsExactly(Direction.UP);
  }

  @Test
  void theStandsOfTheWholeNeckAreThereAndThoseOfTheChainAreMarked() {
    List<NeckPicture.Mark> marks = picture(Label.FINGER).marks();
    assertThat(marks).extracting(NeckPicture.Mark::shape).contains(Shape.values());
    assertThat(marks.stream().filter(m -> m.chosen().isPresent()).map(NeckPicture.Mark::shape))
        .containsExactly(Shape.MAJOR, Shape.DORIAN);
    assertThat(marks)
        .filteredOn(m -> m.shape() == Shape.DORIAN && m.chosen().isPresent())
        .singleElement()
        .satisfies(m -> assertThat(m.hands()).containsExactly(6, 7));
  }

  /** The roots of A major in its first two shapes: strings 6, 4, 1 and 2, common practice. */
  @Test
  void theRootsAreKnownWhateverStandsOnTheDots() {
    for (Label label : Label.values()) {
      assertThat(picture(label).dots().stream().filter(Dot::tonic).map(d -> d.place().toString()))
          .containsExactlyInAnyOrder("6:5", "4:7", "1:5", "2:10");
    }
  }

  @Test
  void ofALongChainTheChosenPairAloneIsAtFullStrength() {
    Chains.lowest(model, List.of(Shape.values()));
    for (int pair = 0; pair < 4; pair++) {
      NeckPicture p = new NeckPainter(model, Label.FINGER).picture(false, pair);
      int shown = pair;
      List<neckway.neck.Place> places =
          model.chain().subList(pair, pair + 2).stream()
              .flatMap(shape -> shape.notes().stream())
              .map(neckway.neck.PlacedNote::place)
              .toList();
      assertThat(p.dots())
          .allSatisfy(d -> assertThat(d.inPair()).isEqualTo(places.contains(d.place())));
      assertThat(p.bridges()).allSatisfy(b -> assertThat(b.inPair()).isEqualTo(b.pair() == shown));
      assertThat(p.windows().get(p.windows().size() - 1).inPair()).as("above the others").isTrue();
      assertThat(p.windows()).extracting(Window::inPair).contains(false);
      // a note that only one stand of the pair has is that stand's alone
      assertThat(p.dots().stream().filter(Dot::inPair).filter(d -> d.side().isPresent()))
          .isNotEmpty()
          .allSatisfy(d -> assertThat(d.label()).doesNotContain(NeckPainter.BOTH));
    }
  }

  @Property(tries = 120)
  void everyNoteLiesUnderAHandFourFretsWide(
      @ForAll @IntRange(max = 11) int tonic,
      @ForAll @IntRange(max = 4) int shape,
      @ForAll @IntRange(min = 1, max = 3) int count) {
    DrillModel any = new DrillModel();
    any.key(ChoosingModel.KEYS.get(2 * tonic));
    List<Shape> chain = new ArrayList<>();
    Shape next = Shape.values()[shape];
    for (int i = 0; i < count; i++, next = next.next()) {
      chain.add(next);
    }
    Chains.lowest(any, chain);
    NeckPicture p = new NeckPainter(any, Label.FINGER).picture(true, 0);
    for (Dot dot : p.dots()) {
      if (dot.place().fret() > 0) {
        assertThat(p.windows())
            .as(dot.toString())
            .anyMatch(w -> covers(w, dot) && dot.side().map(s -> s == w.side()).orElse(true));
        assertThat(dot.place().fret())
            .isGreaterThan(p.firstLine())
            .isLessThanOrEqualTo(p.lastLine());
      }
    }
  }

  private static boolean covers(Window window, Dot dot) {
    int string = dot.place().string().number();
    return window.hand() <= dot.place().fret()
        && dot.place().fret() < window.hand() + 4
        && string <= window.lowest().number()
        && string >= window.highest().number();
  }
}
