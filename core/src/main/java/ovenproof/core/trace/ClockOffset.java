package ovenproof.core.trace;

import java.util.List;
import java.util.Optional;
import ovenproof.core.measure.Component;
import ovenproof.core.measure.MeasureDescription;
import ovenproof.core.measure.Measurement;
import ovenproof.core.quantity.Unit;

/** The logger's clock against the clock of who noted the doors. */
public final class ClockOffset implements TraceMeasure {

  public static final MeasureDescription DESCRIPTION =
      TraceMeasures.describe(
          "clock-offset",
          "Clock of the log",
          Unit.SECOND,
          "How much later the log shows the falls of the air than doors and loads were noted. Said,"
              + " not applied: clock_offset in traces.csv does that.",
          "shift that catches the deepest falls",
          "own definition");

  @Override
  public MeasureDescription description() {
    return DESCRIPTION;
  }

  @Override
  public Measurement measure(TraceInput input, HeatCurve curve) {
    List<Double> openings =
        input.happenings().stream()
            .filter(h -> h.kind() == Happening.Kind.DOOR_OPEN)
            .map(Happening::second)
            .toList();
    if (openings.isEmpty()) {
      return input.missing(DESCRIPTION, "nobody noted an open door");
    }
    Optional<ClockAlignment> found = ClockAlignment.of(curve.clean(), openings);
    return found
        .map(
            f ->
                TraceMeasures.value(
                        DESCRIPTION,
                        input,
                        f.offsetSeconds(),
                        List.of(Component.run(f.u())),
                        DESCRIPTION.formula())
                    .withN(f.falls()))
        .orElseGet(() -> input.missing(DESCRIPTION, "no door shows as a fall of the air"));
  }
}
