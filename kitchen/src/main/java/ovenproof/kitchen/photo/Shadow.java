package ovenproof.kitchen.photo;

import java.util.List;

/** Soft shadows: the outlines of everything, shifted away from the window and blurred. */
final class Shadow {

  private static final int COARSE = 4;
  private static final double RIGHT_MILLIMETRE = 4.5;
  private static final double DOWN_MILLIMETRE = 5.5;
  private static final double BLUR_MILLIMETRE = 3.2;
  private static final float DEPTH = 0.55f;

  private Shadow() {}

  static void cast(Canvas canvas, List<FoodPainter> painters) {
    int w = canvas.width / COARSE + 2;
    int h = canvas.height / COARSE + 2;
    float[] dark = new float[w * h];
    for (int j = 0; j < h; j++) {
      for (int i = 0; i < w; i++) {
        double px = i * COARSE;
        double py = j * COARSE;
        double depth = canvas.depth(px, py);
        double x = canvas.tableX(px, py, depth) - RIGHT_MILLIMETRE;
        double y = canvas.tableY(px, py, depth) - DOWN_MILLIMETRE;
        for (FoodPainter painter : painters) {
          if (painter.covers(x, y)) {
            dark[j * w + i] = 1;
            break;
          }
        }
      }
    }
    int reach = (int) Math.max(1, BLUR_MILLIMETRE * canvas.pixelsPerMillimetre / COARSE / 2);
    for (int pass = 0; pass < 2; pass++) {
      dark = blurred(blurred(dark, w, h, reach, 1), w, h, reach, w);
    }
    apply(canvas, dark, w);
  }

  private static float[] blurred(float[] in, int w, int h, int reach, int step) {
    float[] out = new float[in.length];
    int length = step == 1 ? w : h;
    int lines = step == 1 ? h : w;
    for (int line = 0; line < lines; line++) {
      int base = step == 1 ? line * w : line;
      for (int i = 0; i < length; i++) {
        float sum = 0;
        for (int k = -reach; k <= reach; k++) {
          int at = Math.min(length - 1, Math.max(0, i + k));
          sum += in[base + at * step];
        }
        out[base + i * step] = sum / (2 * reach + 1);
      }
    }
    return out;
  }

  private static void apply(Canvas canvas, float[] dark, int w) {
    for (int y = 0; y < canvas.height; y++) {
      int j = y / COARSE;
      float fy = (y % COARSE) / (float) COARSE;
      for (int x = 0; x < canvas.width; x++) {
        int i = x / COARSE;
        float fx = (x % COARSE) / (float) COARSE;
        float above = dark[j * w + i] * (1 - fx) + dark[j * w + i + 1] * fx;
        float below = dark[(j + 1) * w + i] * (1 - fx) + dark[(j + 1) * w + i + 1] * fx;
        float light = 1 - DEPTH * (above * (1 - fy) + below * fy);
        int n = y * canvas.width + x;
        canvas.red[n] *= light;
        canvas.green[n] *= light;
        canvas.blue[n] *= light;
      }
    }
  }
}
