package ovenproof.desk;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

/**
 * A PostgreSQL server of its own for the tests of one Java process, on a free port of this machine.
 * PostgreSQL refuses to run as root, so root starts it as user {@code postgres}.
 */
public final class TemporaryPostgresql {
  private static final AtomicInteger DATABASES = new AtomicInteger();
  private static TemporaryPostgresql running;

  private final Path folder;
  private final int port;

  private TemporaryPostgresql() throws IOException, InterruptedException {
    Path bin = newestBin();
    folder = Files.createTempDirectory("ovenproof-postgresql");
    run(List.of("chmod", "777", folder.toString()), false);
    try (ServerSocket free = new ServerSocket(0)) {
      port = free.getLocalPort();
    }
    Path data = folder.resolve("data");
    run(
        List.of(
            bin.resolve("initdb").toString(),
            "-D",
            data.toString(),
            "-U",
            "desk",
            "-A",
            "trust",
            "-E",
            "UTF8",
            "--locale=C",
            "--no-sync"),
        true);
    run(
        List.of(
            bin.resolve("pg_ctl").toString(),
            "-D",
            data.toString(),
            "-w",
            "-l",
            folder.resolve("log").toString(),
            "-o",
            "-p " + port + " -c listen_addresses=127.0.0.1 -c unix_socket_directories=" + folder,
            "start"),
        true);
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  try {
                    run(
                        List.of(
                            bin.resolve("pg_ctl").toString(),
                            "-D",
                            data.toString(),
                            "-m",
                            "immediate",
                            "stop"),
                        true);
                    remove(folder);
                  } catch (IOException | InterruptedException leftToTheSystem) {
                    // The temporary folder stays behind.
                  }
                }));
  }

  /** The URL of a fresh, empty database. */
  public static synchronized String freshDatabase() {
    try {
      if (running == null) {
        running = new TemporaryPostgresql();
      }
      String name = "desk" + DATABASES.incrementAndGet();
      String url = "jdbc:postgresql://127.0.0.1:" + running.port + "/";
      try (Connection connection = DriverManager.getConnection(url + "postgres?user=desk");
          var statement = connection.createStatement()) {
        statement.execute("create database " + name);
      }
      return url + name + "?user=desk";
    } catch (IOException failure) {
      throw new UncheckedIOException(failure);
    } catch (InterruptedException | SQLException failure) {
      throw new IllegalStateException(failure);
    }
  }

  private static Path newestBin() throws IOException {
    Path versions = Path.of("/usr/lib/postgresql");
    try (Stream<Path> all = Files.list(versions)) {
      return all.map(v -> v.resolve("bin"))
          .filter(b -> Files.exists(b.resolve("initdb")))
          .max(Comparator.comparing(Path::toString))
          .orElseThrow(() -> new IllegalStateException("install the Debian package postgresql"));
    }
  }

  private static void run(List<String> command, boolean asPostgres)
      throws IOException, InterruptedException {
    List<String> full = new ArrayList<>();
    if (asPostgres && "root".equals(System.getProperty("user.name"))) {
      full.addAll(List.of("setpriv", "--reuid=postgres", "--regid=postgres", "--clear-groups"));
    }
    full.addAll(command);
    Path out = Files.createTempFile("ovenproof-postgresql", ".out");
    Process process =
        new ProcessBuilder(full)
            .directory(Path.of("/").toFile())
            .redirectErrorStream(true)
            .redirectOutput(out.toFile())
            .start();
    boolean ended = process.waitFor(60, TimeUnit.SECONDS);
    String said = Files.readString(out, StandardCharsets.UTF_8);
    Files.delete(out);
    if (!ended || process.exitValue() != 0) {
      throw new IllegalStateException(full + " failed: " + said);
    }
  }

  private static void remove(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path one : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(one);
      }
    }
  }
}
