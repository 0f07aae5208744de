package ovenproof.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.Mentions.ProductMention;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;
import ovenproof.proof.Vocabulary.Adjective;
import ovenproof.proof.Vocabulary.Direction;

/**
 * "Alder was two minutes faster than Siskin", "twice as fast as", "3 points behind", "hotter than
 * average".
 */
final class ComparisonReader implements ClaimReader {
  private static final Pattern THAN =
      Pattern.compile(
          "\\b(?:(?<much>more|less|fewer)\\s+(?<long>(?!than\\b)\\p{L}+)|(?<short>(?!(?:aft|und|ov|oth|anoth|eith|neith|wheth|rath|nev|ev|togeth|wat|numb|pap|pow|cov|discov|rememb|dinn|butt|may|temp|tow)er)\\p{L}+er|worse|more|less))\\s+"
              + "(?:(?!(?:(?!over|after|under)\\p{L}*er|more|less|worse|than)\\b)\\p{L}+\\s+){0,4}?than\\b",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern AS_AS =
      Pattern.compile(
          "\\bas\\s+(?<adj>\\p{L}+)(?:\\s+\\p{L}+){0,3}?\\s+as\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern POINTS =
      Pattern.compile("\\b(behind|ahead of|clear of|above|below)\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern BEAT =
      Pattern.compile(
          "\\b(beats?|outscored|outscores|outperform(?:s|ed)|edged out|edges out)\\b",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern REST =
      Pattern.compile(
          "^\\s*(?:the\\s+)?((?:every other|all|any)(?:\\s+(?:the\\s+)?(?:ovens?|others?|models?))?\\s+(?:but|except|bar|save)\\s+(?:one|two|three|four)|average|field average|mean|rest|others|any other|any of the others|all (?:the )?others|every other|everything else|anything else|anyone else|everyone else|(?:the )?next(?: best| oven| one| in line)?|(?:its |the )?(?:nearest|closest)(?: rival| competitor| oven)?|runner-up|(?:our )?(?:leader|winner|quickest|fastest|slowest|cheapest|best|worst|quietest|loudest|lightest|heaviest))\\b",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern BY_AFTER =
      Pattern.compile("(?is)^\\s*(?:['’]s)?\\s*,?\\s*by\\s+(?:a\\s+margin\\s+of\\s+)?$");

  private final Figures figures;
  private final FigureSearch search;

  ComparisonReader(Figures figures, FigureSearch search) {
    this.figures = figures;
    this.search = search;
  }

  @Override
  public void read(SentenceClaims sentence) {
    readThan(sentence);
    readAsAs(sentence);
    readPoints(sentence);
    readBeat(sentence);
    readTimesOf(sentence);
    readVersus(sentence);
    readImplicit(sentence);
    readEarly(sentence);
  }

  /**
   * What is compared.
   *
   * @param other the second product; null for the average or the rest
   */
  private record Compared(String subject, @Nullable String other, int end, String against) {
    boolean isAverage() {
      return Wording.is(against, "average|field average|mean");
    }
  }

  /** "A point ahead of the next", "six minutes longer than our quickest": who that is. */
  private static Optional<Figure> rival(
      Figure use, List<Figure> field, Separation separation, String against) {
    List<Figure> ordered =
        separation.ordered().stream().filter(f -> !f.product().equals(use.product())).toList();
    if (ordered.isEmpty()) {
      return Optional.empty();
    }
    Adjective superlative = Vocabulary.adjective(Stems.of(against.replaceFirst("^our ", "")));
    boolean leader = superlative != null || Wording.is(against, "(?:our )?(?:leader|winner)");
    if (!leader) {
      return Optional.of(ordered.get(0));
    }
    Direction end = superlative == null ? Direction.HIGH : superlative.direction();
    return new Separation(field, end).ordered().stream().findFirst();
  }

  private void readThan(SentenceClaims sentence) {
    Matcher matcher = THAN.matcher(sentence.text());
    while (matcher.find()) {
      if (isHedge(sentence, matcher.end())) {
        continue;
      }
      if (Wording.is(
          Wording.before(sentence.text(), matcher.start()), "(?is).*\\bboth\\b[^,;.]{0,20}$")) {
        continue;
      }
      Optional<Compared> compared = outdone(sentence, matcher.start(), matcher.end());
      if (compared.isEmpty()) {
        compared = compared(sentence, matcher.start(), matcher.end());
      }
      boolean less =
          matcher.group("much") != null && !matcher.group("much").equalsIgnoreCase("more");
      if (compared.isPresent()) {
        comparative(sentence, matcher, compared.get(), less);
      }
    }
  }

  /** "More than one degree", "more than twice": the words belong to the number. */
  private static boolean isHedge(SentenceClaims sentence, int end) {
    return sentence.numbers().stream().anyMatch(n -> n.start() < end && n.end() > end);
  }

  private void comparative(
      SentenceClaims sentence, Matcher matcher, Compared compared, boolean less) {
    String word =
        (matcher.group("long") != null ? matcher.group("long") : matcher.group("short"))
            .toLowerCase(Locale.ROOT);
    String stem = Stems.of(word);
    Adjective adjective = isMark(stem) ? null : Vocabulary.adjective(stem);
    if (matcher.group("much") != null && adjective == null) {
      adjective = Vocabulary.noun(stem);
    }
    boolean amount =
        Wording.is(word, "more|less|higher|lower|greater|points?|euros?|minutes?|seconds?|kwh");
    if (amount || adjective == null && !isMark(stem)) {
      adjective = byUnit(sentence, matcher.start());
      less = less || Wording.is(word, "less|lower|fewer");
    }
    if (adjective != null || isMark(stem)) {
      claim(sentence, matcher.start(), compared, stem, adjective, less);
    }
  }

  /** "€50 more than", "1.6 points more than", "0.2 kWh less than": the unit says what of. */
  private @Nullable Adjective byUnit(SentenceClaims sentence, int start) {
    Optional<NumberPhrase> by = numberBefore(sentence, start);
    String before = Wording.before(sentence.text(), start);
    return by.isPresent() ? byUnit(by.get(), before) : byVerb(before);
  }

  private static @Nullable Adjective byUnit(NumberPhrase number, String before) {
    Optional<NumberPhrase> by = Optional.of(number);
    if (by.isPresent()) {
      if (by.get().scale() == Scale.MONEY) {
        return Vocabulary.noun(Stems.of("price"));
      }
      if (by.get().scale() == Scale.POINTS || by.get().unit() == null && by.get().decimals() == 1) {
        return Vocabulary.noun(Stems.of("score"));
      }
      Unit unit = by.get().unit();
      if (unit != null && unit.dimension() == Dimension.TIME) {
        return Vocabulary.adjective(Stems.of("long"));
      }
      if (unit != null && unit.dimension() == Dimension.ENERGY) {
        return Vocabulary.noun(Stems.of("energy"));
      }
      if (unit != null && unit.dimension() == Dimension.TEMPERATURE
          || by.get().scale() == Scale.DEGREES) {
        return Vocabulary.adjective(Stems.of("hot"));
      }
    }
    return byVerb(before);
  }

  /** "Costs more than", "uses more than", "scored higher than", "lost less than". */
  private static @Nullable Adjective byVerb(String before) {
    if (Wording.is(before, "(?is).*\\b(costs?|priced|sells|is dearer)\\b[^,;]*$")) {
      return Vocabulary.noun(Stems.of("price"));
    }
    if (Wording.is(before, "(?is).*\\b(uses?|used|consume[sd]?|draws?|drew)\\b[^,;]*$")) {
      return Vocabulary.noun(Stems.of("energy"));
    }
    if (Wording.is(before, "(?is).*\\b(scores?|scored|earned|rated|got)\\b[^,;]*$")) {
      return Vocabulary.adjective(Stems.of("good"));
    }
    if (Wording.is(before, "(?is).*\\b(takes?|took|needs?|needed)\\b[^,;]*$")) {
      return Vocabulary.adjective(Stems.of("long"));
    }
    if (Wording.is(before, "(?is).*\\b(lost|loses?)\\b[^,;]*$")) {
      return Vocabulary.noun(Stems.of("mass"));
    }
    if (Wording.is(before, "(?is).*\\b(holds?|fits?)\\b[^,;]*$")) {
      return Vocabulary.noun(Stems.of("volume"));
    }
    if (Wording.is(before, "(?is).*\\b(weighs?|weighed)\\b[^,;]*$")) {
      return Vocabulary.adjective(Stems.of("heavy"));
    }
    if (Wording.is(before, "(?is).*\\b(overshot|overshoots?)\\b[^,;]*$")) {
      return Vocabulary.noun(Stems.of("overshoot"));
    }
    return null;
  }

  private void readAsAs(SentenceClaims sentence) {
    Matcher matcher = AS_AS.matcher(sentence.text());
    while (matcher.find()) {
      Optional<NumberPhrase> times = numberBefore(sentence, matcher.start());
      Optional<Compared> compared = compared(sentence, matcher.start(), matcher.end());
      String stem = Stems.of(matcher.group("adj").toLowerCase(Locale.ROOT));
      boolean much = stem.equals("much") || stem.equals("many");
      Adjective adjective =
          much
              ? byVerb(Wording.before(sentence.text(), matcher.start()))
              : Vocabulary.adjective(stem);
      boolean factor =
          times.isPresent()
              && (times.get().scale() == Scale.TIMES
                  || times.get().low() < 1 && times.get().unit() == null
                  || times.get().unit() == Unit.PERCENT);
      boolean again = Wording.is(matcher.group().toLowerCase(Locale.ROOT), "(?s).*\\bagain\\s+as");
      if (compared.isPresent() && factor && adjective != null && again) {
        NumberPhrase half = times.get();
        sentence.replace(half, half.as(1 + half.low(), 0.1, null, Scale.TIMES));
      }
      if (compared.isPresent() && factor && adjective != null) {
        claim(
            sentence,
            matcher.start(),
            compared.get(),
            stem,
            adjective,
            times.get().low() < 1 && !again);
      }
    }
  }

  private void readPoints(SentenceClaims sentence) {
    Matcher matcher = POINTS.matcher(sentence.text());
    while (matcher.find()) {
      Optional<NumberPhrase> points = numberBefore(sentence, matcher.start());
      Optional<Compared> compared = compared(sentence, matcher.start(), matcher.end());
      boolean apply =
          points.isPresent()
              && compared.isPresent()
              && (points.get().scale() == Scale.POINTS
                  || points.get().unit() == null
                      && points.get().scale() == Scale.NONE
                      && points.get().decimals() > 0);
      boolean time =
          points.isPresent()
              && compared.isPresent()
              && points.get().unit() != null
              && points.get().unit().dimension() == Dimension.TIME
              && !Wording.is(matcher.group(1), "(?i)above|below");
      boolean less = Wording.is(matcher.group(1), "(?i)behind|below");
      if (apply) {
        claim(
            sentence, matcher.start(), compared.get(), "good", Vocabulary.adjective("good"), less);
      } else if (time) {
        claim(
            sentence, matcher.start(), compared.get(), "fast", Vocabulary.adjective("fast"), less);
      }
    }
  }

  private void readBeat(SentenceClaims sentence) {
    Matcher matcher = BEAT.matcher(sentence.text());
    while (matcher.find()) {
      Optional<Compared> compared = compared(sentence, matcher.start(), matcher.end());
      if (compared.isPresent()) {
        Optional<NumberPhrase> by = byAfter(sentence, compared.get().end());
        boolean time =
            by.isPresent()
                && by.get().unit() != null
                && by.get().unit().dimension() == Dimension.TIME;
        String word = time ? "fast" : "good";
        claim(sentence, matcher.start(), compared.get(), word, Vocabulary.adjective(word), false);
      }
    }
  }

  private static final Pattern OF_NAME =
      Pattern.compile(
          "(?is)^\\s*(?:(?:that|those)\\s+of\\s+|that\\s+in\\s+|what\\s+)?(?:the\\s+)?$");

  /** "More than four times that of the Dunnock", "twice the Alder's", "half that of Rowan". */
  private void readTimesOf(SentenceClaims sentence) {
    for (NumberPhrase number : sentence.freeNumbers()) {
      boolean factor =
          number.scale() == Scale.TIMES
              || number.low() < 1 && number.unit() == null && number.scale() == Scale.NONE;
      if (factor) {
        sentence.context().mentions().stream()
            .filter(m -> m.start() >= number.end() && !m.isPronoun())
            .findFirst()
            .filter(
                m -> OF_NAME.matcher(sentence.text().substring(number.end(), m.start())).matches())
            .ifPresent(m -> timesOf(sentence, number, m));
      }
    }
  }

  private void timesOf(SentenceClaims sentence, NumberPhrase number, ProductMention other) {
    String subject = subject(sentence, number.start());
    if (subject == null || subject.equals(other.product())) {
      return;
    }
    Focus focus = sentence.context().at(number.start(), other.end());
    Optional<Unit> unit = unitBefore(sentence, number.start());
    List<Figure> uses =
        search.best(
            focus,
            subject,
            f ->
                f.kind() != Figure.Kind.NAMEPLATE
                    && (unit.isEmpty() || !f.isScore() && sameKind(unit.get(), f)));
    if (uses.size() != 1) {
      return;
    }
    Figure own = uses.get(0);
    Optional<Figure> second =
        search.field(own).stream().filter(f -> f.product().equals(other.product())).findFirst();
    if (second.isEmpty() || own.value() == null || second.get().value() == null) {
      return;
    }
    double ratio = own.value() / second.get().value();
    boolean hedged = number.hedge() != Hedge.PLAIN;
    boolean holds =
        switch (number.hedge()) {
          case OVER, AT_LEAST -> ratio >= number.low();
          case UNDER, AT_MOST -> ratio <= number.low();
          default -> Math.abs(ratio / number.low() - 1) <= (hedged ? 0.10 : 0.05);
        };
    String found = "a factor of " + ovenproof.core.quantity.Rounding.HALF_UP.text(ratio, 2);
    boolean doubtful = unit.isEmpty() && own.isScore();
    sentence.add(
        number.start(),
        other.end(),
        Kind.COMPARISON,
        holds ? Finding.SUPPORTED : doubtful ? Finding.UNCLEAR : Finding.CONTRADICTED,
        sentence.text().substring(number.start(), other.end()),
        found,
        own.evidence(),
        own.label() + ": " + found + " (" + both(own, second.get()) + ")");
  }

  /** The unit of the last number before: "15 K apart, four times that of the Dunnock". */
  private static Optional<Unit> unitBefore(SentenceClaims sentence, int start) {
    return sentence.numbers().stream()
        .filter(n -> n.end() <= start && n.unit() != null)
        .reduce((a, b) -> b)
        .map(NumberPhrase::unit);
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
                outcome(
                    uses.get(0),
                    new Compared(a.product(), b.product(), number.end(), name(b.product())),
                    Direction.HIGH,
                    Optional.of(number));
            sentence.add(
                number.start(),
                number.end(),
                Kind.COMPARISON,
                outcome.finding,
                number.text(),
                outcome.expected,
                outcome.evidence,
                outcome.why);
          }
        }
      }
    }
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
        boolean pair = a != b && java.util.Objects.equals(a.test(), b.test());
        double gap =
            java.util.Objects.requireNonNull(a.value())
                - java.util.Objects.requireNonNull(b.value());
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
        name(product) + ": " + fits.orElse("no two of its times differ by this"));
  }

