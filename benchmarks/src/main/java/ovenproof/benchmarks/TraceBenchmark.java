package ovenproof.benchmarks;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryType;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import ovenproof.core.trace.Channel;
import ovenproof.core.trace.ReadOptions;
import ovenproof.core.trace.TraceFile;
import ovenproof.core.trace.TraceInput;
import ovenproof.core.trace.TraceMeasures;
import ovenproof.evidence.trace.TraceOpener;

/**
 * A log of 100 MB with 16 channels: read and summed here and by DuckDB, then cleaned and measured,
 * in one run on one file. Prints megabytes per second, median and best of the rounds.
 *
 * <p>Large pages decide more than anything else where memory is virtual: the launcher asks for them
 * for a large log, and so does {@code -XX:+UseTransparentHugePages} here.
 *
 * <p>Run {@code java -XX:+UseSerialGC -XX:+UseTransparentHugePages -cp …
 * ovenproof.benchmarks.TraceBenchmark [megabytes] [rounds]}.
 */
public final class TraceBenchmark {

  private static final int CHANNELS = 16;

  private TraceBenchmark() {}

  public static void main(String[] args) throws Exception {
    int megabytes = args.length > 0 ? Integer.parseInt(args[0]) : 100;
    int rounds = args.length > 1 ? Integer.parseInt(args[1]) : 5;
    Path file = Files.createTempFile("trace", ".csv");
    try {
      write(file, megabytes * 1_000_000L);
      double size = Files.size(file) / 1e6;
      firstReading(file, size);
      double[] bound = rounds(rounds, () -> lineEnds(file));
      double[] ours = rounds(rounds, () -> sums(file));
      double[] theirs = rounds(rounds, () -> duckSums(file));
      double[] all = rounds(rounds, () -> measures(file));
      report("read and count line ends", size, bound);
      report("read and sums", size, ours);
      report("DuckDB, the same sums", size, theirs);
      report("read, clean, all measures", size, all);
      say("ratio of medians to DuckDB: %.2f", median(theirs) / median(ours));
      say("sum of the first channel: %.3f here, %.3f DuckDB", sums(file), duckSums(file));
    } finally {
      Files.deleteIfExists(file);
    }
  }

  private static void write(Path file, long bytes) throws IOException {
    SplittableRandom random = new SplittableRandom(1);
    String names =
        IntStream.rangeClosed(1, CHANNELS)
            .mapToObj(i -> "T" + i + " (°C)")
            .collect(Collectors.joining(","));
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 20)) {
      out.write(("Time (s)," + names + "\n").getBytes(StandardCharsets.UTF_8));
      long written = 0;
      StringBuilder line = new StringBuilder();
      for (int row = 0; written < bytes; row++) {
        line.setLength(0);
        line.append(row);
        for (int c = 0; c < CHANNELS; c++) {
          double level = 200 + c + 4 * Math.sin(2 * Math.PI * row / (90.0 + c));
          double value = level - 180 * Math.exp(-row / 600.0) + 0.2 * random.nextGaussian();
          long tenths = Math.round(value * 10);
          line.append(',').append(tenths / 10).append('.').append(Math.abs(tenths % 10));
        }
        byte[] text = line.append('\n').toString().getBytes(StandardCharsets.US_ASCII);
        out.write(text);
        written += text.length;
      }
    }
  }

  private static void firstReading(Path file, double size) {
    long start = System.nanoTime();
    TraceFile once = TraceOpener.open(file, ReadOptions.withDefaults());
    double seconds = (System.nanoTime() - start) / 1e9;
    say(
        "%.1f MB, %d rows, %d channels, %d processors; first reading %.2f s",
        size,
        once.rows(),
        once.channels().size(),
        Runtime.getRuntime().availableProcessors(),
        seconds);
    memory(once);
  }

  /** What this machine does with one thread when hardly anything is asked of it. */
  private static double lineEnds(Path file) throws IOException {
    long lines = 0;
    byte[] piece = new byte[1 << 18];
    try (InputStream in = Files.newInputStream(file)) {
      for (int n = in.read(piece); n > 0; n = in.read(piece)) {
        for (int i = 0; i < n; i++) {
          lines += piece[i] == '\n' ? 1 : 0;
        }
      }
    }
    return lines;
  }

  /** What stays, and the most that was live beside it, in bytes per number read. */
  private static void memory(TraceFile read) {
    double numbers = (double) read.rows() * (read.channels().size() + 1);
    long peak =
        ManagementFactory.getMemoryPoolMXBeans().stream()
            .filter(p -> p.getType() == MemoryType.HEAP)
            .mapToLong(p -> p.getPeakUsage().getUsed())
            .sum();
    System.gc();
    Runtime runtime = Runtime.getRuntime();
    long live = runtime.totalMemory() - runtime.freeMemory();
    say(
        "%.1f million numbers of 8 bytes; live after reading %.2f times that, heap at its peak (with"
            + " what waits for the collector) %.2f times",
        numbers / 1e6, live / numbers / 8, peak / numbers / 8);
    if (read.rows() == 0) {
      throw new IllegalStateException("nothing was read");
    }
  }

  private static double sums(Path file) throws IOException {
    TraceFile read = TraceOpener.open(file, ReadOptions.withDefaults());
    double[] sums = read.channels().stream().parallel().mapToDouble(c -> sum(c.values())).toArray();
    return sums[0];
  }

  private static double sum(double[] values) {
    double sum = 0;
    for (double v : values) {
      sum += v;
    }
    return sum;
  }

  private static double duckSums(Path file) throws SQLException {
    String columns =
        IntStream.rangeClosed(1, CHANNELS)
            .mapToObj(i -> "sum(\"T" + i + " (°C)\")")
            .collect(Collectors.joining(","));
    try (Connection c = DriverManager.getConnection("jdbc:duckdb:");
        Statement s = c.createStatement();
        ResultSet r = s.executeQuery("select " + columns + " from read_csv('" + file + "')")) {
      r.next();
      return r.getDouble(1);
    }
  }

  private static double measures(Path file) throws IOException {
    TraceFile read = TraceOpener.open(file, ReadOptions.withDefaults());
    return read.channels().stream().parallel().mapToDouble(c -> measured(read, c)).sum();
  }

  private static double measured(TraceFile file, Channel channel) {
    return TraceMeasures.measure(TraceInput.of(file.trace(channel)).withSetting(200.0)).size();
  }

  private static double[] rounds(int rounds, Callable<Double> work) throws Exception {
    work.call();
    work.call();
    double[] seconds = new double[rounds];
    for (int i = 0; i < rounds; i++) {
      long start = System.nanoTime();
      work.call();
      seconds[i] = (System.nanoTime() - start) / 1e9;
    }
    return seconds;
  }

  private static double median(double[] seconds) {
    double[] sorted = seconds.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  private static void report(String what, double megabytes, double[] seconds) {
    double best = Arrays.stream(seconds).min().orElse(Double.NaN);
    say(
        "%-28s median %6.0f MB/s, best %6.0f MB/s",
        what, megabytes / median(seconds), megabytes / best);
  }

  private static void say(String format, Object... arguments) {
    System.out.println(String.format(Locale.ROOT, format, arguments));
  }
}
