package ovenproof.editor;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Quantity;
import ovenproof.method.CurveSpec;

/** Curves as people read them, and as the method's text writes them. */
final class CurveWords {
  private CurveWords() {}

  /** In words, for a table. */
  static String of(CurveSpec curve) {
    if (curve instanceof CurveSpec.Points p) {
      return p.anchors().stream()
          .map(a -> number(a.points()) + " at " + a.at())
          .collect(Collectors.joining(", "));
    } else if (curve instanceof CurveSpec.Window w) {
      return "10 from "
          + w.from()
          + " to "
          + w.to()
          + side(w.zeroBelow(), ", 0 below ")
          + side(w.zeroAbove(), ", 0 above ");
    } else if (curve instanceof CurveSpec.Steps s) {
      return number(s.below())
          + s.from().stream()
              .map(a -> ", " + number(a.points()) + " from " + a.at())
              .collect(Collectors.joining());
    } else if (curve instanceof CurveSpec.Rated r) {
      return "rated step of " + r.highestStep();
    } else if (curve instanceof CurveSpec.Checklist c) {
      return number(c.present()) + " when present, " + number(c.absent()) + " when absent";
    }
    return "percentile in a pool";
  }

  private static String side(@Nullable Quantity at, String words) {
    return at == null ? "" : words + at;
  }

  /** In the flow style of the method's text. */
  static String yaml(CurveSpec curve) {
    if (curve instanceof CurveSpec.Points p) {
      return "{points: [" + anchors(p.anchors()) + "]}";
    } else if (curve instanceof CurveSpec.Window w) {
      return "{window: {"
          + (w.zeroBelow() == null ? "" : "zero_below: " + w.zeroBelow() + ", ")
          + "from: "
          + w.from()
          + ", to: "
          + w.to()
          + (w.zeroAbove() == null ? "" : ", zero_above: " + w.zeroAbove())
          + "}}";
    } else if (curve instanceof CurveSpec.Steps s) {
      return "{steps: {below: " + number(s.below()) + ", from: [" + anchors(s.from()) + "]}}";
    }
    throw new IllegalArgumentException("a curve that is not drawn by anchors: " + curve);
  }

  private static String anchors(List<CurveSpec.Points.Anchor> anchors) {
    return anchors.stream()
        .map(a -> "[" + a.at() + ", " + number(a.points()) + "]")
        .collect(Collectors.joining(", "));
  }

  static String number(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }
}
