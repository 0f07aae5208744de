package ovenproof.editor;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import ovenproof.chart.CurveChart;
import ovenproof.chart.CurveHandles;
import ovenproof.chart.Scale;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.core.scoring.ValueCurve;
import ovenproof.editor.CurveForm.Shape;
import ovenproof.method.CurveSpec;
import ovenproof.method.CurveSpec.Points.Anchor;
import ovenproof.verdict.Curves;

/** The picture of a curve whose corners can be taken hold of. */
final class CurvePictureForm {
  private static final int STEPS = 200;
  private static final double ROOM = 0.2;

  private CurvePictureForm() {}

  static String of(String name, CurveSpec curve, Shape shape) {
    List<Anchor> anchors = CurveForm.anchors(curve);
    Unit unit = CurveForm.unit(curve);
    double[] seen = anchors.stream().mapToDouble(a -> a.at().to(unit).value()).toArray();
    Scale scale = Scale.around(roomy(seen), 6);
    ValueCurve value = Curves.of(curve);
    List<CurveChart.Corner> corners = new ArrayList<>();
    for (int i = 0; i <= STEPS; i++) {
      double x = scale.low() + (scale.high() - scale.low()) * i / STEPS;
      double points = value.score(Quantity.of(x, unit).contract());
      corners.add(new CurveChart.Corner(x, points));
    }
    String sentence = "Value curve of " + name + "; each corner can be moved";
    return new CurveHandles(sentence, scale, unit.symbol(), corners, handles(curve, shape, unit))
        .svg();
  }

  /** Room on both sides, so that a corner can be moved outwards. */
  private static double[] roomy(double[] seen) {
    double low = java.util.Arrays.stream(seen).min().orElse(0);
    double high = java.util.Arrays.stream(seen).max().orElse(1);
    double room = (high - low) * ROOM;
    double floor = low >= 0 ? Math.max(0, low - room) : low - room;
    return new double[] {floor, high + room};
  }

  private static List<CurveHandles.Handle> handles(CurveSpec curve, Shape shape, Unit unit) {
    List<CurveHandles.Handle> handles = new ArrayList<>();
    if (curve instanceof CurveSpec.Window w && shape == Shape.WINDOW) {
      List<String> fields = new ArrayList<>(List.of("zero-below", "from", "to", "zero-above"));
      if (w.zeroBelow() == null) {
        fields.remove("zero-below");
      }
      List<Anchor> anchors = CurveForm.anchors(curve);
      for (int i = 0; i < anchors.size(); i++) {
        handles.add(handle(anchors.get(i), fields.get(i), null, unit));
      }
    } else if (Shape.of(curve) == shape) {
      List<Anchor> anchors = CurveForm.anchors(curve);
      for (int i = 0; i < anchors.size(); i++) {
        handles.add(handle(anchors.get(i), "at-" + i, "points-" + i, unit));
      }
    }
    return handles;
  }

  private static CurveHandles.Handle handle(
      Anchor anchor, String at, @org.jspecify.annotations.Nullable String points, Unit unit) {
    return new CurveHandles.Handle(
        anchor.at().to(unit).value(), anchor.points(), at, points, anchor.at().toString());
  }

  /** For the page's script: contract value = number × factor + offset, by the unit's symbol. */
  static String units(Dimension dimension) {
    return Stream.of(Unit.values())
        .filter(u -> u.dimension() == dimension)
        .map(
            u -> {
              double offset = Quantity.of(0, u).contract();
              double factor = Quantity.of(1, u).contract() - offset;
              String symbol = u == Unit.ONE ? "" : u.symbol();
              return symbol + "=" + String.format(Locale.ROOT, "%s,%s", factor, offset);
            })
        .collect(Collectors.joining(";"));
  }
}
