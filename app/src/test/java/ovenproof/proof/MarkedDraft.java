package ovenproof.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A draft whose claims are marked with what the evidence says of them: {@code {=true}}, {@code
 * {!planted error}}, {@code {~not decided by the runs}}, {@code {?no evidence}}.
 */
record MarkedDraft(String text, List<Mark> marks) {
  private static final Pattern MARK = Pattern.compile("\\{([=!~?])([^{}]+)\\}");

  /** What is known of a claim. */
  enum Truth {
    TRUE('='),
    ERROR('!'),
    OPEN('~'),
    NO_EVIDENCE('?');

    private final char sign;

    Truth(char sign) {
      this.sign = sign;
    }

    static Truth of(char sign) {
      for (Truth truth : values()) {
        if (truth.sign == sign) {
          return truth;
        }
      }
      throw new IllegalArgumentException("no truth has the sign " + sign);
    }
  }

  /** A marked stretch, by line and columns from 1, end exclusive. */
  record Mark(Truth truth, String words, int line, int column, int endColumn) {}

  /** A mark may run over a line's end; it is found by its first line. */
  static MarkedDraft of(String marked) {
    StringBuilder text = new StringBuilder();
    List<Mark> marks = new ArrayList<>();
    Matcher matcher = MARK.matcher(marked);
    int from = 0;
    while (matcher.find()) {
      text.append(marked, from, matcher.start());
      int line = 1 + (int) text.chars().filter(c -> c == '\n').count();
      int column = text.length() - text.lastIndexOf("\n");
      String words = matcher.group(2);
      int firstLine = words.indexOf('\n') < 0 ? words.length() : words.indexOf('\n');
      Truth truth = Truth.of(matcher.group(1).charAt(0));
      marks.add(new Mark(truth, words, line, column, column + firstLine));
      text.append(words);
      from = matcher.end();
    }
    text.append(marked.substring(from));
    return new MarkedDraft(text.toString(), List.copyOf(marks));
  }
}