  private void implicit(SentenceClaims sentence, NumberPhrase number, String word) {
    int end = sentence.text().indexOf(word.substring(1), number.end());
    end = end < 0 ? number.end() : Math.min(sentence.text().length(), end + word.length() - 1);
    List<String> pair = pair(sentence, number.start());
    String said = sentence.text().substring(number.start(), end).strip();
    boolean time = number.unit() != null && number.unit().dimension() == Dimension.TIME;
    Adjective adjective =
        Wording.is(word, "later|slower|behind") && time
            ? Vocabulary.adjective("long")
            : Wording.is(word, "earlier|sooner|ahead") && time
                ? Vocabulary.adjective(Stems.of("fast"))
                : Vocabulary.adjective(Stems.of(word));
    if (adjective == null || Wording.is(word, "more|less|fewer|higher|lower|behind|ahead")) {
      adjective = byUnit(number, Wording.before(sentence.text(), number.start()));
    }
    if (pair.size() < 2 || adjective == null) {
      open(sentence, number.start(), end, said);
      return;
    }
    Focus focus = sentence.context().at(number.start(), end);
    Outcome first = null;
    for (String other : pair.subList(1, pair.size())) {
      List<Figure> uses = uses(focus, adjective, Stems.of(word), pair.get(0), Optional.of(number));
      if (uses.isEmpty()) {
        continue;
      }
      if (uses.get(0).kind() == Figure.Kind.TEST_SCORE && !focus.inClause()) {
        uses = withTotal(uses, pair.get(0));
      }
      Compared compared = new Compared(pair.get(0), other, end, name(other));
      for (Figure use : uses.subList(1, uses.size())) {
        Outcome total = outcome(use, compared, adjective.direction(), Optional.of(number));
        if (total.finding == Finding.SUPPORTED) {
          first = total;
        }
      }
      Outcome outcome = outcome(uses.get(0), compared, adjective.direction(), Optional.of(number));
      Outcome turned =
          outcome(uses.get(0), compared, turned(adjective.direction()), Optional.of(number));
      boolean either =
          summing(sentence, number.start()) || Wording.is(word, "more|less|fewer|higher|lower");
      Outcome better =
          outcome.finding == Finding.SUPPORTED || !either || turned.why.contains("other way round")
              ? outcome
              : turned;
      if (first == null || better.finding == Finding.SUPPORTED) {
        first = better;
      }
    }
    if (number.scale() == Scale.MONEY && isCut(pair.get(0), number.low())) {
      first =
          new Outcome(
              Finding.SUPPORTED,
              null,
              List.of("prices of " + name(pair.get(0))),
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
        first.finding,
        said,
        first.expected,
        first.evidence,
        first.why);
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
                                            java.util.Objects.requireNonNull(then.value())
                                                - java.util.Objects.requireNonNull(now.value()))
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

  /** "That's two minutes longer": of what was said before. */
  private static boolean summing(SentenceClaims sentence, int start) {
    return Wording.is(
            sentence.text().substring(0, start),
            "(?is).*\\b(that['’]s|that is|which is|that makes it)\\s+(\\w+\\s+)?$")
        && sentence.context().mentions().stream().allMatch(ProductMention::isPronoun);
  }

  /** Whom a comparison without "than" speaks of, its subject first. */
  private static List<String> pair(SentenceClaims sentence, int start) {
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
      java.util.Collections.reverse(before);
      before.stream().filter(p -> !pair.contains(p)).forEach(pair::add);
    } else {
      context.namedBefore().stream().filter(p -> !pair.contains(p)).forEach(pair::add);
    }
    return pair;
  }

