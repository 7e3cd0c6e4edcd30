package neckway.calibration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.TreeSet;
import neckway.hear.RobustStatistics;
import neckway.neck.GuitarString;
import neckway.neck.Tuning;

/**
 * Finds which of the notes heard is which of the calibration sequence, at the least cost over the
 * whole take (dynamic programming, first within a string, then over the strings).
 *
 * <p>A note is a pluck of the fret whose turn it is, another pluck of a fret of that string, the
 * wrong fret, or a stray; a fret may be left out. Each string may be out of tune by up to {@value
 * #MOST_OFF} semitones and the whole guitar too; both cost.
 */
final class SequenceMatch {
  /** A string may be this far out of tune with the rest, semitones. */
  static final double MOST_OFF = 2.5;

  /** A pluck may be this far off the string's own tuning, semitones. */
  private static final double MOST_INTONATION = 0.45;

  private static final double LEFT_OUT = 1.0;

  /** Leaving out a whole string is likelier than leaving out as many single frets: its share. */
  private static final double WHOLE_STRING = 0.6;

  private static final double STRAY = 0.7;

  /** A note that soon followed by another was no pluck left to ring, seconds. */
  private static final double BRUSHED_SECONDS = 0.2;

  private static final double STRAY_BRUSHED = 0.2;
  private static final double PLUCK_BRUSHED = 0.3;
  private static final double AGAIN = 0.35;

  /** A fret out of turn, before its own. */
  private static final double TOO_SOON = 0.5;

  private static final double WRONG = 1.3;
  private static final int MOST_FRETS_WRONG = 3;

  /** Cost for each semitone that a string is out of tune with the rest. */
  private static final double OFF = 1.0;

  private static final double BUCKETS_PER_SEMITONE = 20;
  private static final double BIG = 1e9;

  private enum Move {
    LEFT_OUT,
    STRAY,
    AGAIN,
    WRONG,
    PLUCK
  }

  private final Tuning tuning;
  private final List<GuitarString> strings;
  private final List<Integer> frets;
  private final List<Pluck> heard;
  private final boolean[] brushed;
  private final int longest;

  private double cost;
  private double wholeOff;
  private final List<StringMatch> matches = new ArrayList<>();
  private final List<Pluck> strays = new ArrayList<>();

  private SequenceMatch(
      Tuning tuning,
      List<GuitarString> strings,
      List<Integer> frets,
      List<Pluck> heard,
      double wholeOff) {
    this.tuning = tuning;
    this.strings = strings;
    this.frets = frets;
    this.heard = heard;
    this.wholeOff = wholeOff;
    this.brushed = new boolean[heard.size()];
    for (int j = 0; j + 1 < heard.size(); j++) {
      brushed[j] = heard.get(j + 1).time() - heard.get(j).time() < BRUSHED_SECONDS;
    }
    this.longest = 3 * frets.size() + 6;
    match();
  }

  /** The best explanation of what was heard, with the strings in the order asked. */
  static SequenceMatch of(Tuning tuning, List<Integer> frets, List<Pluck> heard) {
    return best(tuning, tuning.strings(), frets, heard);
  }

  /** The same for a player who went from the highest string to the lowest. */
  static SequenceMatch backwards(Tuning tuning, List<Integer> frets, List<Pluck> heard) {
    List<GuitarString> strings = new ArrayList<>(tuning.strings());
    Collections.reverse(strings);
    return best(tuning, strings, frets, heard);
  }

  private static SequenceMatch best(
      Tuning tuning, List<GuitarString> strings, List<Integer> frets, List<Pluck> heard) {
    SequenceMatch best = null;
    for (int off = -2; off <= 2; off++) {
      SequenceMatch match = new SequenceMatch(tuning, strings, frets, heard, off);
      if (best == null
          || match.cost + 0.2 * Math.abs(off) < best.cost + 0.2 * Math.abs(best.wholeOff)) {
        best = match;
      }
    }
    List<Double> offs =
        best.matches.stream()
            .filter(m -> m.heard() > 0)
            .map(m -> m.middleOff(tuning.openMidi(m.string), frets))
            .toList();
    return offs.isEmpty()
        ? best
        : new SequenceMatch(tuning, strings, frets, heard, RobustStatistics.median(offs));
  }

