package ovenproof.proof;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.proof.Mentions.ProductMention;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;
import ovenproof.proof.Vocabulary.Adjective;
import ovenproof.proof.Vocabulary.Direction;

/**
 * "The hottest we measured", "most even", "our best". Supported only where the tier margin
 * separates the product from all others, within what was tested.
 */
final class SuperlativeReader implements ClaimReader {
  private static final Pattern SUPERLATIVE =
      Pattern.compile(
          "\\b(?<among>(?:among|amongst|one of) (?:the|our) )?(?:(?<much>most|least)\\s+(?<long>\\p{L}+)|(?<short>\\p{L}{2,}est|best|worst))\\b(?<noun>(?:-\\p{L}+|\\s+\\p{L}+){0,2})",
          Pattern.CASE_INSENSITIVE);

  /** Ways of speaking that compare nothing: "at best", "your best bet", "best to". */
  private static final Pattern IDIOM_BEFORE =
      Pattern.compile(
          "(?is).*\\b(at|your|my|his|her|do|does|did|do its|did its|does its|their|next|at the very|tasted|(?:than|as|to|from|between|with|behind|after|of|by) (?:the|our)|between the \\p{L}+ and the)\\s+$");

  private static final Pattern IDIOM_AFTER =
      Pattern.compile(
          "(?is)^\\s*(to\\s+(?!preheat|toast|reach|heat|cook|bake|roast)|practice|before|known|way|bet\\b|of luck|if\\b|when\\b|seller|in mind|(?:and (?:the )?\\p{L}+ )?(?:spots?|places?|corners?|points?|parts?|needles?|probes?|days?|runs?|setting|temperature of the)\\b).*");
  private static final Pattern NEGATED =
      Pattern.compile(
          "(?is).*\\b(not|never|nor|none|isn['’]t|wasn['’]t|aren['’]t|hardly|far from|nowhere near|\\w+n['’]t)\\s+(?:the\\s+|our\\s+|its\\s+|quite\\s+|by any means\\s+|among\\s+)*$");
  private static final Pattern ORDINAL_BEFORE =
      Pattern.compile("(?is).*\\b(second|third|fourth|fifth|sixth|seventh|2nd|3rd|4th)[\\s-]+$");
  private static final Pattern PRICE_LIMIT =
      Pattern.compile(
          "(?is)^[^.;,]{0,40}?\\b(under|below|less than|for less than|cheaper than|up to)\\s+$");

  private final Figures figures;
  private final FigureSearch search;

  SuperlativeReader(Figures figures, FigureSearch search) {
    this.figures = figures;
    this.search = search;
  }

  @Override
  public void read(SentenceClaims sentence) {
    Matcher matcher = SUPERLATIVE.matcher(sentence.text());
    int from = 0;
    while (!sentence.isQuestion() && matcher.find(from)) {
      int end = matcher.group("long") != null ? matcher.end("long") : matcher.end("short");
      from = end;
      if (sentence.isFree(matcher.start(), end)
          && !isIdiom(sentence.text(), matcher.start(), end)) {
        read(sentence, matcher, end);
      }
    }
  }

  /** "Its hottest side reached 73 °C", "Hottest side: 73 °C": what is measured, not who leads. */
  private static boolean isLabel(String text, int start, int end) {
    boolean owned =
        Wording.is(Wording.before(text, start), "(?is).*(?:\\bits|\\btheir|['’]s)\\s+$")
            || Wording.before(text, start).isBlank()
            || Wording.is(Wording.before(text, start), "(?is).*[,;:(*•-]\\s*$");
    return owned
        && Wording.is(
            Wording.after(text, end),
            "(?is)^\\s+(?:\\p{L}+\\s+){0,2}?(?:sides?|outside|skin|surface|needle|temperature|wall|point)\\s*(?:[:,=]|reached|was|got|gets|is|at|hit)?\\s*(?:to |at |only |just |about )*[\\d~].*");
  }

  private static boolean isIdiom(String text, int start, int end) {
    return Wording.is(Wording.before(text, start), "(?is).*\\b(neither|both)\\b[^,;.]{0,25}$")
        || isLabel(text, start, end)
        || IDIOM_BEFORE.matcher(text.substring(0, start)).matches()
        || IDIOM_AFTER.matcher(text.substring(end)).matches();
  }

