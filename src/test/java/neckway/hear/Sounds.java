package neckway.hear;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Sounds worked out from their formulas, and what the ear makes of them. */
public final class Sounds {
  /** Stiffness of a plain third string at fret 0, measured on an electric guitar. */
  public static final double STIFFNESS = 1e-4;

  private static final double PICK_AT = 0.13;

  /** Above this a pickup and its cable take the partials down; common practice. */
  private static final double BRIGHT_HZ = 3_000;

  private Sounds() {}

  /** Equal temperament, A4 = 440 Hz (ISO 16) = 69 (MIDI 1.0): f = 440 * 2^((m - 69) / 12). */
  public static double hz(double midi) {
    return 440 * Math.pow(2, (midi - 69) / 12);
  }

  /** From the first to the second, 1200 to the octave (Ellis 1885). */
  public static double cents(double fromHz, double toHz) {
    return 1200 * Math.log(toHz / fromHz) / Math.log(2);
  }

  public static double db(double powerRatio) {
    return 10 * Math.log10(powerRatio + 1e-30);
  }

  public static float[] silence(double rateHz, double seconds) {
    return new float[(int) Math.round(rateHz * seconds)];
  }

  public static float[] sine(double rateHz, double hz, double size, double seconds) {
    float[] out = silence(rateHz, seconds);
    addSine(out, rateHz, hz, size, 0.3);
    return out;
  }

  public static void addSine(float[] out, double rateHz, double hz, double size, double phase) {
    for (int i = 0; i < out.length; i++) {
      out[i] += (float) (size * Math.sin(2 * Math.PI * hz * i / rateHz + phase));
    }
  }

  public static void addNoise(float[] out, int from, int to, double size, long seed) {
    Random random = new Random(seed);
    for (int i = from; i < to; i++) {
      out[i] += (float) (size * random.nextGaussian());
    }
  }

  /** Partial k of a stiff string: f_k = k f0 sqrt(1 + B k^2) (Fletcher 1964). */
  public static double partialHz(double firstHz, double stiffness, int k) {
    return k * firstHz / Math.sqrt(1 + stiffness) * Math.sqrt(1 + stiffness * k * k);
  }

  /**
   * Adds a plucked stiff string: partial k of size sin(k pi p) / k at its start, dying away.
   *
   * @param from seconds, when the string is let go
   * @param until seconds, when a finger stops it: in 8 ms it is down to 1/e
   */
  public static void pluck(
      float[] out,
      double rateHz,
      double midi,
      double stiffness,
      double size,
      double from,
      double until) {
    bend(out, rateHz, t -> midi, stiffness, size, from, until);
  }

  /** The pitch of a moment. */
  interface Course {
    double midi(double secondsFromStart);
  }

  /** Like a pluck, of a pitch that moves. */
  static void bend(
      float[] out,
      double rateHz,
      Course course,
      double stiffness,
      double size,
      double from,
      double until) {
    int first = (int) Math.ceil(from * rateHz);
    int last = (int) Math.min(out.length, (until + 0.1) * rateHz);
    double[] turn = new double[last - first];
    for (int i = 0; i < turn.length; i++) {
      turn[i] = 2 * Math.PI * hz(course.midi((first + i) / rateHz - from)) / rateHz;
    }
    double begin = hz(course.midi(0));
    double stopped = Math.exp(-1 / (0.008 * rateHz));
    for (int k = 1; k <= 40; k++) {
      double startHz = partialHz(begin, stiffness, k);
      if (startHz > Math.min(7_000, 0.45 * rateHz)) {
        break;
      }
      double roll = 1 + Math.pow(startHz / BRIGHT_HZ, 2.5);
      double now = size * Math.sin(k * Math.PI * PICK_AT) / k / roll;
      double keep = Math.exp(-(0.6 + 0.25 * k) / rateHz);
      double ratio = startHz / begin;
      double angle = 2 * Math.PI * startHz * (first / rateHz - from);
      for (int i = 0; i < turn.length && Math.abs(now) > 1e-7; i++) {
        out[first + i] += (float) (now * Math.sin(angle));
        angle += ratio * turn[i];
        now *= first + i > until * rateHz ? keep * stopped : keep;
      }
    }
  }

  /** Notes plucked one after the other at a fixed distance, from 0.5 s on, each stopped in time. */
  public static float[] line(double rateHz, double slotSeconds, double size, double... midis) {
    float[] out = silence(rateHz, 0.5 + slotSeconds * midis.length + 0.5);
    for (int i = 0; i < midis.length; i++) {
      double at = 0.5 + i * slotSeconds;
      pluck(out, rateHz, midis[i], STIFFNESS, size, at, at + slotSeconds);
    }
    addNoise(out, 0, out.length, 1e-5, 9);
    return out;
  }

  /** Takes down what the ear says. */
  static final class Notebook implements NoteListener {
    final List<HeardNote> notes = new ArrayList<>();
    double listened;

    @Override
    public void heard(HeardNote note) {
      notes.add(note);
    }

    @Override
    public void listenedUntil(double seconds) {
      listened = seconds;
    }

    List<Integer> midis() {
      return notes.stream().map(HeardNote::midi).toList();
    }
  }

  static Notebook hear(float[] sound, double rateHz) {
    return hear(new Ear(rateHz), sound);
  }

  static Notebook hear(Ear ear, float[] sound) {
    Notebook notebook = new Notebook();
    for (int i = 0; i < sound.length; i += 512) {
      ear.process(sound, i, Math.min(512, sound.length - i), notebook);
    }
    ear.finish(notebook);
    return notebook;
  }
}
