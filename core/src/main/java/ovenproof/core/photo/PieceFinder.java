package ovenproof.core.photo;

import java.util.List;
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

  /** Below this a coarser look first saves nothing. */
  private static final int LEAST_LOOKED_AT_TWICE = 320;

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
    int wanted = Math.max(1, (int) Math.ceil(picture.longSide() / (double) LONG_SIDE));
    int factor = Math.min(wanted, Math.min(picture.width(), picture.height()));
    Picture work = picture.reduced(factor);
    if (work.width() < 16 || work.height() < 16) {
      return new Found(List.of(), List.of(), work, factor, List.of());
    }
    PieceScene scene = PieceScene.of(work, colours, chart, factor);
    PieceScene coarse =
        work.longSide() < LEAST_LOOKED_AT_TWICE
            ? null
            : PieceScene.of(work.reduced(2), colours, chart, 2 * factor);
    PieceSearch.Outcome seen = new PieceSearch(scene, coarse, expected).run();
    List<Outline> outlines =
        ReadingOrder.sorted(seen.pieces()).stream()
            .map(c -> OutlineTracer.trace(c.mask()).times(factor))
            .toList();
    return new Found(
        outlines,
        scene.ground(seen.pieces()),
        work,
        factor,
        new PieceDoubts(seen.pieces(), scene.lab(), expected).inWords());
  }
}
