package neckway.neck;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Supplier;
import neckway.words.Wording;

/**
 * A neck with a key on it: where the shapes lie.
 *
 * <p>A shape is consecutive notes of the scale, two a string, from its first note on the lowest
 * string. In a chain the next shape starts on the second note of the one before.
 *
 * @param key whose pentatonic scale is meant
 * @param tuning the open strings
 * @param frets how many there are, 12 to 24
 */
public record Neck(Key key, Tuning tuning, int frets) {
  /** The fewest frets of a neck. */
  public static final int FEWEST_FRETS = 12;

  /** The most frets of a neck. */
  public static final int MOST_FRETS = 24;

  /** Frets of a neck of which nothing else is said. */
  public static final int USUAL_FRETS = 22;

  /** The longest chain of shapes. */
  public static final int LONGEST_CHAIN = 5;

  /** What is the matter where nothing is. */
  private static final Supplier<String> NONE = () -> "";

  /**
   * @throws BadInput if the number of frets is out of range
   */
  public Neck {
    if (frets < FEWEST_FRETS || frets > MOST_FRETS) {
      throw new BadInput(Wording.of("music.neck.frets", frets, FEWEST_FRETS, MOST_FRETS));
    }
  }

  /** One shape in the lowest place where all of it is on the neck, if there is one. */
  public Optional<PlacedShape> lowest(Shape shape) {
    return starts(shape).stream()
        .map(start -> attempt(shape, start).placed())
        .flatMap(Optional::stream)
        .findFirst();
  }

  /** The next shape up from a placed one, starting on its second note, if it fits. */
  public Optional<PlacedShape> neighbourAbove(PlacedShape lower) {
    int start = lower.second(tuning.lowest()).place().fret();
    return attempt(lower.shape().next(), start).placed();
  }

  /**
   * Neighbouring shapes, low to high.
   *
   * @param shapes one to five
   * @param start fret of the first one's first note; left out, the lowest place where all of them
   *     fit
   * @throws BadInput if they are not neighbours, the start is not the note, or they do not fit
   */
  public List<PlacedShape> chain(List<Shape> shapes, OptionalInt start) {
    checkNeighbours(shapes);
    List<Integer> starts = starts(shapes.get(0));
    if (start.isPresent()) {
      if (!starts.contains(start.getAsInt())) {
        throw new BadInput(notItsNote(shapes.get(0), start.getAsInt(), starts));
      }
      ChainAttempt attempt = attempt(shapes, start.getAsInt());
      return attempt.placed().orElseThrow(() -> misfit(shapes, start, starts, attempt.problem()));
    }
    Supplier<String> firstProblem = () -> Wording.of("music.neck.noFirst", tuning.lowest());
    for (int i = 0; i < starts.size(); i++) {
      ChainAttempt attempt = attempt(shapes, starts.get(i));
      if (attempt.placed().isPresent()) {
        return attempt.placed().get();
      }
      firstProblem = i == 0 ? attempt.problem() : firstProblem;
    }
    throw misfit(shapes, start, List.of(), firstProblem);
  }

  /** The frets of the lowest string where a shape's first note is, low to high. */
  public List<Integer> starts(Shape shape) {
    List<Integer> starts = new ArrayList<>();
    for (int fret = 0; fret <= frets; fret++) {
      int above = tuning.openMidi(tuning.lowest()) + fret - key.majorTonic();
      if (Math.floorMod(above - shape.semitonesAboveTonic(), 12) == 0) {
        starts.add(fret);
      }
    }
    return starts;
  }

  private static void checkNeighbours(List<Shape> shapes) {
    if (shapes.isEmpty() || shapes.size() > LONGEST_CHAIN) {
      throw new BadInput(Wording.of("music.neck.chain", shapes.size()));
    }
    for (int i = 1; i < shapes.size(); i++) {
      Shape before = shapes.get(i - 1);
      if (before.next() != shapes.get(i)) {
        throw new BadInput(
            Wording.of(
                "music.neck.noNeighbours",
                before.spoken(),
                shapes.get(i).spoken(),
                before.next().spoken()));
      }
    }
  }

