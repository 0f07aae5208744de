package ovenproof.kitchen.photo;

import org.jspecify.annotations.Nullable;
import ovenproof.core.colour.Srgb;

/** Paints what the food lies on, and the chart. */
final class TablePainter {

  private static final float[] TABLE = linear(0x5f7680);
  private static final float[] STEEL = linear(0x6d7072);
  private static final float[] WIRE = linear(0xa9abaa);
  private static final double WIRE_PITCH = 14;
  private static final double WIRE_HALF = 1.1;

  private TablePainter() {}

  private static float[] linear(int packed) {
    var rgb = Srgb.ofPacked(packed).linear();
    return new float[] {(float) rgb.red(), (float) rgb.green(), (float) rgb.blue()};
  }

  static void paint(Canvas canvas) {
    PhotoScene.Ground ground = canvas.scene.ground();
    float[] base = ground == PhotoScene.Ground.TRAY ? STEEL : TABLE;
    int shift = canvas.chance.named("ground").below(Texture.SIZE);
    for (int y = 0; y < canvas.height; y++) {
      for (int x = 0; x < canvas.width; x++) {
        double depth = canvas.depth(x, y);
        double tx = canvas.tableX(x, y, depth);
        double ty = canvas.tableY(x, y, depth);
        int i = (int) (tx * 5) + shift;
        int j = (int) (ty * 5) + shift;
        float tone = tone(ground, i, j);
        int n = y * canvas.width + x;
        canvas.red[n] = base[0] * tone;
        canvas.green[n] = base[1] * tone;
        canvas.blue[n] = base[2] * tone;
        if (ground == PhotoScene.Ground.WIRE_RACK) {
          wire(canvas, n, tx);
        }
      }
    }
  }

  private static float tone(PhotoScene.Ground ground, int i, int j) {
    if (ground == PhotoScene.Ground.TRAY) {
      return 1
          + 0.05f * Texture.CLOUD.at(i, j)
          + 0.05f * Texture.GRAIN.at(i / 9, j)
          + 0.04f * Texture.MOTTLE.at(i / 3, j * 2);
    }
    return 1 + 0.015f * Texture.GRAIN.at(i, j) + 0.012f * Texture.CLOUD.at(i / 2, j / 2);
  }

  private static void wire(Canvas canvas, int n, double tx) {
    double off = tx - WIRE_PITCH * Math.rint(tx / WIRE_PITCH);
    double near = Math.abs(off) / WIRE_HALF;
    if (near < 1) {
      float shine = (float) (0.45 + 0.75 * Math.exp(-Math.pow((off + 0.4) / 0.45, 2)));
      canvas.red[n] = WIRE[0] * shine;
      canvas.green[n] = WIRE[1] * shine;
      canvas.blue[n] = WIRE[2] * shine;
    } else if (off > 0 && off < 4.5) {
      float dark = (float) (1 - 0.3 * Math.exp(-Math.pow((off - 2.6) / 1.0, 2)));
      canvas.red[n] *= dark;
      canvas.green[n] *= dark;
      canvas.blue[n] *= dark;
    }
  }

  /** The chart lies flat; where a pixel straddles an edge it is the mean of four looks. */
  static void chart(Canvas canvas) {
    PhotoScene.ChartPose pose = canvas.scene.chart();
    if (!pose.isPresent()) {
      return;
    }
    double cos = Math.cos(pose.turnRadians()) / pose.pitch();
    double sin = Math.sin(pose.turnRadians()) / pose.pitch();
    int[] box = canvas.around(pose.x(), pose.y(), 4.1 * pose.pitch());
    float[][] looks = new float[4][];
    for (int y = box[1]; y < box[3]; y++) {
      for (int x = box[0]; x < box[2]; x++) {
        looks[0] = look(canvas, pose, cos, sin, x - 0.25, y - 0.25);
        looks[3] = look(canvas, pose, cos, sin, x + 0.25, y + 0.25);
        boolean even = looks[0] == looks[3];
        if (even && looks[0] == null) {
          continue;
        }
        looks[1] = even ? looks[0] : look(canvas, pose, cos, sin, x + 0.25, y - 0.25);
        looks[2] = even ? looks[0] : look(canvas, pose, cos, sin, x - 0.25, y + 0.25);
        blend(canvas, y * canvas.width + x, looks);
      }
    }
  }

  private static float @Nullable [] look(
      Canvas canvas, PhotoScene.ChartPose pose, double cos, double sin, double px, double py) {
    double depth = canvas.depth(px, py);
    double dx = canvas.tableX(px, py, depth) - pose.x();
    double dy = canvas.tableY(px, py, depth) - pose.y();
    return ColourChart.at(cos * dx + sin * dy, -sin * dx + cos * dy);
  }

  private static void blend(Canvas canvas, int n, float[][] looks) {
    float r = 0;
    float g = 0;
    float b = 0;
    for (float[] light : looks) {
      r += light == null ? canvas.red[n] : light[0];
      g += light == null ? canvas.green[n] : light[1];
      b += light == null ? canvas.blue[n] : light[2];
    }
    canvas.red[n] = r / 4;
    canvas.green[n] = g / 4;
    canvas.blue[n] = b / 4;
  }
}
