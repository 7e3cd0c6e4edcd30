package neckway.log;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.UUID;
import neckway.neck.BadInput;
import neckway.words.Wording;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.util.LibraryLoaderUtil;

/** Opens the log's SQLite file, makes its tables, and says in one line what stands in the way. */
final class Database {
  /** "neck" in ASCII: marks the file as ours (SQLite, "Database File Format", 1.3.15). */
  private static final int APPLICATION_ID = 0x6e65636b;

  static final int VERSION = 2;
  private static final int BUSY_MS = 15_000;

  private static final String[] TABLES = {
    "CREATE TABLE run (n INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE, at INTEGER NOT NULL,"
        + " day INTEGER NOT NULL, digest TEXT NOT NULL UNIQUE, player TEXT NOT NULL,"
        + " tonic INTEGER NOT NULL, key TEXT NOT NULL, tuning TEXT NOT NULL, rounds BLOB NOT NULL,"
        + " said TEXT NOT NULL, about TEXT NOT NULL)",
    "CREATE INDEX run_at ON run (at)",
    // apart, so that lists need not read past them
    "CREATE TABLE review (run INTEGER PRIMARY KEY REFERENCES run (n) ON DELETE CASCADE,"
        + " json BLOB NOT NULL)"
  };

  /** All that is asked for, table by table. */
  private static final String[] COLUMNS = {
    "n, id, at, day, digest, player, tonic, key, tuning, rounds, said, about FROM run",
    "run, json FROM review"
  };

  private Database() {}

  /**
   * Opens a file, making it where it is not there.
   *
   * @throws SQLException where it is damaged
   * @throws BadInput where it cannot be used for another reason
   */
  static Connection open(Path file) throws SQLException {
    useLibraryIn(file.toAbsolutePath().resolveSibling("lib"));
    String path = file.toAbsolutePath().toString();
    try {
      return prepared("jdbc:sqlite:" + path, forWriting(), file);
    } catch (SQLException e) {
      if (!isClosedToWriting(e) || !isWhole(file)) {
        throw asIs(file, e);
      }
    }
    try {
      // a file that nobody can change needs no locks (SQLite, "URI Filenames", immutable)
      String uri = file.toUri().getRawPath() + "?immutable=1";
      return prepared("jdbc:sqlite:file:" + uri, forReading(), file);
    } catch (SQLException e) {
      throw asIs(file, e);
    }
  }

  private static SQLiteConfig forWriting() {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(BUSY_MS);
    config.setJournalMode(SQLiteConfig.JournalMode.WAL);
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    config.enforceForeignKeys(true);
    return config;
  }

  /** For a folder where nothing can be written: what is kept there can still be asked for. */
  private static SQLiteConfig forReading() {
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(true);
    return config;
  }

  private static Connection prepared(String url, SQLiteConfig config, Path file)
      throws SQLException {
    Connection connection = config.createConnection(url);
    try {
      prepare(connection, file);
      return connection;
    } catch (SQLException | RuntimeException e) {
      connection.close();
      throw e;
    }
  }

  private static boolean isClosedToWriting(SQLException e) {
    int code = e.getErrorCode() & 0xff;
    return code == SQLiteErrorCode.SQLITE_READONLY.code
        || code == SQLiteErrorCode.SQLITE_CANTOPEN.code;
  }

  /** Whether nothing of it lies in the write-ahead log only. */
  private static boolean isWhole(Path file) {
    Path ahead = file.resolveSibling(file.getFileName() + "-wal");
    try {
      return Files.isReadable(file) && (Files.notExists(ahead) || Files.size(ahead) == 0);
    } catch (IOException e) {
      return false;
    }
  }

  private static void prepare(Connection connection, Path file) throws SQLException {
    int version = version(connection);
    int tables = number(connection, "SELECT count(*) FROM sqlite_master");
    if (tables > 0 && number(connection, "PRAGMA application_id") != APPLICATION_ID) {
      throw new BadInput(Wording.of("machine.log.foreign", file));
    }
    if (version > VERSION) {
      throw new BadInput(Wording.of("machine.log.newer", file));
    }
    if (version <= 0) {
      if (tables > 0) {
        throw damage("tables, and no version");
      }
      create(connection);
    } else if (version < VERSION) {
      checkTables(connection);
      Migration.run(connection, file, version);
    }
    checkTables(connection);
  }

