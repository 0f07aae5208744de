package ovenproof.files;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.DumperOptions;
import org.yaml.snakeyaml.Yaml;
import ovenproof.campaign.Campaign;
import ovenproof.evidence.EvidenceSource;
import ovenproof.input.InputException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.method.MethodWriter;

/** Writes a campaign as a folder. */
final class CampaignWriter {
  private final Campaign campaign;
  private final EvidenceSource evidence;

  CampaignWriter(Campaign campaign, EvidenceSource evidence) {
    this.campaign = campaign;
    this.evidence = evidence;
  }

  void write(NewFolder folder) throws IOException {
    folder.write(CampaignReader.CAMPAIGN_FILE, info(campaign.info()));
    folder.write(CampaignReader.METHOD_FILE, MethodWriter.write(campaign.method()));
    for (Map.Entry<Table, List<Map<String, String>>> table :
        new CampaignTables(campaign).rows().entrySet()) {
      folder.write(table.getKey().file(), csv(table.getKey(), table.getValue()));
    }
    for (Campaign.Evidence file : campaign.evidence()) {
      copy(file, folder);
    }
  }

  private void copy(Campaign.Evidence file, NewFolder folder) throws IOException {
    try (InputStream in = evidence.open(file.path())) {
      String sha256 = folder.copy(file.path(), in);
      if (!sha256.equals(file.sha256())) {
        throw new InputException(
            Problem.error(
                Place.of(file.path()),
                "content with the fingerprint " + sha256,
                file.sha256() + ", as recorded",
                "the file was changed since: put the original back"));
      }
    }
  }

  static String info(Campaign.Info info) {
    Map<String, Object> map = new LinkedHashMap<>();
    map.put("format", 1);
    map.put("campaign", info.id());
    map.put("title", info.title());
    map.put("kitchen", info.kitchen());
    map.put("zone", info.zone().getId());
    map.put("currency", info.currency());
    map.put("invented", info.provenance() == Campaign.Provenance.INVENTED ? "yes" : "no");
    put(map, "published", info.published() == null ? null : info.published().toString());
    put(map, "disclosure", info.disclosure());
    put(map, "note", info.note());
    DumperOptions options = new DumperOptions();
    options.setDefaultFlowStyle(DumperOptions.FlowStyle.BLOCK);
    options.setAllowUnicode(true);
    options.setSplitLines(false);
    return new Yaml(options).dump(map);
  }

  private static void put(Map<String, Object> map, String key, @Nullable Object value) {
    if (value != null) {
      map.put(key, value);
    }
  }

  /** The header with every column, and the rows. */
  static String csv(Table table, List<Map<String, String>> rows) {
    StringWriter text = new StringWriter();
    try (CsvWriter writer =
        CsvWriter.builder()
            .lineDelimiter(de.siegmar.fastcsv.writer.LineDelimiter.LF)
            .commentCharacter('#')
            .build(text)) {
      writer.writeRecord(table.columnNames());
      for (Map<String, String> row : rows) {
        writer.writeRecord(table.columnNames().stream().map(c -> row.getOrDefault(c, "")).toList());
      }
    } catch (IOException impossible) {
      throw new java.io.UncheckedIOException(impossible);
    }
    return text.toString();
  }

  static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  /** Where a file of the folder goes. */
  static Path inside(Path folder, String path) {
    Path file = folder.resolve(path).normalize();
    if (!file.startsWith(folder)) {
      throw new IllegalArgumentException("path must stay in the folder, found " + path);
    }
    return file;
  }
}
