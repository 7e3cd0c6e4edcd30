package neckway.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import neckway.bench.RandomDrills.Drill;
import neckway.follow.Pulse;
import neckway.neck.Route;
import neckway.player.Behaviour;
import neckway.player.Performance;
import neckway.player.PlayedNote;
import neckway.player.PlayerSettings;
import neckway.player.PlayerSettings.Condition;
import neckway.player.VirtualPlayer;

/** Takes of the virtual player, everything varied by seed: key, shapes, tempo, player, sound. */
public final class VirtualTakes {
  /** Seeds below this are for development, from here on for the published table. */
  public static final long FIRST_HELD_OUT_SEED = 1_000_000;

  private VirtualTakes() {}

  /**
   * A take with what was to be played and what was.
   *
   * @param take the sound and its notes
   * @param route what was to be played
   * @param pulse when
   * @param performance what was played
   */
  public record VirtualTake(Take take, Route route, Pulse pulse, Performance performance) {}

  /** A run with up to four slips. */
  public static VirtualTake take(long seed, Condition condition) {
    Random random = random(seed, condition);
    return take(seed, condition, Behaviour.withMistakes(random.nextInt(5)));
  }

  /** A run played by a player who behaves as told. */
  public static VirtualTake take(long seed, Condition condition, Behaviour behaviour) {
    Random random = random(seed, condition);
    random.nextInt();
    Drill drill = new RandomDrills(random).any();
    PlayerSettings settings = PlayerSettings.random(seed, condition).withBehaviour(behaviour);
    return play(seed, condition.toString(), settings, drill.route(), drill.pulse());
  }

  static VirtualTake play(
      long seed, String name, PlayerSettings settings, Route route, Pulse pulse) {
    Performance p = new VirtualPlayer(settings).play(route, pulse, List.of(), seed);
    Take take =
        new Take(
            String.format(
                "%s seed %d gap %.2f %s %s",
                name, seed, pulse.gapSeconds(), settings, p.mistakes()),
            p.sampleRate(),
            p.samples(),
            notes(p),
            settings.guitar().detuneCents(),
            OptionalDouble.of(p.firstBeat()),
            pulse.beatSeconds());
    return new VirtualTake(take, route, pulse, p);
  }

  private static List<TrueNote> notes(Performance performance) {
    List<TrueNote> notes = new ArrayList<>();
    for (PlayedNote n : performance.notes()) {
      notes.add(
          new TrueNote(
              n.time(),
              n.midi(),
              n.place().string().number(),
              n.place().fret(),
              String.format(
                  "%s %s velocity %.2f%s",
                  n.how(),
                  n.kind(),
                  n.velocity(),
                  n.slideFrom().isPresent() ? " slid from " + n.slideFrom().getAsInt() : "")));
    }
    return notes;
  }

  private static Random random(long seed, Condition condition) {
    return new Random(seed * 1_000_003 + condition.ordinal());
  }
}
