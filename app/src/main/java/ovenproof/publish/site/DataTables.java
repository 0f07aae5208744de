package ovenproof.publish.site;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.campaign.Deviation;
import ovenproof.campaign.Entry;
import ovenproof.campaign.FactValue;
import ovenproof.campaign.FeatureState;
import ovenproof.campaign.RatedStep;
import ovenproof.campaign.Run;
import ovenproof.core.measure.Censoring;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Quantity;
import ovenproof.measure.Measured.Value;
import ovenproof.publish.edition.Edition;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;
import ovenproof.verdict.Verdict.Score;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Everything shown, as CSV, with its Frictionless table schemas. Scores carry the printed digits,
 * measurements the unrounded values in contract units.
 *
 * <p>A text cell that a spreadsheet would take for a formula gets an apostrophe in front.
 */
final class DataTables {
  private final Edition edition;
  private final PrivateNames names;
  private final Map<String, Table> tables = new LinkedHashMap<>();

  private record Column(String name, String type, String description) {}

  private record Table(String what, List<Column> columns, List<List<Object>> rows) {}

  DataTables(Edition edition, PrivateNames names) {
    this.edition = edition;
    this.names = names;
    ranking();
    scores();
    measurements();
    runs();
    facts();
    rated();
    features();
    prices();
    deviations();
    notRun();
  }

  /** File names with what they hold. */
  Map<String, String> contents() {
    Map<String, String> contents = new LinkedHashMap<>();
    tables.forEach((name, table) -> contents.put(name + ".csv", table.what()));
    contents.put("verdict.json", "the verdict, as the program’s JSON");
    contents.put("datapackage.json", "columns and types of the tables");
    return contents;
  }

  /** All tables as text by file name. */
  Map<String, String> csv() {
    Map<String, String> files = new LinkedHashMap<>();
    tables.forEach((name, table) -> files.put(name + ".csv", csv(table)));
    return files;
  }

  private static String csv(Table table) {
    StringWriter text = new StringWriter();
    try (CsvWriter writer = CsvWriter.builder().build(text)) {
      writer.writeRecord(table.columns().stream().map(Column::name).toList());
      for (List<Object> row : table.rows()) {
        writer.writeRecord(row.stream().map(DataTables::cell).toList());
      }
    } catch (java.io.IOException e) {
      throw new IllegalStateException("a string cannot fail to be written", e);
    }
    return text.toString();
  }

  private static String cell(@Nullable Object value) {
    if (value == null || value == NONE) {
      return "";
    }
    if (value instanceof String text) {
      return text.matches("(?s)^[=+\\-@\\t\\r].*") ? "'" + text : text;
    }
    return value instanceof BigDecimal number ? number.toPlainString() : value.toString();
  }

  /** Lists hold no null; an empty cell is this. */
  private static final Object NONE = new Object();

  private static Object or(@Nullable Object value) {
    return value == null ? NONE : value;
  }

  private static Column text(String name, String description) {
    return new Column(name, "string", description);
  }

  private static Column number(String name, String description) {
    return new Column(name, "number", description);
  }

  private static Column whole(String name, String description) {
    return new Column(name, "integer", description);
  }

  private static Column day(String name, String description) {
    return new Column(name, "date", description);
  }

  private void table(String name, String what, List<Column> columns, List<List<Object>> rows) {
    tables.put(name, new Table(what, columns, rows));
  }

  private void ranking() {
    List<List<Object>> rows = new ArrayList<>();
    for (ProductVerdict p : edition.verdict().products()) {
      rows.add(
          List.of(
              p.id(),
              p.name(),
              or(p.score().value()),
              or(p.score().low()),
              or(p.score().high()),
              known(p.score()),
              or(p.rank() == null ? null : p.rank().low()),
              or(p.rank() == null ? null : p.rank().high()),
              or(p.tier()),
              or(p.probabilityBest())));
    }
    table(
        "ranking",
        "scores, intervals, ranks and tiers",
        List.of(
            text("product", "key"),
            text("name", "name as printed"),
            number("score", "points, 0 to 10, as printed"),
            number("low", "lower end of the 90 % interval, or lowest possible"),
            number("high", "upper end likewise"),
            text("known", "what score, low and high mean"),
            whole("rank_low", "best place it may hold"),
            whole("rank_high", "worst place it may hold"),
            whole("tier", "tier, 1 is first"),
            number("probability_best", "chance of being best")),
        rows);
  }

