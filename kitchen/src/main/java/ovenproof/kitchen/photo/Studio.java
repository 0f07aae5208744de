package ovenproof.kitchen.photo;

import java.util.ArrayList;
import java.util.List;
import ovenproof.core.colour.Srgb;
import ovenproof.kitchen.physics.Chance;

/**
 * Takes pictures of scenes: table, shadows, food, chart, light, lens, sensor. Safe for use by
 * several threads.
 */
public final class Studio {

  private static final int LEVELS = 4096;
  private static final byte[] ENCODED = encoded();
  private static final float[] BELL = bell();

  private Studio() {}

  private static byte[] encoded() {
    byte[] table = new byte[LEVELS];
    for (int i = 0; i < LEVELS; i++) {
      table[i] = (byte) Math.round(255 * Srgb.encode(i / (double) (LEVELS - 1)));
    }
    return table;
  }

  private static float[] bell() {
    Chance chance = Chance.ofSeed(4711);
    float[] table = new float[1 << 14];
    for (int i = 0; i < table.length; i++) {
      table[i] = (float) chance.gaussian();
    }
    return table;
  }

  /** The picture of a scene; the same scene always gives the same picture. */
  public static Shot take(PhotoScene scene) {
    Canvas canvas = new Canvas(scene);
    TablePainter.paint(canvas);
    List<FoodPainter> painters = new ArrayList<>();
    for (int i = 0; i < scene.items().size(); i++) {
      painters.add(new FoodPainter(canvas, scene.items().get(i), i));
    }
    Shadow.cast(canvas, painters);
    TablePainter.chart(canvas);
    List<Shot.PieceTruth> truths = new ArrayList<>();
    for (FoodPainter painter : painters) {
      truths.add(painter.paint());
    }
    return new Shot(canvas.width, canvas.height, developed(canvas), truths);
  }

  private static int[] developed(Canvas canvas) {
    PhotoScene scene = canvas.scene;
    int[] out = new int[canvas.width * canvas.height];
    long state = scene.seed() * 0x9e3779b97f4a7c15L + 1;
    float noise = (float) scene.camera().noise();
    float saturation = (float) scene.camera().saturation();
    float level = (float) scene.light().level();
    float redGain = (float) scene.light().red();
    float blueGain = (float) scene.light().blue();
    float[] across = new float[canvas.width];
    for (int x = 0; x < canvas.width; x++) {
      float u = 2f * x / canvas.width - 1;
      across[x] = (float) (1 + scene.light().right() * u) * (1 - 0.05f * u * u);
    }
    for (int y = 0; y < canvas.height; y++) {
      float v = 2f * y / canvas.height - 1;
      float row = level * (float) (1 + scene.light().down() * v) * (1 - 0.03f * v * v);
      for (int x = 0; x < canvas.width; x++) {
        int n = y * canvas.width + x;
        float light = row * across[x];
        float r = canvas.red[n] * light * redGain;
        float g = canvas.green[n] * light;
        float b = canvas.blue[n] * light * blueGain;
        float grey = 0.25f * r + 0.6f * g + 0.15f * b;
        state ^= state << 13;
        state ^= state >>> 7;
        state ^= state << 17;
        float own = noise * root(grey);
        r += saturation * (r - grey) + own * 1.2f * BELL[(int) state & 0x3fff];
        g += saturation * (g - grey) + own * BELL[(int) (state >>> 16) & 0x3fff];
        b += saturation * (b - grey) + own * 1.4f * BELL[(int) (state >>> 32) & 0x3fff];
        out[n] = level(r) << 16 | level(g) << 8 | level(b);
      }
    }
    return out;
  }

  /** Photon noise grows with the root of the light; a floor stays in the dark. */
  private static float root(float grey) {
    return 0.18f + (float) Math.sqrt(Math.max(0, grey));
  }

  private static int level(float linear) {
    int i = (int) (linear * (LEVELS - 1) + 0.5f);
    return ENCODED[Math.min(LEVELS - 1, Math.max(0, i))] & 0xff;
  }
}