  private void read(SentenceClaims sentence, Matcher matcher, int end) {
    String word =
        (matcher.group("long") != null ? matcher.group("long") : matcher.group("short"))
            .toLowerCase(Locale.ROOT);
    String stem = Stems.of(word);
    Adjective adjective = isMark(stem) ? null : adjective(matcher, word, stem);
    if (adjective != null
        && Wording.is(word, "(hott|warm|cool|cold)est")
        && isOutside(sentence, end)) {
      adjective = new Adjective(adjective.direction(), List.of("reading"));
    }
    Optional<String> marked = best(sentence.text(), matcher, word);
    if (marked.isPresent()) {
      claim(sentence, matcher, end, marked.get(), null);
      return;
    }
    if (adjective != null || isMark(stem)) {
      claim(sentence, matcher, end, stem, adjective);
    }
  }

  /** "The highest price", "the shortest cord", "the most electricity": the noun says what of. */
  private static @Nullable Adjective adjective(Matcher matcher, String word, String stem) {
    boolean size = Wording.is(word, "(high|low|bigg|small|larg|long|short|great|wid|strong)est");
    if (size) {
      Direction direction =
          Wording.is(word, "(low|small|short)est") ? Direction.LOW : Direction.HIGH;
      for (String after : matcher.group("noun").trim().split("[\\s-]+")) {
        Adjective noun = Vocabulary.noun(Stems.of(after.toLowerCase(Locale.ROOT)));
        if (noun != null) {
          return noun.towards(direction);
        }
      }
      if (Wording.is(word, "(high|low)est")) {
        return matcher.group("noun").toLowerCase(Locale.ROOT).contains("scor")
            ? new Adjective(direction, List.of("score"))
            : new Adjective(direction, List.of());
      }
    }
    Adjective adjective = Vocabulary.adjective(stem);
    return adjective == null && matcher.group("much") != null ? Vocabulary.noun(stem) : adjective;
  }

  private static final Pattern OUTSIDE =
      Pattern.compile(
          "(?is)^\\s*(?:\\p{L}+\\s+){0,2}?(?:sides?|outside|skin|surface|flank|casing|exterior|walls?|housing)\\b.*");

  /** "The hottest side", or a sentence that speaks of sides. */
  private static boolean isOutside(SentenceClaims sentence, int end) {
    return OUTSIDE.matcher(sentence.text().substring(end)).matches();
  }

  private static final Pattern SUBJECT =
      Pattern.compile("(?is).*\\b(\\p{L}+)\\s+(?:is|are|was|were)\\s+(?:the\\s+)?$");

  /** "The best controls": the mark that the noun names. */
  private Optional<String> best(String text, Matcher matcher, String word) {
    Matcher subject = SUBJECT.matcher(Wording.before(text, matcher.start()));
    if (word.equals("best") && subject.matches()) {
      String stem = Stems.of(subject.group(1).toLowerCase(Locale.ROOT));
      if (stem.length() > 2 && isMark(stem)) {
        return Optional.of(stem);
      }
    }
    return word.equals("best")
        ? java.util.Arrays.stream(matcher.group("noun").trim().split("[\\s-]+"))
            .map(w -> Stems.of(w.toLowerCase(Locale.ROOT)))
            .filter(s -> s.length() > 2 && isMark(s))
            .findFirst()
        : Optional.empty();
  }

  private boolean isMark(String stem) {
    return figures.isMark(stem);
  }

