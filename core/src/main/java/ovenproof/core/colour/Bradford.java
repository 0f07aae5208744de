package ovenproof.core.colour;

/**
 * Linear Bradford adaptation: how the tristimulus values of a surface change when the eye has
 * adapted from one white to another.
 */
public final class Bradford {

  /** Cone responses, published to four digits; ICC.1 uses them for its own adaptation. */
  private static final Matrix3 CONES =
      new Matrix3(0.8951, 0.2664, -0.1614, -0.7502, 1.7135, 0.0367, 0.0389, -0.0685, 1.0296);

  private static final Matrix3 D65_TO_D50 = derive(White.D65.xyz(), White.D50.xyz());
  private static final Matrix3 D50_TO_D65 = derive(White.D50.xyz(), White.D65.xyz());

  private Bradford() {}

  /** The matrix on XYZ that takes colours seen under one white to the other. */
  public static Matrix3 adaptation(White from, White to) {
    if (from == to) {
      return Matrix3.IDENTITY;
    }
    return from == White.D65 ? D65_TO_D50 : D50_TO_D65;
  }

  private static Matrix3 derive(Xyz from, Xyz to) {
    double[] source = CONES.apply(from.x(), from.y(), from.z());
    double[] target = CONES.apply(to.x(), to.y(), to.z());
    Matrix3 gains =
        Matrix3.diagonal(target[0] / source[0], target[1] / source[1], target[2] / source[2]);
    return CONES.inverse().times(gains).times(CONES);
  }
}
