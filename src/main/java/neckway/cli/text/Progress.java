package neckway.cli.text;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.OptionalDouble;
import neckway.words.Wording;

/** Says on the terminal how far a long recording has been heard. */
public final class Progress {
  private static final long QUIET_NANOS = 3_000_000_000L;
  private static final long EVERY_NANOS = 500_000_000L;

  private final PrintWriter err;
  private final Path take;
  private long nextNanos;
  private boolean shown;

  /**
   * @param take its name as it was given
   */
  public Progress(PrintWriter err, Path take) {
    this.err = err;
    this.take = take;
    this.nextNanos = System.nanoTime() + QUIET_NANOS;
  }

  /**
   * So far it has been heard; said where someone is waiting at a terminal.
   *
   * @param seconds heard
   * @param share of the whole, 0 to 1, if its length is known
   */
  public void at(double seconds, OptionalDouble share) {
    long now = System.nanoTime();
    if (System.console() == null || now < nextNanos) {
      return;
    }
    nextNanos = now + EVERY_NANOS;
    shown = true;
    err.print("\r" + words(seconds, share));
    err.flush();
  }

  private String words(double seconds, OptionalDouble share) {
    return share.isPresent()
        ? Wording.of("terminal.heard.share", take, Math.round(100 * share.getAsDouble()))
        : Wording.of("terminal.heard.seconds", take, Math.round(seconds));
  }

  /** It has been heard to its end. */
  public void done() {
    if (shown) {
      err.println();
    }
  }
}
