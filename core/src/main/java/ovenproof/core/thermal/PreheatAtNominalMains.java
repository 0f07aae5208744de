package ovenproof.core.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.MeasureDescription.EvidenceKind;
import ovenproof.core.measure.MeasureDescription.Parameter;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.HeatCurve;
import ovenproof.core.trace.MainsMean;
import ovenproof.core.trace.PreheatFirst;
import ovenproof.core.trace.TraceInput;
import ovenproof.core.trace.TraceMeasure;

/**
 * How long the preheat would have taken at the nominal voltage. The ceiling moves with V², and the
 * time follows from the new ceiling; multiplying the time by V² would be wrong by a lot near the
 * ceiling. Stands beside the time as measured, never instead of it.
 */
final class PreheatAtNominalMains implements TraceMeasure {

  static final MeasureDescription DESCRIPTION =
      new MeasureDescription(
          "preheat-nominal",
          "Preheat at nominal mains",
          Unit.SECOND,
          "First crossing of the setting, brought to the nominal voltage by the thermal model;"
              + " refused beyond 15 % of it.",
          "t · ln(1 − ΔT/ΔT∞,nominal) / ln(1 − ΔT/ΔT∞), ΔT∞ ∝ V²",
          "lumped capacitance, resistive elements",
          EvidenceKind.TRACE,
          List.of(
              new Parameter("set", "what the dial was set to", Dimension.TEMPERATURE, ""),
              new Parameter("nominal", "mains to bring it to", Dimension.VOLTAGE, "")),
          1);

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    Measurement raw = new PreheatFirst().measure(input, curve);
    Measurement volt = new MainsMean().measure(input, curve);
    Measurement ceiling = ThermalMeasures.ceiling(input, curve);
    Double nominal = input.nominalVolt();
    Double room = input.ambientCelsius();
    Double set = input.settingCelsius();
    Double time = raw.value();
    Double volts = volt.value();
    Double top = ceiling.value();
    if (time == null || volts == null || top == null) {
      return missing(input, time == null ? raw : volts == null ? volt : ceiling);
    }
    if (nominal == null || room == null || set == null) {
      return missing(
          input, nominal == null ? "no nominal voltage was given" : "room or setting is not known");
    }
    if (!new Mains(volts, nominal).isWithinReach()) {
      return missing(
          input,
          String.format(
              Locale.ROOT,
              "%.0f V is more than 15 %% from %.0f V: too far to be brought there",
              volts,
              nominal));
    }
    OptionalDouble ratio = ratio(volts, nominal, set - room, top - room);
    if (ratio.isEmpty()) {
      return missing(input, "at one of the two voltages the setting is never reached");
    }
    double byVolt = step(ratio, ratio(volts + 1, nominal, set - room, top - room)) * u(volt);
    double byCeiling = step(ratio, ratio(volts, nominal, set - room, top + 1 - room)) * u(ceiling);
    return result(input, raw, ratio.getAsDouble(), time * Math.hypot(byVolt, byCeiling), nominal);
  }

  private static OptionalDouble ratio(
      double volts, double nominal, double rise, double ceilingRise) {
    return new Mains(volts, nominal).timeRatio(rise, ceilingRise);
  }

  private static double step(OptionalDouble from, OptionalDouble to) {
    return to.isPresent() ? to.getAsDouble() - from.orElse(Double.NaN) : 0;
  }

  private static double u(Measurement measurement) {
    Double u = measurement.uncertainty();
    return u == null ? 0 : u;
  }

  private static Measurement result(
      TraceInput input, Measurement raw, double ratio, double modelU, double nominal) {
    List<Component> parts = new ArrayList<>();
    double run = modelU;
    for (Component part : raw.components()) {
      if (part.isShared()) {
        parts.add(Component.shared(part.source(), part.u() * ratio));
      } else {
        run = Math.hypot(run, part.u() * ratio);
      }
    }
    parts.add(Component.run(run));
    double time = raw.value() == null ? Double.NaN : raw.value();
    return Measurement.of(DESCRIPTION, input.subject(), time * ratio)
        .withComponents(parts)
        .withDefinition(
            String.format(Locale.ROOT, "as measured × %.3f, brought to %.0f V", ratio, nominal))
        .withEvidence(input.evidence());
  }

  private static Measurement missing(TraceInput input, Measurement because) {
    String note = because.note();
    return missing(input, note == null ? because.label() + " is not known" : note);
  }

  private static Measurement missing(TraceInput input, @Nullable String why) {
    return Measurement.missing(DESCRIPTION, input.subject(), String.valueOf(why))
        .withEvidence(input.evidence());
  }
}
