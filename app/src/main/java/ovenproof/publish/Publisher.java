package ovenproof.publish;

import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.site.PictureCache;
import ovenproof.publish.site.ReviewSite;
import ovenproof.publish.site.SiteFolder;

/** Writes everything that is published of one edition into one folder. */
public final class Publisher {
  private final PictureCache pictures;

  /** One that makes every picture anew. */
  public Publisher() {
    this(PictureCache.none());
  }

  public Publisher(PictureCache pictures) {
    this.pictures = pictures;
  }

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
    return publish(edition, target, target, null);
  }

  /**
   * Publishes an edition that follows those of an earlier site.
   *
   * @param earlier the site whose editions are carried over; usually the target itself
   * @param why the reason printed beside a new edition, or null
   * @throws ovenproof.input.InputException also if a frozen edition was damaged
   */
  public Published publish(Edition edition, Path target, Path earlier, @Nullable String why) {
    return publish(edition, target, earlier, why, List.of());
  }

  /**
   * Publishes an edition with a standing list over several reviews.
   *
   * @param others sites of other reviews
   * @throws ovenproof.input.InputException also if one of them is no published site
   */
  public Published publish(
      Edition edition, Path target, Path earlier, @Nullable String why, List<Path> others) {
    try (SiteFolder folder = SiteFolder.begin(target, ReviewSite.MARKER)) {
      ReviewSite.Written written =
          new ReviewSite(edition, pictures).write(folder, target, earlier, why, others);
      Path site = folder.publish();
      String headline = new ovenproof.publish.edition.Findings(edition).headline();
      return new Published(site, headline, written.pages(), written.pictures(), written.warnings());
    }
  }
}
