package ovenproof.proof;

import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.Extremes.Place;
import ovenproof.proof.GroupReader.Group;
import ovenproof.proof.Mentions.ProductMention;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;
import ovenproof.proof.Vocabulary.Adjective;
import ovenproof.proof.Vocabulary.Direction;

/**
 * "The hottest we measured", "most even", "our best". Supported only where the tier margin
 * separates the product from all others, within what was tested and what the sentence narrows it
 * to.
 */
final class SuperlativeReader implements ClaimReader {
  private static final Pattern NEGATED =
      Pattern.compile(
          "(?is).*\\b(not|never|nor|none|isn['’]t|wasn['’]t|aren['’]t|hardly|far from|nowhere near|\\w+n['’]t)\\s+(?:the\\s+|our\\s+|its\\s+|quite\\s+|by any means\\s+|among\\s+)*$");
  private static final Pattern ORDINAL_BEFORE =
      Pattern.compile("(?is).*\\b(second|third|fourth|fifth|sixth|seventh|2nd|3rd|4th)[\\s-]+$");
  private static final Map<String, Integer> PLACES =
      Map.of(
          "second", 2, "2nd", 2, "third", 3, "3rd", 3, "fourth", 4, "4th", 4, "fifth", 5, "sixth",
          6, "seventh", 7);

  private static final Pattern PRICE_LIMIT =
      Pattern.compile(
          "(?is)^[^.;,]{0,40}?\\b(under|below|less than|for less than|cheaper than|up to)\\s+$");

  private final Figures figures;
  private final FigureSearch search;
  private final Anchors anchors;

  SuperlativeReader(Figures figures, FigureSearch search) {
    this.figures = figures;
    this.search = search;
    this.anchors = new Anchors(search);
  }

  @Override
  public void read(SentenceClaims sentence) {
    boolean ownResults =
        sentence.context().named().isEmpty() && OWN_RESULTS.matcher(sentence.text()).matches();
    if (sentence.isQuestion() || ownResults) {
      return;
    }
    for (SuperlativePhrase phrase : SuperlativePhrase.in(sentence.text())) {
      if (sentence.isFree(phrase.start(), phrase.end())) {
        read(sentence, phrase);
      }
    }
  }

  /** "Best single result: cakes", "Weakest: toast": among a product's own results. */
  private static final Pattern OWN_RESULTS =
      Pattern.compile(
          "(?is)[\\s*•-]*(?:its |the )?(?:best|worst|strongest|weakest|highest|lowest)(?: single (?:results?|scores?|tests?|marks?)\\s*(?::|is\\b|was\\b|are\\b)|(?: results?| scores?| tests?| marks?)?\\s*:).*");

  private void read(SentenceClaims sentence, SuperlativePhrase phrase) {
    Optional<String> marked = mark(sentence.text(), phrase);
    if (marked.isPresent()) {
      claim(sentence, phrase, marked.get(), null);
      return;
    }
    boolean mark = figures.isMark(phrase.stem());
    Adjective adjective = mark ? null : phrase.adjective(sentence.text());
    if (adjective != null || mark) {
      claim(sentence, phrase, phrase.stem(), adjective);
    }
  }

  private static final Pattern SUBJECT =
      Pattern.compile("(?is).*\\b(\\p{L}+)\\s+(?:is|are|was|were)\\s+(?:the\\s+)?$");

  /** "Our tasters liked the Hornbeam's turkey best". */
  private static final Pattern LIKED =
      Pattern.compile("(?is).*\\b(?:likes?|liked|loved?|loves|enjoyed|preferred)\\b[^.;]{0,40}$");

  private static final String LIKING = Stems.of("liking");

