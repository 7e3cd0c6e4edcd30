package neckway.follow;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import neckway.review.Attempt;

/** Counts slips made, found and said, as one who marks a test would: kind and step within one. */
final class FollowerFigures {
  int made;
  int said;
  int found;
  int notes;
  private final List<Double> rightDelay = new ArrayList<>();
  private final List<Double> earDelay = new ArrayList<>();

  void add(NotePlayer player, List<NoteVerdict> verdicts) {
    notes += player.notes.size();
    Map<String, List<Integer>> want = new HashMap<>();
    player.slips.forEach(s -> of(want, s.kind()).add(s.step()));
    Attempt attempt = Attempt.standing(verdicts, List.of(), player.route.steps().size());
    Map<String, List<Integer>> have = new HashMap<>();
    int last = 0;
    for (NoteVerdict v : attempt.notes) {
      last = v.step().orElse(last);
      if (v.verdict() != Verdict.RIGHT) {
        of(have, v.verdict().word()).add(last);
      }
    }
    for (int s = 0; s < player.route.steps().size(); s++) {
      if (attempt.skipped(s)) {
        of(have, "skipped").add(s);
      }
    }
    made += player.slips.size();
    have.values().forEach(steps -> said += steps.size());
    want.forEach((kind, steps) -> found += inOrder(steps, of(have, kind)));
    for (NoteVerdict v : verdicts) {
      if (v.verdict() == Verdict.RIGHT) {
        rightDelay.add(v.decided() - v.note().time());
        earDelay.add(v.note().decided() - v.note().time());
      }
    }
  }

  private static List<Integer> of(Map<String, List<Integer>> map, String kind) {
    return map.computeIfAbsent(kind, k -> new ArrayList<>());
  }

  private static int inOrder(List<Integer> want, List<Integer> have) {
    Collections.sort(want);
    Collections.sort(have);
    int hits = 0;
    int j = 0;
    for (int step : want) {
      while (j < have.size() && have.get(j) < step - 1) {
        j++;
      }
      if (j < have.size() && have.get(j) <= step + 1) {
        hits++;
        j++;
      }
    }
    return hits;
  }

  double foundShare() {
    return made == 0 ? 1 : found / (double) made;
  }

  double falsePerThousand() {
    return 1000.0 * (said - found) / notes;
  }

  /** Delay of right notes beyond the ear's own, seconds, at a share from 0 to 1. */
  double addedDelaySeconds(double share) {
    return quantile(rightDelay, share) - quantile(earDelay, share);
  }

  private static double quantile(List<Double> values, double share) {
    List<Double> sorted = new ArrayList<>(values);
    Collections.sort(sorted);
    return sorted.get(Math.min(sorted.size() - 1, (int) (share * sorted.size())));
  }

  @Override
  public String toString() {
    return String.format(
        "notes %d, slips made %d, found %.4f, false per 1,000 notes %.2f, added delay %.0f / %.0f"
            + " ms",
        notes,
        made,
        foundShare(),
        falsePerThousand(),
        1000 * addedDelaySeconds(0.5),
        1000 * addedDelaySeconds(0.95));
  }
}
