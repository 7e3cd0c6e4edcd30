package neckway.review.words;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import neckway.drill.Drill;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.hand.ShiftVerdict;
import neckway.neck.JoinChoice;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.Shape;
import neckway.neck.Tuning;
import neckway.review.Clock;
import neckway.review.Grid;
import neckway.review.Review;

/**
 * Every sentence that a review can say, each as it is said of a take that is made up for it. They
 * come from the code that speaks of real takes, so that list and code cannot drift apart.
 */
public final class Phrasebook {
  private static final int STEPS_A_ROUND = 24;

  /** Top, and the landings up and down, of the drill of two shapes. */
  private static final int TOP = 12;

  private static final int UP = 7;
  private static final int DOWN = 21;

  private Phrasebook() {}

  /**
   * One sentence.
   *
   * @param when what was played, in a few words
   * @param sentence what is said of it
   */
  public record Example(String when, String sentence) {}

  private record Story(String when, MadeUp take) {}

  /** All sentences, each once, in the order in which a review says them. */
  public static List<Example> examples() {
    List<Example> examples = new ArrayList<>();
    Set<String> said = new HashSet<>();
    for (Story story : stories()) {
      for (String sentence : story.take().review().summary().words()) {
        if (said.add(sentence)) {
          examples.add(new Example(story.when(), sentence));
        }
      }
    }
    MadeUp on = rounds();
    for (String sentence : OtherwisePlayed.moreRounds(1, on.drill(), on.review()).subList(0, 1)) {
      examples.add(new Example("rounds that were not announced", sentence));
    }
    PlayableDrill other = drill("dorian,phrygian", 1, 80);
    for (String sentence : OtherwisePlayed.otherDrill(other, 25, two().wrong(3, 1).review())) {
      examples.add(new Example("another pair of shapes", sentence));
    }
    MadeUp three = two();
    three.drill().route().steps().stream()
        .filter(step -> step.index() % 5 < 2)
        .forEach(step -> three.wrong(step.index(), 2));
    PlayableDrill inC = inKey("C major", three.drill().drill());
    for (String sentence : OtherwisePlayed.otherKey(three.drill(), inC, 25, three.review())) {
      examples.add(new Example("another key", sentence));
    }
    Review played = two().review();
    for (String sentence : OtherwisePlayed.otherOfList(inC, three.drill(), played).subList(0, 2)) {
      examples.add(new Example("another drill of a list", sentence));
    }
    String none = OtherwisePlayed.noneNamed(three.drill(), played).get(0);
    examples.add(new Example("a list that names no drill", none));
    return examples;
  }

  /** The takes of which they are said. */
  static List<MadeUp> takes() {
    return stories().stream().map(Story::take).toList();
  }

  private static List<Story> stories() {
    List<Story> stories = new ArrayList<>();
    clean(stories);
    tries(stories);
    shifts(stories);
    slips(stories);
    time(stories);
    return stories;
  }

  private static void clean(List<Story> to) {
    to.add(new Story("a clean run of one shape", take("major", 1, 80)));
    to.add(new Story("a clean run of two shapes, slow", take("major,dorian", 1, 80)));
    to.add(new Story("a clean run of two shapes, fast", take("major,dorian", 1, 110)));
    to.add(new Story("two clean rounds, fast", take("major,dorian", 2, 110)));
    MadeUp silent = take("major,dorian", 1, 80);
    to.add(new Story("nothing played", silent.stopsAfter(-1)));
    MadeUp other = take("major,dorian", 1, 80);
    for (int s = 0; s < STEPS_A_ROUND; s++) {
      other.wrong(s, 1);
    }
    to.add(new Story("another drill played", other));
  }

  private static void tries(List<Story> to) {
    to.add(new Story("two tries", two().tryBefore(9).wrong(14, 2)));
    to.add(new Story("three tries", two().tryBefore(4).tryBefore(6)));
    MadeUp many = two();
    for (int t = 0; t < 5; t++) {
      many.tryBefore(4);
    }
    to.add(new Story("many tries", many));
    to.add(new Story("stopped on the way", two().stopsAfter(9)));
    to.add(new Story("stopped before the last note", two().stopsAfter(STEPS_A_ROUND - 1)));
  }

