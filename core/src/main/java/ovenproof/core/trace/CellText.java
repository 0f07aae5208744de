package ovenproof.core.trace;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Reads single cells; not for use by two threads. */
final class CellText {

  private static final Set<String> MISSING =
      Set.of(
          "nan",
          "na",
          "n/a",
          "n.a.",
          "null",
          "none",
          "nil",
          "ol",
          "o.l",
          "o.l.",
          "over",
          "overload",
          "ovl",
          "ovld",
          "ovf",
          "overflow",
          "overrange",
          "over range",
          "under",
          "underrange",
          "open",
          "opn",
          "err",
          "err.",
          "error",
          "fault",
          "fail",
          "failed",
          "inf",
          "+inf",
          "-inf",
          "infinity",
          "-infinity",
          "#n/a",
          "#na",
          "#value!",
          "#div/0!",
          "#num!",
          "#ref!",
          "lo",
          "hi",
          "burnout",
          "b.out",
          "bout",
          "b-out",
          "disconnected",
          "no probe",
          "noprobe",
          "not connected",
          "nc",
          "n.c.",
          "invalid",
          "1.#qnan",
          "-1.#ind",
          "1.#inf",
          "1.#inf00",
          "1.#qnan0",
          "-1.#ind00",
          "missing",
          "unavailable",
          "sensor error",
          "no sensor",
          "tc open",
          "open tc",
          "oor",
          "undef",
          "unplugged",
          "+ol",
          "-ol",
          "+over",
          "-over",
          "no data",
          "nodata",
          "void",
          "blank",
          "bad",
          "undefined",
          "+nan",
          "-nan",
          "+++++",
          "open circuit",
          "short",
          "<null>",
          "(null)",
          "no signal",
          "offline");

  private final TimeText time = new TimeText();
  private final int decimal;

  CellText(char decimal) {
    this.decimal = decimal;
  }

  TimeText time() {
    return time;
  }

  static boolean isMissingWord(String text) {
    String folded = text.strip().toLowerCase(Locale.ROOT);
    return MISSING.contains(folded)
        || DASHES.matcher(folded).matches()
        || folded.length() > 1 && BEYOND.matcher(folded).matches();
  }

  CellType type(String cell) {
    String text = unquote(cell);
    if (text.isEmpty()) {
      return CellType.EMPTY;
    }
    if (NumberText.isNumber(number(text))) {
      return CellType.NUMBER;
    }
    if (TimeText.isTime(time.parse(text))) {
      return CellType.TIME;
    }
    if (isMissingWord(text)) {
      return CellType.MISSING;
    }
    return suffix(text) != null ? CellType.SUFFIXED : CellType.WORD;
  }

  /** The number of a cell, with or without unit; NOT_A_NUMBER otherwise. */
  double number(String cell) {
    String text = unquote(cell);
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    double plain = NumberText.parse(bytes, 0, bytes.length, decimal);
    if (NumberText.isNumber(plain) || text.isEmpty()) {
      return plain;
    }
    if (text.length() > 2 && "+-".indexOf(text.charAt(0)) >= 0 && text.charAt(1) == ' ') {
      return number(text.charAt(0) + text.substring(1).strip());
    }
    if (grouped(text)) {
      return number(
          text.replaceAll(decimal == ',' ? "[. ' \u00a0\u202f]" : "[, ' \u00a0\u202f]", ""));
    }
    UnitText unit = suffix(text);
    if (unit == null) {
      return NumberText.NOT_A_NUMBER;
    }
    byte[] head = text.substring(0, suffixStart(text)).strip().getBytes(StandardCharsets.UTF_8);
    return NumberText.parse(head, 0, head.length, decimal);
  }

  private static final java.util.regex.Pattern DASHES =
      java.util.regex.Pattern.compile("[-*#?._=+~]+");

  /** ">400.0" says that the range ended there. */
  private static final java.util.regex.Pattern BEYOND =
      java.util.regex.Pattern.compile("[<>\u2264\u2265] ?[-+]?\\d+([.,]\\d+)?( ?°?[cf])?");

  private static final java.util.regex.Pattern GROUPED_COMMA =
      java.util.regex.Pattern.compile("[-+]?\\d{1,3}([. '\u00a0\u202f]\\d{3})+(,\\d+)?");
  private static final java.util.regex.Pattern GROUPED_POINT =
      java.util.regex.Pattern.compile("[-+]?\\d{1,3}([, '\u00a0\u202f]\\d{3})+(\\.\\d+)?");

  private boolean grouped(String text) {
    char last = text.charAt(text.length() - 1);
    if (text.length() < 5 || text.length() > 40 || last < '0' || last > '9') {
      return false;
    }
    return (decimal == ',' ? GROUPED_COMMA : GROUPED_POINT).matcher(text).matches();
  }

  /** The unit behind a number, null when the cell is no number with a unit. */
  @Nullable UnitText suffix(String cell) {
    String text = unquote(cell);
    int start = suffixStart(text);
    if (start <= 0 || start >= text.length() || text.length() - start > 12) {
      return null;
    }
    byte[] head = text.substring(0, start).strip().getBytes(StandardCharsets.UTF_8);
    if (!NumberText.isNumber(NumberText.parse(head, 0, head.length, decimal))) {
      return null;
    }
    return UnitText.wordOrLetter(text.substring(start));
  }

  private static int suffixStart(String text) {
    int i = text.length();
    while (i > 0 && !(text.charAt(i - 1) >= '0' && text.charAt(i - 1) <= '9')) {
      i--;
    }
    return i;
  }

  static String unquote(String cell) {
    String text = cell.strip();
    if (text.length() >= 2
        && text.charAt(0) == text.charAt(text.length() - 1)
        && (text.charAt(0) == '"' || text.charAt(0) == '\'')) {
      text = text.substring(1, text.length() - 1).replace("\"\"", "\"").strip();
    }
    // A spreadsheet's way of keeping text: ="23.5"
    if (text.startsWith("=\"") && text.endsWith("\"") && text.length() >= 3) {
      text = text.substring(2, text.length() - 1).strip();
    }
    return text;
  }
}
