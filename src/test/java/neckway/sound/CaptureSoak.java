package neckway.sound;

import java.util.Optional;

/**
 * Captures a sound whose every sample is one more than the one before, modulo 65,536, and counts
 * where it is not: each such place is sound that was lost, or put in, on the way. Prints one line.
 */
public final class CaptureSoak {
  private static final int STEPS = 65_536;
  private static final int FULL_SCALE = 32_768;

  private CaptureSoak() {}

  /**
   * Runs.
   *
   * @param args seconds
   */
  public static void main(String[] args) throws InterruptedException {
    double seconds = Double.parseDouble(args[0]);
    long breaks = 0;
    long lost = 0;
    long checked = 0;
    int last = 0;
    boolean counting = false;
    try (Capture in = new Capture(Devices.openInput(Optional.empty()))) {
      in.start();
      float[] block = new float[4096];
      long wanted = Math.round(seconds * in.sampleRate());
      while (checked < wanted && !in.gone()) {
        int got = in.read(block);
        for (int i = 0; i < got; i++) {
          int value = Math.round(block[i] * FULL_SCALE);
          if (counting) {
            checked++;
            int step = Math.floorMod(value - last, STEPS);
            if (step != 1) {
              breaks++;
              lost += step;
            }
          }
          counting |= value != 0;
          last = value;
        }
        Thread.sleep(10);
      }
      System.out.printf(
          "captured %d checked %d breaks %d lost %d overflows %d unread %d%n",
          in.frames(), checked, breaks, lost, in.overflows(), in.lostFrames());
    }
    System.exit(0);
  }
}
