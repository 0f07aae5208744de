package ovenproof.publish.site;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.MetadataException;
import com.drew.metadata.exif.ExifIFD0Directory;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Photo;
import ovenproof.campaign.Run;
import ovenproof.core.photo.CalibratedPicture;
import ovenproof.core.photo.PhotoCalibration;
import ovenproof.core.photo.Picture;
import ovenproof.evidence.photo.PhotoFile;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.measure.PhotoReading;
import ovenproof.publish.edition.Edition;

/**
 * Photographs for readers: upright, small, without metadata, so that no place, time, camera or name
 * travels with them. A picture that cannot be read is left out and said so.
 */
final class Pictures {
  private static final int LONGEST_SIDE = 1000;
  private static final float QUALITY = 0.82f;
  private static final int LARGEST_AS_IT_IS = 400_000;
  private static final long MOST_BYTES = 80L << 20;
  private static final long MOST_PIXELS = 120_000_000L;

  private final Edition edition;
  private final SiteAddresses addresses;
  private final List<String> unreadable = new ArrayList<>();

  Pictures(Edition edition, SiteAddresses addresses) {
    this.edition = edition;
    this.addresses = addresses;
  }

  /** What was made of one photograph. */
  record Made(byte[] jpeg, int width, int height) {}

  /** Writes all pictures; those of each run by its key, in the campaign's order. */
  Map<String, List<View.Picture>> write(SiteFolder folder) {
    List<Photo> photos = edition.campaign().photos();
    List<View.@Nullable Picture> made =
        java.util.stream.IntStream.range(0, photos.size())
            .parallel()
            .<View.@Nullable Picture>mapToObj(i -> write(folder, photos.get(i), i))
            .toList();
    Map<String, List<View.Picture>> byRun = new LinkedHashMap<>();
    for (int i = 0; i < photos.size(); i++) {
      View.Picture picture = made.get(i);
      if (picture != null) {
        byRun.computeIfAbsent(photos.get(i).run(), r -> new ArrayList<>()).add(picture);
      }
    }
    return byRun;
  }

  /** Files that could not be shown, with the reason. */
  List<String> unreadable() {
    synchronized (unreadable) {
      return unreadable.stream().sorted().toList();
    }
  }

  private View.@Nullable Picture write(SiteFolder folder, Photo photo, int number) {
    try {
      byte[] bytes = edition.evidence().bytes(photo.file(), MOST_BYTES);
      Optional<Made> calibrated = calibrated(bytes, photo);
      Made made = calibrated.isPresent() ? calibrated.get() : smaller(bytes, LONGEST_SIDE);
      String path =
          "pictures/" + addresses.name("picture", photo.run()) + "-" + (number + 1) + ".jpg";
      folder.write(path, made.jpeg());
      return new View.Picture(
          path,
          made.width(),
          made.height(),
          Objects.requireNonNullElse(photo.face(), ""),
          Objects.requireNonNullElse(photo.batch(), 1),
          sentence(photo) + (calibrated.isPresent() ? ", calibrated" : ""));
    } catch (IOException | InputException | OutsideException e) {
      synchronized (unreadable) {
        unreadable.add(photo.file() + ": " + e.getMessage());
      }
      return null;
    }
  }

  /**
   * The picture as all calibrated ones look: the same surface has the same colour on each. Empty
   * without a chart in the frame, or with one that the camera's colours cannot be brought to.
   */
  private static Optional<Made> calibrated(byte[] bytes, Photo photo) throws IOException {
    Picture picture;
    try {
      picture = PhotoFile.open(bytes, photo.file()).picture();
    } catch (InputException notForMeasuring) {
      return Optional.empty();
    }
    PhotoCalibration calibration = PhotoReading.calibration(photo, picture);
    if (!calibration.withinGate()) {
      return Optional.empty();
    }
    int factor = Math.max(1, picture.longSide() / LONGEST_SIDE);
    Picture alike = CalibratedPicture.of(picture.reduced(factor), calibration.colours());
    BufferedImage image =
        new BufferedImage(alike.width(), alike.height(), BufferedImage.TYPE_INT_RGB);
    image.setRGB(0, 0, alike.width(), alike.height(), alike.pixels(), 0, alike.width());
    return Optional.of(jpeg(scaled(image, LONGEST_SIDE)));
  }

  /** What the picture shows, for those who do not see it. */
  private String sentence(Photo photo) {
    String of =
        edition
            .campaign()
            .run(photo.run())
            .map(this::subject)
            .orElse("Photograph of run " + photo.run());
    String face = photo.face() == null ? "" : ", " + photo.face();
    String batch = photo.batch() == null ? "" : ", batch " + photo.batch();
    return of + batch + face;
  }

  private String subject(Run run) {
    String test =
        edition.campaign().method().test(run.test()).map(t -> t.name()).orElse(run.test());
    return edition.name(run.product()) + ", " + test + ", replicate " + run.replicate();
  }

  /**
   * A JPEG without metadata, upright, its longest side at most {@code longest} pixels.
   *
   * @throws IOException if it is no picture that can be read, or one with too many pixels
   */
  static Made smaller(byte[] bytes, int longest) throws IOException {
    Optional<BareJpeg.Bare> bare = BareJpeg.of(bytes);
    if (bare.isPresent() && fits(bare.get(), longest) && orientation(bytes) == 1) {
      return new Made(bare.get().jpeg(), bare.get().width(), bare.get().height());
    }
    BufferedImage read = read(bytes, longest);
    BufferedImage upright = upright(scaled(read, longest), orientation(bytes));
    return jpeg(upright);
  }

  private static Made jpeg(BufferedImage image) throws IOException {
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
    return new Made(out.toByteArray(), image.getWidth(), image.getHeight());
  }

  /** A picture that is hardly too large is better left as it is than scaled by a sixth. */
  private static boolean fits(BareJpeg.Bare bare, int longest) {
    return Math.max(bare.width(), bare.height()) <= longest * 5 / 4
        && bare.jpeg().length <= LARGEST_AS_IT_IS;
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
