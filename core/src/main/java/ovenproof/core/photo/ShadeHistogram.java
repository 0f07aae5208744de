package ovenproof.core.photo;

import java.util.List;

/**
 * How much of the food has which lightness.
 *
 * @param shares share of the measured cells in each whole step of L*, from 0–1 to 99–100; sums to 1
 *     unless there are no cells
 */
public record ShadeHistogram(List<Double> shares) {

  private static final int BINS = 100;

  public ShadeHistogram {
    shares = List.copyOf(shares);
  }

  /** Over all pieces of a batch, each cell weighted by its pixels. */
  public static ShadeHistogram of(List<PieceShade> pieces) {
    double[] bins = new double[BINS];
    double total = 0;
    for (PieceShade piece : pieces) {
      ShadeMap map = piece.map();
      for (int i = 0; i < map.size(); i++) {
        if (map.inside(i)) {
          int bin = Math.max(0, Math.min(BINS - 1, (int) Math.floor(map.lightness(i))));
          bins[bin] += map.pixels(i);
          total += map.pixels(i);
        }
      }
    }
    double n = total;
    return new ShadeHistogram(
        java.util.Arrays.stream(bins).map(b -> n == 0 ? 0 : b / n).boxed().toList());
  }
}
