package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * What speaks against the outlines that were found. A finder always finds something that looks most
 * like food; whether it is food is another matter, and a person must hear of it.
 */
final class PieceDoubts {

  /** How every warning of doubt begins. */
  static final String START = "the outlines are doubtful: ";

  private static final double LEAST_SUPPORT = 0.75;
  private static final double LEAST_FOOD_COLOUR = 0.35;

  /** a* below which food is green, b* below which it is blue or violet; judgement. */
  private static final double GREEN = -8;

  private static final double BLUE = -8;
  private static final double REDDEST = 48;

  /**
   * Browning that is deep in chroma is reddish; of a yellower hue only fruit is so vivid. Chroma is
   * taken over L* + 16, which light does not change. Judgement, from baked goods of 0.3 to 0.55 and
   * half an orange of 0.8.
   */
  private static final double VIVID = 0.7;

  private static final double YELLOW_DEGREES = 68;

  /** Spread of a* and b* over pieces; dough beside burnt crust makes about 9. */
  private static final double UNLIKE_COLOURS = 15;

  /**
   * Share of an outline that its four corners hold: a rectangle 1, and 0.93 once its corners are
   * rounded as outlines are; a slice 0.8, a disc 0.64.
   */
  private static final double STRAIGHT = 0.9;

  private static final double LARGE_SHARE = 0.25;

  /** Share of a piece, and of its edge, that is grey when it is a plate with food on it. */
  private static final double PLATE_SHARE = 0.25;

  private static final double PLATE_EDGE = 0.5;

  /** b* plus half of a* below which a pixel is grey. */
  private static final double WARM = 6;

  private static final double UNLIKE_SIZES = 0.6;
  private static final int MANY = 25;
  private static final double CUT_BY_FRAME = 0.12;
  private static final double SMALL_SHARE = 0.012;
  private static final double LEAST_SOLIDITY = 0.86;

  /** Distance from the mean of all food within which a pixel looks like it. */
  private static final double ALIKE = 7;

  /** Pixels around the pieces that may be their own edge. */
  private static final double NEAR = 6;

  private static final double MOST_ALIKE_OUTSIDE = 0.35;

  private final List<PieceCandidate> pieces;
  private final LabPlanes lab;
  private final @Nullable Integer expected;

  PieceDoubts(List<PieceCandidate> pieces, LabPlanes lab, @Nullable Integer expected) {
    this.pieces = pieces;
    this.lab = lab;
    this.expected = expected;
  }

  /** One phrase each; empty for no pieces, which is said elsewhere. */
  List<String> inWords() {
    List<String> out = new ArrayList<>();
    if (pieces.isEmpty()) {
      return out;
    }
    edges(out);
    colours(out);
    shapes(out);
    plates(out);
    frame(out);
    alike(out);
    return out;
  }

  /** The rest of a bun of which one side was outlined, or the sacks beside the ones outlined. */
  private void alike(List<String> out) {
    Mask food = Mask.empty(lab.width(), lab.height());
    for (PieceCandidate piece : pieces) {
      food = food.or(piece.mask());
    }
    boolean[] near = food.dilated(NEAR).set();
    double[] mean = lab.mean(food);
    int outside = 0;
    for (int i = 0; i < near.length; i++) {
      outside += !near[i] && lab.distance(i, mean[0], mean[1], mean[2]) < ALIKE ? 1 : 0;
    }
    if (outside > MOST_ALIKE_OUTSIDE * food.count()) {
      out.add("much more of the same colour lies outside them");
    }
  }

  private void edges(List<String> out) {
    double support = pieces.stream().mapToDouble(PieceCandidate::support).average().orElse(1);
    if (support < LEAST_SUPPORT) {
      out.add(
          String.format(
              Locale.ROOT, "only %.0f %% of their length follows a clear edge", 100 * support));
    }
  }

