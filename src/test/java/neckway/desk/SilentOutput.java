package neckway.desk;

import neckway.desk.read.ClipOutput;
import neckway.sound.Clip;

/** No output: what it plays is heard by nobody and does not end. */
public final class SilentOutput implements ClipOutput {
  private final long framesHeard;

  /** Nothing of what it plays has been heard yet. */
  public SilentOutput() {
    this(0);
  }

  /** So much of whatever it plays has been heard. */
  public SilentOutput(long framesHeard) {
    this.framesHeard = framesHeard;
  }

  @Override
  public void play(Clip clip, Ended ended) {
    // heard by nobody
  }

  @Override
  public void stop() {
    // nothing plays
  }

  @Override
  public long framesHeard() {
    return framesHeard;
  }
}
