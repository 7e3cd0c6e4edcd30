package neckway.band;

import neckway.drill.Pulse;
import neckway.sound.ClickTrack;
import neckway.sound.Levelling;

/**
 * Chords, bass and drums as sound. It begins with the count-in, which is clicked: bar 1 begins
 * {@code countIn} beats after the first sample, to the sample.
 *
 * @param samples mono, at the one loudness of all playback
 * @param sampleRate frames a second
 */
public record Backing(float[] samples, int sampleRate) {
  /** The first bar begins at this share of full and grows, so that nothing is suddenly loud. */
  private static final double FIRST_SHARE = 0.3;

  /** How the clicks of a whole backing stand beside the band. */
  public enum Clicks {
    /** The count-in is clicked, and then the band has the beat. */
    COUNT_IN,
    /** Every beat is clicked. */
    ALL
  }

  /**
   * Plays a row of chords.
   *
   * @param pulse tempo, beats in a bar and count-in
   * @param bars how many, 1 or more
   * @throws neckway.neck.BadInput where this Java has no synthesizer
   */
  public static Backing of(ChordRow row, Feel feel, Pulse pulse, int bars, Clicks clicks) {
    Score score = Score.of(row, feel, pulse.beatsPerBar(), bars);
    float[] played = Synthesizer.play(score, pulse.tempo());
    double framesPerBeat = Synthesizer.SAMPLE_RATE * pulse.beatSeconds();
    int start = (int) Math.round(pulse.countIn() * framesPerBeat);
    comeIn(played, (int) (pulse.beatsPerBar() * framesPerBeat));
    float[] level = Levelling.levelled(played, Synthesizer.SAMPLE_RATE);
    float[] whole = new float[start + level.length];
    System.arraycopy(level, 0, whole, start, level.length);
    long beats = pulse.countIn() + (clicks == Clicks.ALL ? score.beats() : 0);
    addClicks(whole, pulse, framesPerBeat, beats);
    return new Backing(whole, Synthesizer.SAMPLE_RATE);
  }

  /**
   * Plays a row of chords that is to go round and round: no count-in, as loud at its beginning as
   * later, and with what rings on after its last bar, {@code bars} times {@code beatsPerBar} beats
   * after its first sample.
   *
   * @param bars how many, 1 or more
   * @throws neckway.neck.BadInput where this Java has no synthesizer
   */
  public static Backing goingRound(ChordRow row, Feel feel, Pulse pulse, int bars) {
    float[] played =
        Synthesizer.play(Score.of(row, feel, pulse.beatsPerBar(), bars), pulse.tempo());
    return new Backing(
        Levelling.levelled(played, Synthesizer.SAMPLE_RATE), Synthesizer.SAMPLE_RATE);
  }

  private static void comeIn(float[] band, int frames) {
    for (int i = 0; i < Math.min(frames, band.length); i++) {
      band[i] *= (float) (FIRST_SHARE + (1 - FIRST_SHARE) * i / frames);
    }
  }

  private static void addClicks(float[] whole, Pulse pulse, double framesPerBeat, long beats) {
    ClickTrack track =
        new ClickTrack(
            Synthesizer.SAMPLE_RATE,
            0,
            framesPerBeat,
            pulse.beatsPerBar(),
            pulse.countIn(),
            beats,
            Levelling.CLICK_PEAK);
    float[] clicks = new float[whole.length];
    track.fill(0, clicks);
    for (int i = 0; i < whole.length; i++) {
      whole[i] = (float) Math.max(-1, Math.min(1, whole[i] + clicks[i]));
    }
  }
}
