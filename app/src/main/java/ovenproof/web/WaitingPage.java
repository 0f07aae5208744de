package ovenproof.web;

/** What a page that needs the measured evidence shows until it is there: how far it has come. */
public final class WaitingPage {
  private WaitingPage() {}

  /**
   * Fills the page and names its template.
   *
   * @param section the part of the navigation that the waiting page stands for
   */
  public static String show(Workbench.Sheet sheet, String section, PageFields page) {
    page.put("section", section);
    int done = sheet.stepsDone();
    int total = Math.max(1, sheet.stepsInAll());
    page.put("done", done);
    page.put("total", total);
    page.put("drawing", done >= total);
    return "web/working";
  }
}
