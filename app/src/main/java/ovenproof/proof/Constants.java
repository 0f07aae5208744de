package ovenproof.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Rating;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.ToleratedQuantity;
import ovenproof.core.quantity.Unit;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;

/** Numbers of the method that a text repeats: settings, samples, caps, times of actions. */
final class Constants {

  /** A number of the method, with what it is. */
  record Constant(Quantity quantity, String what, @Nullable String test) {

    /** Whether a text repeats it beside a product as a threshold: a limit, cap or definition. */
    boolean isLimit() {
      return what.startsWith("limit")
          || what.startsWith("definition")
          || what.startsWith("ceiling")
          || what.startsWith("stop rule")
          || what.startsWith("setting");
    }
  }

  private final List<Constant> all = new ArrayList<>();

  Constants(Campaign campaign) {
    for (TestPlan test : campaign.method().tests()) {
      addSetting(test);
      addSample(test);
      test.stops().stream()
          .filter(s -> s.at() != null)
          .forEach(s -> add(s.at(), "stop rule of " + test.name(), test));
      test.actions().forEach(a -> add(a.at(), "timed action of " + test.name(), test));
      add(Quantity.of(test.replicates(), Unit.PIECES), "runs of " + test.name(), test);
      add(Quantity.of(test.batches(), Unit.PIECES), "batches of " + test.name(), test);
      test.measures().forEach(m -> addParameters(m, test));
      test.gates()
          .forEach(
              g -> {
                add(g.atLeast(), "limit of " + g.name(), test);
                add(g.atMost(), "limit of " + g.name(), test);
                if (g.ceiling() != null) {
                  add(
                      Quantity.of(g.ceiling().doubleValue(), Unit.POINTS),
                      "ceiling of " + g.name(),
                      test);
                }
              });
    }
    all.add(
        new Constant(
            Quantity.of(campaign.products().size(), Unit.PIECES), "products compared", null));
    long tasters = campaign.ratings().stream().map(Rating::assessor).distinct().count();
    all.add(new Constant(Quantity.of(tasters, Unit.PIECES), "tasters", null));
    all.add(new Constant(Quantity.of(campaign.runs().size(), Unit.PIECES), "runs", null));
    all.add(
        new Constant(
            Quantity.of(campaign.countedRuns().size(), Unit.PIECES), "counted runs", null));
    all.add(
        new Constant(Quantity.of(campaign.method().tests().size(), Unit.PIECES), "tests", null));
    long cooked = campaign.method().tests().stream().filter(t -> t.replicates() > 0).count();
    all.add(new Constant(Quantity.of(cooked, Unit.PIECES), "tests with runs", null));
  }

  private void addSetting(TestPlan test) {
    if (test.setting() != null) {
      add(test.setting().dial(), "setting of " + test.name(), test);
    }
  }

  private void addSample(TestPlan test) {
    TestPlan.Sample sample = test.sample();
    if (sample != null) {
      add(Quantity.of(sample.pieces(), Unit.PIECES), "pieces of " + test.name(), test);
      for (ToleratedQuantity amount :
          new ToleratedQuantity[] {sample.mass(), sample.thickness(), sample.startTemperature()}) {
        if (amount != null) {
          add(amount.nominal(), "sample of " + test.name(), test);
        }
      }
    }
  }

  private void addParameters(MeasureUse use, TestPlan test) {
    for (String parameter : use.parameters().values()) {
      try {
        add(
            ovenproof.core.quantity.QuantityParser.parseAny(parameter),
            "definition of " + use.id(),
            test);
      } catch (ovenproof.core.quantity.QuantityFormatException word) {
        continue;
      }
    }
  }

  private void add(@Nullable Quantity quantity, String what, TestPlan test) {
    if (quantity != null) {
      all.add(new Constant(quantity, what, test.id()));
    }
  }

