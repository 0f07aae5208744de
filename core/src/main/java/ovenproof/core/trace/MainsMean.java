package ovenproof.core.trace;

import java.util.List;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** Mains voltage while the elements were on: power goes with its square. */
public final class MainsMean implements TraceMeasure {
  private static final double ON_SHARE = 0.5;

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describe(
          "mains-mean",
          "Mains while heating",
          Unit.VOLT,
          "Mean voltage over the time in which at least half of the full power was drawn; over the"
              + " whole run where power was not logged.",
          "mean of V while P ≥ half of the highest",
          "common practice");

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    Trace mains = input.mains() == null ? null : input.mains().present();
    if (mains == null || mains.size() < 2) {
      return input.missing(DESCRIPTION, "mains voltage was not logged");
    }
    double[] on = whileOn(mains, input.power() == null ? null : input.power().present());
    double mean = java.util.Arrays.stream(on).average().orElse(Double.NaN);
    double squares = java.util.Arrays.stream(on).map(v -> (v - mean) * (v - mean)).sum();
    double deviation = on.length > 1 ? Math.sqrt(squares / (on.length - 1)) : 0;
    // Neighbouring readings of the mains move together: the mean is worth no more than a few.
    double u = deviation / Math.sqrt(Math.min(on.length, 10));
    return TraceMeasures.value(
        DESCRIPTION, input, mean, List.of(Component.run(u)), DESCRIPTION.formula());
  }

  private static double[] whileOn(Trace mains, @org.jspecify.annotations.Nullable Trace power) {
    if (power == null || power.size() < 2) {
      return mains.values();
    }
    double full = Duty.fullPowerWatt(power);
    double[] on = new double[mains.size()];
    int n = 0;
    for (int i = 0; i < mains.size(); i++) {
      if (TimeMean.at(power, mains.seconds()[i]) >= ON_SHARE * full) {
        on[n++] = mains.values()[i];
      }
    }
    return n == 0 ? mains.values() : java.util.Arrays.copyOf(on, n);
  }
}
