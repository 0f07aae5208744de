package ovenproof.verdict;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.files.CampaignFolder;
import ovenproof.files.LoadedCampaign;
import ovenproof.input.InputException;
import ovenproof.measure.MeasureService;
import ovenproof.measure.Measured;
import ovenproof.verdict.Verdict.GateOutcome;
import ovenproof.verdict.Verdict.ProductVerdict;
import ovenproof.verdict.Verdict.Score.Known;
import ovenproof.verdict.question.QuestionAnswer;
import ovenproof.verdict.question.VerdictQuestions;
import tools.jackson.databind.node.ObjectNode;

/** A small invented campaign whose answers were computed by hand. */
class VerdictServiceTest {
  @TempDir Path folder;

  @BeforeEach
  void copy() throws Exception {
    Path source =
        Path.of(
            VerdictServiceTest.class.getResource("/ovenproof/verdict/four-invented-ovens").toURI());
    try (var files = Files.list(source)) {
      for (Path file : files.toList()) {
        Files.copy(file, folder.resolve(file.getFileName().toString()));
      }
    }
  }

  private void edit(String file, String from, String to) throws Exception {
    Path path = folder.resolve(file);
    String text = Files.readString(path);
    assertThat(text).contains(from);
    Files.writeString(path, text.replace(from, to));
  }

  private VerdictService.Scored scored() {
    LoadedCampaign loaded = CampaignFolder.withAllMeasures().load(folder);
    Measured measured = MeasureService.withDefaults().measure(loaded.campaign(), loaded.evidence());
    return new VerdictService(2).score(loaded.campaign(), measured);
  }

  private VerdictQuestions questions() {
    LoadedCampaign loaded = CampaignFolder.withAllMeasures().load(folder);
    return new VerdictQuestions(loaded.campaign(), scored(), 1);
  }

  private ProductVerdict product(String id) {
    return scored().verdict().product(id).orElseThrow();
  }

  @Test
  void theTotalFollowsFromWhatIsShown() {
    // Alder: time 4:06 → 10 − (4.1 − 2) = 7.9; shade 4 → 8.0; toast (7.9 + 2·8.0)/3 = 7.967 → 8.0;
    // grill 8.1; total (3·8.0 + 8.1)/4 = 8.025 → 8.0.
    ProductVerdict alder = product("alder");
    assertThat(alder.test("toast").orElseThrow().score().value()).hasToString("8.0");
    assertThat(alder.test("grill").orElseThrow().score().value()).hasToString("8.1");
    assertThat(alder.score().value()).hasToString("8.0");
    assertThat(alder.score().known()).isEqualTo(Known.INTERVAL);
  }

  @Test
  void theRealTieIsOneTier() {
    Verdict verdict = scored().verdict();
    assertThat(verdict.tier(1).stream().map(ProductVerdict::id)).containsExactly("alder", "birch");
    assertThat(product("birch").rank()).isEqualTo(new Verdict.RankSet(1, 2));
    double best = product("alder").probabilityBest() + product("birch").probabilityBest();
    assertThat(best).isGreaterThan(0.99);
  }

  @Test
  void theCapIsABoundNotAValue() throws Exception {
    // The worst anchor, 12 min, is the cap itself: 0 points whatever the time was.
    assertThat(toastTime("weak").score().value()).hasToString("0.0");
    edit("method.yaml", "[12 min, 0]", "[22 min, 0]");
    // Now 12 min is worth 5.0, any later time less.
    Verdict.Node time = toastTime("weak");
    assertThat(time.score().known()).isEqualTo(Known.AT_MOST);
    assertThat(time.score().value()).hasToString("5.0");
    assertThat(time.score().low()).hasToString("0.0");
    assertThat(product("weak").score().known()).isEqualTo(Known.AT_MOST);
  }

  private Verdict.Node toastTime(String product) {
    return product(product).test("toast").orElseThrow().children().get(0);
  }

  @Test
  void whatWasNotAskedIsReweightedOnlyWhereTheMethodSaysSo() throws Exception {
    assertThat(product("cedar").score().known()).isEqualTo(Known.BOUNDS);
    assertThat(product("cedar").missing()).anyMatch(m -> m.contains("it has no grill"));
    edit("method.yaml", "measure: mark,", "measure: mark, not_asked: reweight,");
    // Toast 6.0 alone, held down to the ceiling of 5 by its hot side.
    assertThat(product("cedar").score().value()).hasToString("5.0");
    assertThat(product("cedar").test("grill").orElseThrow().score().known())
        .isEqualTo(Known.NOT_ASKED);
  }

