package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import ovenproof.core.colour.Ciede2000;
import ovenproof.core.colour.Lab;
import ovenproof.core.colour.LinearRgb;
import ovenproof.core.colour.Srgb;
import ovenproof.core.colour.White;

/** Compares placements of the chart on a grid with the published colours. */
final class ChartPlacements {

  private static final List<Lab> PUBLISHED = ReferenceChart.Edition.AFTER_2014.patches();

  /**
   * Mean ΔE00 after a plain linear fit up to which the colours are taken for the chart's. A wrong
   * placement or another object gives 15 and more; a camera with a strong tone curve gives 5 to 9.
   */
  private static final double LARGEST_MATCH = 11;

  /** A part has fewer colours to tell it by, so they must fit better. */
  private static final double LARGEST_MATCH_OF_PART = 7.5;

  private static final int LEAST_PATCHES = 8;
  private static final int LEFT_OUT = 3;
  private static final int SAMPLES = 7;
  private static final double SAMPLE_REACH = 0.25;
  private static final LinearRgb[] LIGHT =
      PUBLISHED.stream().map(Lab::toLinearRgb).toArray(LinearRgb[]::new);

  private final Picture picture;
  private final Homography view;
  private final Map<ChartLattice.Cell, Patch> cache = new HashMap<>();

  ChartPlacements(Picture picture, Homography view) {
    this.picture = picture;
    this.view = view;
  }

  /** Light in the middle of a cell. */
  private record Patch(double red, double green, double blue, boolean inFrame) {
    static final Patch OUTSIDE = new Patch(0, 0, 0, false);
  }

  /** A turn of the chart on the grid: grid = turn × chart + shift. */
  private record Turn(int a, int b, int c, int d, int columns, int rows, int shiftX, int shiftY) {}

  private static final List<Turn> TURNS =
      List.of(
          new Turn(1, 0, 0, 1, 6, 4, 0, 0),
          new Turn(0, -1, 1, 0, 4, 6, 4, 0),
          new Turn(-1, 0, 0, -1, 6, 4, 6, 4),
          new Turn(0, 1, -1, 0, 4, 6, 0, 6));

  /**
   * The placement that fits best of all that cover the grid found.
   *
   * @param c0 first column of the grid, inclusive
   * @param c1 last column, exclusive
   * @param onGrid how many regions were found on it
   */
  ChartSighting best(int c0, int r0, int c1, int r1, int onGrid) {
    ChartSighting best = ChartSighting.NOTHING;
    for (Turn turn : TURNS) {
      int spareColumns = Math.max(0, (c1 - c0) - turn.columns);
      int spareRows = Math.max(0, (r1 - r0) - turn.rows);
      int left = Math.min(c0, c1 - turn.columns);
      int top = Math.min(r0, r1 - turn.rows);
      int right = Math.max(c0, c1 - turn.columns);
      int bottom = Math.max(r0, r1 - turn.rows);
      if (spareColumns > 2 || spareRows > 2) {
        continue;
      }
      for (int c = left; c <= right; c++) {
        for (int r = top; r <= bottom; r++) {
          ChartSighting here = judge(turn, c, r);
          if (here.view() != null && ranked(here) < ranked(best)) {
            best = here;
          }
        }
      }
    }
    return best;
  }

  private static double ranked(ChartSighting sighting) {
    if (sighting.view() == null) {
      return Double.POSITIVE_INFINITY;
    }
    int absent = ReferenceChart.PATCHES - sighting.patchesInFrame();
    return sighting.match() * (1 + absent / 12.0);
  }

  /** The placement that the view itself says, without turning. */
  ChartSighting fixed() {
    return judge(TURNS.get(0), 0, 0);
  }

  private ChartSighting judge(Turn t, int column, int row) {
    Homography turned = view.after(t.a, t.b, column + t.shiftX, t.c, t.d, row + t.shiftY);
    if (!turned.isInFrontOf(ReferenceChart.COLUMNS, ReferenceChart.ROWS)) {
      return ChartSighting.NOTHING;
    }
    List<Patch> seen = new ArrayList<>();
    List<Integer> which = new ArrayList<>();
    for (int patch = 0; patch < ReferenceChart.PATCHES; patch++) {
      double x = patch % ReferenceChart.COLUMNS + 0.5;
      double y = patch / ReferenceChart.COLUMNS + 0.5;
      int gx = (int) Math.floor(t.a * x + t.b * y + column + t.shiftX);
      int gy = (int) Math.floor(t.c * x + t.d * y + row + t.shiftY);
      Patch p = cache.computeIfAbsent(new ChartLattice.Cell(gx, gy), this::sample);
      if (p.inFrame) {
        seen.add(p);
        which.add(patch);
      }
    }
    if (seen.size() < LEAST_PATCHES) {
      return ChartSighting.NOTHING;
    }
    double match = match(seen, which);
    boolean whole = seen.size() == ReferenceChart.PATCHES;
    if (match > (whole ? LARGEST_MATCH : LARGEST_MATCH_OF_PART)) {
      return ChartSighting.NOTHING;
    }
    return new ChartSighting(
        whole ? ChartSighting.Status.WHOLE : ChartSighting.Status.PART, turned, seen.size(), match);
  }

