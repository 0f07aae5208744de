package ovenproof.publish.card;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.publish.SmallCampaign;
import ovenproof.publish.edition.Edition;
import ovenproof.verdict.Verdict;

class CardRegisterTest {
  @TempDir Path folder;

  private Edition edition() {
    return SmallCampaign.edition(SmallCampaign.write(folder.resolve("campaign")));
  }

  private CardRegister handedOut(CardRegister before, Edition edition, List<Card> cards)
      throws Exception {
    Path file = folder.resolve("register.json");
    Files.writeString(file, before.json(cards, edition, List.of()));
    return CardRegister.read(file);
  }

  private CardRegister none() {
    return CardRegister.read(folder.resolve("absent.json"));
  }

  private static Card changed(Card card, String sentence, String shows) {
    return new Card(
        card.id(), card.kind(), sentence, 4, card.svg(), shows, card.picture(), card.motion());
  }

  @Test
  void aCardWhoseDrawingMovedIsListedThoughItsSentenceDidNot() throws Exception {
    Edition edition = edition();
    Card card = new CardDeck(edition).cards().get(0);
    CardRegister register = handedOut(none(), edition, List.of(card));
    Card moved = changed(card, card.sentence(), "0123456789abcdef");
    assertThat(register.changed(List.of(moved), "2"))
        .singleElement()
        .satisfies(c -> assertThat(c).startsWith("ranking").contains("drawn otherwise"));
  }

  @Test
  void anotherVerdictWithTheSameFiguresChangesNoCard() throws Exception {
    Edition edition = edition();
    List<Card> cards = new CardDeck(edition).cards();
    CardRegister register = handedOut(none(), edition, cards);
    Verdict verdict = edition.verdict();
    Verdict renamed =
        new Verdict(
            verdict.method(),
            "another",
            verdict.seed(),
            verdict.draws(),
            verdict.margin(),
            verdict.products(),
            verdict.pairs(),
            verdict.warnings());
    Edition later =
        new Edition(
            edition.campaign(),
            edition.evidence(),
            edition.measured(),
            renamed,
            edition.published().plusDays(3));
    List<Card> again = new CardDeck(later).cards();
    assertThat(again.get(0).svg()).isNotEqualTo(cards.get(0).svg()).contains("another");
    assertThat(register.changed(again, "another")).isEmpty();
  }

  @Test
  void aCardThatWasHandedOutTwoEditionsAgoIsStillListed() throws Exception {
    Edition edition = edition();
    Card first = changed(new CardDeck(edition).cards().get(0), "Alder, €289", "aa");
    Card second = changed(first, "Alder, €279", "bb");
    CardRegister register = handedOut(none(), edition, List.of(first));
    register = handedOut(register, edition, List.of(second));
    assertThat(register.changed(List.of(second), "3"))
        .singleElement()
        .satisfies(c -> assertThat(c).contains("€289").contains("2026-03-20"));
    assertThat(register.changed(List.of(), "4")).hasSize(2);
  }

  @Test
  void aDamagedRegisterIsSaidAndNotTakenForAnEmptyOne() throws Exception {
    Path file = folder.resolve("register.json");
    Files.writeString(file, "{\"cards\": [");
    assertThat(CardRegister.read(file).changed(List.of(), "1"))
        .singleElement()
        .satisfies(c -> assertThat(c).contains("could not be read"));
  }
}
