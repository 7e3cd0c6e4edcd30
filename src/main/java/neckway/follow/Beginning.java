package neckway.follow;

import java.util.ArrayList;
import java.util.List;

/**
 * Keeps back stray notes from before the run until its first step is there, and lets them be
 * forgotten if they are much weaker than that: a hand laid on the strings, a chair, hum.
 */
final class Beginning implements VerdictListener {
  private static final double WEAKER_DB = 15;

  /** As many stray notes are no accident. */
  private static final int MOST_KEPT_BACK = 4;

  private final VerdictListener listener;
  private final List<NoteVerdict> keptBack = new ArrayList<>();
  private boolean begun;

  Beginning(VerdictListener listener) {
    this.listener = listener;
  }

  @Override
  public void decided(NoteVerdict verdict) {
    if (!begun && verdict.verdict() == Verdict.EXTRA) {
      keptBack.add(verdict);
      if (keptBack.size() > MOST_KEPT_BACK) {
        begin(Double.NEGATIVE_INFINITY, verdict.decided());
      }
      return;
    }
    if (!begun) {
      begin(verdict.note().levelDbfs() - WEAKER_DB, verdict.decided());
    }
    listener.decided(verdict);
  }

  @Override
  public void unnamed(int attempt, int step) {
    listener.unnamed(attempt, step);
  }

  /** The take is over. */
  void finish(double seconds) {
    if (!begun) {
      begin(Double.NEGATIVE_INFINITY, seconds);
    }
  }

  private void begin(double leastDbfs, double now) {
    begun = true;
    for (NoteVerdict v : keptBack) {
      if (v.note().levelDbfs() >= leastDbfs) {
        listener.decided(
            new NoteVerdict(
                v.note(), v.verdict(), v.step(), v.attempt(), Math.max(now, v.decided())));
      }
    }
    keptBack.clear();
  }
}
