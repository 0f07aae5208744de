package ovenproof.core.colour;

/** A 3×3 matrix, row by row. */
public record Matrix3(
    double m00,
    double m01,
    double m02,
    double m10,
    double m11,
    double m12,
    double m20,
    double m21,
    double m22) {

  public static final Matrix3 IDENTITY = diagonal(1, 1, 1);

  public static Matrix3 diagonal(double first, double second, double third) {
    return new Matrix3(first, 0, 0, 0, second, 0, 0, 0, third);
  }

  /** This matrix applied after the other. */
  public Matrix3 times(Matrix3 other) {
    double[] c0 = apply(other.m00, other.m10, other.m20);
    double[] c1 = apply(other.m01, other.m11, other.m21);
    double[] c2 = apply(other.m02, other.m12, other.m22);
    return new Matrix3(c0[0], c1[0], c2[0], c0[1], c1[1], c2[1], c0[2], c1[2], c2[2]);
  }

  /** This matrix times a column vector. */
  public double[] apply(double x, double y, double z) {
    return new double[] {
      m00 * x + m01 * y + m02 * z, m10 * x + m11 * y + m12 * z, m20 * x + m21 * y + m22 * z
    };
  }

  /**
   * The inverse.
   *
   * @throws ArithmeticException if the determinant is zero or not finite
   */
  public Matrix3 inverse() {
    double a = m11 * m22 - m12 * m21;
    double b = m12 * m20 - m10 * m22;
    double c = m10 * m21 - m11 * m20;
    double determinant = m00 * a + m01 * b + m02 * c;
    if (determinant == 0 || !Double.isFinite(determinant)) {
      throw new ArithmeticException("the matrix has no inverse");
    }
    double s = 1 / determinant;
    return new Matrix3(
        a * s,
        (m02 * m21 - m01 * m22) * s,
        (m01 * m12 - m02 * m11) * s,
        b * s,
        (m00 * m22 - m02 * m20) * s,
        (m02 * m10 - m00 * m12) * s,
        c * s,
        (m01 * m20 - m00 * m21) * s,
        (m00 * m11 - m01 * m10) * s);
  }
}
