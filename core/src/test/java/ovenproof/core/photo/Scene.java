package ovenproof.core.photo;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import org.jspecify.annotations.Nullable;
import ovenproof.core.colour.Lab;
import ovenproof.core.colour.LinearRgb;
import ovenproof.core.colour.Srgb;

/**
 * An invented table top with known truth: ground, chart, baked pieces, light and camera. Everything
 * follows from the seed. Coordinates are shares of the width.
 */
final class Scene {

  /** What the food lies on. */
  enum Ground {
    MATTE_BLUE_GREY,
    WHITE_PLATE_GREY_TABLE,
    BLACK_CLOTH,
    WIRE_RACK,
    METAL_TRAY,
    DARK_TRAY,
    WOODEN_BOARD
  }

  /** A baked piece: a rounded square (exponent 4) or a disc (exponent 2). */
  record Piece(
      double x,
      double y,
      double radius,
      double exponent,
      double turn,
      Lab shade,
      double rimStep,
      double slope,
      double mottle,
      long seed) {

    /** 0 in the middle, 1 at the edge. */
    double at(double px, double py) {
      double far = Math.max(Math.abs(px - x), Math.abs(py - y)) / radius;
      if (far > 1.6) {
        return far;
      }
      double c = Math.cos(turn);
      double s = Math.sin(turn);
      double u = (c * (px - x) + s * (py - y)) / radius;
      double v = (-s * (px - x) + c * (py - y)) / radius;
      double wobble = 1 + 0.03 * Math.sin(3 * Math.atan2(v, u) + seed % 7);
      return Math.pow(
              Math.pow(Math.abs(u), exponent) + Math.pow(Math.abs(v), exponent), 1 / exponent)
          / wobble;
    }

    Lab colour(double px, double py, double rho) {
      double spots =
          mottle
              * (Math.sin(90 * px + seed) * Math.cos(70 * py - seed)
                  + 0.6 * Math.sin(210 * px * 0.7 + 190 * py));
      double l = shade.lightness() + slope * (py - y) / radius + spots + (rho > 0.88 ? rimStep : 0);
      double t = (l - shade.lightness()) / 30;
      return Lab.d50(Math.max(8, l), shade.a() - 4 * t, shade.b() + 6 * t);
    }
  }

  final int width;
  final int height;
  final Ground ground;
  final List<Piece> pieces;
  final @Nullable Homography chart;
  private final @Nullable Homography inverse;
  private final long seed;

  private Scene(
      int width,
      int height,
      Ground ground,
      List<Piece> pieces,
      @Nullable Homography chart,
      long seed) {
    this.width = width;
    this.height = height;
    this.ground = ground;
    this.pieces = pieces;
    this.chart = chart;
    this.seed = seed;
    this.inverse = inverse(chart);
  }

  /** Light and camera. */
  record Camera(
      double exposure,
      double redGain,
      double blueGain,
      double mixing,
      double contrast,
      double lightSlopeX,
      double lightSlopeY,
      double vignette,
      double noise,
      float jpegQuality) {

    static final Camera PERFECT = new Camera(1, 1, 1, 0, 0, 0, 0, 0, 0, 1);

    static Camera ordinary(long seed) {
      SplittableRandom r = new SplittableRandom(seed * 31 + 5);
      return new Camera(
          r.nextDouble(0.75, 1.02),
          r.nextDouble(0.85, 1.15),
          r.nextDouble(0.8, 1.15),
          r.nextDouble(-0.08, 0.08),
          r.nextDouble(0, 0.25),
          r.nextDouble(-0.12, 0.12),
          r.nextDouble(-0.12, 0.12),
          r.nextDouble(0, 0.12),
          r.nextDouble(0.6, 2.5),
          (float) r.nextDouble(0.82, 0.95));
    }

    Camera evenLight() {
      return new Camera(exposure, redGain, blueGain, mixing, contrast, 0, 0, 0, noise, jpegQuality);
    }
  }

