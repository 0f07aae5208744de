package ovenproof.publish;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;

/**
 * Pictures that tell what a phone or an editor may write beside the pixels: owner and place, in
 * every box there is. All of it is invented.
 */
public final class GossipyPhoto {
  public static final String OWNER = "Zelda Quandary";
  public static final String PLACE = "Rathgar Invented Lane 12";

  /** 53° 20′ 59.28″ as EXIF writes it: three rationals. */
  public static final byte[] LATITUDE =
      ByteBuffer.allocate(24)
          .putInt(53)
          .putInt(1)
          .putInt(20)
          .putInt(1)
          .putInt(5928)
          .putInt(100)
          .array();

  private static final int SOI = 2;

  private GossipyPhoto() {}

  /** Every byte sequence that must not be found in anything published. */
  public static List<byte[]> secrets() {
    List<byte[]> out = new ArrayList<>();
    for (String word : List.of(OWNER, PLACE, "53.3498")) {
      out.add(word.getBytes(StandardCharsets.ISO_8859_1));
      out.add(word.getBytes(StandardCharsets.UTF_16LE));
      out.add(word.getBytes(StandardCharsets.UTF_16BE));
    }
    out.add(LATITUDE);
    return out;
  }

  /**
   * A JPEG with EXIF (description, artist, Windows author, camera owner, position, thumbnail with
   * an EXIF of its own), XMP, IPTC, a comment, a maker's block, a second picture and a trailer.
   */
  public static byte[] jpeg(BufferedImage image, int orientation) throws IOException {
    byte[] plain = written(image, "jpeg");
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(plain, 0, SOI);
    out.writeBytes(segment(0xe1, exif(orientation)));
    String xmp =
        "http://ns.adobe.com/xap/1.0/\0<x:xmpmeta xmlns:x=\"adobe:ns:meta/\"><creator>"
            + OWNER
            + "</creator><GPSLatitude>53.3498</GPSLatitude></x:xmpmeta>";
    out.writeBytes(segment(0xe1, latin(xmp)));
    out.writeBytes(segment(0xe2, latin("MPF\0" + PLACE)));
    out.writeBytes(
        segment(0xed, latin("Photoshop 3.0\0" + "8BIM\4\4\0\0\0\0\0\40\34\2\120\0\16" + OWNER)));
    out.writeBytes(segment(0xe7, latin("Maker\0" + PLACE)));
    out.writeBytes(segment(0xfe, latin("taken by " + OWNER)));
    out.write(plain, SOI, plain.length - SOI);
    byte[] preview = written(new BufferedImage(16, 12, BufferedImage.TYPE_INT_RGB), "jpeg");
    out.write(preview, 0, SOI);
    out.writeBytes(segment(0xe1, exif(1)));
    out.write(preview, SOI, preview.length - SOI);
    out.writeBytes(latin("film of " + OWNER));
    return out.toByteArray();
  }

  /** A PNG with text of all three kinds, an EXIF chunk and a trailer. */
  public static byte[] png(BufferedImage image) throws IOException {
    byte[] plain = written(image, "png");
    int afterHeader = 8 + 25;
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(plain, 0, afterHeader);
    out.writeBytes(chunk("tEXt", latin("Author\0" + OWNER)));
    out.writeBytes(chunk("iTXt", latin("XML:com.adobe.xmp\0\0\0\0\0<x>" + PLACE + "</x>")));
    byte[] exif = exif(1);
    out.writeBytes(chunk("eXIf", java.util.Arrays.copyOfRange(exif, 6, exif.length)));
    out.write(plain, afterHeader, plain.length - afterHeader);
    out.writeBytes(latin(OWNER));
    return out.toByteArray();
  }

  private static byte[] written(BufferedImage image, String format) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(image, format, out);
    return out.toByteArray();
  }

  private static byte[] latin(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  private static byte[] segment(int marker, byte[] body) {
    return ByteBuffer.allocate(body.length + 4)
        .put((byte) 0xff)
        .put((byte) marker)
        .putShort((short) (body.length + 2))
        .put(body)
        .array();
  }

  private static byte[] chunk(String type, byte[] body) {
    ByteBuffer chunk = ByteBuffer.allocate(body.length + 12);
    chunk.putInt(body.length).put(latin(type)).put(body);
    CRC32 crc = new CRC32();
    crc.update(chunk.array(), 4, body.length + 4);
    return chunk.putInt((int) crc.getValue()).array();
  }

  /** EXIF 2.32: IFD0 with orientation, texts and pointers to the camera's and the position's. */
  private static byte[] exif(int orientation) {
    byte[] description = latin(PLACE + "\0");
    byte[] artist = latin(OWNER + "\0");
    byte[] author = (OWNER + "\0").getBytes(StandardCharsets.UTF_16LE);
    int data = 8 + 2 + 6 * 12 + 4;
    int atArtist = data + description.length;
    int atAuthor = atArtist + artist.length;
    int atCamera = atAuthor + author.length;
    int cameraData = atCamera + 2 + 12 + 4;
    int atPosition = cameraData + artist.length;
    int positionData = atPosition + 2 + 2 * 12 + 4;
    ByteBuffer b = ByteBuffer.allocate(6 + positionData + LATITUDE.length);
    b.put(latin("Exif\0\0MM\0*")).putInt(8).putShort((short) 6);
    entry(b, 0x010e, 2, description.length, data);
    b.putShort((short) 0x0112).putShort((short) 3).putInt(1);
    b.putShort((short) orientation).putShort((short) 0);
    entry(b, 0x013b, 2, artist.length, atArtist);
    entry(b, 0x8769, 4, 1, atCamera);
    entry(b, 0x8825, 4, 1, atPosition);
    entry(b, 0x9c9d, 1, author.length, atAuthor);
    b.putInt(0).put(description).put(artist).put(author);
    b.putShort((short) 1);
    entry(b, 0xa430, 2, artist.length, cameraData);
    b.putInt(0).put(artist);
    b.putShort((short) 2);
    b.putShort((short) 1).putShort((short) 2).putInt(2).put(latin("N\0\0\0"));
    entry(b, 2, 5, 3, positionData);
    b.putInt(0).put(LATITUDE);
    return b.array();
  }

  private static void entry(ByteBuffer b, int tag, int type, int count, int value) {
    b.putShort((short) tag).putShort((short) type).putInt(count).putInt(value);
  }
}
