package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import ovenproof.core.photo.ChartLattice.Cell;
import ovenproof.core.photo.FlatRegions.Region;

/**
 * Finds the 24-patch chart anywhere in a picture, turned by any angle and seen in moderate
 * perspective.
 *
 * <p>Even compact regions are taken as possible patches; those that sit on a grid give the
 * perspective; every placement of 6 × 4 patches on that grid is compared with the published
 * colours, allowing any linear change of light and camera. The colours decide place and
 * orientation, so a tray of toast or a tiled wall is no chart.
 */
public final class ChartFinder {

  private static final int[] LONG_SIDES = {400, 800, 1600};
  private static final int[] STEP_LIMITS = {9, 16, 28};
  private static final int LEAST_ON_GRID = 5;

  /** Mean ΔE00 of a chart that need not be looked for at another limit or in more pixels. */
  private static final double CLEAR_MATCH = 5;

  /** Pixels from patch to patch at which its place is fitted. */
  private static final int FITTING_PITCH = 28;

  private ChartFinder() {}

  /** Looks for the chart; two of them in one frame give the better one. */
  public static ChartSighting find(Picture picture) {
    ChartSighting best = ChartSighting.NOTHING;
    int before = 0;
    for (int longSide : LONG_SIDES) {
      int factor = Math.max(1, (int) Math.ceil(picture.longSide() / (double) longSide));
      if (factor == before || Math.min(picture.width(), picture.height()) < 24 * factor) {
        continue;
      }
      before = factor;
      ChartSighting found = search(picture.reduced(factor)).scaled(factor);
      best = better(best, found);
      if (best.isWhole() && (best.match() < CLEAR_MATCH || longSide > LONG_SIDES[0])) {
        break;
      }
    }
    return refined(picture, best);
  }

  /**
   * The chart between four corners of its grid of patches that a person clicked, in any order
   * around it.
   *
   * @param corners four points in picture coordinates
   * @return the sighting with the orientation that the colours tell; its match may be poor
   */
  public static ChartSighting at(Picture picture, List<PixelPoint> corners) {
    if (corners.size() != 4) {
      throw new IllegalArgumentException("four corners are needed, found " + corners.size());
    }
    ChartSighting best = ChartSighting.NOTHING;
    for (List<PixelPoint> ring : bothWays(corners)) {
      for (int[] size : new int[][] {{6, 4}, {4, 6}}) {
        List<PixelPoint> grid =
            List.of(
                new PixelPoint(0, 0),
                new PixelPoint(size[0], 0),
                new PixelPoint(size[0], size[1]),
                new PixelPoint(0, size[1]));
        Homography view = Homography.fit(grid, ring);
        if (view != null && view.isInFrontOf(size[0], size[1])) {
          best = better(best, new ChartPlacements(picture, view).best(0, 0, size[0], size[1], 24));
        }
      }
    }
    return best;
  }

  private static List<List<PixelPoint>> bothWays(List<PixelPoint> c) {
    List<PixelPoint> other = List.of(c.get(0), c.get(3), c.get(2), c.get(1));
    return List.of(new Outline(c).isClockwise() ? c : other);
  }

  private static ChartSighting better(ChartSighting a, ChartSighting b) {
    if (a.status() == b.status()) {
      return b.view() != null && (a.view() == null || b.match() < a.match()) ? b : a;
    }
    return a.status().ordinal() < b.status().ordinal() ? a : b;
  }

  private static ChartSighting search(Picture work) {
    int[] steps = FlatRegions.steps(work);
    ChartSighting best = ChartSighting.NOTHING;
    for (int limit : STEP_LIMITS) {
      List<Region> regions = FlatRegions.find(work, steps, limit);
      for (ChartLattice lattice : ChartLattice.find(regions, LEAST_ON_GRID)) {
        best = better(best, place(work, lattice));
      }
      if (best.isWhole() && best.match() < CLEAR_MATCH) {
        break;
      }
    }
    return best;
  }

