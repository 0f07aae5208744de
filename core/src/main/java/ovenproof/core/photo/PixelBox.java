package ovenproof.core.photo;

/** An upright rectangle of whole pixels: left and top inclusive, with its size. */
public record PixelBox(int left, int top, int width, int height) {

  public int right() {
    return left + width;
  }

  public int bottom() {
    return top + height;
  }

  public PixelPoint centre() {
    return new PixelPoint(left + width / 2.0, top + height / 2.0);
  }
}
