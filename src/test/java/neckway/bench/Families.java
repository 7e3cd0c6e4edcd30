package neckway.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.function.UnaryOperator;
import neckway.player.settings.Behaviour;
import neckway.player.settings.Behaviours;
import neckway.player.settings.Guitar;
import neckway.player.settings.PlayerSettings;
import neckway.player.settings.PlayerSettings.Condition;
import neckway.player.surroundings.Surroundings;

/** The families of takes that the benchmark is made of, each by count and first seed. */
final class Families {
  private Families() {}

  /** Takes that are made when they are needed. */
  interface Makers {
    PlayedTake make(long seed) throws Exception;
  }

  /** As many takes, with seeds in a row. */
  static List<Callable<PlayedTake>> list(int n, long firstSeed, Makers makers) {
    List<Callable<PlayedTake>> list = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      long seed = firstSeed + i;
      list.add(() -> makers.make(seed));
    }
    return list;
  }

  static List<Callable<PlayedTake>> virtual(
      Population population, int n, long firstSeed, Condition condition) {
    return list(n, firstSeed, seed -> VirtualTakes.take(population, seed, condition));
  }

  /** On tunings that go below E2. */
  static List<Callable<PlayedTake>> low(
      Population population, int n, long firstSeed, Condition condition) {
    return list(n, firstSeed, seed -> VirtualTakes.low(population, seed, condition));
  }

  /** Two slips within two steps. */
  static List<Callable<PlayedTake>> crowded(Population population, int n, long firstSeed) {
    return list(
        n,
        firstSeed,
        seed -> VirtualTakes.take(population, seed, Condition.CLEAN, Behaviours.crowded(), s -> s));
  }

  /** No slips, so that the grid is what is measured; a click leaks in or none is heard. */
  static List<Callable<PlayedTake>> noFirstBeat(
      Population population, int n, long firstSeed, boolean click) {
    return list(
        n,
        firstSeed,
        seed ->
            VirtualTakes.take(
                population,
                seed,
                Condition.CLEAN,
                Behaviour.whole(),
                s -> s.withSurroundings(withClick(s.surroundings(), click))));
  }

  private static Surroundings withClick(Surroundings s, boolean click) {
    return new Surroundings(
        s.amp(),
        s.roomWet(),
        s.roomSeconds(),
        s.hissUnderDb(),
        s.humUnderDb(),
        s.humHz(),
        click ? OptionalDouble.of(18) : OptionalDouble.empty(),
        s.clickSound(),
        s.levelDbfs(),
        s.dcOffset(),
        s.phone());
  }

  /** The whole run a semitone up. */
  static List<Callable<PlayedTake>> semitoneUp(int n, long firstSeed) {
    return list(
        n,
        firstSeed,
        seed ->
            VirtualTakes.take(
                Population.HARD, seed, Condition.CLEAN, Behaviours.transposed(1), s -> s));
  }

  static List<Callable<PlayedTake>> randomNotes(int n, long firstSeed) {
    Behaviour random = Behaviours.strange(Behaviour.Stranger.RANDOM);
    return list(
        n,
        firstSeed,
        seed -> VirtualTakes.take(Population.HARD, seed, Condition.CLEAN, random, s -> s));
  }

  static List<Callable<PlayedTake>> speechLike(int n, long firstSeed) {
    return list(
        n, firstSeed, seed -> Strangers.speechLike(VirtualTakes.take(seed, Condition.CLEAN), seed));
  }

  static List<Callable<PlayedTake>> noise(int n, long firstSeed) {
    return list(
        n, firstSeed, seed -> Strangers.noise(VirtualTakes.take(seed, Condition.CLEAN), seed));
  }

  /** Clean takes with one thing set. */
  static List<Callable<PlayedTake>> clean(
      int n, long firstSeed, UnaryOperator<PlayerSettings> change) {
    return list(
        n,
        firstSeed,
        seed ->
            VirtualTakes.take(Population.HARD, seed, Condition.CLEAN, Behaviour.whole(), change));
  }

  static UnaryOperator<PlayerSettings> sampleRate(int hz) {
    return s -> s.withSampleRate(hz);
  }

  static UnaryOperator<PlayerSettings> detune(double cents) {
    return s -> {
      Guitar g = s.guitar();
      return s.withGuitar(g.withDetuneCents(cents));
    };
  }

  static UnaryOperator<PlayerSettings> peak(double dbfs) {
    return p -> {
      Surroundings s = p.surroundings();
      return p.withSurroundings(
          new Surroundings(
              s.amp(),
              s.roomWet(),
              s.roomSeconds(),
              s.hissUnderDb(),
              s.humUnderDb(),
              s.humHz(),
              s.clickUnderDb(),
              s.clickSound(),
              dbfs,
              s.dcOffset(),
              s.phone()));
    };
  }

  /** Hard runs stitched from one guitar's recorded notes. */
  static List<Callable<PlayedTake>> stitched(
      RecordedNotes recorded, String guitar, int n, long firstSeed, boolean dirty) {
    StitchedTakes takes = new StitchedTakes(recorded);
    return list(n, firstSeed, seed -> takes.take(guitar, seed, dirty));
  }

  /** Ordinary runs stitched from one guitar's recorded notes. */
  static List<Callable<PlayedTake>> stitchedOrdinary(
      RecordedNotes recorded, String guitar, int n, long firstSeed) {
    StitchedTakes takes = new StitchedTakes(recorded);
    return list(n, firstSeed, seed -> takes.ordinary(guitar, seed));
  }

  static List<Callable<PlayedTake>> synthesizer(JdkSynthTakes bank, int n, long firstSeed) {
    return list(n, firstSeed, bank::take);
  }
}
