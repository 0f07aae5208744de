package ovenproof.record;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import ovenproof.desk.Desk;
import ovenproof.desk.DeskLocation;
import ovenproof.desk.DeskRows;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;

/**
 * Makes a desk from a backup. The whole bag is checked before anything is written; the rows go in
 * as one transaction; afterwards they are read back and their fingerprints compared.
 */
public final class DeskRestore {
  private DeskRestore() {}

  /**
   * What was restored.
   *
   * @param at the moment of the backup, as written in it
   * @param published number of files of sites and kits
   */
  public record Restored(String at, Map<String, Long> rows, int evidence, int published) {
    public Restored {
      rows = new TreeMap<>(rows);
    }
  }

  /**
   * Restores a backup.
   *
   * @param backup a folder or a ZIP file
   * @param location a new or empty desk that no program serves
   * @throws InputException if the backup is damaged or of a newer program, or the desk holds
   *     something; then no row was written
   * @throws OutsideException if another program holds the desk, or disk or database fail
   */
  public static Restored read(Path backup, DeskLocation location, Clock clock) {
    try (TemporaryFolder unpacked = new TemporaryFolder()) {
      Bag bag = Bag.open(Verification.folder(backup, unpacked));
      JsonNode desk = description(bag);
      List<String> tables = tables(bag, desk);
      Map<String, String> evidence = evidence(bag);
      int published;
      try (Desk open = Desk.open(location, clock)) {
        PublishedFolders.refuseTaken(location);
        put(open, bag, evidence);
        published = PublishedFolders.restore(bag, location);
        DeskRows.write(open, new Lines(bag, tables));
      } catch (IOException e) {
        throw new OutsideException("could not put back what was published: " + e, e);
      }
      Map<String, Long> rows = compare(bag, location);
      return new Restored(desk.path("at").asString(""), rows, evidence.size(), published);
    }
  }

  private static JsonNode description(Bag bag) {
    JsonNode desk = json(bag.root().resolve(DeskBackup.DESK));
    if (!desk.path("rows").isObject()) {
      throw refused(
          DeskBackup.DESK,
          "no description of a desk",
          "a bag as \"ovenproof backup\" makes it",
          "a campaign's bag is read by \"ovenproof import\"");
    }
    String version = desk.path("tables").asString("");
    if (!version.matches("\\d+(\\.\\d+)*") || newer(version, DeskRows.newestVersion())) {
      throw refused(
          DeskBackup.DESK,
          "tables of version " + version,
          "at most version " + DeskRows.newestVersion(),
          "restore with the version of the program that made it, or a newer one");
    }
    return desk;
  }

  private static boolean newer(String version, String than) {
    String[] a = version.split("\\.");
    String[] b = than.split("\\.");
    for (int i = 0; i < Math.max(a.length, b.length); i++) {
      long x = i < a.length ? Long.parseLong(a[i]) : 0;
      long y = i < b.length ? Long.parseLong(b[i]) : 0;
      if (x != y) {
        return x > y;
      }
    }
    return false;
  }

  private static JsonNode json(Path file) {
    try {
      return Files.isRegularFile(file)
          ? DeskBackup.MAPPER.readTree(Files.readString(file))
          : DeskBackup.MAPPER.createObjectNode();
    } catch (JacksonException e) {
      throw refused(DeskBackup.DESK, "no JSON that can be read", "JSON", "");
    } catch (IOException e) {
      throw new OutsideException("could not read " + file + ": " + e, e);
    }
  }

  /** Campaigns first: other rows refer to them. */
  private static List<String> tables(Bag bag, JsonNode desk) {
    List<String> tables = new ArrayList<>();
    for (String name : desk.path("rows").propertyNames()) {
      if (!bag.fingerprints().containsKey(DeskBackup.TABLES + name + ".jsonl")) {
        throw refused(DeskBackup.TABLES + name + ".jsonl", "nothing", "the rows of a table", "");
      }
      tables.add(name);
    }
    tables.sort(
        java.util.Comparator.comparing((String t) -> !t.equals("campaign"))
            .thenComparing(java.util.Comparator.naturalOrder()));
    return tables;
  }

  /** SHA-256 by path; the name of an evidence file must be its fingerprint. */
  private static Map<String, String> evidence(Bag bag) {
    Map<String, String> evidence = new LinkedHashMap<>();
    bag.fingerprints()
        .forEach(
            (path, sha256) -> {
              if (path.startsWith(DeskBackup.EVIDENCE)) {
                String named = path.substring(DeskBackup.EVIDENCE.length()).replace("/", "");
                if (!named.equals(sha256)) {
                  throw refused(path, "bytes of " + sha256, "bytes that its name says", "");
                }
                evidence.put(path, sha256);
              }
            });
    return evidence;
  }

