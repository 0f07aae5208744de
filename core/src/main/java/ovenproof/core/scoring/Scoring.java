package ovenproof.core.scoring;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import ovenproof.core.random.Blocks;
import ovenproof.core.random.RandomStreams;
import ovenproof.core.ranking.Comparison;
import ovenproof.core.ranking.Contender;
import ovenproof.core.ranking.FieldComparison;
import ovenproof.core.ranking.FieldPooling;
import ovenproof.core.ranking.Pairs;
import ovenproof.core.scoring.ProductScore.Standing;

/**
 * From a case to its result: points, then draws, then the comparison of the field.
 *
 * <p>The draws of a product are streamed in blocks of 500; only totals are kept (8 bytes per
 * product and draw). The result is the same for any number of threads and in every run of one seed.
 */
public final class Scoring {
  /** Products drawn side by side: more read what they share once, fewer keep to near memory. */
  private static final int TOGETHER = 8;

  private final ScoringCase scoringCase;
  private final int threads;
  private final FieldSpread spread;
  private final List<Prepared> products;
  private final List<NodeScore> points;

  private Scoring(ScoringCase scoringCase, int threads) {
    List<CaseProblem> problems = scoringCase.problems();
    if (!problems.isEmpty()) {
      throw new InvalidCaseException(problems);
    }
    this.scoringCase = scoringCase;
    this.threads = threads;
    spread = new FieldSpread(scoringCase);
    int size = scoringCase.products().size();
    Prepared[] prepared = new Prepared[size];
    NodeScore[] scores = new NodeScore[size];
    Blocks.forEach(
        size,
        threads,
        i -> {
          prepared[i] = Prepared.of(scoringCase, spread, i);
          scores[i] = PointScores.of(prepared[i], scoringCase);
        });
    products = List.of(prepared);
    points = List.of(scores);
  }

  /**
   * Scores and compares.
   *
   * @param threads at least 1; does not change the result
   * @throws InvalidCaseException with every problem of the case
   */
  public static ScoringResult score(ScoringCase scoringCase, int threads) {
    return new Scoring(scoringCase, threads).result();
  }

  /**
   * Scores without draws, for questions that ask "what if" many times: the tree of each product in
   * the order of the case, without intervals above the criteria.
   */
  public static List<NodeScore> points(ScoringCase scoringCase) {
    return new Scoring(scoringCase, 1).points;
  }

  private ScoringResult result() {
    RandomStreams streams = RandomStreams.of(scoringCase.rules().seed());
    int blocks = RandomStreams.blocks(scoringCase.rules().draws());
    FieldErrors errors = new FieldErrors(streams, blocks, products, spread);
    int size = products.size();
    NodeScore[] totals = new NodeScore[size];
    double[][] low = new double[size][];
    double[][] high = new double[size][];
    int together = Math.max(1, Math.min(TOGETHER, size / (4 * threads)));
    Queue<DrawBuffers> buffers = new ConcurrentLinkedQueue<>();
    Blocks.forEach(
        (size + together - 1) / together,
        threads,
        task -> {
          DrawBuffers own = buffers.poll();
          own = own == null ? new DrawBuffers(blocks * RandomStreams.BLOCK) : own;
          int first = task * together;
          List<ProductDraws> draws = new ArrayList<>();
          for (int i = first; i < Math.min(size, first + together); i++) {
            draws.add(new ProductDraws(products.get(i), scoringCase, errors, streams, blocks, own));
          }
          ProductDraws.run(draws);
          for (int k = 0; k < draws.size(); k++) {
            totals[first + k] = draws.get(k).withIntervals(points.get(first + k));
            low[first + k] = draws.get(k).totals(Leaf.Bound.LOW);
            high[first + k] = draws.get(k).totals(Leaf.Bound.HIGH);
          }
          own.release();
          buffers.add(own);
        });
    List<Integer> order = publishedOrder(totals);
    List<Contender> contenders = new ArrayList<>();
    for (int i : order) {
      if (standing(totals[i]) == Standing.RANKED) {
        String id = products.get(i).product().id();
        boolean bounded = totals[i].low() < totals[i].high();
        double top = bounded ? totals[i].high() : totals[i].low();
        contenders.add(new Contender(id, totals[i].low(), top, low[i], bounded ? high[i] : low[i]));
      }
    }
    Comparison comparison =
        contenders.isEmpty()
            ? null
            : FieldComparison.compare(contenders, streams, FieldPooling.PARTIAL, threads);
    List<ProductScore> scores = order.stream().map(i -> product(i, totals[i], comparison)).toList();
    return new ScoringResult(
        scores,
        comparison,
        spread.all(),
        blocks * RandomStreams.BLOCK,
        warnings(scores, comparison));
  }

