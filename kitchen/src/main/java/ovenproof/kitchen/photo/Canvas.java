package ovenproof.kitchen.photo;

import ovenproof.kitchen.physics.Chance;

/** Linear light of a picture being painted, and the way between pixels and the table. */
final class Canvas {

  final PhotoScene scene;
  final int width;
  final int height;
  final float[] red;
  final float[] green;
  final float[] blue;
  final Chance chance;
  final double pixelsPerMillimetre;

  private final double cos;
  private final double sin;
  private final double perspectiveX;
  private final double perspectiveY;

  Canvas(PhotoScene scene) {
    this.scene = scene;
    this.width = scene.widthPixels();
    this.height = scene.heightPixels();
    this.red = new float[width * height];
    this.green = new float[width * height];
    this.blue = new float[width * height];
    this.chance = Chance.ofSeed(scene.seed());
    this.pixelsPerMillimetre = width / scene.widthMillimetre();
    this.cos = Math.cos(scene.camera().turnRadians());
    this.sin = Math.sin(scene.camera().turnRadians());
    this.perspectiveX = scene.camera().tiltRight() / (width / 2.0);
    this.perspectiveY = scene.camera().tiltDown() / (width / 2.0);
  }

  /** Denominator of the perspective at a pixel. */
  double depth(double x, double y) {
    return 1 - perspectiveX * (x - width / 2.0) + perspectiveY * (y - height / 2.0);
  }

  /** Table coordinate at a pixel, mm; {@code depth} of the same pixel. */
  double tableX(double x, double y, double depth) {
    double u = (x - width / 2.0) / depth;
    double v = (y - height / 2.0) / depth;
    return (cos * u + sin * v + width / 2.0) / pixelsPerMillimetre;
  }

  double tableY(double x, double y, double depth) {
    double u = (x - width / 2.0) / depth;
    double v = (y - height / 2.0) / depth;
    return (-sin * u + cos * v + height / 2.0) / pixelsPerMillimetre;
  }

  /** Pixel of a place on the table: x, y. */
  double[] pixel(double tableX, double tableY) {
    double a = tableX * pixelsPerMillimetre - width / 2.0;
    double b = tableY * pixelsPerMillimetre - height / 2.0;
    double u = cos * a - sin * b;
    double v = sin * a + cos * b;
    double depth = 1 / (1 + perspectiveX * u - perspectiveY * v);
    return new double[] {u * depth + width / 2.0, v * depth + height / 2.0};
  }

  /** Pixels around a circle on the table, clipped: left, top, right (exclusive), bottom. */
  int[] around(double x, double y, double radius) {
    double left = width;
    double top = height;
    double right = 0;
    double bottom = 0;
    for (int i = 0; i < 4; i++) {
      double[] p = pixel(x + (i % 2 == 0 ? -radius : radius), y + (i < 2 ? -radius : radius));
      left = Math.min(left, p[0]);
      right = Math.max(right, p[0]);
      top = Math.min(top, p[1]);
      bottom = Math.max(bottom, p[1]);
    }
    return new int[] {
      Math.max(0, (int) left - 2),
      Math.max(0, (int) top - 2),
      Math.min(width, (int) right + 3),
      Math.min(height, (int) bottom + 3)
    };
  }
}
