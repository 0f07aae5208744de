package ovenproof.benchmarks;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import ovenproof.core.measure.Component;
import ovenproof.core.scoring.Answer;
import ovenproof.core.scoring.Candidate;
import ovenproof.core.scoring.Combination;
import ovenproof.core.scoring.Observation;
import ovenproof.core.scoring.RunAggregation;
import ovenproof.core.scoring.Scoring;
import ovenproof.core.scoring.ScoringCase;
import ovenproof.core.scoring.ScoringResult;
import ovenproof.core.scoring.ScoringRules;
import ovenproof.core.scoring.ValueCurve;
import ovenproof.core.scoring.ValueNode;
import ovenproof.core.scoring.Variable;

/**
 * Time of a verdict: 200 products × 30 criteria × 20,000 draws with ranks and pair matrix; a weight
 * slider for 12 products; 10,000 cached runs scored again after a weight change. The same draws
 * through a vectorised array library: {@code benchmarks/scripts/verdict_numpy.py}.
 *
 * <p>Prints wall-clock time and the processor time of all threads: on a busy machine only the
 * second says what the work costs.
 *
 * <p>Arguments: number of threads (default 2), repetitions (default 5).
 */
public final class VerdictBenchmark {

  private VerdictBenchmark() {}

  public static void main(String[] args) {
    int threads = args.length > 0 ? Integer.parseInt(args[0]) : 2;
    int repetitions = args.length > 1 ? Integer.parseInt(args[1]) : 5;
    ScoringCase large = scoringCase(200, 30, 3);
    ScoringCase small = scoringCase(12, 30, 3);
    ScoringCase archive = scoringCase(111, 30, 3);
    time("verdict, 200 products x 30 criteria x 20000 draws", repetitions, large, threads, false);
    time("slider, 12 products x 30 criteria x 20000 draws", repetitions, small, threads, true);
    time("re-score 9990 runs, 111 products x 30 criteria", repetitions, archive, threads, true);
    time("the large one, one thread", Math.min(2, repetitions), large, 1, false);
  }

  private static void time(
      String what, int repetitions, ScoringCase scoringCase, int threads, boolean slide) {
    double best = Double.POSITIVE_INFINITY;
    double leastProcessor = Double.POSITIVE_INFINITY;
    List<Double> all = new ArrayList<>();
    for (int r = 0; r < repetitions; r++) {
      ScoringCase changed = slide ? scoringCase.withParts(Map.of("test0", 1 + r)) : scoringCase;
      double processor = processorMilliseconds();
      long start = System.nanoTime();
      ScoringResult result = Scoring.score(changed, threads);
      double milliseconds = (System.nanoTime() - start) / 1e6;
      leastProcessor = Math.min(leastProcessor, processorMilliseconds() - processor);
      all.add(milliseconds);
      best = Math.min(best, milliseconds);
      if (result.products().isEmpty()) {
        throw new IllegalStateException("nothing scored");
      }
    }
    String each = all.stream().map(t -> String.format(Locale.ROOT, "%.0f", t)).toList().toString();
    all.sort(Double::compare);
    System.out.printf(
        Locale.ROOT,
        "%-50s best %7.0f ms, median %7.0f ms, processor %7.0f ms, %d threads, in turn %s%n",
        what,
        best,
        all.get(all.size() / 2),
        leastProcessor,
        threads,
        each);
  }

  private static double processorMilliseconds() {
    return ManagementFactory.getOperatingSystemMXBean()
            instanceof com.sun.management.OperatingSystemMXBean system
        ? system.getProcessCpuTime() / 1e6
        : Double.NaN;
  }

  /** Six tests of equal size; runs from a fixed seed; one probe shared by all, piecewise curves. */
  static ScoringCase scoringCase(int products, int criteria, int runs) {
    Random random = new Random(42);
    List<ValueNode> tests = new ArrayList<>();
    List<Variable> variables = new ArrayList<>();
    int perTest = criteria / 6;
    for (int t = 0; t < 6; t++) {
      List<ValueNode> children = new ArrayList<>();
      for (int k = 0; k < perTest; k++) {
        String id = "c" + (t * perTest + k);
        ValueCurve curve =
            ValueCurve.lines(new double[] {0, 40, 60, 100}, new double[] {0, 4, 7, 10});
        children.add(
            ValueNode.Criterion.of(id, 1 + k, id, curve, RunAggregation.SCORE_THEN_AVERAGE));
        variables.add(Variable.pooled(id));
      }
      tests.add(
          new ValueNode.Group("test" + t, "test" + t, 10 + t, Combination.ARITHMETIC, children));
    }
    List<Candidate> field = new ArrayList<>();
    for (int p = 0; p < products; p++) {
      double level = 30 + 40 * random.nextDouble();
      Map<String, Answer> answers = new LinkedHashMap<>();
      for (Variable variable : variables) {
        List<Observation> observations = new ArrayList<>();
        for (int r = 0; r < runs; r++) {
          observations.add(
              Observation.of(
                  "p" + p + variable.id() + r,
                  level + 6 * random.nextGaussian(),
                  Component.shared("probe:P1", 1.0)));
        }
        answers.put(variable.id(), new Answer.Measured(observations));
      }
      field.add(Candidate.of("p" + p, answers));
    }
    ValueNode root = new ValueNode.Group("total", "Total", 1, Combination.ARITHMETIC, tests);
    return new ScoringCase(root, variables, List.of(), field, ScoringRules.of("benchmark"));
  }
}
