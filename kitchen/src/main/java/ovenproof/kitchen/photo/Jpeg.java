package ovenproof.kitchen.photo;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** A shot as a phone would save it: JPEG with the time in its EXIF block. */
public final class Jpeg {

  private static final float QUALITY = 0.87f;

  private Jpeg() {}

  /**
   * @param taken local time, as phones write it
   */
  public static byte[] of(Shot shot, LocalDateTime taken) {
    BufferedImage image =
        new BufferedImage(shot.width(), shot.height(), BufferedImage.TYPE_INT_RGB);
    image.setRGB(0, 0, shot.width(), shot.height(), shot.rgb(), 0, shot.width());
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    try (ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 18);
        MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      ImageWriteParam param = writer.getDefaultWriteParam();
      param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      param.setCompressionQuality(QUALITY);
      writer.setOutput(out);
      writer.write(null, new IIOImage(image, null, null), param);
      out.flush();
      return withExif(bytes.toByteArray(), taken);
    } catch (IOException e) {
      throw new IllegalStateException("writing to memory failed", e);
    } finally {
      writer.dispose();
    }
  }

  private static byte[] withExif(byte[] jpeg, LocalDateTime taken) {
    byte[] exif = exif(taken);
    ByteBuffer out = ByteBuffer.allocate(jpeg.length + exif.length + 4);
    out.put(jpeg, 0, 2).putShort((short) 0xffe1).putShort((short) (exif.length + 2)).put(exif);
    return out.put(jpeg, 2, jpeg.length - 2).array();
  }

  /** EXIF 2.3, big endian: orientation, date and time, original date and time. */
  private static byte[] exif(LocalDateTime taken) {
    byte[] time =
        (taken.format(DateTimeFormatter.ofPattern("yyyy:MM:dd HH:mm:ss")) + "\0")
            .getBytes(StandardCharsets.US_ASCII);
    int first = 8;
    int second = first + 2 + 3 * 12 + 4;
    int texts = second + 2 + 12 + 4;
    ByteBuffer tiff = ByteBuffer.allocate(6 + texts + 2 * time.length);
    tiff.put("Exif\0\0".getBytes(StandardCharsets.US_ASCII));
    tiff.put("MM".getBytes(StandardCharsets.US_ASCII)).putShort((short) 42).putInt(first);
    tiff.putShort((short) 3);
    entry(tiff, 0x0112, 3, 1, 1 << 16);
    entry(tiff, 0x0132, 2, time.length, texts);
    entry(tiff, 0x8769, 4, 1, second);
    tiff.putInt(0);
    tiff.putShort((short) 1);
    entry(tiff, 0x9003, 2, time.length, texts + time.length);
    tiff.putInt(0).put(time).put(time);
    return tiff.array();
  }

  private static void entry(ByteBuffer tiff, int tag, int type, int count, int value) {
    tiff.putShort((short) tag).putShort((short) type).putInt(count).putInt(value);
  }
}
