package ovenproof.record;

import java.awt.Polygon;
import java.awt.Rectangle;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.imageio.ImageIO;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Photo;
import ovenproof.core.photo.Picture;
import ovenproof.evidence.EvidenceSource;
import ovenproof.evidence.photo.PhotoFile;
import ovenproof.input.InputException;

/**
 * Photographs that show the food of several products, and what of them may be handed out: the own
 * pieces where a person drew them, each by itself, everything around an outline in plain grey.
 */
final class SharedFrames {
  static final String FOLDER = "pieces";
  private static final int GREY = 0x808080;
  private static final long LARGEST_SIDE = 20_000;

  private final Campaign campaign;
  private final EvidenceSource evidence;
  private final Set<String> runs;

  /**
   * @param runs those of the product that the pieces belong to
   */
  SharedFrames(Campaign campaign, EvidenceSource evidence, Set<String> runs) {
    this.campaign = campaign;
    this.evidence = evidence;
    this.runs = Set.copyOf(runs);
  }

  /** Whether a run of another product has its food on the photograph. */
  static boolean isShared(Campaign campaign, String file, Set<String> runs) {
    return campaign.photos().stream()
        .anyMatch(p -> p.file().equals(file) && !runs.contains(p.run()));
  }

  /** Frames of the runs that others share, in the campaign's order. */
  Set<String> files() {
    Set<String> files = new LinkedHashSet<>();
    campaign.photos().stream()
        .filter(p -> runs.contains(p.run()))
        .map(Photo::file)
        .filter(f -> isShared(campaign, f, runs))
        .forEach(files::add);
    return files;
  }

  /** PNG files by path; empty when nobody drew where the own pieces lie, or it cannot be read. */
  Map<String, byte[]> pieces(String file) {
    List<Photo> own =
        campaign.photos().stream()
            .filter(p -> p.file().equals(file) && runs.contains(p.run()))
            .filter(p -> !p.boxes().isEmpty() || !p.outlines().isEmpty())
            .toList();
    if (own.isEmpty() || evidence.size(file).isEmpty()) {
      return Map.of();
    }
    try {
      Picture picture =
          PhotoFile.open(evidence.bytes(file, PhotoFile.LARGEST_BYTES), file).picture();
      Map<String, byte[]> cut = new LinkedHashMap<>();
      own.forEach(photo -> cut(photo, picture, cut));
      return cut;
    } catch (InputException unreadable) {
      return Map.of();
    }
  }

  private static void cut(Photo photo, Picture picture, Map<String, byte[]> all) {
    int number = 0;
    for (Photo.Drawn drawn : photo.outlines()) {
      Polygon outline = new Polygon();
      drawn.corners().forEach(c -> outline.addPoint((int) c.x(), (int) c.y()));
      add(photo, ++number, piece(picture, outline.getBounds(), outline), all);
    }
    for (Photo.Box box : photo.outlines().isEmpty() ? photo.boxes() : List.<Photo.Box>of()) {
      Rectangle bounds = new Rectangle(box.x(), box.y(), box.width(), box.height());
      add(photo, ++number, piece(picture, bounds, null), all);
    }
  }

  private static void add(Photo photo, int number, byte[] png, Map<String, byte[]> all) {
    String face = photo.face() == null ? "" : "-" + photo.face();
    all.put(FOLDER + "/" + photo.run() + face + "-" + number + ".png", png);
  }

  private static byte[] piece(
      Picture picture, Rectangle bounds, @org.jspecify.annotations.Nullable Polygon outline) {
    Rectangle inside = bounds.intersection(new Rectangle(picture.width(), picture.height()));
    int width = (int) Math.max(1, Math.min(LARGEST_SIDE, inside.width));
    int height = (int) Math.max(1, Math.min(LARGEST_SIDE, inside.height));
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        int px = inside.x + x;
        int py = inside.y + y;
        boolean shown =
            inside.contains(px, py) && (outline == null || outline.contains(px + 0.5, py + 0.5));
        image.setRGB(x, y, shown ? picture.at(px, py) : GREY);
      }
    }
    return png(image);
  }

  private static byte[] png(BufferedImage image) {
    try (ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      ImageIO.write(image, "png", out);
      return out.toByteArray();
    } catch (IOException impossible) {
      throw new IllegalStateException("a picture in memory cannot fail", impossible);
    }
  }
}
