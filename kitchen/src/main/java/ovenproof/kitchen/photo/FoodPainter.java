package ovenproof.kitchen.photo;

import ovenproof.core.colour.Lab;
import ovenproof.kitchen.physics.Chance;
import ovenproof.kitchen.physics.Surface;

/** Paints one piece and sums up what colour it truly has. */
final class FoodPainter {

  private static final int SHADES = 1024;
  private static final int MAP = 64;
  private static final double MARGIN = 2;
  private static final float CRUST_MILLIMETRE = 2.6f;

  private final Canvas canvas;
  private final PhotoScene.Item item;
  private final Material material;
  private final Outline outline;
  private final float cos;
  private final float sin;
  private final int shiftX;
  private final int shiftY;
  private final float largest;
  private final float[] map = new float[(MAP + 1) * (MAP + 1)];
  private final float[][] shades;

  FoodPainter(Canvas canvas, PhotoScene.Item item, int number) {
    Chance chance = canvas.chance.named("piece " + number + item.id());
    this.canvas = canvas;
    this.item = item;
    this.material = item.material();
    this.outline = new Outline(item.shape(), item.width(), item.depth(), chance);
    this.cos = (float) Math.cos(item.turnRadians());
    this.sin = (float) Math.sin(item.turnRadians());
    this.shiftX = chance.below(Texture.SIZE);
    this.shiftY = chance.below(Texture.SIZE);
    this.largest = outline.largest();
    this.shades = Shades.of(material);
    Surface surface = item.surface();
    for (int j = 0; j <= MAP; j++) {
      for (int i = 0; i <= MAP; i++) {
        map[j * (MAP + 1) + i] = (float) surface.at(2.0 * i / MAP - 1, 2.0 * j / MAP - 1);
      }
    }
  }

  /** Whether the piece lies over a place of the table. */
  boolean covers(double x, double y) {
    double dx = x - item.x();
    double dy = y - item.y();
    if (dx * dx + dy * dy > largest * largest) {
      return false;
    }
    float u = (float) (cos * dx + sin * dy);
    float v = (float) (-sin * dx + cos * dy);
    float r = outline.towards(u, v);
    return u * u + v * v < r * r;
  }

  Shot.PieceTruth paint() {
    int[] box = canvas.around(item.x(), item.y(), largest);
    Sums whole = new Sums();
    Sums inside = new Sums();
    Sums seen = new Sums();
    Bounds bounds = new Bounds();
    for (int y = box[1]; y < box[3]; y++) {
      for (int x = box[0]; x < box[2]; x++) {
        double depth = canvas.depth(x, y);
        double dx = canvas.tableX(x, y, depth) - item.x();
        double dy = canvas.tableY(x, y, depth) - item.y();
        float u = (float) (cos * dx + sin * dy);
        float v = (float) (-sin * dx + cos * dy);
        float r = outline.towards(u, v);
        float distance = r - (float) Math.sqrt(u * u + v * v);
        float cover = distance * (float) canvas.pixelsPerMillimetre + 0.5f;
        if (cover > 0) {
          float light = relief(u, v, distance, r, column(u), row(v));
          int shade = pixel(y * canvas.width + x, u, v, distance, light, Math.min(1, cover));
          if (cover > 0.5f) {
            bounds.add(x, y);
            whole.add(shades[shade]);
            if (distance > MARGIN) {
              inside.add(shades[shade]);
              seen.add(shades[shade], light);
            }
          }
        }
      }
    }
    return truth(bounds, whole, inside, seen);
  }

  private Shot.PieceTruth truth(Bounds b, Sums whole, Sums inside, Sums seen) {
    int pad = 6;
    int left = Math.max(0, b.left - pad);
    int top = Math.max(0, b.top - pad);
    int right = Math.min(canvas.width, b.right + pad + 1);
    int bottom = Math.min(canvas.height, b.bottom + pad + 1);
    return new Shot.PieceTruth(
        item.id(),
        left,
        top,
        right - left,
        bottom - top,
        whole.mean(),
        inside.mean(),
        seen.mean(),
        inside.deviation(),
        whole.n);
  }

