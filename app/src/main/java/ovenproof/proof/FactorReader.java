package ovenproof.proof;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Rounding;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.ComparedProducts.Compared;
import ovenproof.proof.ComparisonJudge.Outcome;
import ovenproof.proof.Mentions.ProductMention;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;
import ovenproof.proof.Vocabulary.Adjective;

/**
 * Factors: "four times that of the Dunnock", "twice the Alder's", "the Larch needs twice as long".
 */
final class FactorReader implements ClaimReader {
  private static final Pattern OF_NAME =
      Pattern.compile(
          "(?is)^\\s*(?:so\\s+\\p{L}+\\s+as\\s+)?(?:(?:that|those)\\s+of\\s+|that\\s+in\\s+|what\\s+)?(?:the\\s+)?$");

  /** "Half the weight of the Larch", "twice the time the Siskin takes": the noun says what of. */
  private static final Pattern OF_NOUN =
      Pattern.compile(
          "(?is)^\\s*(?:of\\s+)?the\\s+(?<noun>\\p{L}+)\\s+(?:of\\s+|that\\s+|which\\s+)?(?:the\\s+)?$");

  private final Figures figures;
  private final FigureSearch search;
  private final ComparisonJudge judge;

  FactorReader(Figures figures, FigureSearch search) {
    this.figures = figures;
    this.search = search;
    this.judge = new ComparisonJudge(figures, search);
  }

  @Override
  public void read(SentenceClaims sentence) {
    readTimesOf(sentence);
    readTimesAsLong(sentence);
  }

  /** "More than four times that of the Dunnock", "twice the Alder's", "half that of Rowan". */
  private void readTimesOf(SentenceClaims sentence) {
    for (NumberPhrase number : sentence.freeNumbers()) {
      if (isFactor(number)) {
        sentence.context().mentions().stream()
            .filter(m -> m.start() >= number.end() && !m.isPronoun())
            .findFirst()
            .ifPresent(m -> timesOf(sentence, number, m));
      }
    }
  }

  /** "Twice", "four times", "half". */
  private static boolean isFactor(NumberPhrase number) {
    return number.scale() == Scale.TIMES
        || number.low() < 1 && number.unit() == null && number.scale() == Scale.NONE;
  }

  private static final Pattern AS_LONG =
      Pattern.compile(
          "(?is)^\\s*as\\s+(?<word>long|much|many|fast|quick|slow|hot|heavy|big|large|loud|expensive|dear)\\b(?!\\s+(?:\\p{L}+\\s+){0,3}?as\\b).*");

  /** "The Alder needs twice as long": as the product that was spoken of before. */
  private void readTimesAsLong(SentenceClaims sentence) {
    for (NumberPhrase number : sentence.freeNumbers()) {
      Matcher matcher = AS_LONG.matcher(Wording.after(sentence.text(), number.end()));
      Figure spoken = sentence.spokenOf();
      String subject = ComparedProducts.subject(sentence, number.start());
      if (isFactor(number) && matcher.matches() && subject != null) {
        List<String> pair = ComparedProducts.pair(sentence, number.start());
        String other = pair.stream().filter(p -> !p.equals(subject)).findFirst().orElse(null);
        if (other != null) {
          timesAsLong(sentence, number, number.end() + matcher.end("word"), subject, other, spoken);
        }
      }
    }
  }

  private void timesAsLong(
      SentenceClaims sentence,
      NumberPhrase number,
      int end,
      String subject,
      String other,
      @Nullable Figure spoken) {
    String word =
        sentence.text().substring(number.end(), end).strip().replaceFirst("(?i)^as\\s+", "");
    Adjective adjective = Vocabulary.adjective(Stems.of(word));
    if (adjective == null) {
      adjective = ComparedFigures.byVerb(Wording.before(sentence.text(), number.start()));
    }
    Adjective meant = adjective;
    Optional<Figure> use =
        spoken != null && (meant == null || meant.takes().contains(spoken.take()))
            ? search.field(spoken).stream().filter(f -> f.product().equals(subject)).findFirst()
            : meant == null
                ? Optional.empty()
                : search
                    .uses(
                        sentence.context().at(number.start(), end), meant, Stems.of(word), subject)
                    .stream()
                    .findFirst();
    if (use.isEmpty() || meant == null) {
      return;
    }
    Outcome outcome =
        judge.outcome(
            use.get(),
            new Compared(subject, other, end, figures.name(other)),
            number.low() < 1 ? ComparisonJudge.turned(meant.direction()) : meant.direction(),
            Optional.of(number));
    sentence.add(
        number.start(),
        end,
        Kind.COMPARISON,
        outcome.finding(),
        sentence.text().substring(number.start(), end).strip(),
        outcome.expected(),
        outcome.evidence(),
        outcome.why());
  }

  private void timesOf(SentenceClaims sentence, NumberPhrase number, ProductMention other) {
    String between = sentence.text().substring(number.end(), other.start());
    Matcher noun = OF_NOUN.matcher(between);
    @Nullable Adjective named =
        noun.matches() ? Vocabulary.noun(Stems.of(noun.group("noun"))) : null;
    if (named == null && !OF_NAME.matcher(between).matches()) {
      return;
    }
    String subject = ComparedProducts.subject(sentence, number.start());
    if (subject == null || subject.equals(other.product())) {
      return;
    }
    Focus focus = sentence.context().at(number.start(), other.end());
    Optional<Unit> unit = unitBefore(sentence, number.start());
    List<Figure> uses =
        named != null
            ? search.uses(focus, named, "", subject)
            : search.best(
                focus,
                subject,
                f ->
                    f.kind() != Figure.Kind.NAMEPLATE
                        && (unit.isEmpty()
                            || !f.isScore() && ComparedFigures.sameKind(unit.get(), f)));
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
    String found = "a factor of " + Rounding.HALF_UP.text(ratio, 2);
    boolean doubtful = unit.isEmpty() && own.isScore();
    sentence.add(
        number.start(),
        other.end(),
        Kind.COMPARISON,
        holds ? Finding.SUPPORTED : doubtful ? Finding.UNCLEAR : Finding.CONTRADICTED,
        sentence.text().substring(number.start(), other.end()),
        found,
        own.evidence(),
        own.label() + ": " + found + " (" + judge.both(own, second.get()) + ")");
  }

  /** The unit of the last number before: "15 K apart, four times that of the Dunnock". */
  private static Optional<Unit> unitBefore(SentenceClaims sentence, int start) {
    return sentence.numbers().stream()
        .filter(n -> n.end() <= start && n.unit() != null)
        .reduce((a, b) -> b)
        .map(NumberPhrase::unit);
  }
}
