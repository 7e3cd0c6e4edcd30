package neckway.run;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import neckway.drill.Drill;
import neckway.drill.PlayableDrill;
import neckway.follow.Compass;
import neckway.follow.Follower;
import neckway.follow.NoteVerdict;
import neckway.follow.Verdict;
import neckway.follow.VerdictListener;
import neckway.hear.HeardNote;
import neckway.neck.BadInput;
import neckway.neck.JoinChoice;
import neckway.neck.Key;
import neckway.neck.Shape;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.words.OtherwisePlayed;

/**
 * Looks for another drill that the notes of a take fit far better: other neighbouring shapes of the
 * same key, the same ones from another fret, or the same drill in another key.
 */
final class OtherDrill {
  /** A take of fewer notes fits too many drills. */
  private static final int FEWEST_NOTES = 8;

  /** From this share of right notes on a take is of its own drill. */
  private static final double FITS_SHARE = 0.8;

  /** The other drill has so large a share more of the notes. */
  private static final double BETTER_SHARE = 0.25;

  /**
   * The other drill has so large a share of the notes. At 0.8 a run of its own drill, its first
   * note left out, was told as another one; at these shares none was of 160 takes with up to two
   * slips for three notes ({@code OtherKeyBench}).
   */
  private static final double OTHER_FITS_SHARE = 0.9;

  /** The same for another key, of which there are eleven, so that more of them fit by chance. */
  private static final double KEY_BETTER_SHARE = 0.3;

  private static final int OCTAVE_FRETS = 12;
  private static final int MOST_SHAPES = 5;

  /**
   * A drill that fits.
   *
   * @param drill the other one
   * @param right how many of the notes fit it
   */
  record Fit(PlayableDrill drill, int right) {}

  private final PlayableDrill drill;
  private final List<HeardNote> notes;
  private final int right;

  OtherDrill(PlayableDrill drill, Review review) {
    this.drill = drill;
    this.notes =
        review.notes().stream()
            .sorted(Comparator.comparingDouble(ReviewedNote::time))
            .map(OtherDrill::heard)
            .toList();
    this.right = (int) review.notes().stream().filter(n -> n.verdict() == Verdict.RIGHT).count();
  }

  private static HeardNote heard(ReviewedNote note) {
    return new HeardNote(
        0, note.time(), note.midi(), note.midi(), HeardNote.Start.PLUCK, true, 0, note.decided());
  }

  /** What is said of a take that is of another drill; empty where none fits far better. */
  static Optional<List<String>> said(PlayableDrill drill, Review review) {
    return new OtherDrill(drill, review)
        .find()
        .map(
            fit ->
                fit.drill().key().equals(drill.key())
                    ? OtherwisePlayed.otherDrill(fit.drill(), fit.right(), review)
                    : OtherwisePlayed.otherKey(drill, fit.drill(), fit.right(), review));
  }

  /** The drill that fits best, where it fits far better than the one that was asked. */
  Optional<Fit> find() {
    if (notes.size() < FEWEST_NOTES || right >= FITS_SHARE * notes.size()) {
      return Optional.empty();
    }
    Optional<Fit> sameKey = best(others(), BETTER_SHARE);
    Optional<Fit> otherKey = best(inOtherKeys(), KEY_BETTER_SHARE);
    return Stream.of(sameKey, otherKey)
        .flatMap(Optional::stream)
        .max(Comparator.comparingInt(Fit::right));
  }

  private Optional<Fit> best(List<PlayableDrill> tried, double betterShare) {
    return tried.stream()
        .map(other -> new Fit(other, right(other)))
        .filter(fit -> fit.right() >= OTHER_FITS_SHARE * notes.size())
        .filter(fit -> fit.right() >= right + betterShare * notes.size())
        .max(Comparator.comparingInt(Fit::right));
  }

  private int right(PlayableDrill other) {
    List<NoteVerdict> verdicts = new ArrayList<>();
    VerdictListener listener = verdicts::add;
    Follower follower =
        new Follower(
            other.route(),
            other.pulse(),
            Compass.of(other.tuning(), other.frets()),
            OptionalDouble.empty(),
            listener);
    for (HeardNote note : notes) {
      follower.heard(note);
    }
    follower.finish(notes.get(notes.size() - 1).time() + 2 * drill.pulse().beatSeconds());
    return (int) verdicts.stream().filter(v -> v.verdict() == Verdict.RIGHT).count();
  }

  private List<PlayableDrill> others() {
    int asked = drill.shapes().size();
    List<PlayableDrill> all = new ArrayList<>();
    for (int count = Math.max(1, asked - 1); count <= Math.min(MOST_SHAPES, asked + 1); count++) {
      for (Shape lowest : Shape.values()) {
        lowestPlace(lowest, count).ifPresent(all::add);
      }
    }
    List<PlayableDrill> higher = new ArrayList<>();
    for (PlayableDrill low : all) {
      octaveHigher(low).ifPresent(higher::add);
    }
    all.addAll(higher);
    all.remove(drill.once());
    return all;
  }

  /** The same shapes and joins in the eleven other keys, in each place on the neck. */
  private List<PlayableDrill> inOtherKeys() {
    List<PlayableDrill> all = new ArrayList<>();
    for (int semitones = 1; semitones < OCTAVE_FRETS; semitones++) {
      Optional<PlayableDrill> low = inKey(drill.key().up(semitones), OptionalInt.empty());
      low.ifPresent(all::add);
      low.flatMap(l -> inKey(l.key(), OptionalInt.of(l.start() + OCTAVE_FRETS)))
          .ifPresent(all::add);
    }
    return all;
  }

  private Optional<PlayableDrill> inKey(Key key, OptionalInt start) {
    Drill asked = drill.drill();
    return playable(key, drill.shapes(), start, asked.up(), asked.down())
        .or(() -> playable(key, drill.shapes(), start, List.of(), List.of()));
  }

  private Optional<PlayableDrill> lowestPlace(Shape lowest, int count) {
    List<Shape> shapes = new ArrayList<>(List.of(lowest));
    while (shapes.size() < count) {
      shapes.add(shapes.get(shapes.size() - 1).next());
    }
    return playable(shapes, OptionalInt.empty());
  }

  private Optional<PlayableDrill> octaveHigher(PlayableDrill low) {
    return playable(low.shapes(), OptionalInt.of(low.start() + OCTAVE_FRETS));
  }

  private Optional<PlayableDrill> playable(List<Shape> shapes, OptionalInt start) {
    return playable(drill.key(), shapes, start, List.of(), List.of());
  }

  private Optional<PlayableDrill> playable(
      Key key, List<Shape> shapes, OptionalInt start, List<JoinChoice> up, List<JoinChoice> down) {
    try {
      return Optional.of(
          new Drill(
                  Optional.empty(),
                  drill.tuning(),
                  drill.frets(),
                  key,
                  shapes,
                  start,
                  up,
                  down,
                  drill.rounds(),
                  drill.pulse())
              .playable());
    } catch (BadInput doesNotFitTheNeck) {
      return Optional.empty();
    }
  }
}
