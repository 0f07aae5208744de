package ovenproof.core.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import ovenproof.core.trace.RawTable.StampColumn;
import ovenproof.core.trace.TableLayout.ColumnKind;

/**
 * The quick way through a row and the careful one give the same numbers, whatever stands in the
 * cells; and plain cells give what {@link Double#parseDouble} makes of them.
 */
class RowReaderTest {

  private static final int ROWS = 400;

  /** A form of log. */
  enum Shape {
    COMMA(',', '.'),
    SEMICOLON_DECIMAL_COMMA(';', ','),
    TAB('\t', '.'),
    BLANKS(' ', '.'),
    QUOTED_DECIMAL_COMMA(',', ',');

    final char delimiter;
    final char decimal;

    Shape(char delimiter, char decimal) {
      this.delimiter = delimiter;
      this.decimal = decimal;
    }
  }

  private static final List<ColumnKind> KINDS =
      List.of(
          ColumnKind.NUMBER,
          ColumnKind.TIME,
          ColumnKind.NUMBER,
          ColumnKind.WORDS,
          ColumnKind.NUMBER,
          ColumnKind.SKIPPED,
          ColumnKind.NUMBER);

  private static TableLayout layout(Shape shape, List<ColumnKind> kinds) {
    List<HeaderText> headers = new ArrayList<>();
    kinds.forEach(k -> headers.add(HeaderText.of("x")));
    return new TableLayout(
        new LineSplitter(shape.delimiter), shape.decimal, headers, kinds, 0, -1, 1);
  }

  private static RawTable read(
      byte[] bytes, TableLayout layout, RowReader.Care care, @Nullable StampColumn stamp) {
    StampColumn[] stamps = new StampColumn[layout.columns()];
    for (int c = 0; c < stamps.length; c++) {
      stamps[c] = layout.kinds().get(c) == ColumnKind.TIME ? stamp : null;
    }
    LogText text = LogText.of(LogSource.of(bytes), Integer.MAX_VALUE);
    return new TableReader(text, layout, stamps, 0, care).read();
  }

  private static void assertSame(RawTable quick, RawTable careful) {
    assertThat(quick.skipped()).isEqualTo(careful.skipped());
    assertThat(quick.missingWords()).isEqualTo(careful.missingWords());
    assertThat(quick.labels()).isEqualTo(careful.labels());
    for (int c = 0; c < careful.columns(); c++) {
      assertThat(bits(quick.values()[c])).isEqualTo(bits(careful.values()[c]));
    }
  }

  private static long[] bits(double[] values) {
    return Arrays.stream(values).mapToLong(Double::doubleToLongBits).toArray();
  }

  @ParameterizedTest
  @EnumSource(Shape.class)
  void bothWaysAgreeOnNastyRows(Shape shape) {
    for (int seed = 0; seed < 25; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      byte[] bytes = new Nasty(shape, random).log(ROWS).getBytes(StandardCharsets.UTF_8);
      StampColumn stamp =
          StampSearch.of(List.of("2026-03-14 09:00:01"), ReadOptions.withDefaults());
      TableLayout layout = layout(shape, shape == Shape.BLANKS ? blankKinds() : KINDS);
      assertSame(
          read(bytes, layout, RowReader.Care.WHERE_NEEDED, stamp),
          read(bytes, layout, RowReader.Care.ALWAYS, stamp));
    }
  }

  private static List<ColumnKind> blankKinds() {
    return List.of(ColumnKind.NUMBER, ColumnKind.WORDS, ColumnKind.NUMBER, ColumnKind.NUMBER);
  }

