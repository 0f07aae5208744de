package ovenproof.core.photo;

/** L*, a*, b* of a reduced picture, lightly smoothed, for finding things. */
record LabPlanes(int width, int height, float[] lightness, float[] a, float[] b) {

  static LabPlanes of(Picture picture, PixelColours colours) {
    int w = picture.width();
    int h = picture.height();
    float[] l = new float[w * h];
    float[] a = new float[w * h];
    float[] b = new float[w * h];
    java.util.stream.IntStream.range(0, h)
        .parallel()
        .forEach(
            y -> {
              float[] lab = new float[3 * w];
              colours.row(picture, y, 0, w, lab);
              for (int x = 0, o = 0, i = y * w; x < w; x++, i++, o += 3) {
                l[i] = lab[o];
                a[i] = lab[o + 1];
                b[i] = lab[o + 2];
              }
            });
    return new LabPlanes(w, h, smooth(l, w, h), smooth(a, w, h), smooth(b, w, h));
  }

  /** Mean over 3 × 3, twice. */
  private static float[] smooth(float[] in, int w, int h) {
    return box(box(in, w, h), w, h);
  }

  private static float[] box(float[] in, int w, int h) {
    float[] across = new float[in.length];
    for (int y = 0; y < h; y++) {
      for (int x = 0; x < w; x++) {
        int i = y * w + x;
        across[i] = (in[x > 0 ? i - 1 : i] + in[i] + in[x < w - 1 ? i + 1 : i]) / 3;
      }
    }
    float[] out = new float[in.length];
    for (int y = 0; y < h; y++) {
      for (int x = 0; x < w; x++) {
        int i = y * w + x;
        out[i] = (across[y > 0 ? i - w : i] + across[i] + across[y < h - 1 ? i + w : i]) / 3;
      }
    }
    return out;
  }

  /** A rectangle of it. */
  LabPlanes part(PixelBox box) {
    return new LabPlanes(
        box.width(), box.height(), part(lightness, box), part(a, box), part(b, box));
  }

  private float[] part(float[] plane, PixelBox box) {
    float[] out = new float[box.width() * box.height()];
    for (int y = 0; y < box.height(); y++) {
      int from = (box.top() + y) * width + box.left();
      System.arraycopy(plane, from, out, y * box.width(), box.width());
    }
    return out;
  }

  /** Mean L*, a*, b* of what is set; zeros when nothing is. */
  double[] mean(Mask mask) {
    double[] sum = new double[3];
    int n = 0;
    boolean[] set = mask.set();
    for (int i = 0; i < set.length; i++) {
      if (set[i]) {
        sum[0] += lightness[i];
        sum[1] += a[i];
        sum[2] += b[i];
        n++;
      }
    }
    for (int k = 0; k < 3 && n > 0; k++) {
      sum[k] /= n;
    }
    return sum;
  }

  /** Difference of two colours (L*, a*, b*) as it counts for finding. */
  static double distance(double[] p, double[] q) {
    double dl = 0.5 * (p[0] - q[0]);
    return Math.sqrt(dl * dl + (p[1] - q[1]) * (p[1] - q[1]) + (p[2] - q[2]) * (p[2] - q[2]));
  }

  int size() {
    return lightness.length;
  }

  /** Difference as it counts for finding: shadows change L*, so it counts half. */
  double distance(int i, double l, double aa, double bb) {
    double dl = 0.5 * (lightness[i] - l);
    double da = a[i] - aa;
    double db = b[i] - bb;
    return Math.sqrt(dl * dl + da * da + db * db);
  }
}
