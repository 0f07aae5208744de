package ovenproof.evidence.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import ovenproof.core.photo.Picture;
import ovenproof.input.InputException;

/** What is opened, turned, refused and said of a file, all made here. */
class PhotoFileTest {

  private static final int WIDTH = 48;
  private static final int HEIGHT = 32;

  /** Four quarters: red, green over blue, yellow. */
  private static BufferedImage quarters(int type) {
    BufferedImage image = new BufferedImage(WIDTH, HEIGHT, type);
    Graphics2D g = image.createGraphics();
    Color[] colours = {Color.RED, Color.GREEN, Color.BLUE, Color.YELLOW};
    for (int i = 0; i < 4; i++) {
      g.setColor(colours[i]);
      g.fillRect(i % 2 * WIDTH / 2, i / 2 * HEIGHT / 2, WIDTH / 2, HEIGHT / 2);
    }
    g.dispose();
    return image;
  }

  private static byte[] written(BufferedImage image, String format) {
    try {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      assertThat(ImageIO.write(image, format, out)).isTrue();
      return out.toByteArray();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static byte[] jpeg() {
    return written(quarters(BufferedImage.TYPE_INT_RGB), "jpg");
  }

  private static byte[] png() {
    return written(quarters(BufferedImage.TYPE_INT_RGB), "png");
  }

  private static String refused(byte[] bytes, String name) {
    String[] words = new String[1];
    ThrowingCallable opening = () -> PhotoFile.open(bytes, name);
    assertThatThrownBy(opening)
        .isInstanceOfSatisfying(
            InputException.class, e -> words[0] = String.valueOf(e.problems().get(0).found()));
    return words[0];
  }

  /**
   * CIPA DC-008 (EXIF), tag 274: which corner of what is stored is the upper left of the scene. The
   * stored quarters are R G over B Y; the expected letters are the scene's, row by row.
   */
  @ParameterizedTest
  @CsvSource({
    "1, RGBY, 48", "2, GRYB, 48", "3, YBGR, 48", "4, BYRG, 48",
    "5, RBGY, 32", "6, BRYG, 32", "7, YGBR, 32", "8, GYRB, 32"
  })
  void theCameraMayHaveBeenHeldAnyWayUp(int orientation, String scene, int width) {
    Picture picture = PhotoFile.open(withOrientation(jpeg(), orientation), "a.jpg").picture();
    assertThat(picture.width()).isEqualTo(width);
    StringBuilder seen = new StringBuilder();
    for (int i = 0; i < 4; i++) {
      int x = picture.width() * (1 + 2 * (i % 2)) / 4;
      int y = picture.height() * (1 + 2 * (i / 2)) / 4;
      seen.append(letter(picture.at(x, y)));
    }
    assertThat(seen).hasToString(scene);
  }

  /** Reduced while it is decoded or afterwards: the same means, any way up. */
  @ParameterizedTest
  @ValueSource(ints = {1, 3, 6, 8})
  void aPictureOpenedSmallerIsTheMeanOfItsSquares(int orientation) {
    byte[] jpeg = withOrientation(jpeg(), orientation);
    PhotoFile small = PhotoFile.openReduced(jpeg, "a.jpg", 12);
    assertThat(small.factor()).isEqualTo(4);
    assertThat(small.picture().pixels())
        .isEqualTo(PhotoFile.open(jpeg, "a.jpg").picture().reduced(4).pixels());
    assertThat(PhotoFile.openReduced(png(), "a.png", 12).picture().longSide()).isEqualTo(12);
    assertThat(PhotoFile.openReduced(jpeg, "a.jpg", 1000).factor()).isEqualTo(1);
  }

  private static char letter(int pixel) {
    boolean red = (pixel >> 16 & 0xff) > 128;
    boolean green = (pixel >> 8 & 0xff) > 128;
    return red ? green ? 'Y' : 'R' : green ? 'G' : 'B';
  }

  /** Puts an EXIF segment with one entry, the orientation, behind the start of the picture. */
  private static byte[] withOrientation(byte[] jpeg, int orientation) {
    ByteBuffer exif = ByteBuffer.allocate(36);
    exif.putShort((short) 0xffe1)
        .putShort((short) 34)
        .put("Exif\0\0".getBytes(StandardCharsets.US_ASCII));
    exif.put("MM".getBytes(StandardCharsets.US_ASCII)).putShort((short) 42).putInt(8);
    exif.putShort((short) 1).putShort((short) 0x112).putShort((short) 3).putInt(1);
    exif.putShort((short) orientation).putShort((short) 0).putInt(0);
    return inserted(jpeg, 2, exif.array());
  }

  private static byte[] inserted(byte[] into, int at, byte[] what) {
    byte[] out = Arrays.copyOf(into, into.length + what.length);
    System.arraycopy(into, at, out, at + what.length, into.length - at);
    System.arraycopy(what, 0, out, at, what.length);
    return out;
  }

  @Test
  void whatIsNoPictureIsNamedAndNotOpened() {
    assertThat(refused(new byte[0], "a.jpg")).isEqualTo("an empty file");
    assertThat(refused("a list of things".getBytes(StandardCharsets.UTF_8), "a.jpg"))
        .isEqualTo("no picture format that is known");
    assertThat(refused(written(quarters(BufferedImage.TYPE_INT_RGB), "gif"), "a.jpg"))
        .isEqualTo("a GIF");
    assertThat(refused(written(quarters(BufferedImage.TYPE_INT_RGB), "bmp"), "a.png"))
        .isEqualTo("a BMP");
    assertThat(refused("%PDF-1.7".getBytes(StandardCharsets.US_ASCII), "a.pdf")).isEqualTo("a PDF");
  }

  @Test
  void aNameThatDoesNotFitIsSaidAndTheBytesAreBelieved() {
    PhotoFile file = PhotoFile.open(png(), "photo.jpg");
    assertThat(file.format()).isEqualTo(PhotoFormat.PNG);
    assertThat(file.warnings()).anyMatch(w -> w.contains("does not fit"));
  }

  @Test
  void aFileThatEndsTooSoonIsRefused() {
    byte[] jpeg = jpeg();
    byte[] png = png();
    assertThat(refused(Arrays.copyOf(jpeg, jpeg.length * 2 / 3), "a.jpg")).contains("damaged");
    assertThat(refused(Arrays.copyOf(png, png.length * 2 / 3), "a.png")).contains("damaged");
  }

  /** A header of 60,000 × 60,000 pixels in a few bytes: refused before memory is asked for. */
  @Test
  void aBombIsRefusedByItsHeader() {
    byte[] png = png();
    ByteBuffer.wrap(png).putInt(16, 60_000).putInt(20, 60_000);
    CRC32 crc = new CRC32();
    crc.update(png, 12, 17);
    ByteBuffer.wrap(png).putInt(29, (int) crc.getValue());
    assertThat(refused(png, "a.png")).contains("60000 × 60000 pixels");
  }

  @Test
  void oneByOneIsAPicture() {
    byte[] one = written(new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB), "png");
    assertThat(PhotoFile.open(one, "a.png").picture().megapixels()).isLessThan(1e-5);
  }

  /** Sixteen bits and eight bits of one grey are the same grey, within rounding. */
  @Test
  void greysAreReadAsTheyAreWrittenInEightAndSixteenBits() {
    for (int type : new int[] {BufferedImage.TYPE_BYTE_GRAY, BufferedImage.TYPE_USHORT_GRAY}) {
      BufferedImage image = new BufferedImage(WIDTH, HEIGHT, type);
      int most = type == BufferedImage.TYPE_BYTE_GRAY ? 255 : 65_535;
      for (int y = 0; y < HEIGHT; y++) {
        for (int x = 0; x < WIDTH; x++) {
          image.getRaster().setSample(x, y, 0, most * x / (WIDTH - 1));
        }
      }
      Picture picture = PhotoFile.open(written(image, "png"), "a.png").picture();
      for (int x = 0; x < WIDTH; x++) {
        int wanted = 255 * x / (WIDTH - 1);
        assertThat(picture.at(x, 5) & 0xff).isBetween(wanted - 1, wanted + 1);
      }
    }
  }

  @Test
  void whatIsTransparentIsWhite() {
    byte[] clear = written(new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_ARGB), "png");
    assertThat(PhotoFile.open(clear, "a.png").picture().at(9, 9)).isEqualTo(0xffffff);
  }

