package ovenproof.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.awt.image.ConvolveOp;
import java.awt.image.DataBuffer;
import java.awt.image.Kernel;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.zip.CRC32;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriter;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.kitchen.photo.Material;
import ovenproof.kitchen.photo.PhotoScene;
import ovenproof.kitchen.photo.PhotoScene.Camera;
import ovenproof.kitchen.photo.PhotoScene.ChartPose;
import ovenproof.kitchen.photo.PhotoScene.Ground;
import ovenproof.kitchen.photo.PhotoScene.Item;
import ovenproof.kitchen.photo.PhotoScene.Light;
import ovenproof.kitchen.photo.PhotoScene.Shape;
import ovenproof.kitchen.photo.Shot;
import ovenproof.kitchen.photo.Studio;
import ovenproof.kitchen.physics.Surface;

/** What {@code ovenproof photo} says of pictures that are no good, and of odd ones that are. */
class PhotoBadInputTest {
  private static final Camera PHONE = new Camera(0, 0, 0, 0.012, 0.06);
  private static final ChartPose CHART = new ChartPose(300, 120, 26, 0);

  @TempDir private Path box;
  private static BufferedImage whole;

  private record Said(int code, String out, String err) {}

  @BeforeAll
  static void aTableWithTwoSlicesAndAChart() {
    whole = image(Studio.take(scene(Light.NEUTRAL, CHART, 2)));
  }

  private static PhotoScene scene(Light light, ChartPose chart, int pieces) {
    List<Item> slices = List.of(slice("s1", 70), slice("s2", 180)).subList(0, pieces);
    return new PhotoScene(800, 400, Ground.TABLE, slices, chart, light, PHONE, 9);
  }

  private static Item slice(String id, double y) {
    return new Item(id, Material.BREAD_SLICE, Shape.SLICE, 90, y, 96, 92, 0, Surface.even(0.45));
  }

  private static BufferedImage image(Shot shot) {
    BufferedImage image =
        new BufferedImage(shot.width(), shot.height(), BufferedImage.TYPE_INT_RGB);
    image.setRGB(0, 0, shot.width(), shot.height(), shot.rgb(), 0, shot.width());
    return image;
  }

