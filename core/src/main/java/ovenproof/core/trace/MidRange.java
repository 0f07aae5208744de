package ovenproof.core.trace;

import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** Middle between highest and lowest of the steady cycles. */
public final class MidRange implements TraceMeasure {

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describe(
          "mid-range",
          "Middle of the swing",
          Unit.CELSIUS,
          "Mean of the peaks and troughs once steady. Not the time-mean when the wave is lopsided;"
              + " some standards use it.",
          "(median peak + median trough) / 2 over the steady cycles",
          "the (max + min)/2 of IEC 60350-1, over several cycles");

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    Cycles cycles = curve.steadyCycles();
    if (cycles.size() == 0) {
      return input.missing(DESCRIPTION, CycleAmplitude.whyNone(curve));
    }
    double[] peaks = cycles.list().stream().mapToDouble(Cycles.Cycle::peak).toArray();
    double[] troughs = cycles.list().stream().mapToDouble(Cycles.Cycle::trough).toArray();
    double scatter = Math.hypot(Medians.standardError(peaks), Medians.standardError(troughs)) / 2;
    return TraceMeasures.value(
        DESCRIPTION,
        input,
        (Medians.of(peaks) + Medians.of(troughs)) / 2,
        input.probe().components(1, Math.hypot(curve.readingU(), scatter)),
        DESCRIPTION.formula());
  }
}
