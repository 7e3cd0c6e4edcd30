package neckway.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import neckway.neck.BadInput;
import neckway.neck.Tuning;
import neckway.practice.PlayedRound;
import neckway.practice.RoundsOfRun;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class RunLogTests {
  private static final int MUTATIONS = 150;
  private static final int RUNS = 6;
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
              () -> IntStream.range(100, 120).forEach(day -> keep(other, day)), "another program");
      beside.start();
      IntStream.range(0, 20).forEach(day -> keep(one, day));
      beside.join();
      assertThat(one.count()).isEqualTo(40);
      assertThat(one.check()).isEmpty();
    }
  }

  private static void keep(RunLog log, int day) {
    log.keep(Runs.day(day), Runs.json(), JsonNodeFactory.instance.objectNode());
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
    Path whole = folder.resolve("whole");
    try (RunLog log = open(whole)) {
      fill(log, RUNS);
    }
    byte[] sound = Files.readAllBytes(whole.resolve("runs.db"));
    Random random = new Random(17);
    int rescued = 0;
    for (int i = 0; i < MUTATIONS; i++) {
      Path here = Files.createDirectory(folder.resolve("m" + i));
      byte[] damaged = mutated(sound, random);
      Files.write(here.resolve("runs.db"), damaged);
      complaints.clear();
      try (RunLog log = open(here)) {
        log.list(ALL, 100);
        log.check();
        log.rounds(Runs.drill().key(), Tuning.STANDARD, Optional.empty());
        IntStream.range(1000, 1003).forEach(day -> keep(log, day));
        assertThat(log.count()).isPositive();
      } catch (BadInput refusedInOneLine) {
        assertThat(refusedInOneLine.getMessage()).doesNotContain("\n");
        assertThat(here.resolve("runs.db")).hasBinaryContent(damaged);
      }
      Path aside = here.resolve("runs.damaged.db");
      if (Files.exists(aside)) {
        rescued++;
        assertThat(complaints).as("mutation " + i).isNotEmpty();
        assertThat(sqliteSays(here.resolve("runs.db"))).isEqualTo("ok");
      }
    }
    assertThat(rescued).as("files so damaged that they were set aside").isPositive();
  }

  private static byte[] mutated(byte[] sound, Random random) {
    byte[] damaged = sound.clone();
    int changes = 1 + random.nextInt(40);
    int within = random.nextBoolean() ? damaged.length : 4096;
    for (int c = 0; c < changes; c++) {
      damaged[random.nextInt(Math.min(within, damaged.length))] = (byte) random.nextInt(256);
    }
    if (random.nextInt(4) == 0) {
      return java.util.Arrays.copyOf(damaged, random.nextInt(damaged.length));
    }
    return damaged;
  }

  private static String sqliteSays(Path file) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement ask = connection.createStatement();
        ResultSet found = ask.executeQuery("PRAGMA integrity_check")) {
      return found.getString(1);
    }
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
    return new RunTransfer.Listener() {
      @Override
      public void stored(String id) {
        stored.add(id);
      }

      @Override
      public void unusable(String line) {
        unusable.add(line);
      }

      @Override
      public void looked(long runs) {
        assertThat(runs).isPositive();
      }
    };
  }
}
