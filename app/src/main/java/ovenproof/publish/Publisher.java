package ovenproof.publish;

import java.nio.file.Path;
import java.util.List;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.site.ReviewSite;
import ovenproof.publish.site.SiteFolder;

/** Writes everything that is published of one edition into one folder. */
public final class Publisher {

  /**
   * What was published.
   *
   * @param site the folder
   * @param headline the finding, as on the first page
   */
  public record Published(
      Path site, String headline, int pages, int pictures, List<String> warnings) {
    public Published {
      warnings = List.copyOf(warnings);
    }
  }

  /**
   * Publishes an edition.
   *
   * @param target a place where nothing is, an empty folder, or one that was published before
   * @throws ovenproof.input.InputException if another folder stands there, or the printed digits do
   *     not add up; then nothing was written
   * @throws ovenproof.input.OutsideException if the disk refuses; then nothing was written
   */
  public Published publish(Edition edition, Path target) {
    try (SiteFolder folder = SiteFolder.begin(target, ReviewSite.MARKER)) {
      ReviewSite.Written written = new ReviewSite(edition).write(folder, target);
      Path site = folder.publish();
      String headline = new ovenproof.publish.edition.Findings(edition).headline();
      return new Published(site, headline, written.pages(), written.pictures(), written.warnings());
    }
  }
}
