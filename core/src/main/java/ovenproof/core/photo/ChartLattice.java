package ovenproof.core.photo;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.core.photo.FlatRegions.Region;

/**
 * Regions that sit on a grid, with their whole-number places on it. The first axis turns into the
 * second clockwise on the screen, so a chart seen from its front is never mirrored.
 */
final class ChartLattice {

  private static final double TOLERANCE = 0.28;
  private static final int NEIGHBOURS = 6;
  private static final int LONGEST = 6;

  /** A grid this large is not looked for again from the same seed. */
  private static final int ENOUGH = 14;

  /** Members of a grid this large start no other. */
  private static final int WORTH_KEEPING = 9;

  private final Map<Cell, Region> cells;

  private ChartLattice(Map<Cell, Region> cells) {
    this.cells = cells;
  }

  record Cell(int column, int row) {
    Cell plus(int dc, int dr) {
      return new Cell(column + dc, row + dr);
    }
  }

  Map<Cell, Region> cells() {
    return cells;
  }

  int size() {
    return cells.size();
  }

  /** Grids of at least {@code least} regions, largest first, no two sharing a region. */
  static List<ChartLattice> find(List<Region> regions, int least) {
    RegionIndex index = new RegionIndex(regions);
    List<ChartLattice> all = new ArrayList<>();
    Set<Region> taken = new HashSet<>();
    for (Region seed : regions) {
      if (!taken.contains(seed)) {
        ChartLattice best = bestFrom(seed, index);
        if (best != null && best.size() >= least) {
          all.add(best);
          if (best.size() >= WORTH_KEEPING) {
            taken.addAll(best.cells.values());
          }
        }
      }
    }
    all.sort(Comparator.comparingInt(ChartLattice::size).reversed());
    List<ChartLattice> out = new ArrayList<>();
    Set<Region> used = new HashSet<>();
    for (ChartLattice lattice : all) {
      long shared = lattice.cells.values().stream().filter(used::contains).count();
      if (2 * shared < lattice.size()) {
        out.add(lattice);
        used.addAll(lattice.cells.values());
      }
    }
    return out;
  }

  private static @Nullable ChartLattice bestFrom(Region seed, RegionIndex regions) {
    List<Region> near = neighbours(seed, regions);
    ChartLattice best = null;
    for (Region first : near) {
      for (Region second : near) {
        double ux = first.x() - seed.x();
        double uy = first.y() - seed.y();
        double vx = second.x() - seed.x();
        double vy = second.y() - seed.y();
        if (isBasis(ux, uy, vx, vy)) {
          ChartLattice grown = grow(seed, ux, uy, vx, vy, regions);
          if (best == null || grown.size() > best.size()) {
            best = grown;
          }
          if (best.size() >= ENOUGH) {
            return best;
          }
        }
      }
    }
    return best;
  }

  private static List<Region> neighbours(Region seed, RegionIndex regions) {
    return regions.near(seed.x(), seed.y(), 2.2 * seed.side() + 4).stream()
        .filter(r -> r != seed)
        .filter(r -> ratio(r.side(), seed.side()) < 1.6)
        .filter(r -> r.distanceTo(seed) < 2.2 * seed.side() + 4)
        .filter(r -> r.distanceTo(seed) > 0.8 * seed.side())
        .sorted(Comparator.comparingDouble(r -> r.distanceTo(seed)))
        .limit(NEIGHBOURS)
        .toList();
  }

  private static double ratio(double a, double b) {
    return a > b ? a / b : b / a;
  }

  /** Of like length, turned by 50° to 130° clockwise on the screen. */
  private static boolean isBasis(double ux, double uy, double vx, double vy) {
    double u = Math.hypot(ux, uy);
    double v = Math.hypot(vx, vy);
    double cross = (ux * vy - uy * vx) / (u * v);
    return ratio(u, v) < 1.5 && cross > 0.76;
  }

  private static ChartLattice grow(
      Region seed, double ux, double uy, double vx, double vy, RegionIndex regions) {
    Map<Cell, Region> cells = new HashMap<>();
    Set<Region> used = new HashSet<>();
    ArrayDeque<Cell> queue = new ArrayDeque<>();
    Cell origin = new Cell(0, 0);
    cells.put(origin, seed);
    used.add(seed);
    queue.add(origin);
    while (!queue.isEmpty()) {
      Cell at = queue.remove();
      extend(cells, used, queue, regions, at, 1, 0, ux, uy);
      extend(cells, used, queue, regions, at, -1, 0, -ux, -uy);
      extend(cells, used, queue, regions, at, 0, 1, vx, vy);
      extend(cells, used, queue, regions, at, 0, -1, -vx, -vy);
    }
    return new ChartLattice(cells);
  }

  private static void extend(
      Map<Cell, Region> cells,
      Set<Region> used,
      ArrayDeque<Cell> queue,
      RegionIndex regions,
      Cell at,
      int dc,
      int dr,
      double stepX,
      double stepY) {
    Cell next = at.plus(dc, dr);
    if (cells.containsKey(next) || !fits(cells, next)) {
      return;
    }
    Region here = cells.get(at);
    Region before = cells.get(at.plus(-dc, -dr));
    if (here == null) {
      return;
    }
    double dx = before == null ? stepX : (here.x() - before.x() + stepX) / 2;
    double dy = before == null ? stepY : (here.y() - before.y() + stepY) / 2;
    Region found = nearest(regions, used, here, here.x() + dx, here.y() + dy, Math.hypot(dx, dy));
    if (found != null) {
      cells.put(next, found);
      used.add(found);
      queue.add(next);
    }
  }

  private static boolean fits(Map<Cell, Region> cells, Cell next) {
    int columns = 0;
    int rows = 0;
    for (Cell cell : cells.keySet()) {
      columns = Math.max(columns, Math.abs(cell.column() - next.column()) + 1);
      rows = Math.max(rows, Math.abs(cell.row() - next.row()) + 1);
    }
    return columns <= LONGEST && rows <= LONGEST;
  }

  private static @Nullable Region nearest(
      RegionIndex regions, Set<Region> used, Region here, double x, double y, double step) {
    Region best = null;
    double closest = TOLERANCE * step;
    for (Region r : regions.near(x, y, closest)) {
      double d = Math.hypot(r.x() - x, r.y() - y);
      if (d < closest && !used.contains(r) && ratio(r.side(), here.side()) < 1.7) {
        closest = d;
        best = r;
      }
    }
    return best;
  }

  /** Grid coordinates (cell centres) to picture coordinates; null when not determined. */
  @Nullable Homography perspective() {
    List<PixelPoint> from = new ArrayList<>();
    List<PixelPoint> to = new ArrayList<>();
    cells.forEach(
        (cell, region) -> {
          from.add(new PixelPoint(cell.column() + 0.5, cell.row() + 0.5));
          to.add(new PixelPoint(region.x(), region.y()));
        });
    return PlaneFit.fit(from, to);
  }
}
