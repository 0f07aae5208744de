package ovenproof.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import ovenproof.record.Verification;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** {@code ovenproof verify BAG}. */
@Command(
    name = "verify",
    footer = {"", "For example: ovenproof verify bag.zip"},
    mixinStandardHelpOptions = true,
    description = "Checks a bag's fingerprints and computes its published verdict again.")
final class VerifyCommand implements Callable<Integer> {
  @Parameters(paramLabel = "BAG", description = "The bag: a folder or a .zip file.")
  private Path bag = Path.of(".");

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    Verification verification = Verification.of(bag);
    if (spec != null) {
      if (json) {
        Json.print(spec.commandLine().getOut(), document(verification));
      } else {
        verification.remarks().forEach(r -> spec.commandLine().getErr().println(r));
        verification.differences().forEach(d -> spec.commandLine().getOut().println(d));
        spec.commandLine().getOut().println(summary(verification));
      }
    }
    return verification.isSame() ? ExitCode.FINE : ExitCode.INPUT;
  }

  private static String summary(Verification verification) {
    String files =
        verification.files() + " files as they were packed; verdict " + verification.version();
    return verification.isSame()
        ? files + " computed again: the same"
        : files + " computed again: " + verification.differences().size() + " differences";
  }

  private static ObjectNode document(Verification verification) {
    ObjectNode document = JsonNodeFactory.instance.objectNode();
    document.put("format", 1);
    document.put("files", verification.files());
    document.put("verdict", verification.version());
    document.put("same", verification.isSame());
    ArrayNode differences = document.putArray("differences");
    verification.differences().forEach(differences::add);
    ArrayNode remarks = document.putArray("remarks");
    verification.remarks().forEach(remarks::add);
    return document;
  }
}
