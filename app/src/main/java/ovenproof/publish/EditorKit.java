package ovenproof.publish;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.publish.card.CardFolder;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.footage.Chapters;
import ovenproof.publish.footage.ClipMarkers;
import ovenproof.publish.fragment.Fragments;
import ovenproof.publish.site.SiteFolder;

/**
 * What an editor takes along: fragments for other publishing systems, cards for the screen, markers
 * and chapters for footage. Three folders side by side, each replaced as a whole.
 */
public final class EditorKit {
  private static final String MARKER = ".ovenproof-kit";

  private EditorKit() {}

  /**
   * What was written.
   *
   * @param changed cards handed out before that say something else now
   * @param warnings clips in which nothing of the bench lies
   */
  public record Written(
      Path folder, int cards, int fragments, List<String> changed, List<String> warnings) {
    public Written {
      changed = List.copyOf(changed);
      warnings = List.copyOf(warnings);
    }
  }

  /**
   * Writes the kit.
   *
   * @param clips filmed clips, or empty
   * @param chapters from the editor's cue list, or null
   * @param frames clock cards of which every second is wanted as a picture
   */
  public static Written write(
      Edition edition,
      Path kit,
      List<ClipMarkers.Clip> clips,
      @Nullable Chapters chapters,
      List<String> frames) {
    var fragments = new Fragments(edition).files();
    try (SiteFolder folder = SiteFolder.begin(kit.resolve("fragments"), MARKER)) {
      fragments.forEach(folder::write);
      folder.publish();
    }
    CardFolder.Written cards = CardFolder.write(edition, kit.resolve("cards"), frames);
    List<String> warnings = new ArrayList<>();
    if (!clips.isEmpty() || chapters != null) {
      footage(edition, kit.resolve("footage"), clips, chapters, warnings);
    }
    return new Written(kit, cards.cards(), fragments.size(), cards.changed(), warnings);
  }

  private static void footage(
      Edition edition,
      Path target,
      List<ClipMarkers.Clip> clips,
      @Nullable Chapters chapters,
      List<String> warnings) {
    try (SiteFolder folder = SiteFolder.begin(target, MARKER)) {
      for (int i = 0; i < clips.size(); i++) {
        ClipMarkers markers = ClipMarkers.of(edition.campaign(), clips.get(i));
        if (markers.markers().isEmpty()) {
          warnings.add(
              clips.get(i).file()
                  + ": nothing happened at the bench while it was filmed; look at starts and"
                  + " clock_offset");
        }
        String name = "clip-" + (i + 1) + "-" + plain(clips.get(i).file());
        folder.write(name + ".vtt", markers.webVtt());
        folder.write(name + ".txt", markers.plain());
      }
      if (chapters != null) {
        double last =
            chapters.cues().isEmpty()
                ? 0
                : chapters.cues().get(chapters.cues().size() - 1).seconds();
        folder.write("chapters.vtt", chapters.webVtt(last + 60));
        folder.write("chapters.txt", chapters.plain());
      }
      folder.publish();
    }
  }

  private static String plain(String file) {
    String name = file.substring(file.lastIndexOf('/') + 1).replaceAll("[^A-Za-z0-9_-]+", "-");
    return name.length() > 60 ? name.substring(0, 60) : name;
  }
}
