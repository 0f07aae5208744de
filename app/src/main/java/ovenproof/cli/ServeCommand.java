package ovenproof.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.jspecify.annotations.Nullable;
import ovenproof.desk.Desk;
import ovenproof.desk.DeskLocation;
import ovenproof.desk.FolderImport;
import ovenproof.files.CampaignFolder;
import ovenproof.web.WebServer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code ovenproof serve}: the web application on this machine. */
@Command(
    name = "serve",
    mixinStandardHelpOptions = true,
    description = "Serves the web application to this machine only, until it is stopped.")
public final class ServeCommand implements Callable<Integer> {
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

  @Option(names = "--port", paramLabel = "PORT", description = "Else 8023; 0 for a free one.")
  private int port = 8023;

  @Option(
      names = "--import",
      paramLabel = "DIR",
      description = "Brings a campaign folder in first, unless the desk has it. May be repeated.")
  private List<Path> imports = List.of();

  @Option(names = "--once", hidden = true, description = "Starts, answers itself, and ends.")
  private boolean once;

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() throws InterruptedException {
    PrintWriter out =
        spec == null ? new PrintWriter(System.out, true) : spec.commandLine().getOut();
    try (Desk desk = Desk.open(new DeskLocation(folder, database), Clock.systemUTC())) {
      bringIn(desk, imports);
      try (WebServer server = WebServer.start(desk, port)) {
        out.println("http://localhost:" + server.port() + "/");
        out.flush();
        if (!once) {
          waitForTheEnd(server, desk);
        }
      }
    }
    return ExitCode.FINE;
  }

  private static void bringIn(Desk desk, List<Path> folders) {
    CampaignFolder reader = CampaignFolder.withAllMeasures();
    for (Path folder : folders) {
      String id = reader.load(folder).campaign().info().id();
      if (desk.find(id).isEmpty()) {
        new FolderImport(desk, reader).take(folder, "lead");
      }
    }
  }

  private static void waitForTheEnd(WebServer server, Desk desk) throws InterruptedException {
    CountDownLatch end = new CountDownLatch(1);
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  server.close();
                  desk.close();
                  end.countDown();
                }));
    end.await();
  }
}
