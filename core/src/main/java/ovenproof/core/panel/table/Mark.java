package ovenproof.core.panel.table;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A cell as a number: decimal point or comma, "7/10", "7½", "65 mm", stars, the usual words of
 * verbal scales. What is a guess in the taster's own hand ("6-7", "~6") is no number.
 */
final class Mark {

  private static final Set<String> MISSING =
      Set.of(
          "", "na", "n/a", "nan", "null", "-", "--", "–", "—", ".", "..", "?", "missing", "#n/a",
          "k.a.", "n.a.");

  /** Only where marks stand: a product may be called X. */
  private static final Set<String> NO_MARK =
      Set.of("x", "none", "absent", "*", "not rated", "did not taste", "no answer");

  private static final Pattern FRACTION =
      Pattern.compile("(-?\\d+(?:[.,]\\d+)?½?)\\s*(?:/|of|out of|von|sur)\\s*\\d+");

  private static final Pattern WITH_UNIT =
      Pattern.compile(
          "(-?\\d+(?:[.,]\\d+)?½?)\\s*"
              + "(?:%|mm|cm|pts?\\.?|points?|punkte?|puntos|punti|stars?|sterne?)?");

  /** "7*" and "7 (burnt)": a number and a remark about it. */
  private static final Pattern REMARKED =
      Pattern.compile("(-?\\d+(?:[.,]\\d+)?)\\s*(?:[*†‡§]+|\\([^)]*\\)|\\[[^\\]]*\\])");

  /** "4 - Good": a step and its label. */
  private static final Pattern LABELLED =
      Pattern.compile("(-?\\d+)\\s*(?:[-–:=.]|\\))\\s*\\p{L}{2,}[\\p{L}\\s'/]*");

  /** 7/10 that a spreadsheet took for the seventh of October. */
  private static final Pattern DATED = Pattern.compile("\\d{1,2}[-.](\\p{L}{3})\\.?");

  private static final Set<String> MONTHS =
      Set.of(
          "jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec", "mai",
          "okt", "dez");

  private static final Pattern STARS = Pattern.compile("[★⭐]{1,10}[☆✩]{0,10}|[☆✩]{2,10}");

  /** "too dark" and its kind: which way the sample misses what is just about right. */
  private static final Pattern TOO =
      Pattern.compile(
          "(much|far|way|a lot|viel|slightly|a little|a bit|somewhat|etwas)?\\s*(?:too|zu) (\\p{L}+)");

  private static final Set<String> STRONGLY = Set.of("much", "far", "way", "a lot", "viel");

  private static final Set<String> TOO_LITTLE =
      Set.of(
          "little", "weak", "pale", "light", "soft", "bland", "low", "small", "short", "thin",
          "few", "raw", "dry", "cold", "mild", "flat", "wenig", "hell", "weich", "schwach",
          "trocken", "fad");

  private static final Set<String> TOO_MUCH =
      Set.of(
          "much", "strong", "dark", "hard", "salty", "sweet", "bitter", "sour", "high", "big",
          "long", "thick", "many", "burnt", "wet", "moist", "greasy", "hot", "crisp", "crunchy",
          "large", "viel", "stark", "dunkel", "hart", "salzig", "feucht");

  private static final Map<String, Double> WORDS = new HashMap<>();

  static {
    String[] liking = {
      "dislike extremely", "dislike very much", "dislike moderately", "dislike slightly",
      "neither like nor dislike", "like slightly", "like moderately", "like very much",
      "like extremely"
    };
    for (int i = 0; i < liking.length; i++) {
      WORDS.put(liking[i], i + 1.0);
    }
    String[] right = {
      "much too little", "too little", "just about right", "too much", "much too much"
    };
    for (int i = 0; i < right.length; i++) {
      WORDS.put(right[i], i + 1.0);
    }
    // Five-grade quality scale of ITU-T P.800.
    String[] quality = {"bad", "poor", "fair", "good", "excellent"};
    for (int i = 0; i < quality.length; i++) {
      WORDS.put(quality[i], i + 1.0);
    }
    WORDS.put("just right", 3.0);
    WORDS.put("about right", 3.0);
    WORDS.put("jar", 3.0);
    WORDS.put("genau richtig", 3.0);
    WORDS.put("not enough", 2.0);
    WORDS.put("far too little", 1.0);
    WORDS.put("far too much", 5.0);
  }