  /** A schema that was damaged may still be one to SQLite, with other names in it. */
  private static void checkTables(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      for (String columns : COLUMNS) {
        statement.executeQuery("SELECT " + columns + " LIMIT 0").close();
      }
    } catch (SQLException e) {
      throw isDamage(e) ? e : damage(e.getMessage());
    }
  }

  private static SQLException damage(String what) {
    return new SQLException(what, null, SQLiteErrorCode.SQLITE_CORRUPT.code);
  }

  private static void create(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      // another program may have made them while this one waited for its turn
      if (version(connection) == 0) {
        for (String table : TABLES) {
          statement.execute(table);
        }
        statement.execute("PRAGMA application_id = " + APPLICATION_ID);
        statement.execute("PRAGMA user_version = " + VERSION);
      }
      statement.execute("COMMIT");
    }
  }

  static int version(Connection connection) throws SQLException {
    return number(connection, "PRAGMA user_version");
  }

  private static int number(Connection connection, String question) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet result = statement.executeQuery(question)) {
      return result.next() ? result.getInt(1) : 0;
    }
  }

  /** Whether a fault means that the file holds no sound database any more. */
  static boolean isDamage(SQLException e) {
    int code = e.getErrorCode() & 0xff;
    return code == SQLiteErrorCode.SQLITE_CORRUPT.code
        || code == SQLiteErrorCode.SQLITE_NOTADB.code
        || code == SQLiteErrorCode.SQLITE_FORMAT.code;
  }

  /** Damage goes on as it is; anything else is said in one line. */
  private static SQLException asIs(Path file, SQLException e) {
    if (isDamage(e)) {
      return e;
    }
    throw cannot(file, e);
  }

  /** What stands in the way, in one line. */
  static BadInput cannot(Path file, SQLException e) {
    int code = e.getErrorCode() & 0xff;
    String key;
    if (code == SQLiteErrorCode.SQLITE_FULL.code) {
      key = "machine.log.full";
    } else if (code == SQLiteErrorCode.SQLITE_BUSY.code
        || code == SQLiteErrorCode.SQLITE_LOCKED.code) {
      key = "machine.log.busy";
    } else if (isClosedToWriting(e) || code == SQLiteErrorCode.SQLITE_PERM.code) {
      key = "machine.log.closed";
    } else if (code == SQLiteErrorCode.SQLITE_IOERR.code) {
      key = "machine.log.disk";
    } else {
      key = "machine.log.unusable";
    }
    return new BadInput(Wording.of(key, file), e);
  }

  /**
   * Has the database's library unpacked once beside the log: else each start unpacks it anew, and a
   * program that is killed leaves its copy. Where that cannot be done, it is unpacked as usual.
   */
  private static void useLibraryIn(Path folder) {
    if (System.getProperty("org.sqlite.lib.path") != null) {
      return;
    }
    String name = LibraryLoaderUtil.getNativeLibName();
    String version = org.sqlite.SQLiteJDBCLoader.getVersion();
    Path library = folder.resolve(version).resolve(name);
    String resource = LibraryLoaderUtil.getNativeLibResourcePath() + "/" + name;
    try (InputStream in = LibraryLoaderUtil.class.getResourceAsStream(resource)) {
      if (in == null) {
        return;
      }
      if (!Files.exists(library)) {
        Files.createDirectories(library.getParent());
        Path part = library.resolveSibling(name + "." + UUID.randomUUID());
        try {
          Files.copy(in, part);
          Files.move(part, library, StandardCopyOption.REPLACE_EXISTING);
        } finally {
          Files.deleteIfExists(part);
        }
      }
      System.setProperty("org.sqlite.lib.path", library.getParent().toString());
      System.setProperty("org.sqlite.lib.name", name);
    } catch (IOException unpackedAsUsual) {
      // nothing is lost but time
    }
  }
}
