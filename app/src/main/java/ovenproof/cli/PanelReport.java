package ovenproof.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import ovenproof.chart.RatingChart;
import ovenproof.core.panel.AssessorCheck;
import ovenproof.core.panel.AttributeAnalysis;
import ovenproof.core.panel.HaloCheck;
import ovenproof.core.panel.PairDifference;
import ovenproof.core.panel.PairedTest;
import ovenproof.core.panel.PanelAnalysis;
import ovenproof.core.panel.PanelTest;
import ovenproof.core.panel.PenaltyAnalysis;
import ovenproof.core.panel.ProductMean;
import ovenproof.core.panel.Rating;
import ovenproof.core.panel.Sensitivity;
import ovenproof.core.panel.TriangleTest;
import ovenproof.core.panel.table.ColumnReading;
import ovenproof.core.panel.table.ReadTable;
import ovenproof.core.panel.table.TableProblem;
import ovenproof.panel.RatingPicture;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** A panel's result as text, JSON and picture. */
final class PanelReport {

  private final String file;
  private final ReadTable table;
  private final PanelAnalysis analysis;
  private final List<PenaltyAnalysis> penalties;

  PanelReport(String file, ReadTable table, PanelAnalysis analysis) {
    this.file = file;
    this.table = table;
    this.analysis = analysis;
    this.penalties = PenaltyAnalysis.ofRatings(table.ratings());
  }

  // --- JSON ---

  ObjectNode json() {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("format", 1);
    root.put("file", file);
    design(root.putObject("design"));
    ArrayNode products = root.putArray("products");
    ArrayNode tests = root.putArray("tests");
    ArrayNode pairs = root.putArray("pairs");
    ArrayNode sensitivity = root.putArray("sensitivity");
    for (AttributeAnalysis one : analysis.attributes()) {
      one.products().forEach(p -> product(products.addObject(), p));
      one.tests().forEach(t -> test(tests.addObject(), t));
      one.pairs().forEach(d -> pair(pairs.addObject(), one.attribute(), d));
      Sensitivity seen = one.sensitivity();
      if (seen != null) {
        sensitivity(sensitivity.addObject(), one, seen);
      }
    }
    assessors(root.putArray("assessors"));
    ArrayNode penalty = root.putArray("penalties");
    penalties.forEach(p -> penalty(penalty.addObject(), p));
    ArrayNode problems = root.putArray("problems");
    table.problems().forEach(p -> problem(problems.addObject(), p));
    strings(root.putArray("questions"), table.questions());
    strings(root.putArray("warnings"), warnings());
    return root;
  }

  private void design(ObjectNode design) {
    Set<String> assessors = new LinkedHashSet<>();
    Set<String> products = new LinkedHashSet<>();
    Set<String> sessions = new LinkedHashSet<>();
    Set<String> attributes = new LinkedHashSet<>();
    Set<String> batches = new LinkedHashSet<>();
    Map<String, Integer> cells = new LinkedHashMap<>();
    for (Rating r : table.ratings()) {
      add(assessors, r.assessor());
      products.add(r.product());
      add(sessions, r.session());
      attributes.add(r.attribute());
      if (r.batch() != null) {
        batches.add(r.product() + "\u0000" + r.session() + "\u0000" + r.batch());
      }
      cells.merge(
          r.assessor() + "\u0000" + r.product() + "\u0000" + r.attribute(), 1, Integer::sum);
    }
    design.put("layout", table.layout().words());
    design.put("assessors", assessors.size());
    design.put("products", products.size());
    design.put("attributes", attributes.size());
    design.put("sessions", Math.max(1, sessions.size()));
    design.put("batches", batches.size());
    design.put("replicates", cells.values().stream().mapToInt(Integer::intValue).max().orElse(0));
    design.put("ratings", table.ratings().size());
    design.put("missing", table.missing());
    design.put(
        "balanced",
        cells.values().stream().distinct().count() <= 1
            && cells.size() == Math.max(1, assessors.size()) * products.size() * attributes.size());
    design.put("experimentalUnit", batches.size() > products.size() ? "batch" : "none");
    ObjectNode names = design.putObject("names");
    strings(names.putArray("products"), products);
    strings(names.putArray("attributes"), attributes);
    strings(names.putArray("sessions"), sessions);
    strings(names.putArray("assessors"), assessors);
    ObjectNode scales = design.putObject("scales");
    table.scales().forEach(scales::put);
    ArrayNode columns = design.putArray("columns");
    for (ColumnReading column : table.columns()) {
      columns
          .addObject()
          .put("sheet", column.sheet())
          .put("header", column.header())
          .put("role", column.role().name().toLowerCase(Locale.ROOT))
          .put("why", column.why());
    }
    ObjectNode methods = design.putObject("methods");
    analysis.attributes().forEach(a -> methods.put(a.attribute(), a.method()));
    strings(design.putArray("notes"), table.notes());
  }

