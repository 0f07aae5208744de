package ovenproof.draft;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Averaging;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.measure.Measured.Value;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.figure.Dual;
import ovenproof.publish.figure.Figures;
import ovenproof.publish.figure.Prices;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;

/**
 * Every figure that a draft can call by name, as it is printed: {@code alder/score}, {@code
 * alder/price}, {@code alder/toast} (score in a test), {@code alder/toast/time} (mean of the
 * counted runs).
 */
public final class FigureBook {
  private final Map<String, Shown> figures = new LinkedHashMap<>();

  /**
   * A figure as printed.
   *
   * @param name how a draft calls it
   * @param dual in both unit systems
   * @param what in words: {@code Alder, Toast, time to stop, n = 3}
   */
  public record Shown(String name, Dual dual, String what) {
    /** As printed when nothing else is asked. */
    public String text() {
      return dual.toString();
    }
  }

  public FigureBook(Edition edition) {
    for (ProductVerdict product : edition.verdict().products()) {
      product(edition, product);
    }
    put("all/products", Integer.toString(edition.verdict().products().size()), "products compared");
    put("all/runs", Integer.toString(edition.campaign().countedRuns().size()), "counted runs");
  }

  private void product(Edition edition, ProductVerdict product) {
    String id = product.id();
    String name = product.name();
    put(id + "/score", Scores.words(product.score()), name + ", score of 10");
    put(id + "/interval", Scores.interval(product.score()), name + ", 90 % interval of the score");
    put(id + "/rank", Scores.rank(product.rank()), name + ", rank");
    if (product.tier() != null) {
      put(id + "/tier", product.tier().toString(), name + ", tier");
    }
    edition
        .price(id)
        .ifPresent(p -> put(id + "/price", Prices.text(p), name + ", price on " + p.on()));
    for (TestPlan test : edition.campaign().method().tests()) {
      product.test(test.id()).ifPresent(node -> test(edition, product, test, node));
    }
  }

  private void test(Edition edition, ProductVerdict product, TestPlan test, Node node) {
    String key = product.id() + "/" + test.id();
    String words = product.name() + ", " + test.name();
    put(key, Scores.words(node.score()), words + ", score of 10");
    for (MeasureUse use : test.measures()) {
      List<Value> values = edition.measured().counted(test.id(), use.id(), product.id());
      if (values.isEmpty()) {
        continue;
      }
      List<Measurement> all = values.stream().map(Value::value).toList();
      Measurement mean =
          all.size() == 1 ? all.get(0) : Averaging.mean(all, Subject.ofProduct(product.id()));
      if (!mean.isMissing()) {
        int n = (int) all.stream().filter(m -> !m.isMissing()).count();
        String label = words + ", " + mean.label() + ", n = " + n;
        String name = key + "/" + use.id();
        figures.put(name, new Shown(name, Figures.of(mean), label));
      }
    }
  }

  private void put(String name, String text, String what) {
    figures.put(name, new Shown(name, new Dual(text, null), what));
  }

  public Collection<Shown> all() {
    return List.copyOf(figures.values());
  }

  public Optional<Shown> find(String name) {
    return Optional.ofNullable(figures.get(name));
  }

  /** The figure as a draft asked for it, or null when there is none of that name. */
  public @Nullable String text(FigureCall call) {
    Shown shown = figures.get(call.name());
    if (shown == null) {
      return null;
    }
    return switch (call.part()) {
      case BOTH -> shown.text();
      case FIRST -> shown.dual().first();
      case SECOND -> shown.dual().second() == null ? shown.dual().first() : shown.dual().second();
    };
  }
}
