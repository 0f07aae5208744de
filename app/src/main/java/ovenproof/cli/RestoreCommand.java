package ovenproof.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import ovenproof.desk.DeskLocation;
import ovenproof.record.DeskRestore;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** {@code ovenproof restore BACKUP --desk DIR}. */
@Command(
    name = "restore",
    footer = {"", "For example: ovenproof restore backup.zip --desk ~/another-desk"},
    mixinStandardHelpOptions = true,
    description = "Makes a desk from a backup, after checking all of it; into a new or empty desk.")
final class RestoreCommand implements Callable<Integer> {
  @Parameters(paramLabel = "BACKUP", description = "The backup: a folder or a .zip file.")
  private Path backup = Path.of(".");

  @Option(
      names = "--desk",
      required = true,
      paramLabel = "DIR",
      description = "Folder of the new desk: database and evidence.")
  private Path folder = Path.of("desk");

  @Option(
      names = "--database",
      paramLabel = "URL",
      description = "jdbc:postgresql://… of an empty database; else a SQLite file in the folder.")
  private @Nullable String database;

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    DeskRestore.Restored restored =
        DeskRestore.read(backup, new DeskLocation(folder, database), Clock.systemUTC());
    if (spec != null) {
      PrintWriter out = spec.commandLine().getOut();
      if (json) {
        ObjectNode document = JsonNodeFactory.instance.objectNode();
        document.put("format", 1).put("desk", folder.toString()).put("at", restored.at());
        ObjectNode rows = document.putObject("rows");
        restored.rows().forEach(rows::put);
        document.put("evidence", restored.evidence());
        document.put("published", restored.published());
        Json.print(out, document);
      } else {
        out.println(
            "as of "
                + restored.at()
                + ": "
                + restored.rows().getOrDefault("campaign", 0L)
                + " campaigns, "
                + restored.rows().getOrDefault("entry", 0L)
                + " entries, "
                + restored.evidence()
                + " evidence files, "
                + restored.published()
                + " published files; read back, every fingerprint the same: "
                + folder);
      }
    }
    return ExitCode.FINE;
  }
}
