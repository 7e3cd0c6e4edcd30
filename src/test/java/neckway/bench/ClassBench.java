package neckway.bench;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.File;
import java.io.IOException;
import java.net.URISyntaxException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import neckway.bench.ClassTakes.Broken;
import neckway.bench.ClassTakes.Family;
import neckway.bench.ClassTakes.Recorded;
import neckway.bench.NoteMatching.Criterion;
import neckway.bench.NoteMatching.Note;
import neckway.bench.NoteMatching.Score;
import neckway.file.JsonFile;
import neckway.file.ReviewReader;
import neckway.follow.Verdict;
import neckway.hand.ShiftVerdict;
import neckway.player.plan.PlayedNote;
import neckway.player.plan.PlayedShift;
import neckway.review.Review;
import neckway.review.ReviewedNote;
import neckway.review.ReviewedShift;

/**
 * What a teacher gets of a class: a folder of phone recordings, read by the command line in a
 * process of its own, no guitar learnt and no first beat given. Prints a table.
 *
 * <pre>ClassBench [--takes N] [--seed S] [--errors] [--keep DIR] [--write FILE]</pre>
 */
public final class ClassBench {
  private static final String HEAP = "-Xmx512m";

  /** A collection of garbage as the JVM logs it: megabytes before, after. */
  private static final Pattern COLLECTED = Pattern.compile("(\\d+)M->(\\d+)M\\(\\d+M\\)");

  private static final int TIMES = 3;
  private static final double NANOS = 1e9;
  private static final int LOOK_MS = 20;

  private final Path folder;
  private final Path into;
  private final boolean errors;

  private Score notes = new Score(0, 0, 0);
  private MistakeScore mistakes = MistakeScore.NONE;
  private int falselyWrong;
  private int shiftsRight;
  private int shiftsUnheard;
  private int shiftsWrong;
  private int guesses;
  private int guessesRight;
  private int namedAndKept;
  private int named;
  private int triesMade;
  private int triesFound;
  private int triesInvented;
  private int read;

  private ClassBench(Path folder, boolean errors) {
    this.folder = folder;
    this.into = folder.resolve("read");
    this.errors = errors;
  }

  public static void main(String[] args) throws Exception {
    List<String> words = Arrays.asList(args);
    for (String program : List.of("ffmpeg", "espeak-ng")) {
      if (!isThere(program)) {
        System.err.println(program + " is not installed, and a class is made with it: nothing run");
        System.exit(2);
      }
    }
    int takes = Integer.parseInt(StringBench.option(words, "--takes", "60"));
    long seed = Long.parseLong(StringBench.option(words, "--seed", "4000000"));
    String keep = StringBench.option(words, "--keep", "");
    Path folder = keep.isEmpty() ? Files.createTempDirectory("class") : Path.of(keep);
    String table = new ClassBench(folder, words.contains("--errors")).run(takes, seed);
    System.out.print(table);
    if (keep.isEmpty()) {
      delete(folder);
    }
    String write = StringBench.option(words, "--write", "");
    if (!write.isEmpty()) {
      new MarkedPart(Path.of(write), "class")
          .write(ClassBench.class, String.join(" ", words), table);
    }
  }

  private static boolean isThere(String program) throws InterruptedException {
    try {
      TalkTakes.call(List.of(program, program.equals("ffmpeg") ? "-version" : "--version"));
      return true;
    } catch (IOException e) {
      return false;
    }
  }

  private static void delete(Path folder) throws IOException {
    try (var files = Files.walk(folder)) {
      for (Path each : files.sorted(java.util.Comparator.reverseOrder()).toList()) {
        Files.delete(each);
      }
    }
  }

  /** What a process of the program took. */
  private record Took(
      double seconds, double processorSeconds, int peakMegabytes, int keptMegabytes) {
    String words() {
      return String.format(Locale.ROOT, "%.1f, %.1f", seconds, processorSeconds);
    }
  }

  private String run(int takes, long seed) throws Exception {
    ClassTakes made = new ClassTakes(folder, seed);
    List<Recorded> students = made.make(takes);
    List<String> command =
        List.of("review", "--list", "" + folder.resolve(ClassTakes.LIST), "--into", "" + into);
    Took first = program(command);
    JsonNode rows = JsonFile.read(into.resolve("table.json")).path("takes");
    for (int i = 0; i < students.size(); i++) {
      score(students.get(i), rows.path(i));
    }
    int told = 0;
    for (int i = students.size(); i < rows.size(); i++) {
      told += isToldInOneLine(rows.path(i).path("status").asText()) ? 1 : 0;
    }
    Took second = fastest(command);
    Path single = Files.createDirectories(folder.resolve("long"));
    Path threeMinutes = made.threeMinutes(single);
    Took alone =
        fastest(
            List.of(
                "review",
                "" + threeMinutes,
                "--drill",
                "" + single.resolve("long.drill.json"),
                "--json",
                "" + single.resolve("long.review.json")));
    return table(takes, told, first, second, alone);
  }

