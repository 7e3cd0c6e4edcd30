package neckway.follow;

import java.util.List;
import java.util.OptionalDouble;
import neckway.drill.Pulse;
import neckway.hear.HeardNote;
import neckway.neck.Route;

/** Every sensible way to read the next note. */
final class Hypotheses {
  private static final int MOST_SKIPPED = 10;
  private static final int MOST_SKIPPED_BEFORE_WRONG = 2;
  private static final int MOST_GONE_BACK = 8;
  private static final double EARLY_SLOTS = 0.6;
  private static final double ON_BEAT_SLOTS = 0.4;
  private static final double SLOT_BEGINS = 0.72;
  private static final double SLOT_ENDS = 1.4;
  private static final double ITS_OWN_SLOT_BEGINS = 1.7;
  private static final int UNNAMED_AFTER_ROW = 2;
  private static final int OCTAVE = 12;

  /** The true name of a step comes at most so long after its onset. */
  private static final double NAMED_AT_LAST_SECONDS = 0.25;

  private final int[] midi;
  private final int stepsPerRound;
  private final int shapes;
  private final OptionalDouble firstBeat;
  private final double slotSeconds;

  Hypotheses(Route route, Pulse pulse, OptionalDouble firstBeat) {
    this.midi = route.steps().stream().mapToInt(s -> s.midi()).toArray();
    this.stepsPerRound = route.stepsPerRound();
    this.shapes = Math.max(1, route.shapes().size());
    this.firstBeat = firstBeat;
    this.slotSeconds = pulse.slotSeconds();
  }

  /**
   * Adds to {@code out} every hypothesis of a note that goes on from {@code r}.
   *
   * @param note as heard, one that the guitar can play
   * @param doubt what speaks against the ear
   * @param trusted whether the notes fit this drill
   * @param interOnsetSeconds time from note to note as this player keeps it
   * @param paused whether there was a pause before it
   */
  void next(
      Hypothesis r,
      HeardNote note,
      EarErrorModel.Doubt doubt,
      boolean trusted,
      double interOnsetSeconds,
      boolean paused,
      List<Hypothesis> out) {
    double time = note.time();
    int pitch = note.midi();
    double intervals = intervals(r, time, interOnsetSeconds);
    double happens = happensToFit(r, pitch, intervals);
    out.add(keep(r, stray(r, time) + happens, Verdict.EXTRA, 0));
    if (namedAtLast(r, note)) {
      out.add(r.withNothing(Costs.NAMED_AT_LAST));
    } else if (doubt.madeUp()) {
      out.add(r.withNothing(Costs.DECEIVED));
    }
    if (unnamed(r, pitch, doubt, trusted, intervals)) {
      out.add(r.withUnnamedStep(Costs.UNNAMED + Costs.slot(intervals, 0), time));
    }
    if (r.next > 0 && pitch == midi[r.next - 1]) {
      out.add(keep(r, Costs.REPEAT + Costs.BETWEEN_SLOTS, Verdict.REPEAT, r.next - 1));
    }
    if (r.playingAgain()) {
      playedAgain(r, time, pitch, out);
    }
    onward(r, time, pitch, intervals, paused, out);
    if (r.next > 0) {
      fromTheBottom(r, time, pitch, paused, out);
      goneBack(r, time, pitch, out);
    }
  }

  /**
   * The hypotheses of a note that the guitar cannot play. In the slot of the step due it is most
   * likely that step, its pitch taken for another; anywhere else it is none of the player's.
   *
   * @param time onset, seconds
   * @param trusted whether the notes fit this drill
   * @param interOnsetSeconds time from note to note as this player keeps it
   */
  void ofNoGuitar(
      Hypothesis r, double time, boolean trusted, double interOnsetSeconds, List<Hypothesis> out) {
    out.add(r.withNothing(Costs.NOT_PLAYED));
    double intervals = intervals(r, time, interOnsetSeconds);
    if (trusted && inSlotDue(r, intervals)) {
      out.add(r.withUnnamedStep(Costs.slot(intervals, 0), time));
    }
  }

