package ovenproof.kitchen.folder;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import ovenproof.kitchen.bench.Progress;
import ovenproof.kitchen.bench.RunResult;
import ovenproof.kitchen.bench.Season;
import ovenproof.kitchen.physics.Chance;

/** Writes a whole season as a campaign folder. */
public final class CampaignWriter {

  static final ZoneId ZONE = ZoneId.of("Europe/Dublin");

  private final Path folder;
  private final Chance chance;
  private final Season season;
  private final ExecutorService hands;
  private final Progress progress;
  private final Instruments instruments;

  public CampaignWriter(
      Path folder, Chance chance, Season season, ExecutorService hands, Progress progress) {
    this.folder = folder;
    this.chance = chance;
    this.season = season;
    this.hands = hands;
    this.progress = progress;
    this.instruments = new Instruments(chance.named("instruments"));
  }

  public void write(Photographs photographs) throws IOException {
    Files.createDirectories(folder);
    resource("campaign.yaml");
    resource("method.yaml");
    resource("left-out.csv");
    new ProductTables(folder, chance.named("shop"), season).write();
    new RunTables(folder, chance.named("hands"), season, instruments).write();
    PanelTable panel = new PanelTable(chance.named("panel"), season);
    panel.write(folder.resolve("ratings.csv"));
    instruments.table().write(folder.resolve("instruments.csv"));
    instruments.calibrations().write(folder.resolve("calibrations.csv"));
    traces();
    Truth truth = new Truth(season, instruments, panel.panel());
    if (photographs == Photographs.TAKEN) {
      new PhotoTable(folder, chance.named("photos"), season, hands, progress).write(truth);
    }
    truth.write(folder.resolve("truth.json"));
  }

  private void resource(String name) throws IOException {
    try (InputStream in = CampaignWriter.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the program is incomplete: no " + name);
      }
      Files.copy(in, folder.resolve(name), StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private void traces() throws IOException {
    TraceWriter writer = new TraceWriter(folder, ZONE, instruments, chance.named("loggers"));
    Map<String, List<RunResult>> bySession = bySession(season.runs());
    int done = 0;
    for (Map.Entry<String, List<RunResult>> session : bySession.entrySet()) {
      writer.session(session.getKey(), session.getValue());
      progress.reached("traces", ++done, bySession.size());
    }
    writer.bindings().write(folder.resolve("traces.csv"));
  }

  static Map<String, List<RunResult>> bySession(List<RunResult> runs) {
    Map<String, List<RunResult>> sessions = new LinkedHashMap<>();
    for (RunResult run : runs) {
      sessions.computeIfAbsent(run.plan().session(), s -> new ArrayList<>()).add(run);
    }
    return sessions;
  }
}
