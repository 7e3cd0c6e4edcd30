package neckway.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import neckway.calibration.Calibration;
import neckway.calibration.Plucks;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.neck.BadInput;
import neckway.neck.Direction;
import neckway.neck.GuitarString;
import neckway.neck.Tuning;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.Mistake;
import neckway.player.settings.Behaviour;
import neckway.player.settings.Behaviours;
import neckway.player.settings.Guitar;
import neckway.player.settings.PlayerSettings;
import neckway.player.settings.PlayerSettings.Condition;
import neckway.string.GuitarProfile;

/** Takes in each of which one thing happens that a review has to say. */
final class SaidTakes {
  private static final List<Integer> FRETS = List.of(0, 3, 7, 12);
  private static final int MOST_TRIES = 200;

  /** What happens in a take. */
  enum Story {
    EVERYTHING_RIGHT,
    SLIPS,
    /** A slip within three notes of a shift, the guitar known. */
    SLIP_NEAR_A_SHIFT,
    /** The hand never goes up, the guitar known. */
    SHIFT_UP_MISSED,
    /** The hand goes up elsewhere, the guitar known. */
    SHIFT_MOVED,
    /** The hand stays above on the way down, the guitar known. */
    SHIFT_DOWN_MISSED,
    /** Only the top note is left out. */
    TOP_LEFT_OUT,
    /** Broken off somewhere and begun again from the bottom, at once or after a pause. */
    BEGUN_AGAIN,
    /** The whole run twice. */
    TWO_TRIES,
    STOPPED_EARLY,
    /** At another tempo than the drill's, which nothing gives away but the notes. */
    OTHER_TEMPO,
    /** More rounds than the drill has. */
    MORE_ROUNDS
  }

  /**
   * A take.
   *
   * @param story what happens in it
   * @param drill what it is held against
   * @param played what was played, with its truth
   * @param guitar the guitar as learnt, where it was
   * @param firstBeat where it is given
   * @param name to make it again by
   */
  record SaidTake(
      Story story,
      PlayableDrill drill,
      Performance played,
      Optional<GuitarProfile> guitar,
      OptionalDouble firstBeat,
      String name) {}

  private SaidTakes() {}

  /** The take of a seed; its story is by turns. */
  static SaidTake take(long seed) {
    Story story = Story.values()[(int) (seed % Story.values().length)];
    Random random = new Random(seed * 6364136223846793005L + 1442695040888963407L);
    for (int tries = 0; tries < MOST_TRIES; tries++) {
      try {
        return take(story, seed, random);
      } catch (BadInput doesNotFit) {
        // that story cannot be played on the drill drawn: draw another one
      }
    }
    throw new IllegalStateException("no drill for " + story + ", seed " + seed);
  }

  private static SaidTake take(Story story, long seed, Random random) {
    Condition[] conditions = {Condition.CLEAN, Condition.CLEAN, Condition.DIRTY};
    PlayerSettings settings =
        OrdinaryDraw.settings(seed, conditions[random.nextInt(conditions.length)]);
    boolean known =
        story == Story.SLIP_NEAR_A_SHIFT
            || story == Story.SHIFT_UP_MISSED
            || story == Story.SHIFT_MOVED
            || story == Story.SHIFT_DOWN_MISSED;
    PlayableDrill drill =
        known
            ? new RandomDrills(random).on(Tuning.STANDARD, 2, 0, 21, 0.26, 0.47)
            : new RandomDrills(random).ordinary();
    if (story == Story.MORE_ROUNDS || story == Story.TWO_TRIES) {
      drill = drill.once();
    }
    Optional<GuitarProfile> guitar = Optional.empty();
    if (known) {
      settings =
          OrdinaryDraw.settings(seed, Condition.CLEAN)
              .withGuitar(Guitar.Model.ELECTRIC.any(random, 8));
      guitar = learnt(settings, seed + 77);
    }
    PlayableDrill played = played(story, drill, random);
    settings = settings.withBehaviour(behaviour(story, drill, random));
    Performance take =
        new VirtualPlayer(settings)
            .play(played.route(), played.pulse(), mistakes(story, played, random), seed);
    boolean beatGiven =
        story != Story.OTHER_TEMPO && story != Story.MORE_ROUNDS && random.nextBoolean();
    return new SaidTake(
        story,
        drill,
        take,
        guitar,
        beatGiven ? OptionalDouble.of(take.firstBeat()) : OptionalDouble.empty(),
        story + " seed " + seed + " " + drill.title() + " " + take.mistakes());
  }