  /** Paints one pixel; returns the number of its true shade. */
  private int pixel(int n, float u, float v, float distance, float light, float cover) {
    int i = column(u);
    int j = row(v);
    float browning = browning(u, v, distance, i, j);
    int shade = Math.min(SHADES - 1, Math.max(0, (int) (browning * (SHADES - 1) + 0.5f)));
    float[] colour = shades[shade];
    canvas.red[n] += cover * (colour[0] * light - canvas.red[n]);
    canvas.green[n] += cover * (colour[1] * light - canvas.green[n]);
    canvas.blue[n] += cover * (colour[2] * light - canvas.blue[n]);
    return shade;
  }

  private int column(float u) {
    return (int) (u * 5 + 5000) + shiftX;
  }

  private int row(float v) {
    return (int) (v * 5 + 5000) + shiftY;
  }

  /** What the kinetics gave, with what the surface's small heights make of it. */
  private float browning(float u, float v, float distance, int i, int j) {
    float base = mapped(u, v);
    float mottle = (float) material.mottle();
    float spots = mottle * (0.55f * Texture.MOTTLE.at(i, j) + 0.45f * cloud(i, j));
    float grain = 0.10f * Texture.GRAIN.at(i, j);
    float alive = base * (1 - base) * 1.35f;
    float browning = base + alive * (spots + grain);
    if (material.pores() > 0) {
      browning -= 0.5f * alive * Texture.PORES.at(i, j);
    }
    if (material.blisters() > 0) {
      float height = 0.8f * cloud(i + 99, j) + 0.5f * Texture.MOTTLE.at(i, j + 57);
      float over = Math.max(0, height - 0.75f);
      browning += (float) material.blisters() * alive * Math.min(2.2f, 1.8f * over);
    }
    return browning + crust(distance, base, i, j);
  }

  /** Slow change, read askew and stretched so that a large piece does not show the tile again. */
  private static float cloud(int i, int j) {
    return Texture.CLOUD.at((37 * i + 22 * j) >> 6, (37 * j - 22 * i) >> 6) * 0.7f
        + Texture.CLOUD.at((53 * j + 31 * i) >> 6, (53 * i - 31 * j) >> 6) * 0.7f;
  }

  /** A slice carries the crust of its loaf round its edge. */
  private float crust(float distance, float base, int i, int j) {
    if (item.shape() != PhotoScene.Shape.SLICE) {
      return 0;
    }
    float width = CRUST_MILLIMETRE + 0.5f * Texture.CLOUD.at(i, j);
    float edge = Math.max(0, Math.min(1, (width - distance) / 1.6f));
    return edge * Math.max(0, 0.62f - base) * 0.9f;
  }

  private float mapped(float u, float v) {
    float x = Math.min(MAP - 0.001f, Math.max(0, (u / (float) item.width() + 0.5f) * MAP));
    float y = Math.min(MAP - 0.001f, Math.max(0, (v / (float) item.depth() + 0.5f) * MAP));
    int i = (int) x;
    int j = (int) y;
    float fx = x - i;
    float fy = y - j;
    int at = j * (MAP + 1) + i;
    float above = map[at] + fx * (map[at + 1] - map[at]);
    float below = map[at + MAP + 1] + fx * (map[at + MAP + 2] - map[at + MAP + 1]);
    return above + fy * (below - above);
  }

