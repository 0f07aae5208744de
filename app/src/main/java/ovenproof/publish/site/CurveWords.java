package ovenproof.publish.site;

import java.util.stream.Collectors;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Rounding;
import ovenproof.core.quantity.Unit;
import ovenproof.method.Criterion;
import ovenproof.method.CurveSpec;
import ovenproof.method.MeasureUse;
import ovenproof.method.TestPlan;
import ovenproof.publish.figure.Figures;

/** A value curve in a sentence: what is worth how many points. */
final class CurveWords {

  private CurveWords() {}

  static String of(TestPlan test, Criterion criterion) {
    if (test.measure(criterion.measure()).filter(MeasureUse::ofProduct).isPresent()) {
      return curve(criterion.curve());
    }
    String runs =
        switch (criterion.runs()) {
          case SCORE_THEN_AVERAGE -> "each run is scored, then averaged";
          case AVERAGE_THEN_SCORE -> "runs are averaged, then scored";
        };
    return curve(criterion.curve()) + "; " + runs;
  }

  private static String curve(CurveSpec curve) {
    if (curve instanceof CurveSpec.Points points) {
      return points.anchors().stream()
          .map(a -> amount(a.at()) + " → " + points(a.points()))
          .collect(Collectors.joining(", "));
    }
    if (curve instanceof CurveSpec.Window window) {
      return window(window);
    }
    if (curve instanceof CurveSpec.Steps steps) {
      return "below the first step "
          + points(steps.below())
          + steps.from().stream()
              .map(a -> ", from " + amount(a.at()) + " " + points(a.points()))
              .collect(Collectors.joining());
    }
    if (curve instanceof CurveSpec.Rated rated) {
      return "step 0 to " + rated.highestStep() + " → 0 to 10";
    }
    if (curve instanceof CurveSpec.Checklist checklist) {
      return "absent → "
          + points(checklist.absent())
          + ", present → "
          + points(checklist.present());
    }
    return percentile((CurveSpec.Percentile) curve);
  }

  private static String window(CurveSpec.Window window) {
    String below =
        window.zeroBelow() == null ? "" : ", falling to 0 at " + amount(window.zeroBelow());
    String above =
        window.zeroAbove() == null ? "" : ", falling to 0 at " + amount(window.zeroAbove());
    return "10 from " + amount(window.from()) + " to " + amount(window.to()) + below + above;
  }

  private static String percentile(CurveSpec.Percentile percentile) {
    String better = percentile.better() == CurveSpec.Percentile.Better.HIGHER ? "higher" : "lower";
    return "percentile in the pool " + percentile.pool() + ", " + better + " is better";
  }

  private static String points(double points) {
    return Rounding.HALF_UP.text(points, points == Math.rint(points) ? 0 : 1);
  }

  /** As the method wrote it, unrounded, with the other system beside it. */
  private static String amount(Quantity quantity) {
    if (quantity.unit().dimension() == ovenproof.core.quantity.Dimension.TIME) {
      return Figures.text(quantity.to(Unit.SECOND), Rounding.HALF_UP);
    }
    String second = Figures.dual(quantity, Rounding.HALF_UP).second();
    return second == null ? quantity.toString() : quantity + " (" + second + ")";
  }
}
