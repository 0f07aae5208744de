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
import ovenproof.proof.ComparedProducts.Compared;
import ovenproof.proof.ComparisonJudge.Outcome;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;
import ovenproof.proof.Vocabulary.Adjective;
import ovenproof.proof.Vocabulary.Direction;

/**
 * Comparisons that name their other end: "Alder was two minutes faster than Siskin", "twice as fast
 * as", "3 points behind", "hotter than average". Those that leave it to the reader follow.
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

  private final ComparedProducts products;
  private final ComparedFigures figuresCompared;
  private final ComparisonJudge judge;
  private final FactorReader factors;
  private final ImplicitComparisonReader implicit;
  private final Figures figures;

  ComparisonReader(Figures figures, FigureSearch search) {
    this.figures = figures;
    this.products = new ComparedProducts(figures);
    this.figuresCompared = new ComparedFigures(search);
    this.judge = new ComparisonJudge(figures, search);
    this.factors = new FactorReader(figures, search);
    this.implicit = new ImplicitComparisonReader(figures, search, figuresCompared, judge);
  }

  @Override
  public void read(SentenceClaims sentence) {
    readThan(sentence);
    readAsAs(sentence);
    readPoints(sentence);
    readBeat(sentence);
    factors.read(sentence);
    implicit.read(sentence);
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
      Optional<Compared> compared =
          ComparedProducts.outdone(sentence, matcher.start(), matcher.end());
      if (compared.isEmpty()) {
        compared = products.compared(sentence, matcher.start(), matcher.end());
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
    Adjective adjective = figures.isMark(stem) ? null : Vocabulary.adjective(stem);
    if (matcher.group("much") != null && adjective == null) {
      adjective = Vocabulary.noun(stem);
    }
    boolean amount =
        Wording.is(word, "more|less|higher|lower|greater|points?|euros?|minutes?|seconds?|kwh");
    if (amount || adjective == null && !figures.isMark(stem)) {
      adjective = ComparedFigures.byUnit(sentence, matcher.start());
      less = less || Wording.is(word, "less|lower|fewer");
    }
    if (adjective != null || figures.isMark(stem)) {
      claim(sentence, matcher.start(), compared, stem, adjective, less);
    }
  }

  /** "A fifth more than": twenty percent, but "half as much as" is a factor. */
  private static NumberPhrase share(SentenceClaims sentence, NumberPhrase number) {
    boolean ordinal =
        number.scale() == Scale.ORDINAL
            && Wording.is(
                Wording.before(sentence.text(), number.start()), "(?is).*\\b(?:an?|one)\\s+$");
    if (ordinal) {
      return number.as(100 / number.low(), 5, Unit.PERCENT, Scale.NONE);
    }
    boolean fraction =
        number.low() < 1
            && number.unit() == null
            && number.scale() == Scale.NONE
            && Wording.is(
                number.text(), "(?is).*\\b(?:half|third|quarter|fifth|sixth|tenth)s?\\b.*")
            && Wording.is(
                Wording.after(sentence.text(), number.end()), "(?is)^\\s*(?!as\\b)\\p{L}+.*");
    return fraction ? number.as(number.low() * 100, 5, Unit.PERCENT, Scale.NONE) : number;
  }

  private void readAsAs(SentenceClaims sentence) {
    Matcher matcher = AS_AS.matcher(sentence.text());
    while (matcher.find()) {
      Optional<NumberPhrase> times = ComparedFigures.numberBefore(sentence, matcher.start());
      Optional<Compared> compared = products.compared(sentence, matcher.start(), matcher.end());
      String stem = Stems.of(matcher.group("adj").toLowerCase(Locale.ROOT));
      boolean much = stem.equals("much") || stem.equals("many");
      Adjective adjective =
          much
              ? ComparedFigures.byVerb(Wording.before(sentence.text(), matcher.start()))
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
      if (compared.isPresent() && !factor && adjective != null && times.isEmpty()) {
        equal(sentence, matcher.start(), compared.get(), stem, adjective);
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

  private static final Pattern NEARLY =
      Pattern.compile("(?is).*\\b(?:nearly|almost|about|roughly|just about)\\s+$");

  private static final Pattern NOT =
      Pattern.compile("(?is).*(?:\\b(?:not|nowhere near|never|hardly)|n['’]t)\\b[^,;.]{0,20}$");

  /** "Uses as much as the Rowan": wrong where the two clearly differ, and not the better way. */
  private void equal(
      SentenceClaims sentence, int start, Compared compared, String stem, Adjective adjective) {
    String before = Wording.before(sentence.text(), start);
    String other = compared.other();
    if (other == null || NOT.matcher(before).matches() || !sentence.isFree(start, compared.end())) {
      return;
    }
    List<Figure> uses =
        figuresCompared.uses(
            sentence.context().at(start, compared.end()),
            adjective,
            stem,
            compared.subject(),
            Optional.empty());
    if (uses.isEmpty()) {
      return;
    }
    Direction direction = adjective.direction();
    List<Outcome> behind =
        uses.stream()
            .map(
                u ->
                    judge.outcome(u, compared, ComparisonJudge.turned(direction), Optional.empty()))
            .toList();
    List<Outcome> ahead =
        uses.stream().map(u -> judge.outcome(u, compared, direction, Optional.empty())).toList();
    Outcome less = behind.get(0);
    boolean allBehind =
        behind.stream().allMatch(o -> o.finding() == Finding.SUPPORTED)
            && !NEARLY.matcher(before).matches();
    boolean someApart =
        java.util.stream.Stream.concat(behind.stream(), ahead.stream())
            .anyMatch(o -> o.finding() == Finding.SUPPORTED);
    Finding finding =
        allBehind ? Finding.CONTRADICTED : someApart ? Finding.UNCLEAR : Finding.SUPPORTED;
    sentence.add(
        start,
        compared.end(),
        Kind.COMPARISON,
        finding,
        sentence.text().substring(start, compared.end()).strip(),
        less.expected(),
        less.evidence(),
        less.expected() == null ? less.why() : less.expected());
  }

  private void readPoints(SentenceClaims sentence) {
    Matcher matcher = POINTS.matcher(sentence.text());
    while (matcher.find()) {
      Optional<NumberPhrase> points = ComparedFigures.numberBefore(sentence, matcher.start());
      Optional<Compared> compared = products.compared(sentence, matcher.start(), matcher.end());
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
      Optional<Compared> compared = products.compared(sentence, matcher.start(), matcher.end());
      if (compared.isPresent()) {
        Optional<NumberPhrase> by = ComparedFigures.byAfter(sentence, compared.get().end());
        boolean time =
            by.isPresent()
                && by.get().unit() != null
                && by.get().unit().dimension() == Dimension.TIME;
        boolean race =
            Wording.is(
                Wording.after(sentence.text(), compared.get().end()),
                "(?is)^(?:\\s+\\p{L}+)?\\s+to\\s+(?:\\d|two|\\p{L}*\\s*temperature|heat).*");
        String word = time || race ? "fast" : "good";
        claim(sentence, matcher.start(), compared.get(), word, Vocabulary.adjective(word), false);
      }
    }
  }

  private void claim(
      SentenceClaims sentence,
      int start,
      Compared compared,
      String stem,
      @Nullable Adjective adjective,
      boolean less) {
    Optional<NumberPhrase> before = ComparedFigures.numberBefore(sentence, start);
    Optional<NumberPhrase> by =
        (before.isPresent() ? before : ComparedFigures.byAfter(sentence, compared.end()))
            .map(n -> share(sentence, n));
    int from = before.map(NumberPhrase::start).orElse(start);
    int to = before.isEmpty() && by.isPresent() ? by.get().end() : compared.end();
    if (!sentence.isFree(from, to)) {
      return;
    }
    String said = sentence.text().substring(from, to).strip();
    Focus focus = sentence.context().at(from, to);
    List<Figure> uses = figuresCompared.uses(focus, adjective, stem, compared.subject(), by);
    if (uses.isEmpty()) {
      sentence.add(
          from,
          to,
          Kind.COMPARISON,
          Finding.UNSUPPORTED,
          said,
          null,
          List.of(),
          "nothing that was measured of " + figures.name(compared.subject()) + " says this");
      return;
    }
    Direction direction = adjective == null ? Vocabulary.ofMark(stem) : adjective.direction();
    Direction wanted = less ? ComparisonJudge.turned(direction) : direction;
    List<Outcome> outcomes = new ArrayList<>();
    for (Figure use : uses) {
      outcomes.add(judge.outcome(use, compared, wanted, by));
    }
    Outcome first = outcomes.get(0);
    boolean agree = outcomes.stream().allMatch(o -> o.finding() == first.finding());
    Finding finding =
        agree ? Emphasis.sharpened(sentence, from, to, first.finding()) : Finding.UNCLEAR;
    String why = agree ? first.why() : "the words fit several figures, and they differ";
    sentence.add(from, to, Kind.COMPARISON, finding, said, first.expected(), first.evidence(), why);
  }
}
