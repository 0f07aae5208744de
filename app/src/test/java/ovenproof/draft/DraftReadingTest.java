package ovenproof.draft;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.draft.KeptDraft.Confirmation;
import ovenproof.proof.Proof.Finding;
import ovenproof.proof.Proofreader;
import ovenproof.publish.SmallCampaign;
import ovenproof.publish.edition.Edition;

class DraftReadingTest {
  @TempDir static Path folder;

  private static Edition first;
  private static Edition later;

  @BeforeAll
  static void measureTwice() throws IOException {
    Path campaign = SmallCampaign.write(folder.resolve("campaign"));
    first = SmallCampaign.edition(campaign);
    Path ratings = campaign.resolve("ratings.csv");
    Files.writeString(
        ratings,
        Files.readString(ratings).replaceAll("(alder-toast-\\d,crispness),[0-9.]+", "$1,2.5"));
    later = SmallCampaign.edition(campaign);
  }

  private static DraftReading read(KeptDraft draft, Edition edition) {
    return DraftReading.of(
        draft,
        new FigureBook(edition),
        new Proofreader(edition.campaign(), edition.measured(), edition.verdict()));
  }

  private static DraftReading read(String text, Edition edition) {
    return read(new KeptDraft(text, Map.of(), Map.of(), Map.of()), edition);
  }

  private static String shown(Edition edition, String name) {
    return new FigureBook(edition).find(name).orElseThrow().text();
  }

  @Test
  void aFigureByNamePrintsWhatTheReviewPrintsAndIsSupported() {
    DraftReading reading = read("Alder scored {alder/score} out of 10.\n", first);
    assertThat(reading.resolved())
        .isEqualTo("Alder scored " + shown(first, "alder/score") + " out of 10.\n");
    assertThat(reading.count(Finding.SUPPORTED)).isEqualTo(1);
    assertThat(reading.unknown()).isEmpty();
  }

  @Test
  void eitherUnitSystemCanBeAskedFor() {
    DraftReading reading =
        read("{alder/poultry/core, first} or {alder/poultry/core, second}", first);
    assertThat(reading.resolved()).matches("\\d+\u00a0°C or \\d+\u00a0°F");
  }

  @Test
  void aNameThatNoFigureHasStaysAndIsNamed() {
    DraftReading reading = read("one\n{alder/speed} and {not a name} {}", first);
    assertThat(reading.resolved()).isEqualTo("one\n{alder/speed} and {not a name} {}");
    assertThat(reading.unknown()).containsExactly("line 2: {alder/speed}");
  }

  @Test
  void aFigureThatMovedIsShownUntilSomebodyLooked() {
    KeptDraft kept = read("Alder scored {alder/score} out of 10.", first).now();
    DraftReading reading = read(kept, later);
    assertThat(reading.moved()).hasSize(1);
    assertThat(reading.moved().get(0).was()).isEqualTo(shown(first, "alder/score"));
    assertThat(reading.moved().get(0).is()).isEqualTo(shown(later, "alder/score"));
    assertThat(read(reading.savedUnseen(kept), later).moved()).hasSize(1);
    assertThat(read(reading.now(), later).moved()).isEmpty();
  }

  @Test
  void aSentenceGoesStaleAloneWhenItsEvidenceMoves() {
    String alder = "Alder scored " + shown(first, "alder/score") + " out of 10.";
    String dunnock = "Dunnock costs " + shown(first, "dunnock/price") + ".";
    KeptDraft kept = read(alder + " " + dunnock + "\n", first).now();
    assertThat(kept.sentences()).hasSize(2);
    assertThat(read(kept, first).stale()).isEmpty();
    DraftReading reading = read(kept, later);
    assertThat(reading.stale()).hasSize(1);
    assertThat(reading.stale().get(0).sentence()).isEqualTo(alder);
    assertThat(reading.stale().get(0).is()).contains("contradicted");
    assertThat(read(reading.savedUnseen(kept), later).stale()).hasSize(1);
  }

  @Test
  void aConfirmedClaimHoldsUntilItsFigureMoves() {
    String text = "Alder toasts at level 8.5 of our scale.";
    DraftReading before = read(text, first);
    assertThat(before.found()).isNotEmpty();
    String key = before.found().get(0).key();
    KeptDraft kept =
        new KeptDraft(
            text,
            Map.of(),
            Map.of(),
            Map.of(key, new Confirmation("alder/toast", shown(first, "alder/toast"), "editor")));
    assertThat(read(kept, first).confirmed()).isEqualTo(1);
    assertThat(KeptDraft.of(kept.body())).isEqualTo(kept);
    DraftReading moved = read(kept, later);
    assertThat(moved.confirmed()).isZero();
    assertThat(moved.stale()).anySatisfy(s -> assertThat(s.was()).contains("confirmed by"));
  }

  @Test
  void hostileMarkdownShowsAsText() {
    String text =
        """
        # Alder <script>alert(1)</script>
        #### deep

        **Alder scored 9.9 out of 10** and [Rowan costs €1](javascript:alert(1)) <img src=x onerror=y>
        ![p](data:text/html,x) `{alder/score}` \u202eright to left\u202c 🍞 &lt; \\* _open
        | a | b
        ```
        <b>Dunnock costs €1
        """;
    String html = DraftPreview.html(read(text, first));
    assertThat(html)
        .doesNotContain("<script")
        .doesNotContain("<img src=x")
        .doesNotContain("javascript:")
        .contains("<mark class=\"contradicted\">")
        .contains("<h2>")
        .contains("<h3>deep</h3>");
    assertThat(html.split("<mark", -1).length).isEqualTo(html.split("</mark>", -1).length);
    assertThat(html).doesNotContainPattern("<a [^>]*>(?:(?!</a>).)*<a ");
  }

  @Test
  void anythingCanBeTypedWithoutAFault() {
    for (String text :
        new String[] {
          "",
          "\n",
          "{",
          "{/}",
          "{a/b",
          "€".repeat(3000),
          "\0",
          "\ud83c",
          "a\r\nb",
          "—\u2028—",
          "7.5 7.5 7.5\n".repeat(400),
          "*".repeat(500),
          "> ".repeat(200) + "Alder scored 3"
        }) {
      DraftReading reading = read(text, first);
      assertThat(DraftPreview.html(reading)).isNotNull();
      assertThat(reading.savedUnseen(KeptDraft.empty()).body()).isNotEmpty();
    }
  }
}