  private static void put(Desk desk, Bag bag, Map<String, String> evidence) {
    if (!desk.campaigns().isEmpty()) {
      throw refused(
          desk.location().shown(),
          "a desk that holds campaigns already",
          "a new or empty desk",
          "choose another folder or database; nothing was written");
    }
    evidence.forEach(
        (path, sha256) -> {
          try (InputStream in = Files.newInputStream(bag.root().resolve(path))) {
            desk.evidence().put(path, in, Long.MAX_VALUE);
          } catch (IOException e) {
            throw new OutsideException("could not read " + path + ": " + e, e);
          }
        });
  }

  /** The rows of all tables, one after the other. */
  private static final class Lines implements Supplier<DeskRows.@Nullable Row> {
    private final Bag bag;
    private final Deque<String> tables;
    private @Nullable BufferedReader in;
    private String table = "";
    private int line;

    Lines(Bag bag, List<String> tables) {
      this.bag = bag;
      this.tables = new ArrayDeque<>(tables);
    }

    @Override
    public DeskRows.@Nullable Row get() {
      try {
        while (true) {
          String text = in == null ? null : in.readLine();
          if (text != null) {
            line++;
            return new DeskRows.Row(table, values(text));
          }
          if (in != null) {
            in.close();
          }
          if (tables.isEmpty()) {
            return null;
          }
          table = tables.removeFirst();
          line = 0;
          in = Files.newBufferedReader(bag.root().resolve(DeskBackup.TABLES + table + ".jsonl"));
        }
      } catch (IOException e) {
        throw new OutsideException("could not read table " + table + ": " + e, e);
      }
    }

    private Map<String, @Nullable Object> values(String text) {
      try {
        Map<String, @Nullable Object> values = new TreeMap<>();
        for (var field : DeskBackup.MAPPER.readTree(text).properties()) {
          values.put(field.getKey(), value(field.getValue()));
        }
        return values;
      } catch (JacksonException e) {
        throw new InputException(
            Problem.error(
                new Place(DeskBackup.TABLES + table + ".jsonl", line, 0),
                "no JSON that can be read",
                "one row as JSON",
                "nothing was restored"));
      }
    }

    private static @Nullable Object value(JsonNode node) {
      if (node.isNull()) {
        return null;
      }
      if (node.isBoolean()) {
        return node.asBoolean();
      }
      if (node.isIntegralNumber()) {
        return node.asLong();
      }
      return node.isNumber() ? (Object) node.asDouble() : node.asString("");
    }
  }

  /** Reads the restored rows back: each table must have the fingerprint it has in the bag. */
  private static Map<String, Long> compare(Bag bag, DeskLocation location) {
    Comparison comparison = new Comparison();
    DeskRows.read(location, comparison);
    Map<String, String> now = comparison.fingerprints();
    bag.fingerprints()
        .forEach(
            (path, sha256) -> {
              if (path.startsWith(DeskBackup.TABLES)) {
                String table =
                    path.substring(DeskBackup.TABLES.length()).replaceAll("\\.jsonl$", "");
                if (!sha256.equals(now.get(table))) {
                  throw refused(
                      path,
                      "other rows after restoring than were backed up",
                      "SHA-256 " + sha256,
                      "do not use this desk; restore into another database");
                }
              }
            });
    return comparison.rows;
  }

  private static final class Comparison implements DeskRows.Reader {
    private final Map<String, Long> rows = new TreeMap<>();
    private final Map<String, Fingerprints.Running> running = new TreeMap<>();
    private String table = "";

    @Override
    public void table(String name) {
      table = name;
      rows.put(name, 0L);
      running.put(name, new Fingerprints.Running());
    }

    @Override
    public void row(Map<String, @Nullable Object> values) {
      rows.merge(table, 1L, Long::sum);
      java.util.Objects.requireNonNull(running.get(table))
          .add(DeskBackup.MAPPER.writeValueAsString(values) + "\n");
    }

    Map<String, String> fingerprints() {
      Map<String, String> all = new TreeMap<>();
      running.forEach((name, digest) -> all.put(name, digest.hex()));
      return all;
    }
  }

  private static InputException refused(
      String place, String found, String expected, String remedy) {
    return new InputException(Problem.error(Place.of(place), found, expected, remedy));
  }
}
