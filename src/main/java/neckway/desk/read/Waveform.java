package neckway.desk.read;

/**
 * The outline of a stretch of sound: the lowest and the highest sample of each column.
 *
 * @param low one for each column
 * @param high one for each column
 */
record Waveform(float[] low, float[] high) {
  /** The outline in so many columns. */
  static Waveform of(float[] samples, int columns) {
    float[] low = new float[columns];
    float[] high = new float[columns];
    for (int c = 0; c < columns; c++) {
      int from = (int) ((long) c * samples.length / columns);
      int to = Math.max(from + 1, (int) ((c + 1L) * samples.length / columns));
      for (int i = from; i < Math.min(to, samples.length); i++) {
        low[c] = Math.min(low[c], samples[i]);
        high[c] = Math.max(high[c], samples[i]);
      }
    }
    return new Waveform(low, high);
  }
}
