package ovenproof.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import ovenproof.proof.Proof.Claim;
import ovenproof.proof.Proof.Finding;

/** Texts that no editor would hand in, and that come all the same. */
class ProofRobustnessTest {
  private static Proofreader proofreader;

  @BeforeAll
  static void load() {
    proofreader = FrozenCampaign.load().proofreader();
  }

  @Test
  void aTextOfTwoHundredThousandWordsIsReadToItsEnd() {
    String filler = "It was a quiet afternoon in the kitchen and nothing much was measured. ";
    String draft = filler.repeat(17_000) + "\n\nAlder scored 9.3 overall.\n";
    assertThat(draft.split("\\s+").length).isGreaterThan(200_000);
    List<Claim> claims = proofreader.read(draft).claims();
    assertThat(claims.get(claims.size() - 1).finding()).isEqualTo(Finding.CONTRADICTED);
    assertThat(claims.get(claims.size() - 1).line()).isEqualTo(3);
  }

  @Test
  void oneEndlessSentenceIsCutAndStillChecked() {
    String draft = "and then we waited ".repeat(2_000) + "until Alder reached 220 °C in 19 minutes";
    assertThat(proofreader.read(draft).claims())
        .anyMatch(c -> c.text().equals("19 minutes") && c.finding() == Finding.CONTRADICTED);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "\uFEFF",
        "\u0000\u0001\u0002",
        "# ",
        "|||||\n|---|\n|",
        "| a |\n|---|---|---|\n| Alder | 7.2 | 7.2 | 7.2 |",
        "``` \nAlder took 99 minutes",
        "[Alder](javascript:alert(1)) scored **8.0",
        "<script>alert('Alder took 12 minutes')</script>",
        "<<<<<<<<>>>>>>> [[[[((((",
        "WEBVTT\n\n00:00 --> \nAlder",
        "1\n00:00:01,000 --> 00:00:02,000\n",
        "99999999999999999999999999 minutes",
        "0 °C 0 minutes 0 × 0/10",
        "1/0 -5 °C −40 °F",
        "Alder took 5:99 minutes and 7:7:7",
        "\u202EAlder took 12 minutes\u202C",
        "🔥🔥 Alder 🔥 took 🔥 12 🔥 minutes 🔥",
        "Олдер потратил 12 минут, 阿尔德 用了 12 分钟, ألدر 12 دقيقة",
        "ALDER TOOK TWELVE MINUTES",
      })
  void noTextIsTooBrokenToRead(String draft) {
    assertThatCode(() -> proofreader.read(draft)).doesNotThrowAnyException();
  }

  @Test
  void randomPiecesOfSentencesAreReadWithPlacesInsideTheText() {
    String[] pieces =
        ("Alder|Hornbeam|the Larch|it|than|faster|12 minutes|7.2|out of 10|°C|two|half|a|and|,|.|\n|# |"
                + "- || |**|(|)|twice as|as|never|reached|the only|of the eight|no oven|–|€|219|:|the fastest|"
                + "percent|%|six point|four|over|about|not|toast|turkey|165 °F|safe|0|1e9|½|L*|-->|\"|which")
            .split("\\|");
    Random random = new Random(20260316);
    for (int i = 0; i < 400; i++) {
      StringBuilder draft = new StringBuilder();
      for (int j = 0; j < 60; j++) {
        draft
            .append(pieces[random.nextInt(pieces.length)])
            .append(random.nextInt(9) == 0 ? "" : " ");
      }
      String[] lines = draft.toString().split("\n", -1);
      for (Claim claim : proofreader.read(draft.toString()).claims()) {
        assertThat(claim.line()).isBetween(1, lines.length);
        assertThat(claim.column()).isBetween(1, lines[claim.line() - 1].length() + 1);
      }
    }
  }

  @Test
  void aWordThatIsAlsoAProductsNameIsNoProduct() {
    assertThat(
            proofreader
                .read("We put the toast on a table of alder and waited 12 minutes for the plover.")
                .claims())
        .noneMatch(c -> c.finding() == Finding.CONTRADICTED);
  }

  @Test
  void contradictoryUnitsAreNotTakenForAMeasurement() {
    List<Claim> claims =
        proofreader.read("Alder weighed 12 minutes and took 8 kg to preheat.").claims();
    assertThat(claims).noneMatch(c -> c.finding() == Finding.SUPPORTED);
  }

  @Test
  void codeAndAddressesAreNotProofread() {
    assertThat(
            proofreader
                .read(
                    "```\nAlder took 99 minutes\n```\n\nSee https://example.org/alder-99-minutes\n")
                .claims())
        .isEmpty();
  }

  @Test
  void theClaimOfACaptionCarriesTheTimecodeOfItsOwnCue() {
    String captions =
        "WEBVTT\n\n00:01.000 --> 00:04.000\nThe Alder reached 220\n\n"
            + "00:04.000 --> 00:09.000\nin nineteen minutes.\n";
    assertThat(proofreader.read(captions).claims())
        .anyMatch(
            c ->
                c.finding() == Finding.CONTRADICTED
                    && c.text().contains("nineteen minutes")
                    && "00:04.000".equals(c.timecode()));
  }

  @Test
  void aClaimSaysFigureFoundFigureExpectedAndWhereItComesFrom() {
    Claim claim = proofreader.read("Alder toasted four slices in 8 min 18 s.").claims().get(0);
    assertThat(claim.stated()).isEqualTo("8 min 18 s");
    assertThat(claim.expected()).isEqualTo("7 min 18 s");
    assertThat(claim.evidence()).isNotEmpty();
    assertThat(claim.why()).contains("Alder").contains("Toast");
  }
}
