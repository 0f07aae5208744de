package ovenproof.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import ovenproof.desk.DeskLocation;
import ovenproof.record.DeskBackup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** {@code ovenproof backup --desk DIR --out BACKUP}. */
@Command(
    name = "backup",
    footer = {"", "For example: ovenproof backup --desk ~/ovenproof-desk --out backup.zip"},
    mixinStandardHelpOptions = true,
    description = {
      "Backs a whole desk up as one bag, also while it is served.",
      "A backup holds everything, names included: keep it as private as the desk."
    })
final class BackupCommand implements Callable<Integer> {
  @Option(
      names = "--desk",
      paramLabel = "DIR",
      description = "Folder of the desk: database and evidence; else ${DEFAULT-VALUE}.")
  private Path folder = Path.of(System.getProperty("user.home"), "ovenproof-desk");

  @Option(
      names = "--database",
      paramLabel = "URL",
      description = "jdbc:postgresql://…, or OVENPROOF_DATABASE; else a SQLite file in the folder.")
  private @Nullable String database = System.getenv("OVENPROOF_DATABASE");

  @Option(
      names = "--out",
      required = true,
      paramLabel = "BACKUP",
      description = "Where the backup goes; a name that ends in .zip makes one file.")
  private Path target = Path.of("backup");

  @Option(names = "--json", description = "Print JSON.")
  private boolean json;

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    DeskBackup.Written written =
        DeskBackup.write(new DeskLocation(folder, database), target, Instant.now());
    if (spec != null) {
      PrintWriter out = spec.commandLine().getOut();
      if (json) {
        Json.print(out, document(written));
      } else {
        out.println(
            written.rows().getOrDefault("campaign", 0L)
                + " campaigns, "
                + written.rows().getOrDefault("entry", 0L)
                + " entries, "
                + written.evidence()
                + " evidence files ("
                + written.bytes() / 1_000_000
                + " MB), every fingerprint as it was taken in, "
                + written.published()
                + " published files: "
                + written.place());
      }
    }
    return ExitCode.FINE;
  }

  private static ObjectNode document(DeskBackup.Written written) {
    ObjectNode document = JsonNodeFactory.instance.objectNode();
    document.put("format", 1).put("backup", written.place().toString());
    ObjectNode rows = document.putObject("rows");
    written.rows().forEach(rows::put);
    document.put("evidence", written.evidence()).put("bytes", written.bytes());
    document.put("published", written.published());
    return document;
  }
}
