package ovenproof.core.trace;

import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** Share of full power that holding takes. */
public final class Duty implements TraceMeasure {

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describe(
          "duty",
          "Duty when steady",
          Unit.PERCENT,
          "Share of its full power that the appliance needs to hold the temperature.",
          "time-mean of power over the steady part / power when on; or the mean of the duty column",
          "common practice");

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    SteadyState steady = curve.steady();
    if (steady == null) {
      return input.missing(DESCRIPTION, curve.whyNotSteady());
    }
    Double percent = percent(input, steady.startSecond(), steady.endSecond());
    if (percent == null) {
      return input.missing(DESCRIPTION, "neither power nor duty was logged over the steady part");
    }
    return TraceMeasures.value(
        DESCRIPTION,
        input,
        percent,
        List.of(Component.run(u(input, steady))),
        DESCRIPTION.formula());
  }

  /** Each switching happens somewhere between two samples. */
  private static double u(TraceInput input, SteadyState steady) {
    double length = steady.endSecond() - steady.startSecond();
    Trace duty = input.duty();
    Trace power = input.power();
    Trace switched = duty != null ? duty : power;
    if (switched == null) {
      return 0;
    }
    Trace present = switched.present();
    double full = duty != null ? 100 : fullPowerWatt(present);
    Trace part = present.part(steady.startSecond(), steady.endSecond());
    return 100 * Energy.switchingWattSeconds(part) / full / length;
  }

  /** Mean duty in per cent between two times, null when it cannot be told. */
  public static @Nullable Double percent(TraceInput input, double from, double to) {
    Trace duty = input.duty();
    if (duty != null) {
      double mean = TimeMean.of(duty.present(), from, to);
      return Double.isFinite(mean) ? mean : null;
    }
    Trace power = input.power();
    if (power == null) {
      return null;
    }
    double full = fullPowerWatt(power.present());
    double mean = TimeMean.of(power.present(), from, to);
    return Double.isFinite(mean) && full > 0 ? Double.valueOf(100 * mean / full) : null;
  }

  /** Median of the readings above half of the highest: the power while the elements are on. */
  public static double fullPowerWatt(Trace power) {
    double half = Highest.of(power) / 2;
    double[] on = java.util.Arrays.stream(power.values()).filter(w -> w > half).toArray();
    return on.length == 0 ? 0 : Medians.of(on);
  }
}
