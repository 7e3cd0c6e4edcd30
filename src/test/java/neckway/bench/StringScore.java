package neckway.bench;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import neckway.bench.StringNotes.Family;
import neckway.bench.StringNotes.Learnt;
import neckway.bench.StringNotes.Note;
import neckway.neck.GuitarString;
import neckway.neck.Tuning;
import neckway.string.Stiffness;
import neckway.string.StiffnessEstimate;

/** How often the string of single notes is heard rightly, by stiffness and pitch alone. */
final class StringScore {
  /** Note-to-note standard deviation of ln B that every string is taken to have. */
  static final double SPREAD = 0.06;

  /** Notes are learnt from this much sound. */
  static final double LEARNING_SECONDS = 0.3;

  private static final double MOST_EVIDENCE = 2;

  private static final int STRINGS = 6;
  private static final int HIGHEST_FRET = 22;
  private static final double LN_PER_FRET = Math.log(2) / 6;
  private static final double[] EDGES = {0.5, 0.7, 0.8, 0.9, 0.95, 0.98, 0.99, 1.01};

  final String name;
  final double seconds;
  final double temper;
  int notes;
  int right;
  double surprise;
  final int[] said = new int[EDGES.length];
  final int[] saidRight = new int[EDGES.length];
  final Map<String, Integer> confusions = new TreeMap<>();
  final Map<Integer, List<Double>> offByString = new TreeMap<>();
  final List<String> errors = new ArrayList<>();
  private long nanos;
  private int readings;

  StringScore(Family family, double seconds, double temper) {
    name = family.name();
    this.seconds = seconds;
    this.temper = temper;
    for (Learnt guitar : family.guitars()) {
      run(guitar);
    }
  }

  private void run(Learnt guitar) {
    Stiffness stiffness = new Stiffness(guitar.test().get(0).rate());
    double driven = 0;
    for (Note note : guitar.calibration()) {
      driven = hold(driven + read(stiffness, note, seconds).map(StringScore::evidence).orElse(0.0));
    }
    double[] lnOpen = learn(stiffness, guitar.calibration(), 1 / (1 + Math.exp(-driven)));
    for (Note note : guitar.test()) {
      long start = cpuNanos();
      Optional<StiffnessEstimate> reading = read(stiffness, note, seconds);
      nanos += cpuNanos() - start;
      readings++;
      driven = hold(driven + reading.map(StringScore::evidence).orElse(0.0));
      double beforehand = 1 / (1 + Math.exp(-driven));
      judge(note, lnOpen, reading.map(r -> r.givenDriven(beforehand)));
    }
  }

  private static long cpuNanos() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  private static double evidence(StiffnessEstimate reading) {
    return Math.max(-MOST_EVIDENCE, Math.min(MOST_EVIDENCE, reading.drivenEvidence()));
  }

  private static double hold(double evidence) {
    return Math.max(-3 * MOST_EVIDENCE, Math.min(3 * MOST_EVIDENCE, evidence));
  }

  private static Optional<StiffnessEstimate> read(Stiffness stiffness, Note note, double seconds) {
    int frames = Math.min((int) (seconds * note.rate()), note.end() - note.onset());
    return stiffness.read(note.samples(), note.onset(), frames, note.f0Hz());
  }

  /** For each string the ln B of the open string that all its notes together find likeliest. */
  static double[] learn(Stiffness stiffness, List<Note> calibration, double beforehand) {
    double[] lnOpen = new double[STRINGS + 1];
    for (int string = 1; string <= STRINGS; string++) {
      double best = Double.NEGATIVE_INFINITY;
      List<StiffnessEstimate> readings = new ArrayList<>();
      List<Integer> frets = new ArrayList<>();
      for (Note note : calibration) {
        if (note.string() == string) {
          read(stiffness, note, LEARNING_SECONDS)
              .ifPresent(
                  r -> {
                    readings.add(r.givenDriven(beforehand));
                    frets.add(note.fret());
                  });
        }
      }
      lnOpen[string] = Double.NaN;
      for (double ln = Math.log(4e-6); !readings.isEmpty() && ln < Math.log(8e-4); ln += 0.01) {
        double sum = 0;
        for (int i = 0; i < readings.size(); i++) {
          sum += readings.get(i).logLikelihood(ln + LN_PER_FRET * frets.get(i), SPREAD);
        }
        if (sum > best) {
          best = sum;
          lnOpen[string] = ln;
        }
      }
    }
    return lnOpen;
  }

