package ovenproof.core.trace;

import java.util.List;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.MeasureDescription.EvidenceKind;
import ovenproof.core.measure.MeasureDescription.Parameter;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;

/** How long the food takes until its coldest probe shows a temperature. */
public final class CoreTime implements TraceMeasure {

  public static final MeasureDescription DESCRIPTION =
      new MeasureDescription(
          "core-time",
          "Time to the core temperature",
          Unit.SECOND,
          "From the load (else from the needle's first reading in the food) until the last of the"
              + " probes shows the temperature asked for. It says nothing about safety: no"
              + " uncertainty is subtracted.",
          "last of the first crossings of the probes − load",
          "common practice",
          EvidenceKind.TRACE,
          List.of(new Parameter("to", "what the core shall reach", Dimension.TEMPERATURE, "")),
          1);

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  /** Above the time of the last reading when one of the probes never gets there. */
  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    Double target = input.coreTargetCelsius();
    ColdestCore cores = ColdestCore.of(input, curve);
    HeatCurve coldest = cores.coldest().orElse(null);
    if (coldest == null) {
      return input.missing(DESCRIPTION, CoreHighest.NO_PROBE);
    }
    if (target == null) {
      return input.missing(DESCRIPTION, "no core temperature was asked for");
    }
    double first = coldest.clean().seconds()[0];
    double from = input.first(Happening.Kind.LOAD, 0).map(Happening::second).orElse(first);
    double reached = cores.reachedSecond(target);
    if (Double.isNaN(reached)) {
      return Measurement.above(
              DESCRIPTION, input.subject(), Math.max(0, coldest.clean().lastSecond() - from))
          .withNote(
              "not reached; highest of the coldest "
                  + TraceMeasures.digits(Highest.of(coldest.smooth()), 1)
                  + " °C")
          .withEvidence(input.evidence());
    }
    double slope = LocalSlope.at(coldest.clean(), reached);
    return TraceMeasures.value(
        DESCRIPTION,
        input,
        Math.max(0, reached - from),
        input
            .probe()
            .components(-1 / slope, Math.hypot(coldest.readingU() / slope, TAPPED_SECONDS)),
        "until the last of "
            + cores.count()
            + " probe(s) shows "
            + TraceMeasures.digits(target, 1)
            + " °C");
  }

  /** A person's tap on the clock. */
  private static final double TAPPED_SECONDS = 1;
}
