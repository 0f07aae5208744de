package ovenproof.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import ovenproof.publish.edition.Edition;
import ovenproof.record.BagExport;
import ovenproof.record.EvidencePack;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** {@code ovenproof export DIR --out BAG}. */
@Command(
    name = "export",
    footer = {"", "For example: ovenproof export examples/phone-and-thermometer --out bag.zip"},
    mixinStandardHelpOptions = true,
    description = "Packs a campaign with its verdict as a bag (BagIt) that anyone can verify.")
final class ExportCommand implements Callable<Integer> {
  @Parameters(paramLabel = "DIR", description = "The campaign folder.")
  private Path folder = Path.of(".");

  @Option(
      names = "--out",
      required = true,
      paramLabel = "BAG",
      description = "Where the bag goes; a name that ends in .zip makes one file.")
  private Path target = Path.of("bag");

  @Option(
      names = "--product",
      paramLabel = "KEY",
      description =
          "Only the evidence of one product, without the names of people: an answer to an inquiry.")
  private @Nullable String product;

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    Edition edition = PublishCommand.edition(folder);
    LocalDate day = LocalDate.now(edition.campaign().info().zone());
    Path bag =
        product != null
            ? new EvidencePack(edition, product).write(target, day)
            : whole(edition, day);
    if (spec != null) {
      if (json) {
        ObjectNode document = JsonNodeFactory.instance.objectNode();
        document.put("format", 1).put("bag", bag.toString());
        document.put("verdict", edition.verdict().version());
        Json.print(spec.commandLine().getOut(), document);
      } else {
        spec.commandLine().getOut().println("verdict " + edition.verdict().version() + ": " + bag);
      }
    }
    return ExitCode.FINE;
  }

  private Path whole(Edition edition, LocalDate day) {
    return new BagExport(
            folder,
            edition.campaign(),
            edition.evidence(),
            edition.measured(),
            edition.verdict(),
            day)
        .write(target);
  }
}