  private Optional<Compared> compared(SentenceClaims sentence, int start, int end) {
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
                name(other.product())));
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
          new Compared(subject, other.product(), other.end(), name(other.product())));
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
  private static Optional<Compared> outdone(SentenceClaims sentence, int start, int end) {
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

  private static @Nullable String subject(SentenceClaims sentence, int start) {
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

  private static Optional<NumberPhrase> numberBefore(SentenceClaims sentence, int start) {
    return sentence.freeNumbers().stream()
        .filter(
            n ->
                n.end() <= start
                    && Wording.is(
                        sentence.text().substring(n.end(), start),
                        "(?is)\\s*(?:more|less|as|of a point)?\\s*"))
        .reduce((a, b) -> b);
  }

  private boolean isMark(String stem) {
    return figures.isMark(stem);
  }

  private void claim(
      SentenceClaims sentence,
      int start,
      Compared compared,
      String stem,
      @Nullable Adjective adjective,
      boolean less) {
    Optional<NumberPhrase> before = numberBefore(sentence, start);
    Optional<NumberPhrase> by = before.isPresent() ? before : byAfter(sentence, compared.end());
    int from = before.map(NumberPhrase::start).orElse(start);
    int to = before.isEmpty() && by.isPresent() ? by.get().end() : compared.end();
    if (!sentence.isFree(from, to)) {
      return;
    }
    String said = sentence.text().substring(from, to).strip();
    Focus focus = sentence.context().at(from, to);
    List<Figure> uses = uses(focus, adjective, stem, compared.subject(), by);
    if (uses.isEmpty()) {
      sentence.add(
          from,
          to,
          Kind.COMPARISON,
          Finding.UNSUPPORTED,
          said,
          null,
          List.of(),
          "nothing that was measured of " + name(compared.subject()) + " says this");
      return;
    }
    Direction direction = adjective == null ? Direction.HIGH : adjective.direction();
    Direction wanted = less ? turned(direction) : direction;
    List<Outcome> outcomes = new ArrayList<>();
    for (Figure use : uses) {
      outcomes.add(outcome(use, compared, wanted, by));
    }
    Outcome first = outcomes.get(0);
    boolean agree = outcomes.stream().allMatch(o -> o.finding == first.finding);
    Finding finding = agree ? first.finding : Finding.UNCLEAR;
    String why = agree ? first.why : "the words fit several figures, and they differ";
    sentence.add(from, to, Kind.COMPARISON, finding, said, first.expected, first.evidence, why);
  }

  /** A stated amount must fit the figure: no minutes of lightness. */
  private List<Figure> uses(
      Focus focus,
      @Nullable Adjective adjective,
      String stem,
      String product,
      Optional<NumberPhrase> by) {
    List<Figure> uses = search.uses(focus, adjective, stem, product);
    Unit unit = by.map(NumberPhrase::unit).orElse(null);
    if (unit == null || unit == Unit.PERCENT) {
      return uses;
    }
    List<Figure> fitting = uses.stream().filter(f -> sameKind(unit, f)).toList();
    return fitting.isEmpty() && adjective != null
        ? search.best(focus, product, f -> !f.isScore() && sameKind(unit, f))
        : fitting;
  }

  private static boolean sameKind(Unit unit, Figure figure) {
    Unit own = figure.unit();
    if (own == null) {
      return false;
    }
    return heat(unit) ? heat(own) : own.dimension() == unit.dimension();
  }

  private static boolean heat(Unit unit) {
    return unit.dimension() == Dimension.TEMPERATURE
        || unit.dimension() == Dimension.TEMPERATURE_DIFFERENCE;
  }

  private static Optional<NumberPhrase> byAfter(SentenceClaims sentence, int end) {
    return sentence.freeNumbers().stream()
        .filter(
            n ->
                n.start() >= end
                    && BY_AFTER.matcher(sentence.text().substring(end, n.start())).matches())
        .findFirst();
  }

  private record Outcome(
      Finding finding, @Nullable String expected, List<String> evidence, String why) {}

  private Outcome outcome(
      Figure use, Compared compared, Direction wanted, Optional<NumberPhrase> by) {
    List<Figure> field = search.field(use);
    Separation separation = new Separation(field, wanted);
    Double own = Separation.level(use);
    if (own == null) {
      return new Outcome(Finding.UNSUPPORTED, null, use.evidence(), "it was not measured");
    }
    String other = compared.other();
    if (other == null && by.isPresent() && !compared.isAverage()) {
      return rival(use, field, separation, compared.against())
          .map(r -> againstOne(use, r, separation, by))
          .orElseGet(
              () ->
                  new Outcome(
                      Finding.UNCLEAR,
                      null,
                      use.evidence(),
                      "there is no other to hold it against"));
    }
    if (other == null) {
      return againstField(use, field, wanted, compared.against(), separation);
    }
    Optional<Figure> second = field.stream().filter(f -> f.product().equals(other)).findFirst();
    if (second.isEmpty() || Separation.level(second.get()) == null) {
      return new Outcome(
          Finding.UNSUPPORTED, null, use.evidence(), name(other) + " was not measured there");
    }
    return againstOne(use, second.get(), separation, by);
  }

  private Outcome againstOne(Figure a, Figure b, Separation separation, Optional<NumberPhrase> by) {
    String expected = both(a, b);
    double gap = separation.signed(a) - separation.signed(b);
    if (gap < 0
        && a.kind() == Figure.Kind.TEST_SCORE | a.kind() == Figure.Kind.TOTAL
        && by.isEmpty()
        && separation.probability(b, a) < 0.95) {
      return new Outcome(
          Finding.UNCLEAR, expected, a.evidence(), "the other way round by figures: " + expected);
    }
    if (gap < 0) {
      return new Outcome(
          Finding.CONTRADICTED, expected, a.evidence(), "it is the other way round: " + expected);
    }
    if (by.isPresent()) {
      return amount(a, b, by.get(), expected);
    }
    double probability = a.isSingle() ? 1 : separation.probability(a, b);
    if (gap == 0) {
      return new Outcome(
          Finding.CONTRADICTED, expected, a.evidence(), "they are equal: " + expected);
    }
    if (a.kind() == Figure.Kind.TOTAL) {
      boolean ahead = a.value() != null && b.value() != null && a.value() > b.value();
      probability =
          ahead
              ? pair(a.product(), b.product(), probability)
              : pair(b.product(), a.product(), probability);
    }
    boolean sure = probability >= 0.95;
    String p =
        Double.isNaN(probability)
            ? "one run each cannot tell"
            : "probability " + percent(probability);
    return new Outcome(
        sure ? Finding.SUPPORTED : Finding.UNCLEAR,
        expected,
        a.evidence(),
        sure ? expected + ", " + p : expected + ", but the runs do not separate them (" + p + ")");
  }

  private double pair(String better, String worse, double fallback) {
    return figures.verdict().pairs().stream()
        .filter(p -> p.better().equals(better) && p.worse().equals(worse))
        .mapToDouble(p -> p.probability())
        .findFirst()
        .orElse(fallback);
  }

  /** "two minutes faster", "20 percent faster", "twice as fast", "3 points ahead". */
  private static Outcome amount(Figure a, Figure b, NumberPhrase by, String expected) {
    Double va = a.value();
    Double vb = b.value();
    if (va == null || vb == null) {
      return new Outcome(
          Finding.UNCLEAR, expected, a.evidence(), "one of the two is only known within bounds");
    }
    boolean hedged = by.hedge() != Hedge.PLAIN;
    if (by.scale() == Scale.POINTS && !a.isScore() && a.kind() != Figure.Kind.MARK) {
      return new Outcome(Finding.UNCLEAR, expected, a.evidence(), "no score fits: " + expected);
    }
    if (by.scale() == Scale.TIMES
        || by.unit() == Unit.PERCENT
        || by.unit() == null && by.scale() == Scale.NONE && by.low() < 1 && !a.isScore()) {
      double ratio = Math.max(va, vb) / Math.min(va, vb);
      double stated =
          by.scale() == Scale.TIMES
              ? by.low()
              : by.unit() == Unit.PERCENT ? 1 + by.low() / 100 : 1 / by.low();
      boolean lessThan =
          by.unit() == Unit.PERCENT
              && Math.abs((1 - 1 / ratio) * 100 - by.low()) <= by.step() / 2 + 0.5;
      boolean near =
          switch (by.hedge()) {
            case OVER, AT_LEAST ->
                ratio >= stated * (by.low() < 1 && by.unit() == null ? 0 : 1)
                    && (by.low() >= 1 || by.unit() != null || ratio < stated);
            case UNDER, AT_MOST ->
                by.low() < 1 && by.unit() == null ? ratio > stated : ratio < stated;
            default -> Math.abs(ratio / stated - 1) <= (hedged ? 0.10 : 0.05) || lessThan;
          };
      String found = "a factor of " + ovenproof.core.quantity.Rounding.HALF_UP.text(ratio, 2);
      return new Outcome(
          near ? Finding.SUPPORTED : Finding.CONTRADICTED,
          found,
          a.evidence(),
          found + " (" + expected + ")");
    }
    return difference(a, b, by, expected);
  }

  /** The stored or the shown difference. */
  private static Outcome difference(Figure a, Figure b, NumberPhrase by, String expected) {
    double difference =
        Math.abs(
            java.util.Objects.requireNonNull(a.value())
                - java.util.Objects.requireNonNull(b.value()));
    Unit unit = by.unit();
    Unit own = a.unit() != null && a.unit() == Unit.CELSIUS ? Unit.KELVIN : a.unit();
    if (unit == Unit.FAHRENHEIT) {
      unit = Unit.FAHRENHEIT_DIFFERENCE;
    } else if (unit == Unit.CELSIUS || by.scale() == Scale.DEGREES) {
      unit = Unit.KELVIN;
    }
    if (unit != null && own != null && unit.dimension() != own.dimension()) {
      return new Outcome(
          Finding.UNCLEAR, expected, a.evidence(), "the unit does not fit: " + expected);
    }
    Figure gap = a.asDifference(difference, own);
    Judge.Ruling ruling = Judge.rule(by, gap, unit);
    if (ruling.finding() != Finding.SUPPORTED && shownDifferenceHolds(a, b, by, own, unit)) {
      ruling = new Judge.Ruling(Finding.SUPPORTED, ruling.expected(), ruling.why());
    }
    return new Outcome(
        ruling.finding(),
        ruling.expected(),
        a.evidence(),
        "the difference is " + ruling.expected() + " (" + expected + ")");
  }

  /** Readers subtract what is printed: 8.0 and 7.4 lie 0.6 apart. */
  private static boolean shownDifferenceHolds(
      Figure a, Figure b, NumberPhrase by, @Nullable Unit own, @Nullable Unit unit) {
    double step = unit == null || own == null || unit == own ? by.step() : Double.NaN;
    if (Double.isNaN(step) || a.value() == null || b.value() == null) {
      return false;
    }
    double shown =
        Math.abs(
            Judge.rounded(a.value(), Math.min(step, 1))
                - Judge.rounded(b.value(), Math.min(step, 1)));
    return Judge.rule(by, a.asDifference(Judge.rounded(shown, Math.min(step, 0.1)), own), unit)
            .finding()
        == Finding.SUPPORTED;
  }

  private Outcome againstField(
      Figure use, List<Figure> field, Direction wanted, String against, Separation separation) {
    if (Wording.is(against, "average|field average|mean")) {
      double mean =
          field.stream()
              .map(Separation::level)
              .filter(java.util.Objects::nonNull)
              .mapToDouble(Double::doubleValue)
              .average()
              .orElse(Double.NaN);
      double own = java.util.Objects.requireNonNull(Separation.level(use));
      boolean holds = wanted == Direction.HIGH ? own > mean : own < mean;
      String expected =
          name(use.product()) + " " + shown(use, own) + ", average " + shown(use, mean);
      return new Outcome(
          holds ? Finding.SUPPORTED : Finding.CONTRADICTED, expected, use.evidence(), expected);
    }
    Matcher but = BUT.matcher(against);
    if (but.matches()) {
      return behind(
          use, separation, List.of("one", "two", "three", "four").indexOf(but.group(1)) + 1);
    }
    SuperlativeReader.Extreme extreme = SuperlativeReader.extreme(use, separation, this::name);
    return new Outcome(extreme.finding(), extreme.expected(), use.evidence(), extreme.why());
  }

  private static final Pattern BUT =
      Pattern.compile("(?is).*\\b(?:but|except|bar|save)\\s+(one|two|three|four)");

  /** "Longer than every other but two": just so many lie further. */
  private Outcome behind(Figure use, Separation separation, int stated) {
    List<Figure> further =
        separation.ordered().stream()
            .filter(f -> !f.product().equals(use.product()))
            .filter(f -> separation.signed(f) > separation.signed(use))
            .toList();
    String expected =
        further.size()
            + " lie further: "
            + String.join(", ", further.stream().map(f -> name(f.product())).toList());
    return new Outcome(
        further.size() == stated ? Finding.SUPPORTED : Finding.CONTRADICTED,
        expected,
        use.evidence(),
        use.label() + ": " + expected);
  }

  private String both(Figure a, Figure b) {
    return name(a.product())
        + " "
        + shownOrBound(a)
        + ", "
        + name(b.product())
        + " "
        + shownOrBound(b);
  }

  static String shownOrBound(Figure figure) {
    Double value = figure.value();
    return value == null ? Judge.bounds(figure, null, 1) : shown(figure, value);
  }

  static String shown(Figure figure, double value) {
    Unit unit = figure.unit();
    if (unit == Unit.SECOND) {
      return Judge.text(value / 60, Unit.MINUTE, 0);
    }
    return Judge.text(value, unit, figure.shownDecimals() >= 0 ? figure.shownDecimals() : 1);
  }

  private static String percent(double probability) {
    return probability > 0.995 ? "over 99 %" : Math.round(probability * 100) + " %";
  }

  private static Direction turned(Direction direction) {
    return direction == Direction.HIGH ? Direction.LOW : Direction.HIGH;
  }

  private String name(String product) {
    return figures.campaign().product(product).map(p -> p.name()).orElse(product);
  }
}
