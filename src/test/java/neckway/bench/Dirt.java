package neckway.bench;

import java.util.Random;

/** What a home recording adds to a guitar: mains hum, hiss, a room, the click's leak. */
final class Dirt {
  private Dirt() {}

  /**
   * Adds some of each, by chance.
   *
   * @param level peak level of the notes
   * @param first the first beat, seconds
   * @param beat seconds from beat to beat
   */
  static void add(
      float[] mix, double rate, double level, double first, double beat, Random random) {
    if (random.nextBoolean()) {
      room(mix, rate, 0.05 + 0.15 * random.nextDouble(), 0.15 + 0.35 * random.nextDouble(), random);
    }
    if (random.nextBoolean()) {
      hum(mix, rate, level * (0.1 + 0.4 * random.nextDouble()), random);
    }
    if (random.nextInt(3) > 0) {
      hiss(mix, level * Math.pow(10, (-50 + 20 * random.nextDouble()) / 20), random);
    }
    if (random.nextBoolean()) {
      double loud = level * Math.pow(10, (-24 + 18 * random.nextDouble()) / 20);
      clicks(mix, rate, loud, first, beat, random);
    }
  }

  /** 50 and 100 Hz with weaker 150 Hz; the sum peaks at the level given. */
  static void hum(float[] mix, double rate, double level, Random random) {
    hum(mix, rate, 50, level, random);
  }

  /** The mains' frequency, twice and three times that; the sum peaks at the level given. */
  static void hum(float[] mix, double rate, int mainsHz, double level, Random random) {
    double[] phase = {6.28 * random.nextDouble(), 6.28 * random.nextDouble(), 0};
    double[] share = {0.5, 0.4, 0.1};
    for (int i = 0; i < mix.length; i++) {
      double sum = 0;
      for (int k = 0; k < share.length; k++) {
        sum += share[k] * Math.sin(2 * Math.PI * mainsHz * (k + 1) * i / rate + phase[k]);
      }
      mix[i] += (float) (level * sum);
    }
  }

  private static void hiss(float[] mix, double level, Random random) {
    for (int i = 0; i < mix.length; i++) {
      mix[i] += (float) (level * random.nextGaussian());
    }
  }

  /** A room: a few hundred echoes at random times, dying by 60 dB in the time given. */
  private static void room(float[] mix, double rate, double wet, double seconds, Random random) {
    float[] dry = mix.clone();
    int taps = 400;
    for (int t = 0; t < taps; t++) {
      double delay = 0.004 + seconds * random.nextDouble();
      double gain = wet * Math.pow(10, -3 * delay / seconds) * (random.nextBoolean() ? 1 : -1);
      int frames = (int) (delay * rate);
      for (int i = frames; i < mix.length; i++) {
        mix[i] += (float) (gain * dry[i - frames]);
      }
    }
  }

  /**
   * A metronome's click on each beat from before the first to the end; the first of four higher.
   */
  private static void clicks(
      float[] mix, double rate, double level, double first, double beat, Random random) {
    double[] pitches = {880, 1000, 1320, 1760};
    double pitch = pitches[random.nextInt(pitches.length)];
    double decay = 0.004 + 0.012 * random.nextDouble();
    double late = 0.01 * random.nextDouble();
    for (int n = -(int) (first / beat); first + n * beat + 0.2 < mix.length / rate; n++) {
      int start = (int) ((first + n * beat + late) * rate);
      double hz = Math.floorMod(n, 4) == 0 ? 1.5 * pitch : pitch;
      for (int i = 0; i < 0.12 * rate; i++) {
        double t = i / rate;
        double rise = Math.min(1, t / 0.0005);
        mix[start + i] +=
            (float) (level * rise * Math.exp(-t / decay) * Math.sin(2 * Math.PI * hz * t));
      }
    }
  }
}
