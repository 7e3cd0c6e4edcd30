package neckway.player.surroundings;

import java.util.Random;

/** A small room: a few early reflections and a network of four delays fed back on one another. */
public final class Room {
  private final double wet;
  private final double seconds;
  private final int rate;
  private final Random random;

  public Room(double wet, double seconds, int rate, Random random) {
    this.wet = wet;
    this.seconds = seconds;
    this.rate = rate;
    this.random = random;
  }

  public void run(float[] samples) {
    if (wet <= 0) {
      return;
    }
    float[] dry = samples.clone();
    for (int i = 0; i < 7; i++) {
      int delay = (int) (rate * (0.003 + 0.035 * random.nextDouble()));
      float gain = (float) (wet * 0.5 * (random.nextBoolean() ? 1 : -1) / (1 + 0.4 * i));
      for (int n = delay; n < samples.length; n++) {
        samples[n] += gain * dry[n - delay];
      }
    }
    double[] lengths = {0.0297, 0.0371, 0.0411, 0.0437};
    double[][] lines = new double[4][];
    double[] keep = new double[4];
    double[] dull = new double[4];
    int[] at = new int[4];
    for (int i = 0; i < 4; i++) {
      double length = lengths[i] * (0.8 + 0.4 * random.nextDouble());
      lines[i] = new double[Math.max(1, (int) (length * rate))];
      keep[i] = Math.pow(10, -3 * length / seconds);
    }
    double soften = Math.exp(-2 * Math.PI * 3500 / rate);
    for (int n = 0; n < samples.length; n++) {
      double sum = 0;
      double late = 0;
      for (int i = 0; i < 4; i++) {
        double y = lines[i][at[i]] * keep[i];
        dull[i] = (1 - soften) * y + soften * dull[i];
        sum += dull[i];
        late += (i % 2 == 0 ? 1 : -1) * dull[i];
      }
      for (int i = 0; i < 4; i++) {
        lines[i][at[i]] = dry[n] + dull[i] - 0.5 * sum;
        at[i] = at[i] + 1 == lines[i].length ? 0 : at[i] + 1;
      }
      samples[n] += (float) (wet * 0.5 * late);
    }
  }
}
