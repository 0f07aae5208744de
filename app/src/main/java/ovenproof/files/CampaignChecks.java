package ovenproof.files;

/** What each row says may be right, and still they contradict each other. */
final class CampaignChecks {
  private final Context context;
  private final Sections sections;

  CampaignChecks(Context context, Sections sections) {
    this.context = context;
    this.sections = sections;
  }

  void run() {
    new KeyChecks(context).run();
    new ProductChecks(context, sections).run();
    new RedoChecks(sections).run();
    new RunChecks(context, sections).run();
    new StopChecks(context, sections).run();
    new PieceChecks(context, sections).run();
    new PanelChecks(context, sections).run();
    new InstrumentChecks(sections).run();
    new ChannelChecks(sections).run();
    new EvidenceChecks(context).run();
    new PhotoChecks(context, sections).run();
  }
}
