package ovenproof.evidence.photo;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.NotFoundException;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.Result;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.multi.qrcode.QRCodeMultiReader;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import ovenproof.core.photo.Picture;

/** Printed QR labels in a picture: which run, batch, piece or lot it shows. */
public final class RunLabels {

  private static final int[] LONG_SIDES = {1600, 3200};

  private RunLabels() {}

  /** The texts of all labels, each once, in no order; empty when there is none that can be read. */
  public static List<String> read(Picture picture) {
    int before = 0;
    for (int longSide : LONG_SIDES) {
      int factor = Math.max(1, (int) Math.ceil(picture.longSide() / (double) longSide));
      if (factor == before || factor > Math.min(picture.width(), picture.height())) {
        continue;
      }
      before = factor;
      List<String> found = decode(picture.reduced(factor));
      if (!found.isEmpty()) {
        return found;
      }
    }
    return List.of();
  }

  private static List<String> decode(Picture picture) {
    var source = new RGBLuminanceSource(picture.width(), picture.height(), picture.pixels());
    try {
      Result[] results =
          new QRCodeMultiReader()
              .decodeMultiple(
                  new BinaryBitmap(new HybridBinarizer(source)),
                  Map.of(DecodeHintType.TRY_HARDER, Boolean.TRUE));
      return Stream.of(results).map(Result::getText).distinct().toList();
    } catch (NotFoundException none) {
      return List.of();
    }
  }
}
