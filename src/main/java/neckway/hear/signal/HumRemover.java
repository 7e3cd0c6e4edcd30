package neckway.hear.signal;

/**
 * Learns mains hum, 50 or 60 Hz with its harmonics, as the wave that repeats with the mains, and
 * takes it off. It learns fast in the quiet and holds on through notes: what it learns from then is
 * limited to the size of the hum, so that a loud note moves it little. It does nothing until the
 * hum makes up most of a quiet stretch.
 */
public final class HumRemover {
  private static final int[] MAINS_HZ = {50, 60};
  private static final double BLOCK_SECONDS = 0.05;
  private static final double HOLD_SECONDS = 1.5;

  /** Share of the quiet that hum must leave unexplained, at most, to be taken for hum. */
  private static final double ENOUGH = 0.4;

  /** Share from which it is no longer taken for hum. */
  private static final double TOO_LITTLE = 0.85;

  /** Quiet blocks before the hum is believed. */
  private static final int LEAST_BLOCKS = 5;

  private final Table[] tables = new Table[MAINS_HZ.length];
  private final int block;
  private int filled;
  private double energy;
  private double floor = Double.NaN;
  private int quietBlocks;
  private Table active;

  HumRemover(double rateHz) {
    block = (int) (BLOCK_SECONDS * rateHz);
    for (int i = 0; i < tables.length; i++) {
      tables[i] = new Table(rateHz, MAINS_HZ[i]);
    }
  }

  /** Takes the hum, where it is believed, off {@code x[from, to)}. */
  void process(float[] x, int from, int to) {
    for (int at = from; at < to; ) {
      int end = Math.min(to, at + block - filled);
      takeOff(x, at, end);
      filled += end - at;
      at = end;
      if (filled == block) {
        decide();
      }
    }
  }

  private void takeOff(float[] x, int from, int to) {
    energy += SoundEnergy.of(x, from, to);
    for (Table table : tables) {
      if (table != active) {
        table.learn(x, from, to, false);
      }
    }
    if (active != null) {
      active.learn(x, from, to, true);
    }
  }

  /** Whether hum is being taken off. */
  boolean active() {
    return active != null;
  }

  private void decide() {
    double level = energy / block + 1e-14;
    floor = Double.isNaN(floor) ? level : Math.min(1.003 * floor, level);
    boolean quiet = level < 4 * floor;
    if (quiet) {
      quietBlocks++;
    }
    Table best = null;
    for (Table table : tables) {
      table.endBlock(quiet, energy, block);
      if (quietBlocks >= LEAST_BLOCKS && (best == null || table.left < best.left)) {
        best = table;
      }
    }
    if (best != null && quiet) {
      if (best.left < ENOUGH) {
        active = best;
      } else if (active != null && active.left > TOO_LITTLE) {
        active = null;
      }
    }
    energy = 0;
    filled = 0;
  }

  /** One mains frequency's wave, one turn of it, kept in step by a phase-locked loop. */
  private static final class Table {
    private static final int BINS = 512;
    private static final double PULL_PHASE = 0.5;
    private static final double PULL_RATE = 0.25;
    private static final double PULL_IN_NOTES = 0.03;

    /** Mains keeps within this share of its frequency. */
    private static final double MOST_OFF = 0.004;

    private final float[] wave = new float[BINS];
    private final double nominal;
    private final double hold;
    private double turn;
    private double at;
    private int turns;
    private float gain = 1;
    private float limit = Float.MAX_VALUE;
    private double rest;
    private double left = 1;
    private double slip;
    private double slope = 1e-12;
    private int settledBlocks;

    Table(double rateHz, int mainsHz) {
      nominal = BINS * mainsHz / rateHz;
      turn = nominal;
      hold = 1.0 / mainsHz / HOLD_SECONDS;
    }

    /** Learns from {@code x[from, to)}, and takes off what it knew before if so wished. */
    void learn(float[] x, int from, int to, boolean takeOff) {
      float limit = this.limit;
      double at = this.at;
      double rest = 0;
      double slip = 0;
      double slope = 0;
      for (int i = from; i < to; i++) {
        int bin = (int) at;
        float part = (float) (at - bin);
        int after = bin + 1 & BINS - 1;
        float rise = wave[after] - wave[bin];
        float error = x[i] - wave[bin] - part * rise;
        float step = error > limit ? limit : error < -limit ? -limit : error;
        rest += error * error;
        slip += step * rise;
        slope += rise * rise;
        wave[bin] += gain * (1 - part) * step;
        wave[after] += gain * part * step;
        at += turn;
        if (at >= BINS) {
          at -= BINS;
          endTurn();
        }
        if (takeOff) {
          x[i] = error;
        }
      }
      this.at = at;
      this.rest += rest;
      this.slip += slip;
      this.slope += slope;
    }

    private void endTurn() {
      turns++;
      gain = (float) Math.max(1.5 / (turns + 1), 1.5 * hold);
    }

    void endBlock(boolean quiet, double energy, int count) {
      if (quiet) {
        double share = Math.min(1, rest / (energy + 1e-12));
        left += 0.3 * (share - left);
        double size = 0;
        for (float w : wave) {
          size += w * w;
        }
        settledBlocks++;
        if (settledBlocks > 3) {
          limit = (float) (1.5 * Math.sqrt(size / BINS) + 1e-6);
        }
      }
      if (settledBlocks > 2) {
        double bins = Math.max(-4, Math.min(4, slip / slope)) * (quiet ? 1 : PULL_IN_NOTES);
        at = (at + PULL_PHASE * bins + BINS) % BINS;
        if (quiet) {
          turn += PULL_RATE * bins / count;
        }
        turn = Math.max(nominal * (1 - MOST_OFF), Math.min(nominal * (1 + MOST_OFF), turn));
      }
      slip = 0;
      slope = 1e-12;
      rest = 0;
    }
  }
}
