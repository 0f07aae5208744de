package ovenproof.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import ovenproof.campaign.Inquiry;
import ovenproof.files.CampaignFolder;
import ovenproof.files.InquiryFile;
import ovenproof.files.LoadedCampaign;
import ovenproof.measure.MeasureService;
import ovenproof.measure.Measured;
import ovenproof.measure.Progress;
import ovenproof.publish.edition.Edition;
import ovenproof.verdict.Verdict;
import ovenproof.verdict.VerdictService;

/**
 * A campaign folder, measured and scored now: where the services are put together for the verbs.
 */
record Review(LoadedCampaign loaded, Measured measured, Verdict verdict, List<Inquiry> inquiries) {

  static Review of(Path folder) {
    return of(folder, Progress.NONE);
  }

  static Review of(Path folder, Progress progress) {
    LoadedCampaign loaded = CampaignFolder.withAllMeasures().load(folder);
    Measured measured = measuring().measure(loaded.campaign(), loaded.evidence(), progress);
    return new Review(
        loaded,
        measured,
        scoring().verdict(loaded.campaign(), measured),
        Inquiry.of(InquiryFile.read(folder)));
  }

  static MeasureService measuring() {
    return MeasureService.withUserCache();
  }

  static VerdictService scoring() {
    return new VerdictService(Runtime.getRuntime().availableProcessors());
  }

  /** As published on the day the campaign names, or today in its zone. */
  Edition edition() {
    LocalDate day =
        Objects.requireNonNullElseGet(
            loaded.campaign().info().published(),
            () -> LocalDate.now(loaded.campaign().info().zone()));
    return new Edition(loaded.campaign(), loaded.evidence(), measured, verdict, day)
        .with(inquiries);
  }
}
