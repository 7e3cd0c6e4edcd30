package neckway.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import neckway.bench.RandomDrills.Drill;
import neckway.bench.RecordedNotes.Recording;
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

  private final RecordedNotes recorded;

  public StitchedTakes(RecordedNotes recorded) {
    this.recorded = recorded;
  }

  /** A take of one guitar; {@code dirty} adds hum, hiss, a room and the click's leak. */
  public PlayedTake take(String guitar, long seed, boolean dirty) {
    Random random = new Random(seed * 7919 + guitar.hashCode());
    random.nextInt();
    List<Recording> all = recorded.of(guitar);
    Drill drill = drill(guitar, all, random);
    List<Step> run = drill.route().steps();
    double gap = drill.pulse().gapSeconds();
    double jitter = gap * (0.01 + 0.03 * random.nextDouble());
    double first = 1.0 + random.nextDouble();
    double ringOver = random.nextInt(3) == 0 ? 0.25 : 0.08;
    double[] times = new double[run.size()];
    for (int i = 0; i < times.length; i++) {
      double off = Math.max(-2.5, Math.min(2.5, random.nextGaussian()));
      times[i] = Math.rint((first + i * gap + jitter * off) * RATE) / RATE;
    }
    float[] mix = new float[(int) ((times[times.length - 1] + 2.0) * RATE)];
    float level = (float) Math.pow(10, (-26 + 20 * random.nextDouble()) / 20);
    List<TrueNote> truth = new ArrayList<>();
    for (int i = 0; i < run.size(); i++) {
      Step step = run.get(i);
      Recording r = choose(guitar, all, step, random);
      double gain = level / r.earlyPeak() * Math.pow(10, (8 * random.nextDouble() - 6) / 20);
      double stop = stop(run, times, i, random.nextDouble() < ringOver, random);
      double fade = 0.008 + 0.012 * random.nextDouble();
      lay(mix, r, step.midi() - r.midi(), times[i], stop, fade, gain);
      truth.add(TrueNote.right(times[i], step, r.file()));
    }
    double beat = drill.pulse().beatSeconds();
    if (dirty) {
      Dirt.add(mix, RATE, level, first, beat, random);
    }
    String name =
        String.format("stitched %s seed %d%s gap %.2f", guitar, seed, dirty ? " dirty" : "", gap);
    Take take = new Take(name, RATE, mix, truth, 0, OptionalDouble.of(first), beat);
    return new PlayedTake(take, drill, first, Map.of());
  }

  private static Drill drill(String guitar, List<Recording> all, Random random) {
    while (true) {
      int shapes = RandomDrills.MOSTLY_TWO[random.nextInt(RandomDrills.MOSTLY_TWO.length)];
      int lowest = guitar.equals("solidbody") ? 1 : 0;
      Drill drill = new RandomDrills(random).on(Tuning.STANDARD, shapes, lowest, 21, 0.12, 0.5);
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
  private static double stop(List<Step> run, double[] times, int i, boolean rings, Random random) {
    if (i + 1 == times.length) {
      return times[i] + 1.5;
    }
    double wanted = times[i + 1] - 0.01 + 0.04 * random.nextDouble();
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
  private static void lay(
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
