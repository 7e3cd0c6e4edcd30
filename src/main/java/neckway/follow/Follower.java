package neckway.follow;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import neckway.drill.Pulse;
import neckway.drill.Slots;
import neckway.hear.HeardNote;
import neckway.hear.NoteListener;
import neckway.neck.Route;

/**
 * Follows a run through its route as the notes come. Every sensible hypothesis about the notes is
 * kept with its cost (a beam search over position and slips); a verdict is given as soon as the
 * best hypothesis stands clear of every other, which for the step that is due is at once. What does
 * not stand clear waits for the next note, or for one slot; only where a step left out and a wrong
 * note would look the same does it wait until the next note must have been heard. A verdict given
 * is kept: hypotheses that contradict it are dropped.
 */
public final class Follower implements NoteListener {
  private static final double CLEAR = 2.0;
  private static final double PAUSE_SLOTS = 2.6;
  private static final double PAUSE_SECONDS = 0.9;
  private static final double LATE_NOTE_SLOTS = 1.25;
  private static final double EAR_SECONDS = 0.06;
  private static final double PASSING_SECONDS = 0.08;
  private static final double PASSING_SLOTS = 0.4;
  private static final int PASSING_SEMITONES = 2;
  private static final int PASSING_SEMITONES_AGAIN = 4;
  private static final double SAME_ONSET_SECONDS = 0.03;
  private static final double NAMED_BETTER_SECONDS = 0.25;

  private static final int MOST_READINGS = 120;
  private static final double COSTLIEST = 30;

  private final Hypotheses hypotheses;
  private final Compass compass;
  private final FitGate fitGate = new FitGate();
  private final EarErrorModel earErrors;
  private final Relocation relocation;
  private final InterOnsetInterval interOnset;
  private final Slots slots;
  private final double slotSeconds;
  private final double longSlotSeconds;
  private final double shortSlotSeconds;
  private final Beginning listener;
  private final Deque<HeardNote> pending = new ArrayDeque<>();

  private List<Hypothesis> beam = List.of(Hypothesis.start());
  private List<Hypothesis> beamBefore = beam;
  private int pendingBefore;
  private double lastOnset = Double.NaN;
  private double onsetBefore = Double.NaN;
  private NoteVerdict lastInPlace;
  private double nextCheck = Double.POSITIVE_INFINITY;

  /**
   * @param route what is to be played
   * @param pulse the pulse it is to be played to
   * @param compass of the guitar; what it cannot play is not its player's
   * @param firstBeat seconds, if known
   * @param listener told each verdict
   */
  public Follower(
      Route route,
      Pulse pulse,
      Compass compass,
      OptionalDouble firstBeat,
      VerdictListener listener) {
    this.compass = compass;
    this.hypotheses = new Hypotheses(route, pulse, firstBeat);
    this.relocation = new Relocation(route);
    this.slots = pulse.slots();
    this.slotSeconds = pulse.slotSeconds();
    this.longSlotSeconds = 2 * slots.swing() * slotSeconds;
    this.shortSlotSeconds = 2 * (1 - slots.swing()) * slotSeconds;
    this.earErrors = new EarErrorModel(shortSlotSeconds);
    this.interOnset = new InterOnsetInterval(slotSeconds);
    this.listener = new Beginning(Objects.requireNonNull(listener));
  }

  @Override
  public void heard(HeardNote note) {
    boolean playable = compass.has(note.midi());
    if (!playable && Math.abs(note.time() - lastOnset) < SAME_ONSET_SECONDS) {
      return;
    }
    boolean inPlaceOfLast = passedThrough(note);
    if (inPlaceOfLast) {
      pending.removeLast();
      beam = beamBefore;
      lastOnset = onsetBefore;
    }
    EarErrorModel.Doubt doubt = earErrors.heard(note, inPlaceOfLast);
    beamBefore = beam;
    onsetBefore = lastOnset;
    boolean paused =
        Double.isNaN(lastOnset)
            || note.time() - lastOnset > Math.max(PAUSE_SECONDS, PAUSE_SLOTS * slotSeconds);
    List<Hypothesis> next = new ArrayList<>();
    for (Hypothesis r : beam) {
      if (playable) {
        hypotheses.next(r, note, doubt, fitGate.trusted(), interOnset.seconds(), paused, next);
      } else {
        hypotheses.ofNoGuitar(r, note.time(), fitGate.trusted(), interOnset.seconds(), next);
      }
    }
    lastOnset = note.time();
    pendingBefore = pending.size();
    pending.addLast(note);
    beam = prune(next);
    if (playable) {
      relocation.heard(note.midi());
    }
    if (playable && !fitGate.trusted()) {
      relocate(note);
    }
    settle(note.decided());
  }

