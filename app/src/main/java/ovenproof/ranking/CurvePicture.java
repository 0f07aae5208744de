package ovenproof.ranking;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import ovenproof.chart.CurveChart;
import ovenproof.chart.Scale;
import ovenproof.core.measure.Measurement;
import ovenproof.core.scoring.ValueCurve;
import ovenproof.method.Criterion;
import ovenproof.verdict.Curves;

/** A criterion's curve with the observations on it, in the contract unit of the measure. */
final class CurvePicture {
  private static final int STEPS = 200;

  private CurvePicture() {}

  static String of(Criterion criterion, List<Measurement> values) {
    ValueCurve curve = Curves.of(criterion.curve());
    double[] seen =
        values.stream()
            .flatMap(m -> java.util.stream.Stream.of(m.value(), m.low(), m.high()))
            .filter(v -> v != null && Double.isFinite(v))
            .mapToDouble(Double::doubleValue)
            .toArray();
    double[] anchors = DoubleStream.of(curve.anchors()).filter(Double::isFinite).toArray();
    boolean time = !values.isEmpty() && values.get(0).unit() == ovenproof.core.quantity.Unit.SECOND;
    double factor = time ? 1.0 / 60 : 1;
    double[] all =
        DoubleStream.concat(DoubleStream.of(anchors), DoubleStream.of(seen))
            .map(v -> v * factor)
            .toArray();
    Scale scale = Scale.around(all, 5);
    List<CurveChart.Corner> corners = new ArrayList<>();
    for (int i = 0; i <= STEPS; i++) {
      double x = scale.low() + (scale.high() - scale.low()) * i / STEPS;
      corners.add(new CurveChart.Corner(x, curve.score(x / factor)));
    }
    List<CurveChart.Mark> marks = new ArrayList<>();
    for (Measurement m : values) {
      if (m.value() != null) {
        marks.add(
            new CurveChart.Mark(
                m.subject().toString(), m.value() * factor, curve.score(m.value())));
      } else if (m.low() != null) {
        marks.add(new CurveChart.Mark(m.subject().toString(), m.low() * factor, null));
      }
    }
    String unit = time ? "min" : values.isEmpty() ? "" : values.get(0).unit().symbol();
    String sentence =
        "Value curve of "
            + criterion.name()
            + ": measurement to points, with "
            + marks.size()
            + " observations";
    return new CurveChart(sentence, scale, unit, corners, marks, null).svg();
  }
}
