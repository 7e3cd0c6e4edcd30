package neckway.neck;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import neckway.words.EnglishWords;
import neckway.words.Tongue;
import neckway.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is said of neck, shapes and joins where German is spoken. */
class GermanNeckTests {
  private static final Neck NECK = new Neck(Key.parse("A major"), Tuning.STANDARD, 22);

  /** Words of which an English sentence has one or more, and a German one none. */
  private static final List<String> FUNCTION_WORDS =
      List.of(" the ", " is ", " and ", " not ", " of ", " with ", " has ", " have ");

  private static List<PlacedShape> chain(Shape... shapes) {
    return NECK.chain(List.of(shapes), OptionalInt.empty());
  }

  private static void build(List<JoinChoice> up, List<JoinChoice> down, Shape... shapes) {
    RouteBuilder.build(NECK, chain(shapes), up, down, 1);
  }

  private static List<JoinChoice> on(int... strings) {
    return IntStream.of(strings).mapToObj(JoinChoice::on).toList();
  }

  /** Everything that can be given wrongly. */
  static List<Runnable> wronglyGiven() {
    Shape major = Shape.MAJOR;
    Shape dorian = Shape.DORIAN;
    Shape phrygian = Shape.PHRYGIAN;
    return List.of(
        () -> Pitch.parse("H2"),
        () -> Key.parse("H"),
        () -> Tuning.parse("foo"),
        () -> Tuning.parse("E2"),
        () -> Tuning.parse("E2 A2 D3 F3 A3 C4 E4 G4 B4"),
        () -> Tuning.parse("E0 A2 D3 G3"),
        () -> Tuning.parse("A2 E2 D3 G3"),
        () -> Shape.parse("foo"),
        () -> new Neck(NECK.key(), NECK.tuning(), 11),
        () -> NECK.chain(List.of(), OptionalInt.empty()),
        () -> chain(major, phrygian),
        () -> NECK.chain(List.of(major), OptionalInt.of(4)),
        () -> NECK.chain(List.of(major, dorian, phrygian), OptionalInt.of(17)),
        () ->
            new Neck(NECK.key(), NECK.tuning(), 12)
                .chain(List.of(Shape.values()), OptionalInt.empty()),
        () ->
            new Neck(NECK.key(), Tuning.parse("C2 C3 C4 C5"), 22)
                .chain(List.of(major), OptionalInt.empty()),
        () -> NeckMap.ofAll(new Neck(NECK.key(), Tuning.parse("C2 C3 C4 C5"), 22)),
        () -> RouteBuilder.build(NECK, chain(major), List.of(), List.of(), 100),
        () -> build(on(3), on(), major),
        () -> build(on(3, 2), on(), major),
        () -> build(on(3, 2), on(), major, dorian),
        () -> build(on(3), on(), major, dorian, phrygian),
        () -> build(on(3, 2, 1), on(), major, dorian, phrygian),
        () -> build(on(9), on(), major, dorian),
        () -> build(List.of(JoinChoice.on(3, 2)), on(), major, dorian),
        () -> build(on(2, 4), on(), major, dorian, phrygian),
        () -> build(on(), on(4, 2), major, dorian, phrygian));
  }

  private static String complaint(Tongue tongue, Runnable wrong) {
    return Wording.in(tongue, () -> catchThrowableOfType(BadInput.class, wrong::run).getMessage());
  }

  @ParameterizedTest
  @MethodSource("wronglyGiven")
  void aComplaintIsGerman(Runnable wrong) {
    String german = complaint(Tongue.GERMAN, wrong);
    assertThat(german)
        .isNotEqualTo(complaint(Tongue.ENGLISH, wrong))
        .doesNotContain("{", "  ")
        .doesNotContain(FUNCTION_WORDS);
  }

  @Test
  void aComplaintSaysHowToMendIt() {
    assertThat(wronglyGiven().stream().map(wrong -> complaint(Tongue.GERMAN, wrong)))
        .contains(
            "Das Griffbild \"foo\" gibt es nicht; schreib eines von diesen: major, Dorian,"
                + " Phrygian, Mixolydian, minor",
            "Bund 4 als Anfang: Das Griffbild Dur von A major beginnt auf A, und das ist Bund 5"
                + " oder 17 auf Saite 6",
            "Dur bis dorisch bis phrygisch in A major passt ab Bund 17 nicht auf diesen Hals: Das"
                + " Griffbild phrygisch braucht Bund 24 auf Saite 6, und es gibt nur 22 Bünde; fang"
                + " in Bund 5 an",
            "up: Von Dur zu dorisch gibt es auf Saite 3 keinen Übergang mit Finger 2; nimm auf"
                + " dieser Saite Finger 1");
  }

  @Test
  void everyReasonOfAJoinIsGerman() {
    Set<String> kinds = new TreeSet<>();
    for (String tuning : List.of("standard", "drop D", "open G", "seven-string standard")) {
      Neck neck = new Neck(Key.parse("A minor"), Tuning.parse(tuning), Neck.MOST_FRETS);
      for (Join join : NeckMap.ofAll(neck).joins()) {
        String why = Wording.in(Tongue.GERMAN, join::why);
        assertThat(EnglishWords.in(why)).as(why).isEmpty();
        assertThat(why).endsWith(".").doesNotContain("{", "  ", "..");
        Arrays.stream(why.split("(?<=\\.) "))
            .map(
                sentence ->
                    sentence.replaceAll("\\d|Dur|Moll|\\p{L}+isch|(erst|zweit|dritt|viert)e", "#"))
            .forEach(kinds::add);
      }
    }
    // Each way of the hand, near and far; a change; what comes on top of it.
    assertThat(kinds).hasSizeGreaterThanOrEqualTo(8);
    assertThat(
            Wording.in(
                Tongue.GERMAN,
                NeckMap.ofChain(NECK, List.of(Shape.MAJOR, Shape.DORIAN), OptionalInt.empty())
                        .joins()
                        .get(0)
                    ::why))
        .isEqualTo(
            "Der erste Finger bleibt liegen und rutscht um 2 Bünde; die ganze Hand geht mit. Auf"
                + " einer Saite daneben wechselt die Hand noch einmal die Lage, innerhalb des"
                + " Griffbilds dorisch.");
  }

  /** A name that stands in a file is the same in every language. */
  @Test
  void whatIsWrittenAndReadStaysAsItIs() {
    List<String> words = Arrays.stream(Shape.values()).map(Shape::word).toList();
    assertThat(Wording.in(Tongue.GERMAN, () -> words.stream().map(Shape::parse).toList()))
        .containsExactly(Shape.values());
    assertThat(Wording.in(Tongue.GERMAN, Shape.DORIAN::word)).isEqualTo("dorian");
    assertThat(Wording.in(Tongue.GERMAN, Shape.DORIAN::spoken)).isEqualTo("dorisch");
    assertThat(Shape.DORIAN.spoken()).isEqualTo("Dorian");
  }
}
