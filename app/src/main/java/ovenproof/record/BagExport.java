package ovenproof.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.FactValue;
import ovenproof.campaign.Photo;
import ovenproof.campaign.RatedStep;
import ovenproof.campaign.TraceBinding;
import ovenproof.evidence.EvidenceSource;
import ovenproof.files.Table;
import ovenproof.files.Tables;
import ovenproof.input.InputException;
import ovenproof.measure.Measured;
import ovenproof.verdict.Verdict;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * Packs a campaign folder with its published verdict as a bag: a folder, or one ZIP file when the
 * target's name ends in {@code .zip}.
 *
 * <p>Only what the campaign names goes in: its two documents, its tables and the evidence they
 * refer to. A bag is the desk's own record: it holds who tasted and who entered what.
 */
public final class BagExport {
  /** Where the published verdict lies in a bag's campaign folder. */
  static final String VERDICT = "published/verdict.json";

  /** Where the measurements lie. */
  static final String MEASUREMENTS = "published/measurements.json";

  private static final JsonMapper MAPPER =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  private final Path folder;
  private final Campaign campaign;
  private final EvidenceSource evidence;
  private final Measured measured;
  private final Verdict verdict;
  private final LocalDate day;

  /**
   * @param folder the campaign folder that was loaded
   * @param day the day that is written as the bagging date
   */
  public BagExport(
      Path folder,
      Campaign campaign,
      EvidenceSource evidence,
      Measured measured,
      Verdict verdict,
      LocalDate day) {
    this.folder = folder;
    this.campaign = campaign;
    this.evidence = evidence;
    this.measured = measured;
    this.verdict = verdict;
    this.day = day;
  }

  /**
   * Writes the bag; it appears whole or not at all.
   *
   * @throws InputException if something stands at the target
   */
  public Path write(Path target) {
    Path place = target.toAbsolutePath().normalize();
    BagPlace.write(
        place,
        "the bag",
        bag -> {
          fill(bag);
          return bag;
        });
    return place;
  }

  private void fill(Path bag) throws IOException {
    Path data = Files.createDirectories(bag.resolve("data"));
    for (String file : files()) {
      Path target = data.resolve(file);
      Files.createDirectories(target.getParent());
      try (var in = evidence.open(file)) {
        Files.copy(in, target, StandardCopyOption.REPLACE_EXISTING);
      }
    }
    Files.createDirectories(data.resolve("published"));
    Files.writeString(data.resolve(VERDICT), text(Published.verdict(verdict)));
    Files.writeString(data.resolve(MEASUREMENTS), text(Published.measurements(measured)));
    Files.writeString(
        data.resolve("datapackage.json"), text(TableSchemas.dataPackage(campaign, data)));
    tags(bag);
  }

  private static String text(tools.jackson.databind.JsonNode node) {
    return MAPPER.writeValueAsString(node) + "\n";
  }

  /** Documents, tables and everything they name, as paths in the campaign folder. */
  private Set<String> files() {
    Set<String> files = new LinkedHashSet<>();
    Stream.concat(Stream.of("campaign.yaml", "method.yaml"), Tables.ALL.stream().map(Table::file))
        .filter(f -> Files.isRegularFile(folder.resolve(f)))
        .forEach(files::add);
    Stream.of(
            campaign.traces().stream().map(TraceBinding::file),
            campaign.photos().stream().map(Photo::file),
            campaign.facts().stream().map(FactValue::photo),
            campaign.ratedSteps().stream().map(RatedStep::photo),
            campaign.evidence().stream().map(Campaign.Evidence::path))
        .flatMap(s -> s)
        .filter(Objects::nonNull)
        .filter(f -> evidence.size(f).isPresent())
        .forEach(files::add);
    return files;
  }

  private void tags(Path bag) throws IOException {
    boolean invented = campaign.info().provenance() == Campaign.Provenance.INVENTED;
    Map<String, String> info = new LinkedHashMap<>();
    info.put("Source-Organization", campaign.info().kitchen());
    info.put("External-Description", campaign.info().title() + (invented ? " (invented)" : ""));
    info.put("External-Identifier", campaign.info().id());
    info.put("Internal-Sender-Identifier", "verdict " + verdict.version());
    info.put("Bagging-Date", day.toString());
    BagSeal.close(bag, info, Map.of());
  }
}