  /** "The best controls": the mark that the noun names. */
  private Optional<String> mark(String text, SuperlativePhrase phrase) {
    if (!phrase.isOfQuality()) {
      return Optional.empty();
    }
    if (LIKED.matcher(Wording.before(text, phrase.start())).matches() && isMark(LIKING)) {
      return Optional.of(LIKING);
    }
    Matcher subject = SUBJECT.matcher(Wording.before(text, phrase.start()));
    if (subject.matches() && isMark(Stems.of(subject.group(1)))) {
      return Optional.of(Stems.of(subject.group(1)));
    }
    return Arrays.stream(phrase.nouns()).map(Stems::of).filter(this::isMark).findFirst();
  }

  private boolean isMark(String stem) {
    return stem.length() > 2 && figures.isMark(stem);
  }

  private void claim(
      SentenceClaims sentence,
      SuperlativePhrase phrase,
      String stem,
      @Nullable Adjective adjective) {
    String product = SuperlativeSubject.of(sentence.context(), phrase.start(), phrase.end());
    if (product == null) {
      return;
    }
    Optional<NumberPhrase> limit = priceLimit(sentence, phrase.end());
    int to = limit.map(NumberPhrase::end).orElse(phrase.end());
    String said = sentence.text().substring(phrase.start(), to).strip();
    Focus focus = sentence.context().at(phrase.start(), phrase.end());
    List<Figure> uses = uses(sentence, phrase, focus, stem, adjective, product);
    if (uses.isEmpty() && adjective != null && adjective.takes().isEmpty()) {
      return;
    }
    if (uses.isEmpty()) {
      sentence.add(
          phrase.start(),
          to,
          Kind.SUPERLATIVE,
          Finding.UNSUPPORTED,
          said,
          null,
          List.of(),
          "nothing that was measured says this");
      return;
    }
    sentence.compares(uses.get(0));
    Direction plain = phrase.direction(Vocabulary.light(focus, adjective, stem));
    boolean turned = phrase.isOfQuality() && Vocabulary.isLessBetter(uses.get(0).take());
    Direction direction = turned ? ComparisonJudge.turned(plain) : plain;
    List<Place> places =
        uses.stream().map(use -> place(sentence, phrase, use, direction, limit)).toList();
    Place first = places.get(0);
    boolean agree = places.stream().allMatch(o -> o.finding() == first.finding());
    Finding finding =
        agree
            ? Emphasis.sharpened(sentence, phrase.start(), phrase.end(), first.finding())
            : Finding.UNCLEAR;
    String why =
        agree
            ? label(uses.get(0)) + ": " + first.why()
            : "the words fit several figures, and they differ";
    if (finding == Finding.CONTRADICTED
        && (isDoubtful(sentence, phrase)
            || otherMeant(sentence, phrase, uses.get(0), direction, limit))) {
      finding = Finding.UNCLEAR;
    }
    sentence.add(
        phrase.start(),
        to,
        Kind.SUPERLATIVE,
        finding,
        said,
        first.expected(),
        uses.get(0).evidence(),
        why);
  }

  /** How many characters a number may stand off a superlative that it goes with. */
  private static final int NEAR = 40;

  /** The unit of a number in a stretch, in the same clause as far as marks show. */
  private static Optional<Unit> unitNear(SentenceClaims sentence, int from, int to) {
    return sentence.numbers().stream()
        .filter(n -> n.start() >= from && n.end() <= to)
        .filter(n -> n.unit() != null && n.unit() != Unit.PERCENT)
        .map(n -> java.util.Objects.requireNonNull(n.unit()))
        .findFirst();
  }

  /** "It overshoots by 32 K, by far the worst": of what the number before speaks. */
  private Optional<Figure> measured(
      SentenceClaims sentence, SuperlativePhrase phrase, String product) {
    return sentence.numbers().stream()
        .filter(n -> n.end() <= phrase.start() && phrase.start() - n.end() < 40)
        .filter(n -> n.unit() != null || n.scale() == NumberPhrase.Scale.DEGREES)
        .reduce((a, b) -> b)
        .map(
            n ->
                search.best(
                    sentence.context().at(n.start(), n.end()),
                    product,
                    NumberKinds.kindOf(sentence, n)))
        .filter(best -> best.size() == 1 && Vocabulary.isLessBetter(best.get(0).take()))
        .map(best -> best.get(0));
  }

