package ovenproof.core.photo;

import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Takes a cast shadow off a piece. A shadow is the ground with less light: its a* and b* shrink
 * with L* + 16 as the cube root of the light does, while food has a colour of its own.
 */
final class ShadowTrim {

  private static final double DARKEST_SHADOW = 0.45;
  private static final double LIGHTEST_SHADOW = 1.05;
  private static final double OWN_COLOUR = 7;
  private static final double MOST_LOST = 0.45;
  private static final double BIAS = 0.85;

  private final LabPlanes lab;
  private final double unit;

  ShadowTrim(LabPlanes lab, double unit) {
    this.lab = lab;
    this.unit = unit;
  }

  /** The piece without shadow, or as it was when its colour cannot be told from the ground's. */
  Mask trim(Mask piece, Mask notGround) {
    Mask ring =
        piece.dilated(10 * unit).and(piece.dilated(5 * unit).inverted()).and(notGround.inverted());
    int[] around = indices(ring);
    int[] core = indices(piece.eroded(0.25 * Math.sqrt(piece.count())));
    if (around.length < 20 || core.length < 10) {
      return piece;
    }
    GroundModel ground = GroundModel.of(lab, around);
    double[] food = mean(core);
    boolean distinct =
        ground.groups().stream()
            .allMatch(g -> Math.hypot(food[1] - g[1], food[2] - g[2]) > OWN_COLOUR);
    if (!distinct) {
      return piece;
    }
    Mask kept = Mask.empty(piece.width(), piece.height());
    boolean[] set = piece.set();
    for (int i = 0; i < set.length; i++) {
      kept.set()[i] = set[i] && !isShadow(i, food, ground);
    }
    Mask largest =
        kept.filled().and(piece).opened(1.5 * unit).parts(10).stream()
            .max(Comparator.comparingInt(Mask::count))
            .orElse(piece);
    return largest.count() < (1 - MOST_LOST) * piece.count() ? piece : largest;
  }

  private boolean isShadow(int i, double[] food, GroundModel ground) {
    double own = apart(i, food, 0.6, 1.3);
    for (double[] g : ground.groups()) {
      double light = (lab.lightness()[i] + 16) / (g[0] + 16);
      if (light > DARKEST_SHADOW && light < LIGHTEST_SHADOW && apart(i, g, 0, 2) < BIAS * own) {
        return true;
      }
    }
    return false;
  }

  /** Distance in a*, b* from a colour seen in as much light as this pixel. */
  private double apart(int i, double[] colour, double least, double most) {
    double light = (lab.lightness()[i] + 16) / (colour[0] + 16);
    double k = Math.max(least, Math.min(most, light));
    return Math.hypot(lab.a()[i] - k * colour[1], lab.b()[i] - k * colour[2]);
  }

  private double[] mean(int[] pixels) {
    double[] sum = new double[3];
    for (int i : pixels) {
      sum[0] += lab.lightness()[i] / pixels.length;
      sum[1] += lab.a()[i] / pixels.length;
      sum[2] += lab.b()[i] / pixels.length;
    }
    return sum;
  }

  private static int[] indices(Mask mask) {
    boolean[] set = mask.set();
    return IntStream.range(0, set.length).filter(i -> set[i]).toArray();
  }
}