  private void judge(Note note, double[] lnOpen, Optional<StiffnessEstimate> reading) {
    double[] log = new double[STRINGS + 1];
    Arrays.fill(log, Double.NEGATIVE_INFINITY);
    int heard = 0;
    for (int string = 1; string <= STRINGS; string++) {
      int fret = note.midi() - Tuning.STANDARD.openMidi(new GuitarString(string));
      if (fret < 0 || fret > HIGHEST_FRET || Double.isNaN(lnOpen[string])) {
        continue;
      }
      double ln = lnOpen[string] + LN_PER_FRET * fret;
      log[string] = reading.map(r -> temper * r.logLikelihood(ln, SPREAD)).orElse(0.0);
      heard = log[string] > log[heard] ? string : heard;
    }
    if (heard == 0) {
      return;
    }
    double sum = 0;
    for (int string = 1; string <= STRINGS; string++) {
      sum += Math.exp(log[string] - log[heard]);
    }
    boolean ok = heard == note.string();
    notes++;
    right += ok ? 1 : 0;
    surprise += Math.min(20, log[heard] + Math.log(sum) - log[note.string()]);
    int bin = 0;
    while (1 / sum >= EDGES[bin]) {
      bin++;
    }
    said[bin]++;
    saidRight[bin] += ok ? 1 : 0;
    double off =
        reading
            .map(r -> r.lnStiffness() - lnOpen[note.string()] - LN_PER_FRET * note.fret())
            .orElse(0.0);
    offByString.computeIfAbsent(note.string(), s -> new ArrayList<>()).add(off);
    if (!ok) {
      confusions.merge(note.string() + ">" + heard, 1, Integer::sum);
      errors.add(
          String.format(
              Locale.ROOT,
              "  %s string %d fret %d heard %d p %.3f ln B off %.3f error %.3f",
              note.name(),
              note.string(),
              note.fret(),
              heard,
              1 / sum,
              off,
              reading.map(StiffnessEstimate::standardError).orElse(0.0)));
    }
  }

  /** Share of the strings heard rightly. */
  double rightShare() {
    return (double) right / notes;
  }

  /** Notes whose string was given a probability of at least 0.9. */
  int sure() {
    return Arrays.stream(said, 4, said.length).sum();
  }

  /** How many of {@link #sure()} were right. */
  int sureRight() {
    return Arrays.stream(saidRight, 4, said.length).sum();
  }

  /** One row of the table. */
  String line() {
    return String.format(
        Locale.ROOT,
        "| %-22s | %3.0f | %4d | %.3f | %.3f | %.3f | %.3f | %.1f |",
        name,
        1000 * seconds,
        notes,
        rightShare(),
        (double) sure() / notes,
        (double) sureRight() / Math.max(1, sure()),
        surprise / notes,
        nanos / 1e6 / readings);
  }

  /** Median and spread (1.48 times the median distance) of ln B against what was learnt. */
  String offs() {
    StringBuilder text = new StringBuilder();
    offByString.forEach(
        (string, offs) -> {
          double median = median(offs);
          double spread = 1.48 * median(offs.stream().map(o -> Math.abs(o - median)).toList());
          double wild = offs.stream().filter(o -> Math.abs(o) > 0.3).count();
          text.append(
              String.format(
                  Locale.ROOT,
                  "  %d: %+.3f %.3f (%.0f %% beyond 0.3)",
                  string,
                  median,
                  spread,
                  100 * wild / offs.size()));
        });
    return text.toString();
  }

  private static double median(List<Double> values) {
    return values.stream().sorted().toList().get(values.size() / 2);
  }
}
