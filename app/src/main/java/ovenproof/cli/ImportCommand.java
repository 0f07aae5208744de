package ovenproof.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import ovenproof.record.BagImport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** {@code ovenproof import BAG --out DIR}. */
@Command(
    name = "import",
    footer = {"", "For example: ovenproof import bag.zip --out my-campaign"},
    mixinStandardHelpOptions = true,
    description = "Takes the campaign folder out of a bag, after checking all of it.")
final class ImportCommand implements Callable<Integer> {
  @Parameters(paramLabel = "BAG", description = "The bag: a folder or a .zip file.")
  private Path bag = Path.of(".");

  @Option(
      names = "--out",
      required = true,
      paramLabel = "DIR",
      description = "The campaign folder to be made.")
  private Path target = Path.of("campaign");

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    Path folder = BagImport.read(bag, target);
    if (spec != null) {
      if (json) {
        ObjectNode document = JsonNodeFactory.instance.objectNode();
        document.put("format", 1).put("folder", folder.toString());
        Json.print(spec.commandLine().getOut(), document);
      } else {
        spec.commandLine().getOut().println(folder);
      }
    }
    return ExitCode.FINE;
  }
}
