package neckway.desk.play;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.concurrent.locks.LockSupport;
import java.util.function.DoubleSupplier;
import java.util.function.LongSupplier;
import neckway.desk.read.ClipOutput;
import neckway.drill.PlayableDrill;
import neckway.drill.Pulse;
import neckway.file.sound.WavWriter;
import neckway.live.LiveResult;
import neckway.live.LiveRun;
import neckway.live.LiveRunListener;
import neckway.live.LiveSetup;
import neckway.neck.BadInput;
import neckway.player.Performance;
import neckway.player.VirtualPlayer;
import neckway.player.plan.Mistake;
import neckway.player.settings.PlayerSettings;
import neckway.review.Clock;
import neckway.review.Grid;
import neckway.review.Review;
import neckway.run.Run;
import neckway.sound.ClickTrack;
import neckway.sound.Clip;

/**
 * Plays the drill in the player's place: the virtual player, with a wrong note and one left out.
 * What it plays goes to the output, if there is one, and at the same pace into the same ear as a
 * guitar does. It knows nothing of what is heard, nor the ear of what it plays.
 */
public final class GuestPlayer implements Engine {
  private static final int BLOCK_FRAMES = 512;

  /** Loud enough to play to, and no louder than the guitar. */
  private static final double CLICK_GAIN = 0.1;

  private final ClipOutput output;
  private final DoubleSupplier volume;
  private final LongSupplier seeds;

  /**
   * @param volume 0 to 1, asked while it plays
   * @param seeds what is left to chance follows from the next of these
   */
  public GuestPlayer(ClipOutput output, DoubleSupplier volume, LongSupplier seeds) {
    this.output = output;
    this.volume = volume;
    this.seeds = seeds;
  }

  @Override
  public Runnable start(LiveSetup setup, LiveRunListener listener) {
    Guest guest = new Guest(setup.drill(), listener);
    Thread thread = new Thread(guest::play, "guest");
    thread.setDaemon(true);
    thread.start();
    return guest::stop;
  }

  /**
   * A wrong note somewhere in the first half of the way and one left out in the second.
   *
   * @param steps of the route, 12 or more
   */
  static List<Mistake> slips(int steps, Random random) {
    List<Mistake> slips = new ArrayList<>();
    int half = steps / 2;
    slips.add(slip(Mistake.Kind.WRONG, 2 + random.nextInt(half - 3)));
    slips.add(slip(Mistake.Kind.SKIP, half + 1 + random.nextInt(half - 3)));
    return slips;
  }

  private static Mistake slip(Mistake.Kind kind, int step) {
    return new Mistake.Slip(kind, step, OptionalInt.empty());
  }

  /** One run of it. */
  private final class Guest {
    private final PlayableDrill drill;
    private final LiveRunListener listener;
    private volatile boolean stopped;
    private long beat;

    Guest(PlayableDrill drill, LiveRunListener listener) {
      this.drill = drill;
      this.listener = listener;
      beat = -drill.pulse().countIn() - 1L;
    }

    void stop() {
      stopped = true;
    }

    void play() {
      try {
        perform(seeds.getAsLong());
      } catch (BadInput e) {
        listener.complaint(e.getMessage());
      } finally {
        output.stop();
        listener.over();
      }
    }

    private void perform(long seed) {
      Pulse pulse = drill.pulse();
      double firstBeat = LiveRun.LEAD_SECONDS + pulse.countIn() * pulse.beatSeconds();
      PlayerSettings settings = PlayerSettings.plain().withFirstBeat(firstBeat);
      List<Mistake> slips = slips(drill.route().steps().size(), new Random(seed));
      Performance played = new VirtualPlayer(settings).play(drill.route(), pulse, slips, seed);
      listener.roundBegins(0);
      output.play(heard(played), complaint -> told(complaint));
      listener.begun(
          new Grid(Grid.Source.GIVEN, pulse.tempo(), played.firstBeat(), pulse.slotSeconds()));
      Run run =
          new Run(
              drill,
              Optional.empty(),
              played.sampleRate(),
              OptionalDouble.of(played.firstBeat()),
              Clock.MEASURED,
              listener);
      int frames = feed(run, played);
      Review review = run.finish();
      Optional<Path> take = kept(played, frames);
      listener.roundEnded(new LiveResult(0, review, take, Optional.empty(), 0, 0, List.of()));
    }

    private void told(String complaint) {
      if (!complaint.isEmpty()) {
        listener.complaint(complaint);
      }
    }

    /** The guitar with the click to which it plays. */
    private Clip heard(Performance played) {
      Pulse pulse = drill.pulse();
      int rate = played.sampleRate();
      ClickTrack click =
          new ClickTrack(
              rate,
              LiveRun.LEAD_SECONDS * rate,
              pulse.beatSeconds() * rate,
              pulse.beatsPerBar(),
              pulse.countIn(),
              Long.MAX_VALUE,
              CLICK_GAIN);
      float[] both = new float[played.samples().length];
      click.fill(0, both);
      for (int i = 0; i < both.length; i++) {
        both[i] += played.samples()[i];
      }
      return Clip.of(both, rate, false, volume);
    }

    /** As fast as it sounds; how many frames were heard. */
    private int feed(Run run, Performance played) {
      float[] samples = played.samples();
      long begun = System.nanoTime();
      int at = 0;
      while (at < samples.length && !stopped) {
        int length = Math.min(BLOCK_FRAMES, samples.length - at);
        double due = (double) (at + length) / played.sampleRate();
        long wait = begun + (long) (due * 1e9) - System.nanoTime();
        if (wait > 0) {
          LockSupport.parkNanos(wait);
        }
        run.feed(samples, at, length);
        float peak = 0;
        for (int i = at; i < at + length; i++) {
          peak = Math.max(peak, Math.abs(samples[i]));
        }
        at += length;
        listener.sound(due, peak);
        beats(due - played.firstBeat());
      }
      return at;
    }

    private void beats(double sinceFirstSeconds) {
      long now = (long) Math.floor(sinceFirstSeconds / drill.pulse().beatSeconds());
      if (now > beat && now >= -drill.pulse().countIn()) {
        beat = now;
        listener.beat(now);
      }
    }

    /** Kept where it is forgotten when the program ends, so that it can be heard again. */
    private Optional<Path> kept(Performance played, int frames) {
      try {
        Path folder = Files.createTempDirectory("neckway-guest");
        folder.toFile().deleteOnExit();
        Path take = folder.resolve("guest.wav");
        try (WavWriter writer = new WavWriter(take, played.sampleRate(), WavWriter.Coding.PCM_16)) {
          writer.write(played.samples(), 0, frames);
          writer.finish();
        }
        take.toFile().deleteOnExit();
        folder.resolve("guest.json").toFile().deleteOnExit();
        return Optional.of(take);
      } catch (IOException e) {
        // it is read all the same, only not heard again
        return Optional.empty();
      }
    }
  }
}