  private static double intervals(Hypothesis r, double time, double interOnsetSeconds) {
    return Double.isNaN(r.slotTime) ? Double.NaN : (time - r.slotTime) / interOnsetSeconds;
  }

  /** Whether the step that was played but not named has its name at last. */
  private boolean namedAtLast(Hypothesis r, HeardNote note) {
    return r.told == Hypothesis.Told.UNNAMED_STEP
        && note.start() != HeardNote.Start.PLUCK
        && note.midi() == midi[r.next - 1]
        && note.time() - r.slotTime < NAMED_AT_LAST_SECONDS;
  }

  private void onward(
      Hypothesis r,
      double time,
      int pitch,
      double intervals,
      boolean paused,
      List<Hypothesis> out) {
    double leave = r.playingAgain() ? 1 : 0;
    for (int skipped = 0; r.onward + skipped < midi.length; skipped++) {
      int step = r.onward + skipped;
      boolean turn = turnsEarly(r.onward, skipped);
      if (skipped > MOST_SKIPPED && !turn) {
        if (skipped > 2 * shapes) {
          break;
        }
        continue;
      }
      double cost =
          leave + (turn ? Costs.TURN : Costs.skip(skipped)) + timeCost(r, time, intervals, skipped);
      if (skipped >= 2 && pitch == midi[0] && step + 1 < midi.length) {
        cost += Costs.OR_FROM_THE_BOTTOM;
      }
      if (pitch == midi[step]) {
        out.add(inPlace(r, cost + Costs.RIGHT, time, Verdict.RIGHT, step, paused));
      } else if (skipped <= MOST_SKIPPED_BEFORE_WRONG) {
        out.add(
            inPlace(
                r,
                cost + Costs.WRONG + (skipped == 0 ? happensToFit(r, pitch, intervals) : 0),
                time,
                Verdict.WRONG,
                step,
                paused));
      }
    }
  }

  /** What it costs more to read the step after the one due, in its own slot, as another thing. */
  private double happensToFit(Hypothesis r, int pitch, double intervals) {
    int after = r.onward + 1;
    boolean fits =
        r.onward > 0
            && !r.playingAgain()
            && after < midi.length
            && pitch == midi[after]
            && intervals > ITS_OWN_SLOT_BEGINS;
    return fits ? Costs.HAPPENS_TO_FIT : 0;
  }

  /**
   * Whether a note in the slot of the step due has a pitch that the ear may take that step for: one
   * of which it is a low harmonic, as where another string rings or an amp adds them up; its second
   * harmonic, which nobody in a shape plays by chance; or the semitone beside, where it was heard
   * between the two.
   */
  private boolean unnamed(
      Hypothesis r, int pitch, EarErrorModel.Doubt doubt, boolean trusted, double intervals) {
    if (!inSlotDue(r, intervals)) {
      return false;
    }
    int below = midi[r.onward] - pitch;
    boolean harmonic =
        trusted
            && doubt.harmonic()
            && (EarErrorModel.isHarmonic(below) || below == -OCTAVE)
            && r.rightInARow >= UNNAMED_AFTER_ROW
            && pitch != midi[0];
    return harmonic || below != 0 && below == doubt.leaning();
  }

  private boolean inSlotDue(Hypothesis r, double intervals) {
    return !r.playingAgain()
        && r.onward > 0
        && r.onward < midi.length
        && intervals > SLOT_BEGINS
        && intervals < SLOT_ENDS;
  }

  /** Whether leaving out so many steps from {@code next} on is turning on a lower shape's top. */
  private boolean turnsEarly(int next, int skipped) {
    if (next == 0 || midi.length < 2) {
      return false;
    }
    int last = next - 1;
    int top = last / (stepsPerRound - 1) * (stepsPerRound - 1) + (stepsPerRound - 1) / 2;
    int below = top - last;
    return below >= 1 && below < shapes && (skipped == 2 * below || skipped == 2 * below - 1);
  }

