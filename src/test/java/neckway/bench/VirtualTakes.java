package neckway.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import neckway.drill.PlayableDrill;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.Mistake;
import neckway.player.plan.PlayedNote;
import neckway.player.settings.Behaviour;
import neckway.player.settings.Behaviours;
import neckway.player.settings.PlayerSettings;
import neckway.player.settings.PlayerSettings.Condition;

/** Takes of the virtual player, everything varied by seed: key, shapes, tempo, player, sound. */
public final class VirtualTakes {
  /** Seeds below this are for development, from here on for the published table. */
  public static final long FIRST_HELD_OUT_SEED = 1_000_000;

  private VirtualTakes() {}

  /** A hard run with some slips. */
  public static PlayedTake take(long seed, Condition condition) {
    return take(Population.HARD, seed, condition);
  }

  /** A run with some slips. */
  public static PlayedTake take(Population population, long seed, Condition condition) {
    int slips = population.slips(population.random(seed, condition));
    return take(population, seed, condition, Behaviours.withMistakes(slips), s -> s);
  }

  /** A run played by a player who behaves as told, the settings changed at will. */
  public static PlayedTake take(
      Population population,
      long seed,
      Condition condition,
      Behaviour behaviour,
      UnaryOperator<PlayerSettings> change) {
    Random random = population.random(seed, condition);
    random.nextInt();
    return play(population, seed, condition, population.drill(random), behaviour, change);
  }

  /** A run on a guitar that goes below E2, with some slips. */
  static PlayedTake low(Population population, long seed, Condition condition) {
    Random random = population.random(seed, condition);
    int slips = population.slips(random);
    PlayableDrill drill = new RandomDrills(random).low();
    return play(population, seed, condition, drill, Behaviours.withMistakes(slips), s -> s);
  }

  private static PlayedTake play(
      Population population,
      long seed,
      Condition condition,
      PlayableDrill drill,
      Behaviour behaviour,
      UnaryOperator<PlayerSettings> change) {
    PlayerSettings settings =
        change.apply(population.settings(seed, condition).withBehaviour(behaviour));
    return play(seed, population.word(condition), settings, drill);
  }

  static PlayedTake play(long seed, String name, PlayerSettings settings, PlayableDrill drill) {
    Performance p = new VirtualPlayer(settings).play(drill.route(), drill.pulse(), List.of(), seed);
    return of(seed, name, settings, drill, p);
  }

  static PlayedTake of(
      long seed, String name, PlayerSettings settings, PlayableDrill drill, Performance p) {
    Take take =
        new Take(
            String.format(
                "%s seed %d gap %.2f %s %s",
                name, seed, drill.pulse().slotSeconds(), settings, p.mistakes()),
            p.sampleRate(),
            p.samples(),
            p.notes().stream().map(VirtualTakes::note).toList(),
            settings.guitar().detuneCents(),
            OptionalDouble.of(p.firstBeat()),
            drill.pulse().beatSeconds());
    return new PlayedTake(take, drill, p.firstBeat(), mistakes(p));
  }

  private static TrueNote note(PlayedNote n) {
    String from = n.slideFrom().isPresent() ? " slid from " + n.slideFrom().getAsInt() : "";
    return new TrueNote(
        n.time(),
        n.midi(),
        n.place().string().number(),
        n.place().fret(),
        n.kind(),
        n.step(),
        String.format("%s %s velocity %.2f%s", n.how(), n.kind(), n.velocity(), from));
  }

  private static Map<String, List<Integer>> mistakes(Performance p) {
    Map<String, List<Integer>> mistakes = new TreeMap<>();
    for (Mistake mistake : p.mistakes()) {
      if (mistake instanceof Mistake.Slip slip && slip.kind() != Mistake.Kind.SKIP) {
        mistakes
            .computeIfAbsent(slip.kind().name().toLowerCase(Locale.ROOT), k -> new ArrayList<>())
            .add(slip.step());
      }
    }
    if (!p.skipped().isEmpty()) {
      mistakes.put("skipped", p.skipped());
    }
    return mistakes;
  }
}
