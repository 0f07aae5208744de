package ovenproof.files;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import ovenproof.input.Words;

/** The cells of one row of a table as text, in the words in which a campaign's tables are read. */
final class Cells {
  private final ZoneId zone;
  private final Map<String, String> cells = new LinkedHashMap<>();
  private final Map<String, String> behind = new LinkedHashMap<>();

  /**
   * @param zone of the campaign's clocks
   */
  Cells(ZoneId zone) {
    this.zone = zone;
  }

  /** Adds a cell; nothing where the value is null, which is: not said. */
  Cells with(String column, @Nullable Object value) {
    put(cells, column, value);
    return this;
  }

  /** Adds a cell that stands behind all others. */
  Cells behind(String column, @Nullable Object value) {
    put(behind, column, value);
    return this;
  }

  /** The row: cells by column name. */
  Map<String, String> row() {
    Map<String, String> row = new LinkedHashMap<>(cells);
    row.putAll(behind);
    return row;
  }

  private void put(Map<String, String> into, String column, @Nullable Object value) {
    if (value != null) {
      into.put(column, text(value));
    }
  }

  private String text(Object value) {
    if (value instanceof Instant time) {
      return time(time);
    }
    if (value instanceof Double number) {
      return number(number);
    }
    if (value instanceof Enum<?> word) {
      return Words.of(word);
    }
    return value.toString();
  }

  private static String number(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  /** Local time where the clock showed it once, else with its offset. */
  private String time(Instant at) {
    LocalDateTime local = LocalDateTime.ofInstant(at, zone);
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
    String seconds = local.getSecond() == 0 && local.getNano() == 0 ? ":00" : "";
    return local + seconds + (offsets.size() == 1 ? "" : zone.getRules().getOffset(at).toString());
  }

  /** {@code +6:30} for whole seconds, {@code +390.5 s} else; null stays null. */
  static @Nullable String elapsed(@Nullable Double seconds) {
    if (seconds == null) {
      return null;
    }
    String sign = seconds < 0 ? "-" : "+";
    double size = Math.abs(seconds);
    if (size != Math.rint(size) || size > 359_999) {
      return sign + number(size) + " s";
    }
    long whole = (long) size;
    String hours = whole >= 3600 ? whole / 3600 + ":" : "";
    String minutes = whole >= 3600 ? "%02d:%02d" : "%d:%02d";
    return sign + hours + String.format(Locale.ROOT, minutes, whole / 60 % 60, whole % 60);
  }
}
