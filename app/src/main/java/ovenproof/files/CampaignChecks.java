package ovenproof.files;

import ovenproof.measure.MeasureRegistry;

/** What each row says may be right, and still they contradict each other. */
final class CampaignChecks {
  private final Context context;
  private final Sections sections;

  CampaignChecks(Context context, Sections sections, MeasureRegistry registry) {
    this.context = context;
    this.sections = sections;
  }

  void run() {
    new EvidenceChecks(context, sections).run();
  }
}