  @Test
  void theSameBytesHaveTheSameFingerprintAndOthersAnother() {
    assertThat(PhotoFile.fingerprint(jpeg())).isEqualTo(PhotoFile.fingerprint(jpeg()));
    assertThat(PhotoFile.fingerprint(jpeg())).isNotEqualTo(PhotoFile.fingerprint(png()));
    // FIPS 180-4, example values of NIST: SHA-256 of "abc".
    assertThat(PhotoFile.fingerprint("abc".getBytes(StandardCharsets.US_ASCII)))
        .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  }

  /** Whatever a broken card or transfer does to a file, it is opened or refused in words. */
  @ParameterizedTest
  @ValueSource(strings = {"jpg", "png"})
  void brokenBytesAreOpenedOrRefusedInWords(String format) {
    byte[] whole = format.equals("jpg") ? jpeg() : png();
    SplittableRandom random = new SplittableRandom(5);
    int refused = 0;
    for (int i = 0; i < 300; i++) {
      byte[] broken = whole.clone();
      for (int k = 0; k < 1 + i % 12; k++) {
        broken[random.nextInt(broken.length)] = (byte) random.nextInt(256);
      }
      try {
        assertThat(PhotoFile.open(broken, "a." + format).picture().width()).isPositive();
      } catch (InputException words) {
        assertThat(words.problems()).isNotEmpty();
        refused++;
      }
    }
    assertThat(refused).isPositive();
  }

