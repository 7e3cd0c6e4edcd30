package neckway.band;

import be.tarsos.dsp.util.fft.FFT;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Looks for the beat of a recording that keeps one tempo: where its onsets come again and again. An
 * onset is where the spectrum grows (spectral flux, as in Bello et al., "A tutorial on onset
 * detection in music signals", IEEE Trans. SAP 13, 2005); the tempo is the lag at which onsets are
 * most like those before, weighted towards what is usually tapped (Ellis, "Beat tracking by dynamic
 * programming", JNMR 36, 2007), made exact on a comb of beats over the whole recording. Half and
 * twice the tempo fit nearly as well, and one and a half times where a beat has three even notes;
 * so what is found is to be shown for correction.
 */
public final class BeatFinder {
  /** Slowest and fastest tempo that is looked for, beats a minute. */
  private static final double SLOWEST = 50;

  private static final double FASTEST = 200;

  /** The tempo most usually tapped, and the spread around it in octaves (Ellis 2007). */
  private static final double USUAL = 120;

  private static final double SPREAD_OCTAVES = 0.9;

  private static final int FRAME = 1024;
  private static final double HOP_SECONDS = 0.005;
  private static final double COMPRESSION = 1000;

  /** The exact tempo is looked for this near the first one, as a share. */
  private static final double NEAR_SHARE = 0.03;

  /** Over the whole recording the last beat is this exact, in hops. */
  private static final double EXACT_HOPS = 0.5;

  /**
   * What comes on the beats must be so many times what comes on average. Measured: vamps 9.7 to
   * 20.7, noise 1.04, forty knocks at random times in twenty seconds up to 6.2.
   */
  static final double LEAST_CONTRAST = 8;

  /** An onset counts as the first when it is this share of what comes on a beat on average. */
  private static final double FIRST_SHARE = 0.4;

  /**
   * So far beside the truth four taps may be: their tempo as a share, each in beats. A tap is some
   * 25 ms beside its beat; common practice, no source.
   */
  private static final double TAPPED_SHARE = 0.05;

  private static final double TAPPED_ASIDE = 0.12;

  private final double hopSeconds;
  private final double[] rises;

  /**
   * What was found.
   *
   * @param tempo beats a minute
   * @param firstBeatSeconds where the first beat is
   * @param contrast how many times more comes on the beats than on average
   */
  public record Found(double tempo, double firstBeatSeconds, double contrast) {}

  /**
   * @param sound mono
   * @param sampleRate Hz
   */
  public BeatFinder(float[] sound, double sampleRate) {
    int hop = (int) Math.round(HOP_SECONDS * sampleRate);
    hopSeconds = hop / sampleRate;
    rises = smoothed(rises(sound, hop));
  }

  /** How much the spectrum grows in the middle of each frame, the frame's middle at its hop. */
  private static double[] rises(float[] sound, int hop) {
    FFT fft = new FFT(FRAME);
    int frames = sound.length / hop;
    double[] rises = new double[frames];
    double[] before = new double[FRAME / 2];
    float[] spectrum = new float[FRAME];
    for (int f = 0; f < frames; f++) {
      int from = f * hop - FRAME / 2;
      for (int i = 0; i < FRAME; i++) {
        int at = from + i;
        double window = 0.5 - 0.5 * Math.cos(2 * Math.PI * i / FRAME);
        spectrum[i] = at >= 0 && at < sound.length ? (float) (window * sound[at]) : 0;
      }
      fft.forwardTransform(spectrum);
      for (int k = 1; k < FRAME / 2; k++) {
        double loud =
            Math.log1p(COMPRESSION * Math.hypot(spectrum[2 * k], spectrum[2 * k + 1]) / FRAME);
        rises[f] += f == 0 ? 0 : Math.max(0, loud - before[k]);
        before[k] = loud;
      }
    }
    return rises;
  }

  /** Without what is always there, and a little wider, since a beat need not fall on a hop. */
  private static double[] smoothed(double[] x) {
    double[] y = new double[x.length];
    double mean = 0;
    for (double v : x) {
      mean += v / x.length;
    }
    for (int i = 2; i < x.length - 2; i++) {
      double wide = x[i - 2] / 4 + x[i - 1] / 2 + x[i] + x[i + 1] / 2 + x[i + 2] / 4;
      y[i] = Math.max(0, wide / 2.5 - mean / 2);
    }
    return y;
  }

  /**
   * Looks for it.
   *
   * @param tempo where it is known, beats a minute: then the first beat alone is looked for
   * @return nothing where no tempo fits the onsets
   */
  public Optional<Found> find(OptionalDouble tempo) {
    double mean = mean();
    double longest = 60 / SLOWEST / hopSeconds;
    if (mean == 0 || rises.length < 4 * longest) {
      return Optional.empty();
    }
    Comb best =
        tempo.isPresent() ? onPhase(60 / tempo.getAsDouble() / hopSeconds) : exact(likestLag());
    double contrast = best.onBeats() / mean;
    if (contrast < LEAST_CONTRAST) {
      return Optional.empty();
    }
    return Optional.of(
        new Found(
            tempo.orElse(60 / (best.lag() * hopSeconds)), firstBeat(best) * hopSeconds, contrast));
  }

  /**
   * Makes a beat exact that somebody tapped: of the combs of beats near it, the one on which most
   * comes.
   *
   * @param tempo as tapped, beats a minute
   * @param beatSeconds where a beat was tapped
   * @return nothing where no beat near it is any better than the sound on the whole
   */
  public Optional<Found> near(double tempo, double beatSeconds) {
    double lag = 60 / tempo / hopSeconds;
    double at = beatSeconds / hopSeconds;
    double away = Math.max(at, rises.length - at);
    if (rises.length < 4 * lag || at >= rises.length) {
      return Optional.empty();
    }
    double step = EXACT_HOPS * lag / away;
    int steps = (int) (TAPPED_SHARE * lag / step);
    int aside = (int) (TAPPED_ASIDE * lag);
    Comb best = new Comb(lag, at, 0);
    for (int i = -steps; i <= steps; i++) {
      for (int by = -aside; by <= aside; by++) {
        Comb tried = through(lag + i * step, at + by);
        best = tried.onBeats() > best.onBeats() ? tried : best;
      }
    }
    double contrast = best.onBeats() / Math.max(Double.MIN_NORMAL, mean());
    return contrast < LEAST_CONTRAST
        ? Optional.empty()
        : Optional.of(
            new Found(60 / (best.lag() * hopSeconds), best.phase() * hopSeconds, contrast));
  }

  /** The comb that has a beat there. */
  private Comb through(double lag, double at) {
    double sum = 0;
    int count = 0;
    for (double beat = at - Math.floor(at / lag) * lag; beat < rises.length - 1; beat += lag) {
      sum += rises[(int) Math.round(beat)];
      count++;
    }
    return new Comb(lag, at, sum / Math.max(1, count));
  }

  private double mean() {
    double mean = 0;
    for (double rise : rises) {
      mean += rise / Math.max(1, rises.length);
    }
    return mean;
  }

  private double likestLag() {
    int from = (int) (60 / FASTEST / hopSeconds);
    int to = (int) (60 / SLOWEST / hopSeconds);
    double best = from;
    double most = -1;
    for (int lag = from; lag <= to; lag++) {
      double sum = 0;
      for (int i = lag; i < rises.length; i++) {
        sum += rises[i] * rises[i - lag];
      }
      double octaves = Math.log(60 / (lag * hopSeconds) / USUAL) / Math.log(2) / SPREAD_OCTAVES;
      double weighted = sum / (rises.length - lag) * Math.exp(-0.5 * octaves * octaves);
      if (weighted > most) {
        most = weighted;
        best = lag;
      }
    }
    return best;
  }

  /**
   * Beats all over the recording.
   *
   * @param lag hops from beat to beat
   * @param phase hop of the first one, less than a lag
   * @param onBeats what comes on them on average
   */
  private record Comb(double lag, double phase, double onBeats) {}

  private Comb exact(double lag) {
    double beats = rises.length / lag;
    double step = EXACT_HOPS / beats;
    int steps = (int) (NEAR_SHARE * lag / step);
    Comb best = onPhase(lag);
    for (int i = -steps; i <= steps; i++) {
      Comb tried = onPhase(lag + i * step);
      best = tried.onBeats() > best.onBeats() ? tried : best;
    }
    return best;
  }

  private Comb onPhase(double lag) {
    Comb best = new Comb(lag, 0, -1);
    for (int phase = 0; phase < lag; phase++) {
      double sum = 0;
      int count = 0;
      for (double at = phase; at < rises.length - 1; at += lag) {
        sum += rises[(int) Math.round(at)];
        count++;
      }
      if (sum / count > best.onBeats()) {
        best = new Comb(lag, phase, sum / count);
      }
    }
    return best;
  }

  /** The first beat on which something begins, hops. */
  private double firstBeat(Comb comb) {
    for (double at = comb.phase(); at < rises.length - 1; at += comb.lag()) {
      if (rises[(int) Math.round(at)] >= FIRST_SHARE * comb.onBeats()) {
        return at;
      }
    }
    return comb.phase();
  }
}
