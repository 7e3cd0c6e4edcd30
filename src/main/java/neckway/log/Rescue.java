package neckway.log;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
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
import neckway.file.WriteFault;
import neckway.neck.BadInput;

/** What is done with a damaged log: it gets another name, and what can be read is read. */
final class Rescue {
  private Rescue() {}

  /**
   * Gives a file and what SQLite keeps beside it another name.
   *
   * @return the new name
   */
  static Path setAside(Path file) {
    String stem = file.getFileName().toString().replaceFirst("\\.db$", "");
    Path aside = file.resolveSibling(stem + ".damaged.db");
    for (int number = 2; Files.exists(aside); number++) {
      aside = file.resolveSibling(stem + ".damaged-" + number + ".db");
    }
    try {
      for (String beside : List.of("", "-wal", "-shm")) {
        Path from = file.resolveSibling(file.getFileName() + beside);
        if (Files.exists(from)) {
          Files.move(from, aside.resolveSibling(aside.getFileName() + beside));
        }
      }
    } catch (IOException e) {
      throw WriteFault.of(file, e);
    }
    return aside;
  }

  /** The lines of all runs that can be read, each by itself, so that one fault costs few. */
  static List<String> lines(Path damaged) {
    List<String> lines = new ArrayList<>();
    String copy = "jdbc:sqlite:" + damaged.toAbsolutePath();
    try (Connection connection = DriverManager.getConnection(copy);
        Statement statement = connection.createStatement()) {
      long last = last(statement);
      long misses = 0;
      for (long n = 1; n <= last && misses < MOST_MISSES; n++) {
        try (ResultSet found =
            statement.executeQuery(
                "SELECT about, (SELECT json FROM review WHERE run = n) FROM run NOT INDEXED WHERE n = "
                    + n)) {
          misses = found.next() && add(found, lines) ? 0 : misses + 1;
        } catch (SQLException unreadable) {
          misses++;
        }
      }
    } catch (SQLException nothingReadable) {
      return lines;
    }
    return lines;
  }

  private static final long MOST_MISSES = 2_000;

  private static long last(Statement statement) {
    try (ResultSet found = statement.executeQuery("SELECT max(n) FROM run NOT INDEXED")) {
      return found.next() ? found.getLong(1) : 0;
    } catch (SQLException unknown) {
      return Long.MAX_VALUE;
    }
  }

  private static boolean add(ResultSet found, List<String> lines) throws SQLException {
    try {
      ObjectNode line = (ObjectNode) RunLine.parse(String.valueOf(found.getString(1)), "");
      byte[] review = found.getBytes(2);
      line.set(
          "review",
          review == null
              ? JsonNodeFactory.instance.nullNode()
              : RunLine.parse(RunLog.inflated(review), ""));
      lines.add(RunLine.text(line));
      return true;
    } catch (IOException | BadInput | ClassCastException damagedRun) {
      return false;
    }
  }
}
