package ovenproof.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The words, numbers and signs of a sentence in order, and how far they have been read. */
final class TokenCursor {
  private static final Pattern TOKEN =
      Pattern.compile(
          "[$€£]|[Lab]\\*|[ck]?m[²³]|in²|ft[³3]\\b|\\d{1,3}(?:,\\d{3})+(?:\\.\\d+)?|\\d+:\\d{2}(?::\\d{2})?|\\d+(?:[.,]\\d+)?|[½¼¾⅓⅔]"
              + "|°\\s?[CcFf]\\b|°|%|×|[A-Za-zÀ-ÿµ]+(?:['’][A-Za-z]+)?|[-–—−/*&+~≈<>≥≤]");

  final String sentence;
  final List<Token> tokens;
  int at;

  TokenCursor(String sentence) {
    this.sentence = sentence;
    this.tokens = tokens(sentence);
  }

  /** A word, number or sign with its place. */
  record Token(String text, String lower, int start, int end) {}

  static List<Token> tokens(String text) {
    List<Token> tokens = new ArrayList<>();
    Matcher matcher = TOKEN.matcher(text);
    while (matcher.find()) {
      String word = matcher.group();
      tokens.add(new Token(word, word.toLowerCase(Locale.ROOT), matcher.start(), matcher.end()));
    }
    return tokens;
  }

  /** Nothing but blanks or a hyphen stands between a token and the one before. */
  boolean joined() {
    return at == 0
        || sentence.substring(tokens.get(at - 1).end(), tokens.get(at).start()).isBlank();
  }

  boolean adjacent(int token) {
    return token > 0 && tokens.get(token).start() - tokens.get(token - 1).end() <= 1;
  }

  String peek() {
    return tokens.get(at).lower();
  }

  boolean accept(String... words) {
    if (at < tokens.size()) {
      for (String word : words) {
        if (peek().equals(word)) {
          at++;
          return true;
        }
      }
    }
    return false;
  }

  /** "Twelve minutes or so", "twelve minutes or thereabouts". */
  boolean orSo() {
    int mark = at;
    boolean hedged = accept("or") && accept("so", "thereabouts");
    at = mark;
    return hedged;
  }

  /** "7.5 or better", "nine minutes or less". */
  Hedge orBeyond() {
    int mark = at;
    Hedge hedge = Hedge.PLAIN;
    if (accept("or") || accept("and")) {
      hedge =
          accept("better", "more", "higher", "longer", "above", "upwards", "up", "over")
              ? Hedge.AT_LEAST
              : accept("less", "fewer", "lower", "under", "cheaper", "below", "faster", "quicker")
                  ? Hedge.AT_MOST
                  : Hedge.PLAIN;
    }
    at = mark;
    return hedge;
  }

  /** Accepts one of the words where it stands; true either way. */
  boolean skip(String... words) {
    accept(words);
    return true;
  }

  boolean before(int token, String word) {
    return token > 0 && tokens.get(token - 1).lower().equals(word);
  }

  boolean after(String word) {
    return at > 0 && tokens.get(at - 1).lower().equals(word);
  }
}
