package ovenproof.desk;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DatabaseMetaData;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;

/**
 * All rows of a desk's database, read as of one moment or written into an empty one.
 *
 * <p>Reading takes one transaction that sees the database as it was when it began and keeps nobody
 * from writing, so it is safe while another program serves the desk. Jobs are not part of it: they
 * name files of one machine and end with it.
 */
public final class DeskRows {
  private static final Set<String> LEFT_OUT = Set.of("job", "flyway_schema_history");

  private DeskRows() {}

  /** Is told the rows of a desk, table by table; a table before those that refer to it. */
  public interface Reader {
    /** A table begins. */
    void table(String name);

    /** A row: text, whole numbers, decimals, true or false, or null, by column. */
    void row(Map<String, @Nullable Object> values);
  }

  /**
   * Reads a desk that may be in use.
   *
   * @return the version of its tables
   * @throws InputException if there is no desk, or its database is damaged
   * @throws OutsideException if the database cannot be reached
   */
  public static String read(DeskLocation location, Reader reader) {
    refuseMissing(location);
    try (Connection connection = connect(location)) {
      refuseDamaged(location, connection);
      connection.setAutoCommit(false);
      String version = version(location, connection);
      for (String table : tables(connection)) {
        reader.table(table);
        rows(connection, table, reader);
      }
      connection.rollback();
      return version;
    } catch (SQLException failure) {
      throw unreadable(location, failure);
    }
  }

  private static void refuseMissing(DeskLocation location) {
    Path file = location.folder().resolve("desk.db");
    if (location.jdbcUrl() == null && !Files.isRegularFile(file)) {
      throw new InputException(
          Problem.error(
              Place.of(location.folder().toString()),
              "no desk (no desk.db)",
              "the folder of a desk",
              "name it with --desk; a PostgreSQL desk needs --database as well"));
    }
  }

