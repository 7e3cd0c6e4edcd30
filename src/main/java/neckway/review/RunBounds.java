package neckway.review;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import neckway.follow.NoteVerdict;
import neckway.follow.UnnamedStep;
import neckway.follow.Verdict;

/**
 * Which of the notes told belong to the run: talk, tuning up, noodling and applause before it,
 * after it and between its tries do not. A stray note within the run does.
 *
 * <p>A try is one by {@value #RIGHT_IN_A_ROW} right steps in a row, or by fewer from the bottom on,
 * each steady in pitch, if it was broken off and another one follows. A note that comes within some
 * slots of a step is in the run if its pitch is steady, as a string's is and a voice's is not. Any
 * other lies outside, unless a right step follows at once: then it was decided with that step and
 * no sooner. A stray note far weaker than the run's own is none of it. Where no try can be told,
 * everything is kept.
 */
final class RunBounds {
  /** Steps of neighbouring keys agree by chance for a note or two, in talk too. */
  static final int RIGHT_IN_A_ROW = 4;

  /** A stray note so long after a step may still be a slip of the player's. */
  private static final double AFTER_A_STEP_SLOTS = 4;

  /** After the last step of the route: a stroke too many, no more. */
  private static final double AFTER_THE_END_SLOTS = 1.6;

  /** A stray note so long before a step is a slip on the way to it. */
  private static final double BEFORE_A_STEP_SLOTS = 1.2;

  /** Between two steps so near each other nobody talks: what sounds there is of the run. */
  private static final double PLAYED_ON_SLOTS = 3;

  /** The player may come in so much early on a beat that is given. */
  private static final double EARLY_SLOTS = 0.6;

  /** A try whose last step is no longer ago may be going on. */
  private static final double GOING_ON_SLOTS = 2.5;

  /** Right steps from the bottom on that make a false start of what is broken off. */
  private static final int FALSE_START_ROW = 2;

  /** Of the run's right notes so many are weaker than its soft ones. */
  private static final double SOFT_SHARE = 0.1;

  /**
   * A note so much weaker than the run's soft ones is no stray note of the player's and begins no
   * try. Of 18 takes with a band 30, 20 and 12 dB under the guitar none of the guitar's own stray
   * notes lay 3 dB under its median, and the band's lay 11 dB under it or more.
   */
  private static final double WEAKER_DB = 6;

  /**
   * What belongs to the run.
   *
   * @param notes with the number of their try
   * @param unnamed steps heard and not named
   * @param toldAs the number under which each try was told
   */
  record Inside(List<NoteVerdict> notes, List<UnnamedStep> unnamed, List<Integer> toldAs) {}

  private final int lastStep;
  private final double slotSeconds;
  private final OptionalDouble firstBeat;
  private final double seconds;
  private final IntPredicate steady;

  /**
   * @param steps of the route
   * @param slotSeconds as the player keeps it
   * @param firstBeat when step 0 is due, if that is given
   * @param seconds length of the take
   * @param steady whether the pitch of a note stood still, by the note's index
   */
  RunBounds(
      int steps,
      double slotSeconds,
      OptionalDouble firstBeat,
      double seconds,
      IntPredicate steady) {
    this.lastStep = steps - 1;
    this.slotSeconds = slotSeconds;
    this.firstBeat = firstBeat;
    this.seconds = seconds;
    this.steady = steady;
  }

  Inside of(List<NoteVerdict> verdicts, List<UnnamedStep> unnamed) {
    TreeMap<Integer, List<NoteVerdict>> tries = new TreeMap<>();
    for (NoteVerdict v : verdicts) {
      tries.computeIfAbsent(v.attempt(), n -> new ArrayList<>()).add(v);
    }
    List<Integer> proved = tries.keySet().stream().filter(n -> isTry(tries.get(n))).toList();
    if (proved.isEmpty()) {
      return new Inside(verdicts, unnamed, asTold(tries));
    }
    int last = proved.get(proved.size() - 1);
    double weakest = softDbfs(verdicts, proved) - WEAKER_DB;
    List<Integer> kept =
        tries.keySet().stream()
            .filter(
                n ->
                    proved.contains(n)
                        || n < last && isFalseStart(tries.get(n))
                        || n.equals(tries.lastKey()) && goesOn(tries.get(n), weakest))
            .toList();
    List<NoteVerdict> notes = new ArrayList<>();
    for (int i = 0; i < kept.size(); i++) {
      List<NoteVerdict> played =
          tries.get(kept.get(i)).stream()
              .filter(v -> v.verdict() != Verdict.EXTRA || v.note().levelDbfs() >= weakest)
              .toList();
      for (NoteVerdict v : inside(played, kept.get(i) == 0)) {
        notes.add(new NoteVerdict(v.note(), v.verdict(), v.step(), i, v.decided()));
      }
    }
    List<UnnamedStep> steps =
        unnamed.stream()
            .filter(u -> kept.contains(u.attempt()))
            .map(u -> new UnnamedStep(kept.indexOf(u.attempt()), u.step()))
            .toList();
    return new Inside(notes, steps, kept);
  }

