package ovenproof.proof;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.ComparedProducts.Compared;
import ovenproof.proof.ComparisonJudge.Outcome;
import ovenproof.proof.Mentions.ProductMention;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;
import ovenproof.proof.Vocabulary.Adjective;
import ovenproof.proof.Vocabulary.Direction;

/**
 * Comparatives that leave out their other end, where only one can be meant: "the better of the
 * two", "the latter has a longer cord", "the Plover needed thirteen minutes, the Siskin a little
 * less".
 */
final class PairComparisonReader implements ClaimReader {
  private static final String NO_COMPARATIVE =
      "(?!(?:aft|und|ov|oth|anoth|eith|neith|wheth|rath|nev|ev|togeth|wat|numb|pap|pow|rememb|dinn|butt|toast|form|latt|cov|pep|corn|cent|met)er\\b)";

  private static final Pattern OF_THE_TWO =
      Pattern.compile(
          "\\bthe\\s+(?<word>"
              + NO_COMPARATIVE
              + "\\p{L}{2,}er|worse|(?<much>more|less)\\s+(?<long>\\p{L}+))(?:\\s+(?:one|oven|model|machine|\\p{L}+))?\\s+(?:of\\s+(?:the|these|those)\\s+(?:two|pair|twins)|of\\s+(?:them|both)|one)\\b",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern PREDICATE =
      Pattern.compile(
          "(?is)^(?:['’]s)?\\s*,?\\s*(?:(?:on the other hand|however|though|by contrast|in contrast|meanwhile|in turn),?\\s+)?(?:(?:is|was|has|had|needs?|needed|takes?|took|runs?|ran|gets?|got|came|comes|costs?|cost|uses|used|lost|loses|did|does|even|just|only|scores|scored|weighs|weighed|holds|makes|made|gives|gave)\\s+)?(?:a (?:little|bit|touch|shade|trifle|tad)\\s+|slightly\\s+|somewhat\\s+|even\\s+|much\\s+|far\\s+|still\\s+|clearly\\s+|marginally\\s+|a\\s+|the\\s+)*(?<word>"
              + NO_COMPARATIVE
              + "\\p{L}{2,}er|worse|more|less)\\b(?<noun>(?:\\s+(?!than\\b|of\\b|for\\b|in\\b|on\\b|at\\b)\\p{L}+){0,2})\\s*(?:[.,;:!?)—–]|$|(?:for|in|on|at) (?:the )?\\p{L}+).*");

  private final Figures figures;
  private final FigureSearch search;
  private final ComparisonJudge judge;

  PairComparisonReader(Figures figures, FigureSearch search) {
    this.figures = figures;
    this.search = search;
    this.judge = new ComparisonJudge(figures, search);
  }

  @Override
  public void read(SentenceClaims sentence) {
    if (!sentence.isQuestion()) {
      ofTheTwo(sentence);
      predicates(sentence);
    }
  }

  private void ofTheTwo(SentenceClaims sentence) {
    Matcher matcher = OF_THE_TWO.matcher(sentence.text());
    while (matcher.find()) {
      @Nullable String subject = sentence.context().productAt(matcher.start());
      @Nullable String other = partner(sentence.context().pair(), subject);
      if (other == null) {
        other = partner(sentence.context().lists().carried(), subject);
      }
      if (subject != null && other != null) {
        String word = matcher.group("long") != null ? matcher.group("long") : matcher.group("word");
        boolean less = "less".equalsIgnoreCase(matcher.group("much"));
        claim(sentence, matcher.start(), matcher.end(), word, "", subject, other, less);
      }
    }
  }

  private static @Nullable String partner(List<String> pair, @Nullable String own) {
    return pair.size() == 2 && own != null && pair.contains(own)
        ? pair.get(pair.get(0).equals(own) ? 1 : 0)
        : null;
  }

  private void predicates(SentenceClaims sentence) {
    List<ProductMention> named = sentence.context().named();
    for (int i = 0; i < named.size(); i++) {
      ProductMention subject = named.get(i);
      Matcher matcher = PREDICATE.matcher(Wording.after(sentence.text(), subject.end()));
      @Nullable String other = other(sentence, named, i);
      boolean definite =
          other == null
              && matcher.matches()
              && Wording.is(
                  matcher.group(), "(?is)^[^.;,]{0,25}\\bthe " + matcher.group("word") + "\\b.*");
      if (definite) {
        other = partner(sentence.context().pair(), subject.product());
      }
      boolean only =
          Wording.is(
              Wording.before(sentence.text(), subject.start()),
              "(?is).*\\b(?:only|than|nothing but|except|and|or)\\s+(?:the\\s+)?$");
      if (!only && other != null && matcher.matches()) {
        int start = subject.end() + matcher.start("word");
        int end = subject.end() + matcher.end("word");
        if (isFree(sentence, subject.end(), end)) {
          claim(
              sentence,
              start,
              end,
              matcher.group("word"),
              matcher.group("noun"),
              subject.product(),
              other,
              false);
        }
      }
    }
  }

  /** No number stands between: with one it is a difference, which others read. */
  private static boolean isFree(SentenceClaims sentence, int start, int end) {
    return sentence.isFree(start, end)
        && sentence.numbers().stream().noneMatch(n -> n.start() < end && n.end() > start);
  }

  /** The product named before in the sentence, or the other one of the pair. */
  private static @Nullable String other(
      SentenceClaims sentence, List<ProductMention> named, int at) {
    String own = named.get(at).product();
    if (at > 0 && !named.get(at - 1).product().equals(own)) {
      return named.get(at - 1).product();
    }
    boolean isPairWord =
        Wording.is(
            sentence.text().substring(named.get(at).start(), named.get(at).end()),
            "(?is)(?:the (?:former|latter|first|second|other)\\b|its ).*");
    return isPairWord ? partner(sentence.context().lists().carried(), own) : null;
  }

  private void claim(
      SentenceClaims sentence,
      int start,
      int end,
      String said,
      String noun,
      String subject,
      String other,
      boolean less) {
    String word = said.toLowerCase(Locale.ROOT);
    Optional<Figure> use = use(sentence, start, end, word, noun, subject);
    if (use.isEmpty() || !sentence.isFree(start, end)) {
      return;
    }
    Direction direction = direction(word, use.get());
    Outcome outcome =
        judge.outcome(
            use.get(),
            new Compared(subject, other, end, figures.name(other)),
            less ? ComparisonJudge.turned(direction) : direction,
            Optional.empty());
    Finding finding = Emphasis.sharpened(sentence, start, end, outcome.finding());
    sentence.add(
        start,
        end,
        Kind.COMPARISON,
        finding,
        sentence.text().substring(start, end).strip(),
        outcome.expected(),
        outcome.evidence(),
        outcome.why());
  }

  /** By its noun, by what the number before spoke of, or by the adjective alone. */
  private Optional<Figure> use(
      SentenceClaims sentence, int start, int end, String word, String noun, String subject) {
    Focus focus = sentence.context().at(start, end);
    for (String after : noun.strip().split("\\s+")) {
      @Nullable Adjective meant = Vocabulary.noun(Stems.of(after));
      if (meant != null) {
        return one(search.uses(focus, meant, Stems.of(after), subject));
      }
    }
    @Nullable Adjective adjective = Vocabulary.adjective(Stems.of(word));
    @Nullable Figure spoken = sentence.spokenOf();
    boolean bare = Wording.is(word, "more|less|higher|lower|longer|shorter|later|earlier|sooner");
    if (spoken != null
        && noun.isBlank()
        && (bare || adjective == null || fits(adjective, spoken))) {
      return search.field(spoken).stream().filter(f -> f.product().equals(subject)).findFirst();
    }
    return adjective == null
        ? Optional.empty()
        : one(search.uses(focus, adjective, Stems.of(word), subject));
  }

  private static boolean fits(Adjective adjective, Figure figure) {
    return adjective.takes().contains(figure.take())
        || figure.isScore() && adjective.takes().contains("score");
  }

  private static Optional<Figure> one(List<Figure> uses) {
    return uses.size() == 1 ? Optional.of(uses.get(0)) : Optional.empty();
  }

  private static Direction direction(String word, Figure use) {
    @Nullable Adjective adjective = Vocabulary.adjective(Stems.of(word));
    if (adjective != null && fits(adjective, use)) {
      return adjective.direction();
    }
    return Wording.is(word, "less|lower|shorter|sooner|earlier|smaller|worse|fewer")
        ? Direction.LOW
        : Direction.HIGH;
  }
}
