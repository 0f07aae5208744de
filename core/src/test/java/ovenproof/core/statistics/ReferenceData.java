package ovenproof.core.statistics;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** Small comma-separated check tables of the test resources; see README.md beside them. */
public final class ReferenceData {

  private final List<String> header;
  private final List<List<String>> rows;

  private ReferenceData(List<String> header, List<List<String>> rows) {
    this.header = header;
    this.rows = rows;
  }

  /** Reads {@code /ovenproof/core/…}. */
  public static ReferenceData read(String resource) {
    try (InputStream in = ReferenceData.class.getResourceAsStream("/ovenproof/core/" + resource)) {
      if (in == null) {
        throw new IllegalArgumentException("no such resource: " + resource);
      }
      List<List<String>> lines =
          new String(in.readAllBytes(), StandardCharsets.UTF_8)
              .lines()
              .map(line -> Arrays.asList(line.split(",", -1)))
              .toList();
      return new ReferenceData(lines.get(0), lines.subList(1, lines.size()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public double[] numbers(String column) {
    return text(column).stream().mapToDouble(Double::parseDouble).toArray();
  }

  public List<String> text(String column) {
    int index = header.indexOf(column);
    return rows.stream().map(row -> row.get(index)).toList();
  }

  public List<List<String>> rows() {
    return rows;
  }

  /** Log relative error: correct significant digits, at most 15. */
  public static double digits(double found, double certified) {
    double error = Math.abs(found - certified);
    double relative = certified == 0 ? error : error / Math.abs(certified);
    return relative == 0 ? 15 : Math.min(15, -Math.log10(relative));
  }
}
