package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Outlines the food on a plain ground, rack, tray or board.
 *
 * <p>No single rule finds pale dough on a white plate and dark toast on a black tray. So several
 * are tried – far from the colours of the ground, warm, dark, bright – over the whole frame and
 * inside anything that looks like a plate or tray, and the set of parts that looks most like food
 * is taken: clear edges, compact shapes, warmer than what lies around them, alike in size.
 */
public final class PieceFinder {

  private static final int LONG_SIDE = 480;
  private static final double LEAST_AREA_SHARE = 0.0015;
  private static final double LARGEST_AREA_SHARE = 0.6;
  private static final double CONTAINER_SHARE = 0.2;
  private static final double LEAST_QUALITY = 0.12;
  private static final double LEAST_CONTRAST = 5;
  private static final double LEAST_OF_MEDIAN = 0.2;
  private static final double NARROW_NECK = 0.72;
  private static final int MOST_PIECES = 200;

  private final @Nullable Integer expected;

  private PieceFinder(@Nullable Integer expected) {
    this.expected = expected;
  }

  /** However many there are. */
  public static PieceFinder anyNumber() {
    return new PieceFinder(null);
  }

  /**
   * For a known number of pieces: touching ones are cut until the number fits. If it never fits,
   * what was found is returned as it is, for a person to resolve.
   *
   * @param count at least 1
   */
  public static PieceFinder expecting(int count) {
    if (count < 1) {
      throw new IllegalArgumentException("count must be at least 1, found " + count);
    }
    return new PieceFinder(count);
  }

  /**
   * What was found.
   *
   * @param outlines in reading order, row by row from the upper left
   * @param ground middle of pixels that are ground, as shares of width and height; for the light
   * @param work the reduced picture that was searched
   * @param factor how much it was reduced
   */
  public record Found(List<Outline> outlines, List<PixelPoint> ground, Picture work, int factor) {
    public Found {
      outlines = List.copyOf(outlines);
      ground = List.copyOf(ground);
    }
  }

  /**
   * Looks for pieces.
   *
   * @param chart the chart is not food, nor is what it covers
   */
  public Found find(Picture picture, PixelColours colours, ChartSighting chart) {
    int factor = Math.max(1, (int) Math.ceil(picture.longSide() / (double) LONG_SIDE));
    factor = Math.min(factor, Math.min(picture.width(), picture.height()));
    Picture work = picture.reduced(factor);
    if (work.width() < 16 || work.height() < 16) {
      return new Found(List.of(), List.of(), work, factor);
    }
    return new Search(work, colours, chart, factor).run();
  }

  /** One picture being searched. */
  private final class Search {

    private final Picture work;
    private final LabPlanes lab;
    private final Mask excluded;
    private final Mask allowed;
    private final int factor;
    private final int leastArea;
    private final double unit;

    Search(Picture work, PixelColours colours, ChartSighting chart, int factor) {
      this.work = work;
      this.lab = LabPlanes.of(work, colours);
      this.factor = factor;
      this.leastArea = Math.max(12, (int) (LEAST_AREA_SHARE * lab.size()));
      this.unit = Math.max(1, lab.width() / 240.0);
      List<PixelPoint> corners = chart.outerCorners();
      this.excluded =
          corners.isEmpty()
              ? Mask.empty(lab.width(), lab.height())
              : Mask.inside(new Outline(corners).times(1.0 / factor), lab.width(), lab.height())
                  .dilated(2 * unit);
      this.allowed = excluded.inverted();
    }

    Found run() {
      List<List<PieceCandidate>> sets = new ArrayList<>();
      Mask frame = allowed;
      List<Mask> containers = new ArrayList<>();
      tryAll(frame, borderOf(frame), sets, containers);
      for (Mask container : containers) {
        Mask inside = container.eroded(3 * unit).and(frame);
        if (inside.count() > 20 * leastArea) {
          tryAll(inside, borderOf(inside), sets, new ArrayList<>());
        }
      }
      List<PieceCandidate> best = List.of();
      for (List<PieceCandidate> set : sets) {
        best = worth(set) > worth(best) ? set : best;
      }
      return report(best);
    }

    private void tryAll(
        Mask domain, int[] border, List<List<PieceCandidate>> sets, List<Mask> containers) {
      GroundModel ground = GroundModel.of(lab, border);
      List<IntToDoubleFunction> scores =
          List.of(
              i -> ground.distance(lab, i),
              i -> lab.b()[i] + 0.5 * lab.a()[i],
              i -> lab.b()[i] + 0.5 * lab.a()[i] - 0.35 * lab.lightness()[i],
              i -> -lab.lightness()[i],
              i -> lab.lightness()[i]);
      for (IntToDoubleFunction score : scores) {
        double[] values = new double[lab.size()];
        for (int i = 0; i < values.length; i++) {
          values[i] = domain.set()[i] ? score.applyAsDouble(i) : Double.NaN;
        }
        for (double threshold : Threshold.levels(values)) {
          sets.add(candidates(above(values, threshold), containers));
        }
      }
    }

    private Mask above(double[] values, double threshold) {
      Mask mask = Mask.empty(lab.width(), lab.height());
      for (int i = 0; i < values.length; i++) {
        mask.set()[i] = values[i] > threshold;
      }
      return mask;
    }

