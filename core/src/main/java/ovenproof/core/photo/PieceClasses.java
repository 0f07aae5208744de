package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.List;
import ovenproof.core.statistics.Interval;
import ovenproof.core.statistics.WilsonInterval;

/**
 * Sorts small pieces – fries, croquettes – into shade classes of the method, and says which share
 * each class has.
 *
 * <p>A piece counts by its median lightness; a mottled piece counts by its darkest or palest fifth
 * when the method says so.
 */
public final class PieceClasses {

  private static final double CONFIDENCE = 0.95;

  /** What of a piece decides its class. */
  public enum Judged {
    /** Median L*: [40, 50, 60] counts as 50. */
    MEDIAN,
    /** Mean of the darkest fifth: a fry burnt at one end is a dark fry. */
    DARKEST_FIFTH
  }

  /**
   * A class.
   *
   * @param name e.g. "medium dark"
   * @param fromLightness lowest L* that still belongs to it, inclusive
   */
  public record ShadeClass(String name, double fromLightness) {}

  /**
   * Share of a class.
   *
   * @param count pieces in it
   * @param share of the pieces, 0…1
   * @param interval Wilson, 95 %
   * @param areaShare share of the area of all pieces, 0…1
   */
  public record Fraction(
      ShadeClass shadeClass, int count, double share, Interval interval, double areaShare) {}

  private final List<ShadeClass> classes;
  private final Judged judged;

  private PieceClasses(List<ShadeClass> classes, Judged judged) {
    this.classes = classes;
    this.judged = judged;
  }

  /**
   * Classes by the method.
   *
   * @param classes from palest to darkest, limits falling; the last takes everything below
   * @throws IllegalArgumentException if there is none, or the limits do not fall
   */
  public static PieceClasses of(List<ShadeClass> classes, Judged judged) {
    if (classes.isEmpty()) {
      throw new IllegalArgumentException("at least one class is needed");
    }
    for (int i = 1; i < classes.size(); i++) {
      if (!(classes.get(i).fromLightness() < classes.get(i - 1).fromLightness())) {
        throw new IllegalArgumentException(
            "limits must fall from palest to darkest, found "
                + classes.get(i - 1).fromLightness()
                + " before "
                + classes.get(i).fromLightness());
      }
    }
    return new PieceClasses(List.copyOf(classes), judged);
  }

  /** The lightness that decides, L*; NaN for a piece without a cell. */
  public double lightness(PieceShade piece) {
    return lightness(piece, judged);
  }

  static double lightness(PieceShade piece, Judged judged) {
    ShadeMap map = piece.map();
    List<Double> values = new ArrayList<>();
    for (int i = 0; i < map.size(); i++) {
      if (map.inside(i)) {
        values.add((double) map.lightness(i));
      }
    }
    values.sort(Double::compare);
    int n = values.size();
    if (n == 0) {
      return Double.NaN;
    }
    if (judged == Judged.MEDIAN) {
      return n % 2 == 1 ? values.get(n / 2) : (values.get(n / 2 - 1) + values.get(n / 2)) / 2;
    }
    int fifth = Math.max(1, n / 5);
    return values.subList(0, fifth).stream()
        .mapToDouble(Double::doubleValue)
        .average()
        .orElseThrow();
  }

  /** The class of a lightness; the darkest class takes all that is darker. */
  public ShadeClass classOf(double lightness) {
    for (ShadeClass c : classes) {
      if (lightness >= c.fromLightness()) {
        return c;
      }
    }
    return classes.get(classes.size() - 1);
  }

  /**
   * Shares of all classes, from palest to darkest.
   *
   * @param pieces pieces without a cell are left out
   * @throws IllegalArgumentException if no piece can be judged
   */
  public List<Fraction> fractions(List<PieceShade> pieces) {
    int[] counts = new int[classes.size()];
    double[] areas = new double[classes.size()];
    int n = 0;
    double total = 0;
    for (PieceShade piece : pieces) {
      double lightness = lightness(piece);
      if (!Double.isNaN(lightness)) {
        int index = classes.indexOf(classOf(lightness));
        counts[index]++;
        areas[index] += piece.outline().area();
        total += piece.outline().area();
        n++;
      }
    }
    if (n == 0) {
      throw new IllegalArgumentException("at least one piece is needed that can be judged");
    }
    List<Fraction> out = new ArrayList<>();
    for (int i = 0; i < counts.length; i++) {
      out.add(
          new Fraction(
              classes.get(i),
              counts[i],
              counts[i] / (double) n,
              WilsonInterval.of(counts[i], n, CONFIDENCE),
              total == 0 ? 0 : areas[i] / total));
    }
    return out;
  }
}
