package ovenproof.verdict;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import ovenproof.campaign.Campaign;
import ovenproof.core.measure.Averaging;
import ovenproof.core.measure.Measurement;
import ovenproof.core.measure.Subject;
import ovenproof.core.ranking.Comparison;
import ovenproof.core.ranking.Pairs;
import ovenproof.core.repeatability.PooledDeviation;
import ovenproof.core.scoring.Candidate;
import ovenproof.core.scoring.GateFinding;
import ovenproof.core.scoring.NodeScore;
import ovenproof.core.scoring.ProductScore;
import ovenproof.core.scoring.ScoringCase;
import ovenproof.core.scoring.ScoringResult;
import ovenproof.measure.Measured;
import ovenproof.method.Criterion;
import ovenproof.method.TestPlan;
import ovenproof.method.ValueNode;
import ovenproof.verdict.Verdict.GateOutcome;
import ovenproof.verdict.Verdict.Node;
import ovenproof.verdict.Verdict.ProductVerdict;
import ovenproof.verdict.Verdict.RankSet;

/** From the numbers of a result to the verdict that people, pages and JSON read. */
final class VerdictAssembly {
  private final Campaign campaign;
  private final Measured measured;
  private final ScoringCase scoringCase;
  private final ScoringResult result;
  private final ShownScores shown;

  VerdictAssembly(
      Campaign campaign, Measured measured, ScoringCase scoringCase, ScoringResult result) {
    this.campaign = campaign;
    this.measured = measured;
    this.scoringCase = scoringCase;
    this.result = result;
    shown = new ShownScores(scoringCase);
  }

  Verdict verdict(List<String> warnings) {
    List<ProductVerdict> products = result.products().stream().map(this::product).toList();
    return new Verdict(
        campaign.method().id() + " " + campaign.method().version(),
        Fingerprint.of(scoringCase),
        campaign.method().scoring().seed(),
        result.draws(),
        result.compared().map(VerdictAssembly::margin).orElse(null),
        products,
        result.compared().map(VerdictAssembly::pairs).orElse(List.of()),
        warnings);
  }

  /** c times the median standard error of a difference. */
  private static @Nullable Double margin(Comparison comparison) {
    Pairs pairs = comparison.pairs();
    int n = pairs.size();
    double[] needed = new double[n * (n - 1) / 2];
    int next = 0;
    for (int a = 0; a < n; a++) {
      for (int b = a + 1; b < n; b++) {
        needed[next++] = pairs.needed(a, b);
      }
    }
    Arrays.sort(needed);
    return needed.length == 0 ? null : needed[needed.length / 2];
  }

  private static List<Verdict.Pair> pairs(Comparison comparison) {
    List<Verdict.Pair> pairs = new ArrayList<>();
    List<String> ids = comparison.ids();
    for (int a = 0; a < ids.size(); a++) {
      for (int b = 0; b < ids.size(); b++) {
        if (a != b) {
          double probability = comparison.pairs().probabilityLow(a, b);
          pairs.add(new Verdict.Pair(ids.get(a), ids.get(b), probability));
        }
      }
    }
    return pairs;
  }

  private ProductVerdict product(ProductScore score) {
    Candidate candidate = scoringCase.product(score.id()).orElseThrow();
    List<Node> tests = new ArrayList<>();
    for (TestPlan test : campaign.method().tests()) {
      score.total().find(test.id()).ifPresent(node -> tests.add(test(test, node, candidate)));
    }
    var rank = score.rank();
    Verdict.Score total = shown.of(score.total(), candidate);
    return new ProductVerdict(
        score.id(),
        score.label(),
        score.why() == null ? total : withNote(total, score.why()),
        rank == null ? null : new RankSet(rank.low(), rank.high()),
        score.bestLow(),
        score.bestHigh(),
        score.tier(),
        tests,
        score.gates().stream().map(this::gate).toList(),
        missing(tests));
  }

  private static Verdict.Score withNote(Verdict.Score score, @Nullable String note) {
    return new Verdict.Score(
        score.value(), score.low(), score.high(), score.known(), score.standardError(), note);
  }

  private Node test(TestPlan test, NodeScore node, Candidate product) {
    List<Node> children = children(test, test.criteria(), node, product);
    return new Node(
        test.id(),
        test.name(),
        node.parts(),
        shown.of(node, product),
        place(test.id(), node),
        null,
        null,
        children.stream().mapToInt(Node::runs).max().orElse(0),
        children);
  }

