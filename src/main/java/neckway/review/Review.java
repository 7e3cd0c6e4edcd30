package neckway.review;

import java.util.List;
import java.util.OptionalDouble;
import neckway.drill.Slots;

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

  /** The slots with the player's own swing, where that is clearly another than the drill's. */
  public Slots ownSlots() {
    return OwnSwing.slots(grid.slots(), summary.swing());
  }

  /** How far a note in place of a step lay from its slot as the player swings, ms. */
  public double ownOffMs(ReviewedNote note) {
    int step = note.step().getAsInt();
    double lag = ownSlots().lag(step) - grid.slots().lag(step);
    return note.offMs() - 1000 * grid.slotSeconds() * lag;
  }

  /** The middle time from note to note of the reviewed attempt, seconds, where it had one. */
  public OptionalDouble heardSlotSeconds() {
    return HeardPulse.slotSeconds(notes, reviewed, ownSlots());
  }

  /** Whether the notes go at the grid's pace; where they have none of their own, they may. */
  public boolean keepsTheGrid() {
    OptionalDouble heard = heardSlotSeconds();
    return heard.isEmpty() || HeardPulse.isSame(heard.getAsDouble(), grid.slotSeconds());
  }

  /**
   * The same of a run without end, as far as it went: what comes after is no part of it.
   *
   * @param reached steps from the first; none after them was played
   */
  public Review upTo(int reached) {
    return new Review(
        take,
        guitar,
        clock,
        grid,
        notes,
        attempts,
        reviewed,
        steps.subList(0, reached),
        shifts,
        summary);
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
