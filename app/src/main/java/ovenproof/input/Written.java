package ovenproof.input;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.QuantityFormatException;
import ovenproof.core.quantity.QuantityParser;
import ovenproof.core.quantity.ToleratedQuantity;
import ovenproof.core.quantity.Unit;

/**
 * One value as a person wrote it, with its place: a cell of a table or a scalar of a document.
 *
 * <p>Each reading method returns the value, or reports what is wrong and returns empty; the caller
 * goes on, so that one pass reports everything.
 *
 * @param text stripped; the spaces that word processors put between number and unit are plain
 *     spaces
 */
public record Written(String text, Place place, Problems problems) {

  private static final Pattern KEY = Pattern.compile("[\\p{L}\\p{N}_.-]{1,100}");
  private static final Pattern ODD_SPACES = Pattern.compile("[\\u00A0\\u2007\\u2009\\u202F]");
  private static final Pattern PLAIN_NUMBER = Pattern.compile("[+−-]?(\\d+([.,]\\d+)?|[.,]\\d+)");
  private static final Pattern LONG_AGO = Pattern.compile("\\d{1,2}[./-]\\d{1,2}[./-]\\d{2,4}.*");
  private static final int QUOTED_LENGTH = 80;

  public Written {
    text = ODD_SPACES.matcher(text).replaceAll(" ").strip();
  }

  public boolean isBlank() {
    return text.isEmpty();
  }

  /** What stands there, in quotes, cut after 80 characters. */
  public String quoted() {
    String shown =
        text.length() <= QUOTED_LENGTH ? text : text.substring(0, QUOTED_LENGTH - 1) + "…";
    return "\"" + shown.replaceAll("\\p{Cntrl}", "␤") + "\"";
  }

  public void error(String expected, String remedy) {
    problems.error(place, quoted(), expected, remedy);
  }

  public void warning(String expected, String remedy) {
    problems.warning(place, quoted(), expected, remedy);
  }

  /** A key: letters, digits, {@code - _ .}, at most 100 characters. */
  public Optional<String> key() {
    if (KEY.matcher(text).matches()) {
      return Optional.of(text);
    }
    error(
        "a key of letters, digits, - _ . (at most 100 characters)",
        "write " + text.replaceAll("[^\\p{L}\\p{N}_.]+", "-").replaceAll("^-+|-+$", ""));
    return Optional.empty();
  }

  /** One of the valid words; the nearest one is suggested. */
  public Optional<String> oneOf(Collection<String> valid, String what) {
    if (valid.contains(text)) {
      return Optional.of(text);
    }
    error(what + list(valid), NearestWord.remedy(text, valid));
    return Optional.empty();
  }

  private static String list(Collection<String> valid) {
    if (valid.isEmpty()) {
      return " (there are none)";
    }
    String first = String.join(", ", valid.stream().limit(12).toList());
    return " (" + first + (valid.size() > 12 ? ", …" : "") + ")";
  }

  /** Reports anything else than this. */
  public void mustBe(String only) {
    if (!text.equals(only)) {
      error(only, "");
    }
  }

  public <E extends Enum<E>> Optional<E> word(Class<E> choices) {
    Optional<E> choice = Words.named(choices, text);
    if (choice.isEmpty()) {
      List<String> valid = Words.all(choices);
      error("one of " + String.join(", ", valid), NearestWord.remedy(text, valid));
    }
    return choice;
  }

  /** {@code yes} or {@code no}. */
  public Optional<Boolean> yes() {
    return oneOf(List.of("yes", "no"), "yes or no").map("yes"::equals);
  }

  public Optional<Integer> wholeNumber(int lowest, int highest) {
    String expected = "a whole number from " + lowest + " to " + highest;
    if (!text.matches("[+-]?\\d{1,9}")) {
      error(expected, "");
      return Optional.empty();
    }
    int number = Integer.parseInt(text);
    if (number < lowest || number > highest) {
      error(expected, "");
      return Optional.empty();
    }
    return Optional.of(number);
  }

