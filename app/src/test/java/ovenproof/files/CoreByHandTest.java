package ovenproof.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.campaign.Run;
import ovenproof.core.measure.Measurement;
import ovenproof.input.InputException;
import ovenproof.measure.CoreCriterion;
import ovenproof.measure.MeasureService;
import ovenproof.method.TestPlan;
import ovenproof.verdict.Verdict;
import ovenproof.verdict.Verdict.GateOutcome;
import ovenproof.verdict.VerdictService;

/**
 * A core by hand thermometer through a campaign's files: three named places, the lowest less its
 * uncertainty, and a rest that was timed.
 */
class CoreByHandTest {
  private static final String THREE =
      "run,reading,value,piece,instrument\n"
          + "alder-1,core,64.5 °C,thick-end,P1\n"
          + "alder-1,core,66 °C,middle,P1\n"
          + "alder-1,core,67 °C,bone,P1\n";

  @TempDir Path root;
  private Folder folder;

  @BeforeEach
  void aRoastWithAFloorAndARest() {
    folder = new Folder(root);
    folder.replace(
        "method.yaml",
        "- {id: skin, take: reading, unit: °C}",
        "- {id: core, take: core-held, rest: 3 min}");
    folder.replace(
        "method.yaml",
        "- {id: skin, name: Side skin, kind: ceiling, reason: quality, measure: skin, at_most: 90"
            + " °C, ceiling: 5}",
        "- {id: core, name: Core, kind: veto, reason: safety, measure: core, at_least: 145 °F}");
  }

  private LoadedCampaign loaded() {
    return CampaignFolder.withAllMeasures().load(root);
  }

  private Measurement core() {
    LoadedCampaign loaded = loaded();
    return MeasureService.withDefaults()
        .measure(loaded.campaign(), loaded.evidence())
        .ofRun("toast", "core", "alder-1")
        .orElseThrow()
        .value();
  }

  private GateOutcome.State gate() {
    LoadedCampaign loaded = loaded();
    Verdict verdict =
        new VerdictService(1)
            .verdict(
                loaded.campaign(),
                MeasureService.withDefaults().measure(loaded.campaign(), loaded.evidence()));
    return verdict.products().stream()
        .filter(p -> p.id().equals("alder"))
        .flatMap(p -> p.gates().stream())
        .filter(g -> g.id().endsWith("core"))
        .findFirst()
        .orElseThrow()
        .state();
  }

  private String words() {
    LoadedCampaign loaded = loaded();
    Run run = loaded.campaign().run("alder-1").orElseThrow();
    TestPlan test = loaded.campaign().method().test("toast").orElseThrow();
    return CoreCriterion.of(test)
        .orElseThrow()
        .handWords(loaded.campaign(), test, run)
        .orElseThrow();
  }

  /** 64.5 − 0.5 (correction) = 64.0 °C; U = 2 · 0.3 K: at least 63.4 °C, above 62.8 °C. */
  @Test
  void theLowestPlaceLessItsUncertaintyPassesWithItsRest() {
    folder.write("readings.csv", THREE + "alder-1,core-rest,3 min 10 s,,\n");
    assertThat(core().low()).isCloseTo(63.4, within(1e-9));
    assertThat(core().high()).isCloseTo(64.0, within(1e-9));
    assertThat(core().definition()).contains("no lethality");
    assertThat(gate()).isEqualTo(GateOutcome.State.PASSED);
    assertThat(words())
        .startsWith("Core: reached.")
        .contains("USDA FSIS")
        .contains("local food rules");
  }

  @Test
  void aRestThatWasNotTimedShowsNothing() {
    folder.write("readings.csv", THREE);
    assertThat(core().low()).isNull();
    assertThat(gate()).isEqualTo(GateOutcome.State.NOT_SHOWN);
    assertThat(words()).startsWith("Core: not shown.").contains("The rest was not timed");
  }

  @Test
  void aRestThatWasCutShortIsNotYet() {
    folder.write("readings.csv", THREE + "alder-1,core-rest,2 min,,\n");
    assertThat(gate()).isEqualTo(GateOutcome.State.NOT_SHOWN);
    assertThat(words()).startsWith("Core: not yet.");
  }

  @Test
  void twoPlacesShowNothing() {
    folder.write(
        "readings.csv",
        THREE.replace("alder-1,core,67 °C,bone,P1\n", "") + "alder-1,core-rest,4 min,,\n");
    assertThat(gate()).isEqualTo(GateOutcome.State.NOT_SHOWN);
    assertThat(words()).contains("Three named places are needed, 2 were read");
  }

  @Test
  void aThermometerThatNobodyKnowsShowsNothing() {
    folder.write("readings.csv", THREE.replace(",P1", ",") + "alder-1,core-rest,4 min,,\n");
    assertThat(gate()).isEqualTo(GateOutcome.State.NOT_SHOWN);
    assertThat(words()).contains("uncertainty is not known");
  }

  @Test
  void aPlaceBelowTheFloorFails() {
    folder.write("readings.csv", THREE.replace("64.5 °C", "58 °C") + "alder-1,core-rest,4 min,,\n");
    assertThat(gate()).isEqualTo(GateOutcome.State.FIRED);
    assertThat(words()).startsWith("Core: not reached.");
  }

  @Test
  void aRunWithoutAReadingDoesNotHideBehindTheOthers() {
    folder.append("runs.csv", "alder-2,alder,toast,2,A1,day-1,2026-03-04T14:00:00");
    folder.append("events.csv", "alder-2,load,+0:00,");
    folder.append("events.csv", "alder-2,stop,+6 min,ends-by-itself");
    folder.write("readings.csv", THREE + "alder-1,core-rest,4 min,,\n");
    assertThat(gate()).isEqualTo(GateOutcome.State.NOT_SHOWN);
  }

  @Test
  void aFloorAndALethalityAtOnceAreRefused() {
    folder.replace(
        "method.yaml",
        "- {id: core, take: core-held, rest: 3 min}",
        "- {id: core, take: core-held, rest: 3 min}\n      - {id: f, take: lethality}");
    folder.replace(
        "method.yaml",
        "measure: core, at_least: 145 °F}",
        "measure: core, at_least: 145 °F}\n"
            + "      - {id: f, name: F, kind: veto, reason: safety, measure: f, at_least: 2"
            + " min}");
    folder.write("readings.csv", THREE);
    assertThatThrownBy(this::loaded)
        .isInstanceOf(InputException.class)
        .hasMessageContaining("one criterion of safety");
  }

  @Test
  void theFilesHaveNoProblems() {
    folder.write("readings.csv", THREE + "alder-1,core-rest,3 min 10 s,,\n");
    assertThat(CampaignFolder.withAllMeasures().check(root))
        .extracting(p -> p.severity().name())
        .doesNotContain("ERROR");
    assertThat(loaded().campaign().readings()).hasSize(4);
  }
}
