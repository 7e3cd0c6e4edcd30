package neckway.log;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import neckway.words.GermanSaid;
import neckway.words.Tongue;
import neckway.words.Wording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is said of the log, where German is spoken. */
class GermanLogTests {
  @TempDir private Path folder;
  private final List<String> said = new ArrayList<>();

  private RunLog open(Path where) {
    return RunLog.open(where, said::add);
  }

  private void execute(String statement) throws SQLException {
    try (Connection connection =
            DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("runs.db"));
        Statement run = connection.createStatement()) {
      run.execute(statement);
    }
  }

  @Test
  void logThatCannotBeUsedIsRefusedInGerman() throws Exception {
    Path file = Files.writeString(folder.resolve("file"), "");
    GermanSaid.complaint(() -> open(file));
    execute("CREATE TABLE theirs (x)");
    assertThat(GermanSaid.complaint(() -> open(folder))).contains("ist kein Protokoll von Neckway");
    execute("DROP TABLE theirs");
    execute("PRAGMA user_version = 99");
    assertThat(GermanSaid.complaint(() -> open(folder))).contains("neueren Neckway");
  }

  @Test
  void damageAndLinesThatCannotBeReadAreToldInGerman() throws IOException {
    Files.writeString(folder.resolve("runs.db"), "this is no database at all, but a note of mine");
    Path theirs = Files.createDirectory(folder.resolve("theirs"));
    Files.writeString(theirs.resolve("drill.json"), "{\"format\": \"neckway-drill/1\"}");
    Files.writeString(
        theirs.resolve("z.jsonl"),
        "{\"id\": \"x\"}\nno JSON\n[]\n{}\n{\"id\": \"x\", \"when\": \"noon\"}\n"
            + "{\"id\": \"x\", \"when\": \"2026-03-07T10:00\", \"review\": 3}\n");
    RunTransfer.Imported imported =
        Wording.in(
            Tongue.GERMAN,
            () -> {
              try (RunLog log = open(folder)) {
                return new RunTransfer(log).take(List.of(theirs), new KeptTold(said, said));
              }
            });
    assertThat(imported).isEqualTo(new RunTransfer.Imported(0, 0, 7));
    assertThat(said).hasSize(8).doesNotHaveDuplicates();
    GermanSaid.isGerman(said);
    assertThat(said.get(0))
        .endsWith(
            "war beschädigt und liegt jetzt unter runs.damaged.db; 0 Durchgänge waren lesbar und"
                + " sind übernommen");
    assertThat(said.get(2)).contains("z.jsonl: Zeile 1: when: fehlt");
  }
}
