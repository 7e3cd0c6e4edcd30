package neckway.recording;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import neckway.drill.Drill;
import neckway.drill.PlayableDrill;
import neckway.follow.Compass;
import neckway.follow.Follower;
import neckway.follow.NoteVerdict;
import neckway.follow.Verdict;
import neckway.follow.VerdictListener;
import neckway.hear.HeardNote;
import neckway.neck.BadInput;
import neckway.neck.Shape;
import neckway.review.Review;
import neckway.review.ReviewedNote;

/**
 * Looks for another drill of the same key that the notes of a take fit far better: other
 * neighbouring shapes, or the same ones from another fret.
 */
final class OtherDrill {
  /** A take of fewer notes fits too many drills. */
  private static final int FEWEST_NOTES = 8;

  /** From this share of right notes on a take is of its own drill. */
  private static final double FITS_SHARE = 0.8;

  /** The other drill has so large a share more of the notes. */
  private static final double BETTER_SHARE = 0.25;

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

  /** The drill that fits best, where it fits far better than the one that was asked. */
  Optional<Fit> find() {
    if (notes.size() < FEWEST_NOTES || right >= FITS_SHARE * notes.size()) {
      return Optional.empty();
    }
    return others().stream()
        .map(other -> new Fit(other, right(other)))
        .filter(fit -> fit.right() >= FITS_SHARE * notes.size())
        .filter(fit -> fit.right() >= right + BETTER_SHARE * notes.size())
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
    try {
      return Optional.of(
          new Drill(
                  Optional.empty(),
                  drill.tuning(),
                  drill.frets(),
                  drill.key(),
                  shapes,
                  start,
                  List.of(),
                  List.of(),
                  drill.rounds(),
                  drill.pulse())
              .playable());
    } catch (BadInput doesNotFitTheNeck) {
      return Optional.empty();
    }
  }
}