  /**
   * Whether the last note was only a fret passed on the way to this one, or this one's attack under
   * another name: it is not decided yet, and this one follows without an attack of its own, at once
   * and a fret or two away, or from the same instant.
   */
  private boolean passedThrough(HeardNote note) {
    HeardNote last = pending.peekLast();
    return last != null
        && pendingBefore == pending.size() - 1
        && note.start() != HeardNote.Start.PLUCK
        && (Math.abs(note.time() - last.time()) < SAME_ONSET_SECONDS
            || passed(last, note)
            || namedBetter(last, note));
  }

  /** Whether what was first taken for a low tone turns out to be a harmonic of it. */
  private static boolean namedBetter(HeardNote last, HeardNote note) {
    return note.time() - last.time() < NAMED_BETTER_SECONDS
        && EarErrorModel.isHarmonic(note.midi() - last.midi());
  }

  private boolean passed(HeardNote last, HeardNote note) {
    boolean again = earErrors.isPitchBefore(last);
    return note.time() - last.time() < Math.min(PASSING_SECONDS, PASSING_SLOTS * shortSlotSeconds)
        && Math.abs(note.midi() - last.midi())
            <= (again ? PASSING_SEMITONES_AGAIN : PASSING_SEMITONES);
  }

  @Override
  public void listenedUntil(double seconds) {
    if (seconds >= nextCheck) {
      settle(seconds);
    }
  }

  /**
   * The take is over: what is still open is decided.
   *
   * @param seconds length of the take
   */
  public void finish(double seconds) {
    while (!pending.isEmpty()) {
      commit(seconds);
    }
    listener.finish(seconds);
  }

  private void settle(double now) {
    while (!pending.isEmpty() && ripe(now)) {
      commit(now);
    }
    nextCheck =
        pending.isEmpty() ? Double.POSITIVE_INFINITY : pending.peekFirst().time() + longSlotSeconds;
  }

  /** Whether the oldest open note can be decided now. */
  private boolean ripe(double now) {
    double age = now - pending.peekFirst().time();
    if (age >= longestWait()) {
      return true;
    }
    Hypothesis best = oldest(beam.get(0));
    if (best.verdict == Verdict.RIGHT) {
      return lead(best) >= CLEAR && believed(beam.get(0));
    }
    boolean settled =
        fitGate.trusted() || best.next > 0 || hypotheses.onFirstBeat(pending.peekFirst().time());
    return settled && (lead(best) >= CLEAR || age >= longSlotSeconds && !leavesOpen(best));
  }

  private double longestWait() {
    double wait = Math.max(longSlotSeconds, 2 * slots.swing() * interOnset.seconds());
    int notes = fitGate.longestRow() + (freshStartIsOpen() ? 1 : 0);
    return (LATE_NOTE_SLOTS + notes - 1) * wait + EAR_SECONDS;
  }

  /** Whether it is open if the oldest open note begins another attempt: much hangs on that. */
  private boolean freshStartIsOpen() {
    int attempt = oldest(beam.get(0)).attempt;
    for (Hypothesis r : beam) {
      if (r.cost - beam.get(0).cost >= CLEAR) {
        return false;
      }
      if (oldest(r).attempt != attempt) {
        return true;
      }
    }
    return false;
  }