  /** String by string, as the tuning has them from the lowest. */
  List<StringMatch> matches() {
    List<StringMatch> sorted = new ArrayList<>(matches);
    sorted.sort((a, b) -> b.string.compareTo(a.string));
    return sorted;
  }

  /** Notes that belong to no place. */
  List<Pluck> strays() {
    return Collections.unmodifiableList(strays);
  }

  /** How far the guitar as a whole is off the tuning, semitones. */
  double wholeOff() {
    return wholeOff;
  }

  /** How many places of the sequence were heard. */
  int places() {
    return matches.stream().mapToInt(StringMatch::heard).sum();
  }

  private void match() {
    int notes = heard.size();
    double[][] least = new double[strings.size() + 1][notes + 1];
    int[][] from = new int[strings.size() + 1][notes + 1];
    double[][] off = new double[strings.size() + 1][notes + 1];
    for (int j = 0; j <= notes; j++) {
      least[0][j] = j == 0 ? 0 : least[0][j - 1] + stray(j - 1);
    }
    for (int s = 0; s < strings.size(); s++) {
      Arrays.fill(least[s + 1], BIG);
      for (int i = 0; i <= notes; i++) {
        segments(s, i, least, from, off);
      }
      for (int j = 1; j <= notes; j++) {
        if (least[s + 1][j - 1] + stray(j - 1) < least[s + 1][j]) {
          least[s + 1][j] = least[s + 1][j - 1] + stray(j - 1);
          from[s + 1][j] = -1;
        }
      }
    }
    cost = least[strings.size()][notes];
    traceStrings(from, off);
  }

  /** Tries every end of a string's part that begins with note {@code i}. */
  private void segments(int s, int i, double[][] least, int[][] from, double[][] off) {
    int open = tuning.openMidi(strings.get(s));
    for (double semitones : offsets(open, i)) {
      double prior = OFF * Math.abs(semitones - wholeOff);
      double[] row = firstRow();
      double skipped = WHOLE_STRING * row[frets.size()];
      relax(s, i, i, least[s][i] + prior + skipped, semitones, least, from, off);
      for (int j = i; j < Math.min(heard.size(), i + longest); j++) {
        row = nextRow(row, heard.get(j).pitch() - open - semitones, j, null);
        relax(s, i, j + 1, least[s][i] + prior + row[frets.size()], semitones, least, from, off);
      }
    }
  }

  private static void relax(
      int s,
      int i,
      int j,
      double total,
      double semitones,
      double[][] least,
      int[][] from,
      double[][] off) {
    if (total < least[s + 1][j] - 1e-12) {
      least[s + 1][j] = total;
      from[s + 1][j] = i;
      off[s + 1][j] = semitones;
    }
  }

  private double[] firstRow() {
    double[] row = new double[frets.size() + 1];
    for (int f = 0; f < frets.size(); f++) {
      row[f + 1] = row[f] + LEFT_OUT;
    }
    return row;
  }

  /** Costs with one more note, by how many frets have had their turn. */
  private double[] nextRow(double[] row, double fret, int j, Move[] moves) {
    double[] next = new double[row.length];
    for (int f = 0; f <= frets.size(); f++) {
      double again = again(fret, f);
      next[f] = row[f] + Math.min(stray(j), again);
      Move move = again < stray(j) ? Move.AGAIN : Move.STRAY;
      if (f > 0) {
        double off = Math.abs(fret - frets.get(f - 1));
        double pluck = row[f - 1] + intonation(off) + (brushed[j] ? PLUCK_BRUSHED : 0);
        if (pluck <= next[f]) {
          next[f] = pluck;
          move = Move.PLUCK;
        }
        if (off > MOST_INTONATION
            && off <= MOST_FRETS_WRONG + 0.5
            && fret > -0.5
            && row[f - 1] + WRONG < next[f]) {
          next[f] = row[f - 1] + WRONG;
          move = Move.WRONG;
        }
        if (next[f - 1] + LEFT_OUT < next[f]) {
          next[f] = next[f - 1] + LEFT_OUT;
          move = Move.LEFT_OUT;
        }
      }
      if (moves != null) {
        moves[f] = move;
      }
    }
    return next;
  }

