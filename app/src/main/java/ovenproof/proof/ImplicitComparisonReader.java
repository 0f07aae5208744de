package ovenproof.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.ComparedProducts.Compared;
import ovenproof.proof.ComparisonJudge.Outcome;
import ovenproof.proof.Mentions.ProductMention;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;
import ovenproof.proof.Vocabulary.Adjective;
import ovenproof.proof.Vocabulary.Direction;

/**
 * Comparisons without "than" or "as": "the Whimbrel is forty seconds faster", "Alder vs. Siskin:
 * 0.6 points", "it beeps 48 seconds early".
 */
final class ImplicitComparisonReader implements ClaimReader {
  private final Figures figures;
  private final FigureSearch search;
  private final ComparedFigures figuresCompared;
  private final ComparisonJudge judge;

  ImplicitComparisonReader(
      Figures figures,
      FigureSearch search,
      ComparedFigures figuresCompared,
      ComparisonJudge judge) {
    this.figures = figures;
    this.search = search;
    this.figuresCompared = figuresCompared;
    this.judge = judge;
  }

  @Override
  public void read(SentenceClaims sentence) {
    readVersus(sentence);
    readImplicit(sentence);
    readEarly(sentence);
  }

  private static final Pattern IMPLICIT =
      Pattern.compile(
          "(?is)^\\s*(?<word>(?!(?:aft|und|ov|oth|anoth|eith|neith|wheth|rath|nev|ev|togeth|wat|numb|pap|pow|cov|discov|rememb|dinn|butt|may|temp|tow)er)\\p{L}+er|more|less|fewer|worse|behind|ahead)\\b(?!\\s+(?:\\p{L}+\\s+){0,3}?than\\b)(?!\\s+(?:of|the|its)\\b).*");

  /** "They weighed 28 % less when they came out" speaks of what was lost, not of two products. */
  private static final Pattern WEIGHED =
      Pattern.compile("\\b(weigh(?:s|ed)|lighter|shr[aiu]nk|lost)\\b", Pattern.CASE_INSENSITIVE);

  /** "The Whimbrel is forty seconds faster", "that's two minutes longer", "one point less". */
  private void readImplicit(SentenceClaims sentence) {
    for (NumberPhrase number : sentence.freeNumbers()) {
      Matcher matcher = IMPLICIT.matcher(Wording.after(sentence.text(), number.end()));
      boolean amount =
          number.unit() != null
              || number.scale() == Scale.POINTS
              || number.scale() == Scale.MONEY
              || number.scale() == Scale.DEGREES;
      boolean loss = number.unit() == Unit.PERCENT && WEIGHED.matcher(sentence.text()).find();
      if (amount && !loss && matcher.matches() && number.end() < sentence.text().length()) {
        implicit(sentence, number, matcher.group("word").toLowerCase(Locale.ROOT));
      }
    }
  }

  private static final Pattern VERSUS =
      Pattern.compile("(?is)^\\s*(?:vs\\.?|versus|against)\\s+(?:the\\s+)?$");

  /** "Alder vs. Siskin: 0.6 points"; "within a point of the leaders" is left open. */
  private void readVersus(SentenceClaims sentence) {
    List<ProductMention> names = sentence.context().mentions();
    for (NumberPhrase number : sentence.freeNumbers()) {
      String after = Wording.after(sentence.text(), number.end());
      if (number.hedge() == Hedge.UNDER && within(sentence, number)) {
        continue;
      }
      if (number.scale() == Scale.POINTS && Wording.is(after, "(?is)^\\s*of\\b.*")) {
        open(sentence, number.start(), number.end(), number.text());
      }
      for (int i = 0; i + 1 < names.size(); i++) {
        ProductMention a = names.get(i);
        ProductMention b = names.get(i + 1);
        boolean versus =
            number.scale() == Scale.POINTS
                && VERSUS.matcher(sentence.text().substring(a.end(), b.start())).matches()
                && b.end() <= number.start()
                && Wording.is(
                    sentence.text().substring(b.end(), number.start()),
                    "(?is)\\s*[:,—–-]\\s*(?:a\\s+)?");
        if (versus && sentence.isFree(number.start(), number.end())) {
          Focus focus = sentence.context().at(number.start(), number.end());
          List<Figure> uses = search.uses(focus, Vocabulary.adjective("good"), "good", a.product());
          if (!uses.isEmpty()) {
            Outcome outcome =
                judge.outcome(
                    uses.get(0),
                    new Compared(a.product(), b.product(), number.end(), figures.name(b.product())),
                    Direction.HIGH,
                    Optional.of(number));
            sentence.add(
                number.start(),
                number.end(),
                Kind.COMPARISON,
                outcome.finding(),
                number.text(),
                outcome.expected(),
                outcome.evidence(),
                outcome.why());
          }
        }
      }
    }
  }

