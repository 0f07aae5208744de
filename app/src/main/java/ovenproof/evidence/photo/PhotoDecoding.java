package ovenproof.evidence.photo;

import java.awt.color.CMMException;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.event.IIOReadWarningListener;
import javax.imageio.stream.ImageInputStream;
import ovenproof.core.photo.Picture;
import ovenproof.input.InputException;

/** One file being decoded: header first, then pixels, then upright. */
final class PhotoDecoding {

  private final byte[] bytes;
  private final String file;
  private final PhotoFormat format;
  private final int leastLongSide;
  private final List<String> warnings = new ArrayList<>();
  private final List<String> complaints = new ArrayList<>();

  /**
   * @param leastLongSide the picture is reduced by the largest whole factor that leaves its longer
   *     side so many pixels; 0 for all pixels
   */
  PhotoDecoding(byte[] bytes, String file, PhotoFormat format, int leastLongSide) {
    this.bytes = bytes;
    this.file = file;
    this.format = format;
    this.leastLongSide = leastLongSide;
  }

  PhotoFile open() {
    if (format == PhotoFormat.OTHER) {
      throw PhotoFile.problem(
          file, PhotoFormat.nameOfOther(bytes), "JPEG, PNG, WebP or HEIC", "export it as JPEG");
    }
    if (!format.fits(file)) {
      warnings.add("the name does not fit the contents: this is " + format.words());
    }
    refuseAnimation();
    PhotoMetadata metadata = PhotoMetadata.of(bytes);
    if (metadata.components() == 4) {
      throw PhotoFile.problem(
          file, "a CMYK picture (for print)", "RGB colours", "export it as sRGB JPEG");
    }
    warnProfile(metadata);
    // heif-convert turns the picture upright itself and says so in its own metadata.
    Decoded decoded = decoded(metadata);
    return new PhotoFile(decoded.picture, decoded.factor, format, metadata, warnings);
  }

  private void warnProfile(PhotoMetadata metadata) {
    String profile = metadata.profile();
    if (profile != null && !profile.contains("sRGB")) {
      warnings.add(
          "colour profile \""
              + profile
              + "\" is read as sRGB; with a chart in the frame that makes no difference");
    }
    if (metadata.whiteBalance() == PhotoMetadata.WhiteBalance.AUTOMATIC) {
      warnings.add(
          "the camera chose white by itself (auto white balance): set it fixed for a session, or"
              + " keep the chart in every frame");
    }
  }

  private void refuseAnimation() {
    if (format == PhotoFormat.WEBP && contains("ANIM", 64)) {
      throw PhotoFile.problem(
          file, "an animated WebP", "a still picture", "save the frame you mean");
    }
    if (format == PhotoFormat.PNG && contains("acTL", 4096)) {
      warnings.add("animated PNG: only its first picture is used");
    }
  }

  private boolean contains(String word, int within) {
    int end = Math.min(bytes.length, within) - word.length();
    for (int i = 0; i <= end; i++) {
      int k = 0;
      while (k < word.length() && bytes[i + k] == word.charAt(k)) {
        k++;
      }
      if (k == word.length()) {
        return true;
      }
    }
    return false;
  }

  /** An upright picture, reduced by a factor. */
  private record Decoded(Picture picture, int factor) {}

  private Decoded decoded(PhotoMetadata metadata) {
    try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(bytes))) {
      Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
      if (!readers.hasNext()) {
        throw damaged("no picture inside");
      }
      ImageReader reader = readers.next();
      try {
        return read(reader, in, metadata);
      } finally {
        reader.dispose();
      }
    } catch (IOException | IndexOutOfBoundsException | IllegalArgumentException e) {
      throw damaged(String.valueOf(e.getMessage()));
    } catch (NegativeArraySizeException
        | NullPointerException
        | IllegalStateException
        | CMMException e) {
      // Decoders answer some broken headers with these; they say nothing a person could use.
      throw damaged("a header that contradicts itself");
    }
  }

  private Decoded read(ImageReader reader, ImageInputStream in, PhotoMetadata metadata)
      throws IOException {
    reader.setInput(in, false, true);
    IIOReadWarningListener listener = (source, warning) -> complaints.add(warning);
    reader.addIIOReadWarningListener(listener);
    long width = reader.getWidth(0);
    long height = reader.getHeight(0);
    if (width * height > PhotoFile.LARGEST_PIXELS) {
      throw PhotoFile.problem(
          file,
          width + " × " + height + " pixels by its header",
          "at most " + PhotoFile.LARGEST_PIXELS / 1_000_000 + " megapixels",
          "make it smaller");
    }
    int factor = factor(Math.max(width, height), Math.min(width, height));
    Picture picture = pixels(reader, metadata, factor);
    for (String complaint : complaints) {
      if (complaint.contains("remature") || complaint.contains("orrupt")) {
        throw damaged("a picture that is cut off or damaged (" + complaint + ")");
      }
    }
    return new Decoded(picture, factor);
  }

  private int factor(long longSide, long shortSide) {
    return leastLongSide == 0
        ? 1
        : (int) Math.max(1, Math.min(longSide / leastLongSide, shortSide));
  }

  private Picture pixels(ImageReader reader, PhotoMetadata metadata, int factor)
      throws IOException {
    if (metadata.components() == 3) {
      return JpegLines.read(reader, metadata.orientation(), factor);
    }
    return Upright.of(reader.read(0), metadata.orientation()).reduced(factor);
  }

  private InputException damaged(String what) {
    return PhotoFile.problem(
        file, "a damaged " + format.words() + ": " + what, "a whole picture", "copy it again");
  }
}
