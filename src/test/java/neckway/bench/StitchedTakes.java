package neckway.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.function.Supplier;
import neckway.bench.RecordedNotes.Recording;
import neckway.drill.PlayableDrill;
import neckway.neck.Step;
import neckway.neck.Tuning;

/**
 * Runs stitched from recorded notes: each is cut at its onset, set down at a human time and stopped
 * with a short fade when the next one starts, or left to ring a while.
 *
 * <p>The solid-body electric gives string and fret as labelled; of the others a recording of the
 * pitch is taken. The archtop has only every third semitone: its notes are moved by at most one by
 * resampling.
 */
public final class StitchedTakes {
  private static final double RATE = RecordedNotes.SAMPLE_RATE;
  private static final double FADE_IN_SECONDS = 0.002;

  /** Beats a minute of ordinary runs, two notes a beat. */
  private static final int ORDINARY_SLOWEST = 72;

  private static final int ORDINARY_FASTEST = 88;

  /** Guitars recorded with a microphone. */
  private static final Set<String> HUMMING = Set.of("archtop-microphone", "nylon");

  private final RecordedNotes recorded;

  public StitchedTakes(RecordedNotes recorded) {
    this.recorded = recorded;
  }

  /**
   * How a run is put together.
   *
   * @param jitterSeconds standard deviation of one note's time
   * @param level peak of the first 30 ms of a full stroke
   * @param weakestDb of a stroke under the strongest, negative
   * @param strongestDb of a stroke
   * @param goesOnSeconds span within which a note has gone, from 10 ms before the next one on
   * @param ringOver share of the notes that ring into the next
   */
  private record Manner(
      double jitterSeconds,
      float level,
      double weakestDb,
      double strongestDb,
      double goesOnSeconds,
      double ringOver) {}

  /** A hard take of one guitar; {@code dirty} adds hum, hiss, a room and the click's leak. */
  public PlayedTake take(String guitar, long seed, boolean dirty) {
    Random random = new Random(seed * 7919 + guitar.hashCode());
    random.nextInt();
    PlayableDrill drill = drill(guitar, random);
    double jitter = drill.pulse().slotSeconds() * (0.01 + 0.03 * random.nextDouble());
    double first = 1.0 + random.nextDouble();
    double ringOver = random.nextInt(3) == 0 ? 0.25 : 0.08;
    double[] times = times(drill, first, jitter, random);
    float level = (float) Math.pow(10, (-26 + 20 * random.nextDouble()) / 20);
    float[] mix = new float[(int) ((times[times.length - 1] + 2.0) * RATE)];
    Manner manner = new Manner(jitter, level, -6, 2, 0.04, ringOver);
    List<TrueNote> truth = stitch(mix, guitar, drill, times, manner, random);
    if (dirty) {
      Dirt.add(mix, RATE, level, first, drill.pulse().beatSeconds(), random);
    }
    String name = String.format("stitched %s%s", guitar, dirty ? " dirty" : "");
    return played(name, seed, mix, truth, drill, first);
  }

  /**
   * An ordinary take of one guitar: no note rings on into the next beyond its fade; guitars before
   * a microphone hum.
   */
  public PlayedTake ordinary(String guitar, long seed) {
    Random random = new Random(seed * 7919 + 31L * guitar.hashCode() + 1);
    random.nextInt();
    PlayableDrill drill = ordinaryDrill(guitar, random);
    double jitter = 0.005 + 0.005 * random.nextDouble();
    double first = 1.0 + random.nextDouble();
    double[] times = times(drill, first, jitter, random);
    float level = (float) Math.pow(10, (-18 + 12 * random.nextDouble()) / 20);
    float[] mix = new float[(int) ((times[times.length - 1] + 2.0) * RATE)];
    Manner manner = new Manner(jitter, level, -2, 1, 0.03, 0);
    List<TrueNote> truth = stitch(mix, guitar, drill, times, manner, random);
    if (HUMMING.contains(guitar)) {
      Dirt.hum(mix, RATE, level * Math.pow(10, (-50 + 10 * random.nextDouble()) / 20), random);
    }
    return played("ordinary stitched " + guitar, seed, mix, truth, drill, first);
  }

  private static PlayedTake played(
      String name,
      long seed,
      float[] mix,
      List<TrueNote> truth,
      PlayableDrill drill,
      double first) {
    String full = String.format("%s seed %d gap %.2f", name, seed, drill.pulse().slotSeconds());
    double beat = drill.pulse().beatSeconds();
    Take take = new Take(full, RATE, mix, truth, 0, OptionalDouble.of(first), beat);
    return new PlayedTake(take, drill, first, Map.of());
  }

  private static double[] times(PlayableDrill drill, double first, double jitter, Random random) {
    double[] times = new double[drill.route().steps().size()];
    for (int i = 0; i < times.length; i++) {
      double off = Math.max(-2.5, Math.min(2.5, random.nextGaussian()));
      double time = first + i * drill.pulse().slotSeconds() + jitter * off;
      times[i] = Math.rint(time * RATE) / RATE;
    }
    return times;
  }

