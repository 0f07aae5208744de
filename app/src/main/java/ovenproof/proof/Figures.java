package ovenproof.proof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Campaign.Price;
import ovenproof.campaign.Campaign.Product;
import ovenproof.campaign.FactValue;
import ovenproof.core.measure.Averaging;
import ovenproof.core.measure.Censoring;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.measure.Measured;
import ovenproof.measure.Measured.Value;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;
import ovenproof.verdict.Verdict;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;

/** Every figure of a campaign that a sentence may speak of. */
final class Figures {
  private final Campaign campaign;
  private final Verdict verdict;
  private final List<Figure> all = new ArrayList<>();
  private final Set<String> markWords = new HashSet<>();
  private final java.util.Map<String, List<Figure>> byProduct = new java.util.HashMap<>();

  Figures(Campaign campaign, Measured measured, Verdict verdict) {
    this.campaign = campaign;
    this.verdict = verdict;
    for (Product product : campaign.products()) {
      addMeasures(product, measured);
      addFacts(product);
      addPrice(product);
    }
    verdict.products().forEach(this::addScores);
    all.stream()
        .filter(f -> f.kind() == Figure.Kind.MARK)
        .forEach(f -> markWords.addAll(f.words()));
  }

  List<Figure> all() {
    return all;
  }

  /** Whether tasters or raters marked something by this word. */
  boolean isMark(String stem) {
    return markWords.contains(stem);
  }

  /** All figures of a product. */
  List<Figure> of(String product) {
    return byProduct.computeIfAbsent(
        product, p -> all.stream().filter(f -> f.product().equals(p)).toList());
  }

  List<Figure> where(Predicate<Figure> condition) {
    return all.stream().filter(condition).toList();
  }

  String name(String product) {
    return campaign.product(product).map(Product::name).orElse(product);
  }

  Campaign campaign() {
    return campaign;
  }

  Verdict verdict() {
    return verdict;
  }

  // ---- measures ----

  private void addMeasures(Product product, Measured measured) {
    for (TestPlan test : campaign.method().tests()) {
      for (MeasureUse use : test.measures()) {
        List<Value> values = measured.counted(test.id(), use.id(), product.id());
        if (!values.isEmpty()) {
          all.add(figure(product, test, use, null, values.stream().map(Value::value).toList()));
          addBatches(product, test, use, values);
        }
      }
    }
  }

  private void addBatches(Product product, TestPlan test, MeasureUse use, List<Value> values) {
    boolean whole = use.batch() == null && use.summary() == MeasureUse.Summary.MEAN;
    for (int batch = 1; whole && test.batches() > 1 && batch <= test.batches(); batch++) {
      Integer wanted = batch;
      List<Measurement> means = new ArrayList<>();
      for (Value value : values) {
        List<Measurement> parts =
            value.parts().stream().filter(p -> wanted.equals(p.subject().batch())).toList();
        if (!parts.isEmpty()) {
          means.add(Averaging.mean(parts, value.value().subject()));
        }
      }
      if (!means.isEmpty()) {
        all.add(figure(product, test, use, batch, means));
      }
    }
  }

  private Figure figure(
      Product product,
      TestPlan test,
      MeasureUse use,
      @Nullable Integer batch,
      List<Measurement> runs) {
    Measurement mean = Averaging.mean(runs, Subject.ofProduct(product.id()));
    List<Double> values = runs.stream().map(Measurement::value).filter(Objects::nonNull).toList();
    boolean open = mean.censored() != Censoring.NONE;
    Set<String> words =
        new HashSet<>(Vocabulary.wordsOf(take(use), use.id().replace('-', ' '), mean.label()));
    test.criteria().forEach(c -> addCriterionWords(words, c, use.id()));
    words.removeAll(Stems.ofAll(test.name()));
    if (kind(use) == Figure.Kind.MARK) {
      words.addAll(Vocabulary.wordsOfMark(Set.copyOf(words)));
    }
    if (words.contains(Stems.of("outer")) || words.contains(Stems.of("skin"))) {
      words.addAll(Vocabulary.wordsOf("reading"));
    }
    String fact = use.parameters().get("of");
    if (fact != null) {
      words.addAll(factWords(fact));
    }
    return new Figure(
        kind(use),
        product.id(),
        test.id(),
        use.id(),
        take(use),
        mean.label(),
        batch,
        mean.value(),
        open ? mean.low() : minimum(values),
        open ? mean.high() : maximum(values),
        values,
        standardError(values),
        mean.unit(),
        -1,
        words,
        evidence(mean, test, runs.size()));
  }

