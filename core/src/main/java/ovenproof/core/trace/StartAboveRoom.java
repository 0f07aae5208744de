package ovenproof.core.trace;

import java.util.List;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** Whether the appliance started cold: a temperature, never a waiting time. */
public final class StartAboveRoom implements TraceMeasure {

  /** Within this of the room a start is cold (<em>common practice</em>). */
  public static final double COLD_KELVIN = 3;

  private static final double LEAST_RISE_KELVIN = 20;

  private static final double FIRST_SECONDS = 60;

  /** A record of ten minutes in which nothing gets warm is not one of heating. */
  private static final double LONG_SECONDS = 600;

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describe(
              "start-above-room",
              "Start above the room",
              Unit.KELVIN,
              "How much warmer than the room the cavity was at the start. Within 3 K it was cold;"
                  + " more is a hot start, whatever the clock says.",
              "lowest of the first minute − room",
              "common practice")
          .revised(2);

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    Double room = input.ambientCelsius();
    if (room == null) {
      return input.missing(DESCRIPTION, "the room was not logged");
    }
    if (curve.isEmpty()) {
      return input.missing(DESCRIPTION, "the centre has no readings");
    }
    boolean isLong = curve.clean().lastSecond() > LONG_SECONDS;
    if (isLong && Highest.of(curve.clean()) < room + LEAST_RISE_KELVIN) {
      return input.missing(DESCRIPTION, "nothing was heated");
    }
    double above = lowest(curve.smooth()) - room;
    // Later readings are warmer already; elements and walls are cold and shine on no probe.
    double noise = Math.hypot(curve.noiseKelvin(), curve.resolutionKelvin() / Math.sqrt(12));
    return TraceMeasures.value(
            DESCRIPTION,
            input,
            above,
            List.of(
                Component.shared(
                    input.probe().name(), Math.max(1e-9, input.probe().calibrationKelvin())),
                Component.run(Math.hypot(noise, input.probe().placementKelvin()))),
            DESCRIPTION.formula())
        .withNote(above <= COLD_KELVIN ? "a cold start" : "a hot start");
  }

  /** A cold cavity only gets warmer; a probe that was hung in a moment ago falls to it first. */
  private static double lowest(Trace trace) {
    double first = trace.seconds()[0];
    double low = trace.values()[0];
    for (int i = 1; i < trace.size() && trace.seconds()[i] - first <= FIRST_SECONDS; i++) {
      low = Math.min(low, trace.values()[i]);
    }
    return low;
  }
}