  private void claim(
      SentenceClaims sentence,
      Matcher matcher,
      int end,
      String stem,
      @Nullable Adjective adjective) {
    String product = product(sentence.context(), matcher.start(), end);
    if (product == null) {
      return;
    }
    Optional<NumberPhrase> limit = priceLimit(sentence, end);
    int to = limit.map(NumberPhrase::end).orElse(end);
    String said = sentence.text().substring(matcher.start(), to).strip();
    Focus focus = sentence.context().at(matcher.start(), end);
    List<Figure> uses =
        adjective != null && adjective.takes().isEmpty()
            ? named(focus, product)
            : search.uses(focus, Vocabulary.light(focus, adjective, stem), stem, product);
    if (uses.isEmpty() && adjective != null && adjective.takes().isEmpty()) {
      return;
    }
    if (uses.isEmpty()) {
      sentence.add(
          matcher.start(),
          to,
          Kind.SUPERLATIVE,
          Finding.UNSUPPORTED,
          said,
          null,
          List.of(),
          "nothing that was measured says this");
      return;
    }
    Adjective meant = Vocabulary.light(focus, adjective, stem);
    Direction direction = meant == null ? Direction.HIGH : meant.direction();
    if ("least".equalsIgnoreCase(matcher.group("much"))) {
      direction = direction == Direction.HIGH ? Direction.LOW : Direction.HIGH;
    }
    List<ComparisonOutcome> outcomes = new java.util.ArrayList<>();
    for (Figure use : uses) {
      outcomes.add(outcome(sentence, matcher, end, use, direction, limit));
    }
    ComparisonOutcome first = outcomes.get(0);
    boolean agree = outcomes.stream().allMatch(o -> o.finding == first.finding);
    boolean carried = sentence.context().mentions().isEmpty() && !sentence.context().isFirm();
    boolean doubtful =
        first.finding == Finding.CONTRADICTED && (carried || isOfSome(sentence.text(), end));
    sentence.add(
        matcher.start(),
        to,
        Kind.SUPERLATIVE,
        agree && !doubtful ? first.finding : Finding.UNCLEAR,
        said,
        first.expected,
        uses.get(0).evidence(),
        agree
            ? label(uses.get(0)) + ": " + first.why
            : "the words fit several figures, and they differ");
  }

