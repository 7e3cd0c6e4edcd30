package neckway.log;

import static org.assertj.core.api.Assertions.assertThat;

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
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import neckway.neck.BadInput;
import neckway.neck.Tuning;

/** A sound log damaged at random places, again and again, and used as if nothing had happened. */
final class DamagedLogs {
  private static final int RUNS = 6;
  private static final int KEPT_AFTERWARDS = 3;
  private static final int FIRST_PAGE_BYTES = 4096;
  private static final int MOST_CHANGES = 40;
  private static final RunLog.Wanted ALL = new RunLog.Wanted(Optional.empty(), Optional.empty());

  private final Path folder;
  private final Random random;
  private final byte[] sound;
  private int setAside;
  private int refused;
  private int saved;

  DamagedLogs(Path folder, long seed) throws IOException {
    this.folder = folder;
    this.random = new Random(seed);
    Path whole = folder.resolve("whole");
    try (RunLog log = RunLog.open(whole, line -> {})) {
      for (int day = 0; day < RUNS; day++) {
        keep(log, day);
      }
    }
    this.sound = Files.readAllBytes(whole.resolve("runs.db"));
  }

  static void keep(RunLog log, int day) {
    log.keep(Runs.day(day), Runs.json(), JsonNodeFactory.instance.objectNode());
  }

  /**
   * Damages it so often.
   *
   * @return how many of the files were set aside
   * @throws AssertionError where one makes a fault, is written over, or leaves a log that SQLite's
   *     own check (PRAGMA integrity_check) finds wrong
   */
  int use(int times) throws Exception {
    for (int i = 0; i < times; i++) {
      use("damaged " + i, mutated());
    }
    return setAside;
  }

  String row(int times) throws Exception {
    use(times);
    return "| log damaged | %d | %d | %d | %d of %d | 0 |"
        .formatted(times, setAside, refused, saved, setAside * RUNS);
  }

  private void use(String name, byte[] damaged) throws Exception {
    Path here = Files.createDirectory(folder.resolve("damaged"));
    Files.write(here.resolve("runs.db"), damaged);
    List<String> complaints = new ArrayList<>();
    int runs = 0;
    try (RunLog log = RunLog.open(here, complaints::add)) {
      log.list(ALL, 100);
      log.check();
      log.rounds(Runs.drill().key(), Tuning.STANDARD, Optional.empty());
      for (int day = 1000; day < 1000 + KEPT_AFTERWARDS; day++) {
        keep(log, day);
      }
      runs = log.count();
      assertThat(runs).as(name).isGreaterThanOrEqualTo(KEPT_AFTERWARDS);
    } catch (BadInput inOneLine) {
      refused++;
      assertThat(inOneLine.getMessage()).as(name).doesNotContain("\n");
      assertThat(here.resolve("runs.db")).as(name).hasBinaryContent(damaged);
    }
    if (Files.exists(here.resolve("runs.damaged.db"))) {
      setAside++;
      saved += Math.max(0, runs - KEPT_AFTERWARDS);
      assertThat(complaints).as(name).isNotEmpty();
      assertThat(sqliteSays(here.resolve("runs.db"))).as(name).isEqualTo("ok");
    }
    LogBench.clear(here);
  }

  private byte[] mutated() {
    byte[] damaged = sound.clone();
    int changes = 1 + random.nextInt(MOST_CHANGES);
    int within = random.nextBoolean() ? damaged.length : FIRST_PAGE_BYTES;
    for (int c = 0; c < changes; c++) {
      damaged[random.nextInt(Math.min(within, damaged.length))] = (byte) random.nextInt(256);
    }
    return random.nextInt(4) == 0
        ? Arrays.copyOf(damaged, random.nextInt(damaged.length))
        : damaged;
  }

  private static String sqliteSays(Path file) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement ask = connection.createStatement();
        ResultSet found = ask.executeQuery("PRAGMA integrity_check")) {
      return found.getString(1);
    }
  }
}
