package neckway.report;

import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import neckway.drill.PlayableDrill;
import neckway.follow.Verdict;
import neckway.page.PageModel;
import neckway.review.Remarks;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.words.Sentence;
import neckway.review.words.Words;

/** All that a report tells of: the review, the page that follows from it, the teacher's remarks. */
final class Told {
  final PlayableDrill drill;
  final Review review;
  final Remarks remarks;
  final PageModel page;

  /** Verdicts of the teacher's by the step of the note, within the try that is told. */
  private final Map<Integer, Verdict> overruled = new TreeMap<>();

  Told(PlayableDrill drill, Review review, Remarks remarks) {
    this.drill = drill;
    this.review = review;
    this.remarks = remarks;
    page = new PageModel(drill);
    page.review(review);
    for (Remarks.Overruled by : remarks.overruled()) {
      ReviewedNote note = review.notes().get(by.note());
      boolean differs = note.verdict() != by.verdict();
      if (differs && note.attempt() == review.reviewed() && note.inPlace()) {
        overruled.put(note.step().getAsInt(), by.verdict());
      }
    }
  }

  /** What the teacher says of the note in a step's place, where that is something else. */
  Optional<Verdict> overruled(int step) {
    return Optional.ofNullable(overruled.get(step));
  }

  /**
   * The name of an open string.
   *
   * @param string 1 is the highest-sounding
   */
  String openNote(int string) {
    int strings = drill.tuning().count();
    return drill.tuning().lowToHigh().get(strings - string).note();
  }

  /**
   * Whether the review tells a score: where it says that another drill was played, no slip is one.
   */
  boolean fits() {
    return Words.said(drill, review).stream()
        .anyMatch(sentence -> sentence.part() == Sentence.Part.SCORE);
  }

  /** Whether the teacher says something else of any note than the review. */
  boolean isDisputed() {
    return remarks.overruled().stream()
        .anyMatch(by -> by.verdict() != review.notes().get(by.note()).verdict());
  }

  /** A slot of the grid, milliseconds. */
  double slotMs() {
    return 1000 * review.grid().slotSeconds();
  }

  /** When the note in a step's place was played, seconds; empty where none was. */
  Optional<Double> time(int step) {
    return page.note(step).map(note -> review.notes().get(note).time());
  }
}
