package neckway.hear;

import java.util.List;
import java.util.OptionalDouble;

/** Samples in, notes out, the same for any block size. */
public final class Ear {
  private final double sampleRateHz;
  private long frames;

  /**
   * @param sampleRateHz 8,000 to 192,000
   * @throws IllegalArgumentException for any other rate
   */
  public Ear(double sampleRateHz) {
    if (!(sampleRateHz >= 8_000 && sampleRateHz <= 192_000)) {
      throw new IllegalArgumentException("sample rate " + sampleRateHz + " Hz");
    }
    this.sampleRateHz = sampleRateHz;
  }

  /**
   * Says that a click may be heard on every beat, before and after the first one. Call before any
   * sound. The clicks heard there are taken out of the sound; nothing else changes.
   *
   * @param firstBeat seconds
   * @param beatSeconds more than 0
   */
  public void expectClicks(double firstBeat, double beatSeconds) {}

  /** Takes samples from -1 to 1. */
  public void process(float[] samples, int offset, int length, NoteListener listener) {
    frames += length;
    listener.listenedUntil(frames / sampleRateHz);
  }

  /** Ends the take: what is still open is decided. */
  public void finish(NoteListener listener) {
    listener.listenedUntil(frames / sampleRateHz);
  }

  /** The guitar's offset from A4 = 440 Hz in cents, -50 to 50, once enough notes tell it. */
  public OptionalDouble tuningCents() {
    return OptionalDouble.empty();
  }

  /** Highest sample so far, dB of full scale. */
  public double peakDbfs() {
    return -120;
  }

  /** Level of the quiet between notes so far, dB of full scale. */
  public double noiseDbfs() {
    return -120;
  }

  /** Onsets of what sounded like a metronome's clicks, in seconds. */
  public List<Double> clicks() {
    return List.of();
  }
}
