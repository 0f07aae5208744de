package ovenproof.record;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import ovenproof.files.CampaignFolder;
import ovenproof.files.LoadedCampaign;
import ovenproof.input.InputException;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problem;
import ovenproof.measure.MeasureService;
import ovenproof.measure.Measured;
import ovenproof.verdict.Verdict;
import ovenproof.verdict.VerdictService;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Computes the verdict of a bag again and compares: printed digits must be equal, computed values
 * to 1e-9 relative; anything else is named.
 *
 * @param files payload files whose fingerprints were checked
 * @param version the published verdict's version
 * @param differences one sentence each, empty when the verdict came out the same
 * @param remarks what else a reader should know: another Java, another revision
 */
public record Verification(
    int files, String version, List<String> differences, List<String> remarks) {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();
  private static final double RELATIVE = 1e-9;
  private static final int MOST_NAMED = 200;

  /** What one product's evidence cannot give again: it was pooled over the field, or compares. */
  private static final Set<String> OF_THE_FIELD =
      Set.of(
          "low",
          "high",
          "uncertainty",
          "components",
          "note",
          "margin",
          "version",
          "warnings",
          "rank",
          "place",
          "tier",
          "probabilityBest",
          "probabilityBestAtMost",
          "pairs");

  public Verification {
    differences = List.copyOf(differences);
    remarks = List.copyOf(remarks);
  }

  public boolean isSame() {
    return differences.isEmpty();
  }

  /**
   * Checks a bag, a folder or a ZIP file.
   *
   * @throws InputException if it is no sound bag: with every problem
   */
  public static Verification of(Path bag) {
    try (TemporaryFolder unpacked = new TemporaryFolder()) {
      return of(Bag.open(folder(bag, unpacked)));
    }
  }

  /** The bag's folder, unpacked first when it is a ZIP file. */
  static Path folder(Path bag, TemporaryFolder unpacked) {
    if (!Files.exists(bag, LinkOption.NOFOLLOW_LINKS)) {
      throw new InputException(
          Problem.error(
              Place.of(bag.toString()), "nothing", "a bag", "\"ovenproof export\" makes one"));
    }
    return Files.isDirectory(bag) ? bag : BagZip.unpack(bag, unpacked.path());
  }

  private static Verification of(Bag bag) {
    LoadedCampaign loaded = CampaignFolder.withAllMeasures().load(bag.data());
    Measured measured = MeasureService.withDefaults().measure(loaded.campaign(), loaded.evidence());
    Verdict verdict =
        new VerdictService(Runtime.getRuntime().availableProcessors())
            .verdict(loaded.campaign(), measured);
    JsonNode then = read(bag, BagExport.VERDICT);
    JsonNode now = tree(Published.verdict(verdict));
    boolean pack = Files.isRegularFile(bag.data().resolve(EvidencePack.LIST));
    Set<String> left = pack ? OF_THE_FIELD : Set.of();
    List<String> differences = new ArrayList<>();
    compare("verdict", then.path("verdict"), now.path("verdict"), left, differences);
    JsonNode measuredThen = read(bag, BagExport.MEASUREMENTS);
    JsonNode measuredNow = tree(Published.measurements(measured));
    compare(
        "measurements", measuredThen.path("values"), measuredNow.path("values"), left, differences);
    List<String> remarks = remarks(then, now, measuredThen, measuredNow);
    if (pack) {
      remarks.add(
          "evidence of one product: values and scores were computed again; intervals, margin and"
              + " ranks rest on the whole field and were not");
    }
    String version = then.path("verdict").path("version").asString("");
    return new Verification(bag.fingerprints().size(), version, differences, remarks);
  }

  /** As it would be read back from a file, so that both sides hold the same kinds of nodes. */
  private static JsonNode tree(JsonNode node) {
    return MAPPER.readTree(MAPPER.writeValueAsString(node));
  }

  private static JsonNode read(Bag bag, String name) {
    Path file = bag.data().resolve(name);
    if (!Files.isRegularFile(file)) {
      throw new InputException(
          Problem.error(
              Place.of("data/" + name),
              "nothing",
              "the published verdict",
              "nothing to compare with"));
    }
    try {
      return MAPPER.readTree(Files.readString(file));
    } catch (JacksonException e) {
      throw new InputException(
          Problem.error(Place.of("data/" + name), "no JSON that can be read", "JSON", ""));
    } catch (IOException e) {
      throw new OutsideException("could not read " + file + ": " + e, e);
    }
  }

  private static List<String> remarks(
      JsonNode then, JsonNode now, JsonNode measuredThen, JsonNode measuredNow) {
    List<String> remarks = new ArrayList<>();
    String java = then.path("computedWith").path("java").asString("");
    String here = now.path("computedWith").path("java").asString("");
    if (!java.equals(here)) {
      remarks.add("published with Java " + java + ", computed again with Java " + here);
    }
    Set<String> revisions = revisions(measuredThen);
    revisions.removeAll(revisions(measuredNow));
    revisions.forEach(r -> remarks.add("published with another revision of the arithmetic: " + r));
    return remarks;
  }

  private static Set<String> revisions(JsonNode measurements) {
    Set<String> revisions = new TreeSet<>();
    for (JsonNode value : measurements.path("values")) {
      JsonNode measurement = value.path("measurement");
      revisions.add(
          measurement.path("id").asString("") + " " + measurement.path("revision").asInt(0));
    }
    return revisions;
  }

  private static void compare(
      String place, JsonNode then, JsonNode now, Set<String> left, List<String> differences) {
    if (differences.size() >= MOST_NAMED) {
      return;
    }
    if (then.isObject() && now.isObject()) {
      Set<String> names = new TreeSet<>(then.propertyNames());
      names.addAll(now.propertyNames());
      names.removeAll(left);
      names.forEach(n -> compare(place + "." + n, then.path(n), now.path(n), left, differences));
    } else if (then.isArray() && now.isArray()) {
      if (then.size() != now.size()) {
        differences.add(place + ": " + then.size() + " entries published, " + now.size() + " now");
      }
      for (int i = 0; i < Math.min(then.size(), now.size()); i++) {
        compare(
            place + "[" + name(then.get(i), i) + "]", then.get(i), now.get(i), left, differences);
      }
    } else if (!same(then, now)) {
      differences.add(place + ": published " + then + ", computed again " + now);
    }
  }

  private static String name(JsonNode entry, int index) {
    for (String key : List.of("run", "id", "product")) {
      if (entry.path(key).isString()) {
        return entry.path(key).asString("")
            + (entry.has("use") ? " " + entry.path("use").asString("") : "");
      }
    }
    return Integer.toString(index);
  }

  private static boolean same(JsonNode then, JsonNode now) {
    if (then.isNumber() && now.isNumber()) {
      double a = then.asDouble();
      double b = now.asDouble();
      return a == b || Math.abs(a - b) <= RELATIVE * Math.max(Math.abs(a), Math.abs(b));
    }
    return then.equals(now) || then.isMissingNode() && now.isNull();
  }
}
