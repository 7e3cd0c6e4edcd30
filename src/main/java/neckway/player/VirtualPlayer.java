package neckway.player;

import java.util.List;
import java.util.Random;
import neckway.follow.Pulse;
import neckway.neck.Route;

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
        plan.skipped());
  }
}
