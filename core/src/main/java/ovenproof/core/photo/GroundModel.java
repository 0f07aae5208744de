package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * The colours of a ground, as a few groups: board, wires and what lies under them.
 *
 * @param groups L*, a*, b* of each
 */
record GroundModel(List<double[]> groups) {

  private static final int GROUPS = 4;
  private static final int SAMPLES = 4000;
  private static final int ROUNDS = 12;
  private static final double LEAST_SHARE = 0.06;

  /** Colours this near to each other are one material in slightly different light. */
  private static final double ONE_MATERIAL = 5;

  /** Share of a border that one material must make for the ground to be plain. */
  private static final double PLAIN_SHARE = 0.6;

  /** Groups the colours of some pixels (k-means, seeded, smallest groups dropped). */
  static GroundModel of(LabPlanes lab, int[] pixels) {
    int step = Math.max(1, pixels.length / SAMPLES);
    List<double[]> points = new ArrayList<>();
    for (int k = 0; k < pixels.length; k += step) {
      int i = pixels[k];
      points.add(new double[] {lab.lightness()[i], lab.a()[i], lab.b()[i]});
    }
    if (points.isEmpty()) {
      return new GroundModel(List.of());
    }
    SplittableRandom random = new SplittableRandom(1);
    double[][] centres = new double[GROUPS][];
    for (int g = 0; g < GROUPS; g++) {
      centres[g] = points.get(random.nextInt(points.size())).clone();
    }
    int[] counts = new int[GROUPS];
    for (int round = 0; round < ROUNDS; round++) {
      counts = move(points, centres);
    }
    List<double[]> groups = new ArrayList<>();
    for (int g = 0; g < GROUPS; g++) {
      if (counts[g] >= LEAST_SHARE * points.size()) {
        groups.add(centres[g]);
      }
    }
    return new GroundModel(groups);
  }

  /**
   * The one material that most of a border shows, when there is one: food that reaches the edge of
   * the frame is then no part of the ground. Without one, no groups.
   */
  GroundModel plain(LabPlanes lab, int[] border) {
    GroundModel best = new GroundModel(List.of());
    int most = (int) (PLAIN_SHARE * border.length);
    for (double[] middle : groups) {
      GroundModel near =
          new GroundModel(
              groups.stream().filter(g -> LabPlanes.distance(g, middle) < ONE_MATERIAL).toList());
      int covered = 0;
      for (int i : border) {
        covered += near.distance(lab, i) < ONE_MATERIAL ? 1 : 0;
      }
      if (covered > most) {
        most = covered;
        best = near;
      }
    }
    return best;
  }

  private static int[] move(List<double[]> points, double[][] centres) {
    double[][] sums = new double[centres.length][3];
    int[] counts = new int[centres.length];
    for (double[] p : points) {
      int nearest = 0;
      double least = Double.POSITIVE_INFINITY;
      for (int g = 0; g < centres.length; g++) {
        double d = 0;
        for (int k = 0; k < 3; k++) {
          d += (p[k] - centres[g][k]) * (p[k] - centres[g][k]);
        }
        if (d < least) {
          least = d;
          nearest = g;
        }
      }
      counts[nearest]++;
      for (int k = 0; k < 3; k++) {
        sums[nearest][k] += p[k];
      }
    }
    for (int g = 0; g < centres.length; g++) {
      for (int k = 0; k < 3 && counts[g] > 0; k++) {
        centres[g][k] = sums[g][k] / counts[g];
      }
    }
    return counts;
  }

  /** Distance of a pixel from the nearest group; 0 without groups. */
  float distance(LabPlanes lab, int i) {
    double least = groups.isEmpty() ? 0 : Double.POSITIVE_INFINITY;
    for (double[] g : groups) {
      least = Math.min(least, lab.distance(i, g[0], g[1], g[2]));
    }
    return (float) least;
  }

  /** Distance of a colour (L*, a*, b*) from the nearest group; infinite without groups. */
  double distance(double[] colour) {
    double least = Double.POSITIVE_INFINITY;
    for (double[] g : groups) {
      least = Math.min(least, LabPlanes.distance(colour, g));
    }
    return least;
  }
}
