package ovenproof.proof;

import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.Mentions.ProductMention;

/** Whom a superlative is said of: the name before it, or one that it introduces. */
final class SuperlativeSubject {
  private SuperlativeSubject() {}

  /** "Smallest cavity: Dunnock", "Best toast score of all – the Alder". */
  private static final Pattern TITLED =
      Pattern.compile("(?is)[^.;:—–]{0,40}(?:[:—–]|\\s-)\\s*(?:the\\s+|our\\s+)?");

  private static boolean isTitle(String text, int start) {
    return Wording.is(text.substring(0, start), "(?is)[\\s*•>-]*(?:and |but |the |our )*");
  }

  /** "The fastest was Whimbrel", "Whimbrel is the fastest, Larch the slowest". */
  static @Nullable String of(Context context, int start, int end) {
    String before = null;
    for (ProductMention mention : context.mentions()) {
      if (mention.start() < start) {
        before = mention.product();
      } else if (mention.start() >= end && !mention.isPronoun()) {
        String between = context.sentence().text().substring(end, mention.start());
        if (Wording.is(
            between,
            "(?is)\\s*,?\\s*(?:the\\s+)?|(?:,\\s*(?:at|with)\\s[^,;]{1,25},\\s*(?:is|was)\\s+(?:the\\s+)?)|(?:[:—–]|\\s-)\\s*(the\\s+)?|\\s*(?:in|on|for|with|at|from|by)\\s+(the\\s+)?|\\s+(?:one|oven|model)\\s+(?:the\\s+)?|[^.;,]{0,45}?\\b(was|is|were|remains|goes to|went to|came from|belongs to|being|award)\\s+(the\\s+)?")) {
          return mention.product();
        }
        if (isTitle(context.sentence().text(), start) && TITLED.matcher(between).matches()) {
          return mention.product();
        }
        boolean apposed =
            before == null && Wording.is(between, "(?is)(?:\\s+\\p{L}+){1,5},\\s*(?:the\\s+)?");
        if (apposed) {
          return mention.product();
        }
        break;
      }
    }
    return before != null ? before : context.productAt(start, end);
  }
}