  private static void shifts(List<Story> to) {
    to.add(new Story("no shift up", stays(two(), 0)));
    to.add(new Story("no shift up in one round", stays(rounds(), 1)));
    MadeUp thrice = rounds();
    for (int round = 0; round < 3; round++) {
      stays(thrice, round);
    }
    to.add(new Story("no shift up in any round", thrice));
    MadeUp above = rounds().shift(1, ShiftVerdict.MISSED).leftOut(STEPS_A_ROUND);
    to.add(new Story("no shift down in one round", above));
    to.add(new Story("a shift on another string", two().moved(0, 4)));
    to.add(new Story("the same in several rounds", rounds().moved(0, 4).moved(4, 4)));
    MadeUp all = rounds();
    int[] strings = {4, 4, 2, 2, 5, 6};
    for (int s = 0; s < strings.length; s++) {
      all.moved(s, strings[s]);
    }
    to.add(new Story("many shifts on other strings", all));
    to.add(new Story("a shift that the sound does not tell", unheard(two(), 0)));
    to.add(new Story("two of them", unheard(unheard(two(), 0), 1)));
    to.add(
        new Story("a profile of another guitar", unheard(unheard(two(), 0), 1).ofAnotherGuitar()));
    to.add(
        new Story(
            "shifts on a guitar that is not known", unheard(unheard(two(), 0), 1).guitarUnknown()));
  }

  private static void slips(List<Story> to) {
    to.add(new Story("a wrong note", two().wrong(14, 2)));
    to.add(new Story("a fret off at the end of a stretch", two().wrong(5, -1)));
    to.add(new Story("the same on several strings", two().wrong(3, -1).wrong(5, -1)));
    to.add(new Story("a landing a fret short", two().wrong(UP, -1)));
    to.add(new Story("a landing a fret too far", two().wrong(UP, 1)));
    MadeUp inside = take("dorian", 1, 80);
    to.add(new Story("no move inside the shape, going up", inside.wrong(8, -1).wrong(9, -1)));
    MadeUp back = take("dorian", 1, 80);
    to.add(new Story("no move inside the shape, coming down", back.wrong(15, 1)));
    to.add(new Story("the open string in place of a note", two().wrong(16, -7)));
    to.add(new Story("the string beside", two().wrong(4, 5)));
    to.add(new Story("several notes in a row", two().wrong(14, 2).leftOut(15).wrong(16, 1)));
    to.add(new Story("the first note wrong", two().wrong(0, 2)));
    to.add(new Story("a note left out", two().leftOut(5)));
    MadeUp many = two();
    for (int s : new int[] {3, 5, 14, 17}) {
      many.wrong(s, 2);
    }
    to.add(new Story("several wrong notes", many));
    to.add(new Story("the same note wrong again", rounds().wrong(14, 2).wrong(62, 2)));
    to.add(new Story("the same note left out again", rounds().leftOut(14, 38)));
    to.add(new Story("the same note wrong and left out", rounds().wrong(14, 2).leftOut(38)));
    to.add(new Story("a note struck twice", two().twice(5)));
    to.add(new Story("the same struck twice again", rounds().twice(5).twice(29)));
    to.add(new Story("several struck twice", two().twice(5).twice(16)));
    to.add(new Story("an open string besides", two().besides(5, 55)));
    to.add(new Story("open strings besides", two().besides(5, 55).besides(6, 55).besides(9, 50)));
    to.add(new Story("an open string as the hand shifts", two().besides(UP - 1, 55)));
    to.add(new Story("an open string as its finger lifts", two().besides(16, 55)));
    to.add(new Story("another note besides", two().besides(5, 58)));
    to.add(new Story("a note that cannot be told", two().unclear(5)));
  }

