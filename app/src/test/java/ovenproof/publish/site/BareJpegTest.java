package ovenproof.publish.site;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against ImageIO, which decodes both the picture as it came and the bare one. */
class BareJpegTest {
  private static final String SECRET = "53.3498 N 6.2603 W, 9 March";

  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void thePictureStaysBitForBitAndWhatWasHiddenIsGone(boolean progressive) throws IOException {
    byte[] plain = jpeg(progressive);
    byte[] hiding = hiding(plain);
    BareJpeg.Bare bare = BareJpeg.of(hiding).orElseThrow();
    assertThat(bare.width()).isEqualTo(90);
    assertThat(bare.height()).isEqualTo(60);
    assertThat(new String(bare.jpeg(), StandardCharsets.ISO_8859_1)).doesNotContain(SECRET);
    assertThat(pixels(bare.jpeg())).isEqualTo(pixels(plain));
  }

  @Test
  void everyCutIsRefused() throws IOException {
    byte[] whole = jpeg(false);
    for (int length = 0; length < whole.length; length++) {
      assertThat(BareJpeg.of(Arrays.copyOf(whole, length))).as("%d bytes", length).isEmpty();
    }
  }

  @Test
  void whatIsNoJpegIsRefused() {
    assertThat(BareJpeg.of("<svg/>".getBytes(StandardCharsets.UTF_8))).isEmpty();
    byte[] noise = new byte[5000];
    new Random(3).nextBytes(noise);
    noise[0] = (byte) 0xFF;
    noise[1] = (byte) 0xD8;
    assertThat(BareJpeg.of(noise)).isEmpty();
  }

  @Test
  void aColourProfileIsLeftToTheDecoder() throws IOException {
    assertThat(BareJpeg.of(with(jpeg(false), 0xE2, "ICC_PROFILE\0..."))).isEmpty();
  }

  private static byte[] hiding(byte[] plain) {
    byte[] marked = with(with(plain, 0xE1, "Exif\0\0" + SECRET), 0xFE, SECRET);
    byte[] tail = ("trailer " + SECRET).getBytes(StandardCharsets.ISO_8859_1);
    byte[] all = Arrays.copyOf(marked, marked.length + tail.length);
    System.arraycopy(tail, 0, all, marked.length, tail.length);
    return all;
  }

  private static byte[] with(byte[] jpeg, int marker, String text) {
    byte[] payload = text.getBytes(StandardCharsets.ISO_8859_1);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(jpeg, 0, 2);
    out.write(0xFF);
    out.write(marker);
    out.write((payload.length + 2) >> 8);
    out.write((payload.length + 2) & 0xFF);
    out.writeBytes(payload);
    out.write(jpeg, 2, jpeg.length - 2);
    return out.toByteArray();
  }

  private static byte[] jpeg(boolean progressive) throws IOException {
    BufferedImage image = new BufferedImage(90, 60, BufferedImage.TYPE_INT_RGB);
    Random random = new Random(7);
    for (int y = 0; y < 60; y++) {
      for (int x = 0; x < 90; x++) {
        image.setRGB(x, y, x * 2 << 16 | y * 4 << 8 | random.nextInt(40));
      }
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    try (MemoryCacheImageOutputStream stream = new MemoryCacheImageOutputStream(out)) {
      ImageWriteParam parameters = writer.getDefaultWriteParam();
      if (progressive) {
        parameters.setProgressiveMode(ImageWriteParam.MODE_DEFAULT);
      }
      writer.setOutput(stream);
      writer.write(null, new IIOImage(image, null, null), parameters);
    } finally {
      writer.dispose();
    }
    return out.toByteArray();
  }

  private static int[] pixels(byte[] jpeg) throws IOException {
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(jpeg));
    return image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
  }
}
