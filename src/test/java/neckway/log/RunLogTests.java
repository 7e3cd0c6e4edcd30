package neckway.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import neckway.neck.BadInput;
import neckway.neck.Direction;
import neckway.neck.Shape;
import neckway.neck.Tuning;
import neckway.practice.Exercise;
import neckway.practice.PlayedRound;
import neckway.practice.RoundsOfRun;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class RunLogTests {
  private static final int DAMAGED = 150;
  private static final RunLog.Wanted ALL = new RunLog.Wanted(Optional.empty(), Optional.empty());

  @TempDir private Path folder;
  private final List<String> complaints = new ArrayList<>();

  private RunLog open(Path where) {
    return RunLog.open(where, complaints::add);
  }

  private static List<String> fill(RunLog log, int runs) {
    return IntStream.range(0, runs)
        .mapToObj(
            day ->
                log.keep(Runs.day(day), Runs.json(), JsonNodeFactory.instance.objectNode())
                    .orElseThrow())
        .toList();
  }

  @Test
  void keepsARunAndGivesItBackNewestFirst() {
    try (RunLog log = open(folder.resolve("new/folder"))) {
      List<String> ids = fill(log, 3);
      assertThat(log.list(ALL, 10))
          .extracting(RunLog.Listed::id)
          .containsExactly(ids.get(2), ids.get(1), ids.get(0));
      assertThat(log.list(ALL, 1)).hasSize(1);
      assertThat(log.check()).isEmpty();
      assertThat(log.review(ids.get(0)).orElseThrow().review().summary().words())
          .isEqualTo(Runs.review().summary().words());
      assertThat(log.keys(Optional.empty())).containsExactly(Runs.drill().key());
    }
    assertThat(complaints).isEmpty();
  }

  @Test
  void sameReviewOfTheSameTimeIsPassedOver() {
    try (RunLog log = open(folder)) {
      fill(log, 1);
      assertThat(log.keep(Runs.day(0), Runs.json(), JsonNodeFactory.instance.objectNode()))
          .isEmpty();
      assertThat(log.count()).isEqualTo(1);
    }
  }

  @Test
  void roundsOfAKeyComeBackAsTheyWere() {
    try (RunLog log = open(folder)) {
      fill(log, 2);
      List<PlayedRound> stored = log.rounds(Runs.drill().key(), Tuning.STANDARD, Optional.empty());
      List<PlayedRound> played = new ArrayList<>();
      for (int day = 0; day < 2; day++) {
        played.addAll(RoundsOfRun.of(Runs.drill(), Runs.review(), Runs.day(day)));
      }
      // times are written to a hundredth of a millisecond
      assertThat(stored)
          .usingRecursiveComparison()
          .withComparatorForType(
              (a, b) -> Math.abs(a.orElse(0) - b.orElse(0)) < 0.01 ? 0 : 1, OptionalDouble.class)
          .isEqualTo(played);
      assertThat(stored).hasSize(4);
      assertThat(log.rounds(Runs.drill().key(), Tuning.STANDARD, Optional.of("Ada"))).isEmpty();
    }
  }

  @Test
  void removes() {
    try (RunLog log = open(folder)) {
      List<String> ids = fill(log, 3);
      assertThat(log.remove(List.of(ids.get(1)))).isEqualTo(1);
      assertThat(log.count()).isEqualTo(2);
      assertThat(log.removeAll()).isEqualTo(2);
      assertThat(log.check()).isEmpty();
    }
  }

  @Test
  void twoProgramsMayWriteAtOnce() throws Exception {
    try (RunLog one = open(folder);
        RunLog other = open(folder)) {
      Thread beside =
          new Thread(
              () -> IntStream.range(100, 120).forEach(day -> DamagedLogs.keep(other, day)),
              "another program");
      beside.start();
      IntStream.range(0, 20).forEach(day -> DamagedLogs.keep(one, day));
      beside.join();
      assertThat(one.count()).isEqualTo(40);
      assertThat(one.check()).isEmpty();
    }
  }

  @Test
  void logOfANewerProgramIsRefusedAndStaysAsItIs() throws Exception {
    try (RunLog log = open(folder)) {
      fill(log, 1);
    }
    execute("PRAGMA user_version = 99");
    byte[] before = Files.readAllBytes(folder.resolve("runs.db"));
    assertThatThrownBy(() -> open(folder))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("newer Neckway");
    assertThat(Files.readAllBytes(folder.resolve("runs.db"))).isEqualTo(before);
  }

  @Test
  void databaseOfSomethingElseIsRefused() throws Exception {
    execute("CREATE TABLE theirs (a)");
    assertThatThrownBy(() -> open(folder))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("is not a log of Neckway");
  }

  private void execute(String statement) throws SQLException {
    try (Connection connection =
            DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("runs.db"));
        Statement run = connection.createStatement()) {
      run.execute(statement);
    }
  }

  @Test
  void fileThatIsNoDatabaseIsSetAsideAndTold() throws IOException {
    Files.writeString(folder.resolve("runs.db"), "this is no database at all, but a note of mine");
    try (RunLog log = open(folder)) {
      assertThat(log.count()).isZero();
    }
    assertThat(folder.resolve("runs.damaged.db")).content().contains("a note of mine");
    assertThat(complaints).hasSize(1).first().asString().contains("kept as runs.damaged.db");
  }

  /** SQLite's own check (PRAGMA integrity_check) is the measure of what comes of it. */
  @Test
  @Tag("slow")
  void damagedFilesAreNeverAFaultAndNeverWrittenOver() throws Exception {
    assertThat(new DamagedLogs(folder, 17).use(DAMAGED))
        .as("files so damaged that they were set aside")
        .isPositive();
  }

  @Test
  @Tag("programs")
  void runWhoseIdWasPrintedIsThereWhenTheImportIsKilled() throws Exception {
    Path lines = LogBench.lines(folder, 300);
    for (long afterMs : new long[] {700, 1_000, 1_400}) {
      Path data = folder.resolve("killed-" + afterMs);
      LogBench.Killed killed = LogBench.importKilled(lines, data, afterMs);
      assertThat(killed.there()).containsAll(killed.printed());
      assertThat(killed.wrong()).isEmpty();
    }
  }

  /** A shell's limit on the size of files (POSIX, ulimit -f) stands in for a full disk. */
  @Test
  @Tag("programs")
  void fullDiskIsToldInOneLineAndLosesNothing() throws Exception {
    Path data = folder.resolve("full");
    Path said = folder.resolve("said.txt");
    // the first import also unpacks the database's library, which is larger than the limit
    assertThat(imported(LogBench.lines(folder, 1), data, said, "unlimited").exit()).isZero();
    Imported full = imported(LogBench.lines(folder, 400), data, said, "1200");
    assertThat(full.exit()).isNotZero();
    assertThat(full.complaint())
        .startsWith("neckway: " + data.resolve("runs.db") + ": ")
        .contains("make room");
    try (RunLog log = open(data)) {
      assertThat(log.check()).isEmpty();
      List<String> there = log.list(ALL, 1000).stream().map(RunLog.Listed::id).toList();
      assertThat(there).hasSizeBetween(2, 399).containsAll(ids(said));
    }
    assertThat(complaints).isEmpty();
  }

  private record Imported(int exit, String complaint) {}

  private static Imported imported(Path lines, Path data, Path said, String blocks)
      throws Exception {
    Process process =
        new ProcessBuilder(
                "bash",
                "-c",
                "ulimit -f " + blocks + "; exec \"$@\"",
                "bash",
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:-UsePerfData",
                "-cp",
                System.getProperty("java.class.path"),
                "neckway.cli.Main",
                "log",
                "import",
                lines.toString(),
                "--data",
                data.toString())
            .redirectOutput(said.toFile())
            .start();
    List<String> lastOf =
        new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8)
            .strip()
            .lines()
            .toList();
    return new Imported(process.waitFor(), lastOf.isEmpty() ? "" : lastOf.get(lastOf.size() - 1));
  }

  private static List<String> ids(Path said) throws IOException {
    return Files.readAllLines(said).stream().filter(line -> line.matches("r\\d+")).toList();
  }

  @Test
  void logThatCannotBeWrittenCanStillBeAsked() throws Exception {
    try (RunLog log = open(folder)) {
      fill(log, 2);
    }
    Set<PosixFilePermission> before = Files.getPosixFilePermissions(folder);
    Path file = folder.resolve("runs.db");
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r--r--"));
    Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("r-xr-xr-x"));
    try {
      assumeFalse(Files.isWritable(folder), "this user may write anywhere");
      try (RunLog log = open(folder)) {
        assertThat(log.count()).isEqualTo(2);
        assertThatThrownBy(() -> fill(log, 3))
            .isInstanceOf(BadInput.class)
            .hasMessageContaining("cannot be opened for writing");
      }
    } finally {
      Files.setPosixFilePermissions(folder, before);
    }
  }

  @Test
  void logOfTheVersionBeforeIsBroughtOnAndACopyOfItIsKept() throws Exception {
    List<PlayedRound> before;
    try (RunLog log = open(folder)) {
      fill(log, 1);
      before = log.rounds(Runs.drill().key(), Tuning.STANDARD, Optional.empty());
    }
    // as version 1 had it: from major to Dorian, first finger, string 3, then the shape of Phrygian
    execute("UPDATE run SET rounds = 'U0113 1 80.5 -12.25|damaged|S2 0 60.0 -'");
    execute("PRAGMA user_version = 1");
    try (RunLog log = open(folder)) {
      assertThat(log.rounds(Runs.drill().key(), Tuning.STANDARD, Optional.empty()))
          .containsExactly(
              new PlayedRound(
                  new Exercise.OfJoin(Shape.MAJOR, Shape.DORIAN, Direction.UP, 3, 1),
                  before.get(0).when(),
                  before.get(0).day(),
                  true,
                  80.5,
                  OptionalDouble.of(-12.25)),
              new PlayedRound(
                  new Exercise.OfShape(Shape.PHRYGIAN),
                  before.get(0).when(),
                  before.get(0).day(),
                  false,
                  60,
                  OptionalDouble.empty()));
      assertThat(log.check()).isEmpty();
    }
    try (Connection copy =
            DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("runs.version-1.db"));
        Statement ask = copy.createStatement();
        ResultSet found = ask.executeQuery("SELECT rounds FROM run")) {
      assertThat(found.getString(1)).startsWith("U0113 1 80.5");
    }
    assertThat(complaints).isEmpty();
  }

  @Test
  void exportImportAndExportAreTheSameToTheByte() throws IOException {
    Path lines = folder.resolve("theirs.jsonl");
    Files.writeString(
        lines,
        Runs.line("a", 3)
            + "\n"
            + Runs.line("b", 1).replace("\"source\"", "\"player\":\"Ada, \\\"A\\\"\",\"source\"")
            + "\n"
            + "{\"id\":\"w\",\"when\":\"2026-05-03T08:00:00+02:00\",\"kind\":\"warm-up\","
            + "\"review\":null}\n");
    Path first = folder.resolve("first");
    Path second = folder.resolve("second");
    List<String> stored = new ArrayList<>();
    try (RunLog log = open(folder.resolve("one"))) {
      assertThat(new RunTransfer(log).take(List.of(lines), listener(stored)))
          .isEqualTo(new RunTransfer.Imported(3, 0, 0));
      assertThat(new RunTransfer(log).take(List.of(lines), listener(stored)).passedOver())
          .isEqualTo(3);
      assertThat(new RunTransfer(log).export(first, id -> {})).isEqualTo(3);
    }
    assertThat(stored).containsExactly("a", "b", "w");
    try (RunLog log = open(folder.resolve("two"))) {
      new RunTransfer(log).take(List.of(first), listener(new ArrayList<>()));
      new RunTransfer(log).export(second, id -> {});
    }
    for (String file : List.of("runs.jsonl", "runs.csv", "notes.csv", "shifts.csv")) {
      assertThat(second.resolve(file)).hasSameBinaryContentAs(first.resolve(file));
    }
    assertThat(Files.readAllLines(first.resolve("runs.csv")))
        .hasSize(3)
        .first()
        .asString()
        .startsWith("id,when,key,shapes,up,down,tempo,notesPerBeat,rounds,cleanRounds,notes,right");
  }

  @Test
  void ownSwingIsKeptAndListedAndWrittenIntoTheTable() throws IOException {
    ObjectNode review = Runs.json();
    ((ObjectNode) review.path("summary")).put("swing", 0.6213);
    ObjectNode line = (ObjectNode) RunLine.parse(Runs.line("s", 1), "");
    line.set("review", review);
    Path lines = folder.resolve("swung.jsonl");
    Files.writeString(lines, RunLine.text(line) + "\n");
    Path out = folder.resolve("out");
    try (RunLog log = open(folder.resolve("one"))) {
      new RunTransfer(log).take(List.of(lines), listener(new ArrayList<>()));
      RunSummary said =
          log.list(new RunLog.Wanted(Optional.empty(), Optional.empty()), 9).get(0).said();
      assertThat(said.summary().swing()).hasValue(0.6213);
      new RunTransfer(log).export(out, id -> {});
    }
    List<String> table = Files.readAllLines(out.resolve("runs.csv"));
    assertThat(table.get(0)).endsWith(",offMsSpread,swing");
    assertThat(table.get(1)).endsWith(",0.6213");
    assertThat(RunSummary.read("{\"key\":\"A major\"}").summary().swing())
        .as("kept by an earlier version")
        .isEmpty();
  }

  @Test
  void reviewsFromBeforeTheLogAreTakenInAndBadLinesAreTold() throws IOException {
    Path theirs = Files.createDirectory(folder.resolve("theirs"));
    Files.writeString(theirs.resolve("old.json"), RunLine.text(Runs.json()));
    Files.writeString(theirs.resolve("drill.json"), "{\"format\": \"neckway-drill/1\"}");
    Files.writeString(theirs.resolve("z.jsonl"), "{\"id\": \"x\"}\nno JSON\n" + Runs.line("y", 1));
    List<String> unusable = new ArrayList<>();
    try (RunLog log = open(folder)) {
      RunTransfer.Imported imported =
          new RunTransfer(log).take(List.of(theirs), listener(new ArrayList<>(), unusable));
      assertThat(imported).isEqualTo(new RunTransfer.Imported(2, 0, 3));
    }
    assertThat(unusable).hasSize(3);
    assertThat(unusable.get(1)).contains("z.jsonl: line 1: when: is missing");
  }

  private static RunTransfer.Listener listener(List<String> stored) {
    return listener(stored, new ArrayList<>());
  }

  private static RunTransfer.Listener listener(List<String> stored, List<String> unusable) {
    return new KeptTold(stored, unusable);
  }
}
