package ovenproof.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.input.InputException;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.edition.EditionChange;
import ovenproof.publish.edition.EditionHistory;
import ovenproof.publish.edition.EditionJson;
import ovenproof.publish.edition.FrozenEdition;

class EditionsTest {
  private static final String WHY = "Alder's toast was misread.";

  @TempDir static Path shared;
  @TempDir Path folder;

  private static Edition first;
  private static Edition corrected;
  private static Path once;
  private static Path site;

  /** Alder's toast was read as three minutes and crisp; it is corrected to eleven and soft. */
  @BeforeAll
  static void publishTwice() throws IOException {
    Path campaign = SmallCampaign.write(shared.resolve("campaign"));
    first = SmallCampaign.edition(campaign);
    rewrite(campaign.resolve("events.csv"), "(alder-toast-\\d,(?:stop|remove)),\\+3:", "$1,+11:");
    rewrite(campaign.resolve("ratings.csv"), "(alder-toast-\\d,crispness),[0-9.]+", "$1,2.5");
    corrected = SmallCampaign.edition(campaign);
    once = shared.resolve("once");
    new Publisher().publish(first, once);
    site = shared.resolve("site");
    new Publisher().publish(corrected, site, once, WHY);
  }

  private static void rewrite(Path file, String pattern, String replacement) throws IOException {
    String text = Files.readString(file);
    Files.writeString(file, text.replaceAll(pattern, replacement));
    assertThat(Files.readString(file)).isNotEqualTo(text);
  }

  private EditionHistory history() throws IOException {
    return EditionJson.read("editions", Files.readString(site.resolve("data/editions.json")));
  }

  @Test
  void theStandingListHoldsTheNewestResultOfEachProductAndNoRank() throws IOException {
    Path listed = shared.resolve("listed");
    new Publisher().publish(corrected, listed, listed, null, List.of(once));
    String page = Files.readString(listed.resolve("standing.html"));
    String score = FrozenEdition.of(corrected, 1, null).product("alder").orElseThrow().score();
    assertThat(page)
        .contains("Standing list: four results of two reviews")
        .contains("method " + corrected.verdict().method())
        .containsPattern(">Alder</th>\\s*<td[^>]*>" + score + "<")
        .doesNotContain("Tier");
    assertThat(Files.readString(listed.resolve("index.html"))).contains("standing.html");
    assertThat(site.resolve("standing.html")).doesNotExist();
  }

  @Test
  void aPlaceThatIsNoSiteIsNoPartOfAStandingList() {
    Path nothing = folder.resolve("nothing");
    Path target = folder.resolve("site");
    assertThatThrownBy(() -> new Publisher().publish(first, target, target, null, List.of(nothing)))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("no editions");
    assertThat(target).doesNotExist();
  }

  @Test
  void aFrozenEditionStaysByteForByteWhenTheNextOneIsPublished() {
    for (String file : List.of("index.html", "verdict.json", "edition.txt")) {
      assertThat(site.resolve("editions/1/" + file))
          .hasSameBinaryContentAs(once.resolve("editions/1/" + file));
      assertThat(site.resolve("editions/2/" + file)).exists();
    }
  }

  @Test
  void theNextEditionStatesWhatChangedWhenAndWhy() throws IOException {
    FrozenEdition kept =
        EditionJson.read("e", Files.readString(once.resolve("data/editions.json")))
            .editions()
            .get(0);
    assertThat(history().editions()).hasSize(2);
    assertThat(history().editions().get(0)).isEqualTo(kept);
    EditionChange change = history().changes().get(0);
    assertThat(change.moves())
        .anySatisfy(
            m -> {
              assertThat(m.product()).isEqualTo("alder");
              assertThat(m.kind()).isEqualTo(EditionChange.Kind.SCORE);
              assertThat(m.words()).contains("→").contains("(−");
            });
    assertThat(change.moves(EditionChange.Kind.TEST_SCORE))
        .isNotEmpty()
        .allSatisfy(m -> assertThat(m.what()).isEqualTo("Toast"));
    assertThat(change.effectOnRanks()).startsWith("Ranks: ").contains("Alder");
    for (String file : List.of("corrections.html", "index.html", "data/corrections.txt")) {
      assertThat(new SiteFiles(site).text(file)).contains("toast was misread");
    }
    assertThat(new SiteFiles(site).text("corrections.html"))
        .contains("20 March 2026")
        .contains("editions/1/index.html")
        .contains("editions/2/index.html");
    assertThat(new SiteFiles(site).deadLinks()).isEmpty();
  }

  @Test
  void publishingTheSameAgainMakesNoEdition() throws IOException {
    assertThat(history().then(corrected, "No reason at all.").editions()).hasSize(2);
    assertThat(new SiteFiles(once).text("corrections.html")).contains("none so far");
  }

  @Test
  void aDamagedFrozenEditionIsRefusedAndNothingIsWritten() throws IOException {
    Path damaged = folder.resolve("damaged");
    CopyFolder.copy(once, damaged);
    Path verdict = damaged.resolve("editions/1/verdict.json");
    Files.writeString(verdict, Files.readString(verdict).replace("alder", "rowan"));
    assertThatThrownBy(() -> new Publisher().publish(corrected, damaged))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("other bytes than were published");
    assertThat(damaged.resolve("index.html")).hasSameBinaryContentAs(once.resolve("index.html"));
  }

  @Test
  void aDamagedListOfEditionsIsRefused() {
    for (String text :
        List.of("", "{", "{\"editions\":3}", "{\"editions\":[{\"published\":\"soon\"}]}")) {
      assertThatThrownBy(() -> EditionJson.read("data/editions.json", text))
          .isInstanceOf(InputException.class)
          .hasMessageContaining("data/editions.json");
    }
  }

  @Test
  void aListThatNotedLessIsReadAndNothingIsInvented() {
    EditionHistory old =
        EditionJson.read(
            "editions",
            """
            {"format":1,"editions":[{"published":"2025-11-02","verdict":"abc",
            "products":[{"id":"alder","name":"Alder","score":"6.6","rank":"1–2"}]}]}
            """);
    EditionHistory next = old.then(first, null);
    EditionChange change = next.changes().get(0);
    assertThat(change.moves(EditionChange.Kind.PRICE)).isEmpty();
    assertThat(change.moves(EditionChange.Kind.TEST_SCORE)).isEmpty();
    assertThat(change.moves(EditionChange.Kind.LISTED)).hasSize(3);
  }
}
