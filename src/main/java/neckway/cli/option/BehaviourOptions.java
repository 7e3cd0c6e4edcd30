package neckway.cli.option;

import java.util.Optional;
import java.util.OptionalInt;
import neckway.neck.BadInput;
import neckway.player.settings.Behaviour;
import neckway.words.Wording;
import picocli.CommandLine.Option;

/** What the virtual player does with the route as a whole. */
final class BehaviourOptions {
  @Option(names = "--random-mistakes", paramLabel = "COUNT")
  private int randomMistakes;

  @Option(names = "--crowded")
  private boolean crowded;

  @Option(names = "--stop-after", paramLabel = "STEP")
  private Integer stopAfter;

  @Option(names = "--again-after", paramLabel = "STEP")
  private Integer againAfter;

  @Option(names = "--pause", paramLabel = "SLOTS")
  private int pause = 8;

  @Option(names = "--late-slots", paramLabel = "SLOTS")
  private int lateSlots;

  @Option(names = "--transpose", paramLabel = "SEMITONES")
  private int transpose;

  @Option(names = "--stranger", paramLabel = "NAME")
  private Behaviour.Stranger stranger;

  Behaviour behaviour() {
    Ranges.within("--random-mistakes", randomMistakes, 0, 50);
    Ranges.within("--pause", pause, 0, 100);
    Ranges.within("--late-slots", lateSlots, 0, 64);
    Ranges.within("--transpose", transpose, 0, 12);
    return new Behaviour(
        step("--stop-after", stopAfter),
        step("--again-after", againAfter),
        pause,
        lateSlots,
        transpose,
        randomMistakes,
        crowded,
        Optional.ofNullable(stranger));
  }

  private static OptionalInt step(String option, Integer given) {
    if (given != null && given < 0) {
      throw new BadInput(Wording.of("options.step", option, given));
    }
    return given == null ? OptionalInt.empty() : OptionalInt.of(given);
  }
}
