package ovenproof.kitchen.folder;

import java.util.List;
import java.util.Map;

/** Writes maps, lists, texts and numbers as JSON; NaN becomes null. */
final class Json {

  private Json() {}

  static String of(Object value) {
    StringBuilder out = new StringBuilder();
    write(value, out, 0);
    return out.append('\n').toString();
  }

  private static void write(Object value, StringBuilder out, int depth) {
    if (value instanceof Map<?, ?> map) {
      object(map, out, depth);
    } else if (value instanceof List<?> list) {
      array(list, out, depth);
    } else if (value instanceof Double number) {
      out.append(Double.isFinite(number) ? rounded(number) : "null");
    } else if (value instanceof Number || value instanceof Boolean) {
      out.append(value);
    } else {
      text(String.valueOf(value), out);
    }
  }

  private static String rounded(double number) {
    return Figures.of(number, Math.abs(number) < 10 ? 5 : 3);
  }

  private static void object(Map<?, ?> map, StringBuilder out, int depth) {
    boolean wide = depth < 4;
    out.append('{');
    String between = "";
    for (Map.Entry<?, ?> entry : map.entrySet()) {
      out.append(between);
      indent(out, wide, depth + 1);
      text(String.valueOf(entry.getKey()), out);
      out.append(": ");
      write(entry.getValue(), out, depth + 1);
      between = ",";
    }
    indent(out, wide && !map.isEmpty(), depth);
    out.append('}');
  }

  private static void array(List<?> list, StringBuilder out, int depth) {
    out.append('[');
    for (int i = 0; i < list.size(); i++) {
      out.append(i == 0 ? "" : ", ");
      write(list.get(i), out, depth + 2);
    }
    out.append(']');
  }

  private static void indent(StringBuilder out, boolean wide, int depth) {
    if (wide) {
      out.append('\n').append("  ".repeat(depth));
    }
  }

  private static void text(String text, StringBuilder out) {
    out.append('"');
    for (char c : text.toCharArray()) {
      switch (c) {
        case '"' -> out.append("\\\"");
        case '\\' -> out.append("\\\\");
        case '\n' -> out.append("\\n");
        default -> out.append(c);
      }
    }
    out.append('"');
  }
}