  /** "The best of the three", "highest among these": a field that the text has narrowed. */
  private static boolean isOfSome(String text, int end) {
    return Wording.is(
            Wording.after(text, end),
            "(?is)^[^.;,]{0,15}?\\b(?:of|among) (?:the|these|those|our) ?(?:two|three|four|five|pair|others|finishers|rest)?\\b.*")
        && !Wording.is(
            Wording.after(text, end),
            "(?is)^[^.;,]{0,15}?\\bof (?:the|our) (?:eight|lot|field|bunch|test|ovens)\\b.*");
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

  private ComparisonOutcome outcome(
      SentenceClaims sentence,
      Matcher matcher,
      int end,
      Figure use,
      Direction direction,
      Optional<NumberPhrase> limit) {
    List<Figure> field = search.field(use);
    if (limit.isPresent()) {
      double most = limit.get().low();
      field = field.stream().filter(f -> costsAtMost(f.product(), most)).toList();
    }
    if (FINISHERS.matcher(Wording.after(sentence.text(), end)).matches()) {
      field = field.stream().filter(f -> f.value() != null).toList();
    }
    Optional<String> except = except(sentence, end);
    if (except.isPresent()) {
      field = field.stream().filter(f -> !f.product().equals(except.get())).toList();
    }
    Separation separation = new Separation(field, direction);
    String before = Wording.before(sentence.text(), matcher.start());
    Matcher ordinal = ORDINAL_BEFORE.matcher(before);
    if (ordinal.matches()) {
      return place(
          use, separation, PLACES.getOrDefault(ordinal.group(1).toLowerCase(Locale.ROOT), 2));
    }
    ComparisonOutcome plain =
        matcher.group("among") != null
            ? amongBest(use, separation)
            : ComparisonOutcome.of(extreme(use, separation, figures::name));
    return NEGATED.matcher(before).matches() ? plain.denied() : plain;
  }

  private static final java.util.Map<String, Integer> PLACES =
      java.util.Map.of(
          "second", 2, "2nd", 2, "third", 3, "3rd", 3, "fourth", 4, "4th", 4, "fifth", 5, "sixth",
          6, "seventh", 7);

  /** "The second fastest": its place by figures, and whether its neighbours are separated. */
  private ComparisonOutcome place(Figure use, Separation separation, int stated) {
    List<Figure> ordered = separation.ordered();
    int at = -1;
    for (int i = 0; i < ordered.size(); i++) {
      if (ordered.get(i).product().equals(use.product())) {
        at = i;
      }
    }
    if (at < 0 || stated > ordered.size()) {
      return new ComparisonOutcome(Finding.UNSUPPORTED, null, "it was not measured");
    }
    Figure there = ordered.get(stated - 1);
    String expected = figures.name(there.product()) + " " + ComparisonJudge.shownOrBound(there);
    if (at != stated - 1) {
      boolean tie = separation.signed(there) == separation.signed(use);
      return new ComparisonOutcome(
          tie ? Finding.UNCLEAR : Finding.CONTRADICTED, expected, "by figures that is " + expected);
    }
    boolean apart =
        (at == 0 || separation.separated(ordered.get(at - 1), use))
            && (at == ordered.size() - 1 || separation.separated(use, ordered.get(at + 1)));
    return new ComparisonOutcome(
        apart || use.isSingle() ? Finding.SUPPORTED : Finding.UNCLEAR,
        expected,
        apart || use.isSingle()
            ? "separated from its neighbours"
            : "by figures it is, but not separated from its neighbours");
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

  /** "The fastest was Whimbrel", "Whimbrel is the fastest, Larch the slowest". */
  private static @Nullable String product(Context context, int start, int end) {
    String before = null;
    for (ProductMention mention : context.mentions()) {
      if (mention.start() < start) {
        before = mention.product();
      } else if (mention.start() >= end && !mention.isPronoun()) {
        String between = context.sentence().text().substring(end, mention.start());
        if (Wording.is(
            between,
            "(?is)(?:,\\s*(?:at|with)\\s[^,;]{1,25},\\s*(?:is|was)\\s+(?:the\\s+)?)|(?:[:—–]|\\s-)\\s*(the\\s+)?|\\s*(?:in|on|for|with|at|from|by)\\s+(the\\s+)?|\\s+(?:one|oven|model)\\s+(?:the\\s+)?|[^.;,]{0,45}?\\b(was|is|were|remains|goes to|went to|came from|belongs to|being|award)\\s+(the\\s+)?")) {
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

  private ComparisonOutcome amongBest(Figure use, Separation separation) {
    List<Figure> ordered = separation.ordered();
    if (ordered.isEmpty() || Separation.level(use) == null) {
      return new ComparisonOutcome(Finding.UNSUPPORTED, null, "it was not measured");
    }
    Figure best = ordered.get(0);
    boolean apart = separation.separated(best, use);
    String expected = figures.name(best.product()) + " " + ComparisonJudge.shownOrBound(best);
    return new ComparisonOutcome(
        apart ? Finding.CONTRADICTED : Finding.SUPPORTED,
        expected,
        apart
            ? "separated from the first, " + expected
            : "not separated from the first, " + expected);
  }

  private record ComparisonOutcome(Finding finding, @Nullable String expected, String why) {
    /** What "not the fastest" is worth. */
    ComparisonOutcome denied() {
      Finding turned =
          switch (finding) {
            case SUPPORTED -> Finding.CONTRADICTED;
            case CONTRADICTED -> Finding.SUPPORTED;
            case UNCLEAR, UNSUPPORTED -> finding;
          };
      return new ComparisonOutcome(turned, expected, why);
    }

    static ComparisonOutcome of(Extreme extreme) {
      return new ComparisonOutcome(extreme.finding(), extreme.expected(), extreme.why());
    }
  }

  /** Whether a figure is the extreme of its field, and surely so. */
  record Extreme(Finding finding, @Nullable String expected, String why) {}

  static Extreme extreme(Figure use, Separation separation, UnaryOperator<String> names) {
    List<Figure> ordered = separation.ordered();
    if (Separation.level(use) == null || ordered.size() < 2) {
      return new Extreme(Finding.UNSUPPORTED, null, "there is nothing to compare it with");
    }
    Figure first = ordered.get(0);
    String lead = names.apply(first.product()) + " " + ComparisonJudge.shownOrBound(first);
    if (!first.product().equals(use.product())
        && separation.signed(first) > separation.signed(use)) {
      return new Extreme(
          Finding.CONTRADICTED,
          lead,
          "that is "
              + lead
              + "; "
              + names.apply(use.product())
              + " had "
              + ComparisonJudge.shownOrBound(use));
    }
    for (Figure other : ordered) {
      boolean same = other.product().equals(use.product());
      boolean bound = !use.isSingle() && !separation.separated(use, other);
      if (use.isSingle() && !same && separation.signed(use) == separation.signed(other)) {
        bound = true;
      }
      if (!same && bound) {
        return new Extreme(
            Finding.UNCLEAR,
            lead,
            "first by figures, but not separated from "
                + names.apply(other.product())
                + " ("
                + ComparisonJudge.shownOrBound(other)
                + "): say \"among\"");
      }
    }
    return new Extreme(
        Finding.SUPPORTED, lead, "separated from all others that were tested: " + lead);
  }
}
