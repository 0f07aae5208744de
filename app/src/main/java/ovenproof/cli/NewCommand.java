package ovenproof.cli;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Currency;
import java.util.Locale;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.files.CampaignFolder;
import ovenproof.input.NearestWord;
import ovenproof.method.Starters;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.databind.node.JsonNodeFactory;

/** {@code ovenproof new DIR --starter NAME}. */
@Command(
    name = "new",
    footer = {"", "For example: ovenproof new my-campaign --starter countertop-ovens"},
    mixinStandardHelpOptions = true,
    description = "Makes a campaign folder with a starter method and empty tables.")
final class NewCommand implements Callable<Integer> {
  @Parameters(paramLabel = "DIR", description = "A new or empty folder.")
  private Path folder = Path.of(".");

  @Option(
      names = "--starter",
      required = true,
      paramLabel = "NAME",
      description = "The method to begin from: countertop-ovens, toasters, basket-air-fryers.")
  private String starter = "";

  @Option(names = "--title", paramLabel = "TEXT", description = "Title; else the folder's name.")
  private @Nullable String title;

  @Option(
      names = "--zone",
      paramLabel = "ZONE",
      description = "Time zone of the clock on the wall; else this machine's.")
  private @Nullable String zone;

  @Option(
      names = "--currency",
      paramLabel = "CODE",
      description = "Currency of prices (ISO 4217); else EUR.")
  private String currency = "EUR";

  @Option(names = "--json", description = "Print what was made as JSON.")
  private boolean json;

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    if (!Starters.names().contains(starter)) {
      throw usage(
          "--starter must be one of "
              + String.join(", ", Starters.names())
              + ", found "
              + starter
              + NearestWord.to(starter, Starters.names())
                  .map(n -> "; did you mean " + n + "?")
                  .orElse(""));
    }
    CampaignFolder.withAllMeasures().begin(folder, starter, info());
    say();
    return ExitCode.FINE;
  }

  private Campaign.Info info() {
    Path name = folder.toAbsolutePath().normalize().getFileName();
    String written = name == null ? "campaign" : name.toString();
    String key = written.replaceAll("[^\\p{L}\\p{N}_.-]+", "-").replaceAll("^-+|-+$", "");
    return new Campaign.Info(
        key.isEmpty() ? "campaign" : key,
        title == null ? written : title,
        "Our test kitchen",
        zone(),
        currency(),
        Campaign.Provenance.REAL,
        null,
        null,
        null);
  }

  private ZoneId zone() {
    String wanted = zone == null ? ZoneId.systemDefault().getId() : zone;
    if (ZoneId.getAvailableZoneIds().contains(wanted)) {
      return ZoneId.of(wanted);
    }
    if (zone == null) {
      return ZoneId.of("UTC");
    }
    throw usage("--zone must be a time zone such as Europe/Dublin, found " + zone);
  }

  private String currency() {
    try {
      return Currency.getInstance(currency.toUpperCase(Locale.ROOT)).getCurrencyCode();
    } catch (IllegalArgumentException unknown) {
      throw usage("--currency must be a code such as EUR, found " + currency);
    }
  }

  private ParameterException usage(String message) {
    return new ParameterException(Objects.requireNonNull(spec).commandLine(), message);
  }

  private void say() {
    var out = Objects.requireNonNull(spec).commandLine().getOut();
    if (json) {
      Json.print(
          out,
          JsonNodeFactory.instance
              .objectNode()
              .put("format", 1)
              .put("folder", folder.toString())
              .put("starter", starter));
    } else {
      out.println("made " + folder + " from the starter method " + starter);
      out.println("Next: a line in products.csv, then: ovenproof check " + folder);
    }
  }
}
