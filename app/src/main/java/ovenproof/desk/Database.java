package ovenproof.desk;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.util.function.Function;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.JdbcTransactionManager;
import org.springframework.transaction.TransactionException;
import org.springframework.transaction.support.TransactionTemplate;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import ovenproof.input.OutsideException;

/**
 * The desk's database: SQLite by default, PostgreSQL by URL, one set of migrations and statements.
 *
 * <p>SQLite allows one writer at a time; so there is one connection for writing and a pool for
 * reading. A write is on the disk when its method returns (WAL, synchronous FULL).
 */
final class Database implements AutoCloseable {
  /** The newest migration; opening skips Flyway (1.2 s) when the database is already there. */
  static final String NEWEST_MIGRATION = "1";

  private final HikariDataSource writing;
  private final HikariDataSource reading;
  private final JdbcTemplate writer;
  private final JdbcClient reader;
  private final TransactionTemplate transaction;

  private Database(HikariDataSource writing, HikariDataSource reading) {
    this.writing = writing;
    this.reading = reading;
    this.writer = new JdbcTemplate(writing);
    this.reader = JdbcClient.create(reading);
    this.transaction = new TransactionTemplate(new JdbcTransactionManager(writing));
  }

  static Database open(DeskLocation location) {
    HikariDataSource writing = null;
    try {
      Database database;
      if (location.jdbcUrl() == null) {
        writing = pool(sqlite(location), "desk-writer", 1);
        database = new Database(writing, pool(sqlite(location), "desk-reader", 4));
      } else {
        writing = postgresql(location.jdbcUrl());
        database = new Database(writing, writing);
      }
      database.migrate();
      return database;
    } catch (RuntimeException failure) {
      if (writing != null) {
        writing.close();
      }
      throw new OutsideException(
          "cannot open the database "
              + location.shown()
              + " ("
              + rootMessage(failure)
              + "). Is it running, is the address right, may this user write there?",
          failure);
    }
  }

  private static DataSource sqlite(DeskLocation location) {
    SQLiteConfig config = new SQLiteConfig();
    config.setJournalMode(SQLiteConfig.JournalMode.WAL);
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    config.setBusyTimeout(10_000);
    config.enforceForeignKeys(true);
    config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + location.folder().resolve("desk.db"));
    return source;
  }

  private static HikariDataSource pool(DataSource source, String name, int size) {
    HikariConfig config = new HikariConfig();
    config.setDataSource(source);
    return pool(config, name, size);
  }

  private static HikariDataSource postgresql(String url) {
    HikariConfig config = new HikariConfig();
    config.setJdbcUrl(url);
    return pool(config, "desk", 8);
  }

  private static HikariDataSource pool(HikariConfig config, String name, int size) {
    config.setPoolName(name);
    config.setMaximumPoolSize(size);
    config.setMinimumIdle(1);
    config.setConnectionTimeout(15_000);
    return new HikariDataSource(config);
  }

  private void migrate() {
    if (!isCurrent()) {
      Flyway.configure(getClass().getClassLoader())
          .dataSource(writing)
          .locations("classpath:ovenproof/desk/migrations")
          .load()
          .migrate();
    }
  }

  private boolean isCurrent() {
    try {
      return reader
          .sql(
              "select version from flyway_schema_history where success order by installed_rank desc")
          .query(String.class)
          .list()
          .contains(NEWEST_MIGRATION);
    } catch (DataAccessException noTableYet) {
      return false;
    }
  }

  /** For reading; sees what was committed. */
  JdbcClient reader() {
    return reader;
  }

  /**
   * Runs {@code work} in one writing transaction: all of it holds, or none.
   *
   * @throws OutsideException when the database fails, in words
   */
  <T extends @Nullable Object> T write(Function<Write, T> work) {
    try {
      return transaction.execute(status -> work.apply(new Write(writer)));
    } catch (TransactionException | DataAccessException failure) {
      throw new OutsideException(
          "the database did not take it ("
              + rootMessage(failure)
              + "). Nothing was saved; check that the disk has room, then send it again.",
          failure);
    }
  }

  /** What a writing transaction may use. */
  record Write(JdbcTemplate jdbc) {
    JdbcClient sql() {
      return JdbcClient.create(jdbc);
    }
  }

  static String rootMessage(Throwable failure) {
    Throwable root = failure;
    while (root.getCause() != null && root.getCause() != root) {
      root = root.getCause();
    }
    String message = root.getMessage();
    return message == null
        ? root.getClass().getSimpleName()
        : message.lines().findFirst().orElse("");
  }

  @Override
  public void close() {
    reading.close();
    writing.close();
  }
}
