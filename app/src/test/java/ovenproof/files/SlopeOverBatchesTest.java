package ovenproof.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;
import ovenproof.measure.MeasureService;

/** Back-to-back batches of one run at one setting: the change per batch, with its interval. */
class SlopeOverBatchesTest {
  @TempDir Path root;
  private Folder folder;

  @BeforeEach
  void threeBatchesOfOneOven() {
    folder = new Folder(root);
    folder.replace("method.yaml", "    batches: 2\n", "    batches: 3\n");
    folder.replace(
        "method.yaml", "take: reading, unit: °C}", "take: reading, unit: °C, summary: slope}");
    folder.replace("method.yaml", "at_most: 90 °C", "at_most: 3 K");
  }

  private Measurement skin() {
    LoadedCampaign loaded = CampaignFolder.withAllMeasures().load(root);
    return MeasureService.withDefaults()
        .measure(loaded.campaign(), loaded.evidence())
        .ofRun("toast", "skin", "alder-1")
        .orElseThrow()
        .value();
  }

  /** Readings of 71, 72 and 74: slope 3/2, uncertainty √(1/12), by hand. */
  @Test
  void theChangePerBatchHasAnUncertaintyAndAnInterval() {
    folder.write(
        "readings.csv",
        "run,reading,value,batch\nalder-1,skin,71 °C,1\nalder-1,skin,72 °C,2\nalder-1,skin,74 °C,3\n");
    Measurement slope = skin();
    assertThat(slope.value()).isCloseTo(1.5, within(1e-9));
    assertThat(slope.unit()).isEqualTo(Unit.KELVIN);
    assertThat(slope.uncertainty()).isCloseTo(Math.sqrt(1.0 / 12), within(1e-9));
    assertThat(slope.n()).isEqualTo(3);
    assertThat(slope.note()).contains("90 % interval -0.323 to 3.32");
  }

  @Test
  void twoBatchesWithAValueAreTooFewAndItSaysSo() {
    folder.write(
        "readings.csv", "run,reading,value,batch\nalder-1,skin,71 °C,1\nalder-1,skin,72 °C,2\n");
    Measurement slope = skin();
    assertThat(slope.isMissing()).isTrue();
    assertThat(slope.note()).contains("three batches").contains("found 2");
  }

  @Test
  void aMethodWithTwoBatchesCannotAskForIt() {
    folder.replace("method.yaml", "    batches: 3\n", "    batches: 2\n");
    assertThat(folder.lines())
        .anyMatch(l -> l.contains("found a slope over 2 batches, expected batches: 3 or more"));
  }
}
