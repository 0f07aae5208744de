package ovenproof.photopage;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import org.jspecify.annotations.Nullable;
import ovenproof.core.colour.Lab;
import ovenproof.core.photo.CalibratedPicture;
import ovenproof.core.photo.PhotoAnalysis;
import ovenproof.core.photo.Picture;
import ovenproof.core.photo.ShadeMap;
import ovenproof.measure.PhotoReading;

/** Photographs as pages show them: smaller, without metadata, alike when they are calibrated. */
final class Drawing {
  private static final float QUALITY = 0.85f;

  /** The table on which food is always shown. */
  private static final int TABLE = 0x5f7680;

  /** Where the scale of differences ends, in L*. */
  static final double SCALE_END = 12;

  /** Paler to darker, in equal steps from +12 to −12 L*. */
  private static final int[] DIFFERENCE = {
    0x2f6fae, 0x6ea0cf, 0xaecbe6, 0xeef0ee, 0xe3c39f, 0xb98654, 0x7d4f26
  };

  private Drawing() {}

  static byte[] jpeg(Picture picture, PhotoReading reading, Look look, int side) {
    if (look == Look.PIECES) {
      return encoded(PieceStrip.of(picture, reading, side));
    }
    int factor = Math.max(1, (int) Math.ceil(picture.longSide() / (double) side));
    factor = Math.min(factor, Math.min(picture.width(), picture.height()));
    Picture small = picture.reduced(factor);
    Picture drawn =
        switch (look) {
          case ORIGINAL -> small;
          case CALIBRATED ->
              CalibratedPicture.of(small, reading.analysis().calibration().colours());
          case MAP -> map(small, reading, factor);
          case PIECES -> throw new IllegalStateException("drawn above");
        };
    return encoded(drawn);
  }

  private static Picture map(Picture small, PhotoReading reading, int factor) {
    int[] pixels = new int[small.pixels().length];
    Arrays.fill(pixels, TABLE);
    double wanted = wanted(reading);
    for (PhotoAnalysis.Piece piece : reading.analysis().pieces()) {
      ShadeMap map = piece.shade().map();
      for (int row = 0; row < map.rows(); row++) {
        for (int column = 0; column < map.columns(); column++) {
          if (map.isInside(column, row)) {
            int colour = colour(map.lightness(column, row) - wanted);
            fill(pixels, small, map, column, row, factor, colour);
          }
        }
      }
      if (reading.settings().target() != null) {
        double beyond = reading.settings().beyondLightness();
        new ShadeContour(map, wanted, beyond).draw(pixels, small.width(), small.height(), factor);
      }
    }
    return new Picture(small.width(), small.height(), pixels);
  }

  private static void fill(
      int[] pixels, Picture small, ShadeMap map, int column, int row, int factor, int colour) {
    double half = map.cellPixels() / 2;
    var at = map.place(column, row);
    int left = (int) Math.max(0, Math.floor((at.x() - half) / factor));
    int top = (int) Math.max(0, Math.floor((at.y() - half) / factor));
    int right = (int) Math.min(small.width(), Math.ceil((at.x() + half) / factor));
    int bottom = (int) Math.min(small.height(), Math.ceil((at.y() + half) / factor));
    for (int y = top; y < bottom; y++) {
      Arrays.fill(pixels, y * small.width() + left, y * small.width() + right, colour);
    }
  }

  /** What the map's middle colour stands for: the target, or the mean of all pieces. */
  static double wanted(PhotoReading reading) {
    @Nullable Lab target = reading.settings().target();
    return target != null
        ? target.lightness()
        : reading.analysis().pieces().stream()
            .map(p -> java.util.Optional.ofNullable(p.shade().mean()))
            .flatMap(java.util.Optional::stream)
            .mapToDouble(Lab::lightness)
            .average()
            .orElse(60);
  }

  private static int colour(double difference) {
    double held = Math.max(-SCALE_END, Math.min(SCALE_END, difference));
    double at = (SCALE_END - held) / (2 * SCALE_END) * (DIFFERENCE.length - 1);
    int below = (int) Math.min(DIFFERENCE.length - 2, Math.floor(at));
    double share = at - below;
    int colour = 0;
    for (int shift = 16; shift >= 0; shift -= 8) {
      int low = DIFFERENCE[below] >> shift & 0xff;
      int high = DIFFERENCE[below + 1] >> shift & 0xff;
      colour |= (int) Math.round(low + share * (high - low)) << shift;
    }
    return colour;
  }

  private static byte[] encoded(Picture picture) {
    BufferedImage image =
        new BufferedImage(picture.width(), picture.height(), BufferedImage.TYPE_INT_RGB);
    image.setRGB(0, 0, picture.width(), picture.height(), picture.pixels(), 0, picture.width());
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream out = new ByteArrayOutputStream(200_000);
    try (ImageOutputStream stream = ImageIO.createImageOutputStream(out)) {
      ImageWriteParam param = writer.getDefaultWriteParam();
      param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      param.setCompressionQuality(QUALITY);
      writer.setOutput(stream);
      writer.write(null, new IIOImage(image, null, null), param);
    } catch (IOException impossible) {
      throw new IllegalStateException("writing to memory cannot fail", impossible);
    } finally {
      writer.dispose();
    }
    return out.toByteArray();
  }
}
