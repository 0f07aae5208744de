package ovenproof.core.photo;

import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.colour.Lab;
import ovenproof.core.colour.LabTable;
import ovenproof.core.colour.Srgb;
import ovenproof.core.colour.White;
import ovenproof.core.colour.Xyz;

/**
 * Camera light to tristimulus values under D50, fitted to the patches of a chart.
 *
 * <p>Root polynomial: G. D. Finlayson, M. Mackiewicz, A. Hurlbert, "Color Correction Using
 * Root-Polynomial Regression", IEEE Transactions on Image Processing 24(5), 2015. Like the 3×3 it
 * scales with exposure, so that light falling off over the frame may be corrected after it.
 */
final class ColourCorrection {

  /** The two forms that are tried. */
  enum Form {
    MATRIX(3),
    ROOT_POLYNOMIAL(6);

    private final int terms;

    Form(int terms) {
      this.terms = terms;
    }
  }

  private static final double RIDGE = 1e-5;
  private static final double LAB_EPSILON = 216.0 / 24389.0;

  private final Form form;
  private final ToneCurve curve;
  private final double[][] rows;

  private ColourCorrection(Form form, ToneCurve curve, double[][] rows) {
    this.form = form;
    this.curve = curve;
    this.rows = rows;
  }

  Form form() {
    return form;
  }

  /**
   * Weighted least squares in light; the weights are the slope of CIELAB's cube root, so that an
   * error counts as it is seen.
   *
   * @param use which patches the fit may see
   * @return null if they do not determine it
   */
  static @Nullable ColourCorrection fit(
      Form form, ToneCurve curve, PatchSamples samples, boolean[] use, List<Lab> published) {
    int n = 0;
    for (boolean u : use) {
      n += u ? 1 : 0;
    }
    if (n < form.terms + 3) {
      return null;
    }
    double[][] features = new double[n][];
    double[][] wanted = new double[n][];
    for (int patch = 0, i = 0; patch < use.length; patch++) {
      if (use[patch]) {
        features[i] = features(form, curve, samples.patches().get(patch));
        wanted[i++] = ratios(published.get(patch));
      }
    }
    double[][] rows = new double[3][];
    for (int channel = 0; channel < 3; channel++) {
      double[] row = fitChannel(features, wanted, channel);
      if (row == null) {
        return null;
      }
      rows[channel] = row;
    }
    return new ColourCorrection(form, curve, rows);
  }

  private static double @Nullable [] fitChannel(
      double[][] features, double[][] wanted, int channel) {
    int n = features.length;
    double[][] design = new double[n][];
    double[] right = new double[n];
    for (int i = 0; i < n; i++) {
      double weight = slope(wanted[i][channel]);
      design[i] = features[i].clone();
      for (int k = 0; k < design[i].length; k++) {
        design[i][k] *= weight;
      }
      right[i] = weight * wanted[i][channel];
    }
    return LeastSquares.solve(design, right, RIDGE);
  }

  private static double slope(double ratio) {
    return ratio > LAB_EPSILON ? Math.pow(ratio, -2 / 3.0) / 3 : 24389.0 / 27 / 116;
  }

  private static double[] ratios(Lab lab) {
    Xyz xyz = lab.toXyz();
    Xyz white = White.D50.xyz();
    return new double[] {xyz.x() / white.x(), xyz.y() / white.y(), xyz.z() / white.z()};
  }

  private static double[] features(Form form, ToneCurve curve, PatchSamples.Patch patch) {
    double r = curve.light(0, patch.red());
    double g = curve.light(1, patch.green());
    double b = curve.light(2, patch.blue());
    return form == Form.MATRIX
        ? new double[] {r, g, b}
        : new double[] {r, g, b, Math.sqrt(r * g), Math.sqrt(g * b), Math.sqrt(r * b)};
  }

  /** The colour of a patch. */
  Lab correct(PatchSamples.Patch patch) {
    double[] f = features(form, curve, patch);
    Xyz white = White.D50.xyz();
    return new Xyz(
            Math.max(0, dot(rows[0], f)) * white.x(),
            Math.max(0, dot(rows[1], f)) * white.y(),
            Math.max(0, dot(rows[2], f)) * white.z())
        .toLab(White.D50);
  }

  private static double dot(double[] row, double[] features) {
    double sum = 0;
    for (int i = 0; i < row.length; i++) {
      sum += row[i] * features[i];
    }
    return sum;
  }

  /** The same for the pixels of a picture. */
  PixelColours colours() {
    float[][] light = new float[3][256];
    for (int channel = 0; channel < 3; channel++) {
      for (int value = 0; value < 256; value++) {
        light[channel][value] = (float) curve.light(channel, Srgb.linearOf(value));
      }
    }
    float[] m = new float[18];
    for (int channel = 0; channel < 3; channel++) {
      for (int k = 0; k < form.terms; k++) {
        m[6 * channel + k] = (float) rows[channel][k];
      }
    }
    return new CorrectedColours(form, light[0], light[1], light[2], m);
  }

  /** Pixel loop; without a light field the gain is 1. */
  static final class CorrectedColours implements PixelColours {

    private final Form form;
    private final float[] red;
    private final float[] green;
    private final float[] blue;
    private final float[] m;
    private final @Nullable LightField light;

    private CorrectedColours(Form form, float[] red, float[] green, float[] blue, float[] m) {
      this(form, red, green, blue, m, null);
    }

    private CorrectedColours(
        Form form,
        float[] red,
        float[] green,
        float[] blue,
        float[] m,
        @Nullable LightField light) {
      this.form = form;
      this.red = red;
      this.green = green;
      this.blue = blue;
      this.m = m;
      this.light = light;
    }

    @Override
    public PixelColours under(LightField field) {
      return new CorrectedColours(form, red, green, blue, m, field);
    }

    @Override
    public void row(Picture picture, int y, int fromX, int toX, float[] lab) {
      int[] pixels = picture.pixels();
      int at = y * picture.width();
      boolean matrix = form == Form.MATRIX;
      LightField.Row gains = light == null ? null : light.row(picture, y);
      for (int x = fromX, o = 0; x < toX; x++, o += 3) {
        int p = pixels[at + x];
        float r = red[p >> 16 & 0xff];
        float g = green[p >> 8 & 0xff];
        float b = blue[p & 0xff];
        float cx = m[0] * r + m[1] * g + m[2] * b;
        float cy = m[6] * r + m[7] * g + m[8] * b;
        float cz = m[12] * r + m[13] * g + m[14] * b;
        if (!matrix) {
          float rg = (float) Math.sqrt(r * g);
          float gb = (float) Math.sqrt(g * b);
          float rb = (float) Math.sqrt(r * b);
          cx += m[3] * rg + m[4] * gb + m[5] * rb;
          cy += m[9] * rg + m[10] * gb + m[11] * rb;
          cz += m[15] * rg + m[16] * gb + m[17] * rb;
        }
        if (gains != null) {
          float gain = gains.gain(x);
          cx *= gain;
          cy *= gain;
          cz *= gain;
        }
        LabTable.ofRatios(Math.max(0, cx), Math.max(0, cy), Math.max(0, cz), lab, o);
      }
    }
  }
}