  @Test
  void whatCannotBeDoneScoresZeroUnlessTheMethodSaysOtherwise() {
    Verdict.Node grill = product("weak").test("grill").orElseThrow();
    assertThat(grill.score().value()).hasToString("0.0");
    assertThat(grill.score().known()).isEqualTo(Known.CANNOT_DO);
  }

  @Test
  void aGateThatFiresSaysSoWithItsNumbers() {
    GateOutcome gate = product("cedar").gates().get(0);
    assertThat(gate.state()).isEqualTo(GateOutcome.State.FIRED);
    assertThat(gate.test()).isEqualTo("toast");
    assertThat(gate.words()).startsWith("100 ± 0.58 °C against at most 90 °C");
  }

  @Test
  void aMissingRunIsNeverAZero() throws Exception {
    edit("not-run.csv", "weak,grill,cannot-do,the tray does not fit", "");
    ProductVerdict weak = product("weak");
    assertThat(weak.missing()).containsExactly("Grill, Grill mark: missing: no run was recorded");
    assertThat(weak.score().known()).isEqualTo(Known.BOUNDS);
    assertThat(weak.score().value()).isNull();
    // 1.7 for toast: (3·1.7 + 0)/4 = 1.275 and (3·1.7 + 10)/4 = 3.775.
    assertThat(weak.score().low().doubleValue()).isLessThanOrEqualTo(1.3);
    assertThat(weak.score().high().doubleValue()).isGreaterThanOrEqualTo(3.8);
  }

  @Test
  void oneRunEachHasNoIntervalAndNoRank() throws Exception {
    List<String> runs = Files.readAllLines(folder.resolve("runs.csv"));
    Files.write(
        folder.resolve("runs.csv"), runs.stream().filter(r -> !r.matches(".*-[23],.*")).toList());
    for (String file : List.of("events.csv", "readings.csv")) {
      List<String> rows = Files.readAllLines(folder.resolve(file));
      Files.write(
          folder.resolve(file), rows.stream().filter(r -> !r.matches(".*-[23],.*")).toList());
    }
    ProductVerdict alder = product("alder");
    assertThat(alder.rank()).isNull();
    assertThat(alder.score().known()).isEqualTo(Known.VALUE_ONLY);
    assertThat(alder.score().low()).isNull();
    assertThat(alder.score().note()).contains("one run only");
    assertThat(scored().verdict().margin()).isNull();
    edit("method.yaml", "measure: time\n", "measure: time\n        repeatability: 10 s\n");
    edit("method.yaml", "measure: shade\n", "measure: shade\n        repeatability: 0.8 ΔE00\n");
    edit("method.yaml", "measure: mark,", "measure: mark, repeatability: 0.3 points,");
    assertThat(product("alder").score().known()).isEqualTo(Known.INTERVAL);
    assertThat(product("alder").rank()).isNotNull();
  }

  @Test
  void aPercentileInAPoolOfOneIsMissingAndTheRestStillScores() throws Exception {
    edit(
        "method.yaml",
        "{points: [[0 points, 0], [10 points, 10]]}",
        "{percentile: {pool: earlier, better: higher, values: [5 points]}}");
    LoadedCampaign loaded;
    try {
      loaded = CampaignFolder.withAllMeasures().load(folder);
    } catch (InputException e) {
      // The reader may refuse the pool already; then it says so in words.
      assertThat(e.problems()).anyMatch(p -> p.toString().contains("pool"));
      return;
    }
    Measured measured = MeasureService.withDefaults().measure(loaded.campaign(), loaded.evidence());
    Verdict verdict = new VerdictService(1).verdict(loaded.campaign(), measured);
    ProductVerdict alder = verdict.product("alder").orElseThrow();
    assertThat(verdict.warnings()).anyMatch(w -> w.contains("pool is too small"));
    assertThat(alder.test("toast").orElseThrow().score().value()).hasToString("8.0");
    assertThat(alder.score().known()).isEqualTo(Known.BOUNDS);
  }

  @Test
  void classTwoDeviationsAreAnalysedWithAndWithout() throws Exception {
    Files.writeString(
        folder.resolve("deviations.csv"), "run,class,what\nalder-toast-1,2,load 3 % too heavy\n");
    assertThat(scored().verdict().warnings())
        .anyMatch(w -> w.contains("class 2 deviation (alder-toast-1)"));
  }

