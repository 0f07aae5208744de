package ovenproof.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.input.NearestWord;
import ovenproof.input.OutsideException;
import ovenproof.input.Place;
import ovenproof.input.Problems;
import ovenproof.input.TextFile;
import ovenproof.input.Written;
import ovenproof.input.YamlDocument;
import ovenproof.input.YamlMap;
import ovenproof.measure.MeasureRegistry;
import ovenproof.method.Method;
import ovenproof.method.MethodReader;

/** Reads one campaign folder and everything that is wrong with it. */
final class CampaignReader {
  static final String CAMPAIGN_FILE = "campaign.yaml";
  static final String METHOD_FILE = "method.yaml";
  static final List<String> CAMPAIGN_KEYS =
      List.of(
          "format",
          "campaign",
          "title",
          "kitchen",
          "zone",
          "currency",
          "invented",
          "published",
          "disclosure",
          "note");

  private final MeasureRegistry registry;
  private final FolderEvidence evidence;
  private final Problems problems = new Problems();
  private final Set<String> broken = new LinkedHashSet<>();
  private @Nullable Path method;

  CampaignReader(MeasureRegistry registry, FolderEvidence evidence) {
    this.registry = registry;
    this.evidence = evidence;
  }

  /** Reads this document in place of the folder's own method. */
  CampaignReader under(Path otherMethod) {
    method = otherMethod;
    return this;
  }

  Problems problems() {
    return problems;
  }

