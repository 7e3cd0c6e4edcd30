package neckway.neck;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NeckTests {
  private static Neck neck(String key, String tuning) {
    return new Neck(Key.parse(key), Tuning.parse(tuning), 22);
  }

  private static String fingered(PlacedShape shape) {
    return shape.notes().stream()
        .map(note -> note.place() + "(" + note.finger() + ")")
        .collect(Collectors.joining(" "));
  }

  private static PlacedShape standard(String key, Shape shape, int start) {
    return place(new Neck(Key.parse(key), Tuning.STANDARD, 22), shape, start);
  }

  /** Common practice, no published source. */
  @Test
  void theMajorShapeIsHeldWithoutMovingTheHand() {
    PlacedShape shape = standard("A major", Shape.MAJOR, 5);
    assertThat(fingered(shape))
        .isEqualTo(
            "6:5(2) 6:7(4) 5:4(1) 5:7(4) 4:4(1) 4:7(4) 3:4(1) 3:6(3) 2:5(2) 2:7(4) 1:5(2) 1:7(4)");
    assertThat(HandMoves.of(shape)).isZero();
  }

  /** Common practice, no published source. */
  @Test
  void theDorianShapeHasItsInnerShiftBeforeTheSecondString() {
    PlacedShape shape = standard("G major", Shape.DORIAN, 5);
    assertThat(fingered(shape))
        .isEqualTo(
            "6:5(2) 6:7(4) 5:5(2) 5:7(4) 4:5(2) 4:7(4) 3:4(1) 3:7(4) 2:5(1) 2:8(4) 1:5(1) 1:7(3)");
    assertThat(shape.hands()).containsExactly(4, 4, 4, 4, 5, 5);
  }

  /** Frets of the five shapes one after the other up the neck: common practice. */
  @ParameterizedTest
  @CsvSource({
    "PHRYGIAN, 9, 9, '9 12 9 12 9 11 9 11 10 12 9 12'",
    "MIXOLYDIAN, 12, 11, '12 14 12 14 11 14 11 14 12 14 12 14'",
    "MINOR, 14, 14, '14 17 14 16 14 16 14 16 14 17 14 17'"
  })
  void theOtherThreeInAMajor(Shape shape, int start, int hand, String frets) {
    PlacedShape placed = standard("A major", shape, start);
    assertThat(
            placed.notes().stream()
                .map(note -> "" + note.place().fret())
                .collect(Collectors.joining(" ")))
        .isEqualTo(frets);
    assertThat(placed.hands()).containsOnly(hand);
  }

  /** The minor shape of E minor in open position: finger and fret agree; common practice. */
  @Test
  void openStringsTakeNoFingerAndKeepTheFirstPosition() {
    assertThat(fingered(standard("E minor", Shape.MINOR, 0)))
        .isEqualTo(
            "6:0(0) 6:3(3) 5:0(0) 5:2(2) 4:0(0) 4:2(2) 3:0(0) 3:2(2) 2:0(0) 2:3(3) 1:0(0) 1:3(3)");
  }

  @Test
  void droppingTheLowestStringMovesItsNotesTwoFretsUp() {
    PlacedShape dropped = place(neck("A major", "D2 A2 D3 G3 B3 E4"), Shape.MAJOR, 7);
    assertThat(fingered(dropped))
        .isEqualTo(
            "6:7(2) 6:9(4) 5:4(1) 5:7(4) 4:4(1) 4:7(4) 3:4(1) 3:6(3) 2:5(2) 2:7(4) 1:5(2) 1:7(4)");
    assertThat(HandMoves.of(dropped)).isEqualTo(1);
  }

  @Test
  void theLowestPlaceIsTheFirstWhereAllOfItIsOnTheNeck() {
    Neck a = neck("A major", "E2 A2 D3 G3 B3 E4");
    assertThat(a.lowest(Shape.MIXOLYDIAN).orElseThrow().start()).isEqualTo(12);
    assertThat(a.lowest(Shape.MINOR).orElseThrow().start()).isEqualTo(2);
    assertThat(neck("G major", "E2 A2 D3 G3 B3 E4").lowest(Shape.MINOR).orElseThrow().start())
        .isZero();
  }

  @Test
  void aStartThatIsNotItsNoteIsToldWhichFretsAre() {
    assertThatThrownBy(() -> standard("Bb major", Shape.MAJOR, 5))
        .isInstanceOf(BadInput.class)
        .hasMessage(
            "start 5: the major shape of Bb major starts on Bb, which is fret 6 or 18 of string 6");
  }

  @Test
  void belowTheNutItDoesNotFit() {
    assertThatThrownBy(() -> standard("A major", Shape.MIXOLYDIAN, 0))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("does not fit")
        .hasMessageContaining("1 below open string 4")
        .hasMessageContaining("start at 12");
  }

  @Test
  void beyondTheLastFretItDoesNotFit() {
    Neck neck = new Neck(Key.parse("G major"), Tuning.STANDARD, 16);
    assertThatThrownBy(() -> place(neck, Shape.MAJOR, 15))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("fret 17")
        .hasMessageContaining("start at 3");
  }

  @Test
  void whatNoHandCanHoldIsSaid() {
    assertThatThrownBy(() -> place(neck("C major", "C2 C3 C4 C5"), Shape.MAJOR, 12))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("another tuning");
    assertThatThrownBy(() -> place(neck("C major", "C2 G2 G3 C4"), Shape.MAJOR, 12))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("cannot be held");
  }

  @ParameterizedTest
  @CsvSource({"11", "25", "0", "-3"})
  void aNeckHasTwelveToTwentyFourFrets(int frets) {
    assertThatThrownBy(() -> new Neck(Key.parse("A major"), Tuning.STANDARD, frets))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("frets " + frets);
  }

  private static PlacedShape place(Neck neck, Shape shape, int start) {
    return neck.chain(List.of(shape), OptionalInt.of(start)).get(0);
  }
}
