package ovenproof.core.photo;

/**
 * How much of an outline follows something that can be seen: the share of its points where the
 * colour steps from just inside to just outside. The edge of food on its ground has a step nearly
 * all round; an outline that wanders over a crust, a wall or a crowd has one here and there.
 */
final class EdgeSupport {

  /** Half of the window that tells which way is outward, in pixels. */
  private static final int WINDOW = 3;

  /** How far inside and outside the colours are taken, in pixels. */
  private static final double REACH = 3;

  /** Colour step that counts as clear, with L* at 0.7 of its weight. */
  private static final double CLEAR_STEP = 8;

  private final Mask mask;
  private final LabPlanes lab;

  private EdgeSupport(Mask mask, LabPlanes lab) {
    this.mask = mask;
    this.lab = lab;
  }

  /**
   * Share of the outline that is supported, 0…1; each point counts by its step, up to a clear one.
   * Points where the mask meets the end of the planes are not counted; 0 when there are no others.
   */
  static double of(Mask mask, LabPlanes lab) {
    return new EdgeSupport(mask, lab).share();
  }

  private double share() {
    int w = mask.width();
    double sum = 0;
    int n = 0;
    for (int y = 1; y < mask.height() - 1; y++) {
      for (int x = 1; x < w - 1; x++) {
        int i = y * w + x;
        if (mask.set()[i] && isEdge(i, w)) {
          sum += Math.min(1, step(x, y) / CLEAR_STEP);
          n++;
        }
      }
    }
    return n == 0 ? 0 : sum / n;
  }

  private boolean isEdge(int i, int w) {
    boolean[] set = mask.set();
    return !(set[i - 1] && set[i + 1] && set[i - w] && set[i + w]);
  }

  private double step(int x, int y) {
    double outX = 0;
    double outY = 0;
    for (int dy = -WINDOW; dy <= WINDOW; dy++) {
      for (int dx = -WINDOW; dx <= WINDOW; dx++) {
        if (!isSet(x + dx, y + dy)) {
          outX += dx;
          outY += dy;
        }
      }
    }
    double length = Math.hypot(outX, outY);
    if (length == 0) {
      return 0;
    }
    double ux = REACH * outX / length;
    double uy = REACH * outY / length;
    int in = at(x - ux, y - uy);
    int out = at(x + ux, y + uy);
    double dl = 0.7 * (lab.lightness()[in] - lab.lightness()[out]);
    double da = lab.a()[in] - lab.a()[out];
    double db = lab.b()[in] - lab.b()[out];
    return Math.sqrt(dl * dl + da * da + db * db);
  }

  private boolean isSet(int x, int y) {
    return x >= 0
        && y >= 0
        && x < mask.width()
        && y < mask.height()
        && mask.set()[y * mask.width() + x];
  }

  private int at(double x, double y) {
    int column = (int) Math.max(0, Math.min(mask.width() - 1, Math.round(x)));
    int row = (int) Math.max(0, Math.min(mask.height() - 1, Math.round(y)));
    return row * mask.width() + column;
  }
}
