package ovenproof.proof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.DraftText.Role;
import ovenproof.proof.DraftText.Sentence;
import ovenproof.proof.Mentions.ProductMention;
import ovenproof.proof.Mentions.TestMention;

/** Follows a draft from sentence to sentence and remembers what is being spoken of. */
final class ContextTracker {
  private final Mentions mentions;
  private @Nullable String lastProduct;
  private Set<String> lastJoint = Set.of();
  private Set<String> lastTests = Set.of();
  private Set<String> headingTests = Set.of();
  private Set<String> paragraphTests = Set.of();
  private Map<String, Double> lastStems = Map.of();
  private String lastHeading = "";
  private int lastParagraph = -1;

  ContextTracker(Mentions mentions) {
    this.mentions = mentions;
  }

  Context enter(Sentence sentence) {
    if (sentence.role() == Role.SENTENCE && !sentence.heading().equals(lastHeading)) {
      lastHeading = sentence.heading();
      enterSection();
    }
    List<ProductMention> named = mentions.products(sentence.text());
    List<ProductMention> withPronouns = resolved(sentence.text(), named);
    List<TestMention> tests = mentions.tests(sentence.text());
    boolean sameParagraph = sentence.paragraph() == lastParagraph;
    if (!sameParagraph) {
      paragraphTests = Set.of();
    }
    Set<String> above = paragraphTests.isEmpty() ? headingTests : paragraphTests;
    Context.Said said =
        new Context.Said(
            lastProduct, lastJoint, above, lastTests, sameParagraph ? lastStems : Map.of());
    remember(sentence, named, tests);
    return new Context(sentence, withPronouns, tests, said);
  }

  /** A new heading: its product and test hold, and nothing that was said above it. */
  private void enterSection() {
    String own = lastHeading.substring(lastHeading.lastIndexOf(" / ") + 1);
    List<ProductMention> inHeading = mentions.products(own);
    lastProduct = inHeading.size() == 1 ? inHeading.get(0).product() : null;
    lastJoint = products(inHeading);
    headingTests = testsOf(mentions.tests(own));
    if (headingTests.isEmpty() && inHeading.isEmpty()) {
      headingTests = testsOf(mentions.tests(lastHeading));
    }
    lastTests = headingTests;
    paragraphTests = Set.of();
  }

  private static Set<String> testsOf(List<TestMention> tests) {
    return tests.stream()
        .map(TestMention::test)
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  private static Set<String> products(List<ProductMention> named) {
    Set<String> all = new LinkedHashSet<>();
    named.forEach(m -> all.add(m.product()));
    return all.size() > 1 ? all : Set.of();
  }

  /** "It" and "this one" stand for the sentence's subject so far, or for what was spoken of. */
  private List<ProductMention> resolved(String text, List<ProductMention> named) {
    List<ProductMention> all = new ArrayList<>(named);
    for (Mentions.Pronoun pronoun : Mentions.pronouns(text)) {
      List<ProductMention> before = named.stream().filter(m -> m.end() <= pronoun.start()).toList();
      String product = before.isEmpty() ? lastProduct : referent(text, before, pronoun);
      if (product != null) {
        all.add(new ProductMention(product, pronoun.start(), pronoun.end()));
      }
    }
    all.sort(java.util.Comparator.comparingInt(ProductMention::start));
    return all;
  }

  private static @Nullable String referent(
      String text, List<ProductMention> before, Mentions.Pronoun pronoun) {
    return pronoun.isLatter() ? before.get(before.size() - 1).product() : subject(text, before);
  }

  private void remember(Sentence sentence, List<ProductMention> named, List<TestMention> tests) {
    if (!named.isEmpty()) {
      lastProduct = subject(sentence.text(), named);
      lastJoint = products(named);
    }
    if (!tests.isEmpty()) {
      lastTests = testsOf(tests);
      paragraphTests = lastTests;
    }
    Map<String, Double> stems = new HashMap<>();
    if (sentence.paragraph() == lastParagraph) {
      lastStems.forEach((stem, weight) -> stems.put(stem, weight * 0.6));
    }
    Stems.ofAll(sentence.text()).forEach(s -> stems.put(s, 0.7));
    stems.values().removeIf(w -> w < 0.2);
    lastStems = stems;
    lastParagraph = sentence.paragraph();
  }

  /**
   * The first product named is what the next "it" stands for, unless it only stands after "than".
   */
  private static String subject(String text, List<ProductMention> named) {
    for (ProductMention mention : named) {
      String before = text.substring(0, mention.start());
      if (!before.matches(
          "(?is).*\\b(than|as|behind|unlike|like|beats?|with|to|against|of)\\s+(the\\s+)?$")) {
        return mention.product();
      }
    }
    return named.get(0).product();
  }
}
