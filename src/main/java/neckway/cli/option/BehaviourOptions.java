package neckway.cli.option;

import java.util.Optional;
import java.util.OptionalInt;
import neckway.neck.BadInput;
import neckway.player.settings.Behaviour;
import picocli.CommandLine.Option;

/** What the virtual player does with the route as a whole. */
final class BehaviourOptions {
  @Option(
      names = "--random-mistakes",
      paramLabel = "COUNT",
      description = "Mistakes drawn by the seed, besides those listed, 0 to 50.")
  private int randomMistakes;

  @Option(names = "--crowded", description = "Draw two slips within two steps.")
  private boolean crowded;

  @Option(names = "--stop-after", paramLabel = "STEP", description = "Stop after this step.")
  private Integer stopAfter;

  @Option(
      names = "--again-after",
      paramLabel = "STEP",
      description = "Break off after this step and begin again from the bottom.")
  private Integer againAfter;

  @Option(
      names = "--pause",
      paramLabel = "SLOTS",
      description = "Empty slots before beginning again, 0 to 100. Left out: 8.")
  private int pause = 8;

  @Option(
      names = "--late-slots",
      paramLabel = "SLOTS",
      description = "The whole take so many slots after the click, 0 to 64.")
  private int lateSlots;

  @Option(
      names = "--transpose",
      paramLabel = "SEMITONES",
      description = "The whole run played so many frets up, 0 to 12.")
  private int transpose;

  @Option(
      names = "--stranger",
      paramLabel = "NAME",
      description = "Play something else: random (notes of the neck) or silent.")
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
      throw new BadInput(option + " " + given + ": steps count from 0");
    }
    return given == null ? OptionalInt.empty() : OptionalInt.of(given);
  }
}
