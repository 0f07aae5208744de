package ovenproof.core.scoring;

import java.util.ArrayList;
import java.util.List;
import ovenproof.core.ranking.Comparison;

/**
 * How many more runs would split two products, if their gap stays what it looks like now.
 *
 * <p>Both products get the same number of further runs of every test. The gap must then exceed the
 * field's margin by 0.84 standard errors, so that the split is seen with 80 % power. Errors that
 * more runs do not shrink (calibrations that the two do not share, specimen to specimen) stay.
 *
 * @param gap present difference of unrounded totals, not negative
 * @param present standard error of the difference now
 * @param steps what further runs would give, from 0
 * @param runs fewest further runs of each that suffice; −1 when even {@link #MOST} do not
 */
public record MoreRuns(
    String better, String worse, double gap, double present, List<Step> steps, int runs) {

  /** More than this is not worth asking. */
  public static final int MOST = 128;

  private static final double POWER = 0.8416212335729143;

  public MoreRuns {
    steps = List.copyOf(steps);
  }

  /**
   * What so many further runs would give.
   *
   * @param needed gap that would be split with 80 % power
   */
  public record Step(int runs, double standardError, double needed) {}

  /**
   * @throws IllegalArgumentException if either product is unranked
   */
  public static MoreRuns toSplit(
      ScoringCase scoringCase, String first, String second, int threads) {
    Step now = step(scoringCase, first, second, 0, threads);
    Comparison comparison = compared(scoringCase, threads);
    int a = place(comparison, first);
    int b = place(comparison, second);
    double gap = comparison.pairs().gap(a, b);
    boolean firstLeads = gap >= 0;
    List<Step> steps = new ArrayList<>(List.of(now));
    double distance = Math.abs(gap);
    int low = 0;
    int high = 1;
    while (steps.get(steps.size() - 1).needed() > distance && high <= MOST) {
      low = steps.get(steps.size() - 1).runs();
      steps.add(step(scoringCase, first, second, high, threads));
      high *= 2;
    }
    Step last = steps.get(steps.size() - 1);
    int enough = last.needed() <= distance ? last.runs() : -1;
    while (enough - low > 1) {
      int middle = (low + enough) / 2;
      Step tried = step(scoringCase, first, second, middle, threads);
      steps.add(tried);
      if (tried.needed() <= distance) {
        enough = middle;
      } else {
        low = middle;
      }
    }
    steps.sort(java.util.Comparator.comparingInt(Step::runs));
    return new MoreRuns(
        firstLeads ? first : second,
        firstLeads ? second : first,
        distance,
        now.standardError(),
        steps,
        enough);
  }

  private static Step step(
      ScoringCase scoringCase, String first, String second, int runs, int threads) {
    List<Candidate> products =
        scoringCase.products().stream()
            .map(p -> p.id().equals(first) || p.id().equals(second) ? p.withPlannedRuns(runs) : p)
            .toList();
    Comparison comparison = compared(scoringCase.withProducts(products), threads);
    double error =
        comparison.pairs().standardError(place(comparison, first), place(comparison, second));
    return new Step(runs, error, (comparison.margin().c() + POWER) * error);
  }

  private static Comparison compared(ScoringCase scoringCase, int threads) {
    return Scoring.score(scoringCase, threads)
        .compared()
        .orElseThrow(() -> new IllegalArgumentException("nothing is ranked"));
  }

  private static int place(Comparison comparison, String product) {
    int place = comparison.ids().indexOf(product);
    if (place < 0) {
      throw new IllegalArgumentException("\"" + product + "\" is not ranked");
    }
    return place;
  }
}
