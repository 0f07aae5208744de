package ovenproof.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.input.InputException;
import ovenproof.publish.card.CardDeck;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.fragment.Fragments;

/** Names are written by people: none of them may become markup, a script, a path or a formula. */
class HostileNamesTest {
  private static final List<String> NAMES =
      List.of(
          "<script>alert(1)</script>",
          "\"onmouseover=\"x\" </script><b>",
          "=HYPERLINK(\"http://x\")",
          "محمصة | `x` *b*");

  @TempDir Path folder;

  private Edition edition() {
    return SmallCampaign.edition(SmallCampaign.write(folder.resolve("campaign"), NAMES));
  }

  @Test
  void namesStayTextOnEveryPage() throws Exception {
    Path site = new Publisher().publish(edition(), folder.resolve("site")).site();
    for (Path page : new SiteFiles(site).pages()) {
      String html = Files.readString(page);
      assertThat(html).doesNotContain("<script>alert").doesNotContain("\"onmouseover=\"x\"");
      assertThat(html.split("</script>", -1).length)
          .isEqualTo(html.split("<script type=\"application/ld\\+json\">", -1).length);
    }
    assertThat(new SiteFiles(site).deadLinks()).isEmpty();
  }

  @Test
  void aCellThatLooksLikeAFormulaIsMadeText() throws Exception {
    Path site = new Publisher().publish(edition(), folder.resolve("site")).site();
    assertThat(new SiteFiles(site).text("data/ranking.csv")).contains("'=HYPERLINK");
  }

  @Test
  void markdownAndTablesKeepNamesAsText() {
    var files = new Fragments(edition()).files();
    assertThat(files.get("table.md")).contains("&lt;script\\>").contains("\\| \\`x\\` \\*b\\*");
    assertThat(files.get("table.html")).doesNotContain("<script>");
    assertThat(files.get("table.tsv")).contains("'=HYPERLINK");
  }

  @Test
  void cardsDrawThem() {
    new CardDeck(edition()).cards().forEach(c -> assertThat(c.svg()).doesNotContain("<script"));
  }

  @Test
  void aFolderOfOtherPeopleIsLeftAlone() throws Exception {
    Path other = Files.createDirectories(folder.resolve("other"));
    Files.writeString(other.resolve("thesis.txt"), "mine");
    assertThatThrownBy(() -> new Publisher().publish(edition(), other))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("did not make");
    assertThat(other.resolve("thesis.txt")).hasContent("mine");
  }

  @Test
  void publishingAgainReplacesTheSiteAndListsWhatMoved() throws Exception {
    Path site = folder.resolve("site");
    new Publisher().publish(edition(), site);
    Path ratings = folder.resolve("campaign/ratings.csv");
    Files.writeString(
        ratings,
        Files.readString(ratings).replaceAll("(alder-toast-\\d,crispness),[0-9.]+", "$1,2.5"));
    new Publisher().publish(SmallCampaign.edition(folder.resolve("campaign")), site);
    assertThat(new SiteFiles(site).text("index.html")).contains("became").contains("score");
    assertThat(folder)
        .isDirectoryNotContaining(p -> p.getFileName().toString().startsWith(".site"));
  }
}
