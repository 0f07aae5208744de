package ovenproof.proof;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.DraftText.Role;
import ovenproof.proof.DraftText.Sentence;
import ovenproof.proof.Mentions.ProductMention;

/** Follows a draft from sentence to sentence and remembers what is being spoken of. */
final class ContextTracker {
  private final Mentions mentions;
  private @Nullable String lastProduct;
  private Set<String> lastTests = Set.of();
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
    Set<String> tests = mentions.tests(sentence.text());
    Set<String> before =
        sentence.paragraph() == lastParagraph ? lastTests : mentions.tests(sentence.heading());
    Context context =
        new Context(
            sentence,
            named,
            lastProduct,
            tests,
            before.isEmpty() ? lastTests : before,
            Mentions.batch(sentence.text()),
            Stems.ofAll(sentence.text()));
    remember(sentence, named, tests);
    return context;
  }

  /** A new heading: its product and test hold, and nothing that was said above it. */
  private void enterSection() {
    List<ProductMention> inHeading = mentions.products(lastHeading);
    lastProduct = inHeading.isEmpty() ? null : inHeading.get(inHeading.size() - 1).product();
    lastTests = mentions.tests(lastHeading);
  }

  private void remember(Sentence sentence, List<ProductMention> named, Set<String> tests) {
    if (!named.isEmpty()) {
      lastProduct = subject(sentence, named);
    }
    if (!tests.isEmpty()) {
      lastTests = tests;
    }
    lastParagraph = sentence.paragraph();
  }

  /**
   * The first product named is what the next "it" stands for, unless it only stands after "than".
   */
  private static String subject(Sentence sentence, List<ProductMention> named) {
    for (ProductMention mention : named) {
      String before = sentence.text().substring(0, mention.start());
      if (!before.matches("(?s).*\\b(than|as|behind|unlike|like|beat|with|to)\\s+(the\\s+)?$")) {
        return mention.product();
      }
    }
    return named.get(0).product();
  }
}
