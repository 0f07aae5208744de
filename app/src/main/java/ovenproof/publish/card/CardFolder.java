package ovenproof.publish.card;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.site.SiteFolder;

/**
 * A folder of cards, each as SVG and as PNG with transparency, with {@code register.json}: which
 * card was handed out under which verdict, and which of them show something else by now.
 */
public final class CardFolder {
  /** Tells a folder made here from any other. */
  public static final String MARKER = ".ovenproof-cards";

  private static final String REGISTER = "register.json";

  private CardFolder() {}

  /**
   * What was written.
   *
   * @param changed sentences: cards handed out before that show something else now, or are gone
   */
  public record Written(Path folder, int cards, List<String> changed) {
    public Written {
      changed = List.copyOf(changed);
    }
  }

  /** Writes all cards of an edition; the folder is replaced as a whole. */
  public static Written write(Edition edition, Path target) {
    return write(edition, target, List.of());
  }

  /**
   * Writes all cards of an edition; the folder is replaced as a whole.
   *
   * @param frames names of clock cards of which every second is wanted as a picture
   * @throws InputException if one of them is no clock card of this edition; then nothing was
   *     written
   */
  public static Written write(Edition edition, Path target, List<String> frames) {
    List<Card> cards = new CardDeck(edition).cards();
    List<Card> running = frames.stream().map(f -> clock(cards, f)).toList();
    CardRegister register = CardRegister.read(target.resolve(REGISTER));
    try (SiteFolder folder = SiteFolder.begin(target, MARKER)) {
      cards.parallelStream().forEach(card -> write(folder, card));
      running.forEach(card -> frames(folder, card));
      List<String> changed = register.changed(cards, edition.verdict().version());
      folder.write(REGISTER, register.json(cards, edition, changed));
      return new Written(folder.publish(), cards.size(), changed);
    }
  }

  /** What the register of a folder said when it was written: cards that show something else. */
  public static List<String> changedSince(Path folder) {
    return CardRegister.changedSince(folder.resolve(REGISTER));
  }

  private static Card clock(List<Card> cards, String id) {
    return cards.stream()
        .filter(c -> c.id().equals(id) && c.motion() != null)
        .findFirst()
        .orElseThrow(() -> noClock(cards, id));
  }

  private static InputException noClock(List<Card> cards, String id) {
    List<String> known = new ArrayList<>();
    cards.stream().filter(c -> c.motion() != null).map(Card::id).forEach(known::add);
    String expected =
        known.isEmpty()
            ? "no test of this campaign has a time"
            : "one of " + String.join(", ", known);
    return new InputException(
        Problem.error(Place.of("--frames"), "no clock card " + id, expected, ""));
  }

  private static void write(SiteFolder folder, Card card) {
    folder.write(card.id() + ".svg", card.svg());
    folder.write(card.id() + ".png", png(card.picture().get()));
  }

  /** One picture a second, numbered from nought, as editing programs read a sequence. */
  private static void frames(SiteFolder folder, Card card) {
    Card.Motion motion = java.util.Objects.requireNonNull(card.motion());
    LongStream.rangeClosed(0, motion.seconds())
        .parallel()
        .forEach(
            second ->
                folder.write(
                    String.format(java.util.Locale.ROOT, "%s/%05d.png", card.id(), second),
                    png(motion.at(second))));
  }

  private static byte[] png(BufferedImage image) {
    ByteArrayOutputStream out = new ByteArrayOutputStream(60_000);
    ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
    try (MemoryCacheImageOutputStream stream = new MemoryCacheImageOutputStream(out)) {
      ImageWriteParam fast = writer.getDefaultWriteParam();
      fast.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      fast.setCompressionQuality(0.6f);
      writer.setOutput(stream);
      writer.write(null, new IIOImage(image, null, null), fast);
    } catch (IOException e) {
      throw new UncheckedIOException("a picture in memory cannot be written", e);
    } finally {
      writer.dispose();
    }
    return out.toByteArray();
  }

  /** Text of a file that may not be there. */
  static String text(Path file) {
    try {
      return Files.isRegularFile(file) ? Files.readString(file) : "";
    } catch (java.nio.charset.CharacterCodingException e) {
      return "damaged";
    } catch (IOException e) {
      throw new OutsideException("could not read " + file + ": " + e, e);
    }
  }
}
