package ovenproof.core.trace;

import java.util.List;
import java.util.Optional;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** How much the core still rises once the food is out. */
public final class CarryOver implements TraceMeasure {

  /** A roast's peak comes within this time (<em>common practice</em>). */
  private static final double ENOUGH_SECONDS = 600;

  private static final double STILL_RISING_KELVIN = 0.2;

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describe(
          "core-carry-over",
          "Carry-over",
          Unit.KELVIN,
          "How far the coldest probe still rises after the food was taken out (else stopped). The"
              + " calibration cancels.",
          "highest after removal − at removal, coldest probe",
          "common practice: 3 to 8 K for usual roasts");

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  /** Above what was seen while the core was still rising at the end of the record. */
  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    HeatCurve coldest = ColdestCore.of(input, curve).coldest().orElse(null);
    if (coldest == null) {
      return input.missing(DESCRIPTION, CoreHighest.NO_PROBE);
    }
    Optional<Happening> out =
        input.first(Happening.Kind.REMOVE, 0).or(() -> input.first(Happening.Kind.STOP, 0));
    if (out.isEmpty()) {
      return input.missing(DESCRIPTION, "nobody noted when the food came out");
    }
    double removed = out.get().second();
    Trace smooth = coldest.smooth();
    double last = smooth.lastSecond();
    if (removed < smooth.seconds()[0] || last - removed < 60) {
      return input.missing(DESCRIPTION, "the food was not followed for a minute after it came out");
    }
    double before = TimeMean.at(smooth, removed);
    double rise = Math.max(0, Highest.of(smooth.part(removed, last)) - before);
    double end = smooth.values()[smooth.size() - 1];
    boolean rising = end > TimeMean.at(smooth, last - 60) + STILL_RISING_KELVIN;
    if (rising && last - removed < ENOUGH_SECONDS) {
      return Measurement.above(DESCRIPTION, input.subject(), rise)
          .withNote("still rising when the record ends, " + minutes(last - removed))
          .withEvidence(input.evidence());
    }
    double slope = LocalSlope.at(coldest.clean(), removed);
    double u = Math.hypot(Math.sqrt(2) * coldest.readingU(), slope);
    return TraceMeasures.value(
            DESCRIPTION, input, rise, List.of(Component.run(u)), DESCRIPTION.formula())
        .withNote("followed for " + minutes(last - removed));
  }

  private static String minutes(double seconds) {
    return TraceMeasures.digits(seconds / 60, 0) + " min after the food came out";
  }
}
