package ovenproof.core.scoring;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.AhrensDieterMarsagliaTsangGammaSampler;
import ovenproof.core.random.RandomStreams;
import ovenproof.core.scoring.ValueNode.Group;

/**
 * How often each product takes each place when the weights are not certain: the shares of every
 * group are Dirichlet around the declared ones. Measurements stay as they are: this asks about
 * taste, not about error.
 *
 * @param products ids in the order of the case; products without a total are left out
 * @param places share of weights under which the product takes place 1, 2, …; ties share a place
 *     upwards
 * @param samples how many sets of weights
 */
public record RankAcceptability(List<String> products, List<List<Double>> places, int samples) {

  public RankAcceptability {
    products = List.copyOf(products);
    places = places.stream().map(List::copyOf).toList();
  }

  /**
   * Samples weights.
   *
   * @param concentration how close weights stay to the declared ones: a share of 0.2 has standard
   *     deviation √(0.2·0.8/(concentration + 1)); 30 gives ± 0.07
   * @param samples at least 1
   */
  public static RankAcceptability of(ScoringCase scoringCase, double concentration, int samples) {
    if (!(concentration > 0) || samples < 1) {
      throw new IllegalArgumentException(
          "concentration and samples must be above 0, found " + concentration + ", " + samples);
    }
    Reweighting reweighting = Reweighting.of(scoringCase);
    double[] declared = reweighting.totals();
    List<Integer> ranked = new ArrayList<>();
    for (int i = 0; i < declared.length; i++) {
      if (!Double.isNaN(declared[i])) {
        ranked.add(i);
      }
    }
    int[][] counts = new int[ranked.size()][ranked.size()];
    UniformRandomProvider random =
        RandomStreams.of(scoringCase.rules().seed()).source("weights").generator(0);
    for (int s = 0; s < samples; s++) {
      Map<String, Double> weights = new HashMap<>();
      sample(scoringCase.root(), concentration, random, weights);
      count(reweighting.totals(weights), ranked, counts);
    }
    return result(scoringCase, ranked, counts, samples);
  }

  private static RankAcceptability result(
      ScoringCase scoringCase, List<Integer> ranked, int[][] counts, int samples) {
    List<String> ids = new ArrayList<>();
    List<List<Double>> places = new ArrayList<>();
    for (int p = 0; p < ranked.size(); p++) {
      ids.add(scoringCase.products().get(ranked.get(p)).id());
      List<Double> own = new ArrayList<>();
      for (int count : counts[p]) {
        own.add(count / (double) samples);
      }
      places.add(own);
    }
    return new RankAcceptability(ids, places, samples);
  }

  private static void sample(
      ValueNode node,
      double concentration,
      UniformRandomProvider random,
      Map<String, Double> weights) {
    if (!(node instanceof Group group)) {
      return;
    }
    double sum = group.children().stream().mapToInt(ValueNode::parts).sum();
    for (ValueNode child : group.children()) {
      double alpha = concentration * child.parts() / sum;
      double weight =
          alpha > 0 ? AhrensDieterMarsagliaTsangGammaSampler.of(random, alpha, 1).sample() : 0;
      weights.put(child.id(), weight);
      sample(child, concentration, random, weights);
    }
  }

  private static void count(double[] totals, List<Integer> ranked, int[][] counts) {
    for (int p = 0; p < ranked.size(); p++) {
      double own = totals[ranked.get(p)];
      int above = 0;
      for (int q : ranked) {
        above += totals[q] > own ? 1 : 0;
      }
      counts[p][above]++;
    }
  }
}
