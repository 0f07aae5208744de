package ovenproof.proof;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.Mentions.ProductMention;

/**
 * Words that stand for one of the two products that were last named together: "the former", "the
 * latter", "the second is cheaper", "the other one", "its rival".
 */
final class PairWords {
  private static final String SAID_OF_IT =
      "(?=['’]s|,|:| (?:is|was|costs?|cost|has|had|needs?|needed|takes?|took|gave|gives|got|gets|scored|scores|wins|won|came|comes|reaches|reached|runs|ran|weighs|weighed|uses|used|makes|made|holds|held|draws|drew|loses|lost|on the other hand|though|also|finished|heats|heated|toasts|toasted|sells|beeps|overshot|overshoots)\\b)";

  private static final Pattern WORDS =
      Pattern.compile(
          "\\b(?:(?<former>the former|the first(?: one| oven| of them| of the two)?"
              + SAID_OF_IT
              + ")|(?<latter>the latter|the second(?: one| oven| of them| of the two)?"
              + SAID_OF_IT
              + ")|(?<other>the other(?: one| oven| model| machine| of the two)?(?=['’]s|[,.;:!?)]| (?!one|oven|model|machine|of the)(?:is|was|at|in|with|\\d|costs?|has|had|needs?|needed|takes?|took|gave|gives|got|gets|scored|scores|only|just|about|nearly|almost|came|runs|ran|weighs|uses|used|lost|held|wants?|wanted|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|twenty|thirty|forty|fifty)\\b|$)|its (?:only )?(?:rival|twin|sibling|neighbour|neighbor|competitor|stablemate|counterpart)))",
          Pattern.CASE_INSENSITIVE);

  /** "The first batch", "the second time": an order of things that are no products. */
  private static final Pattern OTHER_ORDER =
      Pattern.compile(
          "\\b(?:batch(?:es)?|loads?|rounds?|slices?|runs?|helpings?)\\b",
          Pattern.CASE_INSENSITIVE);

  private PairWords() {}

  /**
   * The products that such words stand for.
   *
   * @param named products that the sentence names
   * @param pair the two last named together before; empty when there are none
   * @param carried what "it" stands for
   */
  static List<ProductMention> resolved(
      String text, List<ProductMention> named, List<String> pair, @Nullable String carried) {
    List<ProductMention> found = new ArrayList<>();
    Matcher matcher = WORDS.matcher(text);
    while (matcher.find()) {
      boolean ordinal = matcher.group("other") == null && !isPlain(matcher.group());
      @Nullable String product =
          ordinal && OTHER_ORDER.matcher(text).find()
              ? null
              : product(matcher, before(named, found, matcher.start()), pair, carried);
      if (product != null) {
        found.add(new ProductMention(product, matcher.start(), matcher.end()));
      }
    }
    return found;
  }

  private static boolean isPlain(String words) {
    return Wording.is(words, "(?i)the former|the latter");
  }

  /** Products named before, in order; what was found already counts for "the other" only. */
  private static List<String> before(
      List<ProductMention> named, List<ProductMention> found, int offset) {
    Set<String> all = new LinkedHashSet<>();
    named.stream().filter(m -> m.end() <= offset).forEach(m -> all.add(m.product()));
    found.stream().filter(m -> m.end() <= offset).forEach(m -> all.add(m.product()));
    return List.copyOf(all);
  }

  private static @Nullable String product(
      Matcher matcher, List<String> here, List<String> pair, @Nullable String carried) {
    if (matcher.group("other") != null) {
      @Nullable String own = here.isEmpty() ? carried : here.get(here.size() - 1);
      List<String> two = here.size() == 2 ? here : pair;
      return two.size() == 2 && two.contains(own) ? two.get(two.get(0).equals(own) ? 1 : 0) : null;
    }
    List<String> two = pair.size() == 2 && here.size() < 2 ? pair : here;
    if (two.size() != 2) {
      return null;
    }
    return two.get(matcher.group("former") != null ? 0 : 1);
  }
}
