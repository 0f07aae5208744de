package ovenproof.proof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A draft cut into sentences with their places: plain text, Markdown, or captions (WebVTT, SRT).
 *
 * <p>Markup is blanked, not removed, so that every offset stays a place in the file. Sentences that
 * run over several captions stay whole and carry the first caption's timecode.
 */
final class DraftText {
  private static final Pattern CUE =
      Pattern.compile("(\\d{1,2}:)?\\d{2}:\\d{2}[.,]\\d{3}\\s+-->.*");
  private static final Pattern HEADING = Pattern.compile("^(#{1,6})\\s+(.*?)\\s*#*$");

  /** Spoken words without a full stop are cut after so many characters, at a caption's end. */
  private static final int LONGEST_CAPTION_SENTENCE = 1000;

  /** A line longer than this is cut: no sentence that people write is. */
  private static final int LONGEST_SENTENCE = 1200;

  /**
   * A sentence.
   *
   * @param text with markup blanked
   * @param line of its first character, from 1
   * @param column of its first character, from 1
   * @param heading the heading above, with the headings above that, joined by " / "
   * @param paragraph number of the paragraph it stands in
   */
  record Sentence(
      String text,
      List<Integer> lines,
      List<Integer> columns,
      String heading,
      int paragraph,
      Map<Integer, String> timecodes,
      Role role) {

    /** Of the caption that an offset stands in, or null. */
    @Nullable String timecode(int offset) {
      return timecodes.get(line(offset));
    }

    /**
     * The words of a stretch as they stand in the text, without a unit that a table's head lent.
     */
    String written(int start, int end) {
      int last = end;
      while (last > start + 1 && last <= columns.size() && isLent(last - 1)) {
        last--;
      }
      return text.substring(start, last).strip();
    }

    private boolean isLent(int at) {
      return role == Role.CELL && columns.get(at).equals(columns.get(at - 1));
    }

    int line(int offset) {
      return lines.get(Math.min(offset, lines.size() - 1));
    }

    int column(int offset) {
      return columns.get(Math.min(offset, columns.size() - 1));
    }
  }

  /** What a piece of text is. */
  enum Role {
    HEADING,
    SENTENCE,
    /** A sentence of a list's item. */
    ITEM,
    /** A cell of a table; its heading names its row and column. */
    CELL
  }

  private final List<Sentence> sentences = new ArrayList<>();
  private final List<String> headings = new ArrayList<>(List.of("", "", "", "", "", ""));
  private final StringBuilder block = new StringBuilder();
  private final List<Integer> lines = new ArrayList<>();
  private final List<Integer> columns = new ArrayList<>();
  private int paragraph;
  private Role blockRole = Role.SENTENCE;
  private final Map<Integer, String> timecodes = new HashMap<>();

  private final RunOn runOn;

  private final Pattern names;

  private DraftText(Pattern names, Pattern foods) {
    this.names = names;
    this.runOn = new RunOn(names, foods);
  }

  /**
   * @param names any product's name, by which unpunctuated speech is cut
   * @param foods what the tests cook
   */
  static List<Sentence> sentences(String draft, Pattern names, Pattern foods) {
    DraftText text = new DraftText(names, foods);
    String[] rows = draft.split("\r\n|\r|\n", -1);
    boolean captions = rows.length > 0 && rows[0].strip().startsWith("WEBVTT");
    for (int i = 0; i < Math.min(rows.length, 8); i++) {
      captions |= CUE.matcher(rows[i].strip()).matches();
    }
    if (captions) {
      text.readCaptions(rows);
    } else {
      text.readMarkdown(rows);
    }
    return text.sentences;
  }

  private void readMarkdown(String[] rows) {
    boolean code = false;
    for (int i = 0; i < rows.length; i++) {
      String row = rows[i];
      if (row.strip().startsWith("```")) {
        code = !code;
        flush();
        continue;
      }
      Matcher heading = HEADING.matcher(row);
      if (!code && isTable(rows, i)) {
        flush();
        i = readTable(rows, i) - 1;
        continue;
      }
      if (code || row.isBlank()) {
        flush();
      } else if (heading.matches()) {
        flush();
        heading(heading, i + 1);
      } else if (i + 1 < rows.length
          && Wording.is(rows[i + 1], "(=+|-{3,})\\s*")
          && block.isEmpty()) {
        heading("#", row, i + 1, 1);
        rows[i + 1] = "";
      } else {
        boolean item =
            Wording.is(row, "\\s*(?:[-*+]|\\d+[.)])\\s+.*") || row.strip().startsWith("|");
        if (item) {
          flush();
          blockRole = Role.ITEM;
        }
        append(blank(row), i + 1);
      }
    }
    flush();
  }

