package ovenproof.core.safety;

import java.util.List;
import java.util.Locale;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.MeasureDescription.EvidenceKind;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.HampelFilter;
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

  private SafetyMeasures() {}

  public static List<TraceMeasure> all() {
    return List.of(new F70());
  }

  private static final class F70 implements TraceMeasure {
    @Override
    public MeasureDescription description() {
      return LETHALITY;
    }

    @Override
    public Measurement measure(TraceInput input, HeatCurve curve) {
      List<Trace> cores =
          input.cores().stream()
              .map(t -> HampelFilter.withDefaults().clean(t.present()).trace().present())
              .filter(t -> t.size() >= 2)
              .toList();
      if (cores.isEmpty()) {
        return Measurement.missing(LETHALITY, input.subject(), "no probe in the food")
            .withEvidence(input.evidence());
      }
      double expanded = expanded(input);
      double seconds =
          cores.stream().mapToDouble(t -> Lethality.seconds(t, expanded)).min().orElse(0);
      double nominal = cores.stream().mapToDouble(t -> Lethality.seconds(t, 0)).min().orElse(0);
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
              .withNote(String.format(Locale.ROOT, "F70 %.2f min", seconds / 60))
          : result.withNote(
              "the probe's uncertainty is not known and was not subtracted: no safety is shown");
    }

    private static double expanded(TraceInput input) {
      return 2 * Math.hypot(input.probe().calibrationKelvin(), input.probe().placementKelvin());
    }
  }
}