  private static void add(Set<String> names, @Nullable String name) {
    if (name != null) {
      names.add(name);
    }
  }

  private static void product(ObjectNode node, ProductMean p) {
    node.put("id", p.product()).put("attribute", p.attribute());
    number(node, "mean", p.mean());
    number(node, "uncertainty", p.uncertainty());
    node.put("groups", p.groups());
    number(node, "uncertaintyAmongProducts", p.uncertaintyAmongProducts());
    number(node, "weightedMean", p.weightedMean());
    node.put("ratings", p.marks());
    node.put("batches", p.batches());
  }

  private static void test(ObjectNode node, PanelTest t) {
    node.put("name", t.name()).put("attribute", t.attribute());
    number(node, "statistic", t.statistic());
    ArrayNode df = node.putArray("df");
    t.df().forEach(d -> df.add(d));
    number(node, "p", t.p());
    node.put("method", t.method());
  }

  private static void pair(ObjectNode node, String attribute, PairDifference d) {
    node.put("attribute", attribute).put("first", d.first()).put("second", d.second());
    number(node, "difference", d.difference());
    number(node, "standardError", d.standardError());
    number(node, "df", d.df());
    number(node, "p", d.p());
  }

  private static void sensitivity(ObjectNode node, AttributeAnalysis one, Sensitivity seen) {
    node.put("attribute", one.attribute());
    number(node, "detectable", seen.detectable());
    number(node, "withTwiceTheTasters", seen.detectableWithTwiceTheTasters());
    number(node, "withTwiceTheBatches", seen.detectableWithTwiceTheBatches());
    number(node, "floor", seen.floor());
    ObjectNode variances = node.putObject("variances");
    number(variances, "batch", one.variances().batch());
    number(variances, "productByAssessor", one.variances().interaction());
    number(variances, "residual", one.variances().residual());
    number(variances, "assessor", one.variances().assessor());
  }

  private void assessors(ArrayNode array) {
    Map<String, ObjectNode> byName = new LinkedHashMap<>();
    for (AttributeAnalysis one : analysis.attributes()) {
      for (AssessorCheck check : one.assessors()) {
        ObjectNode node = byName.computeIfAbsent(check.assessor(), name -> person(array, name));
        check((ArrayNode) node.get("attributes"), check);
      }
    }
    for (HaloCheck halo : analysis.halo()) {
      ObjectNode node = byName.get(halo.assessor());
      if (node != null) {
        node.put("halo", halo.finding().name().toLowerCase(Locale.ROOT).replace('_', ' '));
        number(node, "smallestCorrelation", halo.smallestCorrelation());
      }
    }
  }

  private static ObjectNode person(ArrayNode array, String name) {
    ObjectNode node = array.addObject().put("id", name);
    node.putArray("attributes");
    return node;
  }

  private static void check(ArrayNode array, AssessorCheck c) {
    ObjectNode node = array.addObject().put("attribute", c.attribute()).put("ratings", c.marks());
    number(node, "mean", c.mean());
    number(node, "level", c.level());
    number(node, "spread", c.spread());
    number(node, "repeatability", c.repeatability());
    number(node, "discrimination", c.discrimination());
    number(node, "discriminationP", c.discriminationP());
    number(node, "agreement", c.agreement());
    number(node, "drift", c.drift());
    number(node, "driftP", c.driftP());
    number(node, "weight", c.weight());
    strings(node.putArray("remarks"), c.remarks());
  }

