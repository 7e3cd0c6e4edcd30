package neckway.cli.option;

import java.time.LocalDate;
import java.util.Map;
import java.util.Random;
import java.util.function.Consumer;
import neckway.calls.Caller;
import neckway.drill.PlayableDrill;
import neckway.live.LiveSetup.CallTones;
import neckway.log.JoinsPlayed;
import neckway.neck.BadInput;
import neckway.practice.Exercise;
import neckway.practice.State;
import neckway.words.Wording;
import picocli.CommandLine.Option;

/** Switches that are called as one plays. */
public final class CallsOptions {
  /** Seeds that are left to chance are short enough to be typed again. */
  private static final int SHORT_SEEDS = 10_000;

  @Option(names = "--calls")
  private boolean asked;

  @Option(names = "--seed", paramLabel = "N")
  private Long seed;

  @Option(names = "--no-tone")
  private boolean silent;

  @Option(names = "--spoken")
  private boolean spoken;

  /** Whether switches are called. */
  public boolean isAsked() {
    return asked;
  }

  /** How calls sound. */
  public CallTones heard() {
    if (silent) {
      return CallTones.SILENT;
    }
    return spoken ? CallTones.SPOKEN : CallTones.SOUNDING;
  }

  /**
   * Complains of what cannot go together.
   *
   * @param firstNote whether the first note is to be the first beat
   * @param backing whether a backing plays
   * @throws BadInput naming the option and the mend
   */
  public void check(boolean firstNote, boolean backing) {
    if (!asked && (seed != null || silent || spoken)) {
      String given = silent ? "--no-tone" : spoken ? "--spoken" : "--seed";
      throw new BadInput(Wording.of("options.calls.needed", given));
    }
    if (silent && spoken) {
      throw new BadInput(Wording.of("options.together", "--spoken", "--no-tone"));
    }
    if (asked && firstNote) {
      throw new BadInput(Wording.of("options.calls.firstNote"));
    }
    if (asked && backing) {
      throw new BadInput(Wording.of("options.calls.backing"));
    }
  }

  /**
   * What will be called.
   *
   * @param complaints told in one line where the log was damaged
   * @throws BadInput where nothing can be called in this drill
   */
  public Caller caller(PlayableDrill drill, DataOption data, Consumer<String> complaints) {
    if (drill.rounds() > 1) {
      throw new BadInput(Wording.of("options.calls.rounds"));
    }
    Map<Exercise, State> known =
        JoinsPlayed.states(data.folder(), drill, data.player(), LocalDate.now(), complaints);
    Caller caller = new Caller(drill, exercise -> known.getOrDefault(exercise, State.NEW), seed());
    caller.growTo(Caller.LONGEST_SECONDS);
    if (caller.calls().isEmpty()) {
      throw new BadInput(Wording.of("options.calls.longBar"));
    }
    return caller;
  }

  /** The number that the calls are drawn by. */
  public long seed() {
    if (seed == null) {
      seed = (long) new Random().nextInt(SHORT_SEEDS);
    }
    return seed;
  }
}
