package ovenproof.proof;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;

/** Turns of phrase in the words around a claim; each pattern is compiled once. */
final class Wording {
  /** How far before a claim its words are looked for: no phrase is longer. */
  private static final int REACH = 160;

  private static final Map<String, Pattern> COMPILED = new ConcurrentHashMap<>();

  private Wording() {}

  /** Whether the whole text is worded so. */
  static boolean is(CharSequence text, String pattern) {
    return COMPILED.computeIfAbsent(pattern, Pattern::compile).matcher(text).matches();
  }

  /** The words that lead up to an offset. */
  static String before(String text, int offset) {
    return text.substring(Math.max(0, offset - REACH), offset);
  }

  /** The words that follow an offset. */
  static String after(String text, int offset) {
    return text.substring(offset, Math.min(text.length(), offset + REACH));
  }
}