  private static Optional<GuitarProfile> learnt(PlayerSettings settings, long seed) {
    Performance sequence = new VirtualPlayer(settings).calibration(Tuning.STANDARD, FRETS, seed);
    Plucks plucks = new Plucks(sequence.sampleRate());
    plucks.feed(sequence.samples(), 0, sequence.samples().length);
    return Optional.of(new Calibration(Tuning.STANDARD, FRETS).learn(plucks.finish()).profile());
  }

  private static PlayableDrill played(Story story, PlayableDrill drill, Random random) {
    return switch (story) {
      case OTHER_TEMPO -> {
        Pulse asked = drill.pulse();
        double ratio =
            random.nextBoolean()
                ? 0.5 + 0.35 * random.nextDouble()
                : 1.2 + 0.8 * random.nextDouble();
        yield drill
            .drill()
            .withPulse(
                new Pulse(
                    asked.tempo() * ratio,
                    asked.notesPerBeat(),
                    asked.beatsPerBar(),
                    asked.countIn()))
            .playable();
      }
      case MORE_ROUNDS -> drill.drill().withRounds(2 + random.nextInt(3)).playable();
      case EVERYTHING_RIGHT,
          SLIPS,
          SLIP_NEAR_A_SHIFT,
          SHIFT_UP_MISSED,
          SHIFT_MOVED,
          SHIFT_DOWN_MISSED,
          TOP_LEFT_OUT,
          BEGUN_AGAIN,
          TWO_TRIES,
          STOPPED_EARLY ->
          drill;
    };
  }

  private static Behaviour behaviour(Story story, PlayableDrill drill, Random random) {
    int last = drill.route().steps().size() - 1;
    return switch (story) {
      case SLIPS -> Behaviours.withMistakes(1 + random.nextInt(3));
      case BEGUN_AGAIN -> Behaviours.again(4 + random.nextInt(last - 5), random.nextInt(9));
      case TWO_TRIES -> Behaviours.again(last, 2 + random.nextInt(6));
      case STOPPED_EARLY -> Behaviours.stop(5 + random.nextInt(last - 6));
      case EVERYTHING_RIGHT,
          SLIP_NEAR_A_SHIFT,
          SHIFT_UP_MISSED,
          SHIFT_MOVED,
          SHIFT_DOWN_MISSED,
          TOP_LEFT_OUT,
          OTHER_TEMPO,
          MORE_ROUNDS ->
          Behaviour.whole();
    };
  }

  private static List<Mistake> mistakes(Story story, PlayableDrill drill, Random random) {
    List<Mistake> mistakes = new ArrayList<>();
    switch (story) {
      case SLIP_NEAR_A_SHIFT -> {
        int landing = drill.route().shifts().get(random.nextInt(2)).landingStep();
        int last = drill.route().steps().size() - 1;
        int step = Math.max(1, Math.min(last, landing + random.nextInt(7) - 3));
        Mistake.Kind[] kinds = {Mistake.Kind.WRONG, Mistake.Kind.REPEAT, Mistake.Kind.EXTRA};
        mistakes.add(new Mistake.Slip(kinds[random.nextInt(3)], step, OptionalInt.empty()));
      }
      case SHIFT_UP_MISSED -> mistakes.add(shift(drill, random, Direction.UP, Optional.empty()));
      case SHIFT_DOWN_MISSED ->
          mistakes.add(shift(drill, random, Direction.DOWN, Optional.empty()));
      case SHIFT_MOVED -> {
        int planned = drill.route().shifts().get(0).string().number();
        int other = 1 + (planned + random.nextInt(5)) % 6;
        mistakes.add(shift(drill, random, Direction.UP, Optional.of(new GuitarString(other))));
      }
      case TOP_LEFT_OUT ->
          mistakes.add(
              new Mistake.Slip(
                  Mistake.Kind.SKIP, (drill.route().stepsPerRound() - 1) / 2, OptionalInt.empty()));
      case EVERYTHING_RIGHT,
          SLIPS,
          BEGUN_AGAIN,
          TWO_TRIES,
          STOPPED_EARLY,
          OTHER_TEMPO,
          MORE_ROUNDS -> {
        // nothing that is listed
      }
    }
    return mistakes;
  }

  static Mistake shift(
      PlayableDrill drill, Random random, Direction way, Optional<GuitarString> string) {
    // before the last round a hand that stayed above comes down for the bottom note all the same
    int round = way == Direction.DOWN ? drill.rounds() - 1 : random.nextInt(drill.rounds());
    return new Mistake.ShiftElsewhere(round, way, OptionalInt.empty(), string);
  }
}