  /** "It scores within half a point of the Siskin". */
  private boolean within(SentenceClaims sentence, NumberPhrase number) {
    String subject = ComparedProducts.subject(sentence, number.start());
    Optional<ProductMention> other =
        sentence.context().mentions().stream()
            .filter(m -> m.start() >= number.end())
            .findFirst()
            .filter(
                m ->
                    Wording.is(
                        sentence.text().substring(number.end(), m.start()),
                        "(?is)\\s*of\\s+(?:the\\s+)?"));
    Adjective adjective =
        ComparedFigures.byUnit(number, Wording.before(sentence.text(), number.start()));
    if (subject == null || other.isEmpty() || adjective == null) {
      return false;
    }
    Focus focus = sentence.context().at(number.start(), number.end());
    List<Figure> uses =
        figuresCompared.uses(focus, adjective, "good", subject, Optional.of(number));
    Optional<Figure> second =
        uses.isEmpty()
            ? Optional.empty()
            : search.field(uses.get(0)).stream()
                .filter(f -> f.product().equals(other.get().product()))
                .findFirst();
    if (second.isEmpty() || uses.get(0).value() == null || second.get().value() == null) {
      return false;
    }
    double gap =
        Math.abs(
            Objects.requireNonNull(uses.get(0).value())
                - Objects.requireNonNull(second.get().value()));
    Unit unit = ComparisonJudge.differenceOf(number.unit());
    Figure difference =
        uses.get(0).asDifference(gap, ComparisonJudge.differenceOf(uses.get(0).unit()));
    double shown = Judge.rounded(Judge.inUnit(gap, difference, unit), Math.min(number.step(), 0.1));
    String expected = judge.both(uses.get(0), second.get());
    sentence.add(
        number.start(),
        other.get().end(),
        Kind.COMPARISON,
        shown <= number.low() + 1e-9 ? Finding.SUPPORTED : Finding.CONTRADICTED,
        sentence.text().substring(number.start(), other.get().end()),
        expected,
        uses.get(0).evidence(),
        uses.get(0).label() + ": " + expected);
    return true;
  }

  private static final Pattern EARLY =
      Pattern.compile(
          "(?is)^\\s*(?<word>too early|too late|early|late|too soon|off|after|before|past)\\b(?!\\s+(?:the (?!oven|cavity|air|true|real|probe|thermo)|in\\b)).*");

  /** "It beeps 48 seconds early": the difference of two times of one product. */
  private void readEarly(SentenceClaims sentence) {
    for (NumberPhrase number : sentence.freeNumbers()) {
      boolean time = number.unit() != null && number.unit().dimension() == Dimension.TIME;
      Matcher matcher = EARLY.matcher(Wording.after(sentence.text(), number.end()));
      String product = sentence.context().productAt(number.start(), number.end());
      if (time && product != null && matcher.matches()) {
        early(sentence, number, number.end() + matcher.end("word"), product);
      }
    }
  }

  private void early(SentenceClaims sentence, NumberPhrase number, int end, String product) {
    List<Figure> times =
        figures.of(product).stream()
            .filter(f -> f.unit() == Unit.SECOND && f.value() != null && f.batch() == null)
            .toList();
    Optional<String> fits = Optional.empty();
    for (Figure a : times) {
      for (Figure b : times) {
        boolean pair = a != b && Objects.equals(a.test(), b.test());
        double gap = Objects.requireNonNull(a.value()) - Objects.requireNonNull(b.value());
        if (pair && gap > 0) {
          Judge.Ruling ruling = Judge.rule(number, a.asDifference(gap, Unit.SECOND), number.unit());
          if (ruling.finding() == Finding.SUPPORTED) {
            fits = Optional.of(a.label() + " less " + b.label() + " is " + ruling.expected());
          }
        }
      }
    }
    String said = sentence.text().substring(number.start(), end).strip();
    sentence.add(
        number.start(),
        end,
        Kind.COMPARISON,
        fits.isPresent() ? Finding.SUPPORTED : Finding.UNCLEAR,
        said,
        fits.orElse(null),
        times.stream().flatMap(f -> f.evidence().stream()).limit(2).toList(),
        figures.name(product) + ": " + fits.orElse("no two of its times differ by this"));
  }

