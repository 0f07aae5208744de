package ovenproof.publish.card;

import static ovenproof.publish.card.CardDrawing.HEAT;
import static ovenproof.publish.card.CardDrawing.HOLD;
import static ovenproof.publish.card.CardDrawing.INK;
import static ovenproof.publish.card.CardDrawing.LEFT;
import static ovenproof.publish.card.CardDrawing.RIGHT;
import static ovenproof.publish.card.CardDrawing.SECOND;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign.Price;
import ovenproof.core.measure.Averaging;
import ovenproof.core.measure.Censoring;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.quantity.Rounding;
import ovenproof.core.quantity.Unit;
import ovenproof.measure.Measured.Value;
import ovenproof.method.Gate;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;
import ovenproof.publish.card.CardDrawing.Anchor;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.edition.Findings;
import ovenproof.publish.edition.Words;
import ovenproof.publish.figure.Dual;
import ovenproof.publish.figure.Figures;
import ovenproof.publish.figure.Prices;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;
import ovenproof.verdict.Verdict.Score;

/** Draws the cards of an edition. */
public final class CardDeck {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);
  private static final double AXIS_FROM = 180;
  private static final double AXIS_TO = 1280;
  private static final int MOST_ROWS = 10;

  private final Edition edition;
  private final Findings findings;
  private final Map<String, Card> cards = new LinkedHashMap<>();

  public CardDeck(Edition edition) {
    this.edition = edition;
    this.findings = new Findings(edition);
  }

  /** All cards that the edition's evidence can carry, by kind. */
  public List<Card> cards() {
    cards.clear();
    ranking();
    List<ProductVerdict> products = edition.verdict().products();
    for (int i = 0; i < products.size(); i++) {
      title(products.get(i));
      score(products.get(i));
      for (Node test : products.get(i).tests()) {
        test(products.get(i), test);
      }
      if (i > 0) {
        comparison(products.get(i - 1), products.get(i));
      }
    }
    for (TestPlan test : edition.campaign().method().tests()) {
      for (ProductVerdict product : products) {
        measured(product, test);
      }
      shades(test, products);
      caution(test);
    }
    return List.copyOf(cards.values());
  }

  private void add(String id, Card.Kind kind, String sentence, CardDrawing drawing) {
    String plain = id.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    String name = plain;
    for (int i = 2; cards.containsKey(name); i++) {
      name = plain + "-" + i;
    }
    int words = sentence.split("\\s+").length;
    cards.put(
        name,
        new Card(
            name,
            kind,
            sentence,
            3 + 0.3 * Math.min(words, 12),
            drawing.svg(sentence, metadata())));
  }

  private String metadata() {
    return "verdict "
        + edition.verdict().version()
        + ", method "
        + edition.campaign().method().version()
        + ", published "
        + edition.published()
        + (edition.isInvented() ? ", invented" : "");
  }

  private String version() {
    String version = edition.verdict().version();
    return "v" + (version.length() > 8 ? version.substring(0, 8) : version);
  }

  /** Every card of an invented campaign says so. */
  private CardDrawing marked(CardDrawing drawing, double y) {
    return edition.isInvented()
        ? drawing.text(Lettering.MEDIUM, "invented", RIGHT, y, 54, 500, SECOND, Anchor.END)
        : drawing;
  }

  private void title(ProductVerdict product) {
    Optional<Price> price = edition.price(product.id());
    String line = price.map(p -> Prices.text(p) + " on " + day(p.on())).orElse("price not noted");
    CardDrawing drawing =
        new CardDrawing()
            .plate(690)
            .text(Lettering.BOLD, product.name(), LEFT, 850, 180, RIGHT - LEFT, INK, Anchor.START)
            .text(Lettering.MEDIUM, line, LEFT, 970, 84, 1200, SECOND, Anchor.START);
    add(
        "title-" + product.id(),
        Card.Kind.TITLE,
        product.name() + ", " + line,
        marked(drawing, 970));
  }

  private static String day(LocalDate date) {
    return DAY.format(date);
  }

  private void score(ProductVerdict product) {
    if (product.score().value() == null) {
      return;
    }
    List<String> level = findings.level(product);
    String place =
        product.rank() == null
            ? ""
            : level.isEmpty()
                ? "rank " + Scores.rank(product.rank())
                : level.size() > 2
                    ? "level with " + Words.number(level.size()) + " others"
                    : "level with " + Words.list(level);
    scored(
        "score-" + product.id(), Card.Kind.SCORE, product.name(), place, product.score(), runs());
  }

  /** {@code n = 3}, or {@code n = 2 to 3} where tests differ. */
  private String runs() {
    List<Integer> numbers =
        edition.campaign().method().tests().stream()
            .map(TestPlan::replicates)
            .filter(n -> n > 0)
            .distinct()
            .sorted()
            .toList();
    if (numbers.isEmpty()) {
      return "no runs";
    }
    int last = numbers.get(numbers.size() - 1);
    return "n = " + (numbers.size() == 1 ? "" + last : numbers.get(0) + " to " + last);
  }

  private void test(ProductVerdict product, Node test) {
    if (test.score().value() != null) {
      scored(
          "test-" + test.id() + "-" + product.id(),
          Card.Kind.TEST_RESULT,
          product.name(),
          test.name(),
          test.score(),
          test.runs() == 0 ? "no runs" : "n = " + test.runs());
    }
  }

  private void scored(
      String id, Card.Kind kind, String name, String second, Score score, String n) {
    CardDrawing drawing =
        new CardDrawing()
            .plate(550)
            .text(Lettering.BOLD, name, LEFT, 690, 160, 1080, INK, Anchor.START)
            .text(Lettering.MEDIUM, second, LEFT, 790, 84, 1080, SECOND, Anchor.START);
    String qualifier = Scores.qualifier(score);
    String line = "of 10 · " + n + " · " + version();
    drawing
        .text(Lettering.NARROW, Scores.digits(score), RIGHT, 870, 380, 440, INK, Anchor.END)
        .text(Lettering.MEDIUM, line, RIGHT, 990, 64, 640, SECOND, Anchor.END);
    if (!qualifier.isEmpty()) {
      drawing.text(Lettering.MEDIUM, qualifier, RIGHT, 630, 64, 440, SECOND, Anchor.END);
    }
    tray(drawing, score, 910);
    if (edition.isInvented()) {
      drawing.text(Lettering.MEDIUM, "invented", LEFT, 1000, 54, 400, SECOND, Anchor.START);
    }
    add(
        id,
        kind,
        name + (second.isEmpty() ? "" : ", " + second) + ": " + Scores.sentence(score) + ", " + n,
        drawing);
  }

  /** The score's tray on the axis, with the ends of its interval in figures. */
  private static void tray(CardDrawing drawing, Score score, double y) {
    drawing.axis(AXIS_FROM, AXIS_TO, y);
    bead(drawing, score, AXIS_FROM, AXIS_TO, y);
    if (score.low() != null && score.high() != null && score.known() == Score.Known.INTERVAL) {
      double left = x(score.low(), AXIS_FROM, AXIS_TO);
      double right = x(score.high(), AXIS_FROM, AXIS_TO);
      String low = Scores.digits(score.low());
      String high = Scores.digits(score.high());
      drawing
          .text(Lettering.BOLD, low, left - 18, y - 14, 64, 200, HOLD, Anchor.END)
          .text(Lettering.BOLD, high, right + 18, y - 14, 64, 200, HOLD, Anchor.START);
    }
  }

  private static void bead(CardDrawing drawing, Score score, double from, double to, double y) {
    boolean at = score.known() == Score.Known.AT_MOST || score.known() == Score.Known.AT_LEAST;
    if (score.low() != null && score.high() != null) {
      boolean leftLip = score.known() != Score.Known.AT_MOST;
      boolean rightLip = score.known() != Score.Known.AT_LEAST;
      drawing.tray(x(score.low(), from, to), x(score.high(), from, to), y, leftLip, rightLip);
    } else if (at && score.value() != null) {
      double x = x(score.value(), from, to);
      boolean most = score.known() == Score.Known.AT_MOST;
      drawing.tray(most ? from : x, most ? x : to, y, !most, most);
    }
    if (score.value() != null && score.known() != Score.Known.CANNOT_DO) {
      drawing.bead(x(score.value(), from, to), y - 28, 23, HOLD);
    }
  }

  private static double x(BigDecimal points, double from, double to) {
    return from + (to - from) * Math.max(0, Math.min(10, points.doubleValue())) / 10;
  }

  private void ranking() {
    List<ProductVerdict> shown =
        edition.verdict().products().stream()
            .filter(p -> p.score().value() != null)
            .limit(MOST_ROWS)
            .toList();
    if (shown.isEmpty()) {
      return;
    }
    int step = Math.min(110, 780 / shown.size());
    int top = 1026 - 70 - step * shown.size();
    CardDrawing drawing = new CardDrawing().plate(Math.max(54, top - 60));
    for (int i = 0; i < shown.size(); i++) {
      row(drawing, shown.get(i), top + step * (i + 0.62), step);
    }
    String foot = "of 10 · 90 % interval · " + runs() + " · " + version();
    drawing.text(Lettering.MEDIUM, foot, LEFT, 1000, 54, 1200, SECOND, Anchor.START);
    add("ranking", Card.Kind.RANKING, findings.headline(), marked(drawing, 1000));
  }

  private static void row(CardDrawing drawing, ProductVerdict product, double y, int step) {
    double size = Math.max(54, Math.min(72, step * 0.7));
    drawing
        .text(
            Lettering.MEDIUM, Scores.rank(product.rank()), LEFT, y, size, 130, SECOND, Anchor.START)
        .text(Lettering.BOLD, product.name(), LEFT + 150, y, size, 520, INK, Anchor.START);
    drawing.axis(860, 1400, y + 4);
    bead(drawing, product.score(), 860, 1400, y + 4);
    String words = Scores.words(product.score());
    drawing.text(Lettering.BOLD, words, RIGHT, y, size, 320, INK, Anchor.END);
  }

  private void comparison(ProductVerdict first, ProductVerdict second) {
    if (first.score().value() == null || second.score().value() == null) {
      return;
    }
    boolean apart =
        first.tier() != null && second.tier() != null && !first.tier().equals(second.tier());
    String words =
        apart
            ? "different tiers"
            : first.tier() == null || second.tier() == null ? "not ranked" : "level";
    CardDrawing drawing = new CardDrawing().plate(560);
    row(drawing, first, 690, 120);
    row(drawing, second, 830, 120);
    String foot = words + " · of 10 · " + runs() + " · " + version();
    drawing.text(Lettering.MEDIUM, foot, LEFT, 975, 64, 1200, SECOND, Anchor.START);
    String sentence =
        first.name()
            + " "
            + Scores.words(first.score())
            + ", "
            + second.name()
            + " "
            + Scores.words(second.score())
            + ": "
            + words;
    add(
        "comparison-" + first.id() + "-" + second.id(),
        Card.Kind.COMPARISON,
        sentence,
        marked(drawing, 975));
  }

  private void measured(ProductVerdict product, TestPlan test) {
    for (MeasureUse use : test.measures()) {
      List<Value> values = edition.measured().counted(test.id(), use.id(), product.id());
      if (values.isEmpty()) {
        continue;
      }
      Measurement mean = mean(values);
      int n = (int) values.stream().filter(v -> !v.value().isMissing()).count();
      String key = test.id() + "-" + use.id() + "-" + product.id();
      if (use.take().equals("time-to-stop")) {
        time(key, product, test, mean, values, n);
      } else if (mean.unit() == Unit.CELSIUS && mean.value() != null) {
        thermometer(key, product, test, mean, n);
      }
    }
  }

  private static Measurement mean(List<Value> values) {
    List<Measurement> all = values.stream().map(Value::value).toList();
    return all.size() == 1
        ? all.get(0)
        : Averaging.mean(all, Subject.ofProduct(values.get(0).product()));
  }

  private void time(
      String key,
      ProductVerdict product,
      TestPlan test,
      Measurement mean,
      List<Value> values,
      int n) {
    long capped = values.stream().filter(v -> v.value().censored() == Censoring.ABOVE).count();
    if (capped > 0) {
      notDone(key, product, test, values, capped);
    } else if (mean.value() != null) {
      long seconds = Rounding.HALF_UP.apply(mean.value(), 0).longValueExact();
      figure(
          "clock-" + key,
          Card.Kind.CLOCK,
          clock(seconds),
          product.name(),
          test.name() + " · mean, n = " + n,
          INK);
    }
  }

  /** {@code 6:31}, {@code 1:05:10}. */
  static String clock(long seconds) {
    String rest = String.format(Locale.ROOT, "%d:%02d", seconds / 60 % 60, seconds % 60);
    return seconds < 3600
        ? rest
        : String.format(
            Locale.ROOT, "%d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60);
  }

  private void notDone(
      String key, ProductVerdict product, TestPlan test, List<Value> values, long capped) {
    double cap =
        values.stream()
            .map(v -> v.value().low())
            .filter(Objects::nonNull)
            .mapToDouble(Double::doubleValue)
            .max()
            .orElse(0);
    figure(
        "not-done-" + key,
        Card.Kind.NOT_DONE,
        clock(Math.round(cap)),
        product.name() + ": not done",
        test.name() + " · " + capped + " of " + values.size() + " runs",
        CardDrawing.FAIL);
  }

  private void thermometer(
      String key, ProductVerdict product, TestPlan test, Measurement mean, int n) {
    Dual dual = Figures.dual(Objects.requireNonNull(mean.value()), Unit.CELSIUS);
    figure(
        "thermometer-" + key,
        Card.Kind.THERMOMETER,
        dual.first(),
        product.name(),
        test.name() + ", " + mean.label() + " · " + dual.second() + " · n = " + n,
        HEAT);
  }

  private void figure(
      String id, Card.Kind kind, String figure, String first, String second, String colour) {
    CardDrawing drawing =
        new CardDrawing()
            .plate(690)
            .text(Lettering.BOLD, first, LEFT, 840, 130, 980, INK, Anchor.START)
            .text(Lettering.MEDIUM, second, LEFT, 940, 72, 980, SECOND, Anchor.START)
            .text(Lettering.NARROW, figure, RIGHT, 900, 240, 540, colour, Anchor.END)
            .text(Lettering.MEDIUM, version(), RIGHT, 1000, 54, 400, SECOND, Anchor.END);
    if (edition.isInvented()) {
      drawing.text(Lettering.MEDIUM, "invented", LEFT, 1006, 54, 400, SECOND, Anchor.START);
    }
    add(id, kind, first + ", " + second + ": " + figure, drawing);
  }

  /** Shades of the top, side by side, and top against underside, where lightness was measured. */
  private void shades(TestPlan test, List<ProductVerdict> products) {
    Optional<MeasureUse> top = lightness(test, "top");
    if (top.isEmpty()) {
      return;
    }
    List<String> names = new ArrayList<>();
    List<Double> shades = new ArrayList<>();
    for (ProductVerdict product : products) {
      Double lightness = lightness(test, top.get(), product);
      if (lightness != null) {
        names.add(product.name());
        shades.add(lightness);
      }
      lightness(test, "underside").ifPresent(under -> split(product, test, top.get(), under));
    }
    if (!names.isEmpty()) {
      strip(test, names, shades);
    }
  }

  private static Optional<MeasureUse> lightness(TestPlan test, String face) {
    return test.measures().stream()
        .filter(m -> m.take().equals("lightness-mean") && face.equals(m.face()))
        .findFirst();
  }

  private @Nullable Double lightness(TestPlan test, MeasureUse use, ProductVerdict product) {
    List<Value> values = edition.measured().counted(test.id(), use.id(), product.id());
    return values.isEmpty() ? null : mean(values).value();
  }

  private void split(ProductVerdict product, TestPlan test, MeasureUse top, MeasureUse under) {
    Double above = lightness(test, top, product);
    Double below = lightness(test, under, product);
    if (above == null || below == null) {
      return;
    }
    CardDrawing drawing =
        new CardDrawing()
            .plate(600)
            .text(Lettering.BOLD, product.name(), LEFT, 740, 130, 760, INK, Anchor.START)
            .text(Lettering.MEDIUM, test.name(), LEFT, 840, 72, 760, SECOND, Anchor.START)
            .block(980, 650, 370, 220, ShadeScale.colour(above))
            .block(1374, 650, 370, 220, ShadeScale.colour(below))
            .text(Lettering.MEDIUM, "top L* " + shade(above), 980, 950, 60, 380, INK, Anchor.START)
            .text(
                Lettering.MEDIUM, "under L* " + shade(below), 1374, 950, 60, 380, INK, Anchor.START)
            .text(
                Lettering.MEDIUM,
                runs() + " · " + version(),
                LEFT,
                950,
                60,
                760,
                SECOND,
                Anchor.START);
    String sentence =
        product.name()
            + ", "
            + test.name()
            + ": top L* "
            + shade(above)
            + ", underside L* "
            + shade(below);
    add("split-" + test.id() + "-" + product.id(), Card.Kind.SPLIT, sentence, drawing);
  }

  private void strip(TestPlan test, List<String> names, List<Double> shades) {
    CardDrawing drawing =
        new CardDrawing()
            .plate(600)
            .text(Lettering.BOLD, test.name() + ", shade", LEFT, 700, 90, 1500, INK, Anchor.START);
    int shown = Math.min(names.size(), 8);
    double width = (RIGHT - LEFT) / shown;
    for (int i = 0; i < shown; i++) {
      double x = LEFT + width * i;
      drawing
          .block(x + 4, 730, width - 8, 110, ShadeScale.colour(shades.get(i)))
          .text(Lettering.BOLD, names.get(i), x + 4, 905, 54, width - 12, INK, Anchor.START)
          .text(
              Lettering.MEDIUM,
              shade(shades.get(i)),
              x + 4,
              965,
              54,
              width - 12,
              SECOND,
              Anchor.START);
    }
    String foot = "L*, 100 is white · " + runs() + " · " + version();
    drawing.text(Lettering.MEDIUM, foot, LEFT, 1018, 54, 1500, SECOND, Anchor.START);
    add(
        "shade-" + test.id(),
        Card.Kind.SHADE_STRIP,
        test.name() + ": shade of each product, L*",
        drawing);
  }

  private static String shade(double lightness) {
    return Rounding.HALF_UP.text(lightness, 0);
  }

  /** A floor of the test in both systems, rounded up; else the heat. */
  private void caution(TestPlan test) {
    for (Gate gate : test.gates()) {
      if (gate.reason() == Gate.Reason.SAFETY && gate.atLeast() != null) {
        Dual floor = Figures.dual(gate.atLeast(), Rounding.FLOOR_UP);
        String words =
            "at least " + floor.first() + (floor.second() == null ? "" : ", " + floor.second());
        warned(test, gate.name() + ": " + words, "in the coldest part; local rules prevail");
        return;
      }
    }
    if (test.replicates() > 0) {
      warned(test, "Hot surfaces and steam", "keep hands away; mains appliance");
    }
  }

  private void warned(TestPlan test, String first, String second) {
    CardDrawing drawing =
        new CardDrawing()
            .plate(760)
            .warning(170, 800)
            .text(Lettering.BOLD, first, 390, 890, 100, RIGHT - 390, INK, Anchor.START)
            .text(Lettering.MEDIUM, second, 390, 980, 64, RIGHT - 390, SECOND, Anchor.START);
    add(
        "caution-" + test.id(),
        Card.Kind.CAUTION,
        "Caution, " + test.name() + ". " + first + ", " + second,
        drawing);
  }
}
