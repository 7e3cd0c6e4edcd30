package neckway.cli.option;

import java.util.Random;
import neckway.neck.BadInput;
import neckway.player.settings.Behaviour;
import neckway.player.settings.Guitar;
import neckway.player.settings.PlayerSettings;
import neckway.player.settings.PlayerSettings.Condition;
import neckway.words.Wording;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The virtual player on the command line: drawn by the seed, then changed as told. */
public final class PlayerOptions {
  /** A guitar of a named model is tuned within so many cents. */
  private static final double MODEL_DETUNE_CENTS = 10;

  @Option(names = "--condition", paramLabel = "NAME")
  private String condition = "clean";

  @Option(names = "--model", paramLabel = "NAME")
  private Guitar.Model model;

  @Option(names = "--guitar-seed", paramLabel = "NUMBER")
  private Long guitarSeed;

  @Option(names = "--detune", paramLabel = "CENTS")
  private Double detune;

  @Option(names = "--sample-rate", paramLabel = "HZ")
  private Integer sampleRate;

  @Option(names = "--first-beat", paramLabel = "SECONDS")
  private Double firstBeat;

  @Option(names = "--tail", paramLabel = "SECONDS")
  private Double tail;

  @Mixin private TouchOptions touch = new TouchOptions();
  @Mixin private SoundOptions sound = new SoundOptions();
  @Mixin private BehaviourOptions behaviour = new BehaviourOptions();

  /**
   * The player.
   *
   * @throws BadInput naming the option and the mend
   */
  public PlayerSettings settings(long seed) {
    PlayerSettings settings = drawn(seed);
    long ofGuitar = guitarSeed == null ? seed : guitarSeed;
    if (model != null) {
      settings = settings.withGuitar(model.any(new Random(ofGuitar), MODEL_DETUNE_CENTS));
    } else if (guitarSeed != null) {
      settings = settings.withGuitar(drawn(ofGuitar).guitar());
    }
    if (detune != null) {
      double cents = Ranges.within("--detune", detune, -50, 50);
      settings = settings.withGuitar(settings.guitar().withDetuneCents(cents));
    }
    if (sampleRate != null) {
      Ranges.within("--sample-rate", sampleRate, 8_000, 192_000);
      settings = settings.withSampleRate(sampleRate);
    }
    if (firstBeat != null) {
      settings = settings.withFirstBeat(Ranges.within("--first-beat", firstBeat, 0, 600));
    }
    if (tail != null) {
      settings = settings.withTailSeconds(Ranges.within("--tail", tail, 0, 60));
    }
    Behaviour told = behaviour.behaviour();
    return settings
        .withHabits(touch.changed(settings.habits()))
        .withSurroundings(sound.changed(settings.surroundings()))
        .withBehaviour(told);
  }

  private PlayerSettings drawn(long seed) {
    if (condition.equals("plain")) {
      return PlayerSettings.plain();
    }
    for (Condition known : Condition.values()) {
      if (known.name().equalsIgnoreCase(condition)) {
        return PlayerSettings.random(seed, known);
      }
    }
    throw new BadInput(
        Wording.of(
            "options.choice",
            "--condition",
            condition,
            Wording.of("options.either", "plain, clean, dirty", "legato")));
  }
}
