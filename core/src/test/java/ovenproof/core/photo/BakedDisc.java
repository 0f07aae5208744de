package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import ovenproof.core.colour.Lab;
import ovenproof.core.colour.LinearRgb;
import ovenproof.core.colour.Srgb;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;

/**
 * One baked disc beside a printed chart under a light of its own through a camera of its own, small
 * enough for hundreds of them; everything follows from the seed. What is true is what the measures
 * say of the disc itself, without light, camera and search.
 */
final class BakedDisc {

  private static final int WIDTH = 440;
  private static final int HEIGHT = 300;

  /** Five pixels a millimetre. */
  private static final double PITCH_PIXELS = 30;

  private static final double PIXELS_PER_MILLIMETRE = 5;

  /** Standard uncertainties to either side of a normal 90 % interval. */
  private static final double NINETY_PERCENT = 1.6449;

  /** A whole print differs from the published values by so much, as {@link ChartMisfit} says. */
  private static final double PRINT_LIGHTNESS = 0.3;

  private static final double PRINT_CHROMA = 0.4;

  /** A camera sees surfaces of one colour a little apart, each channel by itself: relative SD. */
  private static final double SPECTRAL = 0.02;

  private static final Lab TARGET = Lab.d50(55, 13, 32);

  private static final ShadeSettings SETTINGS = ShadeSettings.withDefaults().withTarget(TARGET);

  private final SplittableRandom random;
  private final double x;
  private final double y;
  private final double radius;
  private final double lightness;
  private final double slopeX;
  private final double slopeY;
  private final double rimStep;
  private final double[][] waves;
  private final List<LinearRgb> chart;
  private final double spectral;
  private final double[] foodSpectrum;
  private final Lab ground;

  /** What one measure said against what was so. */
  record Outcome(String id, boolean held) {}

  private BakedDisc(long seed, Print print) {
    random = new SplittableRandom(20261125 + 7919 * seed);
    x = random.nextDouble(95, 115);
    y = random.nextDouble(130, 170);
    radius = random.nextDouble(62, 78);
    lightness = random.nextDouble(42, 70);
    slopeX = random.nextDouble(-5, 5);
    slopeY = random.nextDouble(-5, 5);
    rimStep = random.nextDouble(-10, -1);
    waves = new double[5][];
    for (int i = 0; i < waves.length; i++) {
      double angle = random.nextDouble(Math.PI);
      double wave = 2 * Math.PI / random.nextDouble(20, 70);
      waves[i] =
          new double[] {
            random.nextDouble(0.3, 2),
            wave * Math.cos(angle),
            wave * Math.sin(angle),
            random.nextDouble(2 * Math.PI)
          };
    }
    chart = new ArrayList<>();
    double off = print == Print.EXACT ? 0 : 1;
    spectral = off * SPECTRAL;
    double offLightness = off * PRINT_LIGHTNESS * random.nextGaussian();
    double offA = off * PRINT_CHROMA * random.nextGaussian();
    double offB = off * PRINT_CHROMA * random.nextGaussian();
    for (Lab published : ReferenceChart.Edition.AFTER_2014.patches()) {
      Lab printed =
          Lab.d50(published.lightness() + offLightness, published.a() + offA, published.b() + offB);
      chart.add(seen(printed, spectrum()));
    }
    foodSpectrum = spectrum();
    ground = Lab.d50(random.nextDouble(42, 52), -3, random.nextDouble(-14, -9));
  }

  /** How the chart was printed. */
  enum Print {
    /** With the published values. */
    EXACT,
    /** As prints are: a little off as a whole, and each patch seen a little apart. */
    ORDINARY
  }

  static BakedDisc of(long seed) {
    return new BakedDisc(seed, Print.ORDINARY);
  }

  static BakedDisc besideExactPrint(long seed) {
    return new BakedDisc(seed, Print.EXACT);
  }

  private double[] spectrum() {
    double[] s = new double[3];
    for (int i = 0; i < 3; i++) {
      s[i] = 1 + spectral * random.nextGaussian();
    }
    return s;
  }

  private static LinearRgb seen(Lab colour, double[] spectrum) {
    LinearRgb light = colour.toLinearRgb();
    return new LinearRgb(
        light.red() * spectrum[0], light.green() * spectrum[1], light.blue() * spectrum[2]);
  }

  /** The disc itself. */
  private Lab food(double px, double py) {
    double u = (px - x) / radius;
    double v = (py - y) / radius;
    double l = lightness + slopeX * u + slopeY * v;
    for (double[] w : waves) {
      l += w[0] * Math.sin(w[1] * px + w[2] * py + w[3]);
    }
    double depth = (radius - Math.hypot(px - x, py - y)) / PIXELS_PER_MILLIMETRE;
    l += rimStep / (1 + Math.exp(2 * (depth - 5)));
    double t = (l - 60) / 30;
    return Lab.d50(l, 12 - 4 * t - 2 * t * t, 33 + 5 * t - 3 * t * t);
  }

  private Outline edge(double radius) {
    List<PixelPoint> points = new ArrayList<>();
    for (int i = 0; i < 180; i++) {
      double angle = i * Math.PI / 90;
      points.add(new PixelPoint(x + radius * Math.cos(angle), y + radius * Math.sin(angle)));
    }
    return new Outline(points);
  }

