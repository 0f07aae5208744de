package ovenproof.core.thermal;

import java.util.List;
import java.util.Locale;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.HeatCurve;
import ovenproof.core.trace.TraceInput;
import ovenproof.core.trace.TraceMeasure;

/** What power holding the setting takes, whether the appliance has it or not. */
final class PowerToHold implements TraceMeasure {

  static final MeasureDescription DESCRIPTION =
      ThermalMeasures.describe(
          "power-needed",
          "Power that the setting takes",
          Unit.WATT,
          "Power that holding the setting would take once everything is warm. More than it has is"
              + " out of reach.",
          "heat loss · (setting − room)",
          "energy balance with constant power");

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    Double setting = input.settingCelsius();
    if (setting == null) {
      return input.missing(DESCRIPTION, "the setting is not known");
    }
    Measurement loss = new HeatLoss().measure(input, curve);
    Double perKelvin = loss.value();
    if (perKelvin == null) {
      return input.missing(DESCRIPTION, String.valueOf(loss.note()));
    }
    Double room = input.ambientCelsius();
    double rise = setting - (room == null ? curve.clean().values()[0] : room);
    List<Component> parts =
        loss.components().stream().map(c -> new Component(c.source(), c.u() * rise)).toList();
    Measurement needed =
        Measurement.of(DESCRIPTION, input.subject(), perKelvin * rise)
            .withComponents(parts)
            .withDefinition(
                String.format(Locale.ROOT, "%.2f W/K for %.0f K above the room", perKelvin, rise))
            .withEvidence(input.evidence());
    return HeatBalance.of(input, curve)
        .filter(b -> b.powerWatt() < perKelvin * rise)
        .map(b -> needed.withNote(String.format(Locale.ROOT, "it has %.0f W", b.powerWatt())))
        .orElse(needed);
  }
}
