package neckway.log;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.InflaterInputStream;
import neckway.drill.PlayableDrill;
import neckway.file.DrillFile;
import neckway.file.ReviewReader;
import neckway.neck.BadInput;
import neckway.neck.Key;
import neckway.neck.Tuning;
import neckway.practice.PlayedRound;
import neckway.practice.RoundsOfRun;
import neckway.words.Wording;

/**
 * The runs that are kept, in an SQLite file of their own. A run is stored whole or not at all, and
 * stays stored however the program ends. A damaged file is set aside under another name, and what
 * can be read of it is taken over.
 *
 * <p>Not for several threads at once; several programs may have the log open.
 */
public final class RunLog implements AutoCloseable {
  private static final String NAME = "runs.db";
  static final String NO_PLAYER = "";

  /** The field of a run's line that marks its take. */
  private static final String KEPT = "kept";

  private final Path file;
  private final Consumer<String> complaints;
  private final Map<String, PlayableDrill> drills = new HashMap<>();
  private Connection connection;

  private RunLog(Path file, Consumer<String> complaints) throws SQLException {
    this.file = file;
    this.complaints = complaints;
    this.connection = Database.open(file);
  }

  /**
   * Opens the log in a folder, making both where they are not there.
   *
   * @param complaints told in one line where the file was damaged
   * @throws BadInput where it cannot be used; the line says why
   */
  public static RunLog open(Path folder, Consumer<String> complaints) {
    Path file = folder.resolve(NAME);
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw new BadInput(Wording.of("machine.log.folder", folder), e);
    }
    try {
      return new RunLog(file, complaints);
    } catch (SQLException damage) {
      Path aside = Rescue.setAside(file);
      try {
        RunLog log = new RunLog(file, complaints);
        log.takeOver(aside);
        return log;
      } catch (SQLException e) {
        throw Database.cannot(file, e);
      }
    }
  }

  /** Whether there is a log in a folder; asked by whoever only reads. */
  public static boolean isThere(Path folder) {
    return Files.isRegularFile(folder.resolve(NAME));
  }

  /** Where it lies. */
  public Path file() {
    return file;
  }

  @Override
  public void close() {
    try {
      connection.close();
    } catch (SQLException e) {
      throw Database.cannot(file, e);
    }
  }

  private interface Work<T> {
    T on(Connection open) throws SQLException;
  }

  /** Does something; where the file shows itself damaged, on what could be taken over of it. */
  private <T> T work(Work<T> work) {
    try {
      return work.on(connection);
    } catch (SQLException e) {
      if (!Database.isDamage(e)) {
        throw Database.cannot(file, e);
      }
    }
    try {
      connection.close();
    } catch (SQLException e) {
      // it is damaged, and is set aside
    }
    Path aside = Rescue.setAside(file);
    try {
      connection = Database.open(file);
      takeOver(aside);
      return work.on(connection);
    } catch (SQLException e) {
      throw Database.cannot(file, e);
    }
  }

  private void takeOver(Path aside) {
    int taken = 0;
    for (String line : Rescue.lines(aside)) {
      try {
        KeptRun run = RunLine.read(RunLine.parse(line, aside.toString()), aside.toString());
        taken += put(run).isPresent() ? 1 : 0;
      } catch (BadInput unreadable) {
        // it stays in the file that was set aside
      }
    }
    complaints.accept(
        Wording.counted("machine.log.damaged", taken, file, aside.getFileName(), taken));
  }

  /**
   * Keeps a run.
   *
   * @param review neckway-review/1
   * @param about what else is to be kept of it, such as its source
   * @return the run's id, new; empty where the same review of the same time is there already
   * @throws BadInput where it cannot be stored
   */
  public Optional<String> keep(OffsetDateTime when, ObjectNode review, ObjectNode about) {
    String id = UUID.randomUUID().toString();
    ObjectNode exact = (ObjectNode) RunLine.parse(RunLine.text(review), "review");
    return put(new KeptRun(id, when, line(id, when, about), Optional.of(exact)));
  }

  /**
   * Keeps what has no review, such as a warm-up.
   *
   * @return its id, new
   * @throws BadInput where it cannot be stored
   */
  String keepWithoutReview(OffsetDateTime when, ObjectNode about) {
    String id = UUID.randomUUID().toString();
    put(new KeptRun(id, when, line(id, when, about), Optional.empty()));
    return id;
  }

  private static ObjectNode line(String id, OffsetDateTime when, ObjectNode about) {
    ObjectNode line = JsonNodeFactory.instance.objectNode();
    line.put("id", id);
    line.put("when", RunLine.text(when));
    line.setAll(about);
    return line;
  }

  /**
   * Stores a run in one transaction.
   *
   * @return its id; empty where it is there already, by its id or by its review and time
   * @throws BadInput where its review cannot be understood, or it cannot be stored
   */
  Optional<String> put(KeptRun run) {
    return putAll(List.of(row(run))).get(0);
  }

  /** The same of several in one transaction, in their order. */
  List<Optional<String>> putAll(List<RunRow> rows) {
    return work(
        open -> {
          List<Optional<String>> stored = new ArrayList<>();
          try (Statement statement = open.createStatement()) {
            statement.execute("BEGIN IMMEDIATE");
            try {
              for (RunRow row : rows) {
                stored.add(row.store(open) ? Optional.of(row.run().id()) : Optional.empty());
              }
              statement.execute("COMMIT");
            } catch (SQLException | RuntimeException e) {
              rollBack(statement, e);
              throw e;
            }
          }
          return stored;
        });
  }

  private static void rollBack(Statement statement, Exception why) {
    try {
      statement.execute("ROLLBACK");
    } catch (SQLException e) {
      // a full disk may have rolled it back already
      why.addSuppressed(e);
    }
  }

  /**
   * A run as it is to be stored.
   *
   * @throws BadInput where its review cannot be understood
   */
  RunRow row(KeptRun run) {
    String review = run.review().map(RunLine::text).orElse("");
    String digest = digest(run.when().toInstant() + " " + (review.isEmpty() ? run.id() : review));
    if (run.review().isEmpty()) {
      return new RunRow(run, digest, -1, "", RunSummary.NONE, new byte[0], List.of());
    }
    ReviewReader.DrillReviewed read = read(run);
    PlayableDrill drill = read.drill();
    return new RunRow(
        run,
        digest,
        drill.key().majorTonic(),
        drill.tuning().toString(),
        RunSummary.of(drill, read.review()),
        deflated(review),
        RoundsOfRun.of(drill, read.review(), run.when()));
  }

  /**
   * A run's review, which it must have.
   *
   * @throws BadInput where it cannot be understood
   */
  ReviewReader.DrillReviewed read(KeptRun run) {
    return ReviewReader.read(
        run.review().orElseThrow(), Wording.of("machine.log.review", run.id()), this::drill);
  }

  private PlayableDrill drill(JsonNode json) {
    String text = RunLine.text(json);
    PlayableDrill known = drills.get(text);
    if (known == null) {
      known = DrillFile.fromJson(json, "drill");
      drills.put(text, known);
    }
    return known;
  }

  private static String digest(String text) {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(sha.digest(text.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  static byte[] deflated(String text) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    Deflater deflater = new Deflater(Deflater.BEST_SPEED);
    try (DeflaterOutputStream out = new DeflaterOutputStream(bytes, deflater)) {
      out.write(text.getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      deflater.end();
    }
    return bytes.toByteArray();
  }

  /**
   * @throws IOException where it is damaged
   */
  static String inflated(byte[] bytes) throws IOException {
    try (InputStream in = new InflaterInputStream(new ByteArrayInputStream(bytes))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  /**
   * Which runs are asked for.
   *
   * @param key of this key or its relative; empty: of any
   * @param player of this player; empty: of those without a name
   */
  public record Wanted(Optional<Key> key, Optional<String> player) {}

  /** What the list says of a run. */
  public record Listed(String id, OffsetDateTime when, RunSummary said) {}

  /** Runs, newest first. */
  public List<Listed> list(Wanted wanted, int most) {
    return work(
        open -> {
          List<Listed> listed = new ArrayList<>();
          try (PreparedStatement ask =
              open.prepareStatement(
                  "SELECT id, about, said FROM run WHERE player = ? AND (? < 0 OR tonic = ?)"
                      + " ORDER BY at DESC, n DESC LIMIT ?")) {
            int tonic = wanted.key().map(Key::majorTonic).orElse(-1);
            ask.setString(1, wanted.player().orElse(NO_PLAYER));
            ask.setInt(2, tonic);
            ask.setInt(3, tonic);
            ask.setInt(4, most);
            try (ResultSet found = ask.executeQuery()) {
              while (found.next()) {
                listed(found).ifPresent(listed::add);
              }
            }
          }
          return listed;
        });
  }

  private static Optional<Listed> listed(ResultSet found) throws SQLException {
    try {
      JsonNode about = RunLine.parse(found.getString(2), "");
      return Optional.of(
          new Listed(
              found.getString(1),
              RunLine.time(about.path("when").asText(), ""),
              RunSummary.read(found.getString(3))));
    } catch (BadInput damaged) {
      return Optional.empty();
    }
  }

  /** The keys in the log, most played first; each as it was named last, relatives as one. */
  public List<Key> keys(Optional<String> player) {
    return work(
        open -> {
          List<Key> keys = new ArrayList<>();
          try (PreparedStatement ask =
              open.prepareStatement(
                  "SELECT key, max(n) FROM run WHERE player = ? AND tonic >= 0"
                      + " GROUP BY tonic ORDER BY count(*) DESC, tonic")) {
            ask.setString(1, player.orElse(NO_PLAYER));
            try (ResultSet found = ask.executeQuery()) {
              while (found.next()) {
                keys.add(Key.parse(found.getString(1)));
              }
            }
          }
          return keys;
        });
  }

  /** The rounds of a key, of a guitar tuned so, in the order in which they were played. */
  public List<PlayedRound> rounds(Key key, Tuning tuning, Optional<String> player) {
    return work(
        open -> {
          List<PlayedRound> rounds = new ArrayList<>();
          PackedRounds packed = new PackedRounds();
          try (PreparedStatement ask =
              open.prepareStatement(
                  "SELECT at, day, rounds FROM run WHERE player = ? AND tonic = ? AND tuning = ?"
                      + " ORDER BY at, n")) {
            ask.setString(1, player.orElse(NO_PLAYER));
            ask.setInt(2, key.majorTonic());
            ask.setString(3, tuning.toString());
            try (ResultSet found = ask.executeQuery()) {
              while (found.next()) {
                rounds.addAll(rounds(found, packed));
              }
            }
          }
          return rounds;
        });
  }

  private static List<PlayedRound> rounds(ResultSet found, PackedRounds packed)
      throws SQLException {
    try {
      return packed.read(
          found.getBytes(3),
          Instant.ofEpochMilli(found.getLong(1)),
          LocalDate.ofEpochDay(found.getLong(2)));
    } catch (DateTimeException damaged) {
      return List.of();
    }
  }

  /**
   * Hands on all runs, the oldest first.
   *
   * @param unreadable told the id of each whose review is damaged
   */
  void each(Consumer<KeptRun> taker, Consumer<String> unreadable) {
    work(
        open -> {
          try (Statement ask = open.createStatement();
              ResultSet found =
                  ask.executeQuery(
                      "SELECT id, about, json FROM run LEFT JOIN review ON run = n ORDER BY at, n")) {
            while (found.next()) {
              Optional<KeptRun> run = run(found);
              run.ifPresent(taker);
              if (run.isEmpty()) {
                unreadable.accept(String.valueOf(found.getString(1)));
              }
            }
          }
          return null;
        });
  }

  /** A run as it is kept, by its id. */
  Optional<KeptRun> find(String id) {
    return work(
        open -> {
          try (PreparedStatement ask =
              open.prepareStatement(
                  "SELECT id, about, json FROM run LEFT JOIN review ON run = n WHERE id = ?")) {
            ask.setString(1, id);
            try (ResultSet found = ask.executeQuery()) {
              return found.next() ? run(found) : Optional.empty();
            }
          }
        });
  }

  private static Optional<KeptRun> run(ResultSet found) throws SQLException {
    try {
      ObjectNode line = (ObjectNode) RunLine.parse(found.getString(2), "");
      byte[] review = found.getBytes(3);
      if (review != null) {
        line.set("review", RunLine.parse(inflated(review), ""));
      }
      return Optional.of(RunLine.read(line, ""));
    } catch (IOException | BadInput | ClassCastException | NullPointerException damaged) {
      return Optional.empty();
    }
  }

  /** The review of a run, as words and page are made of it. */
  public Optional<ReviewReader.DrillReviewed> review(String id) {
    return find(id).filter(run -> run.review().isPresent()).map(this::read);
  }

  /**
   * The last run before one that was of the same drill, at the same tempo and as many rounds; by
   * the same player.
   *
   * @param id of the run
   */
  public Optional<ReviewReader.DrillReviewed> before(String id) {
    Optional<KeptRun> run = find(id).filter(r -> r.review().isPresent());
    if (run.isEmpty()) {
      return Optional.empty();
    }
    PlayableDrill drill = read(run.get()).drill();
    for (String earlier : earlierIds(id)) {
      Optional<KeptRun> other = find(earlier).filter(r -> r.review().isPresent());
      if (other.isPresent()) {
        ReviewReader.DrillReviewed read = read(other.get());
        if (isSame(read.drill(), drill)) {
          return Optional.of(read);
        }
      }
    }
    return Optional.empty();
  }

  private static boolean isSame(PlayableDrill one, PlayableDrill other) {
    return one.pulse().equals(other.pulse())
        && one.route().steps().equals(other.route().steps())
        && one.tuning().equals(other.tuning());
  }

  /** Earlier runs that a list cannot tell from one, the last first. */
  private List<String> earlierIds(String id) {
    return work(
        open -> {
          List<String> ids = new ArrayList<>();
          try (PreparedStatement ask =
              open.prepareStatement(
                  "SELECT b.id, a.said, b.said FROM run a JOIN run b ON b.player = a.player"
                      + " AND b.tonic = a.tonic AND b.tuning = a.tuning"
                      + " AND (b.at, b.n) < (a.at, a.n)"
                      + " WHERE a.id = ? ORDER BY b.at DESC, b.n DESC")) {
            ask.setString(1, id);
            try (ResultSet found = ask.executeQuery()) {
              while (found.next()) {
                if (isAlike(found.getString(2), found.getString(3))) {
                  ids.add(found.getString(1));
                }
              }
            }
          }
          return ids;
        });
  }

  private static boolean isAlike(String one, String other) {
    try {
      RunSummary a = RunSummary.read(one);
      RunSummary b = RunSummary.read(other);
      return a.shapes().equals(b.shapes())
          && a.tempo() == b.tempo()
          && a.notesPerBeat() == b.notesPerBeat()
          && a.rounds() == b.rounds();
    } catch (BadInput damaged) {
      return false;
    }
  }

  /** Whether the take of a run is marked to be kept. */
  public boolean isMarked(String id) {
    return find(id).map(run -> run.about().path(KEPT).asBoolean()).orElse(false);
  }

  /** Marks the take of a run as one that is kept, or takes the mark away. */
  public void mark(String id, boolean marked) {
    Optional<KeptRun> run = find(id);
    if (run.isEmpty()) {
      return;
    }
    ObjectNode about = run.get().about().deepCopy();
    if (marked) {
      about.put(KEPT, true);
    } else {
      about.remove(KEPT);
    }
    work(
        open -> {
          try (PreparedStatement update =
              open.prepareStatement("UPDATE run SET about = ? WHERE id = ?")) {
            update.setString(1, RunLine.text(about));
            update.setString(2, id);
            update.executeUpdate();
          }
          return null;
        });
  }

  /** The takes of all players that are marked to be kept. */
  public List<Path> markedTakes() {
    return work(
        open -> {
          List<Path> takes = new ArrayList<>();
          try (Statement ask = open.createStatement();
              ResultSet found =
                  ask.executeQuery(
                      "SELECT about FROM run WHERE about LIKE '%\"" + KEPT + "\":true%'")) {
            while (found.next()) {
              take(found.getString(1)).ifPresent(takes::add);
            }
          }
          return takes;
        });
  }

  private static Optional<Path> take(String about) {
    try {
      return Optional.of(RunLine.parse(about, "").path("take").asText(""))
          .filter(take -> !take.isEmpty())
          .map(Path::of);
    } catch (BadInput | InvalidPathException damaged) {
      return Optional.empty();
    }
  }

  /** The line of a run as it would be exported. */
  public Optional<String> line(String id) {
    return find(id).map(RunLine::of);
  }

  /**
   * Removes runs.
   *
   * @return how many there were
   */
  public int remove(List<String> ids) {
    return work(
        open -> {
          int removed = 0;
          try (PreparedStatement delete = open.prepareStatement("DELETE FROM run WHERE id = ?")) {
            for (String id : ids) {
              delete.setString(1, id);
              removed += delete.executeUpdate();
            }
          }
          return removed;
        });
  }

  /** Removes all runs, and gives the room back that they took. */
  public int removeAll() {
    int runs = count();
    work(
        open -> {
          try (Statement delete = open.createStatement()) {
            delete.execute("DELETE FROM run");
            delete.execute("VACUUM");
          }
          return null;
        });
    return runs;
  }

  /** How many runs there are, of all players. */
  public int count() {
    return work(
        open -> {
          try (Statement ask = open.createStatement();
              ResultSet found = ask.executeQuery("SELECT count(*) FROM run")) {
            return found.next() ? found.getInt(1) : 0;
          }
        });
  }

  /** What is wrong with the log, a line each; nothing where all is well. */
  public List<String> check() {
    List<String> wrong = new ArrayList<>();
    work(
        open -> {
          try (Statement ask = open.createStatement();
              ResultSet found = ask.executeQuery("PRAGMA integrity_check")) {
            while (found.next()) {
              if (!found.getString(1).equals("ok")) {
                wrong.add(found.getString(1));
              }
            }
          }
          return null;
        });
    each(
        run -> {
          try {
            row(run);
          } catch (BadInput e) {
            wrong.add(e.getMessage());
          }
        },
        id -> wrong.add(Wording.of("machine.log.reviewUnread", id)));
    return wrong;
  }
}
