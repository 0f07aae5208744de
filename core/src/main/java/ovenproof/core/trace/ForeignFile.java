package ovenproof.core.trace;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Files of another kind, known by their first bytes, and what to do instead. */
final class ForeignFile {

  private static final Map<String, String> KINDS = new LinkedHashMap<>();

  static {
    KINDS.put("%PDF", "a PDF document");
    KINDS.put("\u0089PNG", "a picture (PNG)");
    KINDS.put("\u00ff\u00d8\u00ff", "a picture (JPEG)");
    KINDS.put("GIF8", "a picture (GIF)");
    KINDS.put("\u001f\u008b", "compressed (gzip)");
    KINDS.put("7z\u00bc\u00af", "compressed (7z)");
    KINDS.put("Rar!", "compressed (RAR)");
    KINDS.put("BZh", "compressed (bzip2)");
    KINDS.put("PK\u0003\u0004", "a ZIP archive");
    KINDS.put("SQLite format 3", "a database (SQLite)");
    KINDS.put("{\\rtf", "a text document (RTF)");
  }

  private ForeignFile() {}

  /** Null when nothing speaks against a text. */
  static @Nullable String problem(byte[] bytes, int from, int to) {
    String head = new String(bytes, from, Math.min(to - from, 400), StandardCharsets.ISO_8859_1);
    for (Map.Entry<String, String> kind : KINDS.entrySet()) {
      if (head.startsWith(kind.getKey())) {
        boolean packed = kind.getValue().matches("compressed.*|a ZIP.*");
        String remedy =
            packed
                ? "Unpack it and open what is inside."
                : "Export the log as CSV, text or XLSX from the logger's program and open that.";
        return "The file is " + kind.getValue() + ", not a log. " + remedy;
      }
    }
    String start = head.stripLeading().toLowerCase(Locale.ROOT);
    boolean page =
        start.startsWith("<!doctype")
            || start.startsWith("<html")
            || start.startsWith("<?xml")
            || start.startsWith("<table");
    if (page) {
      return "The file is a web page or XML, not a log. Export the log as CSV, text or XLSX from"
          + " the logger's program and open that.";
    }
    return null;
  }
}
