package neckway.desk;

import neckway.desk.read.ClipOutput;
import neckway.sound.Clip;

/** No output: what it plays is heard by nobody and does not end. */
public final class SilentOutput implements ClipOutput {
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
    return 0;
  }
}
