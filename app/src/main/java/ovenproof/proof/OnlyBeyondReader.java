package ovenproof.proof;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.Mentions.ProductMention;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;
import ovenproof.proof.Vocabulary.Adjective;

/**
 * "Only the Whimbrel was quicker", "nothing was louder", "two ovens did better": who lies beyond
 * the product that was just spoken of.
 */
final class OnlyBeyondReader implements ClaimReader {
  private static final String VERB =
      "(?:(?:was|were|is|are|did|does|do|has|have|had|ran|runs|got|gets|went|took|takes|needs?|needed|cost|costs|lost|used|uses|came|comes|scored|scores|weighs?|finished|toasts?|toasted|heats?|heated|made|makes|ends?|ended)\\s+(?:up\\s+)?(?:even\\s+|any\\s+|still\\s+|it\\s+|them\\s+|a\\s+)*)";

  private static final Pattern COMPARATIVE =
      Pattern.compile(
          "(?is)^(?:['’]s(?:\\s+\\p{L}+){1,2})?\\s*,?\\s*"
              + VERB
              + "(?<word>(?!(?:aft|und|ov|oth|eith|neith|wheth|rath|nev|ev|togeth|numb|pap|pow)er)\\p{L}{2,}er|worse|more|less)\\b(?!\\s+(?:\\p{L}+\\s+){0,3}?than\\b)(?:\\s+(?:so|still|yet))?\\s*(?:[.,;:!)—–]|$|and\\b|but\\b|overall\\b).*");

