package neckway.log;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import neckway.neck.Direction;
import neckway.neck.Shape;
import neckway.practice.Exercise;
import neckway.practice.PlayedRound;

/**
 * Brings a log of an earlier version to the one of today: a copy of the file is made first, and the
 * change is one transaction, so that it is done whole or not at all.
 */
final class Migration {
  private interface Step {
    void on(Connection open) throws SQLException;
  }

  /** Element v - 1 goes from version v to the next. */
  private static final List<Step> STEPS = List.of(Migration::packRounds);

  private Migration() {}

  /**
   * @param file of the connection
   * @param from the version it has, 1 or more
   * @throws SQLException where it cannot be done; the log is as it was
   */
  static void run(Connection open, Path file, int from) throws SQLException {
    try (Statement statement = open.createStatement()) {
      // a whole copy, with what still lies in the write-ahead log (SQLite, "VACUUM", INTO)
      statement.execute("VACUUM INTO '" + copy(file, from).toString().replace("'", "''") + "'");
      statement.execute("BEGIN IMMEDIATE");
      try {
        // another program may have done it while this one waited for its turn
        for (int version = Database.version(open); version < Database.VERSION; version++) {
          STEPS.get(version - 1).on(open);
          statement.execute("PRAGMA user_version = " + (version + 1));
        }
        statement.execute("COMMIT");
      } catch (SQLException e) {
        statement.execute("ROLLBACK");
        throw e;
      }
    }
  }

  private static Path copy(Path file, int version) {
    String stem = file.getFileName().toString().replaceFirst("\\.db$", "") + ".version-" + version;
    Path copy = file.toAbsolutePath().resolveSibling(stem + ".db");
    for (int number = 2; Files.exists(copy); number++) {
      copy = copy.resolveSibling(stem + "-" + number + ".db");
    }
    return copy;
  }

  /** Version 1 had the rounds of a run as text: "U0131 1 80.0 -12.5|S2 0 80.0 -". */
  private static void packRounds(Connection open) throws SQLException {
    try (PreparedStatement ask = open.prepareStatement("SELECT n, rounds FROM run");
        PreparedStatement change = open.prepareStatement("UPDATE run SET rounds = ? WHERE n = ?");
        ResultSet found = ask.executeQuery()) {
      while (found.next()) {
        change.setBytes(1, PackedRounds.of(rounds(String.valueOf(found.getString(2)))));
        change.setLong(2, found.getLong(1));
        change.addBatch();
      }
      change.executeBatch();
    }
  }

  private static final int FIELDS = 4;

  private static List<PlayedRound> rounds(String text) {
    List<PlayedRound> rounds = new ArrayList<>();
    for (String each : text.split("\\|")) {
      String[] fields = each.split(" ");
      try {
        if (fields.length == FIELDS) {
          rounds.add(
              new PlayedRound(
                  exercise(fields[0]),
                  Instant.EPOCH,
                  LocalDate.EPOCH,
                  fields[1].equals("1"),
                  Double.parseDouble(fields[2]),
                  fields[3].equals("-")
                      ? OptionalDouble.empty()
                      : OptionalDouble.of(Double.parseDouble(fields[3]))));
        }
      } catch (NumberFormatException | IndexOutOfBoundsException damaged) {
        // one round less, and the others stay
      }
    }
    return rounds;
  }

  private static Exercise exercise(String word) {
    Shape[] shapes = Shape.values();
    Shape lower = shapes[word.charAt(1) - '0'];
    if (word.charAt(0) == 'S') {
      return new Exercise.OfShape(lower);
    }
    return new Exercise.OfJoin(
        lower,
        shapes[word.charAt(2) - '0'],
        word.charAt(0) == 'U' ? Direction.UP : Direction.DOWN,
        Integer.parseInt(word.substring(4)),
        word.charAt(3) - '0');
  }
}
