package ovenproof.campaign;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A picture of a batch.
 *
 * @param camera key of the camera session whose calibration error is shared, or null
 * @param boxes where the pieces lie, in pixels of the upright picture; empty: to be found
 */
public record Photo(
    String file,
    String run,
    @Nullable Integer batch,
    @Nullable String face,
    @Nullable Instant taken,
    @Nullable String camera,
    List<Box> boxes,
    @Nullable String note) {

  public Photo {
    boxes = List.copyOf(boxes);
  }

  /** A rectangle around one piece. */
  public record Box(String piece, int x, int y, int width, int height) {}
}
