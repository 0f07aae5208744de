package ovenproof.proof;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
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
    NumberPhrase asked = Denied.asked(sentence, number);
    List<Ruling> rulings = new ArrayList<>();
    Set<String> evidence = new LinkedHashSet<>();
    boolean plate = false;
    for (String product : products) {
      List<FigureSearch.Fit> fits = fits(sentence, number, focus, product);
      if (fits.isEmpty()) {
        nothingMeasured(sentence, number, focus, kind, product);
        return;
      }
      rulings.add(ruling(sentence, asked, focus, product, fits));
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
      worst = doubted(sentence, asked, focus, products.get(0), worst, isListed);
    }
    if (worst.finding() != Finding.SUPPORTED
        && method.saysTheMethod(sentence, number, focus, products)) {
      return;
    }
    sentence.add(number, kind, worst, evidence.stream().limit(6).toList());
  }

  private List<FigureSearch.Fit> fits(
      SentenceClaims sentence, NumberPhrase number, Focus focus, String product) {
    return search.fits(
        focus,
        product,
        NumberKinds.kindOf(sentence, number),
        f ->
            NumberKinds.implausible(number, f)
                + (sentence.isParallel(f) ? sentence.spokeHere() ? PARALLEL : PARALLEL / 2 : 0)
                + NumberKinds.ofTheDial(sentence, number, f)
                + signed(sentence, number, f));
  }

  /** Held against the figures that fit; a number that is wrong still says what it speaks of. */
  private Ruling ruling(
      SentenceClaims sentence,
      NumberPhrase asked,
      Focus focus,
      String product,
      List<FigureSearch.Fit> fits) {
    Ruling ruling = reading.together(sentence, asked, focus, product, fits);
    boolean interval =
        asked.isRange()
            && ruling.finding() == Finding.UNCLEAR
            && focus.weight(Stems.of("interval")) > 0;
    if (interval) {
      return new Ruling(Finding.CONTRADICTED, ruling.expected(), ruling.why());
    }
    if (ruling.finding() == Finding.CONTRADICTED && FigureSearch.top(fits).size() == 1) {
      sentence.speaksOf(fits.get(0).figure(), asked);
    }
    return ruling;
  }

  /** What is wrong of the product that seems to be meant may be right of another. */
  private Ruling doubted(
      SentenceClaims sentence,
      NumberPhrase asked,
      Focus focus,
      String product,
      Ruling ruling,
      boolean isListed) {
    Ruling doubted = earlierPrice(sentence, asked, product, ruling);
    if (doubted.finding() != Finding.CONTRADICTED || isListed) {
      return doubted;
    }
    doubted = elsewhere(sentence, asked, focus, product, doubted);
    boolean unnamed =
        doubted.finding() == Finding.CONTRADICTED
            && sentence.context().isStale()
            && (fitsSome(sentence, asked, focus, product)
                || constants.limit(asked).or(() -> constants.definition(asked)).isPresent());
    return unnamed
        ? new Ruling(
            Finding.UNCLEAR,
            doubted.expected(),
            "which product is this? The paragraph names none; of the last one named: "
                + doubted.why())
        : doubted;
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
                "(?is).*\\b(now|today|currently|at present|down to|fallen to|(?<!used )to)\\s+(?:\\p{L}+\\s+){0,2}$");
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
    boolean hedged = !FigureReading.isClose(number.hedge());
    boolean opposed =
        Wording.is(
            Wording.before(sentence.text(), number.start()),
            "(?is).*\\b(instead of|rather than|against|compared with|compared to|versus)\\s+$");
    if (context.isFirmAt(number.start()) && !opposed || hedged) {
      return ruling;
    }
    for (String other : context.around()) {
      List<FigureSearch.Fit> fits = fits(sentence, number, focus, other);
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

  /** Whether the number would be right of another product: then which one is meant matters. */
  private boolean fitsSome(
      SentenceClaims sentence, NumberPhrase number, Focus focus, String product) {
    return figures.campaign().products().stream()
        .map(p -> p.id())
        .filter(p -> !p.equals(product))
        .anyMatch(
            p -> {
              List<FigureSearch.Fit> fits = fits(sentence, number, focus, p);
              return !fits.isEmpty()
                  && reading.together(sentence, number, focus, p, fits).finding()
                      != Finding.CONTRADICTED;
            });
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
