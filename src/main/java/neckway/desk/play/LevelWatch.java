package neckway.desk.play;

import java.util.Arrays;
import java.util.OptionalDouble;
import neckway.hear.Tuner;
import neckway.neck.Pitch;

/**
 * Listens before a run and finds what is off: nothing there, too quiet, clipping, or a guitar that
 * is out of tune as a whole. For one thread; allocates nothing while listening.
 */
public final class LevelWatch {
  /** What is off. */
  public enum Finding {
    /** Nothing was heard yet: no fault, for nobody may have played. */
    NOTHING_YET,
    GOOD,
    TOO_QUIET,
    CLIPPING,
    FLAT,
    SHARP
  }

  /** A guitar whose loudest note stays below this is too quiet, dB of full scale. */
  public static final double QUIET_DBFS = -34;

  /** Below this it is the noise of the room. */
  static final double NOTHING_DBFS = -58;

  /** Off by more than this, a guitar is out of tune as a whole, cents. */
  static final double CENTS = 20;

  private static final float FULL = 0.997f;
  private static final int CLIPPED_IN_A_ROW = 3;
  private static final int READINGS = 12;
  private static final double MEMORY_SECONDS = 6;

  private final Tuner tuner;
  private final double fallPerFrame;
  private final double[] cents = new double[READINGS];
  private final double[] sorted = new double[READINGS];
  private double loudest;
  private double clippedFrames;
  private float meter;
  private int row;
  private int readings;
  private boolean steady;

  /**
   * @param sampleRate frames a second
   */
  public LevelWatch(double sampleRate) {
    tuner = new Tuner(sampleRate);
    fallPerFrame = Math.pow(10, -20 / 20.0 / (MEMORY_SECONDS * sampleRate));
  }

  /** Takes samples in blocks of any size. */
  public void feed(float[] samples, int length) {
    float peak = 0;
    for (int i = 0; i < length; i++) {
      float size = Math.abs(samples[i]);
      peak = Math.max(peak, size);
      loudest = Math.max(loudest * fallPerFrame, size);
      row = size >= FULL ? row + 1 : 0;
      clippedFrames = row >= CLIPPED_IN_A_ROW ? 1 : clippedFrames * fallPerFrame;
    }
    meter = Math.max(peak, 0.85f * meter);
    if (!tuner.process(samples, 0, length)) {
      return;
    }
    steady = tuner.steady();
    if (steady) {
      double midi = Pitch.midiOfHz(tuner.pitchHz());
      cents[readings % READINGS] = 100 * (midi - Math.rint(midi));
      readings++;
    }
  }

  /** What the meter shows, 0 to 1. */
  public float meter() {
    return meter;
  }

  /** The tone that sounds now, Hz; empty where none is steady. */
  public OptionalDouble toneHz() {
    return steady ? OptionalDouble.of(tuner.pitchHz()) : OptionalDouble.empty();
  }

  /** Cents that the guitar is off as a whole; 0 before enough was heard. */
  double centsOff() {
    if (readings < READINGS) {
      return 0;
    }
    System.arraycopy(cents, 0, sorted, 0, READINGS);
    Arrays.sort(sorted);
    return (sorted[READINGS / 2 - 1] + sorted[READINGS / 2]) / 2;
  }

  /** The loudest of the last seconds, dB of full scale. */
  public double loudestDbfs() {
    return Math.max(-120, 20 * Math.log10(loudest + 1e-9));
  }

  /** What is off, the worst first. */
  public Finding finding() {
    if (clippedFrames > 0.3) {
      return Finding.CLIPPING;
    }
    if (loudestDbfs() < NOTHING_DBFS) {
      return Finding.NOTHING_YET;
    }
    if (loudestDbfs() < QUIET_DBFS) {
      return Finding.TOO_QUIET;
    }
    double off = centsOff();
    if (Math.abs(off) > CENTS) {
      return off < 0 ? Finding.FLAT : Finding.SHARP;
    }
    return Finding.GOOD;
  }
}