  private static Connection connect(DeskLocation location) throws SQLException {
    if (location.jdbcUrl() != null) {
      Connection connection = DriverManager.getConnection(location.jdbcUrl());
      connection.setReadOnly(true);
      connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
      return connection;
    }
    System.setProperty("org.sqlite.tmpdir", location.folder().toString());
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(10_000);
    // Deferred: sees one state and takes no lock that a writer would wait for.
    config.setTransactionMode(SQLiteConfig.TransactionMode.DEFERRED);
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + location.folder().resolve("desk.db"));
    return source.getConnection();
  }

  private static void refuseDamaged(DeskLocation location, Connection connection)
      throws SQLException {
    if (location.jdbcUrl() != null) {
      return;
    }
    try (Statement statement = connection.createStatement();
        ResultSet check = statement.executeQuery("pragma integrity_check(5)")) {
      List<Problem> problems = new ArrayList<>();
      while (check.next()) {
        if (!"ok".equals(check.getString(1))) {
          problems.add(damaged(location, check.getString(1)));
        }
      }
      if (!problems.isEmpty()) {
        throw new InputException(problems);
      }
    }
  }

  private static Problem damaged(DeskLocation location, String found) {
    return Problem.error(
        Place.of(location.shown()),
        "a damaged database: " + found,
        "a sound one",
        "restore an earlier backup into a new folder");
  }

  private static RuntimeException unreadable(DeskLocation location, SQLException failure) {
    String said = Database.rootMessage(failure);
    boolean damaged =
        said.contains("SQLITE_CORRUPT")
            || said.contains("SQLITE_NOTADB")
            || said.contains("malformed");
    return damaged
        ? new InputException(damaged(location, said))
        : new OutsideException(
            "cannot read the database " + location.shown() + " (" + said + ").", failure);
  }

  private static String version(DeskLocation location, Connection connection) throws SQLException {
    if (!names(connection).contains("flyway_schema_history")) {
      throw new InputException(
          Problem.error(
              Place.of(location.shown()), "no tables of a desk", "a desk's database", ""));
    }
    try (Statement statement = connection.createStatement();
        ResultSet versions =
            statement.executeQuery(
                "select version from flyway_schema_history where success and version is not null"
                    + " order by installed_rank desc")) {
      return versions.next() ? versions.getString(1) : "0";
    }
  }

  /** Tables of a desk, each after those that it refers to, else by name. */
  private static List<String> tables(Connection connection) throws SQLException {
    Map<String, Set<String>> refers = new TreeMap<>();
    Set<String> names = names(connection);
    names.removeAll(LEFT_OUT);
    for (String name : names) {
      refers.put(name, referred(connection, name));
    }
    Set<String> ordered = new LinkedHashSet<>();
    while (ordered.size() < refers.size()) {
      int before = ordered.size();
      refers.forEach(
          (name, others) -> {
            if (ordered.containsAll(others)) {
              ordered.add(name);
            }
          });
      if (ordered.size() == before) {
        throw new IllegalStateException("tables refer to each other in a circle: " + refers);
      }
    }
    return List.copyOf(ordered);
  }

  private static Set<String> names(Connection connection) throws SQLException {
    Set<String> names = new TreeSet<>();
    DatabaseMetaData data = connection.getMetaData();
    try (ResultSet found =
        data.getTables(
            connection.getCatalog(), connection.getSchema(), "%", new String[] {"TABLE"})) {
      while (found.next()) {
        String name = found.getString("TABLE_NAME").toLowerCase(Locale.ROOT);
        if (!name.startsWith("sqlite_")) {
          names.add(name);
        }
      }
    }
    return names;
  }

  private static Set<String> referred(Connection connection, String table) throws SQLException {
    Set<String> names = new TreeSet<>();
    try (ResultSet keys =
        connection
            .getMetaData()
            .getImportedKeys(connection.getCatalog(), connection.getSchema(), table)) {
      while (keys.next()) {
        names.add(keys.getString("PKTABLE_NAME").toLowerCase(Locale.ROOT));
      }
    }
    names.remove(table);
    names.removeAll(LEFT_OUT);
    return names;
  }

  private static void rows(Connection connection, String table, Reader reader) throws SQLException {
    String order = String.join(", ", key(connection, table));
    String sql = "select * from " + table + (order.isEmpty() ? "" : " order by " + order);
    try (Statement statement = connection.createStatement()) {
      statement.setFetchSize(500);
      try (ResultSet rows = statement.executeQuery(sql)) {
        ResultSetMetaData columns = rows.getMetaData();
        while (rows.next()) {
          Map<String, @Nullable Object> values = new TreeMap<>();
          for (int i = 1; i <= columns.getColumnCount(); i++) {
            values.put(columns.getColumnName(i).toLowerCase(Locale.ROOT), value(rows, i));
          }
          reader.row(values);
        }
      }
    }
  }

  /** Columns of the primary key in its order, so that the same rows come in the same order. */
  private static List<String> key(Connection connection, String table) throws SQLException {
    Map<Integer, String> columns = new TreeMap<>();
    try (ResultSet keys =
        connection
            .getMetaData()
            .getPrimaryKeys(connection.getCatalog(), connection.getSchema(), table)) {
      while (keys.next()) {
        columns.put(keys.getInt("KEY_SEQ"), keys.getString("COLUMN_NAME"));
      }
    }
    return List.copyOf(columns.values());
  }

  private static @Nullable Object value(ResultSet rows, int column) throws SQLException {
    Object value = rows.getObject(column);
    if (value instanceof Integer || value instanceof Short) {
      return ((Number) value).longValue();
    }
    return value instanceof Float ? Double.valueOf(((Number) value).doubleValue()) : value;
  }

  /** A row to be written. */
  public record Row(String table, Map<String, @Nullable Object> values) {}

  /**
   * Writes rows into a desk without campaigns, all or none.
   *
   * @param rows one after the other, in the order in which they were read; null at the end
   * @throws InputException if the desk holds something, or a row does not fit its tables
   */
  public static void write(Desk desk, Supplier<@Nullable Row> rows) {
    desk.database()
        .write(
            write -> {
              Object done =
                  write
                      .jdbc()
                      .execute(
                          (Connection connection) -> {
                            refuseFull(desk, connection);
                            insert(connection, rows);
                            return "done";
                          });
              return done;
            });
  }

  private static void refuseFull(Desk desk, Connection connection) throws SQLException {
    for (String table : tables(connection)) {
      try (Statement statement = connection.createStatement();
          ResultSet any = statement.executeQuery("select 1 from " + table + " limit 1")) {
        if (any.next()) {
          throw new InputException(
              Problem.error(
                  Place.of(desk.location().shown()),
                  "a desk that holds something already (table " + table + ")",
                  "a new or empty desk",
                  "choose another folder or database; nothing was written"));
        }
      }
    }
  }

  private static void insert(Connection connection, Supplier<@Nullable Row> rows)
      throws SQLException {
    Set<String> known = Set.copyOf(tables(connection));
    Map<String, Set<String>> columns = new LinkedHashMap<>();
    Map<String, PreparedStatement> statements = new LinkedHashMap<>();
    try {
      for (Row row = rows.get(); row != null; row = rows.get()) {
        if (!known.contains(row.table())) {
          throw misfit(row.table(), "a table that this version does not know");
        }
        if (!columns.containsKey(row.table())) {
          columns.put(row.table(), columns(connection, row.table()));
        }
        if (!columns.getOrDefault(row.table(), Set.of()).containsAll(row.values().keySet())) {
          throw misfit(row.table(), "columns " + row.values().keySet());
        }
        insert(connection, row, statements);
      }
    } finally {
      for (PreparedStatement statement : statements.values()) {
        statement.close();
      }
    }
  }

  private static void insert(
      Connection connection, Row row, Map<String, PreparedStatement> statements)
      throws SQLException {
    List<String> names = List.copyOf(new TreeSet<>(row.values().keySet()));
    String key = row.table() + names;
    PreparedStatement statement = statements.get(key);
    if (statement == null) {
      String marks = String.join(", ", names.stream().map(n -> "?").toList());
      statement =
          connection.prepareStatement(
              "insert into "
                  + row.table()
                  + " ("
                  + String.join(", ", names)
                  + ") values ("
                  + marks
                  + ")");
      statements.put(key, statement);
    }
    for (int i = 0; i < names.size(); i++) {
      statement.setObject(i + 1, row.values().get(names.get(i)));
    }
    statement.executeUpdate();
  }

  private static Set<String> columns(Connection connection, String table) throws SQLException {
    Set<String> names = new TreeSet<>();
    try (ResultSet found =
        connection
            .getMetaData()
            .getColumns(connection.getCatalog(), connection.getSchema(), table, "%")) {
      while (found.next()) {
        names.add(found.getString("COLUMN_NAME").toLowerCase(Locale.ROOT));
      }
    }
    return names;
  }

  private static InputException misfit(String table, String found) {
    return new InputException(
        Problem.error(
            Place.of("tables/" + table),
            found,
            "rows of a desk of this version or an earlier one",
            "restore with the version of the program that made the backup"));
  }

  /** Version of the tables that this program makes. */
  public static String newestVersion() {
    return Database.NEWEST_MIGRATION;
  }
}