  private static String known(Score score) {
    return score.known().name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private void scores() {
    List<List<Object>> rows = new ArrayList<>();
    for (ProductVerdict product : edition.verdict().products()) {
      for (Node test : product.tests()) {
        node(product.id(), test.id(), test.id(), test, rows);
      }
    }
    table(
        "scores",
        "every test, group and criterion",
        List.of(
            text("product", "key"),
            text("test", "key"),
            text("node", "place in the value tree"),
            text("name", "name as printed"),
            whole("parts", "weight among its siblings"),
            number("score", "points, 0 to 10, as printed"),
            number("low", "lower end of the 90 % interval"),
            number("high", "upper end"),
            text("known", "what they mean"),
            whole("runs", "runs behind it")),
        rows);
  }

  private static void node(
      String product, String test, String path, Node node, List<List<Object>> rows) {
    rows.add(
        List.of(
            product,
            test,
            path,
            node.name(),
            node.parts(),
            or(node.score().value()),
            or(node.score().low()),
            or(node.score().high()),
            known(node.score()),
            node.runs()));
    node.children().forEach(c -> node(product, test, path + "/" + c.id(), c, rows));
  }

  private void measurements() {
    List<List<Object>> rows = new ArrayList<>();
    for (Value v : edition.measured().values()) {
      Measurement m = v.value();
      rows.add(
          List.of(
              v.test(),
              v.use(),
              v.product(),
              or(v.run()),
              or(v.variant()),
              v.counts().name().toLowerCase(Locale.ROOT).replace('_', '-'),
              or(m.value()),
              m.unit().symbol(),
              or(m.uncertainty()),
              or(m.censored() == Censoring.NONE ? null : m.censored().word()),
              or(m.low()),
              or(m.high()),
              m.n(),
              components(m),
              m.id(),
              m.revision(),
              names.hidden(m.definition()),
              or(names.hide(m.note()))));
    }
    table(
        "measurements",
        "every measurement of every run, unrounded",
        List.of(
            text("test", "key"),
            text("use", "key of the measure in the test"),
            text("product", "key"),
            text("run", "key; empty for facts"),
            text("variant", "key"),
            text("counts", "counted or listed-only"),
            number("value", "in unit; empty when missing or bounded"),
            text("unit", "unit"),
            number("uncertainty", "one standard uncertainty"),
            text("censored", "above, below or between; empty when measured"),
            number("low", "lower bound"),
            number("high", "upper bound"),
            whole("n", "independent observations"),
            text("components", "sources of the uncertainty, signed"),
            text("measure", "registered measure"),
            whole("revision", "revision of the arithmetic"),
            text("definition", "how it is defined"),
            text("note", "reason when missing, reservation otherwise")),
        rows);
  }

  private static String components(Measurement m) {
    List<String> parts = new ArrayList<>();
    for (Component c : m.components()) {
      parts.add(c.source() + " " + c.u());
    }
    return String.join("; ", parts);
  }

  private void runs() {
    Campaign campaign = edition.campaign();
    List<List<Object>> rows = new ArrayList<>();
    for (Run r : campaign.runs()) {
      rows.add(
          List.of(
              r.id(),
              r.product(),
              r.test(),
              r.variant(),
              r.replicate(),
              r.kind().name().toLowerCase(Locale.ROOT),
              or(r.session()),
              or(r.started()),
              names.hidden(campaign.whyNotCounted(r).orElse("counts"))));
    }
    table(
        "runs",
        "every attempt, and whether it counts",
        List.of(
            text("run", "key"),
            text("product", "key"),
            text("test", "key"),
            text("variant", "key"),
            whole("replicate", "from 1"),
            text("kind", "counted or trial"),
            text("session", "day or half day"),
            new Column("started", "datetime", "start, UTC"),
            text("counts", "counts, or why not")),
        rows);
  }

  private void facts() {
    List<List<Object>> rows = new ArrayList<>();
    for (FactValue f : Entry.effective(edition.campaign().facts())) {
      rows.add(
          List.of(
              f.product(),
              f.fact(),
              or(contract(f.measured())),
              or(contract(f.nameplate())),
              or(unit(f.measured() == null ? f.nameplate() : f.measured()))));
    }
    table(
        "facts",
        "facts, measured, with the nameplate",
        List.of(
            text("product", "key"),
            text("fact", "key"),
            number("measured", "in unit"),
            number("nameplate", "in unit"),
            text("unit", "unit")),
        rows);
  }

  /** Raters have no names in public: they are numbered within a product's fact. */
  private void rated() {
    Map<String, Integer> people = new java.util.HashMap<>();
    List<List<Object>> rows = new ArrayList<>();
    for (RatedStep s : Entry.effective(edition.campaign().ratedSteps())) {
      int person = people.merge(s.product() + "\n" + s.fact(), 1, Integer::sum);
      rows.add(List.of(s.product(), s.fact(), person, s.step(), or(names.hide(s.reason()))));
    }
    table(
        "rated",
        "rated facts, the step that each person chose",
        List.of(
            text("product", "key"),
            text("fact", "key"),
            whole("person", "from 1, within a product's fact"),
            whole("step", "0 to 4, worded in the method"),
            text("reason", "")),
        rows);
  }

  private void features() {
    List<List<Object>> rows = new ArrayList<>();
    for (FeatureState f : Entry.effective(edition.campaign().features())) {
      rows.add(
          List.of(
              f.product(),
              f.feature(),
              ovenproof.input.Words.of(f.state()),
              or(f.on()),
              or(names.hide(f.note()))));
    }
    table(
        "features",
        "feature checklist; what is not listed was not looked at",
        List.of(
            text("product", "key"),
            text("feature", "name"),
            text("state", "yes, no or not-applicable"),
            new Column("on", "date", "day it was looked at"),
            text("note", "")),
        rows);
  }

  private static @Nullable Double contract(@Nullable Quantity quantity) {
    return quantity == null ? null : quantity.contract();
  }

  private static @Nullable String unit(@Nullable Quantity quantity) {
    return quantity == null ? null : quantity.unit().contractUnit().symbol();
  }

  private void prices() {
    List<List<Object>> rows = new ArrayList<>();
    for (Campaign.Price p : edition.campaign().prices()) {
      rows.add(
          List.of(
              p.product(), BigDecimal.valueOf(p.amount()), p.currency(), p.on(), or(p.where())));
    }
    table(
        "prices",
        "prices with the day they were seen",
        List.of(
            text("product", "key"),
            number("price", "in currency"),
            text("currency", "ISO 4217"),
            day("on", "day"),
            text("where", "seller")),
        rows);
  }

  private void deviations() {
    List<List<Object>> rows = new ArrayList<>();
    for (Deviation d : Entry.effective(edition.campaign().deviations())) {
      rows.add(
          List.of(d.run(), d.deviationClass(), names.hidden(d.what()), or(names.hide(d.note()))));
    }
    table(
        "deviations",
        "departures from the method",
        List.of(
            text("run", "key"),
            whole("class", "1 noted, 2 looked at with and without, 3 void"),
            text("what", "what happened"),
            text("note", "note")),
        rows);
  }

  private void notRun() {
    List<List<Object>> rows = new ArrayList<>();
    for (Campaign.NotRun n : edition.campaign().notRun()) {
      rows.add(
          List.of(
              n.product(),
              n.test(),
              n.state().name().toLowerCase(Locale.ROOT).replace('_', '-'),
              names.hidden(n.reason())));
    }
    table(
        "not-run",
        "tests that a product has no run of",
        List.of(
            text("product", "key"),
            text("test", "key"),
            text("state", "cannot-do, not-asked or missing"),
            text("reason", "why")),
        rows);
  }

  /** The Frictionless data package of all tables. */
  ObjectNode dataPackage() {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("$schema", "https://datapackage.org/profiles/2.0/datapackage.json");
    root.put("name", "review");
    root.put("title", edition.campaign().info().title());
    root.put("version", edition.verdict().version());
    if (edition.isInvented()) {
      root.put("description", "Invented for demonstration: no such products exist.");
    }
    ArrayNode resources = root.putArray("resources");
    tables.forEach((name, table) -> resource(resources.addObject(), name, table));
    return root;
  }

  private static void resource(ObjectNode resource, String name, Table table) {
    resource.put("name", name);
    resource.put("path", name + ".csv");
    resource.put("description", table.what());
    resource.put("format", "csv");
    resource.put("mediatype", "text/csv");
    resource.put("encoding", "utf-8");
    ArrayNode fields = resource.putObject("schema").putArray("fields");
    for (Column column : table.columns()) {
      fields
          .addObject()
          .put("name", column.name())
          .put("type", column.type())
          .put("description", column.description());
    }
  }
}
