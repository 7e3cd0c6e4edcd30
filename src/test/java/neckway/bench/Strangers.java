package neckway.bench;

import java.util.List;
import java.util.Random;
import neckway.drill.PlayableDrill;

/** Sound that is not the drill, to be held against it: next to none of it may be called right. */
final class Strangers {
  private static final double RATE = 44_100;

  private Strangers() {}

  /** As long as the drill of a take, its sound replaced. */
  static PlayedTake speechLike(PlayedTake played, long seed) {
    Random random = new Random(seed);
    float[] samples = new float[(int) (played.take().seconds() * RATE)];
    int at = (int) (0.5 * RATE);
    while (at < samples.length - RATE) {
      at = syllable(samples, at, random);
      at += (int) (RATE * (random.nextInt(6) == 0 ? 0.3 : 0.03 * random.nextDouble()));
    }
    return with(played, samples, "speech-like");
  }

  /** A burst of noise, then a buzz through two resonances, its pitch gliding as a voice's does. */
  private static int syllable(float[] samples, int start, Random random) {
    int consonant = (int) (RATE * 0.08 * random.nextDouble());
    int vowel = (int) (RATE * (0.08 + 0.2 * random.nextDouble()));
    double pitch = 90 + 130 * random.nextDouble();
    double glide = (0.6 * random.nextDouble() - 0.35) / vowel;
    double[] formants = {300 + 500 * random.nextDouble(), 900 + 1400 * random.nextDouble()};
    double[][] state = new double[2][2];
    double phase = 0;
    for (int i = 0; i < consonant + vowel && start + i < samples.length; i++) {
      if (i < consonant) {
        samples[start + i] = (float) (0.04 * random.nextGaussian());
        continue;
      }
      int v = i - consonant;
      phase += pitch * (1 + glide * v) / RATE;
      double pulse = phase >= 1 ? 1 : 0;
      phase -= Math.floor(phase);
      double sum = 0;
      for (int f = 0; f < 2; f++) {
        double r = Math.exp(-Math.PI * 90 / RATE);
        double y =
            pulse
                + 2 * r * Math.cos(2 * Math.PI * formants[f] / RATE) * state[f][0]
                - r * r * state[f][1];
        state[f][1] = state[f][0];
        state[f][0] = y;
        sum += y;
      }
      double envelope = Math.sin(Math.PI * Math.min(1, (v + 1.0) / vowel));
      samples[start + i] = (float) (0.08 * envelope * sum);
    }
    return start + consonant + vowel;
  }

  /** Noise with slow swells and sudden bursts. */
  static PlayedTake noise(PlayedTake played, long seed) {
    Random random = new Random(seed);
    float[] samples = new float[(int) (played.take().seconds() * RATE)];
    double low = 0;
    double burst = 0;
    for (int i = 0; i < samples.length; i++) {
      if (random.nextInt((int) RATE / 3) == 0) {
        burst = 0.3;
      }
      burst *= 0.9998;
      low += 0.1 * (random.nextGaussian() - low);
      samples[i] = (float) (0.05 * low + burst * 0.5 * random.nextGaussian());
    }
    return with(played, samples, "noise");
  }

  /** The drill of one take over the sound of another. */
  static PlayedTake otherDrill(PlayedTake sound, PlayableDrill drill) {
    return new PlayedTake(sound.take(), drill, sound.firstBeat(), sound.mistakes());
  }

  private static PlayedTake with(PlayedTake played, float[] samples, String name) {
    Take t = played.take();
    return played.withTake(
        new Take(
            name + " " + t.name(), RATE, samples, List.of(), 0, t.firstBeat(), t.beatSeconds()));
  }
}
