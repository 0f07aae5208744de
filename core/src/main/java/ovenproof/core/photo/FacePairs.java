package ovenproof.core.photo;

import java.util.List;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.quantity.Unit;

/**
 * Two photographs of one piece: top and underside, before and after. What both share – the camera,
 * the chart – cancels in the difference as far as it shifts both alike.
 */
public final class FacePairs {

  public static final MeasureDescription TOP_MINUS_UNDERSIDE =
      new MeasureDescription(
          "top-minus-underside",
          "Top against underside",
          Unit.LIGHTNESS,
          "Positive when the top is paler than the underside.",
          "mean L* of the top − mean L* of the underside",
          "own definition",
          MeasureDescription.EvidenceKind.PHOTO,
          List.of(),
          1);

  public static final MeasureDescription BEFORE_MINUS_AFTER =
      new MeasureDescription(
          "lightness-lost",
          "Lightness lost in baking",
          Unit.LIGHTNESS,
          "How much darker the piece became.",
          "mean L* before − mean L* after",
          "own definition",
          MeasureDescription.EvidenceKind.PHOTO,
          List.of(),
          1);

  private FacePairs() {}

  /** About which axis a piece was turned over. */
  public enum Turned {
    /** Over its left or right edge: left and right change places. */
    SIDEWAYS,
    /** Over its front or back edge: front and back change places. */
    LENGTHWAYS
  }

  /**
   * Difference of two means of lightness.
   *
   * @param measure one of the two of this class
   * @param first {@code lightness-mean} of top or before
   * @param second {@code lightness-mean} of underside or after
   */
  public static Measurement difference(
      MeasureDescription measure, Subject subject, Measurement first, Measurement second) {
    Double a = first.value();
    Double b = second.value();
    if (a == null || b == null) {
      return Measurement.missing(measure, subject, "one of the two photographs has no value");
    }
    return Measurement.of(measure, subject, a - b).withComponents(components(first, second));
  }

  /** Shared sources subtract by name; what belongs to a run adds in squares. */
  private static List<Component> components(Measurement first, Measurement second) {
    java.util.Map<String, Double> shared = new java.util.TreeMap<>();
    double run = 0;
    for (Component c : first.components()) {
      if (c.isShared()) {
        shared.merge(c.source(), c.u(), Double::sum);
      } else {
        run += c.u() * c.u();
      }
    }
    for (Component c : second.components()) {
      if (c.isShared()) {
        shared.merge(c.source(), -c.u(), Double::sum);
      } else {
        run += c.u() * c.u();
      }
    }
    List<Component> out = new java.util.ArrayList<>();
    shared.forEach(
        (source, u) -> {
          if (u != 0) {
            out.add(Component.shared(source, u));
          }
        });
    out.add(Component.run(Math.sqrt(run)));
    return out;
  }

  /**
   * Measures of a turned piece as seen from above: what turning exchanges changes its sign. Tilts
   * of the axis that the piece was turned about stay; everything that knows no direction stays.
   */
  public static List<Measurement> asFromAbove(List<Measurement> underside, Turned turned) {
    String exchanged =
        turned == Turned.SIDEWAYS
            ? PhotoMeasureCatalogue.TILT_LEFT_RIGHT.id()
            : PhotoMeasureCatalogue.TILT_FRONT_BACK.id();
    return underside.stream().map(m -> m.id().equals(exchanged) ? m.negated() : m).toList();
  }

  /**
   * Where a place on the underside lies as seen from the top.
   *
   * @param x 0…1 from the left of the photograph
   * @param y 0…1 from its upper edge
   */
  public static PixelPoint fromAbove(double x, double y, Turned turned) {
    return turned == Turned.SIDEWAYS ? new PixelPoint(1 - x, y) : new PixelPoint(x, 1 - y);
  }
}
