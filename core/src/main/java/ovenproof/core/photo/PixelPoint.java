package ovenproof.core.photo;

/**
 * A place in a picture, in pixels from its top left corner; the centre of the first pixel is (0.5,
 * 0.5).
 */
public record PixelPoint(double x, double y) {

  public double distanceTo(PixelPoint other) {
    return Math.hypot(x - other.x, y - other.y);
  }

  public PixelPoint times(double factor) {
    return new PixelPoint(x * factor, y * factor);
  }
}
