package neckway.live;

import neckway.sound.ClickTrack;
import neckway.sound.PlayedSound;

/**
 * The clicks of a run that a backing plays in: those of each count-in, those after the backing's
 * end, and no others.
 */
final class BesideClick implements PlayedSound {
  private final PlayedSound clicks;
  private final double backingEnds;
  private volatile double from;
  private volatile double until;

  /**
   * @param clicks on every beat
   * @param backingEnds the frame from which on each beat is clicked
   */
  BesideClick(PlayedSound clicks, double backingEnds) {
    this.clicks = clicks;
    this.backingEnds = backingEnds;
  }

  /** A round begins: its count-in is clicked. */
  void countIn(ClickTrack track, int countIn) {
    until = track.clickFrame(countIn) - 1;
    from = track.clickFrame(0) - 1;
  }

  @Override
  public void fill(long frame, float[] block) {
    clicks.fill(frame, block);
    double first = from;
    double last = until;
    for (int i = 0; i < block.length; i++) {
      long at = frame + i;
      if (!(at >= first && at < last || at >= backingEnds)) {
        block[i] = 0;
      }
    }
  }
}