  /** Makes rows of which most are plain and some are anything. */
  private record Nasty(Shape shape, SplittableRandom random) {
    String log(int rows) {
      String lineEnd = random.nextInt(3) == 0 ? "\r\n" : "\n";
      double nastiness = random.nextInt(3) * 0.1;
      boolean trailing = random.nextInt(4) == 0;
      StringBuilder log = new StringBuilder();
      for (int r = 0; r < rows; r++) {
        if (random.nextDouble() < nastiness / 2) {
          log.append(noise()).append(lineEnd);
        }
        log.append(row(nastiness));
        log.append(trailing && shape != Shape.BLANKS ? String.valueOf(shape.delimiter) : "");
        log.append(r == rows - 1 && random.nextBoolean() ? "" : lineEnd);
      }
      return log.toString();
    }

    private String noise() {
      String d = String.valueOf(shape.delimiter);
      return pick("", "  ", "# comment", "INFO 12.5 started", d + d, "1" + d + "2", "\t", "==>");
    }

    private String row(double nastiness) {
      List<ColumnKind> kinds = shape == Shape.BLANKS ? blankKinds() : KINDS;
      List<String> cells = new ArrayList<>();
      for (ColumnKind kind : kinds) {
        cells.add(random.nextDouble() < nastiness ? odd(kind) : plain(kind));
      }
      if (random.nextDouble() < nastiness / 4) {
        cells.remove(cells.size() - 1);
      } else if (random.nextDouble() < nastiness / 4) {
        cells.add(pick("7", "x", "\"a"));
      }
      String between = shape == Shape.BLANKS ? pick(" ", "  ", " \t") : "" + shape.delimiter;
      return (shape == Shape.BLANKS ? pick("", "  ") : "") + String.join(between, cells);
    }

    private String plain(ColumnKind kind) {
      return switch (kind) {
        case NUMBER -> number();
        case TIME -> stamp();
        case WORDS -> pick("heat", "hold", "\u00fcber", "x1");
        case SKIPPED -> shape == Shape.BLANKS ? "-" : "";
      };
    }

    private String number() {
      String text =
          switch (random.nextInt(6)) {
            case 0 -> String.valueOf(random.nextInt(2_000_000));
            case 1 -> String.valueOf(random.nextLong(10_000_000_000_000_000L));
            case 2 -> String.format(Locale.ROOT, "%.6f", random.nextDouble(-3000, 3000));
            case 3 -> String.format(Locale.ROOT, "%.2f", random.nextDouble(-30, 400));
            default -> String.format(Locale.ROOT, "%.1f", random.nextDouble(-3, 400));
          };
      return written(text);
    }

    /** With the decimal mark of the log, in quotes where it would part cells. */
    private String written(String number) {
      String text = number.replace('.', shape.decimal);
      return shape == Shape.QUOTED_DECIMAL_COMMA ? '"' + text + '"' : text;
    }

    private String stamp() {
      return String.format(
          Locale.ROOT,
          "2026-03-1%d %02d:%02d:%02d",
          random.nextInt(8) == 0 ? 5 : 4,
          random.nextInt(24),
          random.nextInt(60),
          random.nextInt(60));
    }

    private String odd(ColumnKind kind) {
      return switch (kind) {
        case NUMBER ->
            pick(
                "",
                " ",
                "NaN",
                "OL",
                "----",
                "-",
                "+",
                ".",
                "1e3",
                "-2.5E-02",
                "1.5e+400",
                "1e-30",
                "0e0",
                "-0",
                "-0.0",
                "+7",
                " 12",
                "12 ",
                "\"13\"",
                "\" 14\"",
                "\"15\" ",
                "\"\"",
                "23.5 C",
                "24.25C",
                "-3,5 \u00b0F",
                "'8'",
                "=\"9.5\"",
                "1.2.3",
                "1,234",
                "1 234.5",
                "5.",
                ".5",
                "-.5",
                "\u22123.5",
                "12a",
                "\u00b5",
                "99999999",
                "9999999",
                "12345.67",
                "0000001",
                "123456789012345",
                "1234567890123456789",
                "PM",
                "\"",
                "\"1",
                "0x1f");
        case TIME ->
            pick(
                "",
                "2026-03-14",
                "09:00:01",
                "2026-03-14 09:61:01",
                "2026-03-14 09:00:61",
                "2026-03-14T09:00:01",
                "2026-03-14 09:00:01.250",
                "2026-03-14 09:00:01 PM",
                " " + stamp(),
                stamp() + " ",
                "\"" + stamp() + "\"",
                "NaN",
                "later",
                "1969-12-31 23:59:59");
        case WORDS -> pick("", " heat", "\"heat\"", "\"a;b,c\"", "PM", "am", "12", "it\"s", "''");
        case SKIPPED -> pick("", " ", "x");
      };
    }

