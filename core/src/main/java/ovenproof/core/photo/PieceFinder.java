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

  /** On a plain ground nothing but food can fill the frame. */
  private static final double LARGEST_ON_PLAIN = 0.93;

  /** Distances from a plain ground at which food may begin: with and without a soft shadow. */
  private static final List<Double> PLAIN_LEVELS = List.of(8.0, 14.0);

  private static final double LEAST_PLAIN_CONTRAST = 15;
  private static final double LEAST_PLAIN_SUPPORT = 0.8;

  /** What covers less of the food than this, and lies along its edge, is a part of it. */
  private static final double PART_COVERS = 0.75;

  private static final double PART_ALONG_EDGE = 0.15;
  private static final double CONTAINER_SHARE = 0.2;
  private static final double LEAST_QUALITY = 0.12;
  private static final double LEAST_CONTRAST = 5;
  private static final double LEAST_OF_MEDIAN = 0.2;
  private static final double NARROW_NECK = 0.72;
  private static final int MOST_PIECES = 200;
  private static final int MOST_CONTAINERS = 4;
  private static final double SAME_CONTAINER = 0.9;
  private static final double LEAST_GAP = 0.01;
  private static final double GAP_BIAS = 0.6;

  /** Pixels around a part that its contrast is taken over. */
  private static final int MARGIN = 8;

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
   * @param doubts why the outlines may not be those of the food, in words; empty when nothing
   *     speaks against them
   */
  public record Found(
      List<Outline> outlines,
      List<PixelPoint> ground,
      Picture work,
      int factor,
      List<String> doubts) {
    public Found {
      outlines = List.copyOf(outlines);
      ground = List.copyOf(ground);
      doubts = List.copyOf(doubts);
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
      return new Found(List.of(), List.of(), work, factor, List.of());
    }
    return new Search(work, colours, chart, factor).run();
  }

  /** What one score found at each of its thresholds. */
  private record Tried(List<List<Sighted>> sets, List<Mask> containers) {}

  /** A candidate in its own rectangle of the frame: most of a frame has nothing to do with it. */
  private record Sighted(PieceCandidate candidate, PixelBox box) {
    int area() {
      return candidate.area();
    }

    PieceCandidate inFrame(int width, int height) {
      return candidate.with(candidate.mask().inFrame(box, width, height));
    }
  }

  /** A rectangle around one connected part. */
  private record Window(PixelBox box, LabPlanes lab, Mask excluded) {

    /**
     * The part with its holes filled, but for gaps between pieces that lie around them: those show
     * the ground, while a chip of chocolate or a highlight belongs to the food.
     */
    Mask withoutGaps(Mask part, Mask filled, GroundModel ground) {
      int least = (int) Math.max(6, LEAST_GAP * filled.count());
      Mask out = filled;
      double[] food = null;
      for (Mask hole : filled.and(part.inverted()).parts(least)) {
        food = food == null ? lab.mean(part) : food;
        double[] seen = lab.mean(hole);
        double own = LabPlanes.distance(seen, food);
        if (ground.distance(seen) < GAP_BIAS * own) {
          out = out.and(hole.inverted());
        }
      }
      return out;
    }
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
      List<List<Sighted>> sets = new ArrayList<>();
      List<Mask> containers = new ArrayList<>();
      tryAll(allowed, sets, containers);
      for (Mask container : unlike(containers)) {
        Mask inside = container.eroded(3 * unit).and(allowed);
        if (inside.count() > 20 * leastArea) {
          tryAll(inside, sets, new ArrayList<>());
        }
      }
      List<Sighted> best = List.of();
      double most = 0;
      for (List<Sighted> set : sets) {
        double worth = worth(set);
        best = worth > most ? set : best;
        most = Math.max(most, worth);
      }
      for (List<Sighted> whole : onPlainGround()) {
        best = isPartOf(best, whole) ? whole : best;
      }
      return report(best.stream().map(s -> s.inFrame(lab.width(), lab.height())).toList());
    }

    /** The first few plates and trays, each once: several scores see the same one. */
    private List<Mask> unlike(List<Mask> containers) {
      List<Mask> out = new ArrayList<>();
      for (Mask container : containers) {
        if (out.size() < MOST_CONTAINERS
            && out.stream().noneMatch(o -> o.overlap(container) > SAME_CONTAINER)) {
          out.add(container);
        }
      }
      return out;
    }

    private void tryAll(Mask domain, List<List<Sighted>> sets, List<Mask> containers) {
      GroundModel ground = GroundModel.of(lab, borderOf(domain));
      List<IntToDoubleFunction> scores =
          List.of(
              i -> ground.distance(lab, i),
              i -> lab.b()[i] + 0.5 * lab.a()[i],
              i -> lab.b()[i] + 0.5 * lab.a()[i] - 0.35 * lab.lightness()[i],
              i -> -lab.lightness()[i],
              i -> lab.lightness()[i]);
      // Each score on its own core; put together in order, so that the outcome does not depend on
      // how many there are.
      List<Tried> tried = scores.parallelStream().map(s -> trying(s, domain, ground)).toList();
      for (Tried t : tried) {
        sets.addAll(t.sets());
        containers.addAll(t.containers());
      }
    }

    /** On a cloth or sheet of one colour whatever is not that colour is food. */
    private List<List<Sighted>> onPlainGround() {
      int[] border = borderOf(allowed);
      GroundModel plain = GroundModel.of(lab, border).plain(lab, border);
      if (plain.groups().isEmpty()) {
        return List.of();
      }
      double[] values = new double[lab.size()];
      for (int i = 0; i < values.length; i++) {
        values[i] = allowed.set()[i] ? plain.distance(lab, i) : Double.NaN;
      }
      return PLAIN_LEVELS.parallelStream()
          .map(
              level -> candidates(above(values, level), plain, new ArrayList<>(), LARGEST_ON_PLAIN))
          .toList();
    }

    /**
     * Whether what was found is but a part of what stands out from a plain ground: the sunny side
     * of a bun, say. Rolls on a board are no part of it, since they keep away from its edge.
     */
    private boolean isPartOf(List<Sighted> found, List<Sighted> whole) {
      if (!whole.stream().allMatch(s -> isClear(s.candidate())) || whole.isEmpty()) {
        return false;
      }
      if (found.isEmpty()) {
        return true;
      }
      if (found.size() > whole.size() && (expected == null || found.size() == expected)) {
        return false; // pieces that touch stand out from their ground as one
      }
      Mask parts = union(found);
      Mask all = union(whole);
      Mask edge = parts.and(parts.eroded(1).inverted());
      double along = 1 - edge.and(all.eroded(5 * unit)).count() / Math.max(1.0, edge.count());
      boolean within = parts.and(all).count() > 0.9 * parts.count();
      return within && along > PART_ALONG_EDGE && parts.count() < PART_COVERS * all.count();
    }

    private static boolean isClear(PieceCandidate piece) {
      return piece.contrast() >= LEAST_PLAIN_CONTRAST && piece.support() >= LEAST_PLAIN_SUPPORT;
    }

    private Mask union(List<Sighted> set) {
      Mask out = Mask.empty(lab.width(), lab.height());
      for (Sighted s : set) {
        out = out.or(s.inFrame(lab.width(), lab.height()).mask());
      }
      return out;
    }

    private Tried trying(IntToDoubleFunction score, Mask domain, GroundModel ground) {
      Tried tried = new Tried(new ArrayList<>(), new ArrayList<>());
      double[] values = new double[lab.size()];
      for (int i = 0; i < values.length; i++) {
        values[i] = domain.set()[i] ? score.applyAsDouble(i) : Double.NaN;
      }
      for (double threshold : Threshold.levels(values)) {
        tried
            .sets()
            .add(
                candidates(
                    above(values, threshold), ground, tried.containers(), LARGEST_AREA_SHARE));
      }
      return tried;
    }

    private Mask above(double[] values, double threshold) {
      Mask mask = Mask.empty(lab.width(), lab.height());
      for (int i = 0; i < values.length; i++) {
        mask.set()[i] = values[i] > threshold;
      }
      return mask;
    }

    private List<Sighted> candidates(
        Mask raw, GroundModel ground, List<Mask> containers, double largestShare) {
      Mask clean = raw.squareOpened((int) Math.ceil(unit));
      List<Sighted> out = new ArrayList<>();
      for (Mask.Part part : clean.partsInPlace(leastArea, MARGIN)) {
        Window window = new Window(part.box(), lab.part(part.box()), excluded.part(part.box()));
        Mask filled = part.mask().filled().and(window.excluded().inverted());
        double share = filled.count() / (double) lab.size();
        boolean container = share > CONTAINER_SHARE;
        if (container) {
          containers.add(filled.inFrame(part.box(), lab.width(), lab.height()));
        }
        if (share <= largestShare && !(container && 3 * filled.edgeShare() > 1)) {
          for (Mask piece : smooth(window.withoutGaps(part.mask(), filled, ground))) {
            add(piece, window, out);
          }
        }
      }
      return ofLikeSize(out);
    }

    private List<Mask> smooth(Mask whole) {
      double radius = Math.max(1.5, 0.06 * Math.sqrt(whole.count()));
      List<Mask> parts = new ArrayList<>();
      for (Mask part : whole.opened(radius).parts(leastArea)) {
        for (Mask piece : new TouchingPieces(part).split(NARROW_NECK)) {
          parts.add(piece.filled());
        }
      }
      return parts;
    }

    private void add(Mask piece, Window window, List<Sighted> out) {
      if (out.size() >= MOST_PIECES || piece.count() < leastArea) {
        return;
      }
      if (PieceCandidate.mostQuality(piece, window.lab()) < LEAST_QUALITY) {
        return;
      }
      PieceCandidate candidate = PieceCandidate.of(piece, window.lab(), window.excluded());
      if (candidate.contrast() >= LEAST_CONTRAST && candidate.quality() >= LEAST_QUALITY) {
        out.add(new Sighted(candidate, window.box()));
      }
    }

    /** Crumbs and scraps are far smaller than the pieces. */
    private List<Sighted> ofLikeSize(List<Sighted> all) {
      if (all.size() < 2) {
        return all;
      }
      int[] areas = all.stream().mapToInt(Sighted::area).sorted().toArray();
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

    private double worth(List<Sighted> set) {
      if (set.isEmpty()) {
        return 0;
      }
      double quality =
          set.stream().mapToDouble(s -> s.candidate().quality()).average().orElseThrow();
      double meanArea = set.stream().mapToInt(Sighted::area).average().orElseThrow();
      double spread = 0;
      for (Sighted c : set) {
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
      return new Found(
          outlines, ground(pieces), work, factor, new PieceDoubts(pieces, lab, expected).inWords());
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
