package ovenproof.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.publish.EditorKit;
import ovenproof.publish.Publisher;
import ovenproof.publish.Publisher.Published;
import ovenproof.publish.edition.Edition;
import ovenproof.publish.footage.Chapters;
import ovenproof.publish.footage.ClipList;
import ovenproof.publish.footage.ClipMarkers;
import ovenproof.publish.site.PictureCache;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** {@code ovenproof publish DIR --out SITE}. */
@Command(
    name = "publish",
    footer = {"", "For example: ovenproof publish examples/phone-and-thermometer --out my-site"},
    mixinStandardHelpOptions = true,
    description = "Writes the review site of a campaign, with fragments, cards and data.")
final class PublishCommand implements Callable<Integer> {
  @Parameters(paramLabel = "DIR", description = "The campaign folder.")
  private Path folder = Path.of(".");

  @Option(
      names = "--out",
      required = true,
      paramLabel = "SITE",
      description = "Where the site goes: nothing, an empty folder, or one published before.")
  private Path target = Path.of("site");

  @Option(
      names = "--kit",
      paramLabel = "KIT",
      description = "Also write what an editor takes along: fragments, cards, footage markers.")
  private @Nullable Path kit;

  @Option(
      names = "--clips",
      paramLabel = "CSV",
      description = "Filmed clips (clip,starts,length,clock_offset), for markers in the kit.")
  private @Nullable Path clips;

  @Option(
      names = "--cues",
      paramLabel = "TXT",
      description = "Cue list of the film (0:00 title), for chapters in the kit.")
  private @Nullable Path cues;

  @Option(
      names = "--frames",
      split = ",",
      paramLabel = "CARD",
      description =
          "Clock cards (clock-TEST-MEASURE-PRODUCT) of which the kit gets a picture a second.")
  private List<String> frames = List.of();

  @Option(
      names = "--why",
      paramLabel = "REASON",
      description = "Why this edition differs from the one before; printed with the corrections.")
  private @Nullable String why;

  @Option(
      names = "--after",
      paramLabel = "SITE",
      description = "The site whose editions this one follows; else the one at --out.")
  private @Nullable Path earlier;

  @Option(
      names = "--standing",
      split = ",",
      paramLabel = "SITE",
      description = "Sites of other reviews, for a standing list over all of them.")
  private List<Path> others = List.of();

  @Option(names = "--json", description = "Print what was published as JSON.")
  private boolean json;

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    Edition edition = edition(folder);
    Published published =
        new Publisher(PictureCache.ofUser()).publish(edition, target, earlier(), why, others);
    EditorKit.Written written = kit == null ? null : kit(edition, kit);
    if (spec != null) {
      published.warnings().forEach(w -> spec.commandLine().getErr().println("warning: " + w));
      if (written != null) {
        written.warnings().forEach(w -> spec.commandLine().getErr().println("warning: " + w));
        written
            .changed()
            .forEach(c -> spec.commandLine().getErr().println("handed out, changed since: " + c));
      }
      if (json) {
        Json.print(spec.commandLine().getOut(), document(published, written));
      } else {
        spec.commandLine().getOut().println(published.headline());
        spec.commandLine()
            .getOut()
            .println(published.pages() + " pages: " + published.site().resolve("index.html"));
        if (written != null) {
          spec.commandLine().getOut().println(written.cards() + " cards: " + written.folder());
        }
      }
    }
    return ExitCode.FINE;
  }

  private Path earlier() {
    if (earlier == null) {
      return target;
    }
    if (!Files.isRegularFile(earlier.resolve("data/editions.json"))) {
      throw new InputException(
          Problem.error(
              Place.of(earlier.toString()),
              "no editions",
              "a site that was published before",
              "leave --after out for a first edition"));
    }
    return earlier;
  }

  /** The edition of a campaign folder, measured and scored now. */
  static Edition edition(Path folder) {
    return Review.of(folder).edition();
  }

  private EditorKit.Written kit(Edition edition, Path target) {
    List<ClipMarkers.Clip> filmed =
        clips == null
            ? List.of()
            : ClipList.parse(clips.toString(), text(clips), edition.campaign().info().zone());
    Chapters chapters = cues == null ? null : Chapters.parse(cues.toString(), text(cues));
    return EditorKit.write(edition, target, filmed, chapters, frames);
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new InputException(
          Problem.error(Place.of(file.toString()), "nothing readable", "a text file in UTF-8", ""));
    }
  }

  private static ObjectNode document(Published published, EditorKit.@Nullable Written written) {
    ObjectNode document = JsonNodeFactory.instance.objectNode();
    document.put("format", 1);
    document.put("site", published.site().toString());
    document.put("index", published.site().resolve("index.html").toString());
    document.put("headline", published.headline());
    document.put("pages", published.pages());
    document.put("pictures", published.pictures());
    if (written != null) {
      ObjectNode kit = document.putObject("kit");
      kit.put("folder", written.folder().toString());
      kit.put("cards", written.cards());
      kit.put("fragments", written.fragments());
      ArrayNode changed = kit.putArray("changedSince");
      written.changed().forEach(changed::add);
    }
    ArrayNode warnings = document.putArray("warnings");
    published.warnings().forEach(warnings::add);
    if (written != null) {
      written.warnings().forEach(warnings::add);
    }
    return document;
  }
}
