package ovenproof.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import ovenproof.campaign.Campaign;
import ovenproof.files.CampaignFolder;
import ovenproof.files.LoadedCampaign;
import ovenproof.input.InputException;
import ovenproof.measure.MeasureService;
import ovenproof.publish.SmallCampaign;
import ovenproof.verdict.Verdict;
import ovenproof.verdict.VerdictService;

/** The two ways in, against each other. */
class FolderAndDeskTest {
  @TempDir Path folder;

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void folderAndDeskGiveTheSameCampaignAndTheSameNumbers(DatabaseKind kind) {
    Path written = SmallCampaign.write(folder.resolve("campaign"));
    LoadedCampaign loaded = CampaignFolder.withAllMeasures().load(written);
    try (Desk desk = kind.open(folder.resolve("desk"))) {
      String id = new FolderImport(desk, CampaignFolder.withAllMeasures()).take(written, "lead");
      Campaign campaign = desk.load(id);
      assertThat(campaign).isEqualTo(loaded.campaign());

      MeasureService measures = MeasureService.withDefaults();
      var measuredFolder = measures.measure(loaded.campaign(), loaded.evidence());
      var measuredDesk = measures.measure(campaign, desk.evidenceOf(id));
      assertThat(measuredDesk).isEqualTo(measuredFolder);
      Verdict ofFolder = new VerdictService(1).verdict(loaded.campaign(), measuredFolder);
      Verdict ofDesk = new VerdictService(1).verdict(campaign, measuredDesk);
      assertThat(ofDesk).isEqualTo(ofFolder);
      assertThat(ofFolder.products()).isNotEmpty();
    }
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void exportGivesTheEvidenceBackByteForByte(DatabaseKind kind) throws IOException {
    Path written = SmallCampaign.write(folder.resolve("campaign"));
    try (Desk desk = kind.open(folder.resolve("desk"))) {
      CampaignFolder folders = CampaignFolder.withAllMeasures();
      String id = new FolderImport(desk, folders).take(written, "lead");
      Path out = folder.resolve("out");
      new FolderExport(desk, folders).write(id, out);
      LoadedCampaign again = folders.load(out);
      assertThat(again.campaign()).isEqualTo(desk.load(id));
      assertThat(again.campaign().evidence()).isNotEmpty();
      for (Campaign.Evidence file : again.campaign().evidence()) {
        assertThat(Files.mismatch(written.resolve(file.path()), out.resolve(file.path())))
            .as(file.path())
            .isEqualTo(-1);
      }
      assertThat(Files.mismatch(written.resolve("method.yaml"), out.resolve("method.yaml")))
          .isEqualTo(-1);
    }
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void aFolderComesInOnceAndABrokenOneNotAtAll(DatabaseKind kind) throws IOException {
    Path written = SmallCampaign.write(folder.resolve("campaign"));
    try (Desk desk = kind.open(folder.resolve("desk"))) {
      FolderImport folderImport = new FolderImport(desk, CampaignFolder.withAllMeasures());
      folderImport.take(written, "lead");
      assertThatThrownBy(() -> folderImport.take(written, "lead"))
          .isInstanceOf(InputException.class)
          .hasMessageContaining("on this desk already");
      Path broken = SmallCampaign.write(folder.resolve("broken"));
      Files.writeString(broken.resolve("runs.csv"), "run,product\nr1,nobody\n");
      assertThatThrownBy(() -> folderImport.take(broken, "lead"))
          .isInstanceOf(InputException.class);
      assertThat(desk.campaigns()).hasSize(1);
    }
  }

  @ParameterizedTest
  @EnumSource(DatabaseKind.class)
  void aZipFileGoesInAndOutAsAJob(DatabaseKind kind) throws Exception {
    Path written = SmallCampaign.write(folder.resolve("campaign"));
    Path zip = folder.resolve("campaign.zip");
    try (ZipOutputStream packed = new ZipOutputStream(Files.newOutputStream(zip));
        var all = Files.walk(written)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        packed.putNextEntry(new ZipEntry("inner/" + written.relativize(file)));
        Files.copy(file, packed);
      }
    }
    try (Desk desk = kind.open(folder.resolve("desk"))) {
      new FolderImport(desk, CampaignFolder.withAllMeasures()).register();
      new FolderExport(desk, CampaignFolder.withAllMeasures()).register();
      Job in = ended(desk, desk.jobs().submit(FolderImport.KIND, null, zip.toString(), "lead"));
      assertThat(in.state()).as(in.message()).isEqualTo(Job.State.DONE);
      String id = in.result();
      Job out = ended(desk, desk.jobs().submit(FolderExport.KIND, id, id, "lead"));
      assertThat(out.state()).as(out.message()).isEqualTo(Job.State.DONE);
      assertThat(Files.size(folder.resolve("desk/outgoing").resolve(out.id() + ".zip")))
          .isPositive();
      assertThat(Files.exists(folder.resolve("desk/outgoing").resolve(out.id() + "-folder")))
          .isFalse();
    }
  }

  private static Job ended(Desk desk, Job job) throws InterruptedException {
    for (int i = 0; i < 6000 && desk.jobs().find(job.id()).orElseThrow().isOpen(); i++) {
      Thread.sleep(10);
    }
    return desk.jobs().find(job.id()).orElseThrow();
  }

  @Test
  void aZipFileThatClimbsOutOfItsFolderIsRefused() throws IOException {
    Path zip = folder.resolve("evil.zip");
    try (ZipOutputStream packed = new ZipOutputStream(Files.newOutputStream(zip))) {
      packed.putNextEntry(new ZipEntry("../../climbed.txt"));
      packed.write("x".getBytes());
    }
    assertThatThrownBy(() -> Unpacking.campaignFolder(zip, folder.resolve("a/b")))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("leaves the folder");
    assertThat(Files.exists(folder.resolve("climbed.txt"))).isFalse();
  }
}