  private String notItsNote(Shape shape, int start, List<Integer> starts) {
    String note = key.spell(key.majorTonic() + shape.semitonesAboveTonic()).note();
    return Wording.of(
        "music.neck.start",
        start,
        shape.spoken(),
        key,
        note,
        Either.of(starts, String::valueOf),
        tuning.lowest());
  }

  private BadInput misfit(
      List<Shape> shapes, OptionalInt start, List<Integer> others, Supplier<String> problem) {
    List<Integer> good =
        others.stream().filter(s -> attempt(shapes, s).placed().isPresent()).toList();
    String chain = Shape.spokenChain(shapes);
    String mend = mend(shapes, good);
    return new BadInput(
        start.isPresent()
            ? Wording.of(
                "music.neck.misfit.from", chain, key, start.getAsInt(), problem.get(), mend)
            : Wording.of("music.neck.misfit.anywhere", chain, key, problem.get(), mend));
  }

  private static String mend(List<Shape> shapes, List<Integer> goodStarts) {
    if (!goodStarts.isEmpty()) {
      return Wording.of("music.neck.startAt", Either.of(goodStarts, String::valueOf));
    }
    return Wording.of(shapes.size() > 1 ? "music.neck.fewerShapes" : "music.neck.anotherShape");
  }

  private ChainAttempt attempt(List<Shape> shapes, int start) {
    List<PlacedShape> placed = new ArrayList<>();
    int at = start;
    for (Shape shape : shapes) {
      Attempt attempt = attempt(shape, at);
      if (attempt.placed().isEmpty()) {
        return new ChainAttempt(Optional.empty(), attempt.problem());
      }
      placed.add(attempt.placed().get());
      at = attempt.placed().get().second(tuning.lowest()).place().fret();
    }
    return new ChainAttempt(Optional.of(placed), NONE);
  }

  private Attempt attempt(Shape shape, int start) {
    List<GuitarString> strings = tuning.strings();
    int[] first = new int[strings.size()];
    int[] second = new int[strings.size()];
    int midi = tuning.openMidi(tuning.lowest()) + start;
    for (int row = 0; row < strings.size(); row++) {
      int open = tuning.openMidi(strings.get(row));
      first[row] = midi - open;
      midi = key.nextPentatonic(midi);
      second[row] = midi - open;
      midi = key.nextPentatonic(midi);
      if (first[row] < 0) {
        int below = -first[row];
        GuitarString string = strings.get(row);
        return Attempt.failed(
            () -> Wording.counted("music.neck.below", below, shape.spoken(), below, string));
      }
      if (second[row] > frets) {
        int needed = second[row];
        GuitarString string = strings.get(row);
        return Attempt.failed(
            () -> Wording.of("music.neck.above", shape.spoken(), needed, string, frets));
      }
    }
    return Fingering.hands(first, second)
        .map(hands -> Attempt.held(build(shape, first, second, hands)))
        .orElseGet(
            () ->
                Attempt.failed(
                    () ->
                        Wording.of("music.neck.unheld", shape.spoken(), Fingering.FURTHEST_SHIFT)));
  }

  private PlacedShape build(Shape shape, int[] first, int[] second, List<Integer> hands) {
    List<PlacedNote> notes = new ArrayList<>();
    List<GuitarString> strings = tuning.strings();
    for (int row = 0; row < strings.size(); row++) {
      for (int fret : new int[] {first[row], second[row]}) {
        Place place = new Place(strings.get(row), fret);
        notes.add(
            new PlacedNote(place, tuning.midi(place), Fingering.finger(hands.get(row), fret)));
      }
    }
    return new PlacedShape(shape, first[0], notes, hands);
  }

  /** Put into words only where it is said. */
  private record Attempt(Optional<PlacedShape> placed, Supplier<String> problem) {
    static Attempt held(PlacedShape placed) {
      return new Attempt(Optional.of(placed), NONE);
    }

    static Attempt failed(Supplier<String> problem) {
      return new Attempt(Optional.empty(), problem);
    }
  }

  private record ChainAttempt(Optional<List<PlacedShape>> placed, Supplier<String> problem) {}
}
