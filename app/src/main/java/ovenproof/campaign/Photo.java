package ovenproof.campaign;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.photo.ShadeSettings.Front;
import ovenproof.core.quantity.Quantity;

/**
 * A picture of a batch, or of the batches of several runs: then each run has its own, with the same
 * file and the boxes or outlines of its own pieces.
 *
 * @param camera key of the camera session whose calibration error is shared, or null
 * @param boxes where the pieces lie, in pixels of the upright picture; empty: to be found
 * @param outlines edges of the pieces as a person mended them; where there are any they hold, and
 *     neither boxes nor a search do; null counts as none
 * @param frame what a person said of the frame; null counts as nothing
 */
public record Photo(
    String file,
    String run,
    @Nullable Integer batch,
    @Nullable String face,
    @Nullable Instant taken,
    @Nullable String camera,
    List<Box> boxes,
    List<Drawn> outlines,
    Frame frame,
    @Nullable String note) {

  /** The face of a photographed shade card: the shade wanted, in the day's light. */
  public static final String SHADE_CARD = "shade-card";

  /** The face of a piece before it was baked. */
  public static final String BEFORE = "before";

  // Jackson hands over null for entries that were stored before there were outlines.
  @SuppressWarnings({"ConstantValue", "NullAway"})
  public Photo {
    boxes = List.copyOf(boxes);
    outlines = outlines == null ? List.of() : List.copyOf(outlines);
    frame = frame == null ? Frame.UNSAID : frame;
  }

  /** A picture whose outlines nobody mended. */
  public Photo(
      String file,
      String run,
      @Nullable Integer batch,
      @Nullable String face,
      @Nullable Instant taken,
      @Nullable String camera,
      List<Box> boxes,
      @Nullable String note) {
    this(file, run, batch, face, taken, camera, boxes, List.of(), Frame.UNSAID, note);
  }

  /** The same picture with a person's outlines; none means that they are to be found again. */
  public Photo withOutlines(List<Drawn> mended, @Nullable String why) {
    return new Photo(file, run, batch, face, taken, camera, boxes, mended, frame, why);
  }

  /** The same picture with what a person said of its frame. */
  public Photo withFrame(Frame said, @Nullable String why) {
    return new Photo(file, run, batch, face, taken, camera, boxes, outlines, said, why);
  }

  /** Boxes around the pieces that a person outlined or boxed; empty when nobody did. */
  public List<Box> around() {
    return outlines.isEmpty() ? boxes : outlines.stream().map(Drawn::around).toList();
  }

  /** Whether a person said where the pieces lie. */
  public boolean isByHand() {
    return !boxes.isEmpty() || !outlines.isEmpty();
  }

  /**
   * What a person said of the frame.
   *
   * @param chartPitch from the middle of a patch of the chart to the next; null: as the method says
   * @param chartCorners four corners of the grid of patches, where the chart is not found by
   *     itself; else empty
   * @param front which side of the upright picture was the front of the appliance; null: the lower
   */
  public record Frame(
      @Nullable Quantity chartPitch, List<Corner> chartCorners, @Nullable Front front) {

    /** Nothing was said. */
    public static final Frame UNSAID = new Frame(null, List.of(), null);

    public Frame {
      chartCorners = List.copyOf(chartCorners);
      if (!chartCorners.isEmpty() && chartCorners.size() != 4) {
        throw new IllegalArgumentException(
            "a chart has four corners, found " + chartCorners.size());
      }
    }

    public Frame withChartCorners(List<Corner> corners) {
      return new Frame(chartPitch, corners, front);
    }

    public Frame withFront(@Nullable Front side) {
      return new Frame(chartPitch, chartCorners, side);
    }
  }

  /** A rectangle around one piece. */
  public record Box(String piece, int x, int y, int width, int height) {}

  /**
   * The edge of one piece.
   *
   * @param corners at least three; the last is joined to the first
   */
  public record Drawn(String piece, List<Corner> corners) {
    public Drawn {
      corners = List.copyOf(corners);
      if (corners.size() < 3) {
        throw new IllegalArgumentException(
            "an outline needs at least three corners, found " + corners.size());
      }
    }

    /** The box around it. */
    Box around() {
      int left = corners.stream().mapToInt(Corner::x).min().orElseThrow();
      int top = corners.stream().mapToInt(Corner::y).min().orElseThrow();
      int right = corners.stream().mapToInt(Corner::x).max().orElseThrow();
      int bottom = corners.stream().mapToInt(Corner::y).max().orElseThrow();
      return new Box(piece, left, top, Math.max(1, right - left), Math.max(1, bottom - top));
    }
  }

  /** A corner in pixels of the upright picture. */
  public record Corner(int x, int y) {}
}
