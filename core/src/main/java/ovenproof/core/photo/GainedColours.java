package ovenproof.core.photo;

import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.colour.LabTable;
import ovenproof.core.colour.LinearRgb;
import ovenproof.core.colour.Matrix3;
import ovenproof.core.colour.Srgb;
import ovenproof.core.colour.White;

/** Pixels read as sRGB, each channel multiplied by a gain: as they are, or by a grey card. */
final class GainedColours implements PixelColours {

  private static final float[] LIGHT = new float[256];

  static {
    for (int i = 0; i < LIGHT.length; i++) {
      LIGHT[i] = (float) Srgb.linearOf(i);
    }
  }

  private final LabTable table;
  private final @Nullable LightField light;

  private GainedColours(LabTable table, @Nullable LightField light) {
    this.table = table;
    this.light = light;
  }

  /** Gains of the red, green and blue light. */
  static GainedColours neutral(List<Double> gains) {
    Matrix3 m =
        LinearRgb.toXyzMatrix(White.D50)
            .times(Matrix3.diagonal(gains.get(0), gains.get(1), gains.get(2)));
    return new GainedColours(LabTable.ofXyz(m, White.D50), null);
  }

  @Override
  public PixelColours under(LightField field) {
    return new GainedColours(table, field);
  }

  @Override
  public void row(Picture picture, int y, int fromX, int toX, float[] lab) {
    int at = y * picture.width();
    int[] pixels = picture.pixels();
    if (light == null) {
      table.convert(pixels, at + fromX, at + toX, lab);
      return;
    }
    LightField.Row gains = light.row(picture, y);
    for (int x = fromX, o = 0; x < toX; x++, o += 3) {
      int p = pixels[at + x];
      float gain = gains.gain(x);
      table.convert(
          gain * LIGHT[p >> 16 & 0xff],
          gain * LIGHT[p >> 8 & 0xff],
          gain * LIGHT[p & 0xff],
          lab,
          o);
    }
  }
}
