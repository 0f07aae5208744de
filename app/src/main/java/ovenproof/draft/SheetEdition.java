package ovenproof.draft;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Inquiry;
import ovenproof.desk.Desk;
import ovenproof.publish.edition.Edition;
import ovenproof.web.Workbench;

/** What would be published of a campaign as it stands now. */
final class SheetEdition {
  private SheetEdition() {}

  /** Empty while nothing can be scored. */
  static Optional<Edition> of(Desk desk, Workbench.Sheet sheet) {
    Campaign campaign = sheet.campaign();
    return sheet
        .verdict()
        .map(
            verdict ->
                new Edition(
                        campaign,
                        desk.evidenceOf(campaign.info().id()),
                        sheet.measured(),
                        verdict,
                        Objects.requireNonNullElseGet(
                            campaign.info().published(),
                            () -> LocalDate.now(desk.clock().withZone(campaign.info().zone()))))
                    .with(Inquiry.of(desk.inquiries(campaign.info().id()))));
  }
}
