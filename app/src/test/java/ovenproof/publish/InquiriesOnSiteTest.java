package ovenproof.publish;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.campaign.Inquiry;
import ovenproof.campaign.InquiryStep;
import ovenproof.publish.edition.Edition;

class InquiriesOnSiteTest {
  @TempDir static Path folder;
  private static Path site;
  private static Path standing;

  @BeforeAll
  static void publish() {
    Edition edition =
        SmallCampaign.edition(SmallCampaign.write(folder.resolve("campaign")))
            .with(
                Inquiry.of(
                    List.of(
                        step("a", InquiryStep.Kind.ASKED, "Our <b>oven</b> is faster.", null),
                        step("a", InquiryStep.Kind.ANSWERED, "See the pack.", null),
                        step(
                            "a",
                            InquiryStep.Kind.DECIDED,
                            "Vera Pell and the cook toasted it again, by the lead's eye.",
                            InquiryStep.Outcome.RETESTED),
                        step("b", InquiryStep.Kind.ASKED, "Too pale?", null))));
    site = new Publisher().publish(edition, folder.resolve("site")).site();
    Edition plain = SmallCampaign.edition(SmallCampaign.write(folder.resolve("plain")));
    Path other = new Publisher().publish(plain, folder.resolve("other")).site();
    Path target = folder.resolve("standing");
    standing = new Publisher().publish(edition, target, target, null, List.of(other)).site();
  }

  private static InquiryStep step(
      String key, InquiryStep.Kind kind, String words, InquiryStep.@Nullable Outcome outcome) {
    boolean asked = kind == InquiryStep.Kind.ASKED;
    boolean first = key.equals("a");
    return new InquiryStep(
        key,
        kind,
        Instant.parse(asked ? "2026-04-01T09:00:00Z" : "2026-04-10T09:00:00Z"),
        "Vera Pell",
        asked ? (first ? InquiryStep.From.MAKER : InquiryStep.From.READER) : null,
        asked ? "siskin" : null,
        asked && first ? List.of("Siskin took 4 min & was \"slow\".") : List.of(),
        asked && first ? List.of("siskin-toast-1", "no-such-run") : List.of(),
        asked ? LocalDate.of(2026, 4, 15) : null,
        words,
        outcome,
        outcome == null ? null : Integer.valueOf(1));
  }

  @Test
  void anOutcomeStandsOnTheCorrectionsWithSentencesAndRuns() throws Exception {
    String page = Files.readString(site.resolve("corrections.html"));

    assertThat(page)
        .contains("1 April 2026: a maker asked about Siskin. Retested on 10 April 2026")
        .contains("href=\"#edition-1\"")
        .contains("Siskin took 4 min &amp; was &quot;slow&quot;.")
        .contains("<a href=\"evidence/runs/siskin-toast-1.html\">siskin-toast-1</a>")
        .contains("no-such-run");
    assertThat(site.resolve("evidence/runs/siskin-toast-1.html")).exists();
  }

  @Test
  void ofAnOpenOneOnlyTheDeadlineIsTold() throws Exception {
    assertThat(Files.readString(site.resolve("corrections.html")))
        .contains("a reader asked about Siskin, open, an answer is due by 15 April 2026")
        .doesNotContain("Too pale");
  }

  @Test
  void nobodyIsNamed() throws Exception {
    String page = Files.readString(site.resolve("corrections.html"));

    assertThat(page)
        .doesNotContain("Pell")
        .contains("someone and the cook toasted it again, by the lead");
    assertThat(Files.readString(site.resolve("data/inquiries.json"))).doesNotContain("Pell");
  }

  @Test
  void aStandingListTellsTheOutcomeBesideTheResult() throws Exception {
    assertThat(Files.readString(standing.resolve("standing.html")))
        .contains("Asked since")
        .contains("<a href=\"corrections.html#inquiries\">retested 2026-04-10</a>");
    String other = Files.readString(site.resolve("data/inquiries.json"));
    assertThat(other).contains("\"outcome\" : \"retested\"").contains("\"product\" : \"siskin\"");
  }
}
