package ovenproof.publish.site;

import java.util.List;
import java.util.Map;
import ovenproof.campaign.Run;
import ovenproof.method.TestPlan;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.edition.Findings;

/**
 * What every page writer reads.
 *
 * @param pictures of each run, in the order of the campaign's photos
 * @param traces of each run, drawn
 */
record View(
    Edition edition,
    Findings findings,
    SiteAddresses addresses,
    PrivateNames names,
    Map<String, List<Picture>> pictures,
    Map<String, List<Drawing>> traces,
    List<Change> changes) {

  /**
   * A published picture.
   *
   * @param path from the site's root
   * @param calibrated whether the same surface has the same colour on every such picture
   * @param sentence what it shows, for those who do not see it
   */
  record Picture(
      String path,
      int width,
      int height,
      String face,
      int batch,
      boolean calibrated,
      String sentence) {}

  /** A chart as SVG with its caption. */
  record Drawing(String svg, String caption) {}

  /** What changed since an earlier edition. */
  record Change(
      java.time.LocalDate on, @org.jspecify.annotations.Nullable String why, String sentence) {}

  List<Picture> pictures(Run run) {
    return pictures.getOrDefault(run.id(), List.of());
  }

  List<Drawing> traces(Run run) {
    return traces.getOrDefault(run.id(), List.of());
  }

  List<TestPlan> tests() {
    return edition.campaign().method().tests();
  }
}
