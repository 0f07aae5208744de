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

  static MarkedDraft of(String marked) {
    StringBuilder text = new StringBuilder();
    List<Mark> marks = new ArrayList<>();
    int line = 1;
    for (String row : marked.split("\n", -1)) {
      StringBuilder plain = new StringBuilder();
      Matcher matcher = MARK.matcher(row);
      int from = 0;
      while (matcher.find()) {
        plain.append(row, from, matcher.start());
        int column = plain.length() + 1;
        plain.append(matcher.group(2));
        Truth truth = Truth.of(matcher.group(1).charAt(0));
        marks.add(new Mark(truth, matcher.group(2), line, column, plain.length() + 1));
        from = matcher.end();
      }
      plain.append(row.substring(from));
      text.append(plain).append('\n');
      line++;
    }
    return new MarkedDraft(text.toString(), List.copyOf(marks));
  }
}
