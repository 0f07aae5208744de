package ovenproof.method;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.MeasureDescription.EvidenceKind;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.input.Place;
import ovenproof.input.Problems;
import ovenproof.input.Written;
import ovenproof.input.YamlMap;
import ovenproof.method.CurveSpec.Points.Anchor;

/**
 * Reads the value curve of one criterion, in the unit of its measure. Where the measure is wrong
 * the unit is unknown, and the curve is left for the next pass.
 */
final class CurveReader {
  static final List<String> CURVE_KEYS =
      List.of("points", "window", "steps", "rated", "checklist", "percentile");
  static final List<String> CHECKLIST_KEYS = List.of("absent", "present");
  static final List<String> WINDOW_KEYS = List.of("zero_below", "from", "to", "zero_above");
  static final List<String> STEPS_KEYS = List.of("below", "from");
  static final List<String> PERCENTILE_KEYS = List.of("pool", "better", "values");

  private final TestScope scope;
  private final Optional<MeasureUse> measure;
  private final Optional<Dimension> dimension;
  private final YamlMap criterion;
  private final Problems problems;

  CurveReader(
      TestScope scope,
      Optional<MeasureUse> measure,
      Optional<Dimension> dimension,
      YamlMap criterion) {
    this.scope = scope;
    this.measure = measure;
    this.dimension = dimension;
    this.criterion = criterion;
    this.problems = criterion.problems();
  }

  CurveSpec read() {
    Optional<YamlMap> written = criterion.map("curve");
    if (written.isEmpty()) {
      if (!criterion.has("curve")) {
        problems.error(criterion.place(), "no \"curve\"", "a value curve", "add it");
      }
      return ValueTreeReader.NO_CURVE;
    }
    YamlMap curve = written.get();
    curve.only(CURVE_KEYS);
    List<String> kinds = curve.keys().stream().filter(CURVE_KEYS::contains).toList();
    if (kinds.size() != 1) {
      problems.error(
          curve.place(), kinds.size() + " curves", "one of " + String.join(", ", CURVE_KEYS), "");
      return ValueTreeReader.NO_CURVE;
    }
    if (dimension.isEmpty()) {
      return ValueTreeReader.NO_CURVE;
    }
    return switch (kinds.get(0)) {
      case "points" -> points(curve);
      case "window" -> curve.map("window").map(this::window).orElse(ValueTreeReader.NO_CURVE);
      case "steps" -> curve.map("steps").map(this::steps).orElse(ValueTreeReader.NO_CURVE);
      case "rated" -> rated(curve);
      case "checklist" ->
          curve.map("checklist").map(this::checklist).orElse(ValueTreeReader.NO_CURVE);
      default -> curve.map("percentile").map(this::percentile).orElse(ValueTreeReader.NO_CURVE);
    };
  }

  private CurveSpec points(YamlMap curve) {
    List<Anchor> anchors = anchors(curve, "points");
    if (curve.size("points") < 2) {
      problems.error(curve.place("points"), "fewer than two anchors", "two or more", "");
    }
    if (anchors.size() < 2) {
      return ValueTreeReader.NO_CURVE;
    }
    if (anchors.stream().mapToDouble(Anchor::points).distinct().count() == 1) {
      problems.warning(
          curve.place("points"),
          "the same points everywhere",
          "points that tell products apart",
          "");
    }
    Anchor last = anchors.get(anchors.size() - 1);
    if (last.points() < anchors.get(0).points()) {
      checkCap(curve.place("points"), last.at());
    }
    return new CurveSpec.Points(anchors);
  }

  /** Anchors in rising order; the first one out of order is reported at its place. */
  private List<Anchor> anchors(YamlMap map, String key) {
    List<Anchor> anchors = new ArrayList<>();
    for (YamlMap.Pair pair : map.pairs(key)) {
      Optional<Quantity> at = quantity(pair.first());
      Optional<Double> points = pair.second().number(0, 10);
      if (at.isEmpty() || points.isEmpty()) {
        continue;
      }
      Anchor anchor = new Anchor(at.get(), points.get());
      if (!anchors.isEmpty()
          && anchor.at().contract() <= anchors.get(anchors.size() - 1).at().contract()) {
        pair.first()
            .error(
                "more than " + anchors.get(anchors.size() - 1).at() + ", the anchor before it",
                "put the anchors in rising order");
      }
      anchors.add(anchor);
    }
    return anchors;
  }

