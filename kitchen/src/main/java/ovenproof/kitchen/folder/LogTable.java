package ovenproof.kitchen.folder;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A logger's record, to be written in one of several layouts.
 *
 * @param start clock of the logger at the first row
 */
record LogTable(LocalDateTime start, double stepSeconds, List<Column> columns) {

  LogTable {
    columns = List.copyOf(columns);
  }

  /**
   * One channel.
   *
   * @param values NaN where the logger wrote nothing
   */
  record Column(String name, String unit, int decimals, double[] values) {}

  /** Layouts of loggers that differ in all that loggers differ in. */
  enum Layout {
    /** {@code Time;A1 °C;…}, decimal comma. */
    SEMICOLON_COMMA,
    /** Metadata lines, header, row of units, date and time apart. */
    PREAMBLE_UNITS_ROW,
    /** Milliseconds since 1970, tab. */
    EPOCH_MILLISECONDS,
    /** Seconds since the start. */
    ELAPSED_SECONDS,
    /** {@code h:mm:ss} since the start. */
    ELAPSED_CLOCK
  }

  String text(Layout layout, ZoneId zone, String title) {
    StringBuilder out = new StringBuilder(columns.size() * rows() * 7 + 400);
    header(layout, title, out);
    for (int i = 0; i < rows(); i++) {
      out.append(stamp(layout, i, zone));
      for (Column column : columns) {
        out.append(delimiter(layout)).append(cell(column, i, layout));
      }
      out.append('\n');
    }
    return out.toString();
  }

  private int rows() {
    return columns.get(0).values().length;
  }

  private static char delimiter(Layout layout) {
    return switch (layout) {
      case SEMICOLON_COMMA -> ';';
      case EPOCH_MILLISECONDS -> '\t';
      case PREAMBLE_UNITS_ROW, ELAPSED_SECONDS, ELAPSED_CLOCK -> ',';
    };
  }

  private void header(Layout layout, String title, StringBuilder out) {
    char d = delimiter(layout);
    List<String> names = new ArrayList<>();
    List<String> units = new ArrayList<>();
    for (Column column : columns) {
      boolean unitsApart = layout == Layout.PREAMBLE_UNITS_ROW;
      names.add(unitsApart ? column.name() : column.name() + " (" + column.unit() + ")");
      units.add(column.unit());
    }
    String head = String.join(String.valueOf(d), names);
    switch (layout) {
      case SEMICOLON_COMMA -> out.append("Time").append(d).append(head).append('\n');
      case EPOCH_MILLISECONDS -> out.append("timestamp").append(d).append(head).append('\n');
      case ELAPSED_SECONDS -> out.append("elapsed s").append(d).append(head).append('\n');
      case ELAPSED_CLOCK -> out.append("elapsed").append(d).append(head).append('\n');
      case PREAMBLE_UNITS_ROW -> {
        out.append("Recorder: kitchen logger two (invented)\n");
        out.append("Session: ").append(title).append('\n');
        out.append("Interval: ").append(Figures.of(stepSeconds, 0)).append(" s\n\n");
        out.append("Date,Time,").append(head).append('\n');
        out.append("yyyy-mm-dd,hh:mm:ss,").append(String.join(",", units)).append('\n');
      }
    }
  }

  private String stamp(Layout layout, int row, ZoneId zone) {
    double seconds = row * stepSeconds;
    LocalDateTime now = start.plusNanos(Math.round(seconds * 1e9));
    return switch (layout) {
      case SEMICOLON_COMMA -> now.format(DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss"));
      case PREAMBLE_UNITS_ROW -> now.format(DateTimeFormatter.ofPattern("yyyy-MM-dd,HH:mm:ss"));
      case EPOCH_MILLISECONDS -> String.valueOf(now.atZone(zone).toInstant().toEpochMilli());
      case ELAPSED_SECONDS -> Figures.of(seconds, 0);
      case ELAPSED_CLOCK -> {
        long whole = Math.round(seconds);
        yield String.format(Locale.ROOT, "%d:%02d:%02d", whole / 3600, whole / 60 % 60, whole % 60);
      }
    };
  }

  private static String cell(Column column, int row, Layout layout) {
    double value = column.values()[row];
    if (Double.isNaN(value)) {
      return "";
    }
    String text = Figures.of(value, column.decimals());
    return layout == Layout.SEMICOLON_COMMA ? text.replace('.', ',') : text;
  }

  /** Name of a channel as it stands in the file. */
  static String channel(Layout layout, Column column) {
    return layout == Layout.PREAMBLE_UNITS_ROW
        ? column.name()
        : column.name() + " (" + column.unit() + ")";
  }
}
