package neckway.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * Mistakes made against mistakes said, by kind and step. One that was made is found if its kind is
 * said within one step, each saying used once and in order; an extra note, which has no step, is
 * placed by its time, within three steps where steps were left out.
 *
 * @param made mistakes made
 * @param said mistakes said
 * @param found mistakes made and said
 */
public record MistakeScore(int made, int said, int found) {
  static final MistakeScore NONE = new MistakeScore(0, 0, 0);

  MistakeScore plus(MistakeScore other) {
    return new MistakeScore(made + other.made, said + other.said, found + other.found);
  }

  /** Share of those made that were found; empty where none was made. */
  OptionalDouble recall() {
    return made == 0 ? OptionalDouble.empty() : OptionalDouble.of((double) found / made);
  }

  /** Mistakes said that were not made. */
  int invented() {
    return said - found;
  }

  static MistakeScore of(PlayedTake played, Measured measured) {
    Map<String, List<Integer>> have = said(played, measured);
    boolean stepsLeftOut = played.mistakes().containsKey("skipped");
    int found = 0;
    for (Map.Entry<String, List<Integer>> made : played.mistakes().entrySet()) {
      int within = made.getKey().equals("extra") && stepsLeftOut ? 3 : 1;
      found += inOrder(made.getValue(), have.getOrDefault(made.getKey(), List.of()), within);
    }
    return new MistakeScore(count(played.mistakes()), count(have), found);
  }

  private static int count(Map<String, List<Integer>> mistakes) {
    return mistakes.values().stream().mapToInt(List::size).sum();
  }

  /** What was said, of the last attempt. */
  static Map<String, List<Integer>> said(PlayedTake played, Measured measured) {
    double gap = played.drill().pulse().slotSeconds();
    int last = measured.notes().stream().mapToInt(Measured.Said::attempt).max().orElse(0);
    Map<String, List<Integer>> said = new TreeMap<>();
    for (Measured.Said note : measured.notes()) {
      if (!note.verdict().equals(Measured.RIGHT) && note.attempt() == last) {
        int byTime = (int) Math.rint((note.time() - played.firstBeat()) / gap - 0.25);
        said.computeIfAbsent(note.verdict(), k -> new ArrayList<>())
            .add(note.step().orElse(byTime));
      }
    }
    if (!measured.skipped().isEmpty()) {
      said.put("skipped", measured.skipped());
    }
    return said;
  }

  /** How many of those wanted are had, each once, within so many steps. */
  static int inOrder(List<Integer> wanted, List<Integer> had, int within) {
    List<Integer> want = wanted.stream().sorted().toList();
    List<Integer> have = had.stream().sorted().toList();
    int hits = 0;
    int i = 0;
    int j = 0;
    while (i < want.size() && j < have.size()) {
      if (Math.abs(want.get(i) - have.get(j)) <= within) {
        hits++;
        i++;
        j++;
      } else if (have.get(j) < want.get(i)) {
        j++;
      } else {
        i++;
      }
    }
    return hits;
  }
}