  private static Figure.Kind kind(MeasureUse use) {
    return switch (use.take()) {
      case "mark" -> Figure.Kind.MARK;
      case "fact" -> Figure.Kind.FACT;
      case "rated" -> Figure.Kind.MARK;
      default -> Figure.Kind.MEASURE;
    };
  }

  /** A spread over pieces or a change between batches is not the measure it is made of. */
  private static String take(MeasureUse use) {
    return switch (use.summary()) {
      case MEAN, LARGEST, SMALLEST -> use.take();
      case SPREAD -> use.take() + ":spread";
      case CHANGE, ABSOLUTE_CHANGE -> use.take() + ":change";
      case SLOPE -> use.take() + ":slope";
      case FACE_DIFFERENCE -> use.take() + ":faces";
    };
  }

  private static void addCriterionWords(
      Set<String> words, ovenproof.method.ValueNode node, String use) {
    if (node instanceof ovenproof.method.ValueNode.Group group) {
      group.children().forEach(c -> addCriterionWords(words, c, use));
    } else if (node instanceof ovenproof.method.Criterion criterion
        && criterion.measure().equals(use)) {
      words.addAll(Stems.ofAll(criterion.name()));
    }
  }

  private static List<String> evidence(Measurement mean, TestPlan test, int runs) {
    List<String> evidence = new ArrayList<>();
    evidence.add(test.name() + ": " + mean.label() + ", " + runs + (runs == 1 ? " run" : " runs"));
    evidence.addAll(mean.evidence());
    return evidence;
  }

  private static @Nullable Double minimum(List<Double> values) {
    return values.stream().min(Comparator.naturalOrder()).orElse(null);
  }

  private static @Nullable Double maximum(List<Double> values) {
    return values.stream().max(Comparator.naturalOrder()).orElse(null);
  }

  private static @Nullable Double standardError(List<Double> values) {
    if (values.size() < 2) {
      return null;
    }
    double[] array = values.stream().mapToDouble(Double::doubleValue).toArray();
    return ovenproof.core.statistics.Descriptive.of(array).standardError();
  }

  // ---- facts ----

  /** Facts that no test scores, and what the makers' plates say. */
  private void addFacts(Product product) {
    for (FactValue value : campaign.facts()) {
      if (value.product().equals(product.id())) {
        Set<String> words = factWords(value.fact());
        if (value.measured() != null && !scored(value.fact())) {
          all.add(fact(Figure.Kind.FACT, value, value.measured(), words));
        }
        if (value.nameplate() != null) {
          Set<String> plate = new HashSet<>(words);
          plate.addAll(Stems.ofAll("nameplate plate maker claims claimed says rated advertised"));
          all.add(fact(Figure.Kind.NAMEPLATE, value, value.nameplate(), plate));
        }
      }
    }
  }

  private boolean scored(String fact) {
    return campaign.method().tests().stream()
        .flatMap(t -> t.measures().stream())
        .anyMatch(u -> u.take().equals("fact") && u.parameters().containsValue(fact));
  }

  private Set<String> factWords(String fact) {
    Set<String> words = new HashSet<>(Vocabulary.wordsOf(fact, fact.replace('-', ' ')));
    campaign.method().facts().stream()
        .filter(f -> f.id().equals(fact))
        .forEach(f -> words.addAll(Stems.ofAll(f.name())));
    return words;
  }

