package ovenproof.prep;

import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;

/** A QR code (ISO/IEC 18004) as an SVG that prints sharply at any size. */
final class QrPicture {
  /** Modules of white around the code, as the standard wants. */
  private static final int QUIET = 4;

  private QrPicture() {}

  /**
   * The code of a text; a quarter of it may be covered or smeared. It is decoration: what it says
   * stands beside it in letters.
   *
   * @param text at most some hundred characters
   */
  static String svg(String text) {
    ByteMatrix modules;
    try {
      modules = Encoder.encode(text, ErrorCorrectionLevel.Q).getMatrix();
    } catch (WriterException tooLong) {
      throw new IllegalArgumentException("text is too long for a code: " + text.length(), tooLong);
    }
    int side = modules.getWidth() + 2 * QUIET;
    StringBuilder path = new StringBuilder();
    for (int y = 0; y < modules.getHeight(); y++) {
      row(modules, y, path);
    }
    return "<svg class=\"qr\" viewBox=\"0 0 "
        + side
        + " "
        + side
        + "\" aria-hidden=\"true\"><path fill=\"#fff\" d=\"M0 0h"
        + side
        + "v"
        + side
        + "h-"
        + side
        + "z\"/><path fill=\"#000\" d=\""
        + path
        + "\"/></svg>";
  }

  /** Dark modules beside each other are one bar: a third of the text, and no seams in print. */
  private static void row(ByteMatrix modules, int y, StringBuilder path) {
    for (int x = 0; x < modules.getWidth(); x++) {
      int first = x;
      while (x < modules.getWidth() && modules.get(x, y) == 1) {
        x++;
      }
      if (x > first) {
        path.append('M').append(first + QUIET).append(' ').append(y + QUIET);
        path.append('h').append(x - first).append("v1H").append(first + QUIET).append('z');
      }
    }
  }
}
