package ovenproof.proof;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.Mentions.ProductMention;

/**
 * Who is compared with whom: the subject of a comparison and its other end, a product, the average
 * or the rest.
 */
final class ComparedProducts {
  private static final Pattern REST =
      Pattern.compile(
          "^\\s*(?:the\\s+)?((?:every other|all|any)(?:\\s+(?:the\\s+)?(?:ovens?|others?|models?))?\\s+(?:but|except|bar|save)\\s+(?:one|two|three|four)|average|field average|mean|rest|others|any other|any of the others|all (?:the )?others|every other|everything else|anything else|anyone else|everyone else|(?:the )?next(?: best| oven| one| in line)?|(?:its |the )?(?:nearest|closest)(?: rival| competitor| oven)?|runner-up|(?:our )?(?:leader|winner|quickest|fastest|slowest|cheapest|best|worst|quietest|loudest|lightest|heaviest))\\b",
          Pattern.CASE_INSENSITIVE);

  private final Figures figures;

  ComparedProducts(Figures figures) {
    this.figures = figures;
  }

  /**
   * What is compared.
   *
   * @param other the second product; null for the average or the rest
   */
  record Compared(String subject, @Nullable String other, int end, String against) {
    boolean isAverage() {
      return Wording.is(against, "average|field average|mean");
    }
  }

  /** "That's two minutes longer": of what was said before. */
  static boolean summing(SentenceClaims sentence, int start) {
    return Wording.is(
            sentence.text().substring(0, start),
            "(?is).*\\b(that['’]s|that is|which is|that makes it)\\s+(\\w+\\s+)?$")
        && sentence.context().mentions().stream().allMatch(ProductMention::isPronoun);
  }

  /** Whom a comparison without "than" speaks of, its subject first. */
  static List<String> pair(SentenceClaims sentence, int start) {
    List<String> pair = new ArrayList<>();
    Context context = sentence.context();
    boolean summing = summing(sentence, start);
    String subject = summing ? null : subject(sentence, start);
    if (subject != null) {
      pair.add(subject);
    }
    for (ProductMention mention : context.mentions()) {
      if (!pair.contains(mention.product())) {
        pair.add(mention.product());
      }
    }
    if (summing) {
      List<String> before = new ArrayList<>(context.pairBefore());
      Collections.reverse(before);
      before.stream().filter(p -> !pair.contains(p)).forEach(pair::add);
    } else {
      context.namedBefore().stream().filter(p -> !pair.contains(p)).forEach(pair::add);
    }
    return pair;
  }

  Optional<Compared> compared(SentenceClaims sentence, int start, int end) {
    ProductMention other = null;
    for (ProductMention mention : sentence.context().mentions()) {
      boolean close = mention.start() >= end && mention.start() - end < 40;
      if (other == null
          && close
          && !TURNS.matcher(sentence.text().substring(end, mention.start())).find()) {
        other = mention;
      }
    }
    if (other != null) {
      Optional<ProductMention> inverted = inverted(sentence, other);
      if (inverted.isPresent()) {
        return Optional.of(
            new Compared(
                inverted.get().product(),
                other.product(),
                inverted.get().end(),
                figures.name(other.product())));
      }
    }
    String subject =
        summing(sentence, start) || THAT.matcher(Wording.before(sentence.text(), start)).matches()
            ? lastBefore(sentence)
            : subject(sentence, start);
    if (subject == null) {
      return Optional.empty();
    }
    if (other != null && !other.product().equals(subject)) {
      return Optional.of(
          new Compared(subject, other.product(), other.end(), figures.name(other.product())));
    }
    Matcher rest = REST.matcher(Wording.after(sentence.text(), end));
    return rest.find()
        ? Optional.of(
            new Compared(subject, null, end + rest.end(), rest.group(1).toLowerCase(Locale.ROOT)))
        : Optional.empty();
  }

  private static final Pattern NOBODY =
      Pattern.compile(
          "(?is).*\\b(?:nobody|no one|none(?: of the (?:others?|rest))?|nothing(?: else)?|no other(?: \\p{L}+)?|no (?:oven|model|machine|product|appliance))\\b[^.;,]{0,40}$");

  /** "Nobody did worse than the Larch" says: the Larch did worst. */
  static Optional<Compared> outdone(SentenceClaims sentence, int start, int end) {
    if (!NOBODY.matcher(Wording.before(sentence.text(), start)).matches()) {
      return Optional.empty();
    }
    return sentence.context().mentions().stream()
        .filter(m -> m.start() >= end && m.start() - end < 12)
        .findFirst()
        .map(m -> new Compared(m.product(), null, m.end(), "all others"));
  }

  private static final Pattern TURNS = Pattern.compile("[,;:]|\\b(?:but|while|though|yet)\\b");

  private static final Pattern INVERTED =
      Pattern.compile(
          "(?is)\\s*,?\\s*(?:came|comes|was|were|is|sits|lies|follows?|followed|finished|arrived|arrives)\\s+(?:the\\s+)?");

  /** "Two seconds behind it came the Hornbeam": the second name is the subject. */
  private static Optional<ProductMention> inverted(SentenceClaims sentence, ProductMention other) {
    return sentence.context().mentions().stream()
        .filter(m -> m.start() >= other.end() && !m.product().equals(other.product()))
        .findFirst()
        .filter(m -> INVERTED.matcher(sentence.text().substring(other.end(), m.start())).matches());
  }

  private static final Pattern THAT =
      Pattern.compile(
          "(?is)[\\s*]*(?:so |and )?(?:that['’]s|that is|that was|this is|which is)\\s+[^.;,]{0,40}$");

  /** "That is two minutes longer than …": what was named last in the sentence before. */
  private static @Nullable String lastBefore(SentenceClaims sentence) {
    List<String> before = sentence.context().pairBefore();
    return before.isEmpty() ? sentence.context().inherited() : before.get(before.size() - 1);
  }

  /** A name that is only compared with is the subject when there is no other. */
  private static boolean hasOther(SentenceClaims sentence, ProductMention aside, int start) {
    return sentence.context().inherited() != null
        || sentence.context().mentions().stream()
            .anyMatch(m -> m.start() < start && m.start() != aside.start());
  }

  static @Nullable String subject(SentenceClaims sentence, int start) {
    String subject = null;
    for (ProductMention mention : sentence.context().mentions()) {
      boolean aside =
          Wording.is(
              sentence.text().substring(0, mention.start()),
              "(?is).*\\b(times|twice|half|that of|those of|than)\\s+(the\\s+)?$");
      if (mention.start() < start && !(aside && hasOther(sentence, mention, start))) {
        subject = mention.product();
      }
    }
    return subject != null ? subject : sentence.context().inherited();
  }
}
