package ovenproof.publish.fragment;

import java.util.List;
import java.util.stream.Collectors;

/** Text that stays text in Markdown and in tables of tabs. */
final class Markup {
  private Markup() {}

  /** Markdown's own signs, and HTML, mean nothing inside a name. */
  static String escaped(String text) {
    return text.replaceAll("\\s+", " ")
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replaceAll("([\\\\`*_{}\\[\\]#|>!~])", "\\\\$1");
  }

  static String heading(String text) {
    return "## " + escaped(text) + "\n\n";
  }

  static String item(String text) {
    return "- " + escaped(text) + "\n";
  }

  /** Cells beside each other; what a spreadsheet would take for a formula is made text. */
  static String tabs(List<String> cells) {
    return cells.stream()
        .map(c -> c.replaceAll("[\\t\\r\\n]+", " "))
        .map(c -> c.matches("^[=+\\-@].*") ? "'" + c : c)
        .collect(Collectors.joining("\t"));
  }
}
