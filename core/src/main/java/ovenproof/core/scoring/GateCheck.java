package ovenproof.core.scoring;

import java.util.Locale;
import org.apache.commons.statistics.distribution.TDistribution;
import ovenproof.core.measure.Component;
import ovenproof.core.repeatability.CombinedUncertainty;
import ovenproof.core.scoring.GateFinding.Hangs;
import ovenproof.core.scoring.GateFinding.State;

/** Holds one product's measurements against one gate. */
final class GateCheck {
  /** A safety veto passes only at this probability or above. */
  static final double SHOWN = 0.95;

  private GateCheck() {}

  static GateFinding check(Gate gate, Answer answer, MeanError error) {
    if (answer instanceof Answer.Measured measured) {
      return gate.runs() == Gate.Runs.EVERY
          ? everyRun(gate, measured)
          : mean(gate, measured, error);
    }
    if (answer instanceof Answer.NotAsked || answer instanceof Answer.CannotDo) {
      return new GateFinding(
          gate, State.PASSED, Hangs.CLEAR, 1, 1, "does not apply: the test was not done");
    }
    String reason = answer instanceof Answer.Missing missing ? missing.reason() : "missing";
    State state = safetyVeto(gate) ? State.NOT_SHOWN : State.UNKNOWN;
    return new GateFinding(gate, state, Hangs.CLEAR, 0, 1, "nothing was measured: " + reason);
  }

  private static boolean safetyVeto(Gate gate) {
    return gate.kind() == Gate.Kind.VETO && gate.reason() == Gate.Reason.SAFETY;
  }

  private static GateFinding mean(Gate gate, Answer.Measured measured, MeanError error) {
    double n = measured.observations().size();
    double low = measured.observations().stream().mapToDouble(Observation::low).sum() / n;
    double high = measured.observations().stream().mapToDouble(Observation::high).sum() / n;
    if (!error.known()) {
      return withoutUncertainty(gate, low, high);
    }
    return found(gate, low, high, error.combined());
  }

  private static GateFinding everyRun(Gate gate, Answer.Measured measured) {
    GateFinding worst = null;
    for (Observation observation : measured.observations()) {
      double variance = 0;
      for (Component component : observation.components()) {
        variance += component.u() * component.u();
      }
      CombinedUncertainty u =
          new CombinedUncertainty(Math.sqrt(variance), Double.POSITIVE_INFINITY);
      GateFinding finding =
          variance == 0
              ? withoutUncertainty(gate, observation.low(), observation.high())
              : found(gate, observation.low(), observation.high(), u);
      boolean worse =
          worst == null
              || rank(finding) < rank(worst)
              || (rank(finding) == rank(worst) && finding.acts() && !worst.acts());
      worst = worse ? finding : worst;
    }
    if (worst == null) {
      throw new IllegalStateException("a measured answer has at least one run");
    }
    return worst;
  }

  /** A run whose probability nobody knows is worse than one that passed. */
  private static double rank(GateFinding finding) {
    return Double.isNaN(finding.probability()) ? 0.5 : finding.probability();
  }

  private static GateFinding withoutUncertainty(Gate gate, double low, double high) {
    boolean lowMeets = gate.meets(low);
    boolean highMeets = gate.meets(high);
    String value = low == high ? number(low) : number(low) + " to " + number(high);
    if (safetyVeto(gate)) {
      return bounded(gate, low, high, value);
    }
    State state = lowMeets != highMeets ? State.UNKNOWN : lowMeets ? State.PASSED : State.FIRED;
    return new GateFinding(
        gate,
        state,
        Hangs.CLEAR,
        lowMeets && highMeets ? 1 : 0,
        lowMeets || highMeets ? 1 : 0,
        value + unit(gate) + " against " + limit(gate) + ", uncertainty unknown");
  }

  /**
   * Bounds hold their uncertainty already: both kept is passed, neither is failed. A bare value has
   * none, and shows nothing unless it fails.
   */
  private static GateFinding bounded(Gate gate, double low, double high, String value) {
    boolean fails = !gate.meets(low) && !gate.meets(high);
    boolean passes = low < high && gate.meets(low) && gate.meets(high);
    State state = passes ? State.PASSED : fails ? State.FIRED : State.NOT_SHOWN;
    double probability = passes ? 1 : fails ? 0 : Double.NaN;
    String why = value + unit(gate) + " against " + limit(gate);
    String missing =
        low == high
            ? ", without a known uncertainty: state the instrument's or the reading's"
            : ", the uncertainty lies between";
    return new GateFinding(
        gate,
        state,
        Hangs.CLEAR,
        probability,
        probability,
        state == State.NOT_SHOWN ? why + missing : why);
  }

  private static GateFinding found(Gate gate, double low, double high, CombinedUncertainty u) {
    double atLow = probability(gate, low, u);
    double atHigh = probability(gate, high, u);
    double least = Math.min(atLow, atHigh);
    double most = Math.max(atLow, atHigh);
    boolean hangs = most > 0.05 && least < 0.95;
    State state = state(gate, low, high, least);
    String value = low == high ? number(low) : number(low) + " to " + number(high);
    String chance =
        least == most
            ? String.format(Locale.ROOT, "P(kept) = %.0f %%", 100 * least)
            : String.format(Locale.ROOT, "P(kept) = %.0f to %.0f %%", 100 * least, 100 * most);
    String uncertainty =
        new java.math.BigDecimal(u.uncertainty(), new java.math.MathContext(2)).toPlainString();
    String why =
        value
            + " ± "
            + uncertainty
            + unit(gate)
            + " against "
            + limit(gate)
            + ": "
            + chance
            + (hangs ? ", hangs on the limit" : "");
    return new GateFinding(gate, state, hangs ? Hangs.ON_THE_LIMIT : Hangs.CLEAR, least, most, why);
  }

  private static State state(Gate gate, double low, double high, double least) {
    if (safetyVeto(gate)) {
      boolean fails = !gate.meets(low) && !gate.meets(high);
      return least >= SHOWN ? State.PASSED : fails ? State.FIRED : State.NOT_SHOWN;
    }
    if (gate.meets(low) != gate.meets(high)) {
      return State.UNKNOWN;
    }
    return gate.meets(low) ? State.PASSED : State.FIRED;
  }

  private static double probability(Gate gate, double value, CombinedUncertainty u) {
    if (Double.isInfinite(value) || u.uncertainty() == 0) {
      return gate.meets(value) ? 1 : 0;
    }
    TDistribution t = TDistribution.of(Math.min(u.degreesOfFreedom(), 1e7));
    double above =
        Double.isInfinite(gate.atLeast())
            ? 0
            : t.cumulativeProbability((gate.atLeast() - value) / u.uncertainty());
    double below =
        Double.isInfinite(gate.atMost())
            ? 1
            : t.cumulativeProbability((gate.atMost() - value) / u.uncertainty());
    return below - above;
  }

  private static String unit(Gate gate) {
    return gate.unit().isEmpty() ? "" : " " + gate.unit();
  }

  private static String limit(Gate gate) {
    if (Double.isInfinite(gate.atMost())) {
      return "at least " + number(gate.atLeast()) + unit(gate);
    }
    String most = number(gate.atMost()) + unit(gate);
    return Double.isInfinite(gate.atLeast())
        ? "at most " + most
        : number(gate.atLeast()) + " to " + most;
  }

  private static String number(double value) {
    if (Double.isInfinite(value)) {
      return value > 0 ? "any higher value" : "any lower value";
    }
    return new java.math.BigDecimal(value, new java.math.MathContext(4))
        .stripTrailingZeros()
        .toPlainString();
  }
}
