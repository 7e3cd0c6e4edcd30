package neckway.sound;

/**
 * What the loudspeaker plays: a click on every beat, placed by sample index, so that its time in
 * the output is exact whatever the machine does. Allocates nothing while playing.
 */
public final class ClickTrack implements PlayedSound {
  /** Full gain; no click is louder than this share of full scale. */
  public static final double MAX_GAIN = 0.5;

  /** Gain when nothing is said: quiet, because headphones differ by a great deal. */
  public static final double USUAL_GAIN = 0.1;

  private final double firstFrame;
  private final double framesPerBeat;
  private final int beatsPerBar;
  private final int countIn;
  private final long beats;
  private final float gain;
  private final float[] accent;
  private final float[] plain;

  /**
   * @param sampleRate frames a second
   * @param firstFrame output frame of the first click
   * @param framesPerBeat at least as long as a click
   * @param beatsPerBar 1 or more
   * @param countIn beats before the first one of a bar
   * @param beats how many clicks in all; 0 for silence
   * @param gain share of full scale, 0 to {@link #MAX_GAIN}
   */
  public ClickTrack(
      int sampleRate,
      double firstFrame,
      double framesPerBeat,
      int beatsPerBar,
      int countIn,
      long beats,
      double gain) {
    if (!(gain >= 0 && gain <= MAX_GAIN)) {
      throw new IllegalArgumentException("gain " + gain + ": 0 to " + MAX_GAIN);
    }
    if (!(firstFrame >= 0 && framesPerBeat >= ClickSound.SECONDS * sampleRate)) {
      throw new IllegalArgumentException("clicks from " + firstFrame + " every " + framesPerBeat);
    }
    if (beatsPerBar < 1 || countIn < 0 || beats < 0) {
      throw new IllegalArgumentException("bars of " + beatsPerBar + ", count-in " + countIn);
    }
    this.firstFrame = firstFrame;
    this.framesPerBeat = framesPerBeat;
    this.beatsPerBar = beatsPerBar;
    this.countIn = countIn;
    this.beats = beats;
    this.gain = (float) gain;
    accent = ClickSound.accent(sampleRate);
    plain = ClickSound.plain(sampleRate);
  }

  private ClickTrack(ClickTrack other, double firstFrame, long beats) {
    this.firstFrame = firstFrame;
    this.beats = beats;
    framesPerBeat = other.framesPerBeat;
    beatsPerBar = other.beatsPerBar;
    countIn = other.countIn;
    gain = other.gain;
    accent = other.accent;
    plain = other.plain;
  }

  /** Output frame at which a click starts; the count-in's first one is number 0. */
  public double clickFrame(long click) {
    return firstFrame + click * framesPerBeat;
  }

  /** The last click that has begun at an output frame; negative before the first. */
  public long clickBefore(double frame) {
    return (long) Math.floor((frame - firstFrame) / framesPerBeat);
  }

  /**
   * The same clicks counted from a later one, which begins a bar as the first one did: a whole
   * number of bars later.
   */
  public ClickTrack from(long click) {
    if (click < 0 || click % beatsPerBar != 0) {
      throw new IllegalArgumentException("click " + click + " of bars of " + beatsPerBar);
    }
    return new ClickTrack(this, clickFrame(click), beats - click);
  }

  /** Frames from click to click. */
  double framesPerBeat() {
    return framesPerBeat;
  }

  /** The sound of a click at gain 1. Not to be changed. */
  float[] sound(long click) {
    return Math.floorMod(click - countIn, beatsPerBar) == 0 ? accent : plain;
  }

  /** Writes the sound of the frames from this one on over a block. */
  @Override
  public void fill(long frame, float[] block) {
    for (int i = 0; i < block.length; i++) {
      long at = frame + i;
      long click = (long) Math.floor((at + 0.5 - firstFrame) / framesPerBeat);
      float sample = 0;
      if (click >= 0 && click < beats) {
        float[] sound = sound(click);
        long offset = at - Math.round(clickFrame(click));
        sample = offset >= 0 && offset < sound.length ? gain * sound[(int) offset] : 0;
      }
      block[i] = sample;
    }
  }
}