  private Mark() {}

  static boolean isMissing(String cell) {
    if (!cell.isEmpty() && Character.isDigit(cell.charAt(0))) {
      return false;
    }
    return cell.isEmpty() || cell.length() < 14 && MISSING.contains(cell.toLowerCase(Locale.ROOT));
  }

  /** Whether a cell among marks says that there is none. */
  static boolean isNoMark(String cell) {
    if (!cell.isEmpty() && Character.isDigit(cell.charAt(0))) {
      return false;
    }
    return isMissing(cell) || cell.length() < 14 && NO_MARK.contains(cell.toLowerCase(Locale.ROOT));
  }

  /** Whether a fraction was mangled into a date. */
  static boolean isDate(String cell) {
    Matcher dated = DATED.matcher(cell);
    return dated.matches() && MONTHS.contains(dated.group(1).toLowerCase(Locale.ROOT));
  }

  /** Whether a remark stands beside the number. */
  static boolean hasRemark(String cell) {
    return !cell.isEmpty()
        && "*†‡§)]".indexOf(cell.charAt(cell.length() - 1)) >= 0
        && REMARKED.matcher(cell).matches();
  }

  /** The number; NaN when the cell is none. */
  static double parse(String cell) {
    double plain = plain(cell);
    if (!Double.isNaN(plain)) {
      return plain;
    }
    if (cell.isEmpty() || cell.length() > 40) {
      return Double.NaN;
    }
    char first = cell.charAt(0);
    if (first == '-' || Character.isDigit(first)) {
      return measured(Vocabulary.fold(cell));
    }
    if (first > '~' && STARS.matcher(cell).matches()) {
      return cell.chars().filter(c -> c != '☆' && c != '✩').count();
    }
    String folded = Vocabulary.fold(cell);
    Double word = WORDS.get(folded);
    if (word != null) {
      return word;
    }
    return folded.contains("too ") || folded.contains("zu ") ? right(folded) : Double.NaN;
  }

  /** "7/10", "7½", "65 mm". */
  private static double measured(String folded) {
    Matcher fraction = FRACTION.matcher(folded);
    if (fraction.matches()) {
      return halves(fraction.group(1));
    }
    Matcher unit = WITH_UNIT.matcher(folded);
    if (unit.matches()) {
      return halves(unit.group(1));
    }
    Matcher remarked = REMARKED.matcher(folded);
    if (remarked.matches()) {
      return plain(remarked.group(1));
    }
    Matcher labelled = LABELLED.matcher(folded);
    return labelled.matches() && !isDate(folded) ? plain(labelled.group(1)) : Double.NaN;
  }

  private static double halves(String number) {
    return number.endsWith("½")
        ? plain(number.substring(0, number.length() - 1)) + 0.5
        : plain(number);
  }

  /** A just-about-right mark from 1 (much too little) to 5 (much too much). */
  private static double right(String folded) {
    Matcher too = TOO.matcher(folded);
    if (!too.matches()) {
      return Double.NaN;
    }
    int steps = too.group(1) != null && STRONGLY.contains(too.group(1)) ? 2 : 1;
    if (TOO_LITTLE.contains(too.group(2))) {
      return 3 - steps;
    }
    return TOO_MUCH.contains(too.group(2)) ? 3 + steps : Double.NaN;
  }

  private static double plain(String cell) {
    boolean digit = false;
    int length = cell.length();
    if (length == 0 || length > 24) {
      return Double.NaN;
    }
    for (int i = 0; i < length; i++) {
      char c = cell.charAt(i);
      digit |= c >= '0' && c <= '9';
      if (!(c >= '0' && c <= '9'
          || c == '.'
          || c == ','
          || c == '-'
          || c == '+'
          || c == 'e'
          || c == 'E'
          || c == '−')) {
        return Double.NaN;
      }
    }
    if (!digit) {
      return Double.NaN;
    }
    try {
      return Double.parseDouble(cell.replace(',', '.').replace('−', '-'));
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }
}