  private List<Integer> publishedOrder(NodeScore[] totals) {
    Comparator<Integer> byScore =
        Comparator.comparingDouble((Integer i) -> totals[i].scored() ? -totals[i].middle() : 1);
    return IntStream.range(0, totals.length)
        .boxed()
        .sorted(byScore.thenComparing(i -> products.get(i).product().label()))
        .toList();
  }

  private static Standing standing(NodeScore total) {
    if (total.state() == NodeScore.State.VETOED && !total.scored()) {
      return Standing.VETOED;
    }
    if (!total.scored()) {
      return Standing.NOT_SCORED;
    }
    return total.interval() == null ? Standing.NO_INTERVAL : Standing.RANKED;
  }

  private ProductScore product(int index, NodeScore total, @Nullable Comparison comparison) {
    Prepared prepared = products.get(index);
    String id = prepared.product().id();
    int place = comparison == null ? -1 : comparison.ids().indexOf(id);
    Comparison ranked = place < 0 ? null : comparison;
    return new ProductScore(
        id,
        prepared.product().label(),
        total,
        standing(total),
        why(total),
        ranked == null ? null : ranked.ranks().get(place),
        ranked == null ? null : ranked.tiers().get(place),
        ranked == null ? null : ranked.bestLow().get(place),
        ranked == null ? null : ranked.bestHigh().get(place),
        prepared.gates(),
        missing(total),
        productWarnings(prepared));
  }

  private static @Nullable String why(NodeScore total) {
    return switch (standing(total)) {
      case RANKED -> null;
      case VETOED -> total.note();
      case NOT_SCORED -> "nothing was asked of it";
      case NO_INTERVAL ->
          "one run: no interval, no rank (one run only of "
              + String.join(
                  ", ",
                  total
                      .all()
                      .filter(n -> n.children().isEmpty() && n.share() > 0)
                      .filter(n -> n.scored() && n.interval() == null)
                      .map(NodeScore::label)
                      .toList())
              + ", and neither the field nor the method says how runs differ)";
    };
  }

  private static List<String> missing(NodeScore total) {
    return total
        .all()
        .filter(n -> n.children().isEmpty() && n.state() == NodeScore.State.MISSING)
        .map(n -> n.label() + ": " + n.note())
        .toList();
  }

  private static List<String> productWarnings(Prepared prepared) {
    List<String> peaks =
        prepared.leaves().values().stream()
            .filter(l -> l.turns() == Leaf.Turn.TURNS && l.criterion().parts() > 0)
            .map(l -> l.criterion().label())
            .sorted()
            .toList();
    return peaks.size() < 2
        ? List.of()
        : List.of(
            "the total's interval may be too narrow: "
                + String.join(", ", peaks)
                + " lie on the peak of their curves");
  }

  private List<String> warnings(List<ProductScore> scores, @Nullable Comparison comparison) {
    List<String> warnings = new ArrayList<>(spread.warnings());
    for (Variable variable : scoringCase.variables()) {
      boolean nobody =
          scoringCase.products().stream()
              .noneMatch(p -> p.answer(variable.id()) instanceof Answer.Measured);
      boolean weighs = scoringCase.root().all().anyMatch(n -> uses(n, variable.id()));
      if (nobody && weighs) {
        warnings.add(variable.label() + ": no product has a measurement");
      }
    }
    if (comparison != null) {
      warnings.addAll(edges(scores, comparison));
    }
    return warnings;
  }

  private static boolean uses(ValueNode node, String variable) {
    return node instanceof ValueNode.Criterion c && c.parts() > 0 && c.variable().equals(variable);
  }

  /** Tier boundaries that more draws could move. */
  private static List<String> edges(List<ProductScore> scores, Comparison comparison) {
    Map<Integer, Integer> bestOfTier = new HashMap<>();
    Map<String, String> labels = new HashMap<>();
    scores.forEach(s -> labels.put(s.id(), s.label()));
    List<String> edges = new ArrayList<>();
    Pairs pairs = comparison.pairs();
    for (int p = 0; p < comparison.ids().size(); p++) {
      int tier = comparison.tiers().get(p);
      bestOfTier.putIfAbsent(tier, p);
      for (int above = 1; above <= tier; above++) {
        Integer best = bestOfTier.get(above);
        if (best != null && best != p && pairs.separation(best, p).onTheEdge()) {
          edges.add(
              "on the edge: whether "
                  + labels.get(comparison.ids().get(p))
                  + " shares the tier of "
                  + labels.get(comparison.ids().get(best))
                  + " is within three Monte Carlo standard errors");
        }
      }
    }
    return edges;
  }
}
