package neckway.sound;

import java.util.function.BooleanSupplier;

/**
 * Hands what an input captures to a sink, block by block, in the thread that calls it. It waits for
 * each block, and no longer than {@link #LONGEST_WAIT_NANOS} for one that does not come; so a
 * device that died holds nobody up.
 */
public final class Pump {
  /** Why it ended. */
  public enum End {
    /** It was told to, or its thread was interrupted. */
    STOPPED,
    /** The input has stopped giving, and all that it gave was handed on. */
    GONE,
    /** The sink wants no more. */
    ENOUGH
  }

  /** Takes sound. */
  @FunctionalInterface
  public interface Sink {
    /**
     * @param samples mono, -1 to 1; valid up to {@code length} and until this returns
     * @return whether more is wanted
     */
    boolean take(float[] samples, int length);
  }

  /** Frames handed on at once, at most. */
  private static final int BLOCK_FRAMES = 512;

  /** How long it waits for sound before it looks again whether it shall stop. */
  private static final long LONGEST_WAIT_NANOS = 50_000_000;

  private Pump() {}

  /**
   * Hands on all that comes.
   *
   * @param in started; read by nobody else
   * @param stop asked before each block; true ends it
   */
  public static End run(Capture in, Sink sink, BooleanSupplier stop) {
    float[] block = new float[BLOCK_FRAMES];
    while (!stop.getAsBoolean() && !Thread.currentThread().isInterrupted()) {
      int got = in.read(block, LONGEST_WAIT_NANOS);
      if (got > 0) {
        if (!sink.take(block, got)) {
          return End.ENOUGH;
        }
      } else if (in.gone()) {
        return End.GONE;
      }
    }
    return End.STOPPED;
  }

  /** Hands on what has come already, and waits for nothing. */
  public static void rest(Capture in, Sink sink) {
    float[] block = new float[BLOCK_FRAMES];
    int got = in.read(block);
    while (got > 0 && sink.take(block, got)) {
      got = in.read(block);
    }
  }
}
