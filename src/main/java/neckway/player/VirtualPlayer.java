package neckway.player;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import neckway.drill.Pulse;
import neckway.neck.Route;
import neckway.neck.Tuning;
import neckway.player.plan.CalibrationSequence;
import neckway.player.plan.Mistake;
import neckway.player.plan.Plan;
import neckway.player.plan.Planner;
import neckway.player.plan.PlayedNote;
import neckway.player.settings.PlayerSettings;
import neckway.player.voice.GuitarSound;

/**
 * Plays routes as a guitarist might, mistakes and all, and knows exactly what it played. The same
 * settings, route, mistakes and seed give the same samples.
 */
public final class VirtualPlayer {
  private final PlayerSettings settings;

  public VirtualPlayer(PlayerSettings settings) {
    this.settings = settings;
  }

  /**
   * Plays a route once through, all its rounds.
   *
   * @param route what to play
   * @param pulse when
   * @param mistakes what to do otherwise; further ones may be drawn by chance, if the settings ask
   * @param seed varies everything that the settings leave to chance
   * @throws neckway.neck.BadInput if a mistake does not fit the route
   */
  public Performance play(Route route, Pulse pulse, List<Mistake> mistakes, long seed) {
    Random chance = new Random(seed * 0x5DEECE66DL + 11);
    Plan plan = new Planner(settings, route, pulse, mistakes, new Random(chance.nextLong())).plan();
    return render(plan, Optional.of(pulse), chance);
  }

  /**
   * Plays the calibration sequence: string by string from the lowest, on each the frets in order,
   * one pluck each, left to ring, a second apart. Nothing clicks.
   *
   * @param tuning the open strings
   * @param frets 0 to 24, at least one
   * @param seed varies everything that the settings leave to chance
   */
  public Performance calibration(Tuning tuning, List<Integer> frets, long seed) {
    Random chance = new Random(seed * 0x5DEECE66DL + 23);
    List<PlayedNote> notes =
        CalibrationSequence.notes(settings, tuning, frets, new Random(chance.nextLong()));
    double end = notes.get(notes.size() - 1).time() + 1 + settings.tailSeconds();
    Plan plan = new Plan(0, end, notes, List.of(), List.of(), 0, List.of());
    return render(plan, Optional.empty(), chance);
  }

  private Performance render(Plan plan, Optional<Pulse> pulse, Random chance) {
    int frames = (int) Math.ceil(plan.lengthSeconds() * settings.sampleRate());
    float[] samples =
        new GuitarSound(settings, new Random(chance.nextLong()), frames).render(plan.notes());
    new Surrounder(settings, new Random(chance.nextLong())).run(samples, pulse, plan);
    return new Performance(
        samples,
        settings.sampleRate(),
        plan.firstBeat(),
        plan.notes(),
        plan.shifts(),
        plan.mistakes(),
        plan.attempt(),
        plan.skipped());
  }
}
