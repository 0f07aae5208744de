package ovenproof.core.photo;

import java.util.List;
import java.util.function.ToIntFunction;
import ovenproof.core.photo.CavityMap.Position;

/**
 * Which part of a tray a place belongs to: 1 for the first part, −1 for the second, 0 for neither.
 * A place in the middle belongs to no side. Sides are those of the places that were used, not of
 * the cavity.
 */
final class CavitySides {

  private static final double SAME = 1e-9;

  private CavitySides() {}

  static ToIntFunction<Position> frontAgainstBack(List<Position> places) {
    double middle = middle(places.stream().mapToDouble(Position::y).toArray());
    return p -> side(p.y(), middle);
  }

  static ToIntFunction<Position> leftAgainstRight(List<Position> places) {
    double middle = middle(places.stream().mapToDouble(Position::x).toArray());
    return p -> -side(p.x(), middle);
  }

  static ToIntFunction<Position> cornersAgainstRest(List<Position> places) {
    double[] x = ends(places.stream().mapToDouble(Position::x).toArray());
    double[] y = ends(places.stream().mapToDouble(Position::y).toArray());
    return p -> atEnd(p.x(), x) && atEnd(p.y(), y) ? 1 : -1;
  }

  private static int side(double at, double middle) {
    return Math.abs(at - middle) <= SAME ? 0 : Double.compare(at, middle);
  }

  private static boolean atEnd(double at, double[] ends) {
    return at <= ends[0] + SAME || at >= ends[1] - SAME;
  }

  private static double[] ends(double[] values) {
    return new double[] {
      java.util.Arrays.stream(values).min().orElse(0),
      java.util.Arrays.stream(values).max().orElse(0)
    };
  }

  private static double middle(double[] values) {
    double[] ends = ends(values);
    return (ends[0] + ends[1]) / 2;
  }
}
