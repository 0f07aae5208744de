package ovenproof.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.proof.Judge.Ruling;
import ovenproof.proof.NumberPhrase.Scale;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proof.Kind;

/** Plain numbers: quantities with units, scores, prices. */
final class NumberReader implements ClaimReader {
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
    for (NumberPhrase number : sentence.freeNumbers()) {
      read(sentence, number);
    }
  }

  private void read(SentenceClaims sentence, NumberPhrase number) {
    boolean checkable =
        number.unit() != null
            || isScore(sentence, number)
            || number.scale() == Scale.MONEY
            || number.scale() == Scale.DEGREES;
    if (!checkable) {
      return;
    }
    if (isSetting(sentence, number) && constants.matching(number).isPresent()) {
      constant(sentence, number, constants.matching(number).get());
      return;
    }
    Set<String> joint = sentence.context().jointProductsAt(number.start());
    List<String> products = new ArrayList<>(joint);
    if (products.isEmpty()) {
      String one = sentence.context().productAt(number.start());
      if (one != null) {
        products.add(one);
      }
    }
    if (products.isEmpty()) {
      withoutProduct(sentence, number);
      return;
    }
    rule(sentence, number, products);
  }

  private void rule(SentenceClaims sentence, NumberPhrase number, List<String> products) {
    Kind kind = isScore(sentence, number) ? Kind.SCORE : Kind.QUANTITY;
    List<Ruling> rulings = new ArrayList<>();
    List<String> evidence = new ArrayList<>();
    for (String product : products) {
      List<Figure> fitting = search.best(sentence.context(), product, kindOf(sentence, number));
      if (fitting.isEmpty()) {
        Optional<Constants.Constant> constant = constants.matching(number);
        if (constant.isPresent()) {
          constant(sentence, number, constant.get());
        } else {
          add(
              sentence,
              number,
              kind,
              new Ruling(
                  Finding.UNSUPPORTED,
                  null,
                  "nothing of this kind was measured of " + name(product)),
              List.of());
        }
        return;
      }
      rulings.add(together(sentence, number, product, fitting));
      fitting.forEach(
          f ->
              f.evidence()
                  .forEach(
                      e -> {
                        if (!evidence.contains(e)) evidence.add(e);
                      }));
    }
    add(sentence, number, kind, worst(rulings), evidence.subList(0, Math.min(6, evidence.size())));
  }

  /** Several figures fit the words equally well: only what they agree on is found. */
  private Ruling together(
      SentenceClaims sentence, NumberPhrase number, String product, List<Figure> fitting) {
    List<Ruling> rulings = new ArrayList<>();
    for (Figure figure : fitting) {
      rulings.addAll(readings(number, figure, sentence.text()));
    }
    Ruling first = rulings.get(0);
    if (rulings.stream().allMatch(r -> r.finding() == first.finding())) {
      String label = name(product) + ", " + fitting.get(0).label() + ": " + first.why();
      return new Ruling(first.finding(), first.expected(), label);
    }
    Optional<Ruling> supported =
        rulings.stream().filter(r -> r.finding() == Finding.SUPPORTED).findFirst();
    if (supported.isPresent() && fitting.size() <= 2) {
      return new Ruling(
          Finding.SUPPORTED,
          supported.get().expected(),
          name(product) + ": " + supported.get().why());
    }
    return new Ruling(
        Finding.UNCLEAR,
        supported.map(Ruling::expected).orElse(first.expected()),
        "the words fit several figures of " + name(product) + ", and they differ");
  }

  /** "Degrees" without a letter may be either; one run may be meant where the text says so. */
  private List<Ruling> readings(NumberPhrase number, Figure figure, String text) {
    if (number.scale() == Scale.DEGREES) {
      boolean difference = figure.unit() == Unit.KELVIN;
      Ruling celsius = Judge.rule(number, figure, difference ? Unit.KELVIN : Unit.CELSIUS);
      Ruling fahrenheit =
          Judge.rule(number, figure, difference ? Unit.FAHRENHEIT_DIFFERENCE : Unit.FAHRENHEIT);
      return List.of(
          celsius.finding() == Finding.SUPPORTED
              ? celsius
              : fahrenheit.finding() == Finding.SUPPORTED ? fahrenheit : celsius);
    }
    Unit unit = number.unit();
    if (figure.unit() == Unit.KELVIN && unit != null && unit.dimension() == Dimension.TEMPERATURE) {
      unit = unit == Unit.FAHRENHEIT ? Unit.FAHRENHEIT_DIFFERENCE : Unit.KELVIN;
    }
    Ruling mean = Judge.rule(number, sized(number, figure), unit);
    boolean single =
        text.matches(
            "(?is).*\\b(one run|once|in one|run (one|two|three|\\d)|best run|worst run)\\b.*");
    if (mean.finding() == Finding.CONTRADICTED && single) {
      for (double run : figure.runs()) {
        Ruling one = Judge.rule(number, ofRun(figure, run), unit);
        if (one.finding() == Finding.SUPPORTED) {
          return List.of(one);
        }
      }
    }
    return List.of(mean);
  }

  /** "18 degrees below the dial" states the size of a negative offset. */
  private static Figure sized(NumberPhrase number, Figure figure) {
    Double value = figure.value();
    boolean difference = figure.unit() == Unit.KELVIN || figure.unit() == Unit.LIGHTNESS;
    return value != null && value < 0 && number.low() > 0 && difference
        ? ofRun(figure, -value)
        : figure;
  }

  private static Figure ofRun(Figure f, double value) {
    return new Figure(
        f.kind(),
        f.product(),
        f.test(),
        f.use(),
        f.label(),
        f.batch(),
        value,
        value,
        value,
        List.of(value),
        null,
        f.unit(),
        f.shownDecimals(),
        f.words(),
        f.evidence());
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

  private void withoutProduct(SentenceClaims sentence, NumberPhrase number) {
    Optional<Constants.Constant> constant = constants.matching(number);
    if (constant.isPresent()) {
      constant(sentence, number, constant.get());
      return;
    }
    Kind kind = isScore(sentence, number) ? Kind.SCORE : Kind.QUANTITY;
    add(
        sentence,
        number,
        kind,
        new Ruling(Finding.UNCLEAR, null, "the text does not say which product this is"),
        List.of());
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

  private Predicate<Figure> kindOf(SentenceClaims sentence, NumberPhrase number) {
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

  private static boolean of(Figure figure, @Nullable Dimension dimension) {
    return !figure.isScore() && figure.unit() != null && figure.unit().dimension() == dimension;
  }

  /** "6.4 out of 10", "6.4 points", "scored 6.4", "overall 7.2". */
  private static boolean isScore(SentenceClaims sentence, NumberPhrase number) {
    if (number.scale() == Scale.OUT_OF_TEN || number.scale() == Scale.POINTS) {
      return true;
    }
    boolean bare = number.unit() == null && number.scale() == Scale.NONE && number.high() <= 10;
    String before = sentence.text().substring(0, number.start());
    return bare
        && (number.decimals() == 1 || number.decimals() == 2)
        && before.matches(
            "(?is).*\\b(score[sd]?|scoring|overall|total|rating|rated|earn(s|ed)|gets?|got|gave|with|at|of|to|:|mark(ed)?|a)\\s*:?\\s*(an?\\s+|of\\s+|is\\s+|was\\s+|only\\s+)*$");
  }

  /** A number after "set to", "dial at": the setting, not what was measured. */
  private static boolean isSetting(SentenceClaims sentence, NumberPhrase number) {
    String before = sentence.text().substring(0, number.start());
    String after = sentence.text().substring(number.end());
    return before.matches(
            "(?is).*\\b(set(ting)? (it )?(at|to|of)|dial(led)?( (at|to|of|in|says|said|read|reads))?|thermostat (at|to)|at|setting|target of|cap of|limit of|to)\\s+(a |an |the )?$")
        || after.matches("(?is)^\\s*(on the dial|setting|cap|limit)\\b.*");
  }

  private String name(String product) {
    return figures.campaign().product(product).map(p -> p.name()).orElse(product);
  }
}
