package ovenproof.core.photo;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import ovenproof.core.colour.Lab;
import ovenproof.core.colour.LinearRgb;
import ovenproof.core.colour.Srgb;

/**
 * An invented kitchen table seen by an invented telephone, with known truth: more of what spoils
 * real photographs than {@link Scene} has – perspective, crumbs, crusts, sheen, warm or dim or
 * uneven light, the photographer's shadow, and a camera that sharpens, saturates and compresses.
 * Lengths are millimetres on the table; everything follows from the seed.
 */
final class TableTop {

  /** What the food lies on. */
  enum Ground {
    GREY_MAT,
    DARK_SLATE,
    WHITE_WORKTOP,
    WHITE_PLATE_ON_WOOD,
    WHITE_PLATE_ON_GREY,
    RACK_OVER_DARK,
    RACK_OVER_STEEL,
    ALUMINIUM_TRAY,
    ENAMEL_TRAY,
    LIGHT_BOARD,
    WALNUT_BOARD,
    PARCHMENT,
    CHECKED_CLOTH,
    GRANITE
  }

  /** What was baked. */
  enum Food {
    TOAST,
    PALE_BREAD,
    DARK_TOAST,
    ROLL,
    COOKIE,
    CROQUETTE
  }

  /** What lights it. */
  enum Light {
    DAY,
    WARM,
    DIM,
    SIDE,
    BODY_SHADOW
  }

  /** How the pieces lie. */
  enum Layout {
    APART,
    TOUCHING
  }

  /** What is to be photographed. */
  record Plan(
      Ground ground,
      Food food,
      Light light,
      Layout layout,
      int count,
      boolean withChart,
      double tiltDegrees,
      double turnDegrees,
      int crumbs,
      long seed) {}

  private record Piece(double x, double y, double radius, double turn, Lab shade, long seed) {}

  private static final double FRAME = 420;
  private static final double PITCH = 17;

  final Plan plan;
  final int width;
  final int height;
  private final List<Piece> pieces;
  private final List<double[]> crumbs = new ArrayList<>();
  private final Homography view;
  private final Homography toTable;
  private final @Nullable Homography chart;
  private final @Nullable Homography toChart;
  private final double extent;

  TableTop(Plan plan, int width) {
    this.plan = plan;
    this.width = width;
    this.height = width * 3 / 4;
    SplittableRandom random = new SplittableRandom(plan.seed * 77 + 3);
    this.pieces = lay(random);
    this.extent = pieces.stream().mapToDouble(p -> reach(p)).max().orElse(60);
    this.view = view(random);
    this.toTable = inverse(view, -200, -150, 200, 150);
    this.chart = plan.withChart ? chart(random) : null;
    this.toChart = chart == null ? null : inverse(chart, 0, 0, 6, 4);
    for (int i = 0; i < plan.crumbs; i++) {
      crumbs.add(
          new double[] {
            random.nextDouble(-180, 60), random.nextDouble(-120, 120), random.nextDouble(0.6, 3.4)
          });
    }
  }

  private static double reach(Piece p) {
    return Math.max(Math.abs(p.x + 55), Math.abs(p.y)) + p.radius;
  }

  private List<Piece> lay(SplittableRandom r) {
    int columns = (int) Math.ceil(Math.sqrt(plan.count * 1.15));
    int rows = (plan.count + columns - 1) / columns;
    double room = plan.withChart ? 230 : 330;
    double cell = Math.min(Math.min(room / columns, 230.0 / rows), 105);
    double gap = plan.layout == Layout.TOUCHING ? 0 : 0.24;
    double radius = cell / 2 * (1 - gap);
    double middle = plan.withChart ? -55 : 0;
    Lab base = base(plan.food);
    double batch = r.nextDouble(-4, 4);
    List<Piece> out = new ArrayList<>();
    for (int i = 0; i < plan.count; i++) {
      double jitter = gap * cell * 0.3;
      double x =
          middle + (i % columns - (columns - 1) / 2.0) * cell + jitter * (r.nextDouble() - 0.5);
      double y = (i / columns - (rows - 1) / 2.0) * cell + jitter * (r.nextDouble() - 0.5);
      double l = base.lightness() + batch + r.nextDouble(-4, 4);
      double turn = gap == 0 ? 0 : r.nextDouble(-0.3, 0.3);
      Lab shade = Lab.d50(l, base.a() - 0.15 * (l - base.lightness()), base.b());
      out.add(new Piece(x, y, radius, turn, shade, r.nextLong(1000)));
    }
    return out;
  }

