package ovenproof.chart;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayDeque;
import java.util.Deque;
import org.jspecify.annotations.Nullable;

/** Writes elements with escaped text and attributes. Not for use by several threads. */
final class Svg {
  private final StringBuilder out = new StringBuilder(256);
  private final Deque<String> open = new ArrayDeque<>();

  /** Opens an element; attributes are pairs of name and value. A null value leaves it out. */
  Svg open(String tag, @Nullable Object... attributes) {
    start(tag, attributes);
    out.append('>');
    open.push(tag);
    return this;
  }

  /** An element without content. */
  Svg empty(String tag, @Nullable Object... attributes) {
    start(tag, attributes);
    out.append("/>");
    return this;
  }

  Svg text(String words, @Nullable Object... attributes) {
    start("text", attributes);
    out.append('>').append(escape(words)).append("</text>");
    return this;
  }

  /** A style sheet of the picture's own; {@code css} is ours and holds nothing to escape. */
  Svg style(String css) {
    out.append("<style>").append(css).append("</style>");
    return this;
  }

  Svg close() {
    out.append("</").append(open.pop()).append('>');
    return this;
  }

  private void start(String tag, @Nullable Object... attributes) {
    out.append('<').append(tag);
    for (int i = 0; i < attributes.length; i += 2) {
      Object value = attributes[i + 1];
      if (value != null) {
        out.append(' ').append(attributes[i]).append("=\"").append(written(value)).append('"');
      }
    }
  }

  private static String written(Object value) {
    return value instanceof Double number ? number(number) : escape(value.toString());
  }

  /** Up to two decimals, a point, no exponent. */
  static String number(double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  static String percent(double value) {
    return number(value) + "%";
  }

  static String escape(String words) {
    StringBuilder safe = new StringBuilder(words.length() + 16);
    for (int i = 0; i < words.length(); i++) {
      char c = words.charAt(i);
      switch (c) {
        case '&' -> safe.append("&amp;");
        case '<' -> safe.append("&lt;");
        case '>' -> safe.append("&gt;");
        case '"' -> safe.append("&quot;");
        case '\'' -> safe.append("&#39;");
        default -> {
          // Control characters are not allowed in XML at all.
          if (c >= ' ' || c == '\n' || c == '\t') {
            safe.append(c);
          }
        }
      }
    }
    return safe.toString();
  }

  @Override
  public String toString() {
    if (!open.isEmpty()) {
      throw new IllegalStateException("still open: " + open);
    }
    return out.toString();
  }
}
