package ovenproof.measure;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.Metadata;
import com.drew.metadata.MetadataException;
import com.drew.metadata.exif.ExifIFD0Directory;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Iterator;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import ovenproof.core.photo.Picture;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;

/** Opens a photograph, upright; refuses by its header what is too large to decode. */
final class PhotoDecoder {
  private static final long LARGEST_PIXELS = 120_000_000L;

  private PhotoDecoder() {}

  /**
   * @param file name for messages
   * @throws InputException if it is no picture that can be read, or too large
   */
  static Picture decode(byte[] bytes, String file) {
    try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(bytes))) {
      Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
      if (!readers.hasNext()) {
        throw unreadable(file, "no picture format that is known", "save it as JPEG or PNG");
      }
      ImageReader reader = readers.next();
      try {
        reader.setInput(in);
        requireDecodable(reader, file);
        return upright(rgb(reader.read(0)), orientation(bytes));
      } finally {
        reader.dispose();
      }
    } catch (IOException | IndexOutOfBoundsException | IllegalArgumentException damaged) {
      throw unreadable(file, "a damaged picture (" + damaged.getMessage() + ")", "export it again");
    }
  }

  private static void requireDecodable(ImageReader reader, String file) throws IOException {
    long width = reader.getWidth(0);
    long height = reader.getHeight(0);
    if (width * height > LARGEST_PIXELS) {
      throw unreadable(
          file, width + " × " + height + " pixels", "make it smaller than 120 megapixels");
    }
  }

  private static Picture rgb(BufferedImage image) {
    int w = image.getWidth();
    int h = image.getHeight();
    int[] pixels = image.getRGB(0, 0, w, h, null, 0, w);
    return new Picture(w, h, pixels);
  }

  private static int orientation(byte[] bytes) {
    try {
      Metadata metadata = ImageMetadataReader.readMetadata(new ByteArrayInputStream(bytes));
      ExifIFD0Directory exif = metadata.getFirstDirectoryOfType(ExifIFD0Directory.class);
      return exif != null && exif.containsTag(ExifIFD0Directory.TAG_ORIENTATION)
          ? exif.getInt(ExifIFD0Directory.TAG_ORIENTATION)
          : 1;
    } catch (ImageProcessingException | IOException | MetadataException none) {
      return 1;
    }
  }

  /** Turns and mirrors by the EXIF orientation 1–8 (CIPA DC-008, tag 274). */
  private static Picture upright(Picture p, int orientation) {
    if (orientation <= 1 || orientation > 8) {
      return p;
    }
    boolean turned = orientation >= 5;
    int w = turned ? p.height() : p.width();
    int h = turned ? p.width() : p.height();
    int[] out = new int[w * h];
    for (int y = 0; y < h; y++) {
      for (int x = 0; x < w; x++) {
        int sx = turned ? y : x;
        int sy = turned ? x : y;
        boolean mirrorX =
            orientation == 2 || orientation == 3 || orientation == 7 || orientation == 8;
        boolean mirrorY =
            orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7;
        out[y * w + x] =
            p.at(mirrorX ? p.width() - 1 - sx : sx, mirrorY ? p.height() - 1 - sy : sy);
      }
    }
    return new Picture(w, h, out);
  }

  private static InputException unreadable(String file, String found, String remedy) {
    return new InputException(Problem.error(Place.of(file), found, "a photograph", remedy));
  }
}