  private static Lab base(Food food) {
    return switch (food) {
      case TOAST -> Lab.d50(63, 9, 33);
      case PALE_BREAD -> Lab.d50(82, 1.5, 17);
      case DARK_TOAST -> Lab.d50(34, 10, 17);
      case ROLL -> Lab.d50(54, 15, 36);
      case COOKIE -> Lab.d50(58, 10, 30);
      case CROQUETTE -> Lab.d50(50, 15, 34);
    };
  }

  /** A hand-held camera: tilted about the horizontal, turned about the axis. */
  private Homography view(SplittableRandom r) {
    double tilt = Math.toRadians(plan.tiltDegrees);
    double turn = Math.toRadians(plan.turnDegrees);
    double far = 520;
    double focal = width * far / FRAME;
    double shiftX = r.nextDouble(-6, 6);
    double shiftY = r.nextDouble(-6, 6);
    List<PixelPoint> from = new ArrayList<>();
    List<PixelPoint> to = new ArrayList<>();
    for (double[] p : new double[][] {{-150, -110}, {150, -110}, {150, 110}, {-150, 110}, {0, 0}}) {
      double x = Math.cos(turn) * (p[0] + shiftX) - Math.sin(turn) * (p[1] + shiftY);
      double y = Math.sin(turn) * (p[0] + shiftX) + Math.cos(turn) * (p[1] + shiftY);
      double depth = far - Math.sin(tilt) * y;
      from.add(new PixelPoint(p[0], p[1]));
      to.add(
          new PixelPoint(
              width / 2.0 + focal * x / depth, height / 2.0 + focal * Math.cos(tilt) * y / depth));
    }
    return Homography.fit(from, to);
  }

  private Homography chart(SplittableRandom r) {
    double angle = Math.toRadians(90 + r.nextDouble(-20, 20) + (r.nextBoolean() ? 180 : 0));
    double x = 138;
    double y = r.nextDouble(-45, 45);
    double c = Math.cos(angle) * PITCH;
    double s = Math.sin(angle) * PITCH;
    return Homography.affine(c, -s, x - 3 * c + 2 * s, s, c, y - 3 * s - 2 * c);
  }

  private static Homography inverse(Homography h, double l, double t, double r, double b) {
    List<PixelPoint> corners =
        List.of(
            new PixelPoint(l, t), new PixelPoint(r, t), new PixelPoint(r, b), new PixelPoint(l, b));
    return Homography.fit(corners.stream().map(h::apply).toList(), corners);
  }

  /** Edge of each piece in pixels. */
  List<Outline> outlines() {
    return pieces.stream().map(this::edge).toList();
  }

  private Outline edge(Piece piece) {
    List<PixelPoint> points = new ArrayList<>();
    for (int i = 0; i < 120; i++) {
      double angle = i * Math.PI / 60;
      double low = 0;
      double high = 2.5 * piece.radius;
      for (int k = 0; k < 24; k++) {
        double mid = (low + high) / 2;
        boolean in =
            far(piece, piece.x + mid * Math.cos(angle), piece.y + mid * Math.sin(angle)) < 1;
        low = in ? mid : low;
        high = in ? high : mid;
      }
      points.add(view.apply(piece.x + low * Math.cos(angle), piece.y + low * Math.sin(angle)));
    }
    return new Outline(points);
  }

  /** Corners of the chart's grid in pixels, from dark skin round by bluish green. */
  List<PixelPoint> chartCorners() {
    List<PixelPoint> out = new ArrayList<>();
    for (double[] g : new double[][] {{0, 0}, {6, 0}, {6, 4}, {0, 4}}) {
      out.add(view.apply(chart.apply(g[0], g[1])));
    }
    return out;
  }

  /** Mean colour of the food within 0.8 of the way to the edge, as it is, not as it is lit. */
  List<Lab> shades() {
    return pieces.stream().map(this::shade).toList();
  }

