package ovenproof.core.thermal;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import ovenproof.core.trace.Duty;
import ovenproof.core.trace.HeatCurve;
import ovenproof.core.trace.SteadyState;
import ovenproof.core.trace.TraceInput;

/**
 * The ceiling temperature from a hold: rise / duty^(1/p), the exponent p of heat loss between 1
 * (conduction) and 1.25 (free convection).
 *
 * @param celsius middle of the two exponents
 * @param u standard uncertainty, exponent and duty together
 * @param duty share of full power, 0 to 1
 */
record HoldCeiling(double celsius, double u, double duty) {

  private static final double LARGEST_EXPONENT = 1.25;

  /** A ceiling or the reason why there is none. */
  record Outcome(@Nullable HoldCeiling ceiling, String why) {}

  static Outcome of(TraceInput input, HeatCurve curve) {
    SteadyState steady = curve.steady();
    if (steady == null) {
      return new Outcome(null, "there is no steady hold either: " + curve.whyNotSteady());
    }
    // The walls still take heat when the air is long steady: the last third counts, and what the
    // third before it was higher is its uncertainty.
    double third = (steady.endSecond() - steady.startSecond()) / 3;
    Double percent = Duty.percent(input, steady.endSecond() - third, steady.endSecond());
    Double before = Duty.percent(input, steady.endSecond() - 2 * third, steady.endSecond() - third);
    if (percent == null || before == null) {
      return new Outcome(null, "neither power nor duty was logged during the hold");
    }
    Double known = input.ambientCelsius();
    double ambient = known == null ? curve.clean().values()[0] : known;
    double duty = percent / 100;
    double rise = steady.meanCelsius() - ambient;
    if (rise < 20 || duty < 0.02) {
      return new Outcome(
          null,
          String.format(
              Locale.ROOT,
              "the hold is only %.0f K above the room at %.0f %% duty",
              rise,
              percent));
    }
    double drift = Math.abs(before - percent) / 100;
    return new Outcome(of(ambient, rise, Math.min(1, duty), drift, steady), "");
  }

  private static HoldCeiling of(
      double ambient, double rise, double duty, double drift, SteadyState steady) {
    double highest = rise / duty;
    double lowest = rise / Math.pow(duty, 1 / LARGEST_EXPONENT);
    double middle = (highest + lowest) / 2;
    double exponentU = (highest - lowest) / Math.sqrt(12);
    double dutyU = Math.hypot(drift, dutyU(duty, steady));
    double meanU = steady.standardError() / duty;
    double u =
        Math.sqrt(exponentU * exponentU + Math.pow(middle * dutyU / duty, 2) + meanU * meanU);
    return new HoldCeiling(ambient + middle, u, duty);
  }

  /** A third of the hold holds a third of its cycles, and begins and ends within one. */
  static double dutyU(double duty, SteadyState steady) {
    return 3 * duty * (1 - duty) / Math.max(3, steady.blocks());
  }
}
