package ovenproof.files;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import ovenproof.campaign.Campaign;
import ovenproof.evidence.EvidenceSource;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.measure.MeasureRegistry;
import ovenproof.method.Starters;

/** Loads, checks and saves campaign folders ({@code docs/files.md}). */
public final class CampaignFolder {
  private final MeasureRegistry registry;

  /**
   * @param registry the measures that a method may take
   */
  public CampaignFolder(MeasureRegistry registry) {
    this.registry = registry;
  }

  /** For methods that may take every measure the program knows. */
  public static CampaignFolder withAllMeasures() {
    return new CampaignFolder(MeasureRegistry.all());
  }

  /**
   * Reads a folder.
   *
   * @throws InputException with every problem, warnings included, if any of them is an error
   */
  public LoadedCampaign load(Path folder) {
    FolderEvidence evidence = open(folder);
    CampaignReader reader = new CampaignReader(registry, evidence);
    Optional<Campaign> campaign = reader.read();
    reader.problems().throwIfErrors();
    return new LoadedCampaign(campaign.orElseThrow(), evidence, reader.problems().all());
  }

  /**
   * Reads a folder as if its method were another one; nothing is written.
   *
   * @param method a method document outside or inside the folder
   * @throws InputException with every problem, also of what the folder has and the method does not
   */
  public LoadedCampaign loadUnder(Path folder, Path method) {
    FolderEvidence evidence = open(folder);
    CampaignReader reader = new CampaignReader(registry, evidence).under(method);
    Optional<Campaign> campaign = reader.read();
    reader.problems().throwIfErrors();
    return new LoadedCampaign(campaign.orElseThrow(), evidence, reader.problems().all());
  }

  /** Every problem of a folder; empty when there is none. */
  public List<Problem> check(Path folder) {
    try {
      CampaignReader reader = new CampaignReader(registry, open(folder));
      reader.read();
      return reader.problems().all();
    } catch (InputException notAFolder) {
      return notAFolder.problems();
    }
  }

  /**
   * Writes a campaign and its evidence as a folder that appears whole or not at all. Loading it
   * again gives the same campaign.
   *
   * @param folder new or empty
   * @throws InputException if something else is there, or a file's content is not what the campaign
   *     recorded
   */
  public void save(Campaign campaign, EvidenceSource evidence, Path folder) {
    NewFolder.create(folder, new CampaignWriter(campaign, evidence)::write);
  }

  /**
   * Writes a campaign to begin from: a starter method, and every table with its header only.
   *
   * @param folder new or empty
   * @param starter one of {@link Starters#names()}
   */
  public void begin(Path folder, String starter, Campaign.Info info) {
    String method = Starters.text(starter);
    NewFolder.create(
        folder,
        files -> {
          files.write(CampaignReader.CAMPAIGN_FILE, CampaignWriter.info(info));
          files.write(CampaignReader.METHOD_FILE, method);
          for (Table table : Tables.ALL) {
            files.write(table.file(), CampaignWriter.csv(table, List.of()));
          }
        });
  }

  private static FolderEvidence open(Path folder) {
    if (!Files.isDirectory(folder)) {
      throw new InputException(
          Problem.error(
              Place.of(folder.toString()),
              Files.exists(folder) ? "a file" : "nothing",
              "a campaign folder",
              "\"ovenproof new DIR --starter NAME\" makes one"));
    }
    boolean empty =
        Stream.of(CampaignReader.CAMPAIGN_FILE, CampaignReader.METHOD_FILE)
            .noneMatch(f -> Files.exists(folder.resolve(f)));
    if (empty && Tables.ALL.stream().noneMatch(t -> Files.exists(folder.resolve(t.file())))) {
      throw new InputException(
          Problem.error(
              Place.of(folder.toString()),
              "no file of a campaign in it",
              "a campaign folder",
              inside(folder)
                  .map(below -> "did you mean " + below + "?")
                  .orElse("\"ovenproof new DIR --starter NAME\" makes one")));
    }
    return new FolderEvidence(folder);
  }

  /** A campaign folder directly in a folder: the demo's lies in one. */
  private static Optional<Path> inside(Path folder) {
    try (Stream<Path> below = Files.list(folder)) {
      return below
          .filter(f -> Files.isRegularFile(f.resolve(CampaignReader.CAMPAIGN_FILE)))
          .sorted()
          .findFirst();
    } catch (IOException unreadable) {
      return Optional.empty();
    }
  }
}
