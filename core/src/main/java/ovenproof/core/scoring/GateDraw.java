package ovenproof.core.scoring;

import java.util.Arrays;
import ovenproof.core.scoring.Leaf.Bound;

/**
 * A gate inside the draws. A safety veto is decided once, by its probability; any other gate acts
 * in each draw on the measurement that the draw has.
 */
final class GateDraw {
  private final GateFinding finding;
  private final double left;
  private final double low;
  private final double high;
  private final double[] errors;

  GateDraw(GateFinding finding, Answer answer, double[] errors) {
    this.finding = finding;
    Gate gate = finding.gate();
    left = gate.kind() == Gate.Kind.CEILING ? gate.ceiling() : 0;
    boolean moves = gate.reason() == Gate.Reason.QUALITY || gate.kind() == Gate.Kind.CEILING;
    this.errors = moves && answer instanceof Answer.Measured ? errors : new double[0];
    double[] range = range(gate, answer);
    low = range[0];
    high = range[1];
  }

  private static double[] range(Gate gate, Answer answer) {
    if (!(answer instanceof Answer.Measured measured)) {
      return new double[] {Double.NaN, Double.NaN};
    }
    double[] lows = measured.observations().stream().mapToDouble(Observation::low).toArray();
    double[] highs = measured.observations().stream().mapToDouble(Observation::high).toArray();
    if (gate.runs() == Gate.Runs.MEAN) {
      return new double[] {
        Arrays.stream(lows).sum() / lows.length, Arrays.stream(highs).sum() / highs.length
      };
    }
    boolean floor = !Double.isInfinite(gate.atLeast());
    return floor
        ? new double[] {
          Arrays.stream(lows).min().orElseThrow(), Arrays.stream(highs).min().orElseThrow()
        }
        : new double[] {
          Arrays.stream(lows).max().orElseThrow(), Arrays.stream(highs).max().orElseThrow()
        };
  }

  void apply(Bound bound, double[] scores) {
    if (errors.length == 0) {
      if (finding.acts() || (finding.state() == GateFinding.State.UNKNOWN && bound == Bound.LOW)) {
        cap(scores);
      }
      return;
    }
    Gate gate = finding.gate();
    for (int d = 0; d < scores.length; d++) {
      boolean lowMeets = gate.meets(low + errors[d]);
      boolean highMeets = gate.meets(high + errors[d]);
      boolean kept = bound == Bound.LOW ? lowMeets && highMeets : lowMeets || highMeets;
      if (!kept) {
        scores[d] = Math.min(scores[d], left);
      }
    }
  }

  private void cap(double[] scores) {
    for (int d = 0; d < scores.length; d++) {
      scores[d] = Math.min(scores[d], left);
    }
  }
}
