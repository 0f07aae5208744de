package ovenproof.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import ovenproof.desk.Desk;
import ovenproof.desk.DeskLocation;
import ovenproof.desk.FolderImport;
import ovenproof.files.CampaignFolder;
import ovenproof.web.WebServer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code ovenproof serve}: the web application on this machine. */
@Command(
    name = "serve",
    footer = {"", "For example: ovenproof serve --import examples/phone-and-thermometer"},
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
    requirePort(port, "--port", spec);
    Consumer<String> say =
        address -> {
          out.println(address);
          out.flush();
        };
    Stay stay = once ? Stay.STARTED_ONCE : Stay.UNTIL_STOPPED;
    serve(new DeskLocation(folder, database), port, imports, say, stay);
    return ExitCode.FINE;
  }

  /** Refuses a number that no port has. */
  static void requirePort(int port, String option, @Nullable CommandSpec spec) {
    if ((port < 0 || port > 65_535) && spec != null) {
      throw new ParameterException(
          spec.commandLine(), option + " is a number from 0 to 65535, found " + port);
    }
  }

  /** How long to serve. */
  enum Stay {
    UNTIL_STOPPED,
    /** Ends as soon as the first page can be had: a trial of the machine. */
    STARTED_ONCE
  }

  /**
   * Serves the desk.
   *
   * @param imports campaign folders to bring in first, unless the desk has them
   * @param started is told the address once the first page can be had
   */
  static void serve(
      DeskLocation location, int port, List<Path> imports, Consumer<String> started, Stay stay)
      throws InterruptedException {
    try (Desk desk = Desk.open(location, Clock.systemUTC())) {
      bringIn(desk, imports);
      try (WebServer server = WebServer.start(desk, port)) {
        started.accept("http://localhost:" + server.port() + "/");
        if (stay == Stay.UNTIL_STOPPED) {
          waitForTheEnd(server, desk);
        } else {
          PageVisit.all(desk, server.port());
        }
      }
    }
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