  private static ChartSighting place(Picture work, ChartLattice lattice) {
    Homography view = lattice.perspective();
    if (view == null) {
      return ChartSighting.NOTHING;
    }
    int c0 = Integer.MAX_VALUE;
    int r0 = Integer.MAX_VALUE;
    int c1 = Integer.MIN_VALUE;
    int r1 = Integer.MIN_VALUE;
    for (Cell cell : lattice.cells().keySet()) {
      c0 = Math.min(c0, cell.column());
      r0 = Math.min(r0, cell.row());
      c1 = Math.max(c1, cell.column() + 1);
      r1 = Math.max(r1, cell.row() + 1);
    }
    return new ChartPlacements(work, view).best(c0, r0, c1, r1, lattice.size());
  }

  /**
   * Fits the view again to every region found near a patch, at any limit, in as many pixels as tell
   * its place: they need not be those of the search.
   */
  private static ChartSighting refined(Picture picture, ChartSighting first) {
    if (first.view() == null) {
      return first;
    }
    int factor = Math.max(1, (int) Math.round(first.pitchPixels() / FITTING_PITCH));
    PixelBox box = around(picture, first);
    if (Math.min(box.width(), box.height()) < 8 * factor) {
      return first;
    }
    Picture work = picture.reduced(box, factor);
    ChartSighting now = first.shifted(-box.left(), -box.top()).scaled(1.0 / factor);
    now = refined(work, now, everyRegion(work));
    return now.scaled(factor).shifted(box.left(), box.top());
  }

  private static List<Region> everyRegion(Picture work) {
    int[] steps = FlatRegions.steps(work);
    List<Region> regions = new ArrayList<>();
    for (int limit : STEP_LIMITS) {
      regions.addAll(FlatRegions.find(work, steps, limit));
    }
    return regions;
  }

  private static PixelBox around(Picture picture, ChartSighting sighting) {
    double left = picture.width();
    double top = picture.height();
    double right = 0;
    double bottom = 0;
    for (PixelPoint p : sighting.outerCorners()) {
      left = Math.min(left, p.x());
      top = Math.min(top, p.y());
      right = Math.max(right, p.x());
      bottom = Math.max(bottom, p.y());
    }
    int x = (int) Math.max(0, Math.floor(left));
    int y = (int) Math.max(0, Math.floor(top));
    return new PixelBox(
        x,
        y,
        Math.max(1, (int) Math.min(picture.width(), Math.ceil(right)) - x),
        Math.max(1, (int) Math.min(picture.height(), Math.ceil(bottom)) - y));
  }

  private static ChartSighting refined(Picture work, ChartSighting first, List<Region> regions) {
    ChartSighting now = first;
    for (int round = 0; round < 2; round++) {
      Homography view = refit(now, regions);
      if (view == null || !view.isInFrontOf(ReferenceChart.COLUMNS, ReferenceChart.ROWS)) {
        break;
      }
      ChartSighting next = new ChartPlacements(work, view).fixed();
      if (next.view() == null || next.match() > now.match() + 1) {
        break;
      }
      now = next;
    }
    return now;
  }

  private static @Nullable Homography refit(ChartSighting sighting, List<Region> regions) {
    double pitch = sighting.pitchPixels();
    Map<Integer, Region> nearest = new HashMap<>();
    for (int patch = 0; patch < ReferenceChart.PATCHES; patch++) {
      PixelPoint centre = sighting.centre(patch);
      double closest = 0.25 * pitch;
      for (Region r : regions) {
        double d = Math.hypot(r.x() - centre.x(), r.y() - centre.y());
        boolean fits = r.side() > 0.5 * pitch && r.side() < 1.1 * pitch;
        if (fits && d < closest) {
          closest = d;
          nearest.put(patch, r);
        }
      }
    }
    List<PixelPoint> from = new ArrayList<>();
    List<PixelPoint> to = new ArrayList<>();
    nearest.forEach(
        (patch, r) -> {
          from.add(
              new PixelPoint(
                  patch % ReferenceChart.COLUMNS + 0.5, patch / ReferenceChart.COLUMNS + 0.5));
          to.add(new PixelPoint(r.x(), r.y()));
        });
    return from.size() < LEAST_ON_GRID ? null : PlaneFit.fit(from, to);
  }
}