  /** A number without unit, decimal point or comma, in a closed range. */
  public Optional<Double> number(double lowest, double highest) {
    String expected = "a number" + range(lowest, highest);
    if (!PLAIN_NUMBER.matcher(text).matches()) {
      error(expected, "");
      return Optional.empty();
    }
    double number = Double.parseDouble(text.replace(',', '.').replace('−', '-'));
    if (!(number >= lowest && number <= highest)) {
      error(expected, "");
      return Optional.empty();
    }
    return Optional.of(number);
  }

  private static String range(double lowest, double highest) {
    boolean below = Double.isFinite(lowest) && lowest > -Double.MAX_VALUE;
    boolean above = Double.isFinite(highest) && highest < Double.MAX_VALUE;
    if (below && above) {
      return " from " + plain(lowest) + " to " + plain(highest);
    }
    return below ? " of at least " + plain(lowest) : above ? " up to " + plain(highest) : "";
  }

  private static String plain(double number) {
    return java.math.BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }

  /**
   * A quantity of the expected dimension. A share takes its %, because 12 without it would be 1200
   * %.
   */
  public Optional<Quantity> quantity(Dimension expected) {
    Optional<Quantity> read = attempt(() -> QuantityParser.parse(text, expected));
    if (read.isPresent() && read.get().unit() == Unit.ONE && Math.abs(read.get().value()) > 1) {
      error("a share with its unit", "write " + text + " %, or a share between 0 and 1");
      return Optional.empty();
    }
    return read;
  }

  public Optional<ToleratedQuantity> tolerated(Dimension expected) {
    return attempt(() -> QuantityParser.parseTolerated(text, expected));
  }

  /** A quantity in whichever unit is written; the unit must be written. */
  public Optional<Quantity> anyQuantity() {
    return attempt(() -> QuantityParser.parseAny(text));
  }

  public Optional<Unit> unit() {
    Optional<Unit> unit = Unit.named(text);
    if (unit.isEmpty()) {
      error("a unit such as °C, s, g, %, W", NearestWord.remedy(text, Unit.words()));
    }
    return unit;
  }

  private <T> Optional<T> attempt(Supplier<T> read) {
    try {
      return Optional.of(read.get());
    } catch (QuantityFormatException wrong) {
      error(wrong.expected(), wrong.remedy());
      return Optional.empty();
    } catch (IllegalArgumentException outOfRange) {
      error("a quantity of ordinary size", "");
      return Optional.empty();
    }
  }

  /** {@code 2026-03-04}. */
  public Optional<LocalDate> date() {
    try {
      return Optional.of(LocalDate.parse(text));
    } catch (DateTimeException wrong) {
      error("a date such as 2026-03-04", LONG_AGO.matcher(text).matches() ? dateRemedy() : "");
      return Optional.empty();
    }
  }

  private static String dateRemedy() {
    return "write year-month-day: day and month cannot be told apart";
  }

  /**
   * A moment: {@code 2026-03-04T10:12:30} in the zone, or with an offset. A time that the clock
   * skipped, or showed twice, is refused rather than guessed.
   */
  public Optional<Instant> time(ZoneId zone) {
    String iso = text.replaceFirst("^(\\d{4}-\\d{2}-\\d{2}) +(?=\\d)", "$1T");
    try {
      if (iso.matches(".*T.*([Zz]|[+-]\\d{2}(:?\\d{2})?)")) {
        return Optional.of(OffsetDateTime.parse(iso).toInstant());
      }
      return inZone(LocalDateTime.parse(iso), zone);
    } catch (DateTimeException wrong) {
      error(
          "a time such as 2026-03-04T10:12:30",
          LONG_AGO.matcher(text).matches() ? dateRemedy() : "");
      return Optional.empty();
    }
  }

  private Optional<Instant> inZone(LocalDateTime local, ZoneId zone) {
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
    if (offsets.size() == 1) {
      return Optional.of(local.toInstant(offsets.get(0)));
    }
    error(
        "a time that the clock in " + zone + " shows once",
        (offsets.isEmpty() ? "it was skipped" : "it came twice")
            + " when the clock changed: add the offset, for example "
            + local
            + zone.getRules().getOffset(local));
    return Optional.empty();
  }
}
