package ovenproof.campaign;

import org.jspecify.annotations.Nullable;
import ovenproof.core.quantity.Quantity;

/**
 * One slice, cake, croquette or joint, or a whole batch weighed together.
 *
 * @param piece key within the batch, or {@code all} for the whole batch
 * @param instrument the scale that weighed it, before and after
 * @param position place in the appliance: {@code front-left}, {@code r1c2}
 */
public record Piece(
    String run,
    int batch,
    String piece,
    @Nullable String position,
    @Nullable String lot,
    @Nullable Quantity before,
    @Nullable Quantity after,
    @Nullable String instrument,
    @Nullable String note) {

  /** A piece of which nobody noted the scale. */
  public Piece(
      String run,
      int batch,
      String piece,
      @Nullable String position,
      @Nullable String lot,
      @Nullable Quantity before,
      @Nullable Quantity after,
      @Nullable String note) {
    this(run, batch, piece, position, lot, before, after, null, note);
  }
}
