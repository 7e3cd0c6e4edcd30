package neckway.desk.choose;

import java.util.List;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.neck.Route;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.settings.Habits;
import neckway.player.settings.PlayerSettings;
import neckway.sound.ClickTrack;
import neckway.sound.PlayedSound;

/**
 * How one round of a drill should sound: a tidy virtual player on the beat, with the click and its
 * count-in.
 */
final class RouteSound implements PlayedSound {
  private static final double LEAD_SECONDS = 0.2;
  private static final double TAIL_SECONDS = 1;
  private static final double JITTER_MS = 2;
  private static final double CLICK_SHARE = 0.6;
  private static final double GUITAR_PEAK = 0.5;

  private final float[] samples;
  private final ClickTrack click;
  private final double firstBeatSeconds;
  private final double slotSeconds;
  private final int sampleRate;
  private final Route route;
  private volatile double gain;

  private RouteSound(PlayableDrill drill, Route route, Performance played, ClickTrack click) {
    this.route = route;
    this.click = click;
    samples = played.samples();
    firstBeatSeconds = played.firstBeat();
    slotSeconds = drill.pulse().slotSeconds();
    sampleRate = played.sampleRate();
  }

  /**
   * Renders it, which takes a while.
   *
   * @param sampleRate frames a second
   */
  static RouteSound of(PlayableDrill drill, int sampleRate) {
    Pulse pulse = drill.pulse();
    Route route = drill.once().route();
    double firstBeat = LEAD_SECONDS + pulse.countIn() * pulse.beatSeconds();
    PlayerSettings settings =
        PlayerSettings.plain()
            .withHabits(Habits.tidy().withTiming(0, JITTER_MS, 0))
            .withSampleRate(sampleRate)
            .withFirstBeat(firstBeat)
            .withTailSeconds(TAIL_SECONDS);
    Performance played = new VirtualPlayer(settings).play(route, pulse, List.of(), 1);
    int beats = (int) Math.ceil((double) route.steps().size() / pulse.notesPerBeat());
    ClickTrack click =
        new ClickTrack(
            sampleRate,
            LEAD_SECONDS * sampleRate,
            pulse.beatSeconds() * sampleRate,
            pulse.beatsPerBar(),
            pulse.countIn(),
            pulse.countIn() + beats,
            ClickTrack.MAX_GAIN);
    return new RouteSound(drill, route, played, click);
  }

  /** How loud, 0 to 1; may change while it plays. */
  void gain(double share) {
    gain = Math.max(0, Math.min(1, share));
  }

  /** How many frames there are. */
  int frames() {
    return samples.length;
  }

  int sampleRate() {
    return sampleRate;
  }

  Route route() {
    return route;
  }

  /** The step that sounds at a frame: below 0 before the first, beyond the last after it. */
  int stepAt(long frame) {
    double seconds = (double) frame / sampleRate;
    return (int) Math.floor((seconds - firstBeatSeconds) / slotSeconds + 1e-6);
  }

  @Override
  public void fill(long frame, float[] block) {
    click.fill(frame, block);
    float now = (float) gain;
    for (int i = 0; i < block.length; i++) {
      long at = frame + i;
      float guitar = at < samples.length ? samples[(int) at] : 0;
      block[i] = now * (float) (CLICK_SHARE * block[i] + 2 * GUITAR_PEAK * guitar);
    }
  }
}
