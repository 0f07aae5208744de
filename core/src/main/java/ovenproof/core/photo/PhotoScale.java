package ovenproof.core.photo;

/**
 * How many pixels make a millimetre on the plane of the food.
 *
 * @param pixelsPerMillimetre above 0
 * @param origin how it is known
 */
public record PhotoScale(double pixelsPerMillimetre, Origin origin) {

  /** A piece without a scale is taken to be this wide: the square root of its area. */
  static final double ASSUMED_PIECE_MILLIMETRES = 100;

  /** Where a scale comes from. */
  public enum Origin {
    /** The pitch of the chart's patches was declared. */
    CHART,
    /** Declared by a person or by a size known otherwise. */
    DECLARED,
    /**
     * Nothing in the frame: lengths are shares of the piece, 1 mm standing for a hundredth of the
     * square root of its area. Two photographs are not comparable.
     */
    SHARE_OF_PIECE
  }

  public PhotoScale {
    if (!(pixelsPerMillimetre > 0) || !Double.isFinite(pixelsPerMillimetre)) {
      throw new IllegalArgumentException(
          "pixelsPerMillimetre must be above 0, found " + pixelsPerMillimetre);
    }
  }

  static PhotoScale shareOf(Outline outline) {
    double side = Math.sqrt(Math.max(1, outline.area()));
    return new PhotoScale(side / ASSUMED_PIECE_MILLIMETRES, Origin.SHARE_OF_PIECE);
  }

  public boolean isPhysical() {
    return origin != Origin.SHARE_OF_PIECE;
  }
}