  private static boolean isTable(String[] rows, int at) {
    return rows[at].strip().startsWith("|")
        && at + 1 < rows.length
        && Wording.is(rows[at + 1].strip(), "\\|?[\\s:|-]*-[\\s:|-]*")
        && rows[at + 1].contains("|");
  }

  /** A cell's place in its row. */
  private record Cell(String text, int column) {}

  private static List<Cell> cells(String row) {
    List<Cell> cells = new ArrayList<>();
    int from = row.indexOf('|') + 1;
    for (int bar = row.indexOf('|', from); bar >= 0; bar = row.indexOf('|', from)) {
      cells.add(new Cell(row.substring(from, bar), from + 1));
      from = bar + 1;
    }
    if (!row.substring(from).isBlank()) {
      cells.add(new Cell(row.substring(from), from + 1));
    }
    return cells;
  }

  /** Each cell is read as a sentence under "row, column"; gives the first line after the table. */
  private int readTable(String[] rows, int at) {
    List<Cell> head = cells(rows[at]);
    int line = at + 2;
    while (line < rows.length && rows[line].strip().startsWith("|")) {
      List<Cell> row = cells(rows[line]);
      for (int c = 1; c < row.size(); c++) {
        paragraph++;
        String column = c < head.size() ? blank(head.get(c).text()).strip() : "";
        String own = blank(row.get(0).text()).strip();
        cell(row.get(c), line + 1, own + neighbour(row, c, own + " " + column), column);
      }
      line++;
    }
    return line;
  }

  /** The product that a cell further left names, where neither head names one. */
  private String neighbour(List<Cell> row, int at, String heads) {
    for (int left = at - 1; left > 0 && !names.matcher(heads).find(); left--) {
      String text = blank(row.get(left).text()).strip();
      if (names.matcher(text).matches()) {
        return ", " + text;
      }
    }
    return "";
  }

  /** "Energy (kWh)", "Overshoot, K", "Spread [K]", "Time in min": a unit has no digit. */
  private static final Pattern UNIT_IN_HEAD =
      Pattern.compile(
          "[(\\[]\\s*([^()\\[\\]\\d]{1,12})[)\\]]\\s*$|,\\s*([^\\s\\d]{1,6})$|\\bin\\s+([^\\s\\d]{1,4})$");

  /** The unit that a table's head gives to the bare numbers below or beside it. */
  private static String unitOf(String head) {
    Matcher unit = UNIT_IN_HEAD.matcher(head.strip());
    if (!unit.find()) {
      return "";
    }
    return unit.group(1) != null
        ? unit.group(1)
        : unit.group(2) != null ? unit.group(2) : unit.group(3);
  }

  private void cell(Cell cell, int line, String rowHead, String columnHead) {
    String text = blank(cell.text());
    String unit = unitOf(columnHead).isEmpty() ? unitOf(rowHead) : unitOf(columnHead);
    boolean bare = Wording.is(text.strip(), "[−-]?[\\d.,:]+");
    if (bare && !unit.isEmpty()) {
      text = text.stripTrailing() + " " + unit;
    }
    List<Integer> cellLines = new ArrayList<>();
    List<Integer> cellColumns = new ArrayList<>();
    for (int i = 0; i < text.length(); i++) {
      cellLines.add(line);
      cellColumns.add(cell.column() + Math.min(i, Math.max(0, cell.text().length() - 1)));
    }
    if (!text.isBlank()) {
      String above = String.join(" / ", headings.stream().filter(h -> !h.isEmpty()).toList());
      sentences.add(
          new Sentence(
              text,
              cellLines,
              cellColumns,
              above + " / " + rowHead + ", " + columnHead,
              paragraph,
              timecodes,
              Role.CELL));
    }
  }

