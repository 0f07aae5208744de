package ovenproof.cli;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import ovenproof.core.photo.Picture;

/** The code of a label as it lies in a frame. */
final class PrintedLabel {
  private PrintedLabel() {}

  static Picture of(String text, int side) {
    try {
      BitMatrix code = new QRCodeWriter().encode(text, BarcodeFormat.QR_CODE, side, side);
      int[] pixels = new int[side * side];
      for (int i = 0; i < pixels.length; i++) {
        pixels[i] = code.get(i % side, i / side) ? 0x101010 : 0xf0f0f0;
      }
      return new Picture(side, side, pixels);
    } catch (WriterException e) {
      throw new IllegalArgumentException(text, e);
    }
  }
}
