package ovenproof.evidence.ratings;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import ovenproof.core.panel.table.Sheet;

/** Text with comma, semicolon, tab, bar or just spaces between its cells. */
final class TextTable {

  private static final char[] SEPARATORS = {'\t', ';', ',', '|'};
  private static final int LINES_LOOKED_AT = 200;

  private TextTable() {}

  static Sheet read(String name, byte[] bytes) {
    String text = decode(bytes);
    List<Sheet.Row> rows = rows(name, text);
    return new Sheet("", alignHeader(rows));
  }

  private static List<Sheet.Row> rows(String name, String text) {
    char separator = separator(text);
    if (separator == ' ') {
      return spaced(text);
    }
    try {
      List<Sheet.Row> rows = new ArrayList<>();
      for (CsvRecord record :
          CsvReader.builder()
              .fieldSeparator(separator)
              .skipEmptyLines(false)
              .allowExtraFields(true)
              .allowMissingFields(true)
              .allowExtraCharsAfterClosingQuote(true)
              .ofCsvRecord(text)) {
        rows.add(new Sheet.Row((int) record.getStartingLineNumber(), record.getFields()));
      }
      return rows;
    } catch (CsvParseException e) {
      throw RatingFile.problem(
          Path.of(name), "text that is no table (" + e.getMessage() + ")", "a CSV table", "");
    }
  }

  /** UTF-8 or UTF-16 by its mark; what is not valid UTF-8 is taken as Windows-1252. */
  private static String decode(byte[] bytes) {
    if (bytes.length > 1 && (bytes[0] & 0xFF) == 0xFF && (bytes[1] & 0xFF) == 0xFE) {
      return new String(bytes, StandardCharsets.UTF_16);
    }
    if (bytes.length > 1 && (bytes[0] & 0xFF) == 0xFE && (bytes[1] & 0xFF) == 0xFF) {
      return new String(bytes, StandardCharsets.UTF_16);
    }
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return text.startsWith("\uFEFF") ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      return new String(bytes, Charset.forName("windows-1252"));
    }
  }

  /** The separator that most lines hold equally often; a space when there is none. */
  private static char separator(String text) {
    List<String> lines = text.lines().filter(l -> !l.isBlank()).limit(LINES_LOOKED_AT).toList();
    char best = ' ';
    double bestScore = 0;
    for (char candidate : SEPARATORS) {
      double score = score(lines, candidate);
      if (score > bestScore + 1e-9) {
        best = candidate;
        bestScore = score;
      }
    }
    return best;
  }

  /** Share of lines that have the most usual, positive count. */
  private static double score(List<String> lines, char separator) {
    int[] counts = lines.stream().mapToInt(l -> count(l, separator)).toArray();
    int[] sorted = counts.clone();
    Arrays.sort(sorted);
    int usual = sorted.length == 0 ? 0 : sorted[sorted.length / 2];
    if (usual == 0) {
      return 0;
    }
    double equal = Arrays.stream(counts).filter(c -> c == usual).count() / (double) counts.length;
    return equal >= 0.5 ? equal : 0;
  }

  private static int count(String line, char separator) {
    int count = 0;
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      quoted ^= c == '"';
      count += c == separator && !quoted ? 1 : 0;
    }
    return count;
  }

  private static List<Sheet.Row> spaced(String text) {
    List<Sheet.Row> rows = new ArrayList<>();
    int line = 0;
    for (String each : text.lines().collect(Collectors.toList())) {
      line++;
      rows.add(new Sheet.Row(line, each.isBlank() ? List.of() : words(each.strip())));
    }
    return rows;
  }

  /** Words between spaces; quoted words may hold spaces. */
  private static List<String> words(String line) {
    List<String> words = new ArrayList<>();
    StringBuilder word = new StringBuilder();
    boolean quoted = false;
    boolean begun = false;
    for (char c : line.toCharArray()) {
      if (c == '"') {
        quoted = !quoted;
        begun = true;
      } else if (Character.isWhitespace(c) && !quoted) {
        if (begun) {
          words.add(word.toString());
        }
        word.setLength(0);
        begun = false;
      } else {
        word.append(c);
        begun = true;
      }
    }
    if (begun) {
      words.add(word.toString());
    }
    return words;
  }

  private static boolean isFilled(Sheet.Row row) {
    return row.cells().stream().anyMatch(c -> !c.isBlank());
  }

  /** Tables written with row names have a header that is one cell short. */
  private static List<Sheet.Row> alignHeader(List<Sheet.Row> rows) {
    List<Sheet.Row> first = rows.stream().filter(TextTable::isFilled).limit(2).toList();
    if (first.size() < 2 || first.get(1).cells().size() != first.get(0).cells().size() + 1) {
      return rows;
    }
    List<Sheet.Row> filled = rows.stream().filter(TextTable::isFilled).toList();
    if (filled.size() < 3) {
      return rows;
    }
    int header = filled.get(0).cells().size();
    boolean shorter =
        header > 0
            && !filled.get(0).cells().get(0).isBlank()
            && filled.stream().skip(1).allMatch(r -> r.cells().size() == header + 1)
            && filled.stream().skip(1).noneMatch(r -> r.cells().get(header).isBlank());
    if (!shorter) {
      return rows;
    }
    List<Sheet.Row> aligned = new ArrayList<>();
    for (Sheet.Row row : rows) {
      if (row == filled.get(0)) {
        List<String> cells = new ArrayList<>(List.of(""));
        cells.addAll(row.cells());
        aligned.add(new Sheet.Row(row.line(), cells));
      } else {
        aligned.add(row);
      }
    }
    return aligned;
  }
}
