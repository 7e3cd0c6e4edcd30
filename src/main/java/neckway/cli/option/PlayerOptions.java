package neckway.cli.option;

import java.util.Random;
import neckway.neck.BadInput;
import neckway.player.settings.Behaviour;
import neckway.player.settings.Guitar;
import neckway.player.settings.PlayerSettings;
import neckway.player.settings.PlayerSettings.Condition;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The virtual player on the command line: drawn by the seed, then changed as told. */
public final class PlayerOptions {
  /** A guitar of a named model is tuned within so many cents. */
  private static final double MODEL_DETUNE_CENTS = 10;

  @Option(
      names = "--condition",
      paramLabel = "NAME",
      description =
          "What sort of player and sound the seed draws: plain (a tidy player on a plain electric"
              + " guitar, nothing drawn), clean, dirty (amp, room, noise, click) or legato. Left"
              + " out: clean. The options below change what was drawn.")
  private String condition = "clean";

  @Option(
      names = "--model",
      paramLabel = "NAME",
      description = "The guitar: electric, humbucker, acoustic or nylon.")
  private Guitar.Model model;

  @Option(
      names = "--guitar-seed",
      paramLabel = "NUMBER",
      description =
          "Draw the guitar by this seed and all else by the other, so that several takes are played"
              + " on one guitar. Left out: the seed draws the guitar too.")
  private Long guitarSeed;

  @Option(
      names = "--detune",
      paramLabel = "CENTS",
      description = "How far the whole guitar is off A4 = 440 Hz, -50 to 50.")
  private Double detune;

  @Option(
      names = "--sample-rate",
      paramLabel = "HZ",
      description = "Sample rate, 8000 to 192000. Left out: 44100 or as drawn.")
  private Integer sampleRate;

  @Option(
      names = "--first-beat",
      paramLabel = "SECONDS",
      description = "The beat of step 0. Left out: a short lead and the count-in.")
  private Double firstBeat;

  @Option(
      names = "--tail",
      paramLabel = "SECONDS",
      description = "How long the take goes on after the last note, 0 to 60.")
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
    throw new BadInput("--condition " + condition + ": give plain, clean, dirty or legato");
  }
}