  private Lab shade(Piece piece) {
    double l = 0;
    double a = 0;
    double b = 0;
    int n = 0;
    for (double y = -1; y <= 1; y += 0.02) {
      for (double x = -1; x <= 1; x += 0.02) {
        double px = piece.x + x * piece.radius;
        double py = piece.y + y * piece.radius;
        double rho = far(piece, px, py);
        if (rho < 0.95) {
          Lab here = crust(piece, px, py, rho);
          l += here.lightness();
          a += here.a();
          b += here.b();
          n++;
        }
      }
    }
    return Lab.d50(l / n, a / n, b / n);
  }

  /** 0 in the middle of a piece, 1 at its edge. */
  private double far(Piece piece, double px, double py) {
    double dx = (px - piece.x) / piece.radius;
    double dy = (py - piece.y) / piece.radius;
    if (Math.abs(dx) > 1.5 || Math.abs(dy) > 1.5) {
      return 9;
    }
    double c = Math.cos(piece.turn);
    double s = Math.sin(piece.turn);
    double u = c * dx + s * dy;
    double v = -s * dx + c * dy;
    double wobble = 1 + 0.025 * Math.sin(3 * Math.atan2(v, u) + piece.seed % 7);
    return switch (plan.food) {
      case TOAST, PALE_BREAD, DARK_TOAST -> slice(u, v) / wobble;
      case ROLL, COOKIE -> Math.hypot(u, v) / wobble;
      case CROQUETTE ->
          Math.pow(Math.pow(Math.abs(u), 3) + Math.pow(Math.abs(v) / 0.5, 3), 1 / 3.0);
    };
  }

  /** A slice of a tin loaf: square below, two lobes above. */
  private static double slice(double u, double v) {
    double body =
        Math.pow(Math.pow(Math.abs(u) / 0.92, 6) + Math.pow(Math.abs(v) / 0.97, 6), 1 / 6.0);
    double top = Math.hypot(Math.abs(u) - 0.5, v + 0.55) / 0.48;
    return Math.min(body, Math.max(top, 0.9));
  }

  private Lab crust(Piece piece, double px, double py, double rho) {
    double spots =
        field(px / 9, py / 9, piece.seed) * 2.6 + field(px / 3.1, py / 3.1, piece.seed + 5) * 1.8;
    double l = piece.shade.lightness() + spots;
    double a = piece.shade.a();
    double b = piece.shade.b();
    switch (plan.food) {
      case TOAST, PALE_BREAD, DARK_TOAST -> {
        double rim = Math.max(0, Math.min(1, (rho - 0.9) / 0.05));
        l += rim * (42 - l) * 0.8 - 4 * Math.max(0, rho - 0.6);
        a += rim * (13 - a) * 0.8;
        b += rim * (28 - b) * 0.6;
      }
      case ROLL -> {
        l += 9 * (1 - rho * rho) - 5;
        double shine =
            Math.hypot(px - piece.x + 0.3 * piece.radius, py - piece.y + 0.3 * piece.radius);
        double gloss = Math.exp(-shine * shine / (0.02 * piece.radius * piece.radius));
        l += 14 * gloss;
        b -= 10 * gloss;
      }
      case COOKIE -> {
        double chip = field(px / 4.5, py / 4.5, piece.seed + 9);
        if (chip > 0.55 && rho < 0.9) {
          return Lab.d50(24 + 2 * spots, 6, 6);
        }
        l -= 6 * Math.max(0, rho - 0.7) / 0.3;
      }
      case CROQUETTE -> l += 5 * (1 - rho) + 2 * field(px, py, piece.seed);
    }
    return Lab.d50(Math.max(6, Math.min(94, l)), a, b);
  }

  /** The photograph. */
  Picture shoot() {
    SplittableRandom r = new SplittableRandom(plan.seed * 13 + 1);
    double[] gain = gains(r);
    float[][] light = new float[3][width * height];
    IntStream.range(0, height).parallel().forEach(y -> row(y, light, gain));
    expose(light, r.nextDouble(0.72, 0.86));
    for (float[] channel : light) {
      blur(channel, 1);
    }
    noise(light, plan.light == Light.DIM ? 0.016 : 0.006);
    int[] pixels = develop(light, r.nextDouble(0.1, 0.5), r.nextDouble(1, 1.18));
    Picture raw = new Picture(width, height, pixels);
    return Scene.jpeg(raw, (float) r.nextDouble(0.72, 0.93));
  }