  /** 1 + how many products have a higher displayed score here; null where there is no one score. */
  private @Nullable Integer place(String node, NodeScore own) {
    BigDecimal mine = own.displayedLow();
    if (mine == null || own.bounded()) {
      return null;
    }
    long above =
        result.products().stream()
            .map(p -> p.total().find(node))
            .flatMap(Optional::stream)
            .map(NodeScore::displayedLow)
            .filter(other -> other != null && other.compareTo(mine) > 0)
            .count();
    return (int) above + 1;
  }

  private List<Node> children(
      TestPlan test, List<ValueNode> children, NodeScore parent, Candidate product) {
    List<Node> nodes = new ArrayList<>();
    for (ValueNode child : children) {
      parent
          .find(CaseKeys.node(test.id(), child.id()))
          .ifPresent(score -> nodes.add(node(test, child, score, product)));
    }
    return nodes;
  }

  private Node node(TestPlan test, ValueNode plan, NodeScore score, Candidate product) {
    List<Node> children =
        plan instanceof ValueNode.Group group
            ? children(test, group.children(), score, product)
            : List.of();
    String measure = plan instanceof Criterion criterion ? criterion.measure() : null;
    List<Measurement> values = measure == null ? List.of() : values(test, measure, product.id());
    int runs =
        measure == null
            ? children.stream().mapToInt(Node::runs).max().orElse(0)
            : (int) values.stream().filter(v -> !v.isMissing()).count();
    return new Node(
        plan.id(),
        plan.name(),
        score.parts(),
        shown.of(score, product),
        null,
        measure,
        values.isEmpty() ? null : mean(values, test, Objects.requireNonNull(measure), product.id()),
        runs,
        children);
  }

  /** Facts are measured once and carry their own uncertainty; runs are judged by their scatter. */
  private Measurement mean(
      List<Measurement> values, TestPlan test, String measure, String product) {
    PooledDeviation spread = result.spreads().get(CaseKeys.variable(test.id(), measure));
    Subject subject = Subject.ofProduct(product);
    if (spread != null && spread.known() && spread.deviation() > 0) {
      return Averaging.ofRuns(values, subject, spread.deviation());
    }
    Measurement mean = Averaging.mean(values, subject);
    return spread == null || spread.known() || mean.isMissing()
        ? mean
        : mean.withNote("no two runs of any product: how far a second run would lie is not known");
  }

  private List<Measurement> values(TestPlan test, String use, String product) {
    return measured.counted(test.id(), use, product).stream().map(Measured.Value::value).toList();
  }

  private GateOutcome gate(GateFinding finding) {
    String id = finding.gate().id();
    String test = id.substring(0, id.indexOf('/'));
    String key = id.substring(id.indexOf('/') + 1);
    ovenproof.method.Gate.Kind kind =
        ovenproof.method.Gate.Kind.valueOf(finding.gate().kind().name());
    double probability = finding.probability();
    return new GateOutcome(
        key,
        finding.gate().label(),
        test,
        kind,
        state(finding),
        Double.isNaN(probability) ? null : probability,
        finding.why());
  }

  private static GateOutcome.State state(GateFinding finding) {
    return switch (finding.state()) {
      case FIRED -> GateOutcome.State.FIRED;
      case NOT_SHOWN -> GateOutcome.State.NOT_SHOWN;
      case UNKNOWN -> GateOutcome.State.NOT_MEASURED;
      case PASSED ->
          finding.hangs() == GateFinding.Hangs.ON_THE_LIMIT
              ? GateOutcome.State.HANGS_ON_THE_LIMIT
              : GateOutcome.State.PASSED;
    };
  }

  private static List<String> missing(List<Node> tests) {
    List<String> missing = new ArrayList<>();
    tests.forEach(test -> collect(test, test.name(), missing));
    return missing;
  }

  private static void collect(Node node, String test, List<String> missing) {
    String note = node.score().note();
    boolean open =
        note != null && (note.startsWith("missing") || note.startsWith("not asked, and"));
    if (node.children().isEmpty() && open) {
      missing.add(test + ", " + node.name() + ": " + note);
    }
    node.children().forEach(child -> collect(child, test, missing));
  }
}