  private List<TrueNote> stitch(
      float[] mix,
      String guitar,
      PlayableDrill drill,
      double[] times,
      Manner manner,
      Random random) {
    List<Recording> all = recorded.of(guitar);
    List<Step> run = drill.route().steps();
    List<TrueNote> truth = new ArrayList<>();
    double range = manner.strongestDb() - manner.weakestDb();
    for (int i = 0; i < run.size(); i++) {
      Step step = run.get(i);
      Recording r = choose(guitar, all, step, random);
      double db = range * random.nextDouble() + manner.weakestDb();
      double gain = manner.level() / r.earlyPeak() * Math.pow(10, db / 20);
      double stop =
          stop(
              run,
              times,
              i,
              manner.goesOnSeconds(),
              random.nextDouble() < manner.ringOver(),
              random);
      double fade = 0.008 + 0.012 * random.nextDouble();
      lay(mix, r, step.midi() - r.midi(), times[i], stop, fade, gain);
      truth.add(TrueNote.right(times[i], step, r.file()));
    }
    return truth;
  }

  private PlayableDrill drill(String guitar, Random random) {
    return fitting(
        guitar,
        () -> {
          int shapes = RandomDrills.MOSTLY_TWO[random.nextInt(RandomDrills.MOSTLY_TWO.length)];
          int lowest = guitar.equals("solidbody") ? 1 : 0;
          return new RandomDrills(random).on(Tuning.STANDARD, shapes, lowest, 21, 0.12, 0.5);
        });
  }

  private PlayableDrill ordinaryDrill(String guitar, Random random) {
    return fitting(
        guitar,
        () ->
            new RandomDrills(random)
                .ordinary(Tuning.STANDARD, 1, ORDINARY_SLOWEST, ORDINARY_FASTEST));
  }

  /** Draws until every note of the drill is recorded. */
  private PlayableDrill fitting(String guitar, Supplier<PlayableDrill> draw) {
    List<Recording> all = recorded.of(guitar);
    while (true) {
      PlayableDrill drill = draw.get();
      if (drill.route().steps().stream().noneMatch(s -> candidates(guitar, all, s).isEmpty())) {
        return drill;
      }
    }
  }

  private static int string(Step step) {
    return step.place().string().number();
  }

  private static Recording choose(String guitar, List<Recording> all, Step step, Random random) {
    List<Recording> fit = candidates(guitar, all, step);
    return fit.get(random.nextInt(fit.size()));
  }

  private static List<Recording> candidates(String guitar, List<Recording> all, Step step) {
    return switch (guitar) {
      case "solidbody" ->
          all.stream()
              .filter(r -> r.string() == string(step) && r.fret() == step.place().fret())
              .toList();
      case "archtop-microphone" ->
          all.stream().filter(r -> Math.abs(r.midi() - step.midi()) <= 1).toList();
      default -> all.stream().filter(r -> r.midi() == step.midi()).toList();
    };
  }

  /** When a note has gone: as the next one sounds, sometimes later, never past its own string. */
  private static double stop(
      List<Step> run, double[] times, int i, double latest, boolean rings, Random random) {
    if (i + 1 == times.length) {
      return times[i] + 1.5;
    }
    double wanted = times[i + 1] - 0.01 + latest * random.nextDouble();
    if (rings) {
      wanted = times[i + 1] + 0.15 + 0.45 * random.nextDouble();
    }
    for (int j = i + 1; j < times.length; j++) {
      if (string(run.get(j)) == string(run.get(i))) {
        return Math.min(wanted, times[j]);
      }
    }
    return wanted;
  }

  /** Adds a recording so that its onset is at the time given. */
  static void lay(
      float[] mix, Recording r, int semitones, double time, double stop, double fade, double gain) {
    double step = Math.pow(2, semitones / 12.0);
    int onset = (int) Math.round(time * RATE);
    int before = (int) Math.min(0.003 * RATE, r.onsetFrame() / step);
    int end = Math.min(mix.length, (int) (stop * RATE));
    double fadeFrames = fade * RATE;
    double fadeInFrames = before == 0 ? 1 : FADE_IN_SECONDS * RATE;
    for (int i = onset - before; i < end; i++) {
      double at = r.onsetFrame() + (i - onset) * step;
      double weight = Math.min(1, (i - onset + before + 1) / fadeInFrames);
      weight = Math.min(weight, (end - i) / fadeFrames);
      weight = Math.min(weight, (r.samples().length - 1 - at) / fadeFrames);
      if (weight <= 0) {
        continue;
      }
      mix[i] += (float) (gain * weight * (semitones == 0 ? at(r, at) : Sinc.at(r.samples(), at)));
    }
  }

  private static float at(Recording r, double position) {
    int i = (int) Math.round(position);
    return i >= 0 && i < r.samples().length ? r.samples()[i] : 0;
  }
}
