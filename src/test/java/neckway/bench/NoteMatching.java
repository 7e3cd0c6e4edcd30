package neckway.bench;

import java.util.Arrays;
import java.util.List;

/**
 * Matching of heard notes to true ones as the music information retrieval field does it.
 *
 * <p>Source: mir_eval (MIT licence), its note measures, {@code match_notes}: a pair may match if
 * its onsets differ by at most the tolerance and its pitches by at most 50 cents (and, if asked,
 * its offsets by at most the greater of a fifth of the true duration and 50 ms); differences of
 * time are rounded to four decimals first, so that exactly 50 ms matches; of all one-to-one
 * pairings one with the most pairs is taken.
 */
public final class NoteMatching {
  /** Pitch tolerance, cents. */
  public static final double PITCH_TOLERANCE_CENTS = 50;

  /** Offset tolerance as a share of the true note's duration. */
  public static final double OFFSET_RATIO = 0.2;

  /** Least offset tolerance, seconds. */
  public static final double OFFSET_MIN_TOLERANCE_SECONDS = 0.05;

  private NoteMatching() {}

  /**
   * A note to be matched.
   *
   * @param onset seconds
   * @param offset seconds; looked at only where offsets are asked for
   * @param pitch MIDI note number with its fraction
   */
  public record Note(double onset, double offset, double pitch) {
    /** A note whose end does not matter. */
    public static Note at(double onset, double pitch) {
      return new Note(onset, onset, pitch);
    }
  }

  /** What must agree beside the onset. */
  public enum Criterion {
    ONSET,
    ONSET_PITCH,
    ONSET_PITCH_OFFSET
  }

  /**
   * Shares of right ones.
   *
   * @param matched pairs
   * @param truth true notes
   * @param heard heard notes
   */
  public record Score(int matched, int truth, int heard) {
    public double precision() {
      return heard == 0 ? 0 : (double) matched / heard;
    }

    public double recall() {
      return truth == 0 ? 0 : (double) matched / truth;
    }

    /** 0 where either side is empty, as in mir_eval. */
    public double f1() {
      return truth + heard == 0 ? 0 : 2.0 * matched / (truth + heard);
    }

    public Score plus(Score other) {
      return new Score(matched + other.matched, truth + other.truth, heard + other.heard);
    }
  }

  /** Counts the pairs of a largest matching. */
  public static Score score(List<Note> truth, List<Note> heard, double tolerance, Criterion what) {
    int pairs = 0;
    for (int partner : match(truth, heard, tolerance, what)) {
      if (partner >= 0) {
        pairs++;
      }
    }
    return new Score(pairs, truth.size(), heard.size());
  }

  /**
   * A largest matching. Candidates nearest in time are tried first.
   *
   * @param toleranceSeconds for the onset
   * @return for each true note the index of its heard one; below 0 where it has none
   */
  public static int[] match(
      List<Note> truth, List<Note> heard, double toleranceSeconds, Criterion what) {
    int[][] candidates = new int[truth.size()][];
    for (int i = 0; i < candidates.length; i++) {
      candidates[i] = candidates(truth.get(i), heard, toleranceSeconds, what);
    }
    int[] partnerOfHeard = new int[heard.size()];
    Arrays.fill(partnerOfHeard, -1);
    for (int i = 0; i < candidates.length; i++) {
      augment(i, candidates, partnerOfHeard, new boolean[heard.size()]);
    }
    int[] partners = new int[truth.size()];
    Arrays.fill(partners, -1);
    for (int j = 0; j < partnerOfHeard.length; j++) {
      if (partnerOfHeard[j] >= 0) {
        partners[partnerOfHeard[j]] = j;
      }
    }
    return partners;
  }

  private static int[] candidates(Note t, List<Note> heard, double tolerance, Criterion what) {
    return java.util.stream.IntStream.range(0, heard.size())
        .filter(j -> hits(t, heard.get(j), tolerance, what))
        .boxed()
        .sorted(
            java.util.Comparator.comparingDouble(j -> Math.abs(heard.get(j).onset() - t.onset())))
        .mapToInt(Integer::intValue)
        .toArray();
  }

  private static boolean hits(Note t, Note h, double tolerance, Criterion what) {
    if (rounded(Math.abs(t.onset() - h.onset())) > tolerance) {
      return false;
    }
    if (what == Criterion.ONSET) {
      return true;
    }
    if (100 * Math.abs(t.pitch() - h.pitch()) > PITCH_TOLERANCE_CENTS) {
      return false;
    }
    double offsetTolerance =
        Math.max(OFFSET_RATIO * (t.offset() - t.onset()), OFFSET_MIN_TOLERANCE_SECONDS);
    return what == Criterion.ONSET_PITCH
        || rounded(Math.abs(t.offset() - h.offset())) <= offsetTolerance;
  }

  private static double rounded(double seconds) {
    return Math.rint(seconds * 1e4) / 1e4;
  }

  /** One step of the augmenting path method for bipartite matching. */
  private static boolean augment(int i, int[][] candidates, int[] partnerOfHeard, boolean[] seen) {
    for (int j : candidates[i]) {
      if (!seen[j]) {
        seen[j] = true;
        if (partnerOfHeard[j] < 0 || augment(partnerOfHeard[j], candidates, partnerOfHeard, seen)) {
          partnerOfHeard[j] = i;
          return true;
        }
      }
    }
    return false;
  }
}
