package neckway.log;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import neckway.drill.PlayableDrill;
import neckway.practice.Exercise;
import neckway.practice.PlayedRound;
import neckway.practice.Progress;
import neckway.practice.Reach;
import neckway.practice.State;

/** How far the joins of a drill's key are, from the log. */
public final class JoinsPlayed {
  private JoinsPlayed() {}

  /**
   * Of a player; a join that is not in it is new.
   *
   * @param folder where the log lies; one that is not there is not made
   * @param complaints told in one line where the log was damaged
   * @throws neckway.neck.BadInput where it cannot be read
   */
  public static Map<Exercise, State> states(
      Path folder,
      PlayableDrill drill,
      Optional<String> player,
      LocalDate today,
      Consumer<String> complaints) {
    if (!RunLog.isThere(folder)) {
      return Map.of();
    }
    try (RunLog log = RunLog.open(folder, complaints)) {
      List<PlayedRound> rounds = log.rounds(drill.key(), drill.tuning(), player);
      return Reach.of(drill.neck(), rounds, Reach.USUAL_TARGET, today).joins().stream()
          .collect(Collectors.toMap(Progress::exercise, Progress::state, (a, b) -> a));
    }
  }
}
