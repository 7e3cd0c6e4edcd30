package neckway.review;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import neckway.follow.NoteVerdict;
import neckway.follow.UnnamedStep;
import neckway.follow.Verdict;

/** The notes of one attempt, and what became of each step in it. */
public final class Attempt {
  final int number;
  public final List<NoteVerdict> notes;
  private final NoteVerdict[] inPlace;
  private final boolean[] unnamed;

  /** Steps up to and with the furthest one played. */
  private final int reached;

  private Attempt(int number, List<NoteVerdict> notes, int steps) {
    this.number = number;
    this.notes = notes;
    this.inPlace = new NoteVerdict[steps];
    this.unnamed = new boolean[steps];
    int far = 0;
    for (NoteVerdict v : notes) {
      if (v.inPlace()) {
        inPlace[v.step().getAsInt()] = v;
        far = Math.max(far, v.step().getAsInt() + 1);
      }
    }
    this.reached = far;
  }

  /**
   * The attempt that stands: the one that got furthest; of those that got equally far the one with
   * the fewest slips, and of those the latest.
   *
   * @param unnamed steps that were heard and not named
   * @param steps of the route
   */
  public static Attempt standing(List<NoteVerdict> verdicts, List<UnnamedStep> unnamed, int steps) {
    List<List<NoteVerdict>> attempts = new ArrayList<>();
    attempts.add(new ArrayList<>());
    for (NoteVerdict v : verdicts) {
      while (attempts.size() <= v.attempt()) {
        attempts.add(new ArrayList<>());
      }
      attempts.get(v.attempt()).add(v);
    }
    List<Attempt> all = new ArrayList<>();
    for (int i = 0; i < attempts.size(); i++) {
      all.add(new Attempt(i, attempts.get(i), steps));
    }
    for (UnnamedStep u : unnamed) {
      if (u.attempt() < all.size()) {
        all.get(u.attempt()).unnamed[u.step()] = true;
      }
    }
    return Collections.max(
        all,
        Comparator.comparingInt((Attempt a) -> a.reached)
            .thenComparingInt(a -> -a.slips())
            .thenComparingInt(a -> a.number));
  }

  /** The note in place of a step, right or wrong. */
  Optional<NoteVerdict> inPlace(int step) {
    return Optional.ofNullable(inPlace[step]);
  }

  /** Whether the player left a step out and went on. */
  public boolean skipped(int step) {
    return step < reached && inPlace[step] == null && !unnamed[step];
  }

  /** Whether the player had stopped before a step. */
  boolean stoppedBefore(int step) {
    return step >= reached;
  }

  public StepVerdict verdict(int step) {
    if (stoppedBefore(step)) {
      return StepVerdict.UNPLAYED;
    }
    if (skipped(step)) {
      return StepVerdict.SKIPPED;
    }
    return inPlace[step] == null || inPlace[step].verdict() == Verdict.RIGHT
        ? StepVerdict.PLAYED
        : StepVerdict.WRONG;
  }

  /** Notes wrong, struck twice or of no step, and steps left out. */
  private int slips() {
    int leftOut = (int) IntStream.range(0, reached).filter(this::skipped).count();
    return count(Verdict.WRONG) + count(Verdict.REPEAT) + count(Verdict.EXTRA) + leftOut;
  }

  int count(Verdict verdict) {
    return (int) notes.stream().filter(v -> v.verdict() == verdict).count();
  }
}
