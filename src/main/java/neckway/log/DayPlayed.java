package neckway.log;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import neckway.practice.WarmUp;

/** How much was played on a day, from the log. */
public final class DayPlayed {
  /** Enough to reach back beyond a long day of short runs. */
  private static final int RUNS = 1_000;

  private DayPlayed() {}

  /**
   * Of a player.
   *
   * @param today runs after it are left out
   */
  public static WarmUp.Day of(RunLog log, LocalDate today, Optional<String> player) {
    List<RunLog.Listed> runs =
        log.list(new RunLog.Wanted(Optional.empty(), player), RUNS).stream()
            .filter(run -> !run.said().key().isEmpty())
            .filter(run -> !run.when().toLocalDate().isAfter(today))
            .toList();
    double minutes =
        runs.stream()
            .filter(run -> run.when().toLocalDate().equals(today))
            .mapToDouble(run -> minutes(run.said()))
            .sum();
    Optional<LocalDate> before =
        runs.stream()
            .map(run -> run.when().toLocalDate())
            .filter(day -> day.isBefore(today))
            .findFirst();
    return new WarmUp.Day(before, minutes);
  }

  private static double minutes(RunSummary said) {
    double notesAMinute = said.tempo() * said.notesPerBeat();
    return notesAMinute > 0 ? said.summary().notes() / notesAMinute : 0;
  }
}
