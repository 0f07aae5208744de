package ovenproof.publish.card;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.batik.transcoder.TranscoderException;
import org.apache.batik.transcoder.TranscoderInput;
import org.apache.batik.transcoder.TranscoderOutput;
import org.apache.batik.transcoder.image.ImageTranscoder;
import org.apache.batik.transcoder.image.PNGTranscoder;
import ovenproof.input.OutsideException;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.site.SiteFolder;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A folder of cards, each as SVG and as PNG with transparency, with {@code register.json}: which
 * card was handed out under which verdict, and which of them say something else by now.
 */
public final class CardFolder {
  /** Tells a folder made here from any other. */
  public static final String MARKER = ".ovenproof-cards";

  private static final String REGISTER = "register.json";
  private static final JsonMapper MAPPER =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  private CardFolder() {}

  /**
   * What was written.
   *
   * @param changed sentences: cards of the folder before that say something else now, or are gone
   */
  public record Written(Path folder, int cards, List<String> changed) {
    public Written {
      changed = List.copyOf(changed);
    }
  }

  private record Handed(String version, String shows, String sentence) {}

  /** Writes all cards of an edition; the folder is replaced as a whole. */
  public static Written write(Edition edition, Path target) {
    List<Card> cards = new CardDeck(edition).cards();
    Map<String, Handed> before = read(target.resolve(REGISTER));
    try (SiteFolder folder = SiteFolder.begin(target, MARKER)) {
      cards.parallelStream()
          .forEach(
              card -> {
                folder.write(card.id() + ".svg", card.svg());
                folder.write(card.id() + ".png", png(card.svg()));
              });
      List<String> changed = changed(before, cards, edition);
      folder.write(REGISTER, register(edition, cards, changed));
      return new Written(folder.publish(), cards.size(), changed);
    }
  }

  /** Rasters a card at its own size; what is not painted stays transparent. */
  static byte[] png(String svg) {
    PNGTranscoder transcoder = new PNGTranscoder();
    transcoder.addTranscodingHint(ImageTranscoder.KEY_WIDTH, (float) CardDrawing.WIDTH);
    transcoder.addTranscodingHint(ImageTranscoder.KEY_HEIGHT, (float) CardDrawing.HEIGHT);
    ByteArrayOutputStream out = new ByteArrayOutputStream(60_000);
    try {
      transcoder.transcode(new TranscoderInput(new StringReader(svg)), new TranscoderOutput(out));
    } catch (TranscoderException e) {
      throw new IllegalStateException("a card that was drawn here cannot be rastered", e);
    }
    return out.toByteArray();
  }

  /** What a card shows, without the verdict that it names. */
  private static String shows(Card card) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256")
              .digest(card.sentence().getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(digest, 0, 8);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  private static Map<String, Handed> read(Path register) {
    Map<String, Handed> handed = new TreeMap<>();
    if (!Files.isRegularFile(register)) {
      return handed;
    }
    try {
      for (JsonNode card : MAPPER.readTree(Files.readString(register)).path("cards")) {
        handed.put(
            card.path("id").asString(""),
            new Handed(
                card.path("verdict").asString(""),
                card.path("shows").asString(""),
                card.path("sentence").asString("")));
      }
    } catch (JacksonException e) {
      // A damaged register cannot say what changed; the new one begins anew.
      handed.clear();
    } catch (IOException e) {
      throw new OutsideException("could not read " + register + ": " + e, e);
    }
    return handed;
  }

  private static List<String> changed(
      Map<String, Handed> before, List<Card> cards, Edition edition) {
    List<String> changed = new ArrayList<>();
    Map<String, Card> now = new TreeMap<>();
    cards.forEach(c -> now.put(c.id(), c));
    before.forEach(
        (id, then) -> {
          Card card = now.get(id);
          if (card == null) {
            changed.add(
                id + " of verdict " + then.version() + " is no longer made: " + then.sentence());
          } else if (!shows(card).equals(then.shows())) {
            changed.add(
                id
                    + " of verdict "
                    + then.version()
                    + " said \""
                    + then.sentence()
                    + "\", verdict "
                    + edition.verdict().version()
                    + " says \""
                    + card.sentence()
                    + "\"");
          }
        });
    return changed;
  }

  private static String register(Edition edition, List<Card> cards, List<String> changed) {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("format", 1);
    root.put("verdict", edition.verdict().version());
    ArrayNode list = root.putArray("cards");
    for (Card card : cards) {
      list.addObject()
          .put("id", card.id())
          .put("kind", card.kind().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'))
          .put("sentence", card.sentence())
          .put("staySeconds", card.staySeconds())
          .put("verdict", edition.verdict().version())
          .put("shows", shows(card));
    }
    ArrayNode moved = root.putArray("changedSince");
    changed.forEach(moved::add);
    return MAPPER.writeValueAsString(root) + "\n";
  }
}
