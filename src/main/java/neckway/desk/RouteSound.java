package neckway.desk;

import java.util.List;
import neckway.drill.Pulse;
import neckway.neck.Route;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.Habits;
import neckway.player.settings.PlayerSettings;
import neckway.sound.ClickTrack;
import neckway.sound.Levelling;

/**
 * How a route should sound: a tidy virtual player on the beat, with the click and its count-in, at
 * the one loudness of all playback.
 *
 * @param samples mono
 * @param sampleRate frames a second
 * @param firstBeatSeconds the first beat after the count-in
 * @param pulse to which it is played
 */
public record RouteSound(
    Route route, float[] samples, int sampleRate, double firstBeatSeconds, Pulse pulse) {
  private static final double LEAD_SECONDS = 0.2;
  private static final double TAIL_SECONDS = 1;
  private static final double JITTER_MS = 2;

  /**
   * Renders it, which takes a while.
   *
   * @param sampleRate frames a second
   */
  public static RouteSound of(Route route, Pulse pulse, int sampleRate) {
    double firstBeat = LEAD_SECONDS + pulse.countIn() * pulse.beatSeconds();
    PlayerSettings settings =
        PlayerSettings.plain()
            .withHabits(Habits.tidy().withTiming(0, JITTER_MS, 0))
            .withSampleRate(sampleRate)
            .withFirstBeat(firstBeat)
            .withTailSeconds(TAIL_SECONDS);
    Performance played = new VirtualPlayer(settings).play(route, pulse, List.of(), 1);
    double slots = pulse.slots().offset() + (double) route.steps().size();
    int beats = (int) Math.ceil(slots / pulse.notesPerBeat());
    ClickTrack click =
        new ClickTrack(
            sampleRate,
            LEAD_SECONDS * sampleRate,
            pulse.beatSeconds() * sampleRate,
            pulse.beatsPerBar(),
            pulse.countIn(),
            pulse.countIn() + beats,
            ClickTrack.MAX_GAIN);
    return new RouteSound(
        route,
        Levelling.withClick(played.samples(), click, sampleRate),
        sampleRate,
        played.firstBeat(),
        pulse);
  }

  /** When a step is due, seconds. */
  public double due(int step) {
    return firstBeatSeconds + pulse.dueSeconds(step);
  }

  /** The step that sounds at a frame: below 0 before the first, beyond the last after it. */
  public int stepAt(long frame) {
    double seconds = (double) frame / sampleRate;
    double slots = (seconds - firstBeatSeconds) / pulse.slotSeconds() + 1e-6;
    int nearest = (int) pulse.slots().nearest(slots);
    return pulse.slots().position((long) nearest) <= slots ? nearest : nearest - 1;
  }
}
