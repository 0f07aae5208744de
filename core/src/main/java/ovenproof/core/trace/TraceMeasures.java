package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.MeasureDescription.EvidenceKind;
import ovenproof.core.measure.MeasureDescription.Parameter;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Dimension;
import ovenproof.core.quantity.Unit;

/** Every measure that a temperature or power trace carries by itself. */
public final class TraceMeasures {

  static final Parameter SETTING =
      new Parameter("set", "what the dial or the display was set to", Dimension.TEMPERATURE, "");

  private static final List<TraceMeasure> ALL =
      List.of(
          new PreheatFirst(),
          new PreheatBand(),
          new PreheatSteady(),
          new Overshoot(),
          new Settling(),
          new SteadyMean(),
          new Offset(),
          new MidRange(),
          new Drift(),
          new CycleAmplitude(),
          new CyclePeriod(),
          new Duty(),
          new Spread(),
          new SpreadRange(),
          new Contrast(Contrast.Sides.FRONT_BACK),
          new Contrast(Contrast.Sides.LEFT_RIGHT),
          new Contrast(Contrast.Sides.TOP_BOTTOM),
          new Highest(),
          new SignalTemperature(),
          new StartAboveRoom(),
          new DoorRecovery(DoorRecovery.Of.DROP),
          new DoorRecovery(DoorRecovery.Of.TIME),
          new Energy(),
          new PowerUse(PowerUse.Part.TO_SETTING),
          new PowerUse(PowerUse.Part.COOK),
          new PowerUse(PowerUse.Part.HOLD),
          new PowerUse(PowerUse.Part.STANDBY),
          new MainsMean(),
          new ClockOffset(),
          new CoreHighest(),
          new CoreTime(),
          new CarryOver());

  private TraceMeasures() {}

  /** In the order a report shows them. */
  public static List<TraceMeasure> all() {
    return ALL;
  }

  public static Optional<TraceMeasure> named(String id) {
    return ALL.stream().filter(m -> m.description().id().equals(id)).findFirst();
  }

  /** All measures of one run, the centre prepared once. */
  public static List<Measurement> measure(TraceInput input) {
    HeatCurve curve = HeatCurve.of(input.centre());
    List<Measurement> results = new ArrayList<>();
    for (TraceMeasure measure : ALL) {
      results.add(measure.measure(input, curve));
    }
    return results;
  }

  static MeasureDescription describe(
      String id, String name, Unit unit, String help, String formula, String source) {
    return new MeasureDescription(
        id, name, unit, help, formula, source, EvidenceKind.TRACE, List.of(), 1);
  }

  static MeasureDescription describeWithSetting(
      String id, String name, Unit unit, String help, String formula, String source) {
    return new MeasureDescription(
        id, name, unit, help, formula, source, EvidenceKind.TRACE, List.of(SETTING), 1);
  }

  /** A measured value with its components, definition and evidence. */
  static Measurement value(
      MeasureDescription d,
      TraceInput input,
      double value,
      List<Component> components,
      String definition) {
    return Measurement.of(d, input.subject(), value)
        .withComponents(components)
        .withDefinition(definition)
        .withEvidence(input.evidence());
  }

  /** 12.3 with a point whatever the machine's language. */
  static String digits(double value, int places) {
    return String.format(Locale.ROOT, "%." + places + "f", value);
  }

  /** 1:02:03 or 2:03. */
  static String clock(double seconds) {
    long s = Math.round(seconds);
    return s >= 3600
        ? String.format(Locale.ROOT, "%d:%02d:%02d", s / 3600, s / 60 % 60, s % 60)
        : String.format(Locale.ROOT, "%d:%02d", s / 60, s % 60);
  }
}