  private static void time(List<Story> to) {
    to.add(new Story("a late start", two().waits(0, 750)));
    to.add(new Story("a hesitation", two().waits(5, 1500)));
    to.add(new Story("the same hesitation again", rounds().waits(5, 400).waits(29, 420)));
    to.add(new Story("hesitations all over", two().waits(3, 400).waits(5, 400).waits(16, 400)));
    to.add(new Story("a late landing", two().waits(UP, 120)));
    to.add(new Story("both landings late", two().waits(UP, 120).waits(DOWN, 90)));
    MadeUp again = rounds();
    MadeUp often = take("major,dorian", 4, 80);
    for (int round = 0; round < 4; round++) {
      often.off(round * STEPS_A_ROUND + UP, 90 + 10 * round);
    }
    again.off(UP, 120).off(2 * STEPS_A_ROUND + UP, 100);
    to.add(new Story("the same landing late again", again));
    to.add(new Story("a landing late in every round", often));
    to.add(new Story("the note before a landing early", two().off(UP - 1, -85).off(UP, 37)));
    to.add(new Story("rushing after the shift", after(-60)));
    to.add(new Story("dragging after the shift", after(60)));
    to.add(new Story("rushing after the shifts up alone", afterUp(-60)));
    to.add(new Story("dragging after the shifts up alone", afterUp(60)));
    to.add(new Story("time that is fairly even", two().uneven(s -> 30 * Math.sin(2.4 * s * s))));
    to.add(new Story("uneven time", two().uneven(s -> 70 * Math.sin(2.4 * s * s))));
    to.add(new Story("behind the beat", two().leans(30)));
    to.add(new Story("ahead of the beat", two().leans(-30)));
    to.add(new Story("a little ahead of the beat", two().leans(-12)));
    to.add(new Story("a click whose delay is not known", two().clock(Clock.UNMEASURED)));
    to.add(new Story("a guitar that is flat", two().tuned(-30)));
    to.add(new Story("a guitar that is sharp", two().tuned(14)));
    to.add(new Story("another tempo, no click", two().paced(1.2)));
    to.add(new Story("twice as fast, no click", two().paced(2)));
    to.add(new Story("more notes a beat than asked", two().pacedBesideTheBeat(1.5, true)));
    to.add(new Story("half as fast as the click", two().pacedBesideTheBeat(0.5, true)));
    to.add(new Story("two notes for three of the click", two().pacedBesideTheBeat(0.75, true)));
    to.add(new Story("faster than the click", two().pacedBesideTheBeat(1.2, false)));
    to.add(new Story("slower than the click", two().pacedBesideTheBeat(0.9, false)));
    to.add(new Story("no click", two().leans(30).beatFrom(Grid.Source.NOTES)));
  }

  private static MadeUp after(double ms) {
    MadeUp take = rounds();
    for (int round = 0; round < 3; round++) {
      for (int landing : new int[] {UP, DOWN}) {
        for (int s = landing + 1; s <= landing + 4; s++) {
          take.off(round * STEPS_A_ROUND + s, ms);
        }
      }
    }
    return take;
  }

  private static MadeUp afterUp(double ms) {
    MadeUp take = rounds();
    for (int round = 0; round < 3; round++) {
      for (int s = UP + 1; s <= UP + 4; s++) {
        take.off(round * STEPS_A_ROUND + s, ms);
      }
    }
    return take;
  }

  private static MadeUp stays(MadeUp take, int round) {
    return take.shift(2 * round, ShiftVerdict.MISSED)
        .shift(2 * round + 1, ShiftVerdict.MISSED)
        .leftOut(round * STEPS_A_ROUND + TOP);
  }

  private static MadeUp unheard(MadeUp take, int shift) {
    return take.shift(shift, ShiftVerdict.UNHEARD);
  }

  private static MadeUp two() {
    return take("major,dorian", 1, 80);
  }

  private static MadeUp rounds() {
    return take("major,dorian", 3, 80);
  }

  private static MadeUp take(String shapes, int rounds, double tempo) {
    return new MadeUp(drill(shapes, rounds, tempo));
  }

  /** G major from fret 3; two shapes are joined up on string 3 and down on string 5. */
  static PlayableDrill drill(String shapes, int rounds, double tempo) {
    List<Shape> chain = List.of(shapes.split(",")).stream().map(Shape::parse).toList();
    boolean two = chain.size() == 2;
    return new Drill(
            Optional.empty(),
            Tuning.STANDARD,
            Neck.USUAL_FRETS,
            Key.parse("G major"),
            chain,
            chain.get(0) == Shape.MAJOR ? OptionalInt.of(3) : OptionalInt.empty(),
            two && chain.get(0) == Shape.MAJOR ? List.of(JoinChoice.on(3)) : List.of(),
            two && chain.get(0) == Shape.MAJOR ? List.of(JoinChoice.on(5)) : List.of(),
            rounds,
            new Pulse(tempo, 2, 4, 4))
        .playable();
  }

  private static PlayableDrill inKey(String key, Drill drill) {
    return new Drill(
            Optional.empty(),
            drill.tuning(),
            drill.frets(),
            Key.parse(key),
            drill.shapes(),
            OptionalInt.empty(),
            drill.up(),
            drill.down(),
            drill.rounds(),
            drill.pulse())
        .playable();
  }
}
