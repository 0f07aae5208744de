package ovenproof.core.photo;

/**
 * How far the colours of a photograph may be trusted: standard uncertainties (k = 1) that every
 * piece of the photograph shares, and those that belong to a place in it.
 *
 * @param source name of what is shared, such as {@code camera:session-1}; photographs corrected
 *     with one chart under one light share it
 * @param lightness of L*, the same for every piece of the light and camera
 * @param a of a*
 * @param b of b*
 * @param contrastShare relative uncertainty of a difference within the photograph
 * @param lightGradient L* by which the light may still differ between opposite sides of the frame,
 *     as a standard uncertainty
 * @param blockNoise standard deviation of block means of L* on an even surface: camera noise at the
 *     size of a block
 */
public record ColourTrust(
    String source,
    double lightness,
    double a,
    double b,
    double contrastShare,
    double lightGradient,
    double blockNoise) {

  public ColourTrust {
    for (double u : new double[] {lightness, a, b, contrastShare, lightGradient, blockNoise}) {
      if (!(u >= 0) || !Double.isFinite(u)) {
        throw new IllegalArgumentException("uncertainties must be finite and ≥ 0, found " + u);
      }
    }
  }

  /**
   * For a picture without chart or card: 6 in L*, 5 in a* and b*, 15 % of contrast, 3 of light over
   * the frame. Judgement, from what cameras do on their own with exposure, white balance and tone
   * curve; only differences within one photograph are worth much.
   */
  public static ColourTrust uncalibrated(String source) {
    return new ColourTrust(source, 6, 5, 5, 0.15, 3, 0.5);
  }

  public ColourTrust withBlockNoise(double noise) {
    return new ColourTrust(source, lightness, a, b, contrastShare, lightGradient, noise);
  }

  public ColourTrust withLightGradient(double gradient) {
    return new ColourTrust(source, lightness, a, b, contrastShare, gradient, blockNoise);
  }
}
