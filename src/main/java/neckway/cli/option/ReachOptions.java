package neckway.cli.option;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import neckway.drill.Pulse;
import neckway.log.DayPlayed;
import neckway.log.RunLog;
import neckway.neck.Key;
import neckway.neck.Neck;
import neckway.neck.Tuning;
import neckway.practice.PlayedRound;
import neckway.practice.Reach;
import neckway.practice.WarmUp;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What is open, on the command line: whose runs, of which guitar, by when and towards what. */
public final class ReachOptions {
  @Mixin private DataOption data = new DataOption();
  @Mixin private TuningOption tuningOption = new TuningOption();
  @Mixin private DayOption day = new DayOption();

  @Option(names = "--target", paramLabel = "TEMPO")
  private double target = Reach.USUAL_TARGET;

  /**
   * What is open of some keys. A log that is not there is not made.
   *
   * @param chosen which keys, given those in the log, most played first
   * @param complaints told in one line where the log was damaged
   * @throws neckway.neck.BadInput naming the option and the mend
   */
  public List<Reach> of(Function<List<Key>, List<Key>> chosen, Consumer<String> complaints) {
    Ranges.within("--target", target, Pulse.SLOWEST, Pulse.FASTEST);
    LocalDate today = day.day();
    Tuning tuning = tuningOption.tuning();
    if (!RunLog.isThere(data.folder())) {
      return chosen.apply(List.of()).stream()
          .map(key -> reach(key, tuning, List.of(), today))
          .toList();
    }
    try (RunLog log = data.open(complaints)) {
      Optional<String> player = data.player();
      return chosen.apply(log.keys(player)).stream()
          .map(key -> reach(key, tuning, log.rounds(key, tuning, player), today))
          .toList();
    }
  }

  /** What was played today and before it; nothing where no log is there. */
  public WarmUp.Day played(Consumer<String> complaints) {
    if (!RunLog.isThere(data.folder())) {
      return new WarmUp.Day(Optional.empty(), 0);
    }
    try (RunLog log = data.open(complaints)) {
      return DayPlayed.of(log, day.day(), data.player());
    }
  }

  /** Where the log lies, and whose it is. */
  public DataOption data() {
    return data;
  }

  private Reach reach(Key key, Tuning tuning, List<PlayedRound> rounds, LocalDate today) {
    return Reach.of(new Neck(key, tuning, Neck.USUAL_FRETS), rounds, target, today);
  }
}
