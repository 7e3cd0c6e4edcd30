package neckway.cli.text;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.OptionalLong;
import neckway.file.sound.TakeReader;

/** Says on the terminal how far a long recording has been heard. */
public final class Progress {
  private static final long QUIET_NANOS = 3_000_000_000L;
  private static final long EVERY_NANOS = 500_000_000L;

  private final PrintWriter err;
  private final Path take;
  private final OptionalLong frames;
  private final int sampleRateHz;
  private long nextNanos;
  private boolean shown;

  public Progress(PrintWriter err, Path take, TakeReader reader) {
    this.err = err;
    this.take = take;
    this.frames = reader.frames();
    this.sampleRateHz = reader.sampleRate();
    this.nextNanos = System.nanoTime() + QUIET_NANOS;
  }

  public void at(double seconds) {
    long now = System.nanoTime();
    if (System.console() == null || now < nextNanos) {
      return;
    }
    nextNanos = now + EVERY_NANOS;
    shown = true;
    String how =
        frames.isPresent()
            ? Math.round(100 * seconds * sampleRateHz / Math.max(1, frames.getAsLong())) + " %"
            : Math.round(seconds) + " s";
    err.print("\r" + take + ": heard " + how);
    err.flush();
  }

  public void done() {
    if (shown) {
      err.println();
    }
  }
}
