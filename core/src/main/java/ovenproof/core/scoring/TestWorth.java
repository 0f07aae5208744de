package ovenproof.core.scoring;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.hipparchus.stat.correlation.SpearmansCorrelation;
import ovenproof.core.scoring.ValueNode.Group;

/**
 * Which test earns its cost, and which repeats another.
 *
 * @param test id
 * @param separationsLost pairs of products that the verdict no longer separates without the test
 *     (negative: it separates more)
 * @param winner whether the first place stays without it
 * @param minutes what the test costs; NaN when not said
 * @param repeats the test whose scores order the products most alike; empty for a single test
 * @param rankCorrelation Spearman's correlation with that test, over products that have both
 *     scores; NaN with fewer than 4 products
 */
public record TestWorth(
    String test,
    int separationsLost,
    LeaveOneOut.Winner winner,
    double minutes,
    String repeats,
    double rankCorrelation) {

  private static final int FEWEST = 4;

  /**
   * Every test of the first level that weighs.
   *
   * @param minutes cost by test; tests not named cost NaN
   */
  public static List<TestWorth> of(
      ScoringCase scoringCase, Map<String, Double> minutes, int threads) {
    if (!(scoringCase.root() instanceof Group root)) {
      return List.of();
    }
    List<NodeScore> points = Scoring.points(scoringCase);
    int all = LeaveOneOut.separated(Scoring.score(scoringCase, threads));
    List<String> tests =
        root.children().stream().filter(c -> c.parts() > 0).map(ValueNode::id).toList();
    List<TestWorth> worth = new ArrayList<>();
    for (LeaveOneOut.Outcome outcome : LeaveOneOut.tests(scoringCase, threads)) {
      String twin = "";
      double most = Double.NaN;
      for (String other : tests) {
        double correlation =
            other.equals(outcome.without())
                ? Double.NaN
                : correlation(points, outcome.without(), other);
        if (!Double.isNaN(correlation) && !(correlation <= most)) {
          twin = other;
          most = correlation;
        }
      }
      worth.add(
          new TestWorth(
              outcome.without(),
              all - outcome.separated(),
              outcome.winner(),
              minutes.getOrDefault(outcome.without(), Double.NaN),
              twin,
              most));
    }
    return worth;
  }

  private static double correlation(List<NodeScore> points, String test, String other) {
    double[][] scores =
        points.stream()
            .map(p -> new double[] {middle(p, test), middle(p, other)})
            .filter(pair -> !Double.isNaN(pair[0]) && !Double.isNaN(pair[1]))
            .toArray(double[][]::new);
    if (scores.length < FEWEST) {
      return Double.NaN;
    }
    double[] first = IntStream.range(0, scores.length).mapToDouble(i -> scores[i][0]).toArray();
    double[] second = IntStream.range(0, scores.length).mapToDouble(i -> scores[i][1]).toArray();
    return new SpearmansCorrelation().correlation(first, second);
  }

  private static double middle(NodeScore total, String test) {
    return total.find(test).map(n -> (n.low() + n.high()) / 2).orElse(Double.NaN);
  }
}
