package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Turns a mask of pixels that may be food into a set of pieces, and says what a set is worth. */
final class PieceSets {

  static final double LARGEST_AREA_SHARE = 0.6;

  private static final double CONTAINER_SHARE = 0.2;
  private static final double LEAST_QUALITY = 0.12;
  private static final double LEAST_CONTRAST = 5;
  private static final double LEAST_OF_MEDIAN = 0.2;
  private static final double NARROW_NECK = 0.72;

  /**
   * A neck takes more than this from the convex hull: two discs joined at 0.72 of their radius have
   * 0.959 of it, a disc of 0.4 of the other's radius 0.95.
   */
  private static final double WITHOUT_NECK = 0.985;

  private static final int MOST_PIECES = 200;
  private static final double LEAST_GAP = 0.01;
  private static final double GAP_BIAS = 0.6;

  /** Pixels around a part that its contrast is taken over. */
  private static final int MARGIN = 8;

  private final PieceScene scene;
  private final @Nullable Integer expected;

  PieceSets(PieceScene scene, @Nullable Integer expected) {
    this.scene = scene;
    this.expected = expected;
  }

  /** A candidate in its own rectangle of the frame: most of a frame has nothing to do with it. */
  record Sighted(PieceCandidate candidate, PixelBox box) {
    int area() {
      return candidate.area();
    }

    PieceCandidate inFrame(PieceScene scene) {
      return candidate.with(candidate.mask().inFrame(box, scene.width(), scene.height()));
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

  /**
   * The pieces in a mask.
   *
   * @param containers receives what is as large as a plate or tray
   * @param largestShare of the frame that one piece may have
   */
  List<Sighted> candidates(
      Mask raw, GroundModel ground, List<Mask> containers, double largestShare) {
    Mask clean = raw.squareOpened((int) Math.ceil(scene.unit()));
    List<Sighted> out = new ArrayList<>();
    for (Mask.Part part : clean.partsInPlace(scene.leastArea(), MARGIN)) {
      Window window =
          new Window(part.box(), scene.lab().part(part.box()), scene.excluded().part(part.box()));
      Mask filled = part.mask().filled().and(window.excluded().inverted());
      double share = filled.count() / (double) scene.lab().size();
      boolean container = share > CONTAINER_SHARE;
      if (container) {
        containers.add(filled.inFrame(part.box(), scene.width(), scene.height()));
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
    for (Mask part : whole.opened(radius).parts(scene.leastArea())) {
      if (part.solidity() > WITHOUT_NECK) {
        parts.add(part.filled());
      } else {
        for (Mask piece : new TouchingPieces(part).split(NARROW_NECK)) {
          parts.add(piece.filled());
        }
      }
    }
    return parts;
  }

  private void add(Mask piece, Window window, List<Sighted> out) {
    if (out.size() >= MOST_PIECES || piece.count() < scene.leastArea()) {
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
  private static List<Sighted> ofLikeSize(List<Sighted> all) {
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

  /** How much a set looks like food; 0 for none. */
  double worth(List<Sighted> set) {
    if (set.isEmpty()) {
      return 0;
    }
    double quality = set.stream().mapToDouble(s -> s.candidate().quality()).average().orElseThrow();
    double meanArea = set.stream().mapToInt(Sighted::area).average().orElseThrow();
    double spread = 0;
    for (Sighted c : set) {
      spread += Math.pow(c.area() / meanArea - 1, 2);
    }
    spread = Math.sqrt(spread / set.size());
    double alike = 1 / (1 + 0.7 * spread);
    double many = 1 + 0.25 * Math.log(set.size());
    double size = Math.pow(meanArea * set.size() / scene.lab().size(), 0.15);
    double fits = expected != null && expected == set.size() ? 1.6 : 1;
    return quality * alike * many * size * fits;
  }
}