  private static final Pattern NOBODY =
      Pattern.compile(
          "\\b(?:nothing(?: else)?|nobody(?: else)?|none(?: of the (?:others?|rest|field))?|no (?:other )?(?:oven|model|machine)|not one)\\b",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern ONLY = Pattern.compile("(?is).*\\bonly\\s+(?:the\\s+)?$");

  private final Figures figures;
  private final FigureSearch search;

  OnlyBeyondReader(Figures figures, FigureSearch search) {
    this.figures = figures;
    this.search = search;
  }

  @Override
  public void read(SentenceClaims sentence) {
    Matcher nobody = NOBODY.matcher(sentence.text());
    while (nobody.find()) {
      beyond(sentence, nobody.start(), nobody.end(), Set.of());
    }
    readOnly(sentence);
  }

  private void readOnly(SentenceClaims sentence) {
    List<ProductMention> named = sentence.context().named();
    for (int i = 0; i < named.size(); i++) {
      Matcher only = ONLY.matcher(Wording.before(sentence.text(), named.get(i).start()));
      Set<String> all = new LinkedHashSet<>(List.of(named.get(i).product()));
      int last = i;
      while (last + 1 < named.size()
          && ProductLists.isJoined(
              sentence.text().substring(named.get(last).end(), named.get(last + 1).start()))) {
        last++;
        all.add(named.get(last).product());
      }
      if (only.matches()) {
        int start = named.get(i).start();
        beyond(sentence, start, named.get(last).end(), all);
      }
      i = last;
    }
  }

  private void beyond(SentenceClaims sentence, int start, int end, Set<String> named) {
    Matcher matcher = COMPARATIVE.matcher(Wording.after(sentence.text(), end));
    if (!matcher.matches()) {
      return;
    }
    String word = matcher.group("word").toLowerCase(Locale.ROOT);
    int to = end + matcher.end("word");
    @Nullable String subject = subject(sentence, start, named);
    Optional<Figure> use =
        subject == null ? Optional.empty() : use(sentence, start, to, word, subject);
    if (use.isEmpty() || !sentence.isFree(start, to)) {
      return;
    }
    claim(
        sentence,
        start,
        to,
        meant(sentence, use.get(), word, named),
        direction(word, use.get()),
        named);
  }

  private static @Nullable String subject(SentenceClaims sentence, int start, Set<String> named) {
    @Nullable String subject = sentence.context().inherited();
    for (ProductMention mention : sentence.context().mentions()) {
      if (mention.start() < start) {
        subject = mention.product();
      }
    }
    return subject == null || named.contains(subject) ? null : subject;
  }

  /** What the number before spoke of, where the adjective can mean it. */
  private Optional<Figure> use(
      SentenceClaims sentence, int start, int end, String word, String subject) {
    @Nullable Adjective adjective = Vocabulary.adjective(Stems.of(word));
    @Nullable Figure spoken = sentence.spokenOf();
    boolean fits =
        spoken != null
            && (adjective == null
                || adjective.takes().contains(spoken.take())
                || spoken.isScore() && adjective.takes().contains("score"));
    boolean quality =
        spoken != null
            && Wording.is(word, "better|worse")
            && Vocabulary.isLessBetter(spoken.take());
    if (fits || quality) {
      return search.field(java.util.Objects.requireNonNull(spoken)).stream()
          .filter(f -> f.product().equals(subject))
          .findFirst();
    }
    if (adjective == null) {
      return Optional.empty();
    }
    Focus focus = sentence.context().at(start, end);
    List<Figure> uses = search.uses(focus, adjective, Stems.of(word), subject);
    return uses.size() == 1 ? Optional.of(uses.get(0)) : Optional.empty();
  }

  private static Vocabulary.Direction direction(String word, Figure use) {
    @Nullable Adjective adjective = Vocabulary.adjective(Stems.of(word));
    if (Vocabulary.isLessBetter(use.take()) && Wording.is(word, "better|worse")) {
      return word.equals("better") ? Vocabulary.Direction.LOW : Vocabulary.Direction.HIGH;
    }
    if (adjective != null && adjective.takes().contains(use.take())
        || adjective != null && use.isScore()) {
      return adjective.direction();
    }
    return Wording.is(word, "less|lower|shorter|sooner|earlier")
        ? Vocabulary.Direction.LOW
        : Vocabulary.Direction.HIGH;
  }

  /** Of the products spoken of, the one that the claim holds of; else the subject. */
  private Figure meant(SentenceClaims sentence, Figure use, String word, Set<String> named) {
    Set<String> around = new LinkedHashSet<>(sentence.context().around());
    around.removeAll(named);
    return search.field(use).stream()
        .filter(f -> around.contains(f.product()) && Separation.level(f) != null)
        .filter(f -> beyond(f, direction(word, use)).equals(named))
        .findFirst()
        .orElse(use);
  }

  private Set<String> beyond(Figure use, Vocabulary.Direction direction) {
    Separation separation = new Separation(search.field(use), direction);
    Set<String> beyond = new LinkedHashSet<>();
    separation.ordered().stream()
        .filter(f -> separation.signed(f) > separation.signed(use))
        .forEach(f -> beyond.add(f.product()));
    return beyond;
  }

  private void claim(
      SentenceClaims sentence,
      int start,
      int end,
      Figure use,
      Vocabulary.Direction direction,
      Set<String> named) {
    Separation separation = new Separation(search.field(use), direction);
    if (Separation.level(use) == null) {
      return;
    }
    Set<String> beyond = beyond(use, direction);
    Set<String> surely = new LinkedHashSet<>();
    separation.ordered().stream()
        .filter(f -> beyond.contains(f.product()))
        .filter(f -> use.isSingle() || separation.probability(f, use) >= 0.95)
        .forEach(f -> surely.add(f.product()));
    boolean holds = beyond.equals(named);
    boolean open = named.containsAll(surely) && beyond.containsAll(named);
    String expected =
        beyond.isEmpty() ? "none" : String.join(", ", beyond.stream().map(figures::name).toList());
    sentence.add(
        start,
        end,
        Kind.COUNT,
        holds ? Finding.SUPPORTED : open ? Finding.UNCLEAR : Finding.CONTRADICTED,
        sentence.text().substring(start, end).strip(),
        expected,
        use.evidence(),
        figures.name(use.product())
            + " "
            + ComparisonJudge.shownOrBound(use)
            + ", "
            + use.label()
            + "; beyond it: "
            + expected);
  }
}
