package neckway.review;

import java.util.List;
import java.util.OptionalDouble;

/**
 * All that is said of a take.
 *
 * @param take its own figures
 * @param guitar what is known of the guitar that was played
 * @param clock whether its times can be held against the click's
 * @param grid the slots
 * @param notes every note heard, in the order of their verdicts
 * @param attempts how often the player began
 * @param reviewed the attempt that steps, shifts and summary are of
 * @param steps every step of the route
 * @param shifts every shift of the route, in the order met
 * @param summary figures and words
 */
public record Review(
    TakeFigures take,
    GuitarKnown guitar,
    Clock clock,
    Grid grid,
    List<ReviewedNote> notes,
    int attempts,
    int reviewed,
    List<ReviewedStep> steps,
    List<ReviewedShift> shifts,
    Summary summary) {
  public Review {
    notes = List.copyOf(notes);
    steps = List.copyOf(steps);
    shifts = List.copyOf(shifts);
  }

  /** The middle time from note to note of the reviewed attempt, seconds, where it had one. */
  public OptionalDouble heardSlotSeconds() {
    return HeardPulse.slotSeconds(notes, reviewed);
  }

  /** Whether the notes go at the grid's pace; where they have none of their own, they may. */
  public boolean keepsTheGrid() {
    OptionalDouble heard = heardSlotSeconds();
    return heard.isEmpty() || HeardPulse.isSame(heard.getAsDouble(), grid.slotSeconds());
  }

  /** The same with its sentences. */
  public Review withWords(List<String> words) {
    return new Review(
        take,
        guitar,
        clock,
        grid,
        notes,
        attempts,
        reviewed,
        steps,
        shifts,
        summary.withWords(words));
  }
}
