package ovenproof.core.trace;

import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Dressings of a plain table that programs put round every row: colours of a terminal, brackets of
 * a tuple, single quotes, a colon behind the epoch. Undressed, the rest is a table like any other.
 */
enum LineRewrite {
  /** {@code ESC[0;32mI (1312) oven: 21.0 ESC[0m}. */
  TERMINAL_COLOURS("\u001b\\[[0-9;?]*[A-Za-z]", "", Match.ANYWHERE),
  /** Marks and digits of East Asian width. */
  FULL_WIDTH("[\uff0c\uff1b\uff1a\uff0e\uff10-\uff19]", "", Match.WIDE),
  /** {@code (0.5, 21.0, 20.4)} and {@code [0.5, 21.0, 20.4],}. */
  TUPLES(
      "^\\s*[(\\[]\\s*([-+'\"\\d][^()\\[\\]{}]*[,;][^()\\[\\]{}]*?)\\s*[)\\]]\\s*[,;]?\\s*$",
      "$1",
      Match.WHOLE),
  /** {@code 1773480600: 2.1e+01 1.8e+03}. */
  EPOCH_COLON("^\\s*(\\d{9,19}(?:\\.\\d+)?):\\s+(?=[-+\\dnN])", "$1 ", Match.START),
  /** {@code '09:30:00','21.0'}. */
  SINGLE_QUOTES("'([^',;\\t]*)'(?=\\s*(?:[,;\\t]|$))", "$1", Match.CELLS),
  /** {@code "1" "2026-03-14 09:30:00" 21.0}. */
  QUOTED_BLANKS(" +(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)", "\t", Match.QUOTED),
  /** {@code 09:30 - 21.0 °C}, as people note it. */
  SPACED_DASH(
      "^(\\s*(?:[\\d.\\-/]+[T ]+)?\\d{1,2}[:.h]\\d\\d(?:[:.]\\d\\d)?)\\s*(?: [-–—:=] |-> ?|=> ?)\\s*(?=[-+]?\\d)",
      "$1\t",
      Match.START),
  /** {@code 09:30:00 / 21.0 / 20.4}. */
  SPACED_SLASHES("\\s+[/~]\\s+", "\t", Match.BETWEEN);

  private enum Match {
    ANYWHERE,
    WIDE,
    WHOLE,
    START,
    CELLS,
    QUOTED,
    BETWEEN
  }

  private static final int LARGEST_BYTES = 100 << 20;

  /** Quotes are counted from every blank on: too slow, and too deep, for longer lines. */
  private static final int LONGEST_QUOTED = 4000;

  /** Cells in quotes, parted by blanks and nothing else. */
  private static final Pattern QUOTES =
      Pattern.compile("(?=[^,;|\\t]*$)(\\S+ +)*\"[^\"]*\" +[\"\\-+\\dN].*");

  private final Pattern pattern;
  private final String replacement;
  private final Match match;

  LineRewrite(String pattern, String replacement, Match match) {
    this.pattern = Pattern.compile(pattern);
    this.replacement = replacement;
    this.match = match;
  }

  /** The undressed text, null when most of its lines wear nothing of this kind. */
  static byte @Nullable [] undress(LogText text, List<String> sample) {
    for (LineRewrite dressing : values()) {
      if (text.to() - text.from() <= LARGEST_BYTES && dressing.isWorn(sample)) {
        return dressing.strip(text);
      }
    }
    return null;
  }

  private boolean isWorn(List<String> sample) {
    int filled = 0;
    int worn = 0;
    for (String line : sample.subList(0, Math.min(300, sample.size()))) {
      if (!line.isBlank() && line.length() < 2000) {
        filled++;
        worn += isWorn(line) ? 1 : 0;
      }
    }
    return worn >= 2 && worn > 0.6 * filled;
  }

  private boolean isWorn(String line) {
    Matcher m = pattern.matcher(line);
    return switch (match) {
      case WHOLE -> m.matches();
      case CELLS -> line.stripLeading().startsWith("'") && m.find();
      case QUOTED -> QUOTES.matcher(line).matches();
      case BETWEEN -> m.find() && line.matches("[^/~]*\\d\\s+[/~]\\s+[-+\\d].*");
      default -> m.find();
    };
  }

  private String strip(String line) {
    if (match == Match.QUOTED && line.length() > LONGEST_QUOTED) {
      return line;
    }
    return match == Match.WIDE
        ? Normalizer.normalize(line, Normalizer.Form.NFKC)
        : pattern.matcher(line).replaceAll(replacement);
  }

  private byte[] strip(LogText text) {
    StringBuilder result = new StringBuilder();
    text.lines(text.from(), Integer.MAX_VALUE, Integer.MAX_VALUE)
        .forEach(l -> result.append(strip(l.text())).append('\n'));
    return result.toString().getBytes(StandardCharsets.UTF_8);
  }
}
