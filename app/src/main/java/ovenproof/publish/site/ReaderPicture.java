package ovenproof.publish.site;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.MetadataException;
import com.drew.metadata.exif.ExifIFD0Directory;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.color.ColorSpace;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferByte;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Iterator;
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import ovenproof.core.photo.Picture;

/**
 * A photograph as readers get it: a JPEG, upright, small, without metadata.
 *
 * @param calibrated whether the same surface has the same colour on every such picture
 */
record ReaderPicture(byte[] jpeg, int width, int height, boolean calibrated) {
  private static final float QUALITY = 0.82f;
  private static final int LARGEST_AS_IT_IS = 400_000;
  private static final long MOST_PIXELS = 120_000_000L;

  /** Encodes a calibrated picture. */
  static ReaderPicture calibrated(Picture picture) throws IOException {
    byte[] rgb = new byte[3 * picture.pixels().length];
    int o = 0;
    for (int p : picture.pixels()) {
      rgb[o++] = (byte) (p >> 16);
      rgb[o++] = (byte) (p >> 8);
      rgb[o++] = (byte) p;
    }
    return encoded(image(rgb, picture.width(), picture.height()), true);
  }

  /** In the order of channels that the encoder wants: rows are copied instead of taken apart. */
  private static BufferedImage image(byte[] rgb, int width, int height) {
    WritableRaster raster =
        Raster.createInterleavedRaster(
            new DataBufferByte(rgb, rgb.length),
            width,
            height,
            3 * width,
            3,
            new int[] {0, 1, 2},
            null);
    ComponentColorModel model =
        new ComponentColorModel(
            ColorSpace.getInstance(ColorSpace.CS_sRGB),
            false,
            false,
            ComponentColorModel.OPAQUE,
            DataBuffer.TYPE_BYTE);
    return new BufferedImage(model, raster, false, null);
  }

  /**
   * The picture as the camera made it, its longest side at most {@code longest} pixels. A picture
   * that is hardly too large is left as it is: that is better than scaling it by a sixth.
   *
   * @throws IOException if it is no picture that can be read, or one with too many pixels
   */
  static ReaderPicture plain(byte[] bytes, int longest) throws IOException {
    Optional<BareJpeg.Bare> bare = BareJpeg.of(bytes);
    if (bare.isPresent() && fits(bare.get(), longest) && orientation(bytes) == 1) {
      return new ReaderPicture(bare.get().jpeg(), bare.get().width(), bare.get().height(), false);
    }
    return encoded(upright(scaled(read(bytes, longest), longest), orientation(bytes)), false);
  }

  private static boolean fits(BareJpeg.Bare bare, int longest) {
    return Math.max(bare.width(), bare.height()) <= longest * 5 / 4
        && bare.jpeg().length <= LARGEST_AS_IT_IS;
  }

  private static ReaderPicture encoded(BufferedImage image, boolean calibrated) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream(200_000);
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    try (MemoryCacheImageOutputStream stream = new MemoryCacheImageOutputStream(out)) {
      ImageWriteParam parameters = writer.getDefaultWriteParam();
      parameters.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      parameters.setCompressionQuality(QUALITY);
      writer.setOutput(stream);
      writer.write(null, new IIOImage(image, null, null), parameters);
    } finally {
      writer.dispose();
    }
    return new ReaderPicture(out.toByteArray(), image.getWidth(), image.getHeight(), calibrated);
  }

  private static BufferedImage read(byte[] bytes, int longest) throws IOException {
    try (ImageInputStream stream =
        ImageIO.createImageInputStream(new ByteArrayInputStream(bytes))) {
      Iterator<ImageReader> readers = ImageIO.getImageReaders(stream);
      if (!readers.hasNext()) {
        throw new IOException("not a picture in a format that can be read");
      }
      ImageReader reader = readers.next();
      try {
        reader.setInput(stream, true, true);
        int width = reader.getWidth(0);
        int height = reader.getHeight(0);
        if ((long) width * height > MOST_PIXELS) {
          throw new IOException("too many pixels: " + width + " × " + height);
        }
        ImageReadParam parameters = reader.getDefaultReadParam();
        int step = Math.max(1, Math.max(width, height) / (2 * longest));
        parameters.setSourceSubsampling(step, step, 0, 0);
        return reader.read(0, parameters);
      } catch (RuntimeException e) {
        throw new IOException("damaged picture", e);
      } finally {
        reader.dispose();
      }
    }
  }

  private static BufferedImage scaled(BufferedImage image, int longest) {
    int side = Math.max(image.getWidth(), image.getHeight());
    double factor = Math.min(1, (double) longest / side);
    int width = Math.max(1, (int) Math.round(image.getWidth() * factor));
    int height = Math.max(1, (int) Math.round(image.getHeight() * factor));
    BufferedImage scaled = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = scaled.createGraphics();
    graphics.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    graphics.drawImage(image, 0, 0, width, height, null);
    graphics.dispose();
    return scaled;
  }

  /** The EXIF orientation, 1 to 8; 1 when it is not said. */
  private static int orientation(byte[] bytes) {
    try {
      ExifIFD0Directory directory =
          ImageMetadataReader.readMetadata(new ByteArrayInputStream(bytes))
              .getFirstDirectoryOfType(ExifIFD0Directory.class);
      return directory != null && directory.containsTag(ExifIFD0Directory.TAG_ORIENTATION)
          ? directory.getInt(ExifIFD0Directory.TAG_ORIENTATION)
          : 1;
    } catch (IOException | ImageProcessingException | MetadataException e) {
      return 1;
    }
  }

  private static BufferedImage upright(BufferedImage image, int orientation) {
    int w = image.getWidth();
    int h = image.getHeight();
    AffineTransform turn =
        switch (orientation) {
          case 2 -> new AffineTransform(-1, 0, 0, 1, w, 0);
          case 3 -> new AffineTransform(-1, 0, 0, -1, w, h);
          case 4 -> new AffineTransform(1, 0, 0, -1, 0, h);
          case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
          case 6 -> new AffineTransform(0, 1, -1, 0, h, 0);
          case 7 -> new AffineTransform(0, -1, -1, 0, h, w);
          case 8 -> new AffineTransform(0, -1, 1, 0, 0, w);
          default -> new AffineTransform();
        };
    if (turn.isIdentity()) {
      return image;
    }
    boolean lying = orientation >= 5;
    BufferedImage turned =
        new BufferedImage(lying ? h : w, lying ? w : h, BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = turned.createGraphics();
    graphics.drawImage(image, turn, null);
    graphics.dispose();
    return turned;
  }
}
