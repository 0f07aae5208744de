package ovenproof.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import ovenproof.files.CampaignFolder;
import ovenproof.input.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** {@code ovenproof check DIR}. */
@Command(
    name = "check",
    footer = {"", "For example: ovenproof check examples/phone-and-thermometer"},
    mixinStandardHelpOptions = true,
    description = "Says everything that is wrong with a campaign folder, in one pass.")
final class CheckCommand implements Callable<Integer> {
  @Parameters(paramLabel = "DIR", description = "The campaign folder.")
  private Path folder = Path.of(".");

  @Option(names = "--json", description = "Print the problems as JSON.")
  private boolean json;

  @Spec private @org.jspecify.annotations.Nullable CommandSpec spec;

  @Override
  public Integer call() {
    List<Problem> problems = CampaignFolder.withAllMeasures().check(folder);
    long errors = count(problems, Problem.Severity.ERROR);
    long warnings = count(problems, Problem.Severity.WARNING);
    if (spec != null) {
      if (json) {
        Json.print(spec.commandLine().getOut(), document(problems));
      } else {
        problems.forEach(p -> spec.commandLine().getErr().println(Ovenproof.line(p)));
        spec.commandLine().getOut().println(summary(errors, warnings));
      }
    }
    return errors == 0 ? ExitCode.FINE : ExitCode.INPUT;
  }

  private static long count(List<Problem> problems, Problem.Severity severity) {
    return problems.stream().filter(p -> p.severity() == severity).count();
  }

  private static String summary(long errors, long warnings) {
    String said = number(errors, "error") + ", " + number(warnings, "warning");
    return errors == 0 ? "fine: " + said : said;
  }

  private static String number(long count, String noun) {
    return count + " " + noun + (count == 1 ? "" : "s");
  }

  private ObjectNode document(List<Problem> problems) {
    ObjectNode document = JsonNodeFactory.instance.objectNode();
    document.put("format", 1);
    document.put("folder", folder.toString());
    document.put("usable", count(problems, Problem.Severity.ERROR) == 0);
    var list = document.putArray("problems");
    for (Problem problem : problems) {
      list.addObject()
          .put("severity", ovenproof.input.Words.of(problem.severity()))
          .put("file", problem.place().file())
          .put("line", problem.place().line())
          .put("column", problem.place().column())
          .put("found", problem.found())
          .put("expected", problem.expected())
          .put("remedy", problem.remedy());
    }
    return document;
  }
}
