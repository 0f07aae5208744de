package ovenproof.cli;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import ovenproof.desk.DeskLocation;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.kitchen.Kitchen;
import ovenproof.measure.Progress;
import ovenproof.publish.Publisher;
import ovenproof.publish.site.PictureCache;
import ovenproof.verdict.VerdictText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code ovenproof demo}: an invented campaign, made, measured, scored, published and shown. */
@Command(
    name = "demo",
    footer = {"", "For example: ovenproof demo --once"},
    mixinStandardHelpOptions = true,
    description = {
      "A full invented campaign: made, measured, scored, published, served.",
      "Eight ovens that do not exist, six tests, three runs each, in a kitchen that is simulated."
    })
final class DemoCommand implements Callable<Integer> {

  /** A folder that the demo made carries this file, so that it may be made again. */
  private static final String MARK = ".ovenproof-demo";

  @Spec private @Nullable CommandSpec spec;

  @Option(names = "--once", description = "Do not serve: print the verdict and where the site is.")
  private boolean once;

  @Option(
      names = "--dir",
      paramLabel = "DIR",
      description = "Where campaign and site go (./demo unless said).")
  private Path folder = Path.of("demo");

  @Option(
      names = "--port",
      paramLabel = "PORT",
      description = "Port of the review site (8080, or a free one; 0 for any free one).")
  private @Nullable Integer port;

  @Option(
      names = "--desk-port",
      paramLabel = "PORT",
      description = "Port of the web application (8023, or a free one; 0 for any free one).")
  private @Nullable Integer deskPort;

  @Override
  public Integer call() {
    PrintWriter out = Objects.requireNonNull(spec).commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    Path campaign = folder.resolve("campaign");
    Path site = folder.resolve("site");
    // Asked first: a minute of simulation should not end with a port that another program holds.
    Ports ports = once ? new Ports(0, 0) : ports(spec);
    prepare();
    make(campaign, err);
    err.println("measuring what came out …");
    Review review = Review.of(campaign, new Steps(err));
    String title = review.loaded().campaign().info().title();
    VerdictText.lines(review.verdict(), title).forEach(out::println);
    err.println("publishing …");
    new Publisher(PictureCache.ofUser()).publish(review.edition(), site);
    out.println();
    out.println(
        "Everything in it is invented; the truth that was simulated is in "
            + campaign.resolve("truth.json"));
    out.println("Campaign folder: " + campaign);
    out.println("Review site:     " + site.resolve("index.html"));
    out.flush();
    if (!once) {
      serve(campaign, site, ports, out);
    }
    return ExitCode.FINE;
  }

  /** The review as readers get it, and beside it the campaign on a desk, to be worked on. */
  private void serve(Path campaign, Path site, Ports ports, PrintWriter out) {
    HttpServer review = SiteServer.start(site, ports.site());
    out.println("Read it at       http://localhost:" + review.getAddress().getPort() + "/");
    out.flush();
    try {
      ServeCommand.serve(
          new DeskLocation(folder.resolve("desk"), null),
          ports.desk(),
          List.of(campaign),
          address -> {
            out.println("Work on it at    " + address + "  (stop both with Ctrl-C)");
            out.flush();
          },
          ServeCommand.Stay.UNTIL_STOPPED);
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    } finally {
      review.stop(0);
    }
  }

  /** Where both are served. */
  private record Ports(int site, int desk) {}

  private Ports ports(CommandSpec asking) {
    ServeCommand.requirePort(port == null ? 0 : port, "--port", asking);
    ServeCommand.requirePort(deskPort == null ? 0 : deskPort, "--desk-port", asking);
    return new Ports(
        SiteServer.port(port, 8080, "--port"), SiteServer.port(deskPort, 8023, "--desk-port"));
  }

  private void prepare() {
    try {
      boolean other = Files.exists(folder) && !isEmpty() && !Files.exists(folder.resolve(MARK));
      if (other) {
        throw new InputException(
            Problem.error(
                Place.of(folder.toString()),
                "a folder with other files in it",
                "nothing, an empty folder, or one that the demo made",
                "name another with --dir"));
      }
      Files.createDirectories(folder);
      Files.writeString(
          folder.resolve(MARK), "Made by the demo; it may be overwritten by the demo.\n");
    } catch (IOException e) {
      throw new OutsideException("cannot make " + folder + ": " + e.getMessage(), e);
    }
  }

  private boolean isEmpty() throws IOException {
    if (!Files.isDirectory(folder)) {
      return false;
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files.findAny().isEmpty();
    }
  }

  private static void make(Path campaign, PrintWriter err) {
    try {
      if (!Files.exists(campaign.resolve("truth.json"))) {
        err.println("simulating a test kitchen …");
        AtomicInteger said = new AtomicInteger(-1);
        Kitchen.demo().writeTo(campaign, (what, done, of) -> say(err, said, what, done, of));
      }
    } catch (IOException e) {
      throw new OutsideException("cannot write the demo to " + campaign + ": " + e.getMessage(), e);
    }
  }

  /** Every tenth of a stage, so that a log file stays readable. */
  private static void say(PrintWriter err, AtomicInteger said, String what, int done, int of) {
    int tenth = of == 0 ? 10 : 10 * done / of;
    int key = what.hashCode() * 31 + tenth;
    if (said.getAndSet(key) != key) {
      err.println("  " + what + " " + done + " of " + of);
    }
  }

  /** Says every tenth of the measuring. */
  private static final class Steps implements Progress {
    private final PrintWriter err;
    private final AtomicInteger done = new AtomicInteger();
    private int of = 1;

    Steps(PrintWriter err) {
      this.err = err;
    }

    @Override
    public void begin(int steps) {
      of = Math.max(1, steps);
    }

    @Override
    public void step() {
      int now = done.incrementAndGet();
      if (10 * now / of != 10 * (now - 1) / of) {
        err.println("  " + now + " of " + of + " runs and facts");
      }
    }
  }
}
