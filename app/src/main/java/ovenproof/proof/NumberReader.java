package ovenproof.proof;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.Judge.Ruling;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;

/**
 * Plain numbers: quantities with units, scores, prices. Each is sorted into what it is – a setting
 * or limit of the method, a difference, a probability, or something measured – and held against
 * that.
 */
final class NumberReader implements ClaimReader {
  private static final Pattern GAP =
      Pattern.compile(
          "\\b(between|separates?|separated|apart|gap|margin|lead of|within)\\b",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern RELATIVE =
      Pattern.compile(
          "(?is)^[\\s-]*(?:of (?:a|an) \\p{L}+\\s+)?(?:more|less|longer|shorter|faster|slower|quicker|sooner|later|earlier|hotter|cooler|warmer|colder|heavier|lighter|larger|smaller|bigger|louder|quieter|cheaper|dearer|better|worse|ahead|behind|extra|-?\\s?(?:difference|gap|margin|lead|advantage|head start))\\b(?!\\s+than\\s+(?:(?:its|the|their|what|it)\\s+)?(?:own\\s+)?(?:dial|was asked|asked|we asked|you ask|you set|we set|sett?ing|set|number|knob|thermostat|display)|\\s+than\\s+(?:wanted|intended|expected|the target|(?:it|they) should|(?:we|you) want)\\b).*");

  private static final Pattern DIFFERENCE =
      Pattern.compile(
          "(?is).*\\bgive or take\\s+$|.*\\b(?:difference|gap|margin|lead|advantage|distance)\\s+(?:of|is|was|between .{0,30} (?:is|was))\\s+(?:\\p{L}+\\s+)?$");

  /** "Beats both by forty seconds", "missed it by a minute". */
  private static final Pattern LEAD_BY =
      Pattern.compile(
          "(?is).*\\b(?:beats?|beaten|leads?|led|trails?|trailed|miss(?:es|ed)?|outpace[sd]?|faster|slower|quicker|ahead|behind)\\b[^.;]{0,40}\\bby\\s+(?:\\p{L}+\\s+)?$");

  private static final Pattern BY =
      Pattern.compile(
          "(?is).*\\b(by|lost|loses?|dropp?e?[ds]|gain(?:s|ed)?|another|an extra|a further|an additional|saves?(?: you)?|saving|difference (?:of|is)|extra)\\s+(?:\\p{L}+\\s+)?$");

  private final Figures figures;
  private final Constants constants;
  private final MethodNumbers method;
  private final MeasuredNumbers measured;

  NumberReader(Figures figures, FigureSearch search, Constants constants) {
    this.figures = figures;
    this.constants = constants;
    this.method = new MethodNumbers(constants);
    this.measured =
        new MeasuredNumbers(figures, search, constants, method, new FigureReading(figures));
  }

  @Override
  public void read(SentenceClaims sentence) {
    List<NumberPhrase> numbers = sentence.freeNumbers();
    for (NumberPhrase bare : numbers) {
      if (sentence.isFree(bare.start(), bare.end())) {
        String listed = NumberProducts.listed(sentence, numbers, bare);
        NumberPhrase number = goingOn(sentence, bare, listed);
        if (NumberKinds.isCheckable(sentence, number)) {
          read(sentence, number, listed);
        }
      }
    }
  }

  /** "The Dunnock weighs 5.8 kilos, the Larch 9.1": a bare number of what was just spoken of. */
  private NumberPhrase goingOn(
      SentenceClaims sentence, NumberPhrase number, @Nullable String listed) {
    SentenceClaims.@Nullable Spoken spoken = sentence.spoken();
    @Nullable String product =
        listed != null ? listed : sentence.context().productAt(number.start(), number.end());
    boolean bare = number.unit() == null && number.scale() == Scale.NONE;
    if (bare && number.decimals() == 1 && Wording.is(sentence.text(), "(?is).*\\blightness\\b.*")) {
      return number.as(number.low(), number.step(), Unit.LIGHTNESS, Scale.NONE);
    }
    if (!bare
        || spoken == null
        || product == null
        || spoken.number().unit() == null
        || number.decimals() == 0 && number.low() < 13
        || NumberProducts.isGeneric(sentence, number)) {
      return number;
    }
    Unit unit = spoken.number().unit();
    NumberPhrase measured = number.as(number.low(), number.step(), unit, Scale.NONE);
    boolean holds =
        figures.of(product).stream()
            .filter(sentence::isParallel)
            .anyMatch(f -> Judge.rule(measured, f, unit).finding() == Finding.SUPPORTED);
    boolean score =
        figures.of(product).stream()
            .filter(f -> f.isScore() || f.kind() == Figure.Kind.MARK)
            .anyMatch(f -> Judge.rule(number, f, null).finding() == Finding.SUPPORTED);
    boolean elliptic =
        !score
            && sentence.text().strip().length() < LONGEST_ELLIPSIS
            && !NumberKinds.hasScoreWord(sentence.text())
            && ELLIPSIS.matcher(Wording.before(sentence.text(), number.start())).matches();
    return holds || elliptic ? measured : number;
  }

  /** Longer sentences say themselves what they speak of. */
  private static final int LONGEST_ELLIPSIS = 60;

  private static final Pattern ELLIPSIS =
      Pattern.compile(
          "(?is).*\\b(?:it is|it was|it['’]s|that is|this is|shows|only|with|(?:was|is|were)|(?-i:(?:the )?\\p{Lu}\\p{L}+))\\s+(?:only\\s+|just\\s+)?$");

  private void read(SentenceClaims sentence, NumberPhrase number, @Nullable String listed) {
    Focus focus = sentence.context().at(number.start(), number.end());
    Optional<Constants.Constant> constant = constants.matching(number, focus);
    if (number.scale() == Scale.OUT_OF_FOUR && number.low() > 4) {
      return;
    }
    Optional<Constants.Constant> limit = constants.limit(number);
    if (limit.isPresent()
        && Wording.is(
            Wording.after(sentence.text(), number.end()),
            "(?is)^[\\s-]*(?:cap|limit|mark|maximum|deadline|cut-?off|stop)\\b.*")) {
      method.constant(sentence, number, limit.get());
      return;
    }
    if (limit.isPresent()
        && MethodNumbers.LIMIT_BEFORE
            .matcher(Wording.before(sentence.text(), number.start()))
            .matches()) {
      method.constant(sentence, number, limit.get());
      return;
    }
    Optional<Constants.Constant> dual = method.dualOfDefinition(sentence, number);
    if (dual.isPresent()) {
      method.constant(sentence, number, dual.get());
      return;
    }
    if (MethodNumbers.isSetting(sentence, number)
        && constant.isEmpty()
        && Voice.of(sentence.text(), number.start(), List.of()) == Voice.SUPPOSED) {
      sentence.add(
          number,
          Kind.QUANTITY,
          new Ruling(Finding.UNCLEAR, null, Voice.SUPPOSED.why()),
          List.of());
      return;
    }
    if (MethodNumbers.isSetting(sentence, number)) {
      method.setting(sentence, number, focus);
      return;
    }
    if (constant.isPresent() && MethodNumbers.speaksOfTheMethod(sentence, number)) {
      method.constant(sentence, number, constant.get());
      return;
    }
    boolean loss =
        number.unit() == Unit.PERCENT
            && Wording.is(sentence.text(), "(?is).*\\b(weigh(s|ed)|lighter|lost)\\b.*");
    boolean by =
        DIFFERENCE.matcher(Wording.before(sentence.text(), number.start())).matches()
            || LEAD_BY.matcher(Wording.before(sentence.text(), number.start())).matches()
            || number.scale() == Scale.MONEY && number.low() < figures.lowestPrice() / 2
            || (number.scale() == Scale.MONEY || number.scale() == Scale.POINTS)
                && BY.matcher(Wording.before(sentence.text(), number.start())).matches();
    boolean ofTheDial =
        Wording.is(
            sentence.text(),
            "(?is).*\\b(?:whatever|than|what) (?:you|we) (?:ask|asked|set|dial)\\b.*");
    if (by
        || !loss
            && !ofTheDial
            && RELATIVE.matcher(Wording.after(sentence.text(), number.end())).matches()) {
      sentence.add(
          number,
          Kind.COMPARISON,
          new Ruling(
              Finding.UNCLEAR, null, "a difference, and the text does not name both its ends"),
          List.of());
      return;
    }
    if (number.unit() == Unit.PERCENT
        && Wording.is(
            sentence.text(),
            "(?is).*\\b(probabilit\\p{L}+|intervals?|confiden\\p{L}+|chances?|certain\\p{L}*|odds)\\b.*")) {
      sentence.add(
          number,
          Kind.QUANTITY,
          new Ruling(Finding.UNCLEAR, null, "a probability; the verdict page gives it"),
          List.of());
      return;
    }
    List<String> products = NumberProducts.products(sentence, number, listed);
    if (number.scale() == Scale.POINTS && GAP.matcher(sentence.text()).find()) {
      sentence.add(
          number,
          Kind.COMPARISON,
          new Ruling(Finding.UNCLEAR, null, "a gap, and the text does not name both its ends"),
          List.of());
    } else if (contradictsItsVerb(sentence, number)) {
      sentence.add(
          number,
          Kind.QUANTITY,
          new Ruling(Finding.UNCLEAR, null, "the unit does not go with the verb"),
          List.of());
    } else if (products.isEmpty()) {
      method.withoutProduct(sentence, number, focus);
    } else {
      measured.rule(sentence, number, focus, products, listed != null);
    }
  }

  /** "Weighed 12 minutes", "took 8 kg": one of the two words is wrong, nobody knows which. */
  private static boolean contradictsItsVerb(SentenceClaims sentence, NumberPhrase number) {
    Unit unit = number.unit();
    String before = Wording.before(sentence.text(), number.start());
    if (unit == null) {
      return false;
    }
    boolean weighs = Wording.is(before, "(?is).*\\bweigh(s|ed|ing)?\\s+(only\\s+|just\\s+)?$");
    boolean takes = Wording.is(before, "(?is).*\\b(took|takes)\\s+(only\\s+|just\\s+)?$");
    return weighs && unit.dimension() != Dimension.MASS
        || takes && (unit.dimension() == Dimension.MASS || unit.dimension() == Dimension.LENGTH);
  }
}