  private double stray(int j) {
    return brushed[j] ? STRAY_BRUSHED : STRAY;
  }

  private static double intonation(double offSemitones) {
    double x = offSemitones / 0.25;
    return offSemitones > MOST_INTONATION ? BIG : 0.15 * x * x;
  }

  /**
   * The cost of one more pluck of any fret asked, the first {@code had} of which had their turn.
   */
  private double again(double fret, int had) {
    double least = BIG;
    for (int f = 0; f < frets.size(); f++) {
      double cost = (f < had ? AGAIN : TOO_SOON) + intonation(Math.abs(fret - frets.get(f)));
      least = Math.min(least, cost);
    }
    return least;
  }

  /** Tunings of a string that would make one of the next notes a fret asked for. */
  private List<Double> offsets(int open, int i) {
    TreeSet<Long> buckets = new TreeSet<>();
    buckets.add(Math.round(wholeOff * BUCKETS_PER_SEMITONE));
    for (int j = i; j < Math.min(heard.size(), i + longest); j++) {
      for (int fret : frets) {
        double off = heard.get(j).pitch() - open - fret;
        if (Math.abs(off - wholeOff) <= MOST_OFF) {
          buckets.add(Math.round(off * BUCKETS_PER_SEMITONE));
        }
      }
    }
    return buckets.stream().map(b -> b / BUCKETS_PER_SEMITONE).toList();
  }

  private void traceStrings(int[][] from, double[][] off) {
    int j = heard.size();
    for (int s = strings.size(); s >= 1; s--) {
      while (j > 0 && from[s][j] < 0) {
        strays.add(heard.get(--j));
      }
      int i = from[s][j];
      matches.add(0, trace(s - 1, i, j, off[s][j]));
      j = i;
    }
    while (j > 0) {
      strays.add(heard.get(--j));
    }
    strays.sort((a, b) -> Double.compare(a.time(), b.time()));
  }

  private StringMatch trace(int s, int from, int to, double semitones) {
    int open = tuning.openMidi(strings.get(s));
    Move[][] moves = new Move[to - from][frets.size() + 1];
    double[] row = firstRow();
    for (int j = from; j < to; j++) {
      row = nextRow(row, heard.get(j).pitch() - open - semitones, j, moves[j - from]);
    }
    StringMatch match = new StringMatch(strings.get(s), semitones, frets.size());
    int f = frets.size();
    int j = to;
    while (j > from) {
      Pluck pluck = heard.get(j - 1);
      double fret = pluck.pitch() - open - semitones;
      switch (moves[j - 1 - from][f]) {
        case LEFT_OUT -> f--;
        case STRAY -> {
          strays.add(pluck);
          j--;
        }
        case AGAIN -> {
          match.plucks.get(nearest(fret)).add(0, pluck);
          j--;
        }
        case WRONG -> {
          f--;
          match.wrong.add(0, new StringMatch.WrongFret(frets.get(f), (int) Math.rint(fret), pluck));
          j--;
        }
        case PLUCK -> {
          match.plucks.get(--f).add(0, pluck);
          j--;
        }
      }
    }
    return match;
  }

  private int nearest(double fret) {
    int nearest = 0;
    for (int f = 1; f < frets.size(); f++) {
      if (Math.abs(frets.get(f) - fret) < Math.abs(frets.get(nearest) - fret)) {
        nearest = f;
      }
    }
    return nearest;
  }
}