  private static boolean isToldInOneLine(String status) {
    return !status.isEmpty()
        && !status.equals("ok")
        && !status.contains("\n")
        && !status.contains("fault of the program");
  }

  /** The same thing some times over; what else the machine does takes time from some of them. */
  private Took fastest(List<String> command) throws Exception {
    Took fastest = program(command);
    for (int i = 1; i < TIMES; i++) {
      Took next = program(command);
      fastest = next.seconds() < fastest.seconds() ? next : fastest;
    }
    return fastest;
  }

  /** Runs a command as the terminal does. */
  private Took program(List<String> command)
      throws IOException, InterruptedException, URISyntaxException {
    Path log = Files.createTempFile("class", ".gc");
    List<String> all = new ArrayList<>();
    all.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    all.addAll(List.of(HEAP, "-Xlog:gc:file=" + log, "-cp", classPath(), "neckway.cli.Main"));
    all.addAll(command);
    long begun = System.nanoTime();
    Path output = Files.createTempFile("class", ".txt");
    Process process =
        new ProcessBuilder(all).redirectErrorStream(true).redirectOutput(output.toFile()).start();
    // asked while it runs: once it is over the system does not know any more
    Duration processor = Duration.ZERO;
    while (!process.waitFor(LOOK_MS, TimeUnit.MILLISECONDS)) {
      processor = process.info().totalCpuDuration().orElse(processor);
    }
    double seconds = (System.nanoTime() - begun) / NANOS;
    if (process.exitValue() != 0) {
      throw new IOException(String.join(" ", command) + ": " + Files.readString(output));
    }
    Files.delete(output);
    int peak = 0;
    int kept = 0;
    for (String line : Files.readAllLines(log)) {
      Matcher collected = COLLECTED.matcher(line);
      if (collected.find()) {
        peak = Math.max(peak, Integer.parseInt(collected.group(1)));
        kept = Math.max(kept, Integer.parseInt(collected.group(2)));
      }
    }
    Files.delete(log);
    return new Took(seconds, processor.toNanos() / NANOS, peak, kept);
  }

  /** Also where the build's own JVM runs this, whose class path is another. */
  private static String classPath() throws URISyntaxException {
    if (!(ClassBench.class.getClassLoader() instanceof URLClassLoader loader)) {
      return System.getProperty("java.class.path");
    }
    List<String> paths = new ArrayList<>();
    for (URL each : loader.getURLs()) {
      paths.add(Path.of(each.toURI()).toString());
    }
    return String.join(File.pathSeparator, paths);
  }

  private void score(Recorded student, JsonNode row) {
    List<String> faults = new ArrayList<>();
    if (!row.path("status").asText().equals("ok")) {
      faults.add("not read: " + row.path("status").asText());
      tell(student, faults);
      return;
    }
    read++;
    String stem = student.file().replaceFirst("\\..*", "");
    Path file = into.resolve(stem + ".review.json");
    Review review = ReviewReader.read(JsonFile.read(file), file.toString()).review();
    drill(student, row.path("drill").asText(), faults);
    notes(student, review, faults);
    shifts(student, review, faults);
    tries(student, review, faults);
    tell(student, faults);
  }

  private void tell(Recorded student, List<String> faults) {
    if (errors && !faults.isEmpty()) {
      String name = student.played().take().name().replaceAll(" PlayerSettings.*", "");
      System.out.println(name + "\n    " + String.join("\n    ", faults));
    }
  }

  private void drill(Recorded student, String said, List<String> faults) {
    String played = student.played().drill().title();
    boolean guessed = student.family() == Family.UNNAMED || student.family() == Family.OTHER_DRILL;
    boolean right = said.equals(guessed ? played + " (a guess)" : played);
    if (guessed) {
      guesses++;
      guessesRight += right ? 1 : 0;
    } else {
      named++;
      namedAndKept += right ? 1 : 0;
    }
    if (!right) {
      faults.add("played " + played + ", said " + said);
    }
  }

  private void notes(Recorded student, Review review, List<String> faults) {
    List<TrueNote> truth = student.played().take().notes();
    List<Note> wanted = truth.stream().map(n -> Note.at(n.time(), n.midi())).toList();
    List<Note> had = review.notes().stream().map(n -> Note.at(n.time(), n.midi())).toList();
    notes = notes.plus(NoteMatching.score(wanted, had, EarRun.WIDE, Criterion.ONSET_PITCH));
    Measured all = TalkBench.measured(review);
    // slips are asked of the try that stands, on both sides
    Measured standing =
        new Measured(
            all.notes().stream().filter(n -> n.attempt() == review.reviewed()).toList(),
            all.skipped(),
            all.firstBeat(),
            all.slotSeconds(),
            all.gridSource(),
            0);
    MistakeScore here = MistakeScore.of(student.played(), standing);
    mistakes = mistakes.plus(here);
    if (here.made() != here.found() || here.invented() > 0) {
      faults.add(
          "made "
              + student.played().mistakes()
              + " said "
              + MistakeScore.said(student.played(), standing));
    }
    int[] partners = NoteMatching.match(wanted, had, EarRun.WIDE, Criterion.ONSET_PITCH);
    boolean[] used = new boolean[had.size()];
    for (int i = 0; i < partners.length; i++) {
      if (partners[i] < 0) {
        faults.add(at("missed", truth.get(i).time(), truth.get(i).midi()));
      } else {
        used[partners[i]] = true;
      }
    }
    for (int i = 0; i < used.length; i++) {
      ReviewedNote n = review.notes().get(i);
      if (!used[i]) {
        faults.add(at("false", n.time(), n.midi()) + " " + n.verdict().word() + " " + n.step());
      }
      if (n.verdict() == Verdict.WRONG && !wasWrong(truth, n)) {
        falselyWrong++;
      }
    }
  }

