package neckway.review;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import neckway.drill.Pulse;
import neckway.drill.Slots;
import neckway.follow.NoteVerdict;
import neckway.hear.RobustStatistics;

/**
 * The grid as the notes themselves give it. Only how notes lie within a slot is used, so that steps
 * left out, pauses and fresh starts do no harm; the tempo is the drill's unless the notes clearly
 * keep another one.
 */
final class NoteGrid {
  private static final double FASTEST = 1.4;
  private static final double SLOWEST = 0.7;
  private static final double KERNEL_SHARE = 0.08;
  private static final double INLIER_SHARE = 0.2;
  private static final int ROUNDS = 6;
  private static final double CLEAR_ERRORS = 3;
  private static final double MOST_ALIKE = 0.8;

  private NoteGrid() {}

  /**
   * @param verdicts at least one
   * @param firstNote the first beat by the first note alone, seconds
   * @param slots as the player kept them
   */
  static Grid of(List<NoteVerdict> verdicts, double firstNote, Pulse pulse, Slots slots) {
    List<NoteVerdict> placed = verdicts.stream().filter(NoteVerdict::inPlace).toList();
    if (placed.size() < 4) {
      return Grid.of(Grid.Source.NOTES, pulse, firstNote);
    }
    double slotSeconds = startingSlot(verdicts, pulse.slotSeconds(), slots);
    double[] times =
        placed.stream()
            .mapToDouble(v -> v.note().time() - slotSeconds * slots.lag(v.step().getAsInt()))
            .toArray();
    double phase = phase(times, slotSeconds);
    double[] line = {slotSeconds, phase};
    for (int i = 0; i < ROUNDS; i++) {
      line = refine(times, line, pulse.slotSeconds());
    }
    double first = line[1] + line[0] * Math.rint((firstNote - line[1]) / line[0]);
    double tempo = 60 / line[0] / pulse.notesPerBeat();
    return new Grid(Grid.Source.NOTES, tempo, first, line[0], pulse.slots());
  }

  /** The slot to begin with: the drill's, or the median of those played where that is another. */
  private static double startingSlot(List<NoteVerdict> verdicts, double drillSlot, Slots slots) {
    List<Double> all = interOnsets(verdicts, slots);
    OptionalDouble heard = HeardPulse.slotSeconds(all);
    if (heard.isPresent() && !isNear(heard.getAsDouble(), drillSlot)) {
      return heard.getAsDouble();
    }
    List<Double> intervals = all.stream().filter(t -> isNear(t, drillSlot)).toList();
    if (intervals.size() < 3) {
      return drillSlot;
    }
    double[] played = intervals.stream().mapToDouble(g -> g).toArray();
    double middle = RobustStatistics.median(played);
    double error = RobustStatistics.spread(played) / Math.sqrt(played.length);
    boolean another =
        Math.abs(middle - drillSlot) > Math.max(CLEAR_ERRORS * error, 0.02 * drillSlot);
    return another ? middle : drillSlot;
  }

  private static boolean isNear(double interOnset, double drillSlot) {
    return interOnset > drillSlot / FASTEST && interOnset < drillSlot / SLOWEST;
  }

  /** Times from the note of one step to that of the next, seconds, as if all were as long. */
  static List<Double> interOnsets(List<NoteVerdict> verdicts, Slots slots) {
    List<Double> intervals = new ArrayList<>();
    NoteVerdict last = null;
    for (NoteVerdict v : verdicts) {
      if (!v.inPlace()) {
        continue;
      }
      if (last != null
          && last.attempt() == v.attempt()
          && last.step().getAsInt() + 1 == v.step().getAsInt()) {
        intervals.add(
            (v.note().time() - last.note().time()) / slots.gapBefore(v.step().getAsInt()));
      }
      last = v;
    }
    return intervals;
  }

  /** The phase that most notes agree with. */
  private static double phase(double[] times, double slotSeconds) {
    double best = times[0];
    double most = -1;
    for (double candidate : times) {
      double sum = 0;
      for (double t : times) {
        double off = Math.IEEEremainder(t - candidate, slotSeconds) / (KERNEL_SHARE * slotSeconds);
        sum += Math.exp(-off * off);
      }
      if (sum > most) {
        most = sum;
        best = candidate;
      }
    }
    return best;
  }

  /**
   * A straight line through the notes near the grid; the drill's slot where it fits as well. A
   * player wanders about the beat, so one note says something of the next: the error of the slot is
   * widened by their correlation as that of a first-order autoregression is (effective sample size;
   * from memory).
   */
  private static double[] refine(double[] times, double[] line, double drillSlot) {
    List<double[]> near = new ArrayList<>();
    for (double t : times) {
      double slot = Math.rint((t - line[1]) / line[0]);
      double off = t - line[1] - slot * line[0];
      if (Math.abs(off) < INLIER_SHARE * line[0]) {
        near.add(new double[] {slot, t});
      }
    }
    if (near.size() < 4) {
      return line;
    }
    double meanSlot = near.stream().mapToDouble(p -> p[0]).average().orElseThrow();
    double meanTime = near.stream().mapToDouble(p -> p[1]).average().orElseThrow();
    double sxx = near.stream().mapToDouble(p -> (p[0] - meanSlot) * (p[0] - meanSlot)).sum();
    double sxy = near.stream().mapToDouble(p -> (p[0] - meanSlot) * (p[1] - meanTime)).sum();
    double slotSeconds = sxx == 0 ? line[0] : sxy / sxx;
    double[] off =
        near.stream().mapToDouble(p -> p[1] - meanTime - slotSeconds * (p[0] - meanSlot)).toArray();
    double squares = 0;
    double neighbours = 0;
    for (int i = 0; i < off.length; i++) {
      squares += off[i] * off[i];
      neighbours += i == 0 ? 0 : off[i] * off[i - 1];
    }
    double alike = squares == 0 ? 0 : Math.max(0, Math.min(MOST_ALIKE, neighbours / squares));
    double error =
        Math.sqrt(squares / (near.size() - 2) / Math.max(sxx, 1) * (1 + alike) / (1 - alike));
    double kept =
        Math.abs(slotSeconds - drillSlot) < CLEAR_ERRORS * error ? drillSlot : slotSeconds;
    return new double[] {kept, meanTime - kept * meanSlot};
  }
}