  /** The disc's own colours in place of what a camera made of them. */
  private PixelColours own() {
    return new PixelColours() {
      @Override
      public void row(Picture picture, int row, int fromX, int toX, float[] lab) {
        for (int px = fromX, o = 0; px < toX; px++, o += 3) {
          Lab at = food(px + 0.5, row + 0.5);
          lab[o] = (float) at.lightness();
          lab[o + 1] = (float) at.a();
          lab[o + 2] = (float) at.b();
        }
      }

      @Override
      public PixelColours under(LightField field) {
        throw new UnsupportedOperationException("the disc itself has no light");
      }
    };
  }

  private List<Measurement> truth(Picture frame) {
    ColourTrust exact = new ColourTrust("truth", 0, 0, 0, 0, 0, 0);
    PhotoScale scale = new PhotoScale(PIXELS_PER_MILLIMETRE, PhotoScale.Origin.DECLARED);
    return PhotoMeasures.with(SETTINGS)
        .measure(frame, edge(radius), own(), exact, scale)
        .measurements(Subject.NONE);
  }

  /** Outlines are off by so much, as {@link PhotoMeasures} allows for: standard deviation. */
  private static final double OUTLINE_MILLIMETRES = 0.5;

  /** What is made of the photograph with an outline that is a little off. */
  List<Outcome> outcomes() {
    Picture photo = photo(Light.UNEVEN);
    double off = OUTLINE_MILLIMETRES * PIXELS_PER_MILLIMETRE * random.nextGaussian();
    PhotoAnalysis analysis =
        PhotoAnalyser.withDefaults()
            .with(SETTINGS)
            .withChartPitch(PITCH_PIXELS / PIXELS_PER_MILLIMETRE)
            .measure(photo, List.of(edge(radius + off)), "camera:one");
    List<Measurement> seen = analysis.pieces().get(0).shade().measurements(Subject.NONE);
    List<Measurement> truth = truth(photo);
    List<Outcome> out = new ArrayList<>();
    for (int i = 0; i < seen.size(); i++) {
      out.add(outcome(seen.get(i), truth.get(i)));
    }
    return out;
  }

  private static Outcome outcome(Measurement seen, Measurement truth) {
    Double wanted = truth.value();
    Double value = seen.value();
    Double u = seen.uncertainty();
    if (value == null || u == null) {
      // Below the noise of the camera: a bound, which holds or not.
      return new Outcome(seen.id(), seen.high() != null && wanted <= seen.high());
    }
    return new Outcome(seen.id(), Math.abs(value - wanted) <= NINETY_PERCENT * u);
  }

  // ---------- light and camera ----------

  /** How the lamp lights the frame. */
  enum Light {
    /** The same everywhere. */
    EVEN,
    /** Up to an eighth brighter on one side, darker in the corners. */
    UNEVEN
  }

  Picture photo(Light lamp) {
    double exposure = random.nextDouble(0.7, 1.0);
    double[] gain = {random.nextDouble(0.85, 1.1), 1, random.nextDouble(0.8, 1.1)};
    double mixing = random.nextDouble(-0.08, 0.08);
    double contrast = random.nextDouble(0, 0.25);
    double uneven = lamp == Light.EVEN ? 0 : 1;
    double lightX = uneven * random.nextDouble(-0.12, 0.12);
    double lightY = uneven * random.nextDouble(-0.12, 0.12);
    double vignette = uneven * random.nextDouble(0, 0.12);
    double noise = random.nextDouble(0.6, 2.5);
    LinearRgb table = ground.toLinearRgb();
    LinearRgb card = Lab.d50(17, 0, 0).toLinearRgb();
    int[] pixels = new int[WIDTH * HEIGHT];
    for (int i = 0; i < pixels.length; i++) {
      double px = i % WIDTH + 0.5;
      double py = i / WIDTH + 0.5;
      LinearRgb surface = surface(px, py, table, card);
      double u = px / WIDTH - 0.5;
      double v = py / WIDTH - 0.5 * HEIGHT / WIDTH;
      double light =
          exposure * (1 + lightX * u + lightY * v) * (1 - vignette * (u * u + v * v) / 0.39);
      double red = surface.red();
      double green = surface.green();
      double blue = surface.blue();
      int r = encode(light * gain[0] * (red * (1 - mixing) + green * mixing), contrast, noise);
      int g = encode(light * (green * (1 - mixing) + (red + blue) / 2 * mixing), contrast, noise);
      int b = encode(light * gain[2] * (blue * (1 - mixing) + green * mixing), contrast, noise);
      pixels[i] = r << 16 | g << 8 | b;
    }
    return Scene.jpeg(new Picture(WIDTH, HEIGHT, pixels), 0.92f);
  }

  private LinearRgb surface(double px, double py, LinearRgb table, LinearRgb card) {
    if (Math.hypot(px - x, py - y) < radius) {
      return seen(food(px, py), foodSpectrum);
    }
    double gx = (px - 222) / PITCH_PIXELS;
    double gy = (py - 40) / PITCH_PIXELS;
    if (gx < -0.35 || gx > 6.35 || gy < -0.35 || gy > 4.35) {
      return table;
    }
    boolean patch =
        gx >= 0
            && gx < 6
            && gy >= 0
            && gy < 4
            && Math.abs(gx - Math.floor(gx) - 0.5) < 0.43
            && Math.abs(gy - Math.floor(gy) - 0.5) < 0.43;
    return patch ? chart.get((int) gy * 6 + (int) gx) : card;
  }

  private int encode(double light, double contrast, double noise) {
    double v = Srgb.encode(Math.min(1, Math.max(0, light)));
    v = v + contrast * (v * v * (3 - 2 * v) - v);
    return (int) Math.max(0, Math.min(255, Math.round(255 * v + noise * random.nextGaussian())));
  }
}