  /** How much costlier the best hypothesis is that says another thing of the oldest open note. */
  private double lead(Hypothesis best) {
    for (Hypothesis r : beam) {
      if (!oldest(r).saysTheSame(best)) {
        return r.cost - beam.get(0).cost;
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  /**
   * Whether the next note may well make another thing of the oldest open one than wrong or extra,
   * which its time tells apart.
   */
  private boolean leavesOpen(Hypothesis best) {
    if (best.verdict == Verdict.REPEAT) {
      return true;
    }
    for (Hypothesis r : beam) {
      if (r.cost - beam.get(0).cost >= CLEAR) {
        return false;
      }
      Verdict other = oldest(r).verdict;
      if (other == Verdict.RIGHT || other == Verdict.REPEAT) {
        return true;
      }
    }
    return false;
  }

  private Hypothesis oldest(Hypothesis r) {
    return r.back(pending.size() - 1);
  }

  /** Whether the oldest open note, read as right, may be called so. */
  private boolean believed(Hypothesis newest) {
    if (fitGate.trusted()) {
      return true;
    }
    Hypothesis first = oldest(newest);
    if (first.step == 0
        && fitGate.mayLend(0, true)
        && hypotheses.onFirstBeat(pending.peekFirst().time())) {
      return true;
    }
    return row(first) >= rowNeeded(first);
  }

  private int rowNeeded(Hypothesis right) {
    return fitGate.rowNeeded(right.step - right.rightInARow + 1, right.rowAfterSilence);
  }

  /** Right notes in a row around the oldest open one, as the best hypothesis has them. */
  private int row(Hypothesis first) {
    int row = first.rightInARow;
    for (int back = pending.size() - 2; back >= 0; back--) {
      Hypothesis next = beam.get(0).back(back);
      boolean goesOn = next.verdict == Verdict.RIGHT && next.rightInARow == row + 1;
      if (!goesOn && next.verdict != Verdict.EXTRA) {
        break;
      }
      row = next.rightInARow;
    }
    return row;
  }

  private void commit(double now) {
    HeardNote note = pending.peekFirst();
    Hypothesis said = oldest(beam.get(0));
    boolean right = said.verdict == Verdict.RIGHT;
    boolean doubted =
        right && !believed(beam.get(0)) && !fitGate.mayLend(said.step, said.rowAfterSilence);
    int depth = pending.size() - 1;
    boolean proved = right && row(said) >= rowNeeded(said);
    List<Hypothesis> kept = new ArrayList<>(beam.size());
    for (Hypothesis r : beam) {
      Hypothesis at = r.back(depth);
      if (at.saysTheSame(said)) {
        at.before = null;
        kept.add(r);
      }
    }
    beam = kept;
    pending.removeFirst();
    if (said.told != Hypothesis.Told.NOTE) {
      if (said.told == Hypothesis.Told.UNNAMED_STEP) {
        listener.unnamed(said.attempt, said.step);
      }
      return;
    }
    Verdict what = doubted ? Verdict.EXTRA : said.verdict;
    fitGate.given(what, proved);
    NoteVerdict verdict =
        new NoteVerdict(
            note,
            what,
            doubted ? OptionalInt.empty() : said.stepOrNone(),
            said.attempt,
            Math.max(now, note.time()));
    keepTempo(verdict);
    if (what == Verdict.RIGHT) {
      earErrors.right(note);
    }
    listener.decided(verdict);
  }

  private void keepTempo(NoteVerdict verdict) {
    if (!verdict.inPlace()) {
      return;
    }
    if (lastInPlace != null && follows(lastInPlace, verdict)) {
      interOnset.heard(
          (verdict.note().time() - lastInPlace.note().time())
              / slots.gapBefore(verdict.step().getAsInt()));
    }
    lastInPlace = verdict;
  }

  private static boolean follows(NoteVerdict a, NoteVerdict b) {
    return a.attempt() == b.attempt() && a.step().getAsInt() + 1 == b.step().getAsInt();
  }

  /** Finds the player again after having lost him, wherever a long row of notes fits. */
  private void relocate(HeardNote note) {
    Hypothesis best = beam.get(0);
    if (best.rightInARow >= FitGate.ROW_FROM_ANYWHERE) {
      return;
    }
    OptionalInt found = relocation.find(best.onward, fitGate.trustedOnce());
    if (found.isEmpty() || found.getAsInt() < best.onward) {
      return;
    }
    int step = found.getAsInt();
    int attempt = best.attempt;
    while (pending.size() > 1) {
      commit(note.decided());
    }
    Hypothesis there = relocation.standingBefore(step, attempt);
    beam =
        List.of(
            new Hypothesis(
                step + 1, step + 1, attempt, 0, note.time(), Verdict.RIGHT, step, false, there));
  }

  private static List<Hypothesis> prune(List<Hypothesis> all) {
    all.sort(Comparator.comparingDouble(r -> r.cost));
    List<Hypothesis> kept = new ArrayList<>();
    double most = all.get(0).cost + COSTLIEST;
    for (Hypothesis r : all) {
      if (r.cost > most || kept.size() >= MOST_READINGS) {
        break;
      }
      if (kept.stream().noneMatch(r::sameState)) {
        kept.add(r);
      }
    }
    return kept;
  }
}