  private void readCaptions(String[] rows) {
    String timecode = null;
    for (int i = 0; i < rows.length; i++) {
      String row = rows[i].strip();
      if (CUE.matcher(row).matches()) {
        timecode = row.substring(0, row.indexOf("-->")).strip();
      } else if (row.isEmpty()
          || row.startsWith("WEBVTT")
          || row.startsWith("NOTE")
          || Wording.is(row, "\\d+")) {
        continue;
      } else {
        timecodes.put(i + 1, timecode == null ? "" : timecode);
        append(blank(rows[i]), i + 1);
        if (Wording.is(row, ".*[.!?…][\"'”’)]*") || block.length() > LONGEST_CAPTION_SENTENCE) {
          flushKeepingParagraph();
        }
      }
    }
    flush();
  }

  private void heading(Matcher heading, int line) {
    heading(heading.group(1), heading.group(2), line, heading.start(2) + 1);
  }

  private void heading(String marks, String words, int line, int column) {
    int level = marks.length();
    headings.set(level - 1, words);
    for (int deeper = level; deeper < headings.size(); deeper++) {
      headings.set(deeper, "");
    }
    String blanked = blank(words);
    for (int i = 0; i < blanked.length(); i++) {
      block.append(blanked.charAt(i));
      lines.add(line);
      columns.add(column + i);
    }
    flush(Role.HEADING);
  }

  private void append(String row, int line) {
    for (int i = 0; i < row.length(); i++) {
      block.append(row.charAt(i));
      lines.add(line);
      columns.add(i + 1);
    }
    block.append(' ');
    lines.add(line);
    columns.add(row.length() + 1);
  }

  /** Captions run on: the paragraph stays until nothing was said for a while. */
  private void flushKeepingParagraph() {
    int same = Math.max(1, paragraph);
    flush(Role.SENTENCE);
    paragraph = same;
  }

  private void flush() {
    flush(blockRole);
    blockRole = Role.SENTENCE;
  }

  private void flush(Role role) {
    if (!block.isEmpty()) {
      paragraph++;
      split(block.toString(), role);
    }
    block.setLength(0);
    lines.clear();
    columns.clear();
  }

  private static final Pattern SENTENCE_END = Pattern.compile("[.!?…]+[\"'”’)]*(?=\\s)");

  private void split(String text, Role role) {
    Matcher matcher = SENTENCE_END.matcher(text);
    int start = 0;
    while (matcher.find()) {
      if (!endsInAbbreviation(text.substring(Math.max(start, matcher.end() - 12), matcher.end()))) {
        addCut(text, start, matcher.end(), role);
        start = matcher.end();
      }
    }
    addCut(text, start, text.length(), role);
  }

  private void addCut(String text, int start, int end, Role role) {
    int from = start;
    for (int cut : runOn.cuts(text.substring(start, end))) {
      addShort(text, from, start + cut, role);
      from = start + cut;
    }
    addShort(text, from, end, role);
  }

  private void addShort(String text, int start, int end, Role role) {
    int from = start;
    while (from < end) {
      int to = Math.min(end, from + LONGEST_SENTENCE);
      int blank = text.lastIndexOf(' ', to);
      if (to < end && blank > from) {
        to = blank + 1;
      }
      add(text, from, to, role);
      from = to;
    }
  }

  private static boolean endsInAbbreviation(String text) {
    return Wording.is(
        text.strip(),
        "(?s).*\\b(?:min|sec|hr|approx|vs|e\\.g|i\\.e|oz|lb|lbs|deg|cu|sq|fig|ca)\\.");
  }

  private void add(String text, int start, int end, Role role) {
    String words = text.substring(start, end);
    if (!words.isBlank()) {
      String above = String.join(" / ", headings.stream().filter(h -> !h.isEmpty()).toList());
      sentences.add(
          new Sentence(
              words,
              List.copyOf(lines.subList(start, end)),
              List.copyOf(columns.subList(start, end)),
              above,
              paragraph,
              timecodes,
              role));
    }
  }

  /** Markup, tags and link targets become blanks of the same length. */
  private static String blank(String row) {
    String text = row.length() > 200_000 ? row.substring(0, 200_000) : row;
    text = blankAll(text, Pattern.compile("(?<=\\])\\([^()\\s]{0,2000}\\)"));
    text = blankAll(text, Pattern.compile("<[^<>]{0,500}>"));
    text = blankAll(text, Pattern.compile("https?://\\S{1,500}"));
    return text.replaceAll("(?<![Lab](?=\\*[\\s.,;:)]))\\*|[_`\\[\\]|#]", " ");
  }

  private static String blankAll(String text, Pattern pattern) {
    return pattern.matcher(text).replaceAll(m -> " ".repeat(m.group().length()));
  }
}