  @Test
  void theSameCampaignHasTheSameVerdictAndAnotherSeedAnotherName() throws Exception {
    Verdict first = scored().verdict();
    assertThat(scored().verdict()).isEqualTo(first);
    edit("method.yaml", "seed: 7", "seed: 8");
    assertThat(scored().verdict().version()).isNotEqualTo(first.version());
  }

  @Test
  void anotherReaderWeighsTheTestsOtherwise() {
    LoadedCampaign loaded = CampaignFolder.withAllMeasures().load(folder);
    Measured measured = MeasureService.withDefaults().measure(loaded.campaign(), loaded.evidence());
    VerdictService service = new VerdictService(1);
    Verdict griller = service.score(loaded.campaign(), measured, "griller").verdict();
    // (1·8.0 + 9·8.1)/10 = 8.09.
    assertThat(griller.product("alder").orElseThrow().score().value()).hasToString("8.1");
    assertThat(griller.product("alder").orElseThrow().tests().get(1).parts()).isEqualTo(9);
    assertThatThrownBy(() -> service.score(loaded.campaign(), measured, "grillr"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("did you mean \"griller\"?");
  }

  @Test
  void jsonHasTheNamesOfTheContract() {
    ObjectNode json = VerdictJson.of(scored().verdict());
    assertThat(json.get("format").asInt()).isEqualTo(1);
    assertThat(json.get("method").asString()).isEqualTo("tiny-ovens 1");
    var alder = json.get("products").get(0);
    for (String key :
        List.of(
            "id",
            "score",
            "low",
            "high",
            "rank",
            "probabilityBest",
            "probabilityBestAtMost",
            "tier",
            "tests",
            "criteria",
            "gates",
            "missing")) {
      assertThat(alder.has(key)).as(key).isTrue();
    }
    assertThat(alder.get("rank").get("low").asInt()).isEqualTo(1);
    for (String key : List.of("id", "score", "low", "high")) {
      assertThat(alder.get("tests").get(0).has(key)).as(key).isTrue();
    }
    assertThat(alder.get("score").decimalValue()).isEqualByComparingTo("8.0");
  }

  @Test
  void theReasonsForAGapAddUpToIt() {
    QuestionAnswer why = questions().why("alder", "weak");
    double sum = 0;
    for (List<Object> row : why.rows().subList(0, why.rows().size() - 1)) {
      sum += Double.parseDouble(row.get(4).toString().replace('−', '-'));
    }
    List<Object> total = why.rows().get(why.rows().size() - 1);
    assertThat(sum)
        .isCloseTo(
            Double.parseDouble(total.get(4).toString().replace('−', '-')),
            org.assertj.core.api.Assertions.within(0.011));
    assertThat(why.sentences()).anyMatch(s -> s.contains("separated"));
  }

  @Test
  void everyQuestionHasAnAnswer() {
    VerdictQuestions questions = questions();
    List<QuestionAnswer> answers =
        List.of(
            questions.unseat(),
            questions.acceptability(30),
            questions.dropTests(),
            questions.dropRuns(),
            questions.worth(),
            questions.moreRuns("alder", "birch"),
            questions.value(),
            questions.moved(scored().scoringCase(), "yesterday"),
            questions.suited(List.of("toast:first-tier", "total>=2", "no-gate")));
    assertThat(answers)
        .allSatisfy(
            answer -> {
              assertThat(answer.json().get("rows").size()).isEqualTo(answer.rows().size());
              assertThat(answer.lines()).hasSizeGreaterThan(2);
            });
    assertThatThrownBy(() -> questions.suited(List.of("tost:first-tier")))
        .hasMessageContaining("did you mean \"toast\"?");
    assertThatThrownBy(() -> questions.why("alder", "elm")).hasMessageContaining("one of alder");
  }

  @Test
  void theTextShowsScoresIntervalsTiersAndReservations() {
    List<String> lines = VerdictText.lines(scored().verdict(), "Four invented ovens (invented)");
    assertThat(lines.get(0)).isEqualTo("Four invented ovens (invented)");
    assertThat(lines).anyMatch(l -> l.contains("Alder") && l.contains("●") && l.contains("1–2"));
    assertThat(lines).anyMatch(l -> l.contains("not shown to differ"));
    assertThat(lines).anyMatch(l -> l.contains("one specimen each"));
  }
}
