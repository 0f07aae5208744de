package ovenproof.record;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import ovenproof.desk.DeskLocation;
import ovenproof.desk.DeskRows;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.input.Problems;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Writes a whole desk as one bag: every row of its database as of one moment, the evidence that
 * those rows name, and what was published with its frozen editions. Safe while the desk is served:
 * evidence is on the disk before a row names it and never changes, so whatever the rows of that
 * moment name is there.
 *
 * <p>The bag is the same for SQLite and PostgreSQL; moving between them is backup and restore.
 */
public final class DeskBackup {
  static final String DESK = "data/desk.json";
  static final String TABLES = "data/tables/";
  static final String EVIDENCE = "data/evidence/";

  static final JsonMapper MAPPER = JsonMapper.builder().build();
  private static final JsonMapper PRETTY =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  private DeskBackup() {}

  /**
   * What was written.
   *
   * @param place the bag
   * @param rows by table
   * @param evidence number of evidence files
   * @param bytes of evidence
   * @param published number of files of sites and kits
   */
  public record Written(
      Path place, Map<String, Long> rows, int evidence, long bytes, int published) {
    public Written {
      rows = new TreeMap<>(rows);
    }
  }

  /**
   * Backs a desk up; the bag appears whole or not at all.
   *
   * @param target a new folder, or a new file whose name ends in {@code .zip}
   * @param at the moment written into it
   * @throws InputException if something stands at the target, or the desk itself is damaged: then
   *     every damaged or missing file is named and nothing is written
   */
  public static Written write(DeskLocation location, Path target, Instant at) {
    Path place = target.toAbsolutePath().normalize();
    refuseInside(location, place);
    return BagPlace.write(place, "the backup", bag -> fill(location, bag, place, at));
  }

  private static void refuseInside(DeskLocation location, Path place) {
    if (place.startsWith(location.folder().toAbsolutePath().normalize().resolve("evidence"))) {
      throw new InputException(
          Problem.error(
              Place.of(place.toString()),
              "a place inside the desk's evidence",
              "a place outside of it, better on another disk",
              "choose another place"));
    }
  }

  private static Written fill(DeskLocation location, Path bag, Path place, Instant at)
      throws IOException {
    Files.createDirectories(bag.resolve(TABLES));
    Tables tables = new Tables(bag);
    String version;
    try {
      version = DeskRows.read(location, tables);
    } finally {
      tables.close();
    }
    Map<String, String> known = new LinkedHashMap<>();
    long bytes = evidence(location, bag, tables.evidence, known);
    int published = PublishedFolders.copy(location, bag);
    ObjectNode desk = JsonNodeFactory.instance.objectNode();
    desk.put("format", 1).put("tables", version).put("at", at.toString());
    ObjectNode rows = desk.putObject("rows");
    tables.rows.forEach(rows::put);
    Files.writeString(bag.resolve(DESK), PRETTY.writeValueAsString(desk) + "\n");
    Map<String, String> info = new LinkedHashMap<>();
    info.put(
        "External-Description",
        "Backup of a desk: all rows, the evidence they name, what was published");
    info.put("Bagging-Date", at.atZone(ZoneOffset.UTC).toLocalDate().toString());
    BagSeal.close(bag, info, known);
    return new Written(place, tables.rows, tables.evidence.size(), bytes, published);
  }

  /** Writes each table as JSON lines and notes which evidence is named. */
  private static final class Tables implements DeskRows.Reader {
    private final Path bag;
    private final Map<String, Long> rows = new TreeMap<>();
    private final Map<String, Long> evidence = new TreeMap<>();
    private String table = "";
    private @Nullable Writer out;

    Tables(Path bag) {
      this.bag = bag;
    }

    @Override
    public void table(String name) {
      close();
      table = name;
      rows.put(name, 0L);
      try {
        out = Files.newBufferedWriter(bag.resolve(TABLES + name + ".jsonl"));
      } catch (IOException e) {
        throw new OutsideException("could not write table " + name + ": " + e, e);
      }
    }

    @Override
    public void row(Map<String, @Nullable Object> values) {
      try {
        Objects.requireNonNull(out).append(MAPPER.writeValueAsString(values)).append('\n');
      } catch (IOException e) {
        throw new OutsideException("could not write table " + table + ": " + e, e);
      }
      rows.merge(table, 1L, Long::sum);
      if (values.get("sha256") instanceof String sha256) {
        long size = values.get("bytes") instanceof Long bytes ? bytes : -1;
        evidence.put(sha256, size);
      }
    }

    void close() {
      try {
        if (out != null) {
          out.close();
          out = null;
        }
      } catch (IOException e) {
        throw new OutsideException("could not write table " + table + ": " + e, e);
      }
    }
  }

  private static long evidence(
      DeskLocation location, Path bag, Map<String, Long> named, Map<String, String> known)
      throws IOException {
    Problems problems = new Problems();
    long bytes = 0;
    for (String sha256 : named.keySet()) {
      String shelf = sha256.substring(0, 2) + "/" + sha256.substring(2);
      Path from = location.folder().resolve("evidence").resolve(shelf);
      if (!Files.isRegularFile(from, LinkOption.NOFOLLOW_LINKS)) {
        problems.error(Place.of("evidence/" + shelf), "nothing", "the evidence that is named", "");
        continue;
      }
      Path to = bag.resolve(EVIDENCE + shelf);
      Files.createDirectories(Objects.requireNonNull(to.getParent()));
      Files.copy(from, to);
      String found = Fingerprints.of(to);
      if (!found.equals(sha256)) {
        problems.error(
            Place.of("evidence/" + shelf),
            "other bytes than were taken in (SHA-256 " + found + ")",
            "SHA-256 " + sha256,
            "restore this file from an earlier backup");
      }
      known.put(EVIDENCE + shelf, found);
      bytes += Files.size(to);
    }
    problems.throwIfErrors();
    return bytes;
  }
}
