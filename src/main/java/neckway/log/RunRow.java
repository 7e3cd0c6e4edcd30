package neckway.log;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import neckway.practice.PlayedRound;

/** A run as it is stored. */
record RunRow(
    KeptRun run,
    String digest,
    int tonic,
    String tuning,
    RunSummary said,
    byte[] review,
    List<PlayedRound> rounds) {
  boolean store(Connection open) throws SQLException {
    if (isThere(open)) {
      return false;
    }
    long number;
    try (PreparedStatement insert =
        open.prepareStatement(
            "INSERT INTO run (id, at, day, digest, player, tonic, key, tuning, rounds, said,"
                + " about)"
                + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) RETURNING n")) {
      insert.setString(1, run.id());
      insert.setLong(2, run.when().toInstant().toEpochMilli());
      insert.setLong(3, run.when().toLocalDate().toEpochDay());
      insert.setString(4, digest);
      insert.setString(5, run.about().path("player").asText(RunLog.NO_PLAYER));
      insert.setInt(6, tonic);
      insert.setString(7, said.key());
      insert.setString(8, tuning);
      insert.setBytes(9, PackedRounds.of(rounds));
      insert.setString(10, said.text());
      insert.setString(11, RunLine.text(run.about()));
      try (ResultSet made = insert.executeQuery()) {
        made.next();
        number = made.getLong(1);
      }
    }
    if (review.length > 0) {
      try (PreparedStatement insert =
          open.prepareStatement("INSERT INTO review (run, json) VALUES (?, ?)")) {
        insert.setLong(1, number);
        insert.setBytes(2, review);
        insert.executeUpdate();
      }
    }
    return true;
  }

  private boolean isThere(Connection open) throws SQLException {
    try (PreparedStatement ask =
        open.prepareStatement("SELECT 1 FROM run WHERE id = ? OR digest = ?")) {
      ask.setString(1, run.id());
      ask.setString(2, digest);
      try (ResultSet found = ask.executeQuery()) {
        return found.next();
      }
    }
  }
}
