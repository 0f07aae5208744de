package ovenproof.campaign;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A picture of a batch.
 *
 * @param camera key of the camera session whose calibration error is shared, or null
 * @param boxes where the pieces lie, in pixels of the upright picture; empty: to be found
 * @param outlines edges of the pieces as a person mended them; where there are any they hold, and
 *     neither boxes nor a search do; null counts as none
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
    @Nullable String note) {

  // Jackson hands over null for entries that were stored before there were outlines.
  @SuppressWarnings({"ConstantValue", "NullAway"})
  public Photo {
    boxes = List.copyOf(boxes);
    outlines = outlines == null ? List.of() : List.copyOf(outlines);
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
    this(file, run, batch, face, taken, camera, boxes, List.of(), note);
  }

  /** The same picture with a person's outlines; none means that they are to be found again. */
  public Photo withOutlines(List<Drawn> mended, @Nullable String why) {
    return new Photo(file, run, batch, face, taken, camera, boxes, mended, why);
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
  }

  /** A corner in pixels of the upright picture. */
  public record Corner(int x, int y) {}
}