  private void implicit(SentenceClaims sentence, NumberPhrase number, String word) {
    int end = sentence.text().indexOf(word.substring(1), number.end());
    end = end < 0 ? number.end() : Math.min(sentence.text().length(), end + word.length() - 1);
    List<String> pair = ComparedProducts.pair(sentence, number.start());
    String said = sentence.text().substring(number.start(), end).strip();
    boolean time = number.unit() != null && number.unit().dimension() == Dimension.TIME;
    Adjective adjective =
        Wording.is(word, "later|slower|behind") && time
            ? Vocabulary.adjective("long")
            : Wording.is(word, "earlier|sooner|ahead") && time
                ? Vocabulary.adjective(Stems.of("fast"))
                : Vocabulary.adjective(Stems.of(word));
    if (adjective == null || Wording.is(word, "more|less|fewer|higher|lower|behind|ahead")) {
      adjective = ComparedFigures.byUnit(number, Wording.before(sentence.text(), number.start()));
    }
    if (pair.size() < 2 || adjective == null) {
      open(sentence, number.start(), end, said);
      return;
    }
    if (word.equals("behind") && !time) {
      adjective = adjective.towards(ComparisonJudge.turned(adjective.direction()));
    }
    Focus focus = sentence.context().at(number.start(), end);
    Outcome first = null;
    for (String other : pair.subList(1, pair.size())) {
      List<Figure> uses =
          figuresCompared.uses(focus, adjective, Stems.of(word), pair.get(0), Optional.of(number));
      if (uses.isEmpty()) {
        continue;
      }
      if (uses.get(0).kind() == Figure.Kind.TEST_SCORE && !focus.inClause()) {
        uses = withTotal(uses, pair.get(0));
      }
      Compared compared = new Compared(pair.get(0), other, end, figures.name(other));
      for (Figure use : uses.subList(1, uses.size())) {
        Outcome total = judge.outcome(use, compared, adjective.direction(), Optional.of(number));
        if (total.finding() == Finding.SUPPORTED) {
          first = total;
        }
      }
      Outcome outcome =
          judge.outcome(uses.get(0), compared, adjective.direction(), Optional.of(number));
      Outcome turned =
          judge.outcome(
              uses.get(0),
              compared,
              ComparisonJudge.turned(adjective.direction()),
              Optional.of(number));
      boolean either =
          ComparedProducts.summing(sentence, number.start())
              || Wording.is(word, "more|less|fewer|higher|lower");
      Outcome better =
          outcome.finding() == Finding.SUPPORTED
                  || !either
                  || turned.why().contains("other way round")
              ? outcome
              : turned;
      if (first == null || better.finding() == Finding.SUPPORTED) {
        first = better;
      }
    }
    if (number.scale() == Scale.MONEY && isCut(pair.get(0), number.low())) {
      first =
          new Outcome(
              Finding.SUPPORTED,
              null,
              List.of("prices of " + figures.name(pair.get(0))),
              "against an earlier price");
    }
    if (first == null) {
      open(sentence, number.start(), end, said);
      return;
    }
    sentence.add(
        number.start(),
        end,
        Kind.COMPARISON,
        first.finding(),
        said,
        first.expected(),
        first.evidence(),
        first.why());
  }

  /** "€10 less, too": less than it cost before. */
  private boolean isCut(String product, double amount) {
    return figures.of(product).stream()
        .filter(f -> f.kind() == Figure.Kind.PRICE && f.value() != null)
        .anyMatch(
            now ->
                figures.earlierPrices(product).stream()
                    .anyMatch(
                        then ->
                            Math.abs(
                                    Math.abs(
                                            Objects.requireNonNull(then.value())
                                                - Objects.requireNonNull(now.value()))
                                        - amount)
                                < 1e-6));
  }

  /** Where no test is named beside it, a score may be the total. */
  private List<Figure> withTotal(List<Figure> uses, String product) {
    List<Figure> all = new ArrayList<>(uses);
    figures.of(product).stream().filter(f -> f.kind() == Figure.Kind.TOTAL).forEach(all::add);
    return all;
  }

  private static void open(SentenceClaims sentence, int start, int end, String said) {
    sentence.add(
        start,
        end,
        Kind.COMPARISON,
        Finding.UNCLEAR,
        said,
        null,
        List.of(),
        "the text does not say what it is compared with");
  }
}
