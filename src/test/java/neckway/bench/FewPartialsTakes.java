package neckway.bench;

import java.util.List;
import java.util.Random;
import neckway.player.settings.PlayerSettings.Condition;

/**
 * What the virtual player plays, slips and all, in notes of two partials and next to nothing over
 * them, with mains hum under them: a low note on an acoustic guitar a little away from a small
 * microphone. The levels are those reported of one such guitar's F#2.
 */
final class FewPartialsTakes {
  private static final double RATE = 44_100;
  private static final int PARTIALS = 6;

  /** Hum's peak under the notes', dB. */
  private static final double LEAST_HUM_UNDER_DB = 50;

  private static final double MOST_HUM_UNDER_DB = 60;

  private FewPartialsTakes() {}

  /** A run on a given mains frequency. */
  static PlayedTake take(int mainsHz, long seed) {
    PlayedTake played = VirtualTakes.take(Population.ORDINARY, seed, Condition.CLEAN);
    Random random = new Random(seed * 37 + mainsHz);
    random.nextInt();
    Take dry = played.take();
    float[] samples = new float[(int) (dry.seconds() * RATE)];
    double level = Math.pow(10, (-18 + 12 * random.nextDouble()) / 20);
    List<TrueNote> notes = dry.notes();
    for (int i = 0; i < notes.size(); i++) {
      TrueNote note = notes.get(i);
      double end =
          i + 1 < notes.size()
              ? notes.get(i + 1).time() - 0.005 + 0.02 * random.nextDouble()
              : note.time() + 1.5;
      double gain = level * Math.pow(10, (-2 + 3 * random.nextDouble()) / 20);
      lay(samples, note.time(), end, 440 * Math.pow(2, (note.midi() - 69) / 12.0), gain, random);
    }
    double under =
        LEAST_HUM_UNDER_DB + (MOST_HUM_UNDER_DB - LEAST_HUM_UNDER_DB) * random.nextDouble();
    Dirt.hum(samples, RATE, mainsHz, level * Math.pow(10, -under / 20), random);
    Take take =
        new Take(
            String.format("two partials, %d Hz seed %d %s", mainsHz, seed, played.mistakes()),
            RATE,
            samples,
            notes,
            0,
            dry.firstBeat(),
            dry.beatSeconds());
    return played.withTake(take);
  }

  /**
   * Adds a note: the second partial 1 to 8 dB under the first, the third 23 to 60 dB, further ones
   * 35 to 70 dB. It has gone 8 to 20 ms after its end.
   */
  static void lay(float[] x, double time, double end, double hz, double gain, Random random) {
    double[] amplitude = new double[PARTIALS];
    double[] phase = new double[PARTIALS];
    double[] decay = new double[PARTIALS];
    for (int k = 0; k < PARTIALS; k++) {
      double under =
          switch (k) {
            case 0 -> 0;
            case 1 -> 1 + 7 * random.nextDouble();
            case 2 -> 23 + 37 * random.nextDouble();
            default -> 35 + 35 * random.nextDouble();
          };
      amplitude[k] = gain * Math.pow(10, -under / 20) / 1.6;
      phase[k] = 2 * Math.PI * random.nextDouble();
      decay[k] = (0.5 + 1.5 * random.nextDouble()) / (1 + 0.3 * k);
    }
    double stiffness = 5e-5 + 1e-4 * random.nextDouble();
    double rise = 0.001 + 0.003 * random.nextDouble();
    double fade = 0.008 + 0.012 * random.nextDouble();
    int start = (int) Math.round(time * RATE);
    int stop = Math.min(x.length, (int) ((end + fade) * RATE));
    for (int i = start; i < stop; i++) {
      double t = (i - start) / RATE;
      double weight = Math.min(1, t / rise) * Math.min(1, (stop - i) / (fade * RATE));
      double sum = 0;
      for (int k = 0; k < PARTIALS; k++) {
        double sharp = Math.sqrt(1 + stiffness * (k + 1) * (k + 1));
        sum +=
            amplitude[k]
                * Math.exp(-t / decay[k])
                * Math.sin(2 * Math.PI * hz * (k + 1) * sharp * t + phase[k]);
      }
      x[i] += (float) (weight * sum);
    }
  }
}