  /**
   * The constant that a number repeats, if there is one; counts only match counts. Where the words
   * name a test, another test's constant does not do.
   */
  Optional<Constant> matching(NumberPhrase number, Focus focus) {
    Set<String> tests = testsOf(focus);
    return all.stream()
        .filter(c -> sameKind(c, number) && holds(c, number))
        .filter(c -> tests.isEmpty() || c.test() == null || tests.contains(c.test()))
        .findFirst();
  }

  /** Tests that the temperatures of a sentence belong to, when they belong to one only. */
  Set<String> tests(List<NumberPhrase> numbers) {
    Set<String> found = new java.util.LinkedHashSet<>();
    for (NumberPhrase number : numbers) {
      if (NumberKinds.isTemperature(number)) {
        Set<String> own = new java.util.LinkedHashSet<>();
        all.stream()
            .filter(c -> c.what().startsWith("setting") || c.what().startsWith("definition"))
            .filter(c -> c.test() != null && sameKind(c, number) && holds(c, number))
            .forEach(c -> own.add(java.util.Objects.requireNonNull(c.test())));
        if (own.size() == 1) {
          found.addAll(own);
        }
      }
    }
    return found;
  }

  /** A limit, cap or ceiling of any test that a number repeats. */
  Optional<Constant> limit(NumberPhrase number) {
    return all.stream()
        .filter(
            c ->
                c.what().startsWith("limit")
                    || c.what().startsWith("ceiling")
                    || c.what().startsWith("stop rule"))
        .filter(c -> sameKind(c, number) && holds(c, number))
        .findFirst();
  }

  /** What a test defines by a temperature, whichever test the words name. */
  Optional<Constant> definition(NumberPhrase number) {
    return all.stream()
        .filter(c -> c.what().startsWith("definition"))
        .filter(c -> sameKind(c, number) && holds(c, number))
        .findFirst();
  }

  /** Settings and stop rules of the tests that the words name, in the number's dimension. */
  List<Constant> ofTests(NumberPhrase number, Focus focus) {
    return all.stream()
        .filter(c -> c.what().startsWith("stop rule") || c.what().startsWith("setting"))
        .filter(c -> sameKind(c, number) && c.test() != null)
        .filter(c -> focus.inClause() && focus.tests().contains(c.test()))
        .toList();
  }

  /** Settings of the tests that the words name, in the number's dimension. */
  List<Constant> settings(NumberPhrase number, Focus focus) {
    Set<String> tests = testsOf(focus);
    return all.stream()
        .filter(c -> c.what().startsWith("setting") && sameKind(c, number))
        .filter(c -> c.test() != null && tests.contains(c.test()))
        .toList();
  }

  private static Set<String> testsOf(Focus focus) {
    if (!focus.tests().isEmpty()) {
      return focus.tests();
    }
    return focus.cues().isEmpty() ? focus.above() : focus.cues();
  }

  private static boolean sameKind(Constant constant, NumberPhrase number) {
    Unit unit = number.unit();
    Unit own = constant.quantity().unit();
    if (number.scale() == NumberPhrase.Scale.DEGREES) {
      return own.dimension() == Dimension.TEMPERATURE;
    }
    return unit == null
        ? (own == Unit.PIECES && number.scale() == NumberPhrase.Scale.NONE)
            || (own == Unit.POINTS && number.scale() == NumberPhrase.Scale.POINTS)
        : own.dimension() == unit.dimension();
  }

  private static boolean holds(Constant constant, NumberPhrase number) {
    if (number.isRange()) {
      return false;
    }
    Unit unit = number.unit();
    if (number.scale() == NumberPhrase.Scale.DEGREES) {
      return repeats(constant, number, Unit.CELSIUS) || repeats(constant, number, Unit.FAHRENHEIT);
    }
    return repeats(constant, number, unit);
  }

  private static boolean repeats(Constant constant, NumberPhrase number, @Nullable Unit unit) {
    double value =
        unit == null ? constant.quantity().value() : constant.quantity().to(unit).value();
    return Math.abs(Judge.rounded(value, number.step()) - number.low()) < number.step() * 1e-6;
  }
}
