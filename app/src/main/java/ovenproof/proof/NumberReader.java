package ovenproof.proof;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.Judge.Ruling;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;

/** Plain numbers: quantities with units, scores, prices. */
final class NumberReader implements ClaimReader {
  /** A figure that fits this much worse than the best may still be meant. */
  private static final double NEAR = 2.2;

  /** What a figure gains that the number before in the sentence spoke of. */
  private static final double PARALLEL = 2.5;

  /** A number that is stated finely fits a wrong figure by chance the more rarely. */
  private static double near(NumberPhrase number, Figure figure) {
    double fineness = number.low() == 0 ? 1 : number.step() / Math.abs(number.low());
    return switch (figure.kind()) {
      case CRITERION_SCORE, MARK -> NEAR;
      case TEST_SCORE -> 2 * NEAR;
      default -> fineness <= 0.02 ? 3 * NEAR : fineness <= 0.06 ? 2 * NEAR : NEAR;
    };
  }

  private static final Pattern SCORE_WORD =
      Pattern.compile(
          "\\b(scor(e[sd]?|ing)|points?|out of (ten|10)|overall|totals?|rating|rated|marks?|marked|earn(s|ed)|gets?|got|gave|given|ends?|ended|finish(es|ed)|sub-scores?|leads?|lies|tally|verdict|crispness|juiciness|moistness|liking|flavour|taste|texture)\\b",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern NO_SCORE =
      Pattern.compile(
          "(?is).*\\b(version|figure|fig\\.?|chapter|section|page|table|step|method|part|no\\.?|firmware|v|factor of|factor|ratio of|times)\\s*$");
  private static final Pattern NOT =
      Pattern.compile(
          "(?is).*\\b(not|never|neither|nor|none|nobody|\\w+n['’]t|cannot|failed to|fails to|without being|still un\\w+|un(done|finished|cooked))\\b(?:(?!\\b(but|and|until)\\b)[^,;.])*$");
  private static final Pattern SETTING_BEFORE =
      Pattern.compile(
          "(?is).*\\b(set(ting)?s?( (it|them|both|all|each|every oven))?( at| to| of)?|dial(led)?( (at|to|of|in|says|said|stood|stands|read|reads)){0,2}|asks? (it |them )?for|asked (it |them )?for|thermostat( at| to)|cap( of| at| is| was)?|limit( of| at| is| was)?|target( of)?|baked? at|roast(ed)? at|bakes at|for \\d+ minutes at|minutes at|hours? at|preset)\\s+(a |an |the |their |our )?$");
  private static final Pattern LIMIT_BEFORE =
      Pattern.compile(
          "(?is).*\\b(limit|cap|capped|ceiling|cannot exceed|can['’]t exceed|stops?|allow(s|ed)?|allowance|maximum of|at most)(\\s+(is|was|at|of|to|the|our|all|be))*\\s+$");
  private static final Pattern SETTING_AFTER =
      Pattern.compile(
          "(?is)^\\s*(on the dial|setting|cap\\b|limit\\b|mark on|as (the )?(setting|limit|cap)).*");
  private static final Pattern CONSTANT_SUBJECT =
      Pattern.compile(
          "\\b(we|each|every|all|any|our|everything|everyone|method|rule|the ovens?|a batch|the cap|they|must|is allowed|are allowed|stops?|stopped|shake|shaken|turn(ed)?)\\b",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern GAP =
      Pattern.compile(
          "\\b(between|separates?|separated|apart|gap|margin|lead of|within)\\b",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern RELATIVE =
      Pattern.compile(
          "(?is)^[\\s-]*(?:of (?:a|an) \\p{L}+\\s+)?(?:more|less|longer|shorter|faster|slower|quicker|sooner|later|earlier|hotter|cooler|warmer|colder|heavier|lighter|larger|smaller|bigger|louder|quieter|cheaper|dearer|better|worse|ahead|behind|extra|-?\\s?(?:difference|gap|margin|lead|advantage|head start))\\b(?!\\s+than\\s+(?:its|the|their|what)\\s+(?:own\\s+)?(?:dial|sett?ing|set|number|knob|thermostat|display)).*");
  private static final Pattern DIFFERENCE =
      Pattern.compile(
          "(?is).*\\bgive or take\\s+$|.*\\b(?:difference|gap|margin|lead|advantage|distance)\\s+(?:of|is|was|between .{0,30} (?:is|was))\\s+(?:\\p{L}+\\s+)?$");
  private static final Pattern BY =
      Pattern.compile(
          "(?is).*\\b(by|lost|loses?|dropp?e?[ds]|gain(?:s|ed)?|another|an extra|a further|an additional|saves?(?: you)?|saving|difference (?:of|is)|extra)\\s+(?:\\p{L}+\\s+)?$");
  private static final Pattern SINGLE_RUN =
      Pattern.compile(
          "(?is).*\\b(one (of the|of its) (three )?runs?|(in|on) one (run|day|occasion|attempt)|one run|once|run (one|two|three|\\d)|(best|worst|first|second|third|last|fastest|slowest|longest|shortest) (run|attempt|try)|at (its )?(best|worst|first)|no hotter than|nothing above|never (more|less|above|below|over|under|longer))\\b.*");

  private final Figures figures;
  private final FigureSearch search;
  private final Constants constants;

  NumberReader(Figures figures, FigureSearch search, Constants constants) {
    this.figures = figures;
    this.search = search;
    this.constants = constants;
  }

  @Override
  public void read(SentenceClaims sentence) {
    List<NumberPhrase> numbers = sentence.freeNumbers();
    List<NumberPhrase> checkable = numbers.stream().filter(n -> isCheckable(sentence, n)).toList();
    for (NumberPhrase number : checkable) {
      if (sentence.isFree(number.start(), number.end())) {
        read(sentence, number, listed(sentence, numbers, number));
      }
    }
  }

  static boolean isCheckable(SentenceClaims sentence, NumberPhrase number) {
    return number.unit() != null && !isHourOfEnergy(sentence, number)
        || isScore(sentence, number)
        || number.scale() == Scale.MONEY
        || number.scale() == Scale.DEGREES;
  }

  /** "An hour of heating uses 1.07 kWh": the time that an energy is of. */
  private static boolean isHourOfEnergy(SentenceClaims sentence, NumberPhrase number) {
    return number.unit() == Unit.HOUR
        && number.low() == 1
        && (sentence.numbers().stream()
                .anyMatch(n -> n.unit() != null && n.unit().dimension() == Dimension.ENERGY)
            || Wording.is(
                sentence.text(),
                "(?is).*\\b(kwh|kilowatts?|electricity|energy|draws?|uses?|costs?|consum\\p{L}+)\\b.*"));
  }

  /** "Alder and Hornbeam scored 7.2 and 6.7": the number's own product, or null. */
  static @Nullable String listed(
      SentenceClaims sentence, List<NumberPhrase> numbers, NumberPhrase number) {
    List<NumberPhrase> list = new ArrayList<>();
    NumberPhrase last = null;
    for (NumberPhrase next : numbers) {
      boolean joined =
          last != null
              && Wording.is(
                  sentence.text().substring(last.end(), next.start()),
                  "(?is)\\s*(,|/|and|,\\s*and|&|against|to|versus|vs\\.?)\\s*");
      if (!joined) {
        if (list.contains(number)) {
          break;
        }
        list.clear();
      }
      list.add(next);
      last = next;
    }
    if (list.size() < 2 || !list.contains(number)) {
      return null;
    }
    List<String> products = sentence.context().listedProductsAt(list.get(0).start());
    boolean against =
        list.size() == 2
            && Wording.is(
                sentence.text().substring(list.get(0).end(), list.get(1).start()),
                "(?is)\\s*(against|to|versus|vs\\.?)\\s*");
    boolean bare = list.size() == 2 && sentence.context().mentions().isEmpty();
    if (bare && products.size() != 2) {
      products = sentence.context().pair();
    }
    if (against && products.size() != 2) {
      products = sentence.context().pairAt(list.get(0).start());
    }
    return products.size() == list.size() ? products.get(list.indexOf(number)) : null;
  }

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
      constant(sentence, number, limit.get());
      return;
    }
    if (limit.isPresent()
        && LIMIT_BEFORE.matcher(Wording.before(sentence.text(), number.start())).matches()) {
      constant(sentence, number, limit.get());
      return;
    }
    Optional<Constants.Constant> dual = dualOfDefinition(sentence, number);
    if (dual.isPresent()) {
      constant(sentence, number, dual.get());
      return;
    }
    if (isSetting(sentence, number)) {
      setting(sentence, number, focus);
      return;
    }
    if (constant.isPresent() && speaksOfTheMethod(sentence, number)) {
      constant(sentence, number, constant.get());
      return;
    }
    boolean loss =
        number.unit() == Unit.PERCENT
            && Wording.is(sentence.text(), "(?is).*\\b(weigh(s|ed)|lighter|lost)\\b.*");
    boolean by =
        DIFFERENCE.matcher(Wording.before(sentence.text(), number.start())).matches()
            || number.scale() == Scale.MONEY && number.low() < figures.lowestPrice() / 2
            || (number.scale() == Scale.MONEY || number.scale() == Scale.POINTS)
                && BY.matcher(Wording.before(sentence.text(), number.start())).matches();
    if (by || !loss && RELATIVE.matcher(Wording.after(sentence.text(), number.end())).matches()) {
      add(
          sentence,
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
            "(?is).*\\b(probabilit\\p{L}+|confiden\\p{L}+|chances?|certain\\p{L}*|odds)\\b.*")) {
      add(
          sentence,
          number,
          Kind.QUANTITY,
          new Ruling(Finding.UNCLEAR, null, "a probability; the verdict page gives it"),
          List.of());
      return;
    }
    List<String> products = products(sentence, number, listed);
    if (number.scale() == Scale.POINTS && GAP.matcher(sentence.text()).find()) {
      add(
          sentence,
          number,
          Kind.COMPARISON,
          new Ruling(Finding.UNCLEAR, null, "a gap, and the text does not name both its ends"),
          List.of());
    } else if (contradictsItsVerb(sentence, number)) {
      add(
          sentence,
          number,
          Kind.QUANTITY,
          new Ruling(Finding.UNCLEAR, null, "the unit does not go with the verb"),
          List.of());
    } else if (products.isEmpty()) {
      withoutProduct(sentence, number, focus);
    } else {
      rule(sentence, number, focus, products, listed != null);
    }
  }

  /** "220 °C (428 °F)": the second states the first again in the other unit. */
  private Optional<Constants.Constant> dualOfDefinition(
      SentenceClaims sentence, NumberPhrase number) {
    return sentence.numbers().stream()
        .filter(n -> n.end() <= number.start() && n.unit() != null && n.unit() != number.unit())
        .filter(
            n ->
                Wording.is(
                    sentence.text().substring(n.end(), number.start()),
                    "(?is)\\s*[(/,]\\s*(?:or |that is |i\\.e\\. |that['’]s )?"))
        .findFirst()
        .flatMap(constants::definition)
        .filter(c -> constants.definition(number).isPresent());
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

  private static List<String> products(
      SentenceClaims sentence, NumberPhrase number, @Nullable String listed) {
    if (listed != null) {
      return List.of(listed);
    }
    if (isGeneric(sentence, number)) {
      return List.of();
    }
    List<String> listing = sentence.context().listedAfter(number.end());
    if (listing.size() > 1) {
      return listing;
    }
    Set<String> joint = sentence.context().jointProductsAt(number.start());
    List<String> products = new ArrayList<>(joint);
    if (products.isEmpty()) {
      String one = sentence.context().productAt(number.start(), number.end());
      if (one != null) {
        products.add(one);
      }
    }
    return products;
  }

  private static final Pattern GENERIC =
      Pattern.compile(
          "(?is).*\\b(an oven|any oven|most ovens|ovens|every oven|each oven|everybody(?: else)?|everyone(?: else)?(?:['’]s)?|the rest|the others|the other \\p{L}+|all the others?|the remaining \\p{L}+|the other \\p{L}+|anybody|you should expect|you can expect|most of them)\\b[^;]*$");

  /** "An oven draws between 1.0 and 1.2 kWh" speaks of none in particular. */
  private static boolean isGeneric(SentenceClaims sentence, NumberPhrase number) {
    Matcher matcher = GENERIC.matcher(Wording.before(sentence.text(), number.start()));
    return matcher.matches()
        && sentence.context().mentions().stream()
            .noneMatch(m -> m.start() < number.start() && m.start() > matcher.start(1) - 1)
        && sentence.context().mentions().stream()
            .noneMatch(m -> m.start() >= number.end() && m.start() < number.end() + 12);
  }

  /** Whether the sentence says what all ovens get, rather than what one of them did. */
  private static boolean speaksOfTheMethod(SentenceClaims sentence, NumberPhrase number) {
    boolean named =
        sentence.context().mentions().stream().anyMatch(m -> m.start() < number.start());
    return !named && CONSTANT_SUBJECT.matcher(sentence.text()).find();
  }

  private void rule(
      SentenceClaims sentence,
      NumberPhrase number,
      Focus focus,
      List<String> products,
      boolean isListed) {
    Kind kind = isScore(sentence, number) ? Kind.SCORE : Kind.QUANTITY;
    NumberPhrase asked = kept(sentence, negated(sentence, number));
    List<Ruling> rulings = new ArrayList<>();
    Set<String> evidence = new LinkedHashSet<>();
    boolean plate = false;
    for (String product : products) {
      List<FigureSearch.Fit> fits =
          search.fits(
              focus,
              product,
              kindOf(sentence, number),
              f ->
                  implausible(number, f)
                      + (sentence.isParallel(f) ? PARALLEL : 0)
                      + signed(sentence, number, f));
      if (fits.isEmpty()) {
        nothingMeasured(sentence, number, focus, kind, product);
        return;
      }
      Ruling ruling = together(sentence, asked, focus, product, fits);
      rulings.add(ruling);
      if (ruling.finding() == Finding.SUPPORTED) {
        sentence.speaksOf(FigureSearch.top(fits).get(0));
      }
      FigureSearch.top(fits).forEach(f -> evidence.addAll(f.evidence()));
      plate |= fits.get(0).figure().kind() == Figure.Kind.NAMEPLATE;
    }
    Ruling worst = worst(rulings);
    Voice voice = voice(sentence, number);
    if (voice != Voice.OURS && worst.finding() != Finding.SUPPORTED && !plate) {
      add(
          sentence,
          number,
          kind,
          new Ruling(Finding.UNCLEAR, worst.expected(), voice.why()),
          List.of());
      return;
    }
    if (worst.finding() == Finding.CONTRADICTED && products.size() == 1) {
      worst = earlierPrice(sentence, asked, products.get(0), worst);
      worst = elsewhere(sentence, asked, focus, products.get(0), worst);
    }
    if (worst.finding() == Finding.CONTRADICTED
        && products.size() == 1
        && !isListed
        && sentence.context().isStale()) {
      worst =
          new Ruling(
              Finding.UNCLEAR,
              worst.expected(),
              "which product is this? The paragraph names none; of the last one named: "
                  + worst.why());
    }
    if (worst.finding() != Finding.SUPPORTED && saysTheMethod(sentence, number, focus, products)) {
      return;
    }
    add(sentence, number, kind, worst, evidence.stream().limit(6).toList());
  }

  private static Voice voice(SentenceClaims sentence, NumberPhrase number) {
    List<Integer> named =
        sentence.context().mentions().stream()
            .filter(m -> !m.isPronoun())
            .map(Mentions.ProductMention::start)
            .toList();
    return Voice.of(sentence.text(), number.start(), named);
  }

  private static final Pattern EARLIER =
      Pattern.compile(
          "\\b(was|were|used to|had been|bought|paid|launch(ed)?|originally|before|earlier|once|at first|started|list(ed)?|instead of|down|from|reduced|dropped|fell|"
              + "january|february|march|april|may|june|july|august|september|october|november|december)\\b",
          Pattern.CASE_INSENSITIVE);

  /** "In February it was €239": an earlier price holds where the words speak of then. */
  private Ruling earlierPrice(
      SentenceClaims sentence, NumberPhrase number, String product, Ruling ruling) {
    boolean then =
        number.scale() == Scale.MONEY
            && EARLIER.matcher(sentence.text()).find()
            && !Wording.is(
                Wording.before(sentence.text(), number.start()),
                "(?is).*\\b(now|today|currently|at present|down to|fallen to|to)\\s+(?:\\p{L}+\\s+){0,2}$");
    return then
        ? figures.earlierPrices(product).stream()
            .filter(p -> Judge.rule(number, p, null).finding() == Finding.SUPPORTED)
            .findFirst()
            .map(p -> new Ruling(Finding.SUPPORTED, ruling.expected(), p.label()))
            .orElse(ruling)
        : ruling;
  }

  /** Where the product was only carried over, a number that fits another one named just before. */
  private Ruling elsewhere(
      SentenceClaims sentence, NumberPhrase number, Focus focus, String product, Ruling ruling) {
    Context context = sentence.context();
    boolean hedged = number.hedge() != Hedge.PLAIN && number.hedge() != Hedge.ABOUT;
    boolean opposed =
        Wording.is(
            Wording.before(sentence.text(), number.start()),
            "(?is).*\\b(instead of|rather than|against|compared with|compared to|versus)\\s+$");
    if (context.isFirmAt(number.start()) && !opposed || hedged) {
      return ruling;
    }
    for (String other : context.around()) {
      List<FigureSearch.Fit> fits =
          search.fits(focus, other, kindOf(sentence, number), f -> implausible(number, f));
      if (!other.equals(product) && !fits.isEmpty()) {
        Ruling there = together(sentence, number, focus, other, fits);
        if (there.finding() == Finding.SUPPORTED) {
          return new Ruling(
              Finding.UNCLEAR, ruling.expected(), ruling.why() + "; it would fit " + name(other));
        }
      }
    }
    return ruling;
  }

  /** A definition or limit repeated beside a product: "… to reach 220 °C". */
  private boolean saysTheMethod(
      SentenceClaims sentence, NumberPhrase number, Focus focus, List<String> products) {
    Optional<Constants.Constant> constant =
        constants.matching(number, focus).or(() -> constants.definition(number));
    boolean definition =
        constant.isPresent()
            && products.size() == 1
            && constant.get().isLimit()
            && Wording.is(
                sentence.text().substring(0, number.start()),
                "(?is).*\\b(to|past|over|above|below|under|exceed(s|ed)?|reach(es|ed)?|at most|cap(ped)?|capped at|limit|than|hit|get to|got to)\\s+(the |our |its |a )?$");
    boolean beside =
        constant.isPresent()
            && constant.get().what().startsWith("definition")
            && isTemperature(number)
            && BY_THE_WAY.matcher(Wording.before(sentence.text(), number.start())).matches()
            && sentence.numbers().stream()
                .anyMatch(n -> n.unit() != null && n.unit().dimension() == Dimension.TIME);
    boolean sample =
        constants
            .matching(number, focus)
            .filter(c -> c.what().startsWith("sample") && focus.tests().contains(c.test()))
            .isPresent();
    if (sample) {
      constant(sentence, number, constants.matching(number, focus).orElseThrow());
      return true;
    }
    if (definition || beside) {
      constant(sentence, number, constant.get());
    }
    return definition || beside;
  }

  /** "At 220 °C in under twelve minutes", "57 s after 220 °C". */
  private static final Pattern BY_THE_WAY =
      Pattern.compile(
          "(?is).*\\b(are at|is at|was at|were at|at|after|before|until|till|for|by)\\s+$");

  private void nothingMeasured(
      SentenceClaims sentence, NumberPhrase number, Focus focus, Kind kind, String product) {
    Optional<Constants.Constant> constant = constants.matching(number, focus);
    if (constant.isPresent()) {
      constant(sentence, number, constant.get());
      return;
    }
    add(
        sentence,
        number,
        kind,
        new Ruling(
            Finding.UNSUPPORTED, null, "nothing of this kind was measured of " + name(product)),
        List.of());
  }

  private static final Pattern KEPT =
      Pattern.compile(
          "(?is).*\\b(?:kept|keeps?|retain\\p{L}*|held on to|left with|still weighed|remained)\\s+(?:\\p{L}+\\s+)?$");

  /** "Kept 85 % of its weight" says that 15 % were lost. */
  private static NumberPhrase kept(SentenceClaims sentence, NumberPhrase number) {
    boolean share = number.unit() == Unit.PERCENT && number.low() > 50 && !number.isRange();
    return share && KEPT.matcher(Wording.before(sentence.text(), number.start())).matches()
        ? number.as(100 - number.low(), number.step(), Unit.PERCENT, Scale.NONE)
        : number;
  }

  /** "Not done after nine minutes" says: it took longer. */
  private static NumberPhrase negated(SentenceClaims sentence, NumberPhrase number) {
    boolean denied = NOT.matcher(Wording.before(sentence.text(), number.start())).matches();
    if (denied && number.hedge() == Hedge.OVER) {
      return number.hedged(Hedge.AT_MOST);
    }
    boolean time = number.unit() != null && number.unit().dimension() == Dimension.TIME;
    boolean plain =
        number.hedge() == Hedge.PLAIN
            || number.hedge() == Hedge.UNDER
            || number.hedge() == Hedge.AT_MOST;
    boolean not = denied;
    boolean afterwards =
        number.start() < 20
            && Wording.is(
                sentence.text().substring(0, number.start()),
                "(?is)[\\s*•>-]*(even )?(after|at|by)\\s+")
            && Wording.is(sentence.text(), "(?is).*\\b(not|never|\\w+n['’]t|failed to)\\b.*");
    boolean still =
        Wording.is(
                Wording.before(sentence.text(), number.start()),
                "(?is).*\\b(after|at|by)\\s+(the end of\\s+)?(our\\s+|the\\s+|those\\s+)?$")
            && Wording.is(
                Wording.after(sentence.text(), number.end()),
                "(?is)^[^.;]{0,40}\\b(still|not|never|\\w+n['’]t|un(done|finished|cooked))\\b.*");
    return time && plain && (not || afterwards || still) ? number.hedged(Hedge.AT_LEAST) : number;
  }

  /** "+0.5 K", "−7 K": a number with a sign is a deviation. */
  private static double signed(SentenceClaims sentence, NumberPhrase number, Figure figure) {
    boolean sign =
        Wording.is(Wording.before(sentence.text(), number.start()), "(?s).*[\\s(]?[+−]\\s?$");
    boolean deviation =
        figure.take().equals("offset") || figure.take().equals("lightness-difference");
    return sign && deviation ? 4 : 0;
  }

  /** Several figures fit the words equally well: only what they agree on is found. */
  private Ruling together(
      SentenceClaims sentence,
      NumberPhrase number,
      Focus focus,
      String product,
      List<FigureSearch.Fit> fits) {
    List<Figure> fitting = withTwins(FigureSearch.top(fits), fits);
    List<Ruling> rulings = fitting.stream().map(f -> reading(number, f, sentence.text())).toList();
    for (int i = 0; i < rulings.size(); i++) {
      if (rulings.get(i).finding() == Finding.SUPPORTED) {
        sentence.speaksOf(fitting.get(i));
        boolean decided = FigureSearch.top(fits).size() <= 3 || agree(rulings);
        return new Ruling(
            decided ? Finding.SUPPORTED : Finding.UNCLEAR,
            rulings.get(i).expected(),
            label(product, fitting.get(i)) + ": " + rulings.get(i).why());
      }
    }
    Optional<Figure> other = nearly(number, sentence, focus, fits, fitting);
    Ruling first = rulings.get(0);
    if (other.isPresent() && first.finding() == Finding.CONTRADICTED) {
      return new Ruling(
          Finding.UNCLEAR,
          first.expected(),
          label(product, fitting.get(0))
              + ": "
              + first.why()
              + "; it would fit "
              + label(product, other.get()));
    }
    if (agree(rulings) && (fitting.size() == 1 || pointed(focus, fitting))) {
      return new Ruling(
          first.finding(), first.expected(), label(product, fitting.get(0)) + ": " + first.why());
    }
    return agree(rulings) && fitting.size() <= 4
        ? new Ruling(
            first.finding(), first.expected(), label(product, fitting.get(0)) + ": " + first.why())
        : new Ruling(
            Finding.UNCLEAR,
            first.expected(),
            "the words fit several figures of " + name(product) + ", and they differ");
  }

  /** "8.1 for crispness" may be the tasters' mark or the score made of it. */
  private static List<Figure> withTwins(List<Figure> top, List<FigureSearch.Fit> fits) {
    List<Figure> all = new ArrayList<>(top);
    for (FigureSearch.Fit fit : fits) {
      boolean twin = top.stream().anyMatch(f -> isTwin(f, fit.figure()));
      if (twin && !all.contains(fit.figure())) {
        all.add(fit.figure());
      }
    }
    return all;
  }

  private static boolean isTwin(Figure a, Figure b) {
    boolean kinds =
        a.kind() == Figure.Kind.MARK && b.kind() == Figure.Kind.CRITERION_SCORE
            || b.kind() == Figure.Kind.MARK && a.kind() == Figure.Kind.CRITERION_SCORE;
    return kinds && java.util.Objects.equals(a.test(), b.test()) && a.label().equals(b.label());
  }

  private static boolean agree(List<Ruling> rulings) {
    return rulings.stream().allMatch(r -> r.finding() == rulings.get(0).finding());
  }

  private static boolean pointed(Focus focus, List<Figure> fitting) {
    return fitting.stream().allMatch(f -> f.words().stream().anyMatch(w -> focus.weight(w) > 1.5));
  }

  /** A figure that fits the words a little less well, and has just this value. */
  private Optional<Figure> nearly(
      NumberPhrase number,
      SentenceClaims sentence,
      Focus focus,
      List<FigureSearch.Fit> fits,
      List<Figure> fitting) {
    double best = fits.get(0).points();
    boolean marked = fitting.get(0).kind() == Figure.Kind.MARK && pointed(focus, fitting);
    return fits.stream()
        .filter(
            f ->
                f.points() > best - margin(number, f.figure(), fitting.get(0), marked)
                    && !fitting.contains(f.figure()))
        .map(FigureSearch.Fit::figure)
        .filter(f -> number.hedge() == Hedge.PLAIN || number.hedge() == Hedge.ABOUT)
        .filter(f -> f.kind() != Figure.Kind.MARK || spokenOf(focus, f))
        .filter(f -> reading(number, f, sentence.text()).finding() == Finding.SUPPORTED)
        .findFirst();
  }

  /** A figure measured beside a plate's may be meant wherever the plate's may. */
  private static double margin(NumberPhrase number, Figure other, Figure top, boolean marked) {
    if (top.kind() == Figure.Kind.NAMEPLATE && other.kind() == Figure.Kind.FACT) {
      return Double.POSITIVE_INFINITY;
    }
    boolean sameTest = other.test() != null && other.test().equals(top.test());
    return marked
        ? NEAR
        : other.kind() == Figure.Kind.MARK && sameTest ? 3 * NEAR : near(number, other);
  }

  /** Whether a mark's own word was said lately. */
  private static boolean spokenOf(Focus focus, Figure mark) {
    return mark.words().stream().anyMatch(w -> focus.weight(w) >= 0.3);
  }

  private String label(String product, Figure figure) {
    String test =
        figure.test() == null || figure.kind() == Figure.Kind.TEST_SCORE
            ? ""
            : figures.campaign().method().test(figure.test()).map(t -> t.name() + ", ").orElse("");
    String score = figure.isScore() ? " score" : "";
    String batch = figure.batch() == null ? "" : ", batch " + figure.batch();
    return name(product) + ", " + test + figure.label() + score + batch;
  }

  /** "Degrees" without a letter may be either; one run may be meant where the text says so. */
  private static Ruling reading(NumberPhrase number, Figure figure, String text) {
    if (number.scale() == Scale.DEGREES) {
      boolean difference = figure.unit() == Unit.KELVIN;
      Figure sized = sized(number, figure);
      Ruling celsius = Judge.rule(number, sized, difference ? Unit.KELVIN : Unit.CELSIUS);
      Ruling fahrenheit =
          Judge.rule(number, sized, difference ? Unit.FAHRENHEIT_DIFFERENCE : Unit.FAHRENHEIT);
      return celsius.finding() == Finding.SUPPORTED || fahrenheit.finding() != Finding.SUPPORTED
          ? celsius
          : fahrenheit;
    }
    Unit unit = number.unit();
    if (figure.unit() == Unit.KELVIN && unit != null && unit.dimension() == Dimension.TEMPERATURE) {
      unit = unit == Unit.FAHRENHEIT ? Unit.FAHRENHEIT_DIFFERENCE : Unit.KELVIN;
    }
    if (Judge.isBound(number, figure, unit) && !DONE_IN.matcher(before(text, number)).matches()) {
      return new Ruling(
          Finding.SUPPORTED, Judge.bounds(figure, unit, 0), "it was given up there, and not done");
    }
    Ruling mean = Judge.rule(number, sized(number, figure), unit);
    if (mean.finding() == Finding.CONTRADICTED && SINGLE_RUN.matcher(text).matches()) {
      for (double run : figure.runs()) {
        Ruling one = Judge.rule(number, sized(number, figure.withValue(run)), unit);
        if (one.finding() == Finding.SUPPORTED) {
          return one;
        }
      }
    }
    return mean;
  }

  private static String before(String text, NumberPhrase number) {
    return Wording.before(text, Math.min(number.start(), text.length()));
  }

  private static final Pattern DONE_IN =
      Pattern.compile(
          "(?is).*(?<!never )(?<!not )(?<!n['’]t )\\b(took|takes|taking|needed|needs|required|done in|done after|ready in|ready after|finished in|golden in|golden after|cooked in|baked in|managed|managed it in|there in|reached \\S+ \\S+ (?:in|after))\\s+(?:\\p{L}+\\s+){0,2}$");

  /** "18 degrees below the dial" states the size of a negative offset. */
  private static Figure sized(NumberPhrase number, Figure figure) {
    Double value = figure.value();
    boolean difference = figure.unit() == Unit.KELVIN || figure.unit() == Unit.LIGHTNESS;
    return value != null && value < 0 && number.low() >= 0 && difference
        ? figure.withValue(-value)
        : figure;
  }

  private static Ruling worst(List<Ruling> rulings) {
    for (Finding finding : List.of(Finding.CONTRADICTED, Finding.UNCLEAR, Finding.UNSUPPORTED)) {
      Optional<Ruling> found = rulings.stream().filter(r -> r.finding() == finding).findFirst();
      if (found.isPresent()) {
        return found.get();
      }
    }
    return rulings.get(0);
  }

  /** What the method gives every oven. */
  private static final Pattern EVERY_OVEN =
      Pattern.compile(
          "(?is)[\\s*•-]*(?:each|every|all)\\b.{0,60}\\b(?:baked?|cooked?|toasted|roasted|got|gets|ran|stayed|spent|for)\\b.*");

  private void withoutProduct(SentenceClaims sentence, NumberPhrase number, Focus focus) {
    Optional<Constants.Constant> constant = constants.matching(number, focus);
    if (constant.isPresent()) {
      constant(sentence, number, constant.get());
      return;
    }
    Kind kind = isScore(sentence, number) ? Kind.SCORE : Kind.QUANTITY;
    List<Constants.Constant> rules = constants.ofTests(number, focus);
    if (!rules.isEmpty() && EVERY_OVEN.matcher(sentence.text()).matches()) {
      Constants.Constant rule = rules.get(0);
      add(
          sentence,
          number,
          kind,
          new Ruling(
              Finding.CONTRADICTED, rule.quantity().toString(), "the method says " + rule.what()),
          List.of("method: " + rule.what()));
      return;
    }
    add(
        sentence,
        number,
        kind,
        new Ruling(Finding.UNCLEAR, null, "the text does not say which product this is"),
        List.of());
  }

  /** A number at "set to", "dial at": held against the method, not against what was measured. */
  private void setting(SentenceClaims sentence, NumberPhrase number, Focus focus) {
    Optional<Constants.Constant> constant = constants.matching(number, focus);
    if (constant.isPresent()) {
      constant(sentence, number, constant.get());
      return;
    }
    List<Constants.Constant> settings = constants.settings(number, focus);
    if (settings.isEmpty()) {
      withoutProduct(sentence, number, focus);
      return;
    }
    Constants.Constant first = settings.get(0);
    add(
        sentence,
        number,
        Kind.QUANTITY,
        new Ruling(
            settings.size() == 1 ? Finding.CONTRADICTED : Finding.UNCLEAR,
            first.quantity().toString(),
            "the method says " + first.quantity() + ": " + first.what()),
        List.of("method: " + first.what()));
  }

  private void constant(SentenceClaims sentence, NumberPhrase number, Constants.Constant constant) {
    add(
        sentence,
        number,
        Kind.QUANTITY,
        new Ruling(
            Finding.SUPPORTED,
            constant.quantity().toString(),
            "the method says so: " + constant.what()),
        List.of("method: " + constant.what()));
  }

  private void add(
      SentenceClaims sentence,
      NumberPhrase number,
      Kind kind,
      Ruling ruling,
      List<String> evidence) {
    sentence.add(
        number.start(),
        number.end(),
        kind,
        ruling.finding(),
        number.text(),
        ruling.expected(),
        evidence,
        ruling.why());
  }

  static Predicate<Figure> kindOf(SentenceClaims sentence, NumberPhrase number) {
    if (number.scale() == Scale.OUT_OF_FOUR) {
      return f -> f.take().equals("rated");
    }
    if (isScore(sentence, number)) {
      return f -> f.isScore() || f.kind() == Figure.Kind.MARK;
    }
    if (number.scale() == Scale.MONEY) {
      return f -> f.kind() == Figure.Kind.PRICE;
    }
    Unit unit = number.unit();
    if (number.scale() == Scale.DEGREES
        || unit != null && unit.dimension() == Dimension.TEMPERATURE) {
      return f -> of(f, Dimension.TEMPERATURE) || of(f, Dimension.TEMPERATURE_DIFFERENCE);
    }
    return f -> unit != null && of(f, unit.dimension());
  }

  /** Fifty degrees are a difference rather than an oven's temperature, and 200 are not. */
  private static double implausible(NumberPhrase number, Figure figure) {
    if (!isTemperature(number) || figure.unit() == null) {
      return 0;
    }
    double celsius = number.unit() == Unit.FAHRENHEIT ? (number.low() - 32) / 1.8 : number.low();
    double kelvin = number.unit() == Unit.FAHRENHEIT ? number.low() / 1.8 : number.low();
    boolean absolute = figure.unit().dimension() == Dimension.TEMPERATURE;
    return absolute ? (celsius < 45 ? -4 : 0) : kelvin > 100 ? -6 : 0;
  }

  static boolean isTemperature(NumberPhrase number) {
    return number.scale() == Scale.DEGREES
        || number.unit() != null && number.unit().dimension() == Dimension.TEMPERATURE;
  }

  private static boolean of(Figure figure, @Nullable Dimension dimension) {
    return !figure.isScore() && figure.unit() != null && figure.unit().dimension() == dimension;
  }

  /** "6.4 out of 10", "6.4 points", "scored 6.4", "overall 7.2", "Hornbeam 6.7". */
  static boolean isScore(SentenceClaims sentence, NumberPhrase number) {
    if (number.scale() == Scale.OUT_OF_TEN
        || number.scale() == Scale.POINTS
        || number.scale() == Scale.OUT_OF_FOUR) {
      return true;
    }
    boolean bare = number.unit() == null && number.scale() == Scale.NONE && number.high() <= 10;
    if (!bare) {
      return false;
    }
    String before = Wording.before(sentence.text(), number.start());
    String after = Wording.after(sentence.text(), number.end());
    if (NO_SCORE.matcher(before).matches() || Wording.is(after, "(?is)^\\s*[×x:/].*")) {
      return false;
    }
    boolean decimal = number.decimals() == 1 || number.decimals() == 2;
    if (decimal && !Wording.is(number.text(), "(?is).*\\b(half|quarter|third)s?\\b.*")) {
      return SCORE_WORD.matcher(sentence.text()).find()
          || Wording.is(
              after,
              "(?is)^\\s*(?:[.,;:!?)—–]|$|(?:and|but|for|with|in|on|at|to|against|while|overall|beats?|from)\\b).*")
          || SCORE_WORD.matcher(sentence.context().sentence().heading()).find()
          || endsWithName(sentence, number)
          || sentence.context().namesTests()
          || sentence.context().sentence().role() == DraftText.Role.CELL
          || Wording.is(before, "(?is).*[—–:.,(]\\s*$|\\s*")
              && Wording.is(after, "(?is)^\\s*(?:[—–.,;)].*|$)");
    }
    return Wording.is(
        before,
        "(?is).*\\b(scor(ed|es|e of|ing)|rated( it)?|rating of|marks? of|gave it|earns?|earned|total of|an overall|overall( score)? (of|is)|scores? (at|to|is|was|between|somewhere between)|totals? (at|to|is|was)|they score|scored? somewhere)\\s+(an?\\s+|only\\s+|just\\s+|between\\s+)?$");
  }

  private static boolean endsWithName(SentenceClaims sentence, NumberPhrase number) {
    return sentence.context().mentions().stream()
        .anyMatch(
            m ->
                m.end() <= number.start()
                    && Wording.is(
                        sentence.text().substring(m.end(), number.start()),
                        "(?is)(['’]s)?\\s*[:(,]?\\s*"));
  }

  /** A number after "set to", "dial at": the setting, not what was measured. */
  private static boolean isSetting(SentenceClaims sentence, NumberPhrase number) {
    String before = Wording.before(sentence.text(), number.start());
    String after = Wording.after(sentence.text(), number.end());
    boolean temperature =
        number.scale() == Scale.DEGREES
            || number.unit() != null && number.unit().dimension() == Dimension.TEMPERATURE;
    return (temperature || Wording.is(before, "(?is).*\\b(cap|limit|preset)\\b.*"))
        && (SETTING_BEFORE.matcher(before).matches() || SETTING_AFTER.matcher(after).matches());
  }

  private String name(String product) {
    return figures.campaign().product(product).map(p -> p.name()).orElse(product);
  }
}
