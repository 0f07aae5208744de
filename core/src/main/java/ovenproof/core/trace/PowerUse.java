package ovenproof.core.trace;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/**
 * Where the energy of a run goes: until the setting is first reached, while food is in, to hold,
 * and when nothing is asked of the appliance.
 */
public final class PowerUse implements TraceMeasure {
  private static final double WATT_SECONDS_PER_KILOWATT_HOUR = 3.6e6;
  private static final double LEAST_SECONDS = 60;

  /** Part of the run. */
  public enum Part {
    TO_SETTING(
        "energy-to-setting",
        "Energy to the setting",
        Unit.KILOWATT_HOUR,
        "Electric energy from the start until the centre first reaches the setting.",
        "∫ P dt from start to first crossing"),
    COOK(
        "energy-cook",
        "Energy of the cook",
        Unit.KILOWATT_HOUR,
        "Electric energy from the first load to the last stop.",
        "∫ P dt from load to stop"),
    HOLD(
        "power-hold",
        "Power to hold",
        Unit.WATT,
        "Mean power while steady: a kilowatt-hour per hour for every 1000 W.",
        "mean of P over the steady part"),
    STANDBY(
        "power-standby",
        "Standby power",
        Unit.WATT,
        "Mean power after it was switched off, still plugged in.",
        "mean of P from power-off, a minute later, to the end");

    private final MeasureDescription description;

    Part(String id, String name, Unit unit, String help, String formula) {
      description = TraceMeasures.describe(id, name, unit, help, formula, "definition of energy");
    }
  }

  private final Part part;

  public PowerUse(Part part) {
    this.part = part;
  }

  @Override
  public MeasureDescription description() {
    return part.description;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    Trace power = input.power() == null ? null : input.power().present();
    if (power == null || power.size() < 2) {
      return missing(input, "power was not logged");
    }
    Window window = window(input, curve, power);
    if (window.why() != null) {
      return missing(input, window.why());
    }
    boolean gap =
        Gap.in(power.seconds(), power.medianStepSeconds()).stream()
            .anyMatch(g -> g.touches(window.from(), window.to()));
    if (gap) {
      return missing(input, "the record of power has a gap of more than 30 s in this part");
    }
    double wattSeconds = TimeMean.integral(power, window.from(), window.to());
    boolean mean = part.description.unit() == Unit.WATT;
    double per = mean ? window.to() - window.from() : WATT_SECONDS_PER_KILOWATT_HOUR;
    double u = Energy.switchingWattSeconds(power.part(window.from(), window.to()));
    List<Component> parts = new ArrayList<>(List.of(Component.run(u / per)));
    double atEnd = TimeMean.at(power, window.to()) / per;
    window.ofEnd().forEach(c -> parts.add(new Component(c.source(), c.u() * atEnd)));
    return TraceMeasures.value(
        part.description,
        input,
        wattSeconds / per,
        parts,
        part.description.formula()
            + ", "
            + TraceMeasures.clock(window.from())
            + " to "
            + TraceMeasures.clock(window.to()));
  }

  private Measurement missing(TraceInput input, String why) {
    return input.missing(part.description, why);
  }

  /**
   * A part of the run.
   *
   * @param ofEnd what its end is uncertain by, in s; empty when it is a person's
   */
  private record Window(double from, double to, List<Component> ofEnd, @Nullable String why) {
    Window(double from, double to) {
      this(from, to, List.of(), null);
    }

    static Window none(String why) {
      return new Window(0, 0, List.of(), why);
    }
  }

  private Window window(TraceInput input, HeatCurve curve, Trace power) {
    return switch (part) {
      case TO_SETTING -> toSetting(input, curve, power);
      case COOK -> cook(input);
      case HOLD -> hold(curve);
      case STANDBY -> standby(input, power);
    };
  }

  private static Window toSetting(TraceInput input, HeatCurve curve, Trace power) {
    Measurement crossing = new PreheatFirst().measure(input, curve);
    Double time = crossing.value();
    return time == null
        ? Window.none(crossing.note() == null ? "the setting was not reached" : crossing.note())
        : new Window(Math.min(power.seconds()[0], time), time, crossing.components(), null);
  }

  private static Window cook(TraceInput input) {
    double from = input.first(Happening.Kind.LOAD, 0).map(Happening::second).orElse(Double.NaN);
    double to =
        input.happenings().stream()
            .filter(h -> h.kind() == Happening.Kind.STOP)
            .mapToDouble(Happening::second)
            .max()
            .orElse(Double.NaN);
    return to > from ? new Window(from, to) : Window.none("nobody noted load and stop");
  }

  private static Window hold(HeatCurve curve) {
    SteadyState steady = curve.steady();
    return steady == null
        ? Window.none(curve.whyNotSteady())
        : new Window(steady.startSecond(), steady.endSecond());
  }

  private static Window standby(TraceInput input, Trace power) {
    double from =
        input.first(Happening.Kind.POWER_OFF, 0).map(Happening::second).orElse(Double.NaN)
            + LEAST_SECONDS;
    double to = power.lastSecond();
    return to - from >= LEAST_SECONDS
        ? new Window(from, to)
        : Window.none("not logged for two minutes after it was switched off");
  }
}