    private List<PieceCandidate> candidates(Mask raw, List<Mask> containers) {
      Mask clean = raw.squareOpened((int) Math.ceil(unit));
      List<PieceCandidate> out = new ArrayList<>();
      for (Mask part : clean.parts(leastArea)) {
        Mask filled = part.filled().and(allowed);
        double share = filled.count() / (double) lab.size();
        if (share > CONTAINER_SHARE && containers.size() < 4) {
          containers.add(filled);
        }
        if (share <= LARGEST_AREA_SHARE) {
          for (Mask piece : smooth(filled)) {
            add(piece, out);
          }
        }
      }
      return ofLikeSize(out);
    }

    private List<Mask> smooth(Mask filled) {
      double radius = Math.max(1.5, 0.06 * Math.sqrt(filled.count()));
      List<Mask> parts = new ArrayList<>();
      for (Mask part : filled.opened(radius).parts(leastArea)) {
        parts.addAll(new TouchingPieces(part).split(NARROW_NECK));
      }
      return parts;
    }

    private void add(Mask piece, List<PieceCandidate> out) {
      if (out.size() >= MOST_PIECES) {
        return;
      }
      PieceCandidate candidate = PieceCandidate.of(piece, lab, excluded);
      if (candidate.contrast() >= LEAST_CONTRAST && candidate.quality() >= LEAST_QUALITY) {
        out.add(candidate);
      }
    }

    /** Crumbs and scraps are far smaller than the pieces. */
    private List<PieceCandidate> ofLikeSize(List<PieceCandidate> all) {
      if (all.size() < 2) {
        return all;
      }
      int[] areas = all.stream().mapToInt(PieceCandidate::area).sorted().toArray();
      // The area at which half of all food is reached: many crumbs do not move it.
      long total = IntStream.of(areas).asLongStream().sum();
      long sum = 0;
      int typical = areas[areas.length - 1];
      for (int a : areas) {
        sum += a;
        if (2 * sum >= total) {
          typical = a;
          break;
        }
      }
      double least = LEAST_OF_MEDIAN * typical;
      return all.stream().filter(c -> c.area() >= least).toList();
    }

    private int[] borderOf(Mask domain) {
      Mask ring = domain.and(domain.eroded(4 * unit).inverted());
      if (domain.count() > 0.8 * lab.size()) {
        ring = Mask.empty(lab.width(), lab.height());
        int margin = (int) Math.ceil(4 * unit);
        for (int i = 0; i < lab.size(); i++) {
          int x = i % lab.width();
          int y = i / lab.width();
          boolean edge =
              x < margin || y < margin || x >= lab.width() - margin || y >= lab.height() - margin;
          ring.set()[i] = edge && domain.set()[i];
        }
      }
      boolean[] set = ring.set();
      return IntStream.range(0, set.length).filter(i -> set[i]).toArray();
    }

    private double worth(List<PieceCandidate> set) {
      if (set.isEmpty()) {
        return 0;
      }
      double quality = set.stream().mapToDouble(PieceCandidate::quality).average().orElseThrow();
      double meanArea = set.stream().mapToInt(PieceCandidate::area).average().orElseThrow();
      double spread = 0;
      for (PieceCandidate c : set) {
        spread += Math.pow(c.area() / meanArea - 1, 2);
      }
      spread = Math.sqrt(spread / set.size());
      double alike = 1 / (1 + 0.7 * spread);
      double many = 1 + 0.25 * Math.log(set.size());
      double size = Math.pow(meanArea * set.size() / lab.size(), 0.15);
      double fits = expected != null && expected == set.size() ? 1.6 : 1;
      return quality * alike * many * size * fits;
    }

    private Found report(List<PieceCandidate> best) {
      List<PieceCandidate> pieces =
          new PieceCount(lab, excluded).fit(withoutShadows(best), expected);
      List<Outline> outlines =
          ReadingOrder.sorted(pieces).stream()
              .map(c -> OutlineTracer.trace(c.mask()).times(factor))
              .toList();
      return new Found(outlines, ground(pieces), work, factor);
    }

    private List<PieceCandidate> withoutShadows(List<PieceCandidate> pieces) {
      Mask notGround = excluded;
      for (PieceCandidate c : pieces) {
        notGround = notGround.or(c.mask());
      }
      ShadowTrim trim = new ShadowTrim(lab, unit);
      List<PieceCandidate> out = new ArrayList<>();
      for (PieceCandidate c : pieces) {
        out.add(PieceCandidate.of(trim.trim(c.mask(), notGround), lab, excluded));
      }
      return out;
    }

    private List<PixelPoint> ground(List<PieceCandidate> pieces) {
      Mask food = excluded.dilated(2 * unit);
      for (PieceCandidate c : pieces) {
        food = food.or(c.mask().dilated(6 * unit));
      }
      List<PixelPoint> out = new ArrayList<>();
      int step = 4;
      for (int y = 2; y < lab.height(); y += step) {
        for (int x = 2; x < lab.width(); x += step) {
          if (!food.set()[y * lab.width() + x]) {
            out.add(new PixelPoint((x + 0.5) / lab.width(), (y + 0.5) / lab.height()));
          }
        }
      }
      return out;
    }
  }
}
