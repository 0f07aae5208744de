package ovenproof.verdict;

import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Quantity;
import ovenproof.core.quantity.Unit;
import ovenproof.core.scoring.ValueCurve;
import ovenproof.method.CurveSpec;

/** From the curve that a method writes to the curve that scores. */
public final class Curves {

  private Curves() {}

  /**
   * The curve, in contract units.
   *
   * @throws IllegalArgumentException in words, if the anchors do not rise, a score lies outside
   *     0–10 or a pool has fewer than two values
   */
  public static ValueCurve of(CurveSpec spec) {
    if (spec instanceof CurveSpec.Points points) {
      return ValueCurve.lines(places(points.anchors()), scores(points.anchors()));
    }
    if (spec instanceof CurveSpec.Window window) {
      return ValueCurve.window(
          side(window.zeroBelow(), Double.NEGATIVE_INFINITY),
          window.from().contract(),
          window.to().contract(),
          side(window.zeroAbove(), Double.POSITIVE_INFINITY));
    }
    if (spec instanceof CurveSpec.Steps steps) {
      return ValueCurve.steps(steps.below(), places(steps.from()), scores(steps.from()));
    }
    if (spec instanceof CurveSpec.Checklist checklist) {
      return checklist(checklist);
    }
    if (spec instanceof CurveSpec.Percentile percentile) {
      return ValueCurve.percentile(
          percentile.values().stream().mapToDouble(Quantity::contract).toArray(),
          percentile.better() == CurveSpec.Percentile.Better.HIGHER
              ? ValueCurve.Better.HIGHER
              : ValueCurve.Better.LOWER);
    }
    return ValueCurve.points(((CurveSpec.Rated) spec).highestStep());
  }

  /** A share of the checklist runs from 0 to 100 %. */
  private static ValueCurve checklist(CurveSpec.Checklist checklist) {
    double all = Quantity.of(1, Unit.ONE).contract();
    boolean scaled = checklist.absent() == 0 && checklist.present() == ValueCurve.BEST;
    return scaled
        ? ValueCurve.points(all)
        : ValueCurve.lines(
            new double[] {0, all}, new double[] {checklist.absent(), checklist.present()});
  }

  private static double side(@Nullable Quantity side, double open) {
    return side == null ? open : side.contract();
  }

  private static double[] places(List<CurveSpec.Points.Anchor> anchors) {
    return anchors.stream().mapToDouble(a -> a.at().contract()).toArray();
  }

  private static double[] scores(List<CurveSpec.Points.Anchor> anchors) {
    return anchors.stream().mapToDouble(CurveSpec.Points.Anchor::points).toArray();
  }
}
