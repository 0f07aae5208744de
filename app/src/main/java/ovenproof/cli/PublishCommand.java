package ovenproof.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import ovenproof.publish.Publisher;
import ovenproof.publish.Publisher.Published;
import ovenproof.publish.edition.Edition;
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

  @Option(names = "--json", description = "Print what was published as JSON.")
  private boolean json;

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    Published published = new Publisher().publish(edition(folder), target);
    if (spec != null) {
      published.warnings().forEach(w -> spec.commandLine().getErr().println("warning: " + w));
      if (json) {
        Json.print(spec.commandLine().getOut(), document(published));
      } else {
        spec.commandLine().getOut().println(published.headline());
        spec.commandLine()
            .getOut()
            .println(published.pages() + " pages: " + published.site().resolve("index.html"));
      }
    }
    return ExitCode.FINE;
  }

  /** The edition of a campaign folder, measured and scored now. */
  static Edition edition(Path folder) {
    return Review.of(folder).edition();
  }

  private static ObjectNode document(Published published) {
    ObjectNode document = JsonNodeFactory.instance.objectNode();
    document.put("format", 1);
    document.put("site", published.site().toString());
    document.put("index", published.site().resolve("index.html").toString());
    document.put("headline", published.headline());
    document.put("pages", published.pages());
    document.put("pictures", published.pictures());
    ArrayNode warnings = document.putArray("warnings");
    published.warnings().forEach(warnings::add);
    return document;
  }
}
