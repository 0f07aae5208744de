package ovenproof.publish.card;

import static ovenproof.publish.card.CardDrawing.LEFT;
import static ovenproof.publish.card.CardDrawing.RIGHT;
import static ovenproof.publish.card.CardDrawing.SECOND;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Averaging;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.measure.Measured.Value;
import ovenproof.method.TestPlan;
import ovenproof.publish.card.CardDrawing.Anchor;
import ovenproof.publish.edition.Edition;

/** The cards made so far, and what all cards of an edition have in common. */
final class CardBook {
  /** The line at the foot of every card. */
  static final double FOOT = 996;

  private static final int MOST_WORDS = 12;

  private final Edition edition;
  private final Map<String, Card> cards = new LinkedHashMap<>();

  CardBook(Edition edition) {
    this.edition = edition;
  }

  Edition edition() {
    return edition;
  }

  List<Card> cards() {
    return List.copyOf(cards.values());
  }

  void add(String id, Card.Kind kind, String sentence, CardDrawing drawing) {
    add(id, kind, sentence, drawing, drawing.svg(sentence, metadata()), null);
  }

  /** A card whose drawing moves; its picture is the drawing at its end. */
  void add(
      String id,
      Card.Kind kind,
      String sentence,
      CardDrawing drawing,
      String svg,
      Card.@Nullable Motion motion) {
    String name = free(id);
    double stay = 3 + 0.3 * Math.min(sentence.split("\\s+").length, MOST_WORDS);
    String shows = fingerprint(drawing.shows());
    cards.put(name, new Card(name, kind, sentence, stay, svg, shows, drawing::picture, motion));
  }

  private String free(String id) {
    String plain = id.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    String name = plain;
    for (int i = 2; cards.containsKey(name); i++) {
      name = plain + "-" + i;
    }
    return name;
  }

  private static String fingerprint(String shows) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(shows.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(digest, 0, 8);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  String metadata() {
    return "verdict "
        + edition.verdict().version()
        + ", method "
        + edition.campaign().method().version()
        + ", published "
        + edition.published()
        + (edition.isInvented() ? ", invented" : "");
  }

  /** What stands at the foot of every card: how it was found, and under which verdict. */
  CardDrawing footed(CardDrawing drawing, String words) {
    String version = edition.verdict().version();
    String stamp = "v" + (version.length() > 8 ? version.substring(0, 8) : version);
    String invented = edition.isInvented() ? "invented" : "";
    String foot = words.isEmpty() || invented.isEmpty() ? words + invented : words + " · invented";
    double room = RIGHT - LEFT - Lettering.MEDIUM.width(stamp, 54) - 40;
    return drawing
        .text(Lettering.MEDIUM, foot, LEFT, FOOT, 54, room, SECOND, Anchor.START)
        .stamp(Lettering.MEDIUM, stamp, RIGHT, FOOT, 54, 400, SECOND, Anchor.END);
  }

  /** {@code n = 3}, or {@code n = 2 to 3} where tests differ. */
  String runs() {
    List<Integer> numbers =
        edition.campaign().method().tests().stream()
            .map(TestPlan::replicates)
            .filter(n -> n > 0)
            .distinct()
            .sorted()
            .toList();
    if (numbers.isEmpty()) {
      return "no runs";
    }
    int last = numbers.get(numbers.size() - 1);
    return "n = " + (numbers.size() == 1 ? "" + last : numbers.get(0) + " to " + last);
  }

  /** What a product's runs have in common; one run stands for itself. */
  static Measurement mean(List<Value> values) {
    List<Measurement> all = values.stream().map(Value::value).toList();
    return all.size() == 1
        ? all.get(0)
        : Averaging.mean(all, Subject.ofProduct(values.get(0).product()));
  }
}
