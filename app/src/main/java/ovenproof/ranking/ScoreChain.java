package ovenproof.ranking;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Rounding;
import ovenproof.measure.Measured;
import ovenproof.method.Criterion;
import ovenproof.method.TestPlan;
import ovenproof.method.ValueNode;
import ovenproof.publish.figure.Scores;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;
import ovenproof.web.Shown;
import ovenproof.web.Workbench;

/** From a product's score down to its files: criterion, curve, measurement, run or row. */
final class ScoreChain {
  /** How a measurement names a row that was typed: table, product and what it is about. */
  private static final Pattern ROW = Pattern.compile("(features|facts|rated)\\.csv#[^/]+/(.+)");

  private final String cid;
  private final Workbench.Sheet sheet;
  private final String product;

  ScoreChain(String cid, Workbench.Sheet sheet, String product) {
    this.cid = cid;
    this.sheet = sheet;
    this.product = product;
  }

  /** A test of one product. */
  public record TestRows(
      String id, String name, String words, String parts, List<CriterionRows> criteria) {}

  /** A criterion, its curve, its runs. */
  public record CriterionRows(
      String name, String words, String measured, String curve, List<RunRow> runs) {}

  /** A value and where it came from. */
  public record RunRow(
      @Nullable String run, String value, String components, List<Source> evidence) {}

  /**
   * A file, or a row of a table that was typed.
   *
   * @param at where it is shown; null when it is not kept here
   */
  public record Source(String name, @Nullable String at) {}

  /** One test, or all of them when none is named. */
  List<TestRows> tests(ProductVerdict scored, @Nullable String test) {
    List<TestRows> tests = new ArrayList<>();
    for (Node node : scored.tests()) {
      if (test == null || node.id().equals(test)) {
        TestPlan plan = sheet.campaign().method().test(node.id()).orElseThrow();
        List<CriterionRows> criteria = new ArrayList<>();
        criteria(plan, node, plan.criteria(), criteria);
        String parts = counted(node.parts(), "part");
        tests.add(
            new TestRows(
                node.id(),
                node.name(),
                Scores.sentence(node.score()),
                plan.replicates() == 0 ? parts : parts + ", " + counted(node.runs(), "run"),
                criteria));
      }
    }
    return tests;
  }

  private static String counted(int count, String noun) {
    return count + " " + noun + (count == 1 ? "" : "s");
  }

  private void criteria(
      TestPlan test, Node node, List<ValueNode> values, List<CriterionRows> rows) {
    for (Node child : node.children()) {
      ValueNode value =
          values.stream().filter(v -> v.id().equals(child.id())).findFirst().orElse(null);
      if (value instanceof Criterion criterion) {
        rows.add(criterion(test, child, criterion));
      } else if (value instanceof ValueNode.Group group) {
        criteria(test, child, group.children(), rows);
      }
    }
  }

  private CriterionRows criterion(TestPlan test, Node node, Criterion criterion) {
    List<Measured.Value> values = sheet.measured().counted(test.id(), criterion.measure(), product);
    List<RunRow> runs = new ArrayList<>();
    for (Measured.Value value : values) {
      Measurement m = value.value();
      String components =
          m.components().stream()
              .map(c -> c.source() + " " + Rounding.HALF_UP.text(Math.abs(c.u()), 2))
              .collect(Collectors.joining(", "));
      List<Source> sources = m.evidence().stream().map(e -> source(e)).distinct().toList();
      String why = m.note() == null ? "" : (components.isEmpty() ? "" : "; ") + m.note();
      runs.add(new RunRow(value.run(), Shown.measurement(m), components + why, sources));
    }
    String measured =
        node.measurement() == null
            ? "Nothing measured."
            : node.measurement().label()
                + ": "
                + Shown.measurement(node.measurement())
                + ". "
                + node.measurement().definition();
    return new CriterionRows(
        criterion.name() + ", " + counted(criterion.parts(), "part"),
        Scores.sentence(node.score()),
        measured,
        CurvePicture.of(criterion, values.stream().map(Measured.Value::value).toList()),
        runs);
  }

  private Source source(String evidence) {
    Matcher row = ROW.matcher(evidence);
    if (row.matches()) {
      return row.group(1).equals("features")
          ? new Source(row.group(2), "/c/" + cid + "/features?feature=" + encoded(row.group(2)))
          : new Source(row.group(2), "/c/" + cid + "/products/" + product + at(row.group(1)));
    }
    String name = evidence.replaceAll("[#@ ].*", "");
    boolean kept = sheet.campaign().evidence().stream().anyMatch(f -> f.path().equals(name));
    return new Source(name, kept ? "/c/" + cid + "/files?path=" + encoded(name) : null);
  }

  private static String at(String table) {
    return table.equals("facts") ? "#h-f" : "#h-r";
  }

  private static String encoded(String words) {
    return URLEncoder.encode(words, StandardCharsets.UTF_8);
  }
}
