package neckway.sound;

/**
 * A backing on the click's beat: what of it lies before its first beat sounds in the count-in, in
 * which it fades in. It goes round and round, each time placed on the beat to the sample, or it
 * ends where it ends. Allocates nothing while playing.
 */
public final class BackingTrack implements PlayedSound {
  private final float[] sound;
  private final double startFrame;
  private final double loopFrames;
  private final long firstFrame;
  private final double fadeFrom;

  private BackingTrack(
      float[] sound, double startFrame, double loopFrames, long firstFrame, double fadeFrames) {
    this.sound = sound;
    this.startFrame = startFrame;
    this.loopFrames = loopFrames;
    this.firstFrame = firstFrame;
    fadeFrom = startFrame - fadeFrames;
  }

  /**
   * One that goes round without end, the time before the first beat too.
   *
   * @param sound whose first sample is its first beat, with what rings on after its last bar
   * @param startFrame output frame of the first beat of the run
   * @param loopFrames from round to round, at least half as long as the sound
   * @param fadeFrames before the first beat in which it fades in; before that it is silent
   */
  public static BackingTrack round(
      float[] sound, double startFrame, double loopFrames, double fadeFrames) {
    if (!(loopFrames >= 1 && 2 * loopFrames >= sound.length)) {
      throw new IllegalArgumentException(loopFrames + " frames of " + sound.length);
    }
    return new BackingTrack(sound, startFrame, loopFrames, 0, fadeFrames);
  }

  /**
   * One that is played once.
   *
   * @param firstBeatFrame the sample of it that is to sound at the first beat
   */
  public static BackingTrack once(
      float[] sound, double startFrame, double firstBeatFrame, double fadeFrames) {
    return new BackingTrack(
        sound,
        startFrame,
        Double.POSITIVE_INFINITY,
        Math.round(startFrame - firstBeatFrame),
        fadeFrames);
  }

  /** The output frame at which it is over; infinite where it goes round. */
  public double endFrame() {
    return Double.isInfinite(loopFrames) ? firstFrame + sound.length : Double.POSITIVE_INFINITY;
  }

  @Override
  public void fill(long frame, float[] block) {
    for (int i = 0; i < block.length; i++) {
      long at = frame + i;
      block[i] = at < fadeFrom ? 0 : (float) (fade(at) * sample(at));
    }
  }

  private double fade(long at) {
    return at >= startFrame
        ? 1
        : 0.5 - 0.5 * Math.cos(Math.PI * (at - fadeFrom) / (startFrame - fadeFrom));
  }

  private float sample(long at) {
    if (Double.isInfinite(loopFrames)) {
      return at(at - firstFrame);
    }
    double round = Math.floor((at + 0.5 - startFrame) / loopFrames);
    // what rings on of the round before
    return at(at - begins(round)) + at(at - begins(round - 1));
  }

  private long begins(double round) {
    return Math.round(startFrame + round * loopFrames);
  }

  private float at(long index) {
    return index >= 0 && index < sound.length ? sound[(int) index] : 0;
  }
}
