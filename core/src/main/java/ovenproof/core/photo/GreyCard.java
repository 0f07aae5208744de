package ovenproof.core.photo;

import java.util.List;
import ovenproof.core.colour.Lab;
import ovenproof.core.colour.Srgb;

/** Exposure and white balance from a neutral card. */
final class GreyCard {

  private GreyCard() {}

  static PhotoCalibration calibrate(
      Picture picture, Outline card, double cardLightness, String source) {
    if (!(cardLightness > 0) || !(cardLightness <= 100)) {
      throw new IllegalArgumentException("cardLightness must lie in 0…100, found " + cardLightness);
    }
    double[] sum = new double[3];
    long n = 0;
    PixelBox box = card.box();
    int bottom = Math.min(picture.height(), box.bottom());
    for (int y = Math.max(0, box.top()); y < bottom; y++) {
      double[] at = card.crossings(y + 0.5);
      for (int i = 0; i + 1 < at.length; i += 2) {
        int to = Math.min(picture.width(), (int) Math.ceil(at[i + 1] - 0.5));
        for (int x = Math.max(0, (int) Math.ceil(at[i] - 0.5)); x < to; x++) {
          n += add(picture.at(x, y), sum);
        }
      }
    }
    if (n == 0) {
      throw new IllegalArgumentException("card holds no pixel that is neither black nor clipped");
    }
    double wanted = Lab.d50(cardLightness, 0, 0).toLinearRgb().green();
    List<Double> gains = List.of(wanted * n / sum[0], wanted * n / sum[1], wanted * n / sum[2]);
    return new PhotoCalibration(
        PhotoCalibration.Kind.GREY_CARD,
        GainedColours.neutral(gains),
        new ColourTrust(source, 3, 3, 3, 0.10, 3, 0.5), // judgement: tone curve and hues remain
        null,
        null,
        null,
        "exposure and white balance by a grey card",
        false,
        List.of());
  }

  private static int add(int pixel, double[] sum) {
    int r = pixel >> 16 & 0xff;
    int g = pixel >> 8 & 0xff;
    int b = pixel & 0xff;
    int low = Math.min(r, Math.min(g, b));
    int high = Math.max(r, Math.max(g, b));
    if (low < 3 || high > 252) {
      return 0;
    }
    sum[0] += Srgb.linearOf(r);
    sum[1] += Srgb.linearOf(g);
    sum[2] += Srgb.linearOf(b);
    return 1;
  }
}
