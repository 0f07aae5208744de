package ovenproof.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import ovenproof.campaign.Campaign;
import ovenproof.input.Problem;
import ovenproof.input.Problems;
import ovenproof.measure.MeasureRegistry;
import ovenproof.method.Criterion;
import ovenproof.method.Method;
import ovenproof.method.MethodReader;
import ovenproof.method.MethodWriter;
import ovenproof.method.Starters;
import ovenproof.method.TestPlan;
import ovenproof.method.ValueNode;

class StartersTest {
  @TempDir Path root;

  static List<String> starters() {
    return Starters.names();
  }

  private static Method method(String starter) {
    Problems problems = new Problems();
    Method method =
        new MethodReader(MeasureRegistry.all().measures())
            .read("method.yaml", Starters.text(starter), problems)
            .orElseThrow();
    assertThat(problems.all()).isEmpty();
    return method;
  }

  @ParameterizedTest
  @MethodSource("starters")
  void aNewCampaignPassesCheckWithoutAWarning(String starter) {
    CampaignFolder folders = new CampaignFolder(MeasureRegistry.all());
    Path folder = root.resolve("new");
    folders.begin(folder, starter, info());
    assertThat(folders.check(folder)).extracting(Problem::toString).isEmpty();
  }

  static Campaign.Info info() {
    return new Campaign.Info(
        "new",
        "New",
        "Invented kitchen",
        ZoneId.of("Europe/Dublin"),
        "EUR",
        Campaign.Provenance.INVENTED,
        null,
        null,
        null);
  }

  @ParameterizedTest
  @MethodSource("starters")
  void whatIsWrittenIsReadAgain(String starter) {
    Method method = method(starter);
    Problems problems = new Problems();
    assertThat(
            new MethodReader(MeasureRegistry.all().measures())
                .read("method.yaml", MethodWriter.write(method), problems))
        .contains(method);
    assertThat(problems.all()).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("starters")
  void noFoodAsksForMoreThanFourMarks(String starter) {
    assertThat(method(starter).tests()).allSatisfy(t -> assertThat(t.marks()).hasSizeLessThan(5));
  }

  @ParameterizedTest
  @MethodSource("starters")
  void everyTestAndEveryMixtureOfTestsSaysWhy(String starter) {
    Method method = method(starter);
    assertThat(method.why()).isNotBlank();
    assertThat(method.tests()).allSatisfy(t -> assertThat(t.why()).isNotBlank());
  }

  @ParameterizedTest
  @MethodSource("starters")
  void everyTestThatHeatsShowsCautions(String starter) {
    assertThat(method(starter).tests())
        .filteredOn(t -> t.replicates() > 0)
        .allSatisfy(t -> assertThat(t.cautions()).isNotEmpty());
  }

  @ParameterizedTest
  @MethodSource("starters")
  void everyMarkHasThingsToTasteAtBothEnds(String starter) {
    assertThat(method(starter).tests().stream().flatMap(t -> t.marks().stream()))
        .allSatisfy(
            m -> {
              assertThat(m.anchors().get(0).point()).isEqualTo(m.lowest());
              assertThat(m.anchors().get(m.anchors().size() - 1).point()).isEqualTo(m.highest());
            });
  }

  @ParameterizedTest
  @MethodSource("starters")
  void everyMarkIsScoredAndEveryCookedFoodIsWeighed(String starter) {
    for (TestPlan test : method(starter).tests()) {
      List<String> scored =
          test.criteria().stream().flatMap(StartersTest::criteria).map(Criterion::measure).toList();
      assertThat(scored).containsAll(test.marks().stream().map(TestPlan.PanelMark::id).toList());
      if (!test.marks().isEmpty()) {
        assertThat(test.measures()).anyMatch(m -> m.take().equals("mass-loss"));
      }
    }
  }

  private static Stream<Criterion> criteria(ValueNode node) {
    return node instanceof ValueNode.Group group
        ? group.children().stream().flatMap(StartersTest::criteria)
        : Stream.of((Criterion) node);
  }
}