  private CurveSpec window(YamlMap window) {
    window.only(WINDOW_KEYS);
    Quantity zeroBelow = window.find("zero_below").flatMap(this::quantity).orElse(null);
    Optional<Quantity> from = window.need("from").flatMap(this::quantity);
    Optional<Quantity> to = window.need("to").flatMap(this::quantity);
    Quantity zeroAbove = window.find("zero_above").flatMap(this::quantity).orElse(null);
    if (!window.has("zero_below") && !window.has("zero_above")) {
      problems.error(
          window.place(), "a window that never falls", "\"zero_below\" or \"zero_above\"", "");
    }
    if (from.isEmpty() || to.isEmpty()) {
      return ValueTreeReader.NO_CURVE;
    }
    rising(window, "from", zeroBelow, from.get(), false);
    rising(window, "to", from.get(), to.get(), true);
    rising(window, "zero_above", to.get(), zeroAbove, false);
    if (zeroAbove != null) {
      checkCap(window.place("zero_above"), zeroAbove);
    }
    return new CurveSpec.Window(zeroBelow, from.get(), to.get(), zeroAbove);
  }

  private void rising(
      YamlMap window,
      String key,
      @Nullable Quantity below,
      @Nullable Quantity above,
      boolean mayBeEqual) {
    if (below == null || above == null || below.unit().dimension() != above.unit().dimension()) {
      return;
    }
    double step = above.contract() - below.contract();
    if (step < 0 || (step == 0 && !mayBeEqual)) {
      problems.error(
          window.place(key),
          "\"" + key + "\" at " + above,
          (mayBeEqual ? "at least " : "more than ") + below,
          "the order is zero_below, from, to, zero_above");
    }
  }

  private CurveSpec steps(YamlMap steps) {
    steps.only(STEPS_KEYS);
    List<Anchor> anchors = anchors(steps, "from");
    if (steps.size("from") == 0) {
      problems.error(steps.place(), "no steps", "\"from\" with at least one step", "");
    }
    if (anchors.isEmpty()) {
      return ValueTreeReader.NO_CURVE;
    }
    return new CurveSpec.Steps(
        steps.need("below").flatMap(w -> w.number(0, 10)).orElse(0.0), anchors);
  }

  private CurveSpec rated(YamlMap curve) {
    boolean isRated =
        measure
            .map(m -> scope.method().measures().get(m.take()))
            .filter(d -> d.evidence() == EvidenceKind.FACTS && d.unit() == Unit.POINTS)
            .isPresent();
    if (measure.isPresent() && !isRated && description().isPresent()) {
      problems.error(
          curve.place("rated"),
          "\"rated\" for the measure " + measure.get().id(),
          "a measure that takes a rated fact",
          "write take: rated, or another curve");
    }
    return new CurveSpec.Rated(curve.need("rated").flatMap(w -> w.wholeNumber(1, 4)).orElse(4));
  }

  private CurveSpec checklist(YamlMap checklist) {
    checklist.only(CHECKLIST_KEYS);
    if (measure.isPresent() && !measure.get().ofChecklist() && description().isPresent()) {
      problems.error(
          checklist.place(),
          "\"checklist\" for the measure " + measure.get().id(),
          "a measure that takes a feature or features",
          "write take: feature or take: features, or another curve");
    }
    double absent = checklist.need("absent").flatMap(w -> w.number(0, 10)).orElse(0.0);
    double present = checklist.need("present").flatMap(w -> w.number(0, 10)).orElse(10.0);
    if (absent == present && checklist.has("absent") && checklist.has("present")) {
      problems.warning(
          checklist.place(), "the same points everywhere", "points that tell products apart", "");
    }
    return new CurveSpec.Checklist(absent, present);
  }

  private Optional<MeasureDescription> description() {
    return measure.map(m -> scope.method().measures().get(m.take()));
  }

  private CurveSpec percentile(YamlMap percentile) {
    percentile.only(PERCENTILE_KEYS);
    List<Quantity> values =
        percentile.list("values").stream().flatMap(w -> quantity(w).stream()).toList();
    int size = percentile.size("values");
    if (size == 0) {
      problems.error(percentile.place("values"), "no values", "the values of the pool", "");
    } else if (size == 1) {
      problems.warning(
          percentile.place("values"),
          "a pool of one",
          "at least two values: one has no percentiles",
          "the criterion is missing until the pool grows; absolute curves are scored");
    }
    return new CurveSpec.Percentile(
        percentile.text("pool"),
        percentile
            .need("better")
            .flatMap(w -> w.word(CurveSpec.Percentile.Better.class))
            .orElse(CurveSpec.Percentile.Better.HIGHER),
        values);
  }

  private Optional<Quantity> quantity(Written written) {
    return dimension.flatMap(written::quantity);
  }

  /**
   * A run stopped by its cap is known only as longer: where the curve still falls beyond the cap,
   * its score is only known as a range.
   */
  private void checkCap(Place place, Quantity worst) {
    Optional<Quantity> cap = scope.cap();
    boolean isRunTime =
        dimension.filter(d -> d == Dimension.TIME).isPresent()
            && description().filter(d -> d.evidence() == EvidenceKind.EVENTS).isPresent();
    if (isRunTime && cap.isPresent() && worst.contract() > cap.get().contract()) {
      problems.warning(
          place,
          "a worst anchor at " + worst + ", beyond the cap of " + cap.get(),
          "a worst anchor up to the cap",
          "a run that reaches the cap can then only be scored as a range");
    }
  }
}