  private static boolean isDoubtful(SentenceClaims sentence, SuperlativePhrase phrase) {
    boolean carried =
        sentence.context().mentions().isEmpty() && !sentence.context().isFirmAt(phrase.start());
    boolean narrowed = GroupReader.at(sentence, phrase.start(), phrase.end()).isPresent();
    return carried || !narrowed && isOfSome(sentence.text(), phrase.end());
  }

  /** "It" may be another product of the sentences before, of which the words hold. */
  private boolean otherMeant(
      SentenceClaims sentence,
      SuperlativePhrase phrase,
      Figure use,
      Direction direction,
      Optional<NumberPhrase> limit) {
    if (!sentence.context().named().isEmpty()) {
      return false;
    }
    Set<String> others = new LinkedHashSet<>(sentence.context().around());
    return search.field(use).stream()
        .filter(f -> others.contains(f.product()) && !f.product().equals(use.product()))
        .map(f -> place(sentence, phrase, f, direction, limit))
        .anyMatch(p -> p.finding() == Finding.SUPPORTED || p.finding() == Finding.UNCLEAR);
  }

  /** What is compared; a number close behind tells by its unit: "the shortest is 84 cm". */
  private List<Figure> uses(
      SentenceClaims sentence,
      SuperlativePhrase phrase,
      Focus focus,
      String stem,
      @Nullable Adjective adjective,
      String product) {
    @Nullable Figure before = sentence.compared();
    if (before != null && phrase.isOfSize() && !phrase.hasNoun()) {
      return search.field(before).stream().filter(f -> f.product().equals(product)).toList();
    }
    if (adjective != null && adjective.takes().isEmpty()) {
      return named(focus, product);
    }
    Optional<Figure> anchored = anchors.of(sentence, phrase, adjective, product);
    if (anchored.isPresent()) {
      return List.of(anchored.get());
    }
    Optional<Figure> measured =
        phrase.isOfQuality() ? measured(sentence, phrase, product) : Optional.empty();
    if (measured.isPresent()) {
      return List.of(measured.get());
    }
    Optional<Unit> unit =
        unitNear(sentence, phrase.end(), phrase.end() + NEAR)
            .or(() -> unitNear(sentence, phrase.start() - NEAR, phrase.start()));
    Adjective meant = Vocabulary.light(focus, adjective, stem);
    return search.uses(focus, meant, stem, product, unit);
  }

  /** "The best of the three", "highest among these": a field that the text has narrowed. */
  private static boolean isOfSome(String text, int end) {
    return Wording.is(
            Wording.after(text, end),
            "(?is)^[^.;,]{0,15}?\\b(?:of|among) (?:the|these|those|our) ?(?:two|three|four|five|pair|others|finishers|rest)?\\b.*")
        && !Wording.is(
            Wording.after(text, end),
            "(?is)^[^.;,]{0,15}?\\bof (?:all|all the|the|our) (?:eight|lot|field|bunch|test|ovens)\\b.*");
  }

  /** "The juiciness, at 5.9, was the highest": what was measured is named in the sentence. */
  private List<Figure> named(Focus focus, String product) {
    return search
        .best(
            focus,
            product,
            f -> !f.isScore() && f.kind() != Figure.Kind.NAMEPLATE && f.batch() == null)
        .stream()
        .filter(f -> f.words().stream().anyMatch(w -> focus.weight(w) >= 0.9))
        .toList();
  }

  private String label(Figure figure) {
    String test =
        figure.test() == null || figure.kind() == Figure.Kind.TEST_SCORE
            ? ""
            : figures.campaign().method().test(figure.test()).map(t -> t.name() + ", ").orElse("");
    return test + figure.label() + (figure.isScore() ? " score" : "");
  }

