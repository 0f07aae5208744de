package ovenproof.proof;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.DraftText.Sentence;
import ovenproof.proof.Mentions.ProductMention;

/**
 * What a sentence is about, from its own words, the heading above it and what was said before.
 *
 * @param mentions products named in the sentence, in order
 * @param inherited the product that "it" stands for; null when nothing was said
 * @param tests tests named in the sentence
 * @param inheritedTests tests named before, or in the heading, when the sentence names none
 * @param stems stems of the sentence's words
 */
record Context(
    Sentence sentence,
    List<ProductMention> mentions,
    @Nullable String inherited,
    Set<String> tests,
    Set<String> inheritedTests,
    @Nullable Integer batch,
    Set<String> stems) {

  /**
   * The product a phrase at an offset speaks of: the last one named before it, else the first
   * after.
   */
  @Nullable String productAt(int offset) {
    String before = null;
    String after = null;
    for (ProductMention mention : mentions) {
      if (mention.start() < offset) {
        before = mention.product();
      } else if (after == null) {
        after = mention.product();
      }
    }
    if (before != null) {
      return before;
    }
    return after != null && inherited == null
        ? after
        : inherited != null && after == null ? inherited : after;
  }

  /** All products named before an offset that are joined by "and": "Alder and Siskin both …". */
  Set<String> jointProductsAt(int offset) {
    Set<String> joint = new LinkedHashSet<>();
    String text = sentence.text();
    boolean both = text.matches("(?s).*\\b(both|each|all)\\b.*");
    int lastEnd = -1;
    for (ProductMention mention : mentions) {
      if (mention.start() >= offset) {
        break;
      }
      boolean joined =
          lastEnd >= 0
              && text.substring(lastEnd, mention.start()).matches("(?s)\\s*(,|and|,\\s*and)\\s*");
      if (!joined) {
        joint.clear();
      }
      joint.add(mention.product());
      lastEnd = mention.end();
    }
    return both && joint.size() > 1 ? joint : Set.of();
  }
}