  /** The campaign; empty when its two documents could not be read at all. */
  Optional<Campaign> read() {
    Optional<Campaign.Info> info = info();
    Optional<Method> method = method();
    Map<Table, List<Row>> rows = tables();
    Context context =
        new Context(
            problems,
            evidence,
            info.map(Campaign.Info::zone).orElse(ZoneId.of("UTC")),
            info.map(Campaign.Info::currency).orElse("EUR"),
            method,
            rows,
            broken);
    Sections sections = sections(context);
    new CampaignChecks(context, sections).run();
    if (info.isEmpty() || method.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(campaign(info.get(), method.get(), sections));
  }

  private Optional<String> text(String file) {
    try (InputStream in = evidence.open(file)) {
      return TextFile.read(in, file, problems);
    } catch (IOException failure) {
      throw new OutsideException("could not read " + file, failure);
    }
  }

  private Optional<String> needed(String file) {
    if (evidence.size(file).isEmpty()) {
      problems.error(
          Place.of(file),
          "no such file",
          "the file that every campaign folder has",
          "\"ovenproof new DIR --starter NAME\" writes one");
      return Optional.empty();
    }
    return text(file);
  }

  private Optional<Method> method() {
    Path other = method;
    String name = other == null ? METHOD_FILE : other.toString();
    Optional<String> text = other == null ? needed(METHOD_FILE) : outside(other, name);
    return text.flatMap(t -> new MethodReader(registry.measures()).read(name, t, problems));
  }

  private Optional<String> outside(Path file, String name) {
    if (!Files.isRegularFile(file)) {
      problems.error(Place.of(name), "no such file", "a method document", "");
      return Optional.empty();
    }
    try (InputStream in = Files.newInputStream(file)) {
      return TextFile.read(in, name, problems);
    } catch (IOException failure) {
      throw new OutsideException("could not read " + name, failure);
    }
  }

  private Optional<Campaign.Info> info() {
    return needed(CAMPAIGN_FILE)
        .flatMap(text -> YamlDocument.read(CAMPAIGN_FILE, text, problems))
        .map(this::info);
  }

  private Campaign.Info info(YamlMap map) {
    map.only(CAMPAIGN_KEYS);
    map.need("format").ifPresent(w -> w.mustBe("1"));
    boolean invented = map.find("invented").flatMap(Written::yes).orElse(false);
    return new Campaign.Info(
        map.need("campaign").flatMap(Written::key).orElse(""),
        map.text("title"),
        map.text("kitchen"),
        map.need("zone").flatMap(CampaignReader::zone).orElse(ZoneId.of("UTC")),
        map.need("currency").flatMap(ProductRows::currency).orElse("EUR"),
        invented ? Campaign.Provenance.INVENTED : Campaign.Provenance.REAL,
        map.find("published").flatMap(Written::date).orElse(null),
        map.textOrNull("disclosure"),
        map.textOrNull("note"));
  }

  private static Optional<ZoneId> zone(Written written) {
    Set<String> zones = ZoneId.getAvailableZoneIds();
    if (zones.contains(written.text())) {
      return Optional.of(ZoneId.of(written.text()));
    }
    written.error("a time zone such as Europe/Dublin", NearestWord.remedy(written.text(), zones));
    return Optional.empty();
  }

  private Map<Table, List<Row>> tables() {
    Map<Table, List<Row>> rows = new LinkedHashMap<>();
    for (Table table : Tables.ALL) {
      if (evidence.size(table.file()).isPresent()) {
        rows.put(table, rows(table));
      }
    }
    strangers();
    return rows;
  }

  private List<Row> rows(Table table) {
    Optional<CsvTable> csv = text(table.file()).map(text -> new CsvTable(table, text, problems));
    List<Row> rows = csv.map(CsvTable::rows).orElse(List.of());
    if (!csv.map(CsvTable::isWhole).orElse(false)) {
      broken.add(table.file());
    }
    return rows;
  }

  /** A misspelt table would be an empty table: every CSV or YAML file at the top must be known. */
  private void strangers() {
    List<String> known = new ArrayList<>(Tables.ALL.stream().map(Table::file).toList());
    known.add(CAMPAIGN_FILE);
    known.add(METHOD_FILE);
    try (Stream<Path> files = Files.list(evidence.root())) {
      files
          .map(f -> f.getFileName().toString())
          .filter(f -> f.matches("(?i)[^.].*\\.(csv|ya?ml)"))
          .filter(f -> !known.contains(f))
          .sorted()
          .forEach(f -> stranger(f, known));
    } catch (IOException failure) {
      throw new OutsideException("could not list the folder", failure);
    }
  }

  private void stranger(String file, List<String> known) {
    Optional<String> nearest = NearestWord.to(file, known);
    problems.warning(
        Place.of(file),
        "a file that is no table of a campaign",
        "one of " + String.join(", ", known),
        nearest
            .map(n -> "did you mean \"" + n + "\"? Nothing in this file is used")
            .orElse("logger files are kept in traces/; nothing in this file is used"));
  }

  private Sections sections(Context context) {
    ProductRows products = new ProductRows(context);
    RunRows runs = new RunRows(context, registry, starts(context));
    EvidenceRows files = new EvidenceRows(context);
    return new Sections(
        context.read(Tables.PRODUCTS, products::product),
        context.read(Tables.LEFT_OUT, products::leftOut),
        context.read(Tables.SPECIMENS, products::specimen),
        context.read(Tables.PRICES, products::price),
        context.read(Tables.FACTS, products::fact),
        context.read(Tables.RATED, products::rated),
        context.read(Tables.FEATURES, products::feature),
        context.read(Tables.SETTINGS, runs::settingCard),
        context.read(Tables.PLAN, runs::planned),
        context.read(Tables.RUNS, runs::run),
        context.read(Tables.NOT_RUN, runs::notRun),
        context.read(Tables.EVENTS, runs::event),
        context.read(Tables.DEVIATIONS, runs::deviation),
        context.read(Tables.READINGS, runs::reading),
        context.read(Tables.LOTS, products::lot),
        context.read(Tables.PIECES, runs::piece),
        context.read(Tables.RATINGS, runs::rating),
        context.read(Tables.INSTRUMENTS, products::instrument),
        context.read(Tables.CALIBRATIONS, products::calibration),
        context.read(Tables.TRACES, files::trace),
        context.read(Tables.PHOTOS, files::photo));
  }

  /** Test and start of every run; a run without start begins at its start event's clock time. */
  private Map<String, RunRows.RunStart> starts(Context context) {
    Context silent =
        new Context(
            new Problems(),
            evidence,
            context.zone(),
            context.currency(),
            context.method(),
            context.rows(),
            broken);
    Map<String, Instant> fromEvents = new HashMap<>();
    for (Row row : context.rows().getOrDefault(Tables.EVENTS, List.of())) {
      if (row.raw("event").strip().equals("start")) {
        Instant at = silently(row, "time", silent);
        if (at != null) {
          fromEvents.putIfAbsent(row.raw("run").strip(), at);
        }
      }
    }
    Map<String, RunRows.RunStart> starts = new HashMap<>();
    for (Row row : context.rows().getOrDefault(Tables.RUNS, List.of())) {
      String run = row.raw("run").strip();
      Instant started = silently(row, "started", silent);
      starts.putIfAbsent(
          run,
          new RunRows.RunStart(
              RunRows.test(context.method(), row),
              started == null ? fromEvents.get(run) : started));
    }
    return starts;
  }

  /** A time that is read, and reported if it is wrong, elsewhere. */
  private static @Nullable Instant silently(Row row, String column, Context silent) {
    return new Written(row.raw(column), row.place(), silent.problems())
        .time(silent.zone())
        .orElse(null);
  }

  private Campaign campaign(Campaign.Info info, Method method, Sections sections) {
    return new Campaign(
        info,
        method,
        Sections.values(sections.products()),
        Sections.values(sections.leftOut()),
        Sections.values(sections.specimens()),
        Sections.values(sections.prices()),
        Sections.values(sections.facts()),
        Sections.values(sections.ratedSteps()),
        Sections.values(sections.features()),
        Sections.values(sections.settingCards()),
        Sections.values(sections.plan()),
        Sections.values(sections.runs()),
        Sections.values(sections.notRun()),
        Sections.values(sections.events()),
        Sections.values(sections.deviations()),
        Sections.values(sections.readings()),
        Sections.values(sections.lots()),
        Sections.values(sections.pieces()),
        Sections.values(sections.ratings()),
        Sections.values(sections.instruments()),
        Sections.values(sections.calibrations()),
        Sections.values(sections.traces()),
        Sections.values(sections.photos()),
        evidence(sections));
  }

  /** Every file that a table names, once, in the order of naming. */
  private List<Campaign.Evidence> evidence(Sections sections) {
    Set<String> paths = new LinkedHashSet<>();
    sections.traces().forEach(t -> paths.add(t.value().file()));
    sections.photos().forEach(p -> paths.add(p.value().file()));
    sections.facts().forEach(f -> add(paths, f.value().photo()));
    sections.ratedSteps().forEach(r -> add(paths, r.value().photo()));
    List<Campaign.Evidence> files = new ArrayList<>();
    for (String path : paths) {
      evidence
          .scan(path)
          .ifPresent(f -> files.add(new Campaign.Evidence(path, f.sha256(), f.bytes())));
    }
    return files;
  }

  private static void add(Set<String> paths, @Nullable String path) {
    if (path != null) {
      paths.add(path);
    }
  }
}