  /** Light on bumps, pores and the bulge; 1 in the mean. */
  private float relief(float u, float v, float distance, float radius, int i, int j) {
    float light = 1 + (float) material.grain() * 0.16f * Texture.GRAIN.slope(i, j);
    light += 0.05f * (float) material.grain() * Texture.MOTTLE.slope(i, j) * 6;
    if (material.pores() > 0) {
      float pore = Texture.PORES.at(i, j);
      light -= (float) material.pores() * pore;
      light += (float) material.pores() * 0.9f * Texture.PORES.slope(i, j);
    }
    if (material.blisters() > 0) {
      light += 0.5f * (float) material.blisters() * Texture.CLOUD.slope(i + 99, j);
    }
    float dome = (float) material.dome();
    float out = 1 - Math.min(1, distance / radius);
    float steep = out * out * out;
    float towards = -(u * 0.63f + v * 0.77f) / Math.max(1, (float) Math.hypot(u, v));
    light += dome * steep * (0.42f * towards - 0.16f);
    float edge = Math.max(0, 1 - distance / 1.4f);
    light *= 1 - 0.16f * edge;
    return Math.max(0.15f, light + string(u, v));
  }

  /** The net of a tied joint. */
  private float string(float u, float v) {
    if (item.shape() != PhotoScene.Shape.LOAF) {
      return 0;
    }
    float bend = 0.012f * v * v;
    float pitch = 27;
    float off = (u + bend) - pitch * Math.round((u + bend) / pitch);
    float near = off / 1.3f;
    return 0.55f * (float) Math.exp(-near * near)
        - 0.25f * (float) Math.exp(-(near - 2) * (near - 2));
  }

  /** Shades of a material from raw to burnt: linear light and L*, a*, b*. */
  private static final class Shades {
    private static final float[][][] ALL = new float[Material.values().length][][];

    static {
      for (Material material : Material.values()) {
        float[][] table = new float[SHADES][];
        for (int i = 0; i < SHADES; i++) {
          Lab lab = material.colour().at(i / (SHADES - 1.0));
          float[] rgb = ColourChart.linear(lab);
          table[i] =
              new float[] {
                rgb[0], rgb[1], rgb[2], (float) lab.lightness(), (float) lab.a(), (float) lab.b()
              };
        }
        ALL[material.ordinal()] = table;
      }
    }

    static float[][] of(Material material) {
      return ALL[material.ordinal()];
    }
  }

  private static final class Sums {
    private static final int ROOTS_PER_LIGHT = 1024;
    private static final double[] ROOTS = new double[4 * ROOTS_PER_LIGHT];

    static {
      for (int i = 0; i < ROOTS.length; i++) {
        ROOTS[i] = Math.cbrt((i + 0.5) / ROOTS_PER_LIGHT);
      }
    }

    private double lightness;
    private double squares;
    private double a;
    private double b;
    private int n;

    void add(float[] shade) {
      lightness += shade[3];
      squares += shade[3] * (double) shade[3];
      a += shade[4];
      b += shade[5];
      n++;
    }

    /**
     * A shade under more or less light: X, Y and Z all grow with it, so the cube roots in L*, a*
     * and b* grow with its cube root (CIE 15, above the linear part of L*).
     */
    void add(float[] shade, float light) {
      double root = ROOTS[Math.min(ROOTS.length - 1, (int) (light * ROOTS_PER_LIGHT))];
      lightness += (shade[3] + 16) * root - 16;
      a += shade[4] * root;
      b += shade[5] * root;
      n++;
    }

    double[] mean() {
      int count = Math.max(1, n);
      return new double[] {lightness / count, a / count, b / count};
    }

    double deviation() {
      int count = Math.max(1, n);
      double mean = lightness / count;
      return Math.sqrt(Math.max(0, squares / count - mean * mean));
    }
  }

  private static final class Bounds {
    private int left = Integer.MAX_VALUE;
    private int top = Integer.MAX_VALUE;
    private int right = -1;
    private int bottom = -1;

    void add(int x, int y) {
      left = Math.min(left, x);
      right = Math.max(right, x);
      top = Math.min(top, y);
      bottom = Math.max(bottom, y);
    }
  }
}