  private static Said photo(String... words) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    String[] all = new String[words.length + 1];
    all[0] = "photo";
    System.arraycopy(words, 0, all, 1, words.length);
    int code =
        Ovenproof.commandLine(new PrintWriter(out, true), new PrintWriter(err, true)).execute(all);
    return new Said(code, out.toString(), err.toString());
  }

  private String file(String name, byte[] bytes) throws IOException {
    return Files.write(box.resolve(name), bytes).toString();
  }

  private static byte[] written(BufferedImage image, String format) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    assertThat(ImageIO.write(image, format, out)).isTrue();
    return out.toByteArray();
  }

  private static byte[] jpeg() throws IOException {
    return written(whole, "jpg");
  }

  private static BufferedImage plain(int width, int height, int rgb) {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    int[] all = new int[width * height];
    Arrays.fill(all, rgb);
    image.setRGB(0, 0, width, height, all, 0, width);
    return image;
  }

  private static BufferedImage copy(BufferedImage of, int type) {
    BufferedImage image = new BufferedImage(of.getWidth(), of.getHeight(), type);
    image.createGraphics().drawImage(of, 0, 0, null);
    return image;
  }

  @Test
  void aGoodOneIsFine() throws IOException {
    Said said = photo(file("good.jpg", jpeg()), "--pieces", "2");
    assertThat(said.code).isZero();
  }

  @Test
  void onlyTheChartIsSaid() throws IOException {
    BufferedImage only = image(Studio.take(scene(Light.NEUTRAL, CHART, 0)));
    Said said = photo(file("chart.jpg", written(only, "jpg")));
    assertThat(said.code).isEqualTo(ExitCode.INPUT);
    assertThat(said.out + said.err).contains("only the chart, no food").contains("no food");
  }

  @Test
  void anEmptyTableIsNoFood() throws IOException {
    BufferedImage table = image(Studio.take(scene(Light.NEUTRAL, ChartPose.NONE, 0)));
    Said said = photo(file("table.jpg", written(table, "jpg")));
    assertThat(said.code).isEqualTo(ExitCode.INPUT);
    assertThat(said.err).contains("no food");
  }

  @Test
  void halfAChartIsNotUsedAndSaid() throws IOException {
    BufferedImage half = copy(whole.getSubimage(0, 0, 600, 520), BufferedImage.TYPE_INT_RGB);
    Said said = photo(file("half.jpg", written(half, "jpg")));
    assertThat(said.out).contains("only a part of the chart is in the frame");
  }

  @Test
  void aBlackFrameIsSaid() throws IOException {
    Said said = photo(file("black.jpg", written(plain(640, 480, 0), "jpg")));
    assertThat(said.code).isEqualTo(ExitCode.INPUT);
    assertThat(said.out).contains("the whole frame is one colour: was the lens covered?");
  }

  @Test
  void onePixelIsNoFood() throws IOException {
    Said said = photo(file("one.png", written(plain(1, 1, 0x808080), "png")));
    assertThat(said.code).isEqualTo(ExitCode.INPUT);
    assertThat(said.err).contains("no food");
  }

  /** Four channels as a print shop saves them. */
  @Test
  void coloursForPrintAreRefused() throws IOException {
    WritableRaster ink = Raster.createInterleavedRaster(DataBuffer.TYPE_BYTE, 64, 48, 4, null);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    try (var stream = ImageIO.createImageOutputStream(out)) {
      writer.setOutput(stream);
      writer.write(null, new IIOImage(ink, null, null), null);
    }
    Said said = photo(file("print.jpg", out.toByteArray()));
    assertThat(said.code).isEqualTo(ExitCode.INPUT);
    assertThat(said.err).contains("CMYK").contains("export it as sRGB JPEG");
  }

  @Test
  void sixteenBitsAreReadAsEight() throws IOException {
    WritableRaster raster =
        Raster.createInterleavedRaster(
            DataBuffer.TYPE_USHORT, whole.getWidth(), whole.getHeight(), 3, null);
    for (int i = 0; i < whole.getWidth() * whole.getHeight(); i++) {
      int x = i % whole.getWidth();
      int y = i / whole.getWidth();
      int p = whole.getRGB(x, y);
      for (int c = 0; c < 3; c++) {
        raster.setSample(x, y, c, (p >> 16 - 8 * c & 0xff) * 257);
      }
    }
    var model =
        new java.awt.image.ComponentColorModel(
            java.awt.color.ColorSpace.getInstance(java.awt.color.ColorSpace.CS_sRGB),
            false,
            false,
            java.awt.Transparency.OPAQUE,
            DataBuffer.TYPE_USHORT);
    byte[] deep = written(new BufferedImage(model, raster, false, null), "png");
    Said eight = photo(file("8.png", written(whole, "png")), "--pieces", "2");
    Said sixteen = photo(file("16.png", deep), "--pieces", "2");
    assertThat(sixteen.code).isZero();
    assertThat(sixteen.out.replace("16.png", "8.png")).isEqualTo(eight.out);
  }

  @Test
  void aPictureWithoutColourIsSaid() throws IOException {
    byte[] grey = written(copy(whole, BufferedImage.TYPE_BYTE_GRAY), "jpg");
    assertThat(photo(file("grey.jpg", grey)).out).contains("a picture without colour");
  }

  @Test
  void anAnimationIsSaid() throws IOException {
    Said said = photo(file("moving.gif", written(whole, "gif")));
    assertThat(said.code).isEqualTo(ExitCode.INPUT);
    assertThat(said.err).contains("a GIF").contains("export it as JPEG");
  }

  @Test
  void aBrokenStreamIsSaidOrReadButNeverFails() throws IOException {
    byte[] broken = jpeg();
    SplittableRandom random = new SplittableRandom(3);
    for (int i = broken.length / 3; i < broken.length / 2; i += 40) {
      broken[i] = (byte) random.nextInt(256);
    }
    Said said = photo(file("broken.jpg", broken));
    assertThat(said.code).isIn(ExitCode.FINE, ExitCode.INPUT);
    assertThat(said.out + said.err).doesNotContain("Exception").isNotBlank();
  }

  @Test
  void aFileThatEndsTooSoonIsRefused() throws IOException {
    byte[] whole = jpeg();
    Said said = photo(file("cut.jpg", Arrays.copyOf(whole, whole.length / 2)));
    assertThat(said.code).isEqualTo(ExitCode.INPUT);
    assertThat(said.err).contains("damaged JPEG").contains("copy it again");
  }

  @Test
  void aNameThatDoesNotFitIsSaid() throws IOException {
    Said said = photo(file("really-png.jpg", written(whole, "png")), "--pieces", "2");
    assertThat(said.code).isZero();
    assertThat(said.out).contains("the name does not fit the contents: this is PNG");
  }

  @Test
  void aBombIsRefusedByItsHeader() throws IOException {
    byte[] png = written(plain(8, 8, 0), "png");
    ByteBuffer.wrap(png).putInt(16, 60_000).putInt(20, 60_000);
    CRC32 crc = new CRC32();
    crc.update(png, 12, 17);
    ByteBuffer.wrap(png).putInt(29, (int) crc.getValue());
    Said said = photo(file("bomb.png", png));
    assertThat(said.code).isEqualTo(ExitCode.INPUT);
    assertThat(said.err).contains("60000 × 60000 pixels by its header");
  }

  @Test
  void theSamePictureTwiceIsSaid() throws IOException {
    String first = file("a.jpg", jpeg());
    Said said = photo(first, file("b.jpg", jpeg()), "--pieces", "2");
    assertThat(said.out).contains("the same picture as").contains("a.jpg");
  }

  @Test
  void aHeicIsSaidInWords() throws IOException {
    byte[] heic = new byte[64];
    System.arraycopy("\0\0\0\30ftypheic".getBytes("ISO-8859-1"), 0, heic, 0, 12);
    Said said = photo(file("a.heic", heic));
    assertThat(said.code).isEqualTo(ExitCode.INPUT);
    assertThat(said.err).contains("HEIC").contains("JPEG");
  }

  @Test
  void aWebPIsMeasured() throws IOException {
    Said said = photo(file("a.webp", written(whole, "webp")), "--pieces", "2");
    assertThat(said.code).isZero();
  }

  @Test
  void withoutAnyMetadataTheTimeIsUnknown() throws IOException {
    Said said = photo(file("bare.jpg", jpeg()), "--json");
    assertThat(said.out).contains("\"takenAt\" : null");
  }

  @Test
  void clippedHighlightsAreSaid() throws IOException {
    BufferedImage bright = image(Studio.take(scene(new Light(1.7, 0, 0, 1.1, 1), CHART, 2)));
    assertThat(photo(file("bright.jpg", written(bright, "jpg"))).out).contains("overexposed");
  }

  @Test
  void blurIsSaid() throws IOException {
    float[] box9 = new float[169];
    Arrays.fill(box9, 1 / 169f);
    BufferedImage blurred = new ConvolveOp(new Kernel(13, 13, box9)).filter(whole, null);
    blurred = copy(blurred.getSubimage(8, 8, 780, 520), BufferedImage.TYPE_INT_RGB);
    assertThat(photo(file("moved.jpg", written(blurred, "jpg"))).out)
        .contains("blurred: edges are about");
  }

  /** EXIF 2.32: white balance, tag 0xA403, 0 is automatic. */
  @Test
  void automaticWhiteBalanceIsSaid() throws IOException {
    ByteBuffer exif = ByteBuffer.allocate(4 + 6 + 8 + 18 + 18);
    exif.put(new byte[] {(byte) 0xff, (byte) 0xe1, 0, 52});
    exif.put("Exif\0\0MM\0*\0\0\0\10".getBytes("ISO-8859-1"));
    exif.putShort((short) 1).putShort((short) 0x8769).putShort((short) 4).putInt(1).putInt(26);
    exif.putInt(0);
    exif.putShort((short) 1).putShort((short) 0xa403).putShort((short) 3).putInt(1).putInt(0);
    exif.putInt(0);
    byte[] plain = jpeg();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(plain, 0, 2);
    out.write(exif.array());
    out.write(plain, 2, plain.length - 2);
    assertThat(photo(file("auto.jpg", out.toByteArray())).out).contains("auto white balance");
  }

  @Test
  void lowResolutionIsSaidWhenTheScaleIsKnown() throws IOException {
    Said said = photo(file("far.jpg", jpeg()), "--chart-pitch", "26 mm", "--pieces", "2");
    assertThat(said.out).contains("low resolution: 2.0 pixels a millimetre");
  }
}