  /** Any JPEG with four channels: by its frame header, ITU-T T.81 B.2.2. */
  @Test
  void coloursForPrintAreRefused() {
    byte[] header = {
      (byte) 0xff,
      (byte) 0xd8,
      (byte) 0xff,
      (byte) 0xc0,
      0,
      20,
      8,
      0,
      16,
      0,
      16,
      4,
      1,
      0x11,
      0,
      2,
      0x11,
      0,
      3,
      0x11,
      0,
      4,
      0x11,
      0,
      (byte) 0xff,
      (byte) 0xd9
    };
    assertThat(refused(header, "a.jpg")).contains("CMYK");
  }

  /** The container's first bytes: ISO/IEC 23008-12, brand heic; then nothing that can be read. */
  @Test
  void aHeicThatCannotBeReadIsSaidInWordsWithOrWithoutTheConverter() {
    byte[] bytes = new byte[64];
    System.arraycopy("ftypheic".getBytes(StandardCharsets.US_ASCII), 0, bytes, 4, 8);
    bytes[3] = 24;
    assertThat(refused(bytes, "a.heic")).contains("HEIC");
  }

  /** RIFF container with a VP8X header and an animation chunk. */
  @Test
  void anAnimatedWebPIsRefused() {
    byte[] bytes = new byte[80];
    System.arraycopy("RIFF".getBytes(StandardCharsets.US_ASCII), 0, bytes, 0, 4);
    System.arraycopy("WEBPVP8X".getBytes(StandardCharsets.US_ASCII), 0, bytes, 8, 8);
    System.arraycopy("ANIM".getBytes(StandardCharsets.US_ASCII), 0, bytes, 30, 4);
    assertThat(refused(bytes, "a.webp")).isEqualTo("an animated WebP");
  }
}