  private double[] gains(SplittableRandom r) {
    double warm = plan.light == Light.WARM ? r.nextDouble(0.25, 0.45) : r.nextDouble(-0.06, 0.06);
    return new double[] {1 + 0.5 * warm, 1, 1 - warm};
  }

  private void row(int y, float[][] light, double[] gain) {
    for (int x = 0; x < width; x++) {
      double red = 0;
      double green = 0;
      double blue = 0;
      for (int k = 0; k < 4; k++) {
        PixelPoint p = toTable.apply(x + 0.25 + 0.5 * (k % 2), y + 0.25 + 0.5 * (k / 2));
        LinearRgb here = surface(p.x(), p.y());
        double lit = lit(p.x(), p.y()) / 4;
        red += lit * here.red();
        green += lit * here.green();
        blue += lit * here.blue();
      }
      double u = (double) x / width - 0.5;
      double v = (double) y / width - 0.375;
      double vignette = 1 - 0.35 * (u * u + v * v) / 0.39;
      int i = y * width + x;
      // Channels of a sensor overlap: some of each colour leaks into its neighbours.
      light[0][i] = (float) (vignette * gain[0] * (0.93 * red + 0.07 * green));
      light[1][i] = (float) (vignette * gain[1] * (0.9 * green + 0.05 * red + 0.05 * blue));
      light[2][i] = (float) (vignette * gain[2] * (0.92 * blue + 0.08 * green));
    }
  }

  private LinearRgb surface(double x, double y) {
    for (Piece piece : pieces) {
      double rho = far(piece, x, y);
      if (rho < 1) {
        return crust(piece, x, y, rho).toLinearRgb();
      }
    }
    LinearRgb patch = patch(x, y);
    if (patch != null) {
      return patch;
    }
    for (double[] crumb : crumbs) {
      if (Math.hypot(x - crumb[0], 1.3 * (y - crumb[1])) < crumb[2]) {
        return Lab.d50(52 + 4 * crumb[2], 10, 30).toLinearRgb();
      }
    }
    return ground(x, y).toLinearRgb();
  }

  private @Nullable LinearRgb patch(double x, double y) {
    if (toChart == null) {
      return null;
    }
    PixelPoint g = toChart.apply(x, y);
    if (g.x() < -0.3 || g.x() > 6.3 || g.y() < -0.3 || g.y() > 4.45) {
      return null;
    }
    double u = g.x() - Math.floor(g.x());
    double v = g.y() - Math.floor(g.y());
    boolean grid = g.x() >= 0 && g.x() < 6 && g.y() >= 0 && g.y() < 4;
    if (!grid || Math.abs(u - 0.5) > 0.43 || Math.abs(v - 0.5) > 0.43) {
      // Lettering below the patches.
      boolean ink =
          g.y() > 4.15 && g.y() < 4.32 && g.x() > 1 && g.x() < 4 && field(3 * g.x(), 9, 4) > 0;
      return Lab.d50(ink ? 80 : 18, 0, 0).toLinearRgb();
    }
    int patch = (int) g.y() * 6 + (int) g.x();
    return ReferenceChart.Edition.AFTER_2014.patches().get(patch).toLinearRgb();
  }

  private double lit(double x, double y) {
    double lit = contact(x, y);
    switch (plan.light) {
      case DIM -> lit *= 0.9 + 0.0007 * x;
      case SIDE -> lit *= Math.exp(-0.0022 * (x + 0.5 * y));
      case BODY_SHADOW -> {
        double edge = (y - 20 - 0.35 * x) / 40;
        lit *= 1 - 0.42 / (1 + Math.exp(-4 * edge));
      }
      default -> lit *= 1 + 0.0004 * x - 0.0003 * y;
    }
    return lit;
  }

  /** The shadow of each piece on what lies beside it, longer in light from the side. */
  private double contact(double x, double y) {
    double reach = plan.light == Light.SIDE ? 9 : 4;
    double factor = 1;
    for (Piece piece : pieces) {
      if (far(piece, x, y) < 1) {
        return 1;
      }
      double rho = far(piece, x - reach, y - 0.6 * reach);
      if (rho < 1.12) {
        factor = Math.min(factor, 0.5 + 0.5 * Math.max(0, (rho - 0.9) / 0.22));
      }
    }
    return factor;
  }