  private double timeCost(Hypothesis r, double time, double intervals, int skipped) {
    if (!Double.isNaN(intervals)) {
      return Costs.slot(intervals, skipped);
    }
    return r.attempt == 0 && beforeFirstBeat(time) ? Costs.TOO_EARLY : 0;
  }

  private double stray(Hypothesis r, double time) {
    if (r.next == 0 && beforeFirstBeat(time)) {
      return Costs.BEFORE_FIRST_BEAT;
    }
    boolean outside = r.next == 0 && !onFirstBeat(time) || r.next == midi.length;
    return outside ? Costs.OUTSIDE : Costs.EXTRA + Costs.BETWEEN_SLOTS;
  }

  private boolean beforeFirstBeat(double time) {
    return firstBeat.isPresent() && time < firstBeat.getAsDouble() - EARLY_SLOTS * slotSeconds;
  }

  /** Whether a note begins about when the first step is due. */
  boolean onFirstBeat(double time) {
    return firstBeat.isPresent()
        && Math.abs(time - firstBeat.getAsDouble()) < ON_BEAT_SLOTS * slotSeconds;
  }

  private void fromTheBottom(
      Hypothesis r, double time, int pitch, boolean paused, List<Hypothesis> out) {
    boolean bottomIsDue = r.next > 1 && r.next < midi.length && midi[r.next - 1] == midi[0];
    boolean dueAfterOneLeftOut = r.onward + 1 < midi.length && midi[r.onward + 1] == midi[0];
    double cost =
        paused && !bottomIsDue
            ? Costs.RESTART_AFTER_PAUSE
            : Costs.RESTART + (dueAfterOneLeftOut ? Costs.OR_FROM_THE_BOTTOM : 0);
    if (pitch == midi[0]) {
      out.add(restart(r, cost + Costs.RIGHT, time, Verdict.RIGHT, 0, paused));
    } else if (paused) {
      out.add(restart(r, cost + Costs.WRONG, time, Verdict.WRONG, 0, paused));
    }
    if (midi.length > 1 && pitch == midi[1]) {
      out.add(restart(r, cost + Costs.SKIP + Costs.RIGHT, time, Verdict.RIGHT, 1, paused));
    }
  }

  private void goneBack(Hypothesis r, double time, int pitch, List<Hypothesis> out) {
    for (int step = r.next - 2; step >= Math.max(0, r.next - MOST_GONE_BACK); step--) {
      if (pitch == midi[step]) {
        double cost = r.cost + Costs.GO_BACK + Costs.AGAIN;
        out.add(
            new Hypothesis(
                step + 1, r.onward, r.attempt, cost, time, Verdict.REPEAT, step, false, r));
      }
    }
  }

  private void playedAgain(Hypothesis r, double time, int pitch, List<Hypothesis> out) {
    int step = r.next;
    if (pitch == midi[step]) {
      double cost = r.cost + Costs.AGAIN;
      out.add(
          new Hypothesis(
              step + 1, r.onward, r.attempt, cost, time, Verdict.REPEAT, step, false, r));
    }
  }

  private static Hypothesis keep(Hypothesis r, double cost, Verdict verdict, int step) {
    return new Hypothesis(
        r.next, r.onward, r.attempt, r.cost + cost, r.slotTime, verdict, step, false, r);
  }

  private static Hypothesis inPlace(
      Hypothesis r, double cost, double time, Verdict verdict, int step, boolean paused) {
    return new Hypothesis(
        step + 1, step + 1, r.attempt, r.cost + cost, time, verdict, step, paused, r);
  }

  private static Hypothesis restart(
      Hypothesis r, double cost, double time, Verdict verdict, int step, boolean paused) {
    return new Hypothesis(
        step + 1, step + 1, r.attempt + 1, r.cost + cost, time, verdict, step, paused, r);
  }
}