  private static boolean wasWrong(List<TrueNote> truth, ReviewedNote said) {
    return truth.stream()
        .anyMatch(
            n ->
                n.kind() == PlayedNote.Kind.WRONG
                    && Math.abs(n.time() - said.time()) <= EarRun.WIDE);
  }

  private static String at(String what, double seconds, int midi) {
    return String.format(Locale.ROOT, "%s %.2f s midi %d", what, seconds, midi);
  }

  private void shifts(Recorded student, Review review, List<String> faults) {
    List<PlayedShift> done = student.shifts();
    for (int i = 0; i < Math.min(done.size(), review.shifts().size()); i++) {
      ReviewedShift said = review.shifts().get(i);
      PlayedShift was = done.get(i);
      boolean placed = was.outcome() == PlayedShift.Outcome.MOVED;
      if (said.verdict() == ShiftVerdict.UNHEARD) {
        shiftsUnheard++;
      } else if (said.verdict().name().equals(was.outcome().name())
          && (!placed || said.string().equals(was.string()))) {
        shiftsRight++;
      } else {
        shiftsWrong++;
        faults.add("shift " + i + " was " + was.outcome() + ", said " + said.verdict());
      }
    }
  }

  private void tries(Recorded student, Review review, List<String> faults) {
    triesMade += student.tries();
    triesFound += Math.min(student.tries(), review.attempts());
    triesInvented += Math.max(0, review.attempts() - student.tries());
    if (student.tries() != review.attempts()) {
      faults.add(student.tries() + " tries, said " + review.attempts());
    }
  }

  private String table(int takes, int told, Took first, Took second, Took alone) {
    double thousand = Math.max(1, notes.truth()) / 1000.0;
    int shifts = shiftsRight + shiftsUnheard + shiftsWrong;
    StringBuilder table = new StringBuilder("| | target | found |\n| --- | --- | --- |\n");
    row(table, "recordings, those read", "", "%d, %d", takes, read);
    row(table, "notes played", "", "%d", notes.truth());
    row(table, "note F1, onset 50 ms and 50 cents", ">= 0.995", "%.4f", notes.f1());
    row(
        table,
        "notes called wrong that were not, per 1,000",
        "<= 4",
        "%.1f",
        falselyWrong / thousand);
    row(
        table,
        "slips of any kind said and not made, per 1,000 notes",
        "<= 4",
        "%.1f",
        mistakes.invented() / thousand);
    row(
        table,
        "slips found of those made",
        "23 of 24",
        "%d of %d",
        mistakes.found(),
        mistakes.made());
    row(
        table,
        "shifts, without a guitar learnt: right, unheard, wrong",
        "none wrong",
        "%d, %d, %d of %d",
        shiftsRight,
        shiftsUnheard,
        shiftsWrong,
        shifts);
    row(
        table,
        "drills not named, or named and another played: recognised",
        "",
        "%d of %d",
        guessesRight,
        guesses);
    row(table, "drills named and played: kept", "all", "%d of %d", namedAndKept, named);
    row(
        table,
        "tries found of those made; said and not made",
        "",
        "%d of %d; %d",
        triesFound,
        triesMade,
        triesInvented);
    row(table, "broken files told in one line", "all", "%d of %d", told, Broken.values().length);
    row(
        table,
        "seconds for the folder, start included: by the clock, of the processors",
        "",
        "%s",
        first.words());
    row(
        table,
        "heap, MB: most in use, most left by a collection",
        "512",
        "%d, %d",
        first.peakMegabytes(),
        first.keptMegabytes());
    row(
        table,
        "the same of a second run, nothing changed, fastest of three",
        "< 2",
        "%s",
        second.words());
    row(
        table,
        "the same for one M4A of three minutes, fastest of three",
        "< 3",
        "%s",
        alone.words());
    return table.toString();
  }

  private static void row(
      StringBuilder table, String what, String target, String found, Object... figures) {
    table.append(
        "| " + what + " | " + target + " | " + String.format(Locale.ROOT, found, figures) + " |\n");
  }
}
