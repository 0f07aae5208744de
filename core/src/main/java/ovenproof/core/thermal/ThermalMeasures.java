package ovenproof.core.thermal;

import java.util.List;
import java.util.Locale;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.MeasureDescription.EvidenceKind;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;
import ovenproof.core.trace.HeatCurve;
import ovenproof.core.trace.TraceInput;
import ovenproof.core.trace.TraceMeasure;

/** The measures that the thermal model gives. */
public final class ThermalMeasures {

  public static final MeasureDescription CEILING =
      describe(
          "ceiling-temperature",
          "Ceiling temperature",
          Unit.CELSIUS,
          "The highest temperature it would reach with the elements on for ever. Modelled, not"
              + " measured.",
          "T∞ of one or two exponentials fitted to the heat-up; else room + rise / duty^(1/p), p 1"
              + " to 1.25",
          "energy balance with constant power; residuals AR(1)");

  public static final MeasureDescription TIME_CONSTANT =
      describe(
          "time-constant",
          "Slow time constant",
          Unit.SECOND,
          "How slowly the walls follow: after one time constant 63 % of the rest is done.",
          "slow τ of one or two exponentials fitted to the heat-up",
          "lumped capacitance; residuals AR(1)");

  private ThermalMeasures() {}

  public static List<TraceMeasure> all() {
    return List.of(
        new Ceiling(),
        new TimeConstant(),
        new PreheatByModel(),
        new HeatLoss(),
        new HeatCapacity(),
        new PowerToHold(),
        new PreheatAtNominalMains());
  }

  static MeasureDescription describe(
      String id, String name, Unit unit, String help, String formula, String source) {
    return new MeasureDescription(
        id, name, unit, help, formula, source, EvidenceKind.TRACE, List.of(), 1);
  }

  /** The ceiling, from the heat-up or else from the hold; missing with the reason. */
  public static Measurement ceiling(TraceInput input, HeatCurve curve) {
    return new Ceiling().measure(input, curve);
  }

  private static final class Ceiling implements TraceMeasure {
    @Override
    public MeasureDescription description() {
      return CEILING;
    }

    @Override
    public Measurement measure(TraceInput input, HeatCurve curve) {
      HeatingModel.Outcome outcome = HeatingModel.fit(input, curve);
      HeatingModel model = outcome.model();
      if (model != null) {
        return value(input, CEILING, model.ceilingCelsius(), model.ceilingU(), 1, ofModel(model));
      }
      HoldCeiling.Outcome hold = HoldCeiling.of(input, curve);
      HoldCeiling ceiling = hold.ceiling();
      if (ceiling != null) {
        String definition =
            String.format(Locale.ROOT, "from the hold at %.0f %% duty", 100 * ceiling.duty());
        return value(input, CEILING, ceiling.celsius(), ceiling.u(), 1 / ceiling.duty(), definition)
            .withNote("not from the heat-up: " + outcome.why());
      }
      return input.missing(CEILING, outcome.why() + "; " + hold.why());
    }
  }

  private static final class TimeConstant implements TraceMeasure {
    @Override
    public MeasureDescription description() {
      return TIME_CONSTANT;
    }

    @Override
    public Measurement measure(TraceInput input, HeatCurve curve) {
      HeatingModel.Outcome outcome = HeatingModel.fit(input, curve);
      HeatingModel model = outcome.model();
      if (model == null) {
        return input.missing(TIME_CONSTANT, outcome.why());
      }
      Measurement slow =
          Measurement.of(TIME_CONSTANT, input.subject(), model.slowSeconds())
              .withComponents(List.of(Component.run(model.slowU())))
              .withDefinition(ofModel(model))
              .withEvidence(input.evidence());
      return model.order() == HeatingModel.Order.FIRST
          ? slow
          : slow.withNote(
              String.format(Locale.ROOT, "the fast one is %.0f s", model.fastSeconds()));
    }
  }

  static Measurement value(
      TraceInput input,
      MeasureDescription d,
      double value,
      double runU,
      double sensitivity,
      String definition) {
    return Measurement.of(d, input.subject(), value)
        .withComponents(input.probe().components(sensitivity, runU))
        .withDefinition(definition)
        .withEvidence(input.evidence());
  }

  static String ofModel(HeatingModel model) {
    return String.format(
        Locale.ROOT,
        "%s fitted from %.0f to %.0f s, residuals AR(1) with ρ %.2f",
        model.order() == HeatingModel.Order.FIRST ? "one exponential" : "two exponentials",
        model.startSecond(),
        model.endSecond(),
        model.fit().rho());
  }
}
