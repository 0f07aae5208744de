package ovenproof.core.safety;

import java.util.List;
import java.util.Locale;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.MeasureDescription.EvidenceKind;
import ovenproof.core.measure.MeasureDescription.Parameter;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.ColdestCore;
import ovenproof.core.trace.HeatCurve;
import ovenproof.core.trace.Trace;
import ovenproof.core.trace.TraceInput;
import ovenproof.core.trace.TraceMeasure;

/** The measures of probes in food. */
public final class SafetyMeasures {

  public static final MeasureDescription LETHALITY =
      new MeasureDescription(
          "lethality",
          "Lethality F70",
          Unit.SECOND,
          "Time at 70 °C that the coldest probe's curve is worth, after subtracting the expanded"
              + " uncertainty from all of it. Not advice: local food rules prevail.",
          "∫ 10^((T − U − 70)/z) dt from 60 °C, z 6.0 K below and 8.3 K above 70 °C, coldest probe",
          "form of the F-value; z from the published pairs of time and temperature",
          EvidenceKind.TRACE,
          List.of(),
          1);

  public static final MeasureDescription HELD =
      new MeasureDescription(
          "core-held",
          "Core held",
          Unit.CELSIUS,
          "Highest temperature at which all probes stayed at once for the rest that the method asks"
              + " for: the lower end after subtracting the expanded uncertainty, the upper end as"
              + " read. A floor is shown only when the lower end is at it. Not advice: local food"
              + " rules prevail.",
          "max over time of the lowest of the probes over the rest, minus U (k = 2)",
          "floors with rest as published",
          EvidenceKind.TRACE,
          List.of(
              new Parameter(
                  "rest", "for how long the core stays at the floor", Dimension.TIME, "0 s")),
          1);

  /** What is said of probes whose error nobody knows. */
  public static final String UNKNOWN_ERROR =
      "the probe's uncertainty is not known and was not subtracted: no safety is shown";

  private static final String NO_PROBE = "no probe in the food";

  private SafetyMeasures() {}

  public static List<TraceMeasure> all() {
    return List.of(new Held(), new F70());
  }

  private static final class Held implements TraceMeasure {
    @Override
    public MeasureDescription description() {
      return HELD;
    }

    @Override
    public Measurement measure(TraceInput input, HeatCurve curve) {
      ColdestCore cores = ColdestCore.of(input, curve);
      if (cores.isEmpty()) {
        return input.missing(HELD, NO_PROBE);
      }
      double held = cores.heldCelsius(input.restSeconds());
      if (Double.isNaN(held)) {
        return Measurement.missing(
                HELD, input.subject(), "the probes were not in the food together for so long")
            .withEvidence(input.evidence());
      }
      double expanded = input.probe().expandedKelvin();
      String definition =
          String.format(
              Locale.ROOT,
              "held for %.0f s by the coldest of %d probe(s), %.1f K subtracted at the lower end",
              input.restSeconds(),
              cores.count(),
              expanded);
      Measurement result =
          expanded > 0
              ? Measurement.between(HELD, input.subject(), held - expanded, held)
              : Measurement.below(HELD, input.subject(), held).withNote(UNKNOWN_ERROR);
      return result.withDefinition(definition).withEvidence(input.evidence());
    }
  }

  private static final class F70 implements TraceMeasure {
    @Override
    public MeasureDescription description() {
      return LETHALITY;
    }

    @Override
    public Measurement measure(TraceInput input, HeatCurve curve) {
      List<Trace> cores =
          ColdestCore.of(input, curve).probes().stream().map(HeatCurve::clean).toList();
      if (cores.isEmpty()) {
        return input.missing(LETHALITY, NO_PROBE);
      }
      double expanded = input.probe().expandedKelvin();
      double seconds = Lethality.ofColdest(cores, expanded);
      double nominal = Lethality.ofColdest(cores, 0);
      Measurement result =
          Measurement.of(LETHALITY, input.subject(), seconds)
              .withDefinition(
                  String.format(
                      Locale.ROOT,
                      "F70 of the coldest of %d probe(s) after subtracting %.1f K",
                      cores.size(),
                      expanded))
              .withEvidence(input.evidence());
      return expanded > 0
          ? result
              .withComponents(
                  List.of(Component.shared(input.probe().name(), (nominal - seconds) / 2)))
              .withNote(
                  String.format(Locale.ROOT, seconds < 600 ? "%.2f min" : "%.0f min", seconds / 60))
          : result.withNote(UNKNOWN_ERROR);
    }
  }
}
