package neckway.log;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import neckway.file.WriteFault;
import neckway.neck.BadInput;

/** What is done with a damaged log: it gets another name, and what can be read is read. */
final class Rescue {
  /** A file, and what SQLite keeps beside it. */
  private static final List<String> BESIDE = List.of("", "-wal", "-shm");

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
      for (String beside : BESIDE) {
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

  /**
   * The lines of all runs that can be read, each by itself, so that one fault costs few. A file
   * whose first page is damaged is read once more with a sound one in its place: all logs of a
   * version have the same.
   */
  static List<String> lines(Path damaged) {
    List<String> asItIs = readable(damaged);
    try {
      Path mended = withSoundFirstPage(damaged);
      try {
        List<String> more = readable(mended);
        return more.size() > asItIs.size() ? more : asItIs;
      } finally {
        for (String beside : BESIDE) {
          Files.deleteIfExists(mended.resolveSibling(mended.getFileName() + beside));
        }
      }
    } catch (IOException | SQLException notMended) {
      return asItIs;
    }
  }

  /** The page size of our logs, SQLite's usual one since 3.12.0. */
  private static final int PAGE_BYTES = 4096;

  /** Where the header has the file's size in pages (SQLite, "Database File Format", 1.3). */
  private static final int PAGES_AT = 28;

  private static Path withSoundFirstPage(Path damaged) throws IOException, SQLException {
    Path empty = damaged.resolveSibling("empty-" + UUID.randomUUID() + ".db");
    Path mended = damaged.resolveSibling("mended-" + UUID.randomUUID() + ".db");
    try {
      Database.open(empty).close();
      ByteBuffer page = ByteBuffer.wrap(Files.readAllBytes(empty), 0, PAGE_BYTES);
      page.putInt(PAGES_AT, (int) (Files.size(damaged) / PAGE_BYTES));
      Files.copy(damaged, mended);
      try (FileChannel file = FileChannel.open(mended, StandardOpenOption.WRITE)) {
        file.write(page, 0);
      }
      return mended;
    } finally {
      Files.deleteIfExists(empty);
    }
  }

  private static List<String> readable(Path damaged) {
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
