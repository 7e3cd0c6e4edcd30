package neckway.follow;

import java.util.OptionalInt;

/**
 * One way to read the notes so far: where in the route the player is, what the last note was, and
 * the hypotheses of the notes before it that are not decided yet.
 */
final class Hypothesis {
  /** Whether a note is told. */
  enum Told {
    /** It is. */
    NOTE,
    /** A step was played in its time, but the ear has another pitch than it can have had. */
    UNNAMED_STEP,
    /** The ear was deceived; there was no note. */
    NOTHING
  }

  /** Right notes before an unnamed step that count after it. */
  private static final int LONGEST_CARRIED = 4;

  /** Steps that are behind the player: the next one is the step of this index. */
  final int next;

  /** The most of them in this attempt; above {@link #next} while notes are played again. */
  final int onward;

  final int attempt;
  final double cost;

  /** Time of the last note in a slot, seconds; NaN before the first of an attempt. */
  final double slotTime;

  final Verdict verdict;

  final Told told;

  /** Step of the last note; meaningless for an extra one. */
  final int step;

  /**
   * Right notes of steps that follow each other, up to this one; stray notes between do no harm.
   */
  final int rightInARow;

  /** Whether the first of them came after silence. */
  final boolean rowAfterSilence;

  /** The hypothesis of the note before; null once that is decided. */
  Hypothesis before;

  Hypothesis(
      int next,
      int onward,
      int attempt,
      double cost,
      double slotTime,
      Verdict verdict,
      int step,
      boolean afterSilence,
      Hypothesis before) {
    this(next, onward, attempt, cost, slotTime, verdict, Told.NOTE, step, afterSilence, before);
  }

  private Hypothesis(
      int next,
      int onward,
      int attempt,
      double cost,
      double slotTime,
      Verdict verdict,
      Told told,
      int step,
      boolean afterSilence,
      Hypothesis before) {
    this.next = next;
    this.onward = onward;
    this.attempt = attempt;
    this.cost = cost;
    this.slotTime = slotTime;
    this.verdict = verdict;
    this.told = told;
    this.step = step;
    this.before = before;
    boolean between = verdict == Verdict.EXTRA && told != Told.UNNAMED_STEP && before != null;
    this.rightInARow =
        verdict == Verdict.RIGHT
            ? 1 + rowBefore(before, step, attempt)
            : between ? before.rightInARow : told == Told.UNNAMED_STEP ? leftOf(before) : 0;
    this.rowAfterSilence = between || rightInARow > 1 ? before.rowAfterSilence : afterSilence;
  }

  /** What an unnamed step leaves of the row before it: two of them are let pass after four. */
  private static int leftOf(Hypothesis before) {
    return Math.min(LONGEST_CARRIED, before.rightInARow) / 2;
  }

  private static int rowBefore(Hypothesis before, int step, int attempt) {
    return before != null && before.next == step && before.attempt == attempt
        ? before.rightInARow
        : 0;
  }

  /** Before any note. */
  static Hypothesis start() {
    return new Hypothesis(0, 0, 0, 0, Double.NaN, Verdict.EXTRA, 0, true, null);
  }

  /** Goes on with a note of which nothing is told. */
  Hypothesis withNothing(double cost) {
    return new Hypothesis(
        next,
        onward,
        attempt,
        this.cost + cost,
        slotTime,
        Verdict.EXTRA,
        Told.NOTHING,
        0,
        false,
        this);
  }

  /** Goes on with the step that is due, played but not named. */
  Hypothesis withUnnamedStep(double cost, double time) {
    return new Hypothesis(
        onward + 1,
        onward + 1,
        attempt,
        this.cost + cost,
        time,
        Verdict.EXTRA,
        Told.UNNAMED_STEP,
        onward,
        false,
        this);
  }

  OptionalInt stepOrNone() {
    return verdict == Verdict.EXTRA ? OptionalInt.empty() : OptionalInt.of(step);
  }

  boolean playingAgain() {
    return next < onward;
  }

  /** The hypothesis of an earlier note: 0 this one, 1 the one before. */
  Hypothesis back(int notes) {
    Hypothesis r = this;
    for (int i = 0; i < notes; i++) {
      r = r.before;
    }
    return r;
  }

  /** Whether the last note is said to be the same thing. */
  boolean saysTheSame(Hypothesis other) {
    boolean ofNoStep = verdict == Verdict.EXTRA && told != Told.UNNAMED_STEP;
    return verdict == other.verdict
        && told == other.told
        && attempt == other.attempt
        && (ofNoStep || step == other.step);
  }

  boolean sameState(Hypothesis other) {
    return next == other.next
        && onward == other.onward
        && attempt == other.attempt
        && Double.compare(slotTime, other.slotTime) == 0;
  }
}