  private static void penalty(ObjectNode node, PenaltyAnalysis p) {
    node.put("product", p.product()).put("attribute", p.attribute());
    node.put("side", words(p.side())).put("count", p.count()).put("answers", p.answers());
    number(node, "shareLow", p.share().low());
    number(node, "shareHigh", p.share().high());
    number(node, "drop", p.drop());
    number(node, "p", p.p());
    node.put("finding", words(p.finding()));
  }

  private static void problem(ObjectNode node, TableProblem p) {
    node.put("sheet", p.sheet()).put("line", p.line()).put("column", p.column());
    node.put("found", p.found()).put("expected", p.expected()).put("remedy", p.remedy());
  }

  private static String words(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  private static void number(ObjectNode node, String name, double value) {
    if (Double.isFinite(value)) {
      node.put(name, value);
    } else {
      node.putNull(name);
    }
  }

  private static void strings(ArrayNode array, Iterable<String> lines) {
    lines.forEach(line -> array.add(line));
  }

  /** Everything a reader must know, problems and questions included. */
  private List<String> warnings() {
    List<String> all = new ArrayList<>(analysis.warnings());
    Map<String, Set<String>> attributesOf = new LinkedHashMap<>();
    for (AttributeAnalysis one : analysis.attributes()) {
      for (String warning : one.warnings()) {
        attributesOf.computeIfAbsent(warning, any -> new LinkedHashSet<>()).add(one.attribute());
      }
    }
    attributesOf.forEach(
        (warning, attributes) ->
            all.add(
                attributes.size() == analysis.attributes().size()
                    ? warning
                    : String.join(", ", attributes) + ": " + warning));
    for (TableProblem p : table.problems()) {
      String place = p.sheet().isEmpty() ? "line " : "sheet " + p.sheet() + ", line ";
      all.add(
          (p.line() > 0 ? place + p.line() + ": " : "")
              + "found "
              + p.found()
              + ", expected "
              + p.expected()
              + (p.remedy().isEmpty() ? "" : "; " + p.remedy()));
    }
    all.addAll(table.questions());
    return all;
  }

  // --- text ---

  void print(PrintWriter out) {
    out.println("Read as " + table.layout().words() + ".");
    for (ColumnReading c : table.columns()) {
      out.printf(Locale.ROOT, "  %-24s %s (%s)%n", c.header(), c.role().words(), c.why());
    }
    table.notes().forEach(n -> out.println("  " + n));
    table.scales().forEach((a, s) -> out.println("  " + a + ": " + s));
    for (AttributeAnalysis one : analysis.attributes()) {
      out.println();
      print(out, one);
    }
    printPenalties(out);
    printHalo(out);
    List<String> warnings = warnings();
    if (!warnings.isEmpty()) {
      out.println();
      out.println("What to keep in mind");
      warnings.forEach(w -> out.println("  - " + w));
    }
  }

  private static void print(PrintWriter out, AttributeAnalysis one) {
    out.println(one.attribute().toUpperCase(Locale.ROOT));
    out.printf(
        Locale.ROOT,
        "  %-24s %9s %13s %8s %8s  %s%n",
        "product",
        "mean",
        "± among these",
        "± total",
        "ratings",
        "groups");
    for (ProductMean p : one.products()) {
      out.printf(
          Locale.ROOT,
          "  %-24s %9.2f %13s %8s %8d  %s%n",
          p.product(),
          p.mean(),
          two(p.uncertaintyAmongProducts()),
          two(p.uncertainty()),
          p.marks(),
          p.groups());
    }
    out.println("  Tested by " + one.method() + ".");
    for (PanelTest t : one.tests()) {
      out.printf(
          Locale.ROOT,
          "  %-20s %10s  df %-14s p %-8s %s%n",
          t.name(),
          three(t.statistic()),
          degrees(t),
          pValue(t.p()),
          t.method());
    }
    Sensitivity seen = one.sensitivity();
    if (seen != null) {
      out.printf(
          Locale.ROOT,
          "  This panel can see a difference of %s; with twice the tasters %s%s.%n",
          two(seen.detectable()),
          two(seen.detectableWithTwiceTheTasters()),
          Double.isNaN(seen.floor())
              ? ""
              : String.format(
                  Locale.ROOT,
                  ", with twice the batches %s, and no number of tasters gets below %s with these"
                      + " batches",
                  two(seen.detectableWithTwiceTheBatches()),
                  two(seen.floor())));
    }
    printAssessors(out, one);
  }

  private static void printAssessors(PrintWriter out, AttributeAnalysis one) {
    List<AssessorCheck> remarked =
        one.assessors().stream().filter(c -> !c.remarks().isEmpty()).toList();
    if (one.assessors().size() <= 30) {
      for (AssessorCheck c : one.assessors()) {
        out.printf(
            Locale.ROOT,
            "    %-16s level %6s  spread %5s  repeats %5s  agrees %5s  %s%n",
            c.assessor(),
            two(c.level()),
            two(c.spread()),
            two(c.repeatability()),
            two(c.agreement()),
            String.join("; ", c.remarks()));
      }
    } else {
      out.println(
          "    "
              + remarked.size()
              + " of "
              + one.assessors().size()
              + " people with a remark (see --json)");
    }
  }

  private void printPenalties(PrintWriter out) {
    if (!penalties.isEmpty()) {
      out.println();
      out.println("JUST ABOUT RIGHT");
      for (PenaltyAnalysis p : penalties) {
        out.printf(
            Locale.ROOT,
            "  %-20s %-16s %-10s %d of %d, costs %s: %s%n",
            p.product(),
            p.attribute(),
            words(p.side()),
            p.count(),
            p.answers(),
            two(p.drop()),
            words(p.finding()));
      }
    }
  }

  private void printHalo(PrintWriter out) {
    for (HaloCheck halo : analysis.halo()) {
      if (halo.finding() == HaloCheck.Finding.HALO) {
        out.printf(
            Locale.ROOT,
            "%s marks every attribute alike (all correlations above %.2f): a halo.%n",
            halo.assessor(),
            halo.smallestCorrelation());
      }
    }
  }

  private static String degrees(PanelTest test) {
    List<String> parts = new ArrayList<>();
    test.df().forEach(d -> parts.add(d == Math.rint(d) ? String.valueOf(d.longValue()) : two(d)));
    return String.join(", ", parts);
  }

  private static String pValue(double p) {
    if (Double.isNaN(p)) {
      return "–";
    }
    return p < 0.0001 ? "<0.0001" : String.format(Locale.ROOT, "%.4f", p);
  }

  private static String two(double value) {
    return Double.isFinite(value) ? String.format(Locale.ROOT, "%.2f", value) : "–";
  }

  private static String three(double value) {
    return Double.isFinite(value) ? String.format(Locale.ROOT, "%.3f", value) : "–";
  }

  // --- picture ---

  String picture() {
    List<RatingChart.Panel> panels = new ArrayList<>();
    for (AttributeAnalysis one : analysis.attributes()) {
      panels.add(RatingPicture.of(one, table.ratings()));
    }
    return RatingChart.document(panels);
  }

  // --- counted tests ---

  static void printTriangle(PrintWriter out, TriangleTest test, boolean json) {
    int needed = TriangleTest.fewestCorrect(test.answers(), 0.05);
    if (json) {
      ObjectNode node = counted("triangle", test.correct(), test.answers(), test.p());
      node.put("discriminators", test.discriminators());
      node.put("low", test.interval().low()).put("high", test.interval().high());
      node.put("neededAtFivePercent", needed);
      Json.print(out, node);
    } else {
      out.printf(
          Locale.ROOT,
          "%d of %d right, %d needed at 5 %%: p %s. About %.0f %% perceive it (95 %%: %.0f to %.0f).%n",
          test.correct(),
          test.answers(),
          needed,
          pValue(test.p()),
          100 * test.discriminators(),
          100 * test.interval().low(),
          100 * test.interval().high());
    }
  }

  static void printPaired(PrintWriter out, PairedTest test, boolean json) {
    if (json) {
      ObjectNode node = counted("paired", test.first(), test.answers(), test.p());
      node.put("low", test.interval().low()).put("high", test.interval().high());
      Json.print(out, node);
    } else {
      out.printf(
          Locale.ROOT,
          "%d of %d chose the first: p %s, share 95 %% %.0f to %.0f %%.%n",
          test.first(),
          test.answers(),
          pValue(test.p()),
          100 * test.interval().low(),
          100 * test.interval().high());
    }
  }

  private static ObjectNode counted(String name, int count, int all, double p) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("format", 1).put("name", name).put("count", count).put("answers", all).put("p", p);
    return node;
  }
}