  private Lab ground(double x, double y) {
    double fine = field(x / 0.9, y / 0.9, 1);
    double coarse = field(x / 40, y / 40, 2);
    return switch (plan.ground) {
      case GREY_MAT -> Lab.d50(56 + fine, -1, -5);
      case DARK_SLATE -> Lab.d50(24 + 2 * fine + 2 * coarse, 0, -2);
      case WHITE_WORKTOP -> Lab.d50(91 + coarse, 0, 1.5);
      case WHITE_PLATE_ON_WOOD, WHITE_PLATE_ON_GREY -> plate(x, y, fine);
      case RACK_OVER_DARK, RACK_OVER_STEEL -> rack(x, y, fine, coarse);
      case ALUMINIUM_TRAY ->
          tray(x, y, Lab.d50(68 + 9 * coarse + 2 * field(x / 25, y * 1.5, 3), 0, 1));
      case ENAMEL_TRAY ->
          tray(x, y, Lab.d50(18 + 9 * Math.max(0, coarse) + fine, 0.5, stain(x, y)));
      case LIGHT_BOARD -> wood(x, y, 73, 7, 24);
      case WALNUT_BOARD -> wood(x, y, 39, 9, 15);
      case PARCHMENT -> tray(x, y, Lab.d50(84 + 2.5 * field(x / 30, y / 30, 6), 1.5, 9 + fine));
      case CHECKED_CLOTH -> cloth(x, y, fine);
      case GRANITE -> Lab.d50(45 + 14 * field(x / 1.7, y / 1.7, 7) + 5 * fine, 1, 3);
    };
  }

  private double stain(double x, double y) {
    return 2 + 5 * Math.max(0, field(x / 22, y / 22, 11) - 0.3);
  }

  private Lab plate(double x, double y, double fine) {
    double middle = plan.withChart ? -55 : 0;
    double radius = 1.32 * Math.max(50, extent - (plan.withChart ? 0 : 55));
    double rho = Math.hypot(x - middle, y) / radius;
    if (rho < 1) {
      double ring = rho > 0.74 && rho < 0.78 ? -7 : rho > 0.97 ? -10 : 0;
      return Lab.d50(90 + ring, 0, 2);
    }
    return plan.ground == Ground.WHITE_PLATE_ON_WOOD
        ? wood(x, y, 58, 12, 28)
        : Lab.d50(60 + fine, 1, 1);
  }

  private Lab rack(double x, double y, double fine, double coarse) {
    double u = x / 11 - Math.floor(x / 11);
    boolean wire = u < 0.24 || Math.abs(y - 60) < 2 || Math.abs(y + 75) < 2;
    if (wire) {
      double round = Math.sin(Math.PI * Math.min(1, u / 0.24));
      return Lab.d50(45 + 40 * round, 0, 0.5);
    }
    return plan.ground == Ground.RACK_OVER_DARK
        ? Lab.d50(28 + fine, 1, 2)
        : Lab.d50(62 + 8 * coarse + 2 * field(x / 20, y * 2, 8), 0, 0);
  }

  private Lab tray(double x, double y, Lab inside) {
    double middle = plan.withChart ? -55 : 0;
    double u = Math.abs(x - middle) / (plan.withChart ? 145 : 185);
    double v = Math.abs(y) / 138;
    double edge = Math.max(u, v);
    if (edge < 1) {
      return inside;
    }
    return edge < 1.045 ? Lab.d50(inside.lightness() * 0.7 + 20, 0, 2) : Lab.d50(48, 2, 3);
  }

  private Lab wood(double x, double y, double l, double a, double b) {
    double ring = Math.sin((y + 5 * field(x / 70, y / 25, 12)) / 2.2);
    double grain = 0.7 * ring + field(x / 14, y / 0.8, 13);
    return Lab.d50(l + 2.6 * grain, a - 0.5 * grain, b - 0.8 * grain);
  }

