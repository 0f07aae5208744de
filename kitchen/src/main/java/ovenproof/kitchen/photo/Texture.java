package ovenproof.kitchen.photo;

import ovenproof.kitchen.physics.Chance;

/** Tiles of roughness that repeat without a seam, made once: 512 × 512 texels of 0.2 mm. */
final class Texture {

  static final int SIZE = 512;
  static final double TEXELS_PER_MILLIMETRE = 5;

  private static final int MASK = SIZE - 1;
  private static final Chance CHANCE = Chance.ofSeed(77);

  /** Spots of one to four millimetres, mean 0, deviation 1. */
  static final Texture MOTTLE = noise("mottle", new int[] {8, 16, 4}, new double[] {1, 0.7, 0.6});

  /** Slow change over two centimetres. */
  static final Texture CLOUD = noise("cloud", new int[] {32, 64}, new double[] {0.6, 1});

  /** Fine grain of half a millimetre. */
  static final Texture GRAIN = noise("grain", new int[] {2, 3, 5}, new double[] {1, 0.8, 0.7});

  /** Pores of bread: 0 at the surface, towards 1 in a pore. */
  static final Texture PORES = pores();

  private final float[] values;

  private Texture(float[] values) {
    this.values = values;
  }

  float at(int x, int y) {
    return values[(y & MASK) * SIZE + (x & MASK)];
  }

  /** Light on a slope that rises to the left and up: value difference along the diagonal. */
  float slope(int x, int y) {
    return at(x + 1, y + 1) - at(x - 1, y - 1);
  }

  private static Texture noise(String name, int[] reach, double[] weight) {
    float[] sum = new float[SIZE * SIZE];
    for (int o = 0; o < reach.length; o++) {
      float[] layer = blurred(white(name + o), reach[o]);
      double deviation = deviation(layer);
      for (int i = 0; i < sum.length; i++) {
        sum[i] += (float) (weight[o] * layer[i] / deviation);
      }
    }
    double deviation = deviation(sum);
    for (int i = 0; i < sum.length; i++) {
      sum[i] /= (float) deviation;
    }
    return new Texture(sum);
  }

  private static float[] white(String name) {
    Chance chance = CHANCE.named(name);
    float[] values = new float[SIZE * SIZE];
    for (int i = 0; i < values.length; i++) {
      values[i] = (float) chance.uniform(-1, 1);
    }
    return values;
  }

  /** Three box means in each direction: close to a bell. */
  private static float[] blurred(float[] values, int reach) {
    float[] out = values;
    for (int pass = 0; pass < 3; pass++) {
      out = box(box(out, reach, 1, SIZE), reach, SIZE, 1);
    }
    return out;
  }

  private static float[] box(float[] in, int reach, int along, int across) {
    float[] out = new float[in.length];
    int half = Math.max(1, reach / 2);
    for (int line = 0; line < SIZE; line++) {
      double sum = 0;
      for (int i = -half; i <= half; i++) {
        sum += in[line * across + (i & MASK) * along];
      }
      for (int i = 0; i < SIZE; i++) {
        out[line * across + i * along] = (float) (sum / (2 * half + 1));
        sum += in[line * across + ((i + half + 1) & MASK) * along];
        sum -= in[line * across + ((i - half) & MASK) * along];
      }
    }
    return out;
  }

  private static double deviation(float[] values) {
    double sum = 0;
    double squares = 0;
    for (float v : values) {
      sum += v;
      squares += v * v;
    }
    double mean = sum / values.length;
    return Math.sqrt(squares / values.length - mean * mean);
  }

  private static Texture pores() {
    Chance chance = CHANCE.named("pores");
    float[] depth = new float[SIZE * SIZE];
    for (int n = 0; n < 2600; n++) {
      double large = Math.pow(chance.uniform(0, 1), 3.2);
      double radius = 1.6 + 8 * large;
      double stretch = chance.uniform(0.6, 1);
      double turn = chance.uniform(0, Math.PI);
      pore(depth, chance.uniform(0, SIZE), chance.uniform(0, SIZE), radius, stretch, turn);
    }
    return new Texture(depth);
  }

  private static void pore(
      float[] depth, double cx, double cy, double radius, double stretch, double turn) {
    int reach = (int) Math.ceil(radius) + 1;
    double c = Math.cos(turn);
    double s = Math.sin(turn);
    for (int j = -reach; j <= reach; j++) {
      for (int i = -reach; i <= reach; i++) {
        double u = (c * i + s * j) / radius;
        double v = (-s * i + c * j) / (radius * stretch);
        double fall = 1 - (u * u + v * v);
        if (fall > 0) {
          int at = ((int) (cy + j) & MASK) * SIZE + ((int) (cx + i) & MASK);
          depth[at] = (float) Math.max(depth[at], Math.min(1, 1.6 * fall) * (0.45 + radius / 20));
        }
      }
    }
  }
}