  private Patch sample(ChartLattice.Cell cell) {
    double red = 0;
    double green = 0;
    double blue = 0;
    for (int i = 0; i < SAMPLES; i++) {
      for (int j = 0; j < SAMPLES; j++) {
        double dx = SAMPLE_REACH * (2.0 * i / (SAMPLES - 1) - 1);
        double dy = SAMPLE_REACH * (2.0 * j / (SAMPLES - 1) - 1);
        PixelPoint p = view.apply(cell.column() + 0.5 + dx, cell.row() + 0.5 + dy);
        int x = (int) Math.floor(p.x());
        int y = (int) Math.floor(p.y());
        if (x < 0 || y < 0 || x >= picture.width() || y >= picture.height()) {
          return Patch.OUTSIDE;
        }
        int pixel = picture.at(x, y);
        red += Srgb.linearOf(pixel >> 16 & 0xff);
        green += Srgb.linearOf(pixel >> 8 & 0xff);
        blue += Srgb.linearOf(pixel & 0xff);
      }
    }
    double n = SAMPLES * SAMPLES;
    return new Patch(red / n, green / n, blue / n, true);
  }

  /**
   * Mean ΔE00 after a linear fit. The fit is made twice, the second time without the quarter that
   * fits worst: a highlight over a few patches must not pull all the others along.
   */
  private static double match(List<Patch> seen, List<Integer> which) {
    double[] all = new double[seen.size()];
    Arrays.fill(all, 1);
    double[] first = differences(seen, which, all);
    double limit = sorted(first)[first.length - 1 - first.length / 4];
    for (int i = 0; i < all.length; i++) {
      all[i] = first[i] <= limit ? 1 : 1e-3;
    }
    double[] second = differences(seen, which, all);
    return Math.min(trimmedMean(first), trimmedMean(second));
  }

  private static double[] differences(List<Patch> seen, List<Integer> which, double[] trust) {
    int n = seen.size();
    double[][] design = new double[n][];
    double[] weight = new double[n];
    for (int i = 0; i < n; i++) {
      LinearRgb wanted = LIGHT[which.get(i)];
      double y = 0.2 * wanted.red() + 0.7 * wanted.green() + 0.1 * wanted.blue();
      weight[i] = trust[i] / (0.03 + y); // an equal share of light is about an equal step to see
      Patch p = seen.get(i);
      design[i] = new double[] {weight[i] * p.red, weight[i] * p.green, weight[i] * p.blue};
    }
    double[][] m = new double[3][];
    for (int channel = 0; channel < 3; channel++) {
      double[] right = new double[n];
      for (int i = 0; i < n; i++) {
        right[i] = weight[i] * channel(LIGHT[which.get(i)], channel);
      }
      double[] row = LeastSquares.solve(design, right, 1e-4);
      m[channel] = row != null ? row : new double[3];
    }
    double[] differences = new double[n];
    for (int i = 0; i < n; i++) {
      Patch p = seen.get(i);
      LinearRgb corrected = new LinearRgb(dot(m[0], p), dot(m[1], p), dot(m[2], p));
      differences[i] = Ciede2000.between(corrected.toLab(White.D50), PUBLISHED.get(which.get(i)));
    }
    return differences;
  }

  private static double trimmedMean(double[] differences) {
    int keep = Math.max(1, differences.length - LEFT_OUT * differences.length / 24);
    return Arrays.stream(sorted(differences), 0, keep).average().orElseThrow();
  }

  private static double[] sorted(double[] values) {
    double[] copy = values.clone();
    Arrays.sort(copy);
    return copy;
  }

  private static double dot(double[] row, Patch p) {
    return row[0] * p.red + row[1] * p.green + row[2] * p.blue;
  }

  private static double channel(LinearRgb light, int channel) {
    return switch (channel) {
      case 0 -> light.red();
      case 1 -> light.green();
      default -> light.blue();
    };
  }
}
