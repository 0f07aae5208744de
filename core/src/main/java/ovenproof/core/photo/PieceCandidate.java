package ovenproof.core.photo;

/**
 * A part of the picture that may be a piece of food.
 *
 * @param area in pixels of the reduced picture
 * @param contrast colour step over its edge
 * @param solidity area over convex hull
 * @param warmth b* above that of the ground around it
 * @param support share of its outline that follows a step of colour
 * @param foodColour 0 for a colour that nothing baked has, 1 for a clearly warm one
 * @param quality 0…1
 */
record PieceCandidate(
    Mask mask,
    int area,
    double contrast,
    double solidity,
    double warmth,
    double support,
    double foodColour,
    double quality) {

  private static final double RING = 3;
  private static final double CLEAR_CONTRAST = 18;

  static PieceCandidate of(Mask mask, LabPlanes lab, Mask excluded) {
    int area = mask.count();
    Mask core = mask.eroded(RING);
    Mask inner = mask.eroded(1).and(core.inverted());
    Mask near = mask.dilated(1.5);
    Mask outer = mask.dilated(1.5 + RING).and(near.inverted()).and(excluded.inverted());
    double[] in = lab.mean(inner);
    double[] out = lab.mean(outer);
    double[] whole = lab.mean(mask);
    double dl = 0.7 * (in[0] - out[0]);
    double contrast =
        Math.sqrt(
            dl * dl + (in[1] - out[1]) * (in[1] - out[1]) + (in[2] - out[2]) * (in[2] - out[2]));
    double solidity = mask.solidity();
    double warmth = whole[2] - out[2];
    double support = EdgeSupport.of(mask, lab);
    double quality =
        clamp(contrast / CLEAR_CONTRAST)
            * (0.35 + 0.65 * clamp(0.5 + warmth / 16))
            * (0.25 + 0.75 * clamp((support - 0.3) / 0.5))
            * compactFood(whole, solidity, mask.edgeShare());
    return new PieceCandidate(
        mask, area, contrast, solidity, warmth, support, foodColour(whole), quality);
  }

  /** What its quality can be at most, whatever lies around it; quick. */
  static double mostQuality(Mask mask, LabPlanes lab) {
    return compactFood(lab.mean(mask), mask.solidity(), mask.edgeShare());
  }

  private static double compactFood(double[] whole, double solidity, double edgeShare) {
    double cut = Math.min(1, 3 * edgeShare);
    return clamp((solidity - 0.7) / 0.22) * (0.2 + 0.8 * foodColour(whole)) * (1 - 0.8 * cut);
  }

  private static double foodColour(double[] whole) {
    return clamp((whole[2] + 0.5 * whole[1] - 2) / 10);
  }

  private static double clamp(double value) {
    return Math.max(0, Math.min(1, value));
  }

  /** The same with its mask in another frame. */
  PieceCandidate with(Mask placed) {
    return new PieceCandidate(
        placed, area, contrast, solidity, warmth, support, foodColour, quality);
  }

  PixelPoint centre() {
    double x = 0;
    double y = 0;
    for (int i = 0; i < mask.set().length; i++) {
      if (mask.set()[i]) {
        x += i % mask.width();
        y += i / mask.width();
      }
    }
    return new PixelPoint(x / area + 0.5, y / area + 0.5);
  }
}