  private Place place(
      SentenceClaims sentence,
      SuperlativePhrase phrase,
      Figure use,
      Direction direction,
      Optional<NumberPhrase> limit) {
    Optional<Group> group = GroupReader.at(sentence, phrase.start(), phrase.end());
    if (group.isPresent() && !group.get().products().contains(use.product())) {
      return new Place(
          Finding.CONTRADICTED,
          group.get().words(),
          figures.name(use.product()) + " is not among them: " + group.get().words());
    }
    Extremes extremes =
        new Extremes(
            new Separation(field(sentence, phrase, use, limit, group), direction), figures::name);
    String before = Wording.before(sentence.text(), phrase.start());
    Matcher ordinal = ORDINAL_BEFORE.matcher(before);
    if (ordinal.matches()) {
      return extremes.inPlace(
          use, PLACES.getOrDefault(ordinal.group(1).toLowerCase(Locale.ROOT), 2));
    }
    Place plain = phrase.isAmong() ? extremes.amongFirst(use) : extremes.first(use);
    return NEGATED.matcher(before).matches() ? plain.denied() : plain;
  }

  private List<Figure> field(
      SentenceClaims sentence,
      SuperlativePhrase phrase,
      Figure use,
      Optional<NumberPhrase> limit,
      Optional<Group> group) {
    String text = sentence.text();
    boolean finishers =
        FINISHERS.matcher(Wording.after(text, phrase.end())).matches()
            || FINISHERS.matcher(text.substring(0, phrase.start())).matches();
    Optional<String> except = except(sentence, phrase.end());
    List<String> joint = sentence.context().lists().listedBefore(phrase.start());
    boolean shared = joint.size() > 1 && joint.contains(use.product());
    return search.field(use).stream()
        .filter(f -> limit.isEmpty() || costsAtMost(f.product(), limit.get().low()))
        .filter(f -> !finishers || f.value() != null)
        .filter(f -> group.isEmpty() || group.get().products().contains(f.product()))
        .filter(f -> !shared || f.product().equals(use.product()) || !joint.contains(f.product()))
        .filter(f -> except.isEmpty() || !f.product().equals(except.get()))
        .toList();
  }

  /** "The slowest of those that got there": a bound is no result. */
  private static final Pattern FINISHERS =
      Pattern.compile(
          "(?is)^[^.;]{0,20}?\\b(?:of|among) (?:those|the ones|the \\w+) (?:that|which|who)\\b[^.;]{0,20}?\\b(?:got|made|finished|did|managed|reached|succeeded|completed).*");

  private static final Pattern EXCEPT =
      Pattern.compile(
          "(?is)^[^.;]{0,30}?[\\s,]*\\b(but for|except(?: for)?|apart from|after|other than|bar|behind|save for)\\s+(?:the\\s+)?$");

  /** "The slowest but for the Larch", "the fastest after Whimbrel". */
  private static Optional<String> except(SentenceClaims sentence, int end) {
    return sentence.context().mentions().stream()
        .filter(m -> m.start() >= end)
        .findFirst()
        .filter(m -> EXCEPT.matcher(sentence.text().substring(end, m.start())).matches())
        .map(ProductMention::product);
  }

  private boolean costsAtMost(String product, double most) {
    return figures.of(product).stream()
        .anyMatch(
            f -> f.kind() == Figure.Kind.PRICE && f.value() != null && f.value() < most + 1e-9);
  }

  private static Optional<NumberPhrase> priceLimit(SentenceClaims sentence, int end) {
    return sentence.freeNumbers().stream()
        .filter(n -> n.scale() == NumberPhrase.Scale.MONEY && n.end() > end)
        .filter(
            n ->
                n.hedge() == Hedge.UNDER || n.hedge() == Hedge.AT_MOST
                    ? n.start() >= end && n.start() - end < 40
                    : n.start() >= end
                        && PRICE_LIMIT.matcher(sentence.text().substring(end, n.start())).matches())
        .findFirst();
  }
}
