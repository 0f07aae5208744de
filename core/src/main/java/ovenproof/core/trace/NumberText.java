package ovenproof.core.trace;

import java.nio.charset.StandardCharsets;

/** Decimal numbers in bytes, as loggers write them. */
final class NumberText {

  /** What {@link #parse} gives for text that is no number; a NaN of its own. */
  static final double NOT_A_NUMBER = Double.longBitsToDouble(0x7ff8_0000_0000_0abcL);

  private static final long NOT_A_NUMBER_BITS = Double.doubleToRawLongBits(NOT_A_NUMBER);

  /** Powers of ten that a double holds exactly. */
  static final double[] POWERS = new double[23];

  static {
    double power = 1;
    for (int i = 0; i < POWERS.length; i++) {
      POWERS[i] = power;
      power *= 10;
    }
  }

  private NumberText() {}

  static boolean isNumber(double parsed) {
    return Double.doubleToRawLongBits(parsed) != NOT_A_NUMBER_BITS;
  }

  /**
   * Reads sign, digits, decimal mark and exponent; {@link #NOT_A_NUMBER} when anything else is
   * left. Correctly rounded: up to 15 digits by one division of exact doubles, longer ones by the
   * platform.
   *
   * @param decimal byte of the decimal mark
   */
  static double parse(byte[] b, int from, int to, int decimal) {
    int i = from;
    boolean negative = false;
    if (i < to && (b[i] == '-' || b[i] == '+')) {
      negative = b[i++] == '-';
    }
    long mantissa = 0;
    int digits = 0;
    int fraction = 0;
    int c = 0;
    while (i < to && (c = b[i] - '0') >= 0 && c <= 9) {
      mantissa = mantissa * 10 + c;
      digits++;
      i++;
    }
    if (i < to && b[i] == decimal) {
      int start = ++i;
      while (i < to && (c = b[i] - '0') >= 0 && c <= 9) {
        mantissa = mantissa * 10 + c;
        i++;
      }
      fraction = i - start;
      digits += fraction;
    }
    if (digits == 0 || digits > 15) {
      return slow(b, from, to, decimal, digits);
    }
    if (i != to) {
      return scaled(b, from, i, to, decimal, negative ? -mantissa : mantissa, fraction);
    }
    double value = fraction == 0 ? mantissa : mantissa / POWERS[fraction];
    return negative ? -value : value;
  }

  /** 1.25E+02: one exact double times or divided by another, where the power of ten is exact. */
  private static double scaled(
      byte[] b, int from, int mark, int to, int decimal, long mantissa, int fraction) {
    boolean exponent = (b[mark] == 'e' || b[mark] == 'E') && mantissa != 0;
    int i = mark + 1;
    boolean negative = i < to && b[i] == '-';
    i += negative || (i < to && b[i] == '+') ? 1 : 0;
    int power = 0;
    int first = i;
    while (i < to && b[i] >= '0' && b[i] <= '9' && i - first < 3) {
      power = power * 10 + b[i++] - '0';
    }
    int net = (negative ? -power : power) - fraction;
    if (!exponent || i != to || i == first || Math.abs(net) >= POWERS.length) {
      return slow(b, from, to, decimal, 1);
    }
    return net < 0 ? mantissa / POWERS[-net] : mantissa * POWERS[net];
  }

  /** Exponents, many digits, a typographic minus; everything that the loop above gave up on. */
  private static double slow(byte[] b, int from, int to, int decimal, int digits) {
    if (digits == 0 && !(to - from > 3 && b[from] == (byte) 0xE2)) {
      return NOT_A_NUMBER;
    }
    String text =
        new String(b, from, to - from, StandardCharsets.UTF_8)
            .replace('\u2212', '-')
            .replace((char) decimal, '.');
    if (!isPlainNumber(text)) {
      return NOT_A_NUMBER;
    }
    return Double.parseDouble(text.replace('D', 'e').replace('d', 'e'));
  }

  /** Fortran writes 2.1D+01, always with its sign. */
  private static boolean isExponentMark(String text, int i) {
    char c = text.charAt(i);
    boolean signed = i + 1 < text.length() && "+-".indexOf(text.charAt(i + 1)) >= 0;
    return c == 'e' || c == 'E' || (c == 'd' || c == 'D') && signed;
  }

  /** Java's own parser also takes {@code 1d}, {@code 0x1p3} and {@code NaN}. */
  private static boolean isPlainNumber(String text) {
    boolean digit = false;
    boolean point = false;
    int i = text.startsWith("-") || text.startsWith("+") ? 1 : 0;
    for (; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c >= '0' && c <= '9') {
        digit = true;
      } else if (c == '.' && !point) {
        point = true;
      } else {
        return digit && isExponentMark(text, i) && isExponent(text, i + 1);
      }
    }
    return digit;
  }

  private static boolean isExponent(String text, int from) {
    int i = from;
    if (i < text.length() && (text.charAt(i) == '-' || text.charAt(i) == '+')) {
      i++;
    }
    if (i >= text.length() || text.length() - i > 3) {
      return false;
    }
    for (; i < text.length(); i++) {
      if (text.charAt(i) < '0' || text.charAt(i) > '9') {
        return false;
      }
    }
    return true;
  }
}
