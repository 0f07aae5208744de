package ovenproof.method;

import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Quantity;

/**
 * Measurement → 0–10 points, with absolute anchors set before data. Quantities as written; {@code
 * Quantity.contract()} gives the numbers.
 */
public sealed interface CurveSpec {

  /** Straight lines between anchors in rising order of the measurement, flat outside. */
  record Points(List<Anchor> anchors) implements CurveSpec {
    public Points {
      anchors = List.copyOf(anchors);
    }

    public record Anchor(Quantity at, double points) {}
  }

  /**
   * Full points from {@code from} to {@code to}, falling to 0 at {@code zeroBelow} and {@code
   * zeroAbove}; the sides may differ. A null side never falls.
   */
  record Window(
      @Nullable Quantity zeroBelow, Quantity from, Quantity to, @Nullable Quantity zeroAbove)
      implements CurveSpec {}

  /** Points of the highest step whose {@code from} is reached; below the first, {@code below}. */
  record Steps(double below, List<Points.Anchor> from) implements CurveSpec {
    public Steps {
      from = List.copyOf(from);
    }
  }

  /** The measurement is already in points: a rated step 0–4 is scaled to 0–10. */
  record Rated(int highestStep) implements CurveSpec {}

  /**
   * Of a feature, or of a share of the checklist.
   *
   * @param absent points without the feature, or with none of the list
   * @param present points with it, or with all of the list; straight between them
   */
  record Checklist(double absent, double present) implements CurveSpec {}

  /** Percentile in a frozen pool of earlier measurements. */
  record Percentile(String pool, Better better, List<Quantity> values) implements CurveSpec {
    public Percentile {
      values = List.copyOf(values);
    }

    /** Which end of the pool is the good one. */
    public enum Better {
      HIGHER,
      LOWER
    }
  }
}
