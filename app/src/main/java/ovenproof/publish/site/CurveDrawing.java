package ovenproof.publish.site;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import ovenproof.chart.CurveChart;
import ovenproof.chart.Scale;
import ovenproof.core.measure.Censoring;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;
import ovenproof.core.scoring.ValueCurve;
import ovenproof.method.Criterion;
import ovenproof.method.TestPlan;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.edition.Field;
import ovenproof.publish.figure.Figures;
import ovenproof.verdict.Curves;
import ovenproof.verdict.Verdict.Node;

/**
 * A criterion's value curve with what was measured of every product of the field on it.
 *
 * @param svg the drawing
 * @param key the products from the lowest measurement to the highest, as the beads lie
 */
record CurveDrawing(String svg, String key) {
  private static final int STEPS = 120;

  private record Seen(String product, Measurement measurement) {
    @Nullable Double at() {
      return measurement.value() == null ? measurement.low() : measurement.value();
    }
  }

  /** Empty when nothing of this criterion was measured of any product. */
  static Optional<CurveDrawing> of(Edition edition, String test, Criterion criterion) {
    List<Seen> seen =
        edition.verdict().products().stream()
            .flatMap(
                p ->
                    p.test(test).stream()
                        .flatMap(t -> Field.leaves(t).stream())
                        .filter(n -> n.id().equals(criterion.id()))
                        .map(Node::measurement)
                        .filter(Objects::nonNull)
                        .map(m -> new Seen(p.name(), m)))
            .filter(s -> s.at() != null && Double.isFinite(Objects.requireNonNull(s.at())))
            .sorted(java.util.Comparator.comparing(s -> Objects.requireNonNull(s.at())))
            .toList();
    return seen.isEmpty() ? Optional.empty() : Optional.of(draw(edition, test, criterion, seen));
  }

  private static CurveDrawing draw(
      Edition edition, String testId, Criterion criterion, List<Seen> seen) {
    TestPlan test = edition.campaign().method().test(testId).orElseThrow();
    ValueCurve curve = Curves.of(criterion.curve());
    Unit unit = seen.get(0).measurement().unit();
    double factor = unit == Unit.SECOND ? 1.0 / 60 : 1;
    double[] all =
        DoubleStream.concat(
                DoubleStream.of(curve.anchors()).filter(Double::isFinite),
                seen.stream().mapToDouble(s -> Objects.requireNonNull(s.at())))
            .map(v -> v * factor)
            .toArray();
    Scale scale = Scale.around(all, 5);
    List<CurveChart.Corner> corners =
        corners(curve, scale, factor)
            .map(x -> new CurveChart.Corner(x, curve.score(x / factor)))
            .toList();
    List<CurveChart.Mark> marks = new ArrayList<>();
    for (Seen one : seen) {
      Double value = one.measurement().value();
      double at = Objects.requireNonNull(one.at());
      marks.add(
          new CurveChart.Mark(
              one.product(), at * factor, value == null ? null : curve.score(value)));
    }
    String key =
        seen.stream()
            .map(s -> s.product() + " " + Figures.of(s.measurement()).first())
            .collect(Collectors.joining(", "));
    key += arrows(seen);
    String sentence =
        "Value curve of " + criterion.name() + ": " + CurveWords.of(test, criterion) + ". " + key;
    String symbol = factor == 1 ? unit == Unit.ONE ? "" : unit.symbol() : "min";
    return new CurveDrawing(
        new CurveChart(sentence, scale, symbol, corners, marks, null).svg(), key);
  }

  /** What arrows stand for, where there are any. */
  private static String arrows(List<Seen> seen) {
    boolean ended =
        seen.stream()
            .map(s -> s.measurement().censored())
            .anyMatch(c -> c == Censoring.ABOVE || c == Censoring.BELOW);
    boolean range = seen.stream().anyMatch(s -> s.measurement().censored() == Censoring.BETWEEN);
    return (ended ? "; an arrow where the run ended before it was seen" : "")
        + (range ? "; an arrow where a range begins" : "");
  }

  /** Even steps and the curve's own corners, so that none is cut. */
  private static Stream<Double> corners(ValueCurve curve, Scale scale, double factor) {
    DoubleStream even =
        java.util.stream.IntStream.rangeClosed(0, STEPS)
            .mapToDouble(i -> scale.low() + (scale.high() - scale.low()) * i / STEPS);
    DoubleStream own =
        DoubleStream.of(curve.anchors())
            .map(a -> a * factor)
            .filter(a -> a >= scale.low() && a <= scale.high());
    return DoubleStream.concat(even, own).sorted().boxed();
  }
}
