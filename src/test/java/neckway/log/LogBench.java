package neckway.log;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import neckway.bench.StringBench;

/**
 * Kills imports at random moments and damages logs at random places. Prints a table.
 *
 * <pre>LogBench [--kills N] [--damaged N] [--seed S]</pre>
 */
public final class LogBench {
  /** So many runs are imported; long enough for the latest kill. */
  private static final int RUNS = 600;

  private static final int EARLIEST_MS = 250;
  private static final int SPREAD_MS = 1_500;

  private LogBench() {}

  public static void main(String[] args) throws Exception {
    List<String> words = Arrays.asList(args);
    int kills = Integer.parseInt(StringBench.option(words, "--kills", "200"));
    int damaged = Integer.parseInt(StringBench.option(words, "--damaged", "2000"));
    long seed = Long.parseLong(StringBench.option(words, "--seed", "1"));
    Path folder = Files.createTempDirectory("neckway-log-bench");
    try {
      System.out.println("| what | times | with ids printed | ids printed | lost | faults |");
      System.out.println("| --- | --- | --- | --- | --- | --- |");
      System.out.println(killed(folder, kills, new Random(seed)));
      System.out.println("| what | files | set aside | refused | runs saved of them | faults |");
      System.out.println("| --- | --- | --- | --- | --- | --- |");
      System.out.println(new DamagedLogs(folder, seed).row(damaged));
    } finally {
      clear(folder);
    }
  }

  /** What an import had printed when it was killed, and what of that was there afterwards. */
  record Killed(Set<String> printed, Set<String> there, List<String> wrong) {}

  /** Imports runs in a process of its own, and kills that after a while. */
  static Killed importKilled(Path lines, Path data, long afterMs) throws Exception {
    Path said = data.resolveSibling("said.txt");
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "neckway.cli.Main",
                "log",
                "import",
                lines.toString(),
                "--data",
                data.toString())
            .redirectOutput(said.toFile())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    process.waitFor(afterMs, TimeUnit.MILLISECONDS);
    process.destroyForcibly().waitFor();
    Set<String> printed =
        wholeLines(said).stream().filter(l -> l.matches("r\\d+")).collect(Collectors.toSet());
    if (!RunLog.isThere(data)) {
      return new Killed(printed, Set.of(), List.of());
    }
    List<String> wrong = new ArrayList<>();
    try (RunLog log = RunLog.open(data, wrong::add)) {
      wrong.addAll(log.check());
      Set<String> there = new HashSet<>();
      log.list(new RunLog.Wanted(Optional.empty(), Optional.empty()), Integer.MAX_VALUE)
          .forEach(run -> there.add(run.id()));
      return new Killed(printed, there, wrong);
    }
  }

  private static List<String> wholeLines(Path said) throws IOException {
    String text = Files.readString(said, StandardCharsets.UTF_8);
    return text.substring(0, text.lastIndexOf('\n') + 1).lines().toList();
  }

  /** A file with so many runs, named r00000 and on. */
  static Path lines(Path folder, int runs) throws IOException {
    Path lines = folder.resolve("runs.jsonl");
    Files.write(lines, IntStream.range(0, runs).mapToObj(i -> Runs.line(id(i), i)).toList());
    return lines;
  }

  private static String id(int number) {
    return String.format("r%05d", number);
  }

  private static String killed(Path folder, int times, Random random) throws Exception {
    Path lines = lines(folder, RUNS);
    int withIds = 0;
    int printed = 0;
    int lost = 0;
    int faults = 0;
    for (int i = 0; i < times; i++) {
      Path data = folder.resolve("killed");
      Killed killed = importKilled(lines, data, EARLIEST_MS + random.nextInt(SPREAD_MS));
      withIds += killed.printed().isEmpty() ? 0 : 1;
      printed += killed.printed().size();
      Set<String> missing = new HashSet<>(killed.printed());
      missing.removeAll(killed.there());
      lost += missing.size();
      faults += killed.wrong().size();
      clear(data);
    }
    return "| import killed | %d | %d | %d | %d | %d |"
        .formatted(times, withIds, printed, lost, faults);
  }

  static void clear(Path folder) throws IOException {
    if (Files.notExists(folder)) {
      return;
    }
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(each);
      }
    }
  }
}