  static Scene of(
      int width, Ground ground, List<Piece> pieces, @Nullable Homography chart, long seed) {
    return new Scene(width, width * 3 / 4, ground, pieces, chart, seed);
  }

  /** Count pieces on a grid in the left two thirds (or everywhere without chart). */
  static List<Piece> pieces(int count, double gap, boolean withChart, long seed) {
    SplittableRandom r = new SplittableRandom(seed);
    int columns = count <= 3 ? count : (count + 1) / 2;
    int rows = count <= 3 ? 1 : 2;
    double areaW = withChart ? 0.62 : 0.86;
    double left = withChart ? 0.04 : 0.07;
    double areaH = 0.62;
    double cell = Math.min(areaW / columns, areaH / rows);
    double radius = cell / 2 * (1 - gap);
    double exponent = r.nextBoolean() ? 4 : 2;
    double lightness = r.nextDouble(35, 72);
    List<Piece> out = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double jitter = gap * cell * 0.2;
      double x = left + (i % columns + 0.5) * cell + r.nextDouble(-jitter, jitter + 1e-9);
      double y = 0.065 + (i / columns + 0.5) * cell + r.nextDouble(-jitter, jitter + 1e-9);
      double l = lightness + r.nextDouble(-6, 6);
      out.add(
          new Piece(
              x,
              y,
              radius,
              exponent,
              gap < 0.05 ? 0 : r.nextDouble(-0.2, 0.2),
              Lab.d50(l, 8 + (70 - l) * 0.15, 34 - Math.abs(l - 60) * 0.45),
              r.nextDouble(-10, -2),
              r.nextDouble(-4, 4),
              r.nextDouble(0.3, 2),
              r.nextLong(1000)));
    }
    return out;
  }

  /** A chart of the given width (6 pitches) at a place, turned, with a mild perspective. */
  static Homography chart(double x, double y, double span, double degrees, double tilt) {
    double[][] grid = {{0, 0}, {6, 0}, {6, 4}, {0, 4}};
    List<PixelPoint> from = new ArrayList<>();
    List<PixelPoint> to = new ArrayList<>();
    double c = Math.cos(Math.toRadians(degrees));
    double s = Math.sin(Math.toRadians(degrees));
    for (double[] g : grid) {
      double u = (g[0] - 3) * span / 6;
      double v = (g[1] - 2) * span / 6;
      double shrink = 1 + tilt * u / span + 0.5 * tilt * v / span;
      from.add(new PixelPoint(g[0], g[1]));
      to.add(new PixelPoint(x + (c * u - s * v) * shrink, y + (s * u + c * v) * shrink));
    }
    return Homography.fit(from, to);
  }

  /** The chart's grid corners in pixels, from dark skin round by bluish green. */
  List<PixelPoint> chartCorners() {
    List<PixelPoint> out = new ArrayList<>();
    for (double[] g : new double[][] {{0, 0}, {6, 0}, {6, 4}, {0, 4}}) {
      out.add(chart.apply(g[0], g[1]).times(width));
    }
    return out;
  }

  /** The edge of a piece in pixels. */
  Outline truth(Piece piece) {
    List<PixelPoint> points = new ArrayList<>();
    for (int i = 0; i < 180; i++) {
      double angle = i * Math.PI / 90;
      double low = 0;
      double high = 2 * piece.radius;
      for (int k = 0; k < 30; k++) {
        double mid = (low + high) / 2;
        boolean in = piece.at(piece.x + mid * Math.cos(angle), piece.y + mid * Math.sin(angle)) < 1;
        low = in ? mid : low;
        high = in ? high : mid;
      }
      points.add(
          new PixelPoint(
              (piece.x + low * Math.cos(angle)) * width,
              (piece.y + low * Math.sin(angle)) * width));
    }
    return new Outline(points);
  }

  /** The scene as light through a camera. */
  Picture shoot(Camera camera) {
    int[] pixels = new int[width * height];
    int ss = camera.noise == 0 ? 1 : 2;
    IntStream.range(0, height)
        .parallel()
        .forEach(
            y -> {
              SplittableRandom noise = new SplittableRandom(seed * 7919 + y);
              for (int x = 0; x < width; x++) {
                pixels[y * width + x] = pixel(camera, x, y, ss, noise);
              }
            });
    Picture raw = new Picture(width, height, pixels);
    return camera.jpegQuality < 1 ? jpeg(raw, camera.jpegQuality) : raw;
  }

  private int pixel(Camera camera, int x, int y, int ss, SplittableRandom noise) {
    double[] sum = new double[3];
    for (int i = 0; i < ss * ss; i++) {
      double px = (x + (i % ss + 0.5) / ss) / width;
      double py = (y + (i / ss + 0.5) / ss) / width;
      LinearRgb light = sceneLight(px, py, camera.noise > 0);
      sum[0] += light.red();
      sum[1] += light.green();
      sum[2] += light.blue();
    }
    double n = ss * ss;
    double px = (double) x / width;
    double py = (double) y / width;
    double r2 = (px - 0.5) * (px - 0.5) + (py - 0.375) * (py - 0.375);
    double light =
        camera.exposure
            * (1 + camera.lightSlopeX * (px - 0.5) + camera.lightSlopeY * (py - 0.375))
            * (1 - camera.vignette * r2 / 0.39);
    double m = camera.mixing;
    double red = sum[0] / n;
    double green = sum[1] / n;
    double blue = sum[2] / n;
    int r = encode(light * camera.redGain * (red * (1 - m) + green * m), camera, noise);
    int g = encode(light * (green * (1 - m) + (red + blue) / 2 * m), camera, noise);
    int b = encode(light * camera.blueGain * (blue * (1 - m) + green * m), camera, noise);
    return r << 16 | g << 8 | b;
  }

  private static int encode(double light, Camera camera, SplittableRandom noise) {
    double v = Srgb.encode(Math.min(1, Math.max(0, light)));
    v = v + camera.contrast * (v * v * (3 - 2 * v) - v);
    double dn = 255 * v + (camera.noise > 0 ? camera.noise * noise.nextGaussian() : 0);
    return (int) Math.max(0, Math.min(255, Math.round(dn)));
  }

  private LinearRgb sceneLight(double x, double y, boolean shadows) {
    for (Piece piece : pieces) {
      double rho = piece.at(x, y);
      if (rho < 1) {
        return piece.colour(x, y, rho).toLinearRgb();
      }
    }
    LinearRgb patch = chartLight(x, y);
    LinearRgb base = patch != null ? patch : groundColour(x, y).toLinearRgb();
    return shadows ? base.times(shadow(x, y)) : base;
  }

  private double shadow(double x, double y) {
    double factor = 1;
    for (Piece piece : pieces) {
      double rho = piece.at(x - 0.012, y - 0.015);
      if (rho < 1.08) {
        factor = Math.min(factor, 0.62 + 0.38 * Math.max(0, (rho - 0.94) / 0.14));
      }
    }
    return factor;
  }

  private @Nullable LinearRgb chartLight(double x, double y) {
    if (chart == null) {
      return null;
    }
    double[] g = invert(x, y);
    if (g == null || g[0] < -0.35 || g[0] > 6.35 || g[1] < -0.35 || g[1] > 4.35) {
      return null;
    }
    double u = g[0] - Math.floor(g[0]);
    double v = g[1] - Math.floor(g[1]);
    boolean grid = g[0] >= 0 && g[0] < 6 && g[1] >= 0 && g[1] < 4;
    if (!grid || Math.abs(u - 0.5) > 0.43 || Math.abs(v - 0.5) > 0.43) {
      return Lab.d50(17, 0, 0).toLinearRgb();
    }
    int patch = (int) g[1] * 6 + (int) g[0];
    return ReferenceChart.Edition.AFTER_2014.patches().get(patch).toLinearRgb();
  }

  private double @Nullable [] invert(double x, double y) {
    PixelPoint g = inverse.apply(x, y);
    return Double.isFinite(g.x()) && Double.isFinite(g.y()) ? new double[] {g.x(), g.y()} : null;
  }

  /** Picture to chart, exact through the four corners of the grid. */
  private static @Nullable Homography inverse(@Nullable Homography chart) {
    if (chart == null) {
      return null;
    }
    List<PixelPoint> grid =
        List.of(
            new PixelPoint(0, 0), new PixelPoint(6, 0), new PixelPoint(6, 4), new PixelPoint(0, 4));
    return Homography.fit(grid.stream().map(chart::apply).toList(), grid);
  }

  private Lab groundColour(double x, double y) {
    double h = hash((int) (x * 3000), (int) (y * 3000));
    return switch (ground) {
      case MATTE_BLUE_GREY -> Lab.d50(48 + 0.6 * h, -3, -10);
      case BLACK_CLOTH -> Lab.d50(15 + 2 * h, 0, -1);
      case WHITE_PLATE_GREY_TABLE -> {
        boolean plate = Math.pow((x - 0.36) / 0.355, 4) + Math.pow((y - 0.36) / 0.355, 4) < 1;
        yield plate ? Lab.d50(88, 0, 2) : Lab.d50(62 + 1.5 * h, 1, 2);
      }
      case WIRE_RACK -> {
        double period = 0.022;
        double u = (x + 0.004 * Math.sin(y * 3)) / period;
        boolean wire = u - Math.floor(u) < 0.2 || Math.abs(y - 0.25) < 0.005;
        yield wire ? Lab.d50(72, 0, 1) : Lab.d50(38 + h, -1, -3);
      }
      case METAL_TRAY -> {
        boolean tray = x > 0.015 && x < 0.985 && y > 0.015 && y < 0.735;
        double sheen = 8 * Math.sin(5 * x + 3 * y) + 1.2 * Math.sin(400 * y);
        yield tray ? Lab.d50(66 + sheen, 0, 2) : Lab.d50(45, 1, 3);
      }
      case DARK_TRAY -> {
        boolean tray = x > 0.02 && x < 0.98 && y > 0.02 && y < 0.73;
        yield tray ? Lab.d50(27 + 4 * Math.sin(4 * x - 2 * y) + h, 1, 1) : Lab.d50(75, 0, 4);
      }
      case WOODEN_BOARD -> {
        double grain = Math.sin(160 * (y + 0.02 * Math.sin(7 * x)) + 3 * Math.sin(2 * x));
        double fine = Math.sin(900 * (y + 0.013 * Math.sin(9 * x)));
        yield Lab.d50(70 + 3 * grain + 1.5 * fine, 7 - grain, 22 - 1.5 * grain);
      }
    };
  }

  private double hash(int x, int y) {
    long z = seed + x * 0x9E3779B97F4A7C15L + y * 0xC2B2AE3D27D4EB4FL;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return ((z ^ (z >>> 31)) >>> 11) * 0x1.0p-52 - 1;
  }

  /** What JPEG makes of a picture. */
  static Picture jpeg(Picture picture, float quality) {
    BufferedImage image = toImage(picture);
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ImageWriteParam param = writer.getDefaultWriteParam();
    param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
    param.setCompressionQuality(quality);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (var out = ImageIO.createImageOutputStream(bytes)) {
      writer.setOutput(out);
      writer.write(null, new IIOImage(image, null, null), param);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      writer.dispose();
    }
    try {
      return ofImage(ImageIO.read(new ByteArrayInputStream(bytes.toByteArray())));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static BufferedImage toImage(Picture p) {
    BufferedImage image = new BufferedImage(p.width(), p.height(), BufferedImage.TYPE_INT_RGB);
    image.setRGB(0, 0, p.width(), p.height(), p.pixels(), 0, p.width());
    return image;
  }

  static Picture ofImage(BufferedImage image) {
    int w = image.getWidth();
    int h = image.getHeight();
    return new Picture(w, h, image.getRGB(0, 0, w, h, null, 0, w));
  }
}
