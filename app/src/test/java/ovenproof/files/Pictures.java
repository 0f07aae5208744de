package ovenproof.files;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;

/** Small pictures, and headers of pictures that nobody would want to decode. */
final class Pictures {

  private Pictures() {}

  static byte[] jpeg(int width, int height) {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, "jpeg", bytes);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return bytes.toByteArray();
  }

  /** Signature, IHDR, an empty IDAT and IEND (PNG specification, third edition, 5.2 and 11.2). */
  static byte[] pngHeader(int width, int height) {
    ByteBuffer header = ByteBuffer.allocate(13).putInt(width).putInt(height);
    header.put((byte) 8).put((byte) 2).put((byte) 0).put((byte) 0).put((byte) 0);
    ByteBuffer png = ByteBuffer.allocate(8 + 25 + 12 + 12);
    png.put(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'});
    chunk(png, "IHDR", header.array());
    chunk(png, "IDAT", new byte[0]);
    chunk(png, "IEND", new byte[0]);
    return png.array();
  }

  private static void chunk(ByteBuffer png, String type, byte[] data) {
    CRC32 crc = new CRC32();
    crc.update(type.getBytes(StandardCharsets.US_ASCII));
    crc.update(data);
    png.putInt(data.length).put(type.getBytes(StandardCharsets.US_ASCII)).put(data);
    png.putInt((int) crc.getValue());
  }

  /** The file type box of a HEIC picture (ISO/IEC 23008-12). */
  static byte[] heicHeader() {
    byte[] box = new byte[64];
    ByteBuffer.wrap(box)
        .putInt(24)
        .put("ftypheic".getBytes(StandardCharsets.US_ASCII))
        .putInt(0)
        .put("mif1heic".getBytes(StandardCharsets.US_ASCII));
    return box;
  }
}
