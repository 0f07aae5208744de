package ovenproof.core.photo;

import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.colour.Lab;

/**
 * Everything that one photograph says.
 *
 * @param chart what was seen of a chart
 * @param calibration how colours were read
 * @param pieces in reading order
 * @param scale null when nothing in the frame gave one
 * @param warnings what a person should know, in words
 */
public record PhotoAnalysis(
    ChartSighting chart,
    PhotoCalibration calibration,
    List<Piece> pieces,
    @Nullable PhotoScale scale,
    List<String> warnings) {

  public PhotoAnalysis {
    pieces = List.copyOf(pieces);
    warnings = List.copyOf(warnings);
  }

  /**
   * One piece.
   *
   * @param id its number in reading order, from 1, unless a person named it
   */
  public record Piece(String id, PieceShade shade) {}

  /** The piece whose mean lightness lies farthest from the target, or from the mean of all. */
  public @Nullable Piece worst(@Nullable Lab target) {
    double wanted =
        target != null
            ? target.lightness()
            : pieces.stream()
                .map(p -> p.shade().mean())
                .filter(java.util.Objects::nonNull)
                .mapToDouble(Lab::lightness)
                .average()
                .orElse(0);
    Piece worst = null;
    double most = -1;
    for (Piece piece : pieces) {
      Lab mean = piece.shade().mean();
      if (mean != null && Math.abs(mean.lightness() - wanted) > most) {
        most = Math.abs(mean.lightness() - wanted);
        worst = piece;
      }
    }
    return worst;
  }
}