  private void colours(List<String> out) {
    long grey = pieces.stream().filter(p -> p.foodColour() < LEAST_FOOD_COLOUR).count();
    long odd = pieces.stream().filter(p -> isOdd(lab.mean(p.mask()))).count();
    if (2 * grey > pieces.size()) {
      out.add("what they hold is grey, without the warm hue of anything baked");
    } else if (2 * odd > pieces.size()) {
      out.add("what they hold is of a colour that nothing baked has");
    }
    unlikeColours(out);
  }

  private static boolean isOdd(double[] mean) {
    double chroma = Math.hypot(mean[1], mean[2]);
    boolean yellow = Math.toDegrees(Math.atan2(mean[2], mean[1])) > YELLOW_DEGREES;
    boolean vivid = yellow && chroma > VIVID * (mean[0] + 16);
    return mean[1] < GREEN || mean[2] < BLUE || mean[1] > REDDEST || vivid;
  }

  /** Patches of another chart, tiles, a bowl of fruit. */
  private void unlikeColours(List<String> out) {
    List<double[]> means = pieces.stream().map(p -> lab.mean(p.mask())).toList();
    double a = means.stream().mapToDouble(m -> m[1]).average().orElseThrow();
    double b = means.stream().mapToDouble(m -> m[2]).average().orElseThrow();
    double square =
        means.stream()
            .mapToDouble(m -> (m[1] - a) * (m[1] - a) + (m[2] - b) * (m[2] - b))
            .average()
            .orElseThrow();
    if (pieces.size() > 2 && Math.sqrt(square) > UNLIKE_COLOURS) {
      out.add("their colours are too unlike for pieces of one kind");
    }
  }

  /** What food lies on, taken for food. */
  private void plates(List<String> out) {
    if (pieces.stream().anyMatch(this::isSheet)) {
      out.add("it has the straight sides of a sheet, tray or board");
    }
    if (pieces.stream().anyMatch(this::isPlate)) {
      out.add("a large part, edge and all, is grey like a plate");
    }
  }

  private boolean isSheet(PieceCandidate piece) {
    return piece.area() > LARGE_SHARE * lab.size()
        && Corners.shareOf(OutlineTracer.trace(piece.mask())) > STRAIGHT;
  }

  private boolean isPlate(PieceCandidate piece) {
    Mask mask = piece.mask();
    Mask grey = Mask.empty(mask.width(), mask.height());
    for (int i = 0; i < mask.set().length; i++) {
      boolean warm = lab.b()[i] + 0.5 * lab.a()[i] > WARM;
      grey.set()[i] = mask.set()[i] && !warm;
    }
    // Not the very edge, whose colour is mixed with what lies outside.
    double unit = Math.max(1, lab.width() / 240.0);
    Mask edge = mask.eroded(2 * unit).and(mask.eroded(5 * unit).inverted());
    return grey.count() > PLATE_SHARE * mask.count()
        && grey.and(edge).count() > PLATE_EDGE * edge.count();
  }

  private void shapes(List<String> out) {
    double mean = pieces.stream().mapToInt(PieceCandidate::area).average().orElseThrow();
    double spread =
        Math.sqrt(
            pieces.stream().mapToDouble(p -> Math.pow(p.area() / mean - 1, 2)).average().orElse(0));
    if (pieces.size() > 2 && spread > UNLIKE_SIZES) {
      out.add("their sizes are too unlike for pieces of one kind");
    }
    if (expected == null && pieces.size() > MANY) {
      out.add("there are very many; say how many with --pieces if that is right");
    }
    double solidity = pieces.stream().mapToDouble(PieceCandidate::solidity).average().orElse(1);
    if (solidity < LEAST_SOLIDITY) {
      out.add("their shapes are ragged");
    }
  }

  private void frame(List<String> out) {
    long cut = pieces.stream().filter(p -> p.mask().edgeShare() > CUT_BY_FRAME).count();
    if (cut > 0) {
      out.add(
          cut == pieces.size() && cut == 1
              ? "the edge of the frame cuts it"
              : "the edge of the frame cuts " + cut + " of them");
    }
    double share = pieces.stream().mapToInt(PieceCandidate::area).sum() / (double) lab.size();
    if (share < SMALL_SHARE) {
      out.add("they cover hardly anything of the frame");
    }
  }
}