  private static List<Integer> asTold(TreeMap<Integer, ?> tries) {
    return tries.isEmpty()
        ? List.of(0)
        : IntStream.rangeClosed(0, tries.lastKey()).boxed().toList();
  }

  private static boolean isTry(List<NoteVerdict> notes) {
    int row = 0;
    int due = 0;
    for (NoteVerdict v : notes) {
      if (v.verdict() == Verdict.RIGHT) {
        row = v.step().getAsInt() == due ? row + 1 : 1;
      } else if (v.verdict() == Verdict.WRONG) {
        row = 0;
      }
      if (v.inPlace()) {
        due = v.step().getAsInt() + 1;
      }
      if (row >= RIGHT_IN_A_ROW) {
        return true;
      }
    }
    return false;
  }

  private static double softDbfs(List<NoteVerdict> verdicts, List<Integer> proved) {
    double[] levels =
        verdicts.stream()
            .filter(v -> v.verdict() == Verdict.RIGHT && proved.contains(v.attempt()))
            .mapToDouble(v -> v.note().levelDbfs())
            .sorted()
            .toArray();
    return levels[(int) (SOFT_SHARE * levels.length)];
  }

  private boolean isFalseStart(List<NoteVerdict> notes) {
    List<NoteVerdict> inPlace = notes.stream().filter(NoteVerdict::inPlace).toList();
    for (int i = 0; i < FALSE_START_ROW; i++) {
      if (i >= inPlace.size()
          || inPlace.get(i).verdict() != Verdict.RIGHT
          || inPlace.get(i).step().getAsInt() != i) {
        return false;
      }
    }
    return inPlace.stream().allMatch(this::isSteady);
  }

  private boolean goesOn(List<NoteVerdict> notes, double weakestDbfs) {
    return notes.stream()
        .filter(v -> v.inPlace() && isSteady(v) && v.note().levelDbfs() >= weakestDbfs)
        .anyMatch(v -> seconds - v.note().time() <= GOING_ON_SLOTS * slotSeconds);
  }

  private boolean isSteady(NoteVerdict v) {
    return steady.test(v.note().index());
  }

  private List<NoteVerdict> inside(List<NoteVerdict> notes, boolean first) {
    List<NoteVerdict> inside = new ArrayList<>();
    List<NoteVerdict> open = new ArrayList<>();
    double begun =
        first && firstBeat.isPresent()
            ? firstBeat.getAsDouble() - EARLY_SLOTS * slotSeconds
            : Double.POSITIVE_INFINITY;
    double until =
        first && firstBeat.isPresent()
            ? firstBeat.getAsDouble() + AFTER_A_STEP_SLOTS * slotSeconds
            : Double.NEGATIVE_INFINITY;
    double stepBefore = Double.NEGATIVE_INFINITY;
    for (NoteVerdict v : notes) {
      double time = v.note().time();
      boolean within = time >= begun && time <= until;
      if (v.verdict() == Verdict.RIGHT) {
        boolean playedOn = time - stepBefore <= PLAYED_ON_SLOTS * slotSeconds;
        inside.addAll(ledTo(v, open, playedOn ? stepBefore : time));
        open.clear();
        inside.add(v);
      } else if (within && isSteady(v)) {
        inside.add(v);
      } else {
        open.add(v);
      }
      if (v.verdict() == Verdict.RIGHT || within && v.inPlace() && isSteady(v)) {
        stepBefore = time;
        boolean end = v.step().getAsInt() == lastStep;
        begun = Math.min(begun, time);
        until = time + (end ? AFTER_THE_END_SLOTS : AFTER_A_STEP_SLOTS) * slotSeconds;
      }
    }
    return inside;
  }

  /**
   * Those of the open notes that a right step shows to be of the run.
   *
   * @param since from this time on the player was at it
   */
  private List<NoteVerdict> ledTo(NoteVerdict right, List<NoteVerdict> open, double since) {
    double from = since;
    for (NoteVerdict v : open) {
      if (v.inPlace()) {
        from = Math.min(from, v.note().time());
      }
    }
    List<NoteVerdict> kept = new ArrayList<>();
    for (NoteVerdict v : open) {
      if (v.note().time() >= from - BEFORE_A_STEP_SLOTS * slotSeconds) {
        kept.add(
            new NoteVerdict(
                v.note(),
                v.verdict(),
                v.step(),
                v.attempt(),
                Math.max(v.decided(), right.decided())));
      }
    }
    return kept;
  }
}
