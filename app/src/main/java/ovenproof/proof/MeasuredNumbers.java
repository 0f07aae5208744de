package ovenproof.proof;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.Judge.Ruling;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;

/**
 * Numbers said of products: held against what was measured of each, with the words around them –
 * denied, kept, quoted, of an earlier day – taken into account.
 */
final class MeasuredNumbers {
  /** What a figure gains that the number before in the sentence spoke of. */
  private static final double PARALLEL = 2.5;

  private static final Pattern NOT =
      Pattern.compile(
          "(?is).*\\b(not|never|neither|nor|none|nobody|\\w+n['’]t|cannot|failed to|fails to|without being|still un\\w+|un(done|finished|cooked))\\b(?:(?!\\b(but|and|until)\\b)[^,;.])*$");

  private final Figures figures;
  private final FigureSearch search;
  private final Constants constants;
  private final MethodNumbers method;
  private final FigureReading reading;

  MeasuredNumbers(
      Figures figures,
      FigureSearch search,
      Constants constants,
      MethodNumbers method,
      FigureReading reading) {
    this.figures = figures;
    this.search = search;
    this.constants = constants;
    this.method = method;
    this.reading = reading;
  }

  void rule(
      SentenceClaims sentence,
      NumberPhrase number,
      Focus focus,
      List<String> products,
      boolean isListed) {
    Kind kind = NumberKinds.isScore(sentence, number) ? Kind.SCORE : Kind.QUANTITY;
    NumberPhrase asked = kept(sentence, negated(sentence, number));
    List<Ruling> rulings = new ArrayList<>();
    Set<String> evidence = new LinkedHashSet<>();
    boolean plate = false;
    for (String product : products) {
      List<FigureSearch.Fit> fits =
          search.fits(
              focus,
              product,
              NumberKinds.kindOf(sentence, number),
              f ->
                  NumberKinds.implausible(number, f)
                      + (sentence.isParallel(f) ? PARALLEL : 0)
                      + signed(sentence, number, f));
      if (fits.isEmpty()) {
        nothingMeasured(sentence, number, focus, kind, product);
        return;
      }
      Ruling ruling = reading.together(sentence, asked, focus, product, fits);
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
      sentence.add(
          number, kind, new Ruling(Finding.UNCLEAR, worst.expected(), voice.why()), List.of());
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
    if (worst.finding() != Finding.SUPPORTED
        && method.saysTheMethod(sentence, number, focus, products)) {
      return;
    }
    sentence.add(number, kind, worst, evidence.stream().limit(6).toList());
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
          search.fits(
              focus,
              other,
              NumberKinds.kindOf(sentence, number),
              f -> NumberKinds.implausible(number, f));
      if (!other.equals(product) && !fits.isEmpty()) {
        Ruling there = reading.together(sentence, number, focus, other, fits);
        if (there.finding() == Finding.SUPPORTED) {
          return new Ruling(
              Finding.UNCLEAR,
              ruling.expected(),
              ruling.why() + "; it would fit " + figures.name(other));
        }
      }
    }
    return ruling;
  }

  private void nothingMeasured(
      SentenceClaims sentence, NumberPhrase number, Focus focus, Kind kind, String product) {
    Optional<Constants.Constant> constant = constants.matching(number, focus);
    if (constant.isPresent()) {
      method.constant(sentence, number, constant.get());
      return;
    }
    sentence.add(
        number,
        kind,
        new Ruling(
            Finding.UNSUPPORTED,
            null,
            "nothing of this kind was measured of " + figures.name(product)),
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

  private static Ruling worst(List<Ruling> rulings) {
    for (Finding finding : List.of(Finding.CONTRADICTED, Finding.UNCLEAR, Finding.UNSUPPORTED)) {
      Optional<Ruling> found = rulings.stream().filter(r -> r.finding() == finding).findFirst();
      if (found.isPresent()) {
        return found.get();
      }
    }
    return rulings.get(0);
  }
}
