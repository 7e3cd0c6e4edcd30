package neckway.desk;

import neckway.desk.read.ClipOutput;

/** No output: what it plays is heard by nobody and does not end. */
public final class SilentOutput implements ClipOutput {
  @Override
  public void play(float[] sound, int sampleRate, boolean loop, Ended ended) {
    // heard by nobody
  }

  @Override
  public void stop() {
    // nothing plays
  }
}