    private String pick(String... choices) {
      return choices[random.nextInt(choices.length)];
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {",", ";", "\t"})
  void plainNumbersAreRoundedAsThePlatformRoundsThem(String delimiter) {
    SplittableRandom random = new SplittableRandom(11);
    StringBuilder log = new StringBuilder();
    List<Double> expected = new ArrayList<>();
    for (int r = 0; r < 3000; r++) {
      for (int c = 0; c < 4; c++) {
        String cell = decimal(random);
        expected.add(Double.parseDouble(cell));
        log.append(c == 0 ? "" : delimiter).append(cell);
      }
      log.append(r % 7 == 0 ? "\r\n" : "\n");
    }
    TableLayout layout =
        new TableLayout(
            new LineSplitter(delimiter.charAt(0)),
            '.',
            Arrays.asList(new HeaderText[4]),
            java.util.Collections.nCopies(4, ColumnKind.NUMBER),
            0,
            -1,
            1);
    byte[] bytes = log.toString().getBytes(StandardCharsets.US_ASCII);
    RawTable table = read(bytes, layout, RowReader.Care.WHERE_NEEDED, null);
    assertThat(table.rows()).isEqualTo(3000);
    for (int k = 0; k < expected.size(); k++) {
      assertThat(table.values()[k % 4][k / 4]).isEqualTo(expected.get(k));
    }
  }

  /** One to seventeen digits, the mark anywhere, a sign now and then, sometimes an exponent. */
  private static String decimal(SplittableRandom random) {
    StringBuilder text = new StringBuilder(random.nextInt(4) == 0 ? "-" : "");
    int digits = 1 + random.nextInt(17);
    int mark = random.nextInt(digits + 1);
    for (int d = 0; d < digits; d++) {
      text.append(d == mark ? "." : "").append((char) ('0' + random.nextInt(10)));
    }
    return random.nextInt(9) == 0 ? text + "E" + (random.nextInt(60) - 30) : text.toString();
  }

  /**
   * Pieces are cut at any byte, within rows and on their ends, and lines may be longer than one.
   */
  @Test
  void rowsAcrossPiecesAreReadOnceAndInOrder() {
    SplittableRandom random = new SplittableRandom(5);
    StringBuilder log = new StringBuilder();
    int rows = 0;
    List<String> words = new ArrayList<>();
    while (log.length() < 2_500_000) {
      log.append(rows).append(',').append("w").append(rows / 9000).append(',').append(rows % 1000);
      log.append("\n");
      rows++;
      if (rows % 9000 == 1) {
        words.add("w" + rows / 9000);
      }
      if (random.nextInt(20_000) == 0) {
        log.append("#".repeat(random.nextInt(700_000))).append('\n');
      }
    }
    TableLayout layout =
        layout(Shape.COMMA, List.of(ColumnKind.NUMBER, ColumnKind.WORDS, ColumnKind.NUMBER));
    byte[] bytes = log.toString().getBytes(StandardCharsets.US_ASCII);
    RawTable table = read(bytes, layout, RowReader.Care.WHERE_NEEDED, null);
    assertThat(table.rows()).isEqualTo(rows);
    assertThat(table.labels().get(1)).isEqualTo(words);
    for (int r = 0; r < rows; r++) {
      if (table.values()[0][r] != r
          || table.values()[1][r] != r / 9000
          || table.values()[2][r] != r % 1000) {
        throw new AssertionError("row " + r);
      }
    }
  }
}
