package neckway.sound;

import java.util.Optional;
import java.util.OptionalDouble;
import neckway.neck.BadInput;
import neckway.words.Wording;

/**
 * What a pair of devices adds to the offset that they report: the same in each run, so it is
 * measured once and kept.
 *
 * @param extraSeconds a click is captured this much later than the two positions say; may be
 *     negative
 * @param spreadSeconds median distance of the single clicks from it
 * @param clicks how many were heard
 * @param sampleRate at which it was measured, frames a second
 */
public record RoundTrip(double extraSeconds, double spreadSeconds, int clicks, int sampleRate) {
  /** Fewer clicks than this are no measurement. */
  public static final int LEAST_CLICKS = 10;

  private static final int PLAYED_CLICKS = 16;
  private static final double LEAD_SECONDS = 1.5;
  private static final double GAP_SECONDS = 0.4;

  /**
   * Plays clicks and listens for them; takes about eight seconds. The input must hear the output: a
   * microphone at the loudspeaker or the headphones, or a cable.
   *
   * @param gain of the clicks, 0 to {@link ClickTrack#MAX_GAIN}
   * @throws BadInput where a device is missing or too few clicks are heard
   */
  public static RoundTrip measure(Optional<String> input, Optional<String> output, double gain) {
    var inLine = Devices.openInput(input);
    float rate = inLine.getFormat().getSampleRate();
    var outLine = Devices.openOutput(output, rate);
    ClickTrack track =
        new ClickTrack(
            (int) rate, LEAD_SECONDS * rate, GAP_SECONDS * rate, 4, 0, PLAYED_CLICKS, gain);
    Recorded sound = new Recorded(LEAD_SECONDS + (PLAYED_CLICKS + 2) * GAP_SECONDS, rate);
    OptionalDouble reported;
    try (Capture in = new Capture(inLine);
        Playback out = new Playback(outLine, track);
        OffsetWatch positions = new OffsetWatch(in, out)) {
      in.start();
      out.start();
      Pump.End end =
          Pump.run(
              in,
              (samples, length) -> {
                sound.add(samples, length);
                if (sound.length > LEAD_SECONDS * rate / 2) {
                  positions.start();
                }
                return !sound.full();
              },
              out::gone);
      refuseUnlessHeard(end);
      reported = positions.offsetFrames();
    }
    if (reported.isEmpty()) {
      throw new BadInput(Wording.of("machine.trip.noPositions"));
    }
    ClickFinder.Heard heard =
        ClickFinder.offset(
            sound.samples,
            sound.length,
            track,
            PLAYED_CLICKS,
            reported.getAsDouble() + 0.1 * rate,
            0.18 * rate);
    if (heard.count() < LEAST_CLICKS || heard.spread() > 0.003 * rate) {
      throw new BadInput(Wording.of("machine.trip.fewClicks", heard.count(), PLAYED_CLICKS));
    }
    return new RoundTrip(
        (heard.median() - reported.getAsDouble()) / rate,
        heard.spread() / rate,
        heard.count(),
        Math.round(rate));
  }

  private static void refuseUnlessHeard(Pump.End end) {
    switch (end) {
      case ENOUGH -> {}
      case GONE -> throw new BadInput(Wording.of("machine.trip.gone.input"));
      case STOPPED -> throw new BadInput(Wording.of("machine.trip.gone.output"));
    }
  }

  /** So many seconds of sound from the beginning. */
  private static final class Recorded {
    private final float[] samples;
    private int length;

    Recorded(double seconds, double sampleRate) {
      samples = new float[(int) (seconds * sampleRate)];
    }

    void add(float[] block, int blockLength) {
      int kept = Math.min(blockLength, samples.length - length);
      System.arraycopy(block, 0, samples, length, kept);
      length += kept;
    }

    boolean full() {
      return length == samples.length;
    }
  }
}