  private static Lab cloth(double x, double y, double fine) {
    boolean across = Math.floorMod((int) Math.floor(x / 16), 2) == 0;
    boolean down = Math.floorMod((int) Math.floor(y / 16), 2) == 0;
    double blue = (across ? 0.5 : 0) + (down ? 0.5 : 0);
    return Lab.d50(90 - 50 * blue + 2 * fine, 4 * blue, 2 - 34 * blue);
  }

  /** The camera's automatic exposure: the brightest of a thousand reaches a level. */
  private static void expose(float[][] light, double level) {
    float[] green = light[1].clone();
    java.util.Arrays.sort(green);
    double factor = level / green[(int) (0.999 * green.length)];
    for (float[] channel : light) {
      for (int i = 0; i < channel.length; i++) {
        channel[i] *= (float) factor;
      }
    }
  }

  private void noise(float[][] light, double sd) {
    for (int c = 0; c < 3; c++) {
      SplittableRandom r = new SplittableRandom(plan.seed * 5 + c);
      float[] grain = new float[width * height];
      for (int i = 0; i < grain.length; i++) {
        grain[i] = (float) r.nextGaussian();
      }
      blur(grain, 1);
      for (int i = 0; i < grain.length; i++) {
        light[c][i] += (float) (3 * sd * Math.sqrt(0.02 + Math.max(0, light[c][i])) * grain[i]);
      }
    }
  }

  /** Tone curve with a soft shoulder, more colour, and sharpening by an unsharp mask. */
  private int[] develop(float[][] light, double contrast, double saturation) {
    int n = width * height;
    float[][] out = new float[3][n];
    for (int i = 0; i < n; i++) {
      double y = 0.2126 * light[0][i] + 0.7152 * light[1][i] + 0.0722 * light[2][i];
      for (int c = 0; c < 3; c++) {
        double v = Math.max(0, y + saturation * (light[c][i] - y));
        double soft = v < 0.8 ? v : 0.8 + 0.2 * (1 - Math.exp(-(v - 0.8) / 0.2));
        double e = Srgb.encode(soft);
        out[c][i] = (float) (e + contrast * (e * e * (3 - 2 * e) - e));
      }
    }
    int[] pixels = new int[n];
    for (int c = 0; c < 3; c++) {
      float[] soft = out[c].clone();
      blur(soft, 2);
      for (int i = 0; i < n; i++) {
        double sharp = out[c][i] + 0.7 * (out[c][i] - soft[i]);
        pixels[i] |= (int) Math.max(0, Math.min(255, Math.round(255 * sharp))) << 16 - 8 * c;
      }
    }
    return pixels;
  }

  private void blur(float[] plane, int radius) {
    float[] line = new float[Math.max(width, height)];
    for (int y = 0; y < height; y++) {
      blur(plane, y * width, 1, width, radius, line);
    }
    for (int x = 0; x < width; x++) {
      blur(plane, x, width, height, radius, line);
    }
  }

  private static void blur(float[] plane, int start, int step, int n, int radius, float[] line) {
    for (int i = 0; i < n; i++) {
      float sum = 0;
      for (int k = -radius; k <= radius; k++) {
        sum += plane[start + step * Math.max(0, Math.min(n - 1, i + k))];
      }
      line[i] = sum / (2 * radius + 1);
    }
    for (int i = 0; i < n; i++) {
      plane[start + step * i] = line[i];
    }
  }

  /** Smooth noise between −1 and 1 with a period of about one. */
  private static double field(double x, double y, long seed) {
    long ix = (long) Math.floor(x);
    long iy = (long) Math.floor(y);
    double u = x - ix;
    double v = y - iy;
    u = u * u * (3 - 2 * u);
    v = v * v * (3 - 2 * v);
    double top = hash(ix, iy, seed) * (1 - u) + hash(ix + 1, iy, seed) * u;
    double bottom = hash(ix, iy + 1, seed) * (1 - u) + hash(ix + 1, iy + 1, seed) * u;
    return top * (1 - v) + bottom * v;
  }

  private static double hash(long x, long y, long seed) {
    long z = seed * 0x2545F4914F6CDD1DL + x * 0x9E3779B97F4A7C15L + y * 0xC2B2AE3D27D4EB4FL;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return ((z ^ (z >>> 31)) >>> 11) * 0x1.0p-52 - 1;
  }
}