  private static Figure fact(
      Figure.Kind kind, FactValue value, Quantity quantity, Set<String> words) {
    Unit unit = quantity.unit().contractUnit();
    double amount = quantity.to(unit).value();
    boolean plate = kind == Figure.Kind.NAMEPLATE;
    return new Figure(
        kind,
        value.product(),
        null,
        plate ? "plate:" + value.fact() : value.fact(),
        plate ? "plate" : "fact",
        (plate ? "nameplate, " : "") + value.fact().replace('-', ' '),
        null,
        amount,
        amount,
        amount,
        List.of(amount),
        null,
        unit,
        -1,
        words,
        List.of((plate ? "nameplate: " : "fact: ") + value.fact().replace('-', ' ')));
  }

  // ---- prices and scores ----

  /** The lowest price of the field; infinite where there is none. */
  double lowestPrice() {
    return campaign.prices().stream()
        .mapToDouble(Price::amount)
        .min()
        .orElse(Double.POSITIVE_INFINITY);
  }

  /** Prices before the latest. */
  List<Figure> earlierPrices(String product) {
    Optional<Price> latest = latestPrice(product);
    return campaign.prices().stream()
        .filter(p -> p.product().equals(product) && !Optional.of(p).equals(latest))
        .map(Figures::priced)
        .toList();
  }

  private Optional<Price> latestPrice(String product) {
    return campaign.prices().stream()
        .filter(p -> p.product().equals(product))
        .max(Comparator.comparing(Price::on));
  }

  private void addPrice(Product product) {
    latestPrice(product.id()).map(Figures::priced).ifPresent(all::add);
  }

  private static Figure priced(Price price) {
    return new Figure(
        Figure.Kind.PRICE,
        price.product(),
        null,
        "price",
        "price",
        "Price of " + price.on(),
        null,
        price.amount(),
        price.amount(),
        price.amount(),
        List.of(price.amount()),
        null,
        null,
        -1,
        Vocabulary.wordsOf("price"),
        List.of("price of " + price.on()));
  }

  private void addScores(ProductVerdict product) {
    addScore(
        product.id(),
        Figure.Kind.TOTAL,
        null,
        "score",
        "Total",
        product.score(),
        Stems.ofAll(
            "overall total score scored points rating verdict ranking rank rankings final finally winner wins won place third fourth fifth sixth podium standings altogether"));
    for (Node test : product.tests()) {
      addScore(
          product.id(),
          Figure.Kind.TEST_SCORE,
          test.id(),
          "score",
          test.name(),
          test.score(),
          Stems.ofAll("score scored points"));
      test.children().forEach(child -> addNode(product.id(), test, child));
    }
  }

  private void addNode(String product, Node test, Node node) {
    addScore(
        product,
        Figure.Kind.CRITERION_SCORE,
        test.id(),
        "score:" + node.id(),
        node.name(),
        node.score(),
        criterionWords(test.id(), node));
    node.children().forEach(child -> addNode(product, test, child));
  }

  private Set<String> criterionWords(String test, Node node) {
    Set<String> words = new HashSet<>(Stems.ofAll("score scored points " + node.name()));
    campaign
        .method()
        .test(test)
        .flatMap(t -> t.measure(node.id()))
        .ifPresent(
            u -> {
              words.addAll(Stems.ofAll(u.id().replace('-', ' ')));
              words.addAll(Vocabulary.nounsOf(take(u)));
            });
    return words;
  }

  private void addScore(
      String product,
      Figure.Kind kind,
      @Nullable String test,
      String use,
      String label,
      Verdict.Score score,
      Set<String> words) {
    if (score.value() == null && score.low() == null) {
      return;
    }
    int decimals = score.value() == null ? 1 : score.value().scale();
    boolean bound = score.known() == Verdict.Score.Known.BOUNDS;
    all.add(
        new Figure(
            kind,
            product,
            test,
            use,
            "score",
            label,
            null,
            score.value() == null || bound ? null : score.value().doubleValue(),
            score.low() == null ? null : score.low().doubleValue(),
            score.high() == null ? null : score.high().doubleValue(),
            List.of(),
            score.standardError(),
            Unit.POINTS,
            decimals,
            words,
            List.of("verdict " + verdict.version() + ": " + label)));
  }
}
