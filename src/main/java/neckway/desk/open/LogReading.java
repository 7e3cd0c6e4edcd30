package neckway.desk.open;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import neckway.log.RunLog;
import neckway.neck.BadInput;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.Tuning;
import neckway.practice.Plan;
import neckway.practice.PlanMaker;
import neckway.practice.Reach;

/**
 * What the log said when it was read.
 *
 * @param keys what is open of each key in the log, the most played first; without any, of one that
 *     is begun with
 * @param logged whether anything of these keys was logged
 * @param plan what to play next; empty where the log cannot be read
 * @param complaint what is wrong with the log, in one line; empty where nothing is
 */
public record LogReading(
    List<Reach> keys, boolean logged, Optional<Plan> plan, Optional<String> complaint) {
  /** Where nothing was logged, the key that most players know first (common practice). */
  static final Key FIRST_KEY = Key.parse("A minor");

  /** So long is a sitting (common practice, no source; the plan's usual length). */
  static final int MINUTES = 20;

  public LogReading {
    keys = List.copyOf(keys);
  }

  /** Reads the log of a book; a log that is not there is not made. */
  static LogReading of(RunBook book, Tuning tuning, int frets, LocalDate today) {
    List<String> complaints = new ArrayList<>();
    try {
      List<Reach> keys =
          RunLog.isThere(book.folder())
              ? logged(book, tuning, frets, today, complaints)
              : new ArrayList<>();
      boolean logged = !keys.isEmpty();
      if (!logged) {
        keys.add(
            Reach.of(new Neck(FIRST_KEY, tuning, frets), List.of(), Reach.USUAL_TARGET, today));
      }
      Plan plan = new PlanMaker(keys.get(0)).plan(MINUTES, Optional.empty());
      return new LogReading(keys, logged, Optional.of(plan), complaints.stream().findFirst());
    } catch (BadInput e) {
      return new LogReading(List.of(), false, Optional.empty(), Optional.of(e.getMessage()));
    }
  }

  private static List<Reach> logged(
      RunBook book, Tuning tuning, int frets, LocalDate today, List<String> complaints) {
    List<Reach> keys = new ArrayList<>();
    try (RunLog log = RunLog.open(book.folder(), complaints::add)) {
      for (Key key : log.keys(book.player())) {
        var rounds = log.rounds(key, tuning, book.player());
        if (!rounds.isEmpty()) {
          keys.add(Reach.of(new Neck(key, tuning, frets), rounds, Reach.USUAL_TARGET, today));
        }
      }
    }
    return keys;
  }
}
