package neckway.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.DoubleStream;
import neckway.bench.Measured.Said;
import neckway.bench.NoteMatching.Criterion;
import neckway.bench.NoteMatching.Note;
import neckway.bench.NoteMatching.Score;
import neckway.player.plan.PlayedNote.Kind;

/** Sums over many takes of what ear and follower said of them. */
final class Totals {
  private static final int E2 = 40;

  /** A note this near half way between two slots has no slot of its own. */
  private static final double OWN_SLOT = 0.35;

  Score wide = new Score(0, 0, 0);
  Score narrow = new Score(0, 0, 0);
  MistakeScore mistakes = MistakeScore.NONE;
  final Spread onsetMs = new Spread();
  final Spread rightDelayMs = new Spread();
  final Spread lowRightDelayMs = new Spread();
  final Spread slipDelaySlots = new Spread();
  final Spread offErrorMs = new Spread();
  final Spread phaseErrorMs = new Spread();
  final Spread phaseErrorLessBiasMs = new Spread();
  final Map<String, Integer> gridSources = new TreeMap<>();
  int takes;
  double seconds;
  double cpuSeconds;

  /** Numbers of which median and 95 % are wanted. */
  static final class Spread {
    private final DoubleStream.Builder values = DoubleStream.builder();
    private double[] sorted;

    void add(double value) {
      values.add(value);
    }

    int count() {
      return sorted().length;
    }

    double quantile(double share) {
      return EarTotals.quantile(sorted(), share);
    }

    private double[] sorted() {
      if (sorted == null) {
        sorted = values.build().toArray();
        Arrays.sort(sorted);
      }
      return sorted;
    }

    @Override
    public String toString() {
      return count() == 0 ? "-" : String.format("%.1f / %.1f", quantile(0.5), quantile(0.95));
    }
  }

  /** Counts a take that was held against its own first beat. */
  synchronized void add(PlayedTake played, Measured measured) {
    List<TrueNote> truth = played.take().notes();
    List<Note> wanted = truth.stream().map(n -> Note.at(n.time(), n.midi())).toList();
    List<Note> had = measured.notes().stream().map(n -> Note.at(n.time(), n.midi())).toList();
    takes++;
    seconds += played.take().seconds();
    cpuSeconds += measured.cpuSeconds();
    wide = wide.plus(NoteMatching.score(wanted, had, EarRun.WIDE, Criterion.ONSET_PITCH));
    narrow = narrow.plus(NoteMatching.score(wanted, had, EarRun.NARROW, Criterion.ONSET_PITCH));
    mistakes = mistakes.plus(MistakeScore.of(played, measured));
    int[] partners = NoteMatching.match(wanted, had, EarRun.WIDE, Criterion.ONSET_PITCH);
    for (int i = 0; i < partners.length; i++) {
      if (partners[i] >= 0) {
        addPair(played, truth.get(i), measured.notes().get(partners[i]));
      }
    }
  }

  private void addPair(PlayedTake played, TrueNote truth, Said said) {
    double gap = played.drill().pulse().slotSeconds();
    onsetMs.add(1000 * Math.abs(said.time() - truth.time()));
    double delay = said.decided() - truth.time();
    if (truth.kind() != Kind.RIGHT || !said.verdict().equals(Measured.RIGHT)) {
      slipDelaySlots.add(delay / gap);
    } else if (truth.midi() >= E2) {
      rightDelayMs.add(1000 * delay);
    } else {
      lowRightDelayMs.add(1000 * delay);
    }
    double slot = (truth.time() - played.firstBeat()) / gap;
    boolean ownSlot = Math.abs(slot - Math.rint(slot)) < OWN_SLOT;
    if (ownSlot && (truth.kind() == Kind.RIGHT || truth.kind() == Kind.WRONG)) {
      offErrorMs.add(Math.abs(said.offMs() - 1000 * gap * (slot - Math.rint(slot))));
    }
  }

  /** Counts a take whose first beat had to be found. */
  synchronized void addPhase(PlayedTake played, Measured measured) {
    takes++;
    gridSources.merge(measured.gridSource(), 1, Integer::sum);
    phaseErrorMs.add(phaseError(played, measured.firstBeat(), 0));
    phaseErrorLessBiasMs.add(phaseError(played, measured.firstBeat(), biasSeconds(played)));
  }

  private static double phaseError(PlayedTake played, double firstBeat, double bias) {
    double gap = played.drill().pulse().slotSeconds();
    double slots = (firstBeat - played.firstBeat() - bias) / gap;
    return 1000 * gap * Math.abs(slots - Math.rint(slots));
  }

  /** How late the player's steps came at the median; no ear can tell that from a late beat. */
  static double biasSeconds(PlayedTake played) {
    double gap = played.drill().pulse().slotSeconds();
    double[] off =
        played.take().notes().stream()
            .filter(n -> n.step().isPresent())
            .mapToDouble(n -> (n.time() - played.firstBeat()) / gap)
            .map(slot -> gap * (slot - Math.rint(slot)))
            .sorted()
            .toArray();
    return off.length == 0 ? 0 : EarTotals.quantile(off, 0.5);
  }

  double inventedPerThousand() {
    return wide.truth() == 0 ? 0 : 1000.0 * mistakes.invented() / wide.truth();
  }
}
