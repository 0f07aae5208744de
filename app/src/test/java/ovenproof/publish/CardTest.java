package ovenproof.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.input.InputException;
import ovenproof.publish.card.Card;
import ovenproof.publish.card.CardDeck;
import ovenproof.publish.card.CardFolder;
import ovenproof.publish.edition.Edition;

class CardTest {
  @TempDir Path folder;

  private Edition edition() {
    return edition(folder.resolve("campaign"));
  }

  private static Edition edition(Path campaign) {
    return SmallCampaign.edition(SmallCampaign.write(campaign));
  }

  @Test
  void theDeckHasTheKindsThatTheEvidenceCarries() {
    List<Card> cards = new CardDeck(edition()).cards();
    assertThat(cards)
        .extracting(Card::kind)
        .contains(
            Card.Kind.TITLE,
            Card.Kind.SCORE,
            Card.Kind.TEST_RESULT,
            Card.Kind.COMPARISON,
            Card.Kind.RANKING,
            Card.Kind.CLOCK,
            Card.Kind.THERMOMETER,
            Card.Kind.NOT_DONE,
            Card.Kind.CAUTION);
  }

  @Test
  void textIsOutlinesAndEachCardNamesItsVerdict() {
    Edition edition = edition();
    for (Card card : new CardDeck(edition).cards()) {
      assertThat(card.svg()).doesNotContain("<text").contains(edition.verdict().version());
    }
  }

  @Test
  void aFloorOnACardIsRoundedUp() {
    assertThat(new CardDeck(edition()).cards())
        .filteredOn(c -> c.id().equals("caution-poultry"))
        .singleElement()
        .satisfies(c -> assertThat(c.sentence()).contains("165\u00a0°F").contains("74\u00a0°C"));
  }

  @Test
  void nothingIsPaintedOutsideTheTitleSafeArea() throws Exception {
    Path cards = CardFolder.write(edition(), folder.resolve("cards")).folder();
    if (System.getProperty("ovenproof.keep") != null) {
      CopyFolder.copy(cards, Path.of(System.getProperty("ovenproof.keep") + "-cards"));
    }
    try (Stream<Path> files = Files.list(cards)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".png")).toList()) {
        BufferedImage image = ImageIO.read(file.toFile());
        assertThat(image.getWidth()).isEqualTo(1920);
        assertThat(image.getHeight()).isEqualTo(1080);
        assertThat(painted(image)).as(file.getFileName().toString()).isFalse();
      }
    }
  }

  /** Whether any pixel outside 96..1824 × 54..1026 (90 %) is not transparent. */
  private static boolean painted(BufferedImage image) {
    for (int y = 0; y < image.getHeight(); y += 3) {
      for (int x = 0; x < image.getWidth(); x += 3) {
        boolean inside = x >= 95 && x <= 1825 && y >= 53 && y <= 1027;
        if (!inside && image.getRGB(x, y) >>> 24 != 0) {
          return true;
        }
      }
    }
    return false;
  }

  /** SVG 1.1 (W3C), chapter 19: declarative animation, one value of href for each figure. */
  @Test
  void aClockRunsInItsDrawingAndInPictures() {
    Card clock =
        new CardDeck(edition())
            .cards().stream()
                .filter(c -> c.id().equals("clock-toast-time-alder"))
                .findFirst()
                .orElseThrow();
    long seconds = Objects.requireNonNull(clock.motion()).seconds();
    assertThat(seconds).isBetween(190L, 205L);
    assertThat(clock.svg())
        .contains("values=\"#f0;#f1;#f2;#f3;#f4;#f5;#f6;#f7;#f8;#f9\" dur=\"10s\"")
        .contains("repeatDur=\"" + seconds + ".5s\" fill=\"freeze\"");
    BufferedImage still = clock.picture().get();
    assertThat(different(clock.motion().at(seconds), still)).isLessThan(50);
    assertThat(different(clock.motion().at(0), still)).isGreaterThan(5000);
  }

  private static int different(BufferedImage a, BufferedImage b) {
    int different = 0;
    for (int y = 0; y < a.getHeight(); y++) {
      for (int x = 0; x < a.getWidth(); x++) {
        different += a.getRGB(x, y) == b.getRGB(x, y) ? 0 : 1;
      }
    }
    return different;
  }

  @Test
  void framesOfACardThatDoesNotRunAreRefusedWithThoseThatDo() {
    assertThatThrownBy(
            () -> CardFolder.write(edition(), folder.resolve("cards"), List.of("ranking")))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("no clock card ranking")
        .hasMessageContaining("clock-toast-time-alder");
    assertThat(folder.resolve("cards")).doesNotExist();
  }

  @Test
  void everyCardSaysItsNumberOfRunsAndItsVersion() {
    Edition edition = edition();
    assertThat(new CardDeck(edition).cards())
        .filteredOn(
            c ->
                c.kind() == Card.Kind.TEST_RESULT && c.id().startsWith("test-toast")
                    || c.kind() == Card.Kind.CLOCK
                    || c.kind() == Card.Kind.THERMOMETER)
        .isNotEmpty()
        .allSatisfy(c -> assertThat(c.sentence()).contains("n = 3"));
  }

  @Test
  void cardsThatSaySomethingElseNowAreListed() throws Exception {
    Path cards = folder.resolve("cards");
    assertThat(CardFolder.write(edition(), cards).changed()).isEmpty();
    Path prices = folder.resolve("campaign/prices.csv");
    Files.writeString(prices, Files.readString(prices).replace("alder,289,", "alder,279,"));
    Edition later = SmallCampaign.edition(folder.resolve("campaign"));
    assertThat(CardFolder.write(later, cards).changed())
        .singleElement()
        .satisfies(c -> assertThat(c).contains("title-alder").contains("€289").contains("€279"));
  }
}
